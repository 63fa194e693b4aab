package lapyard.drawing;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/** The font that travels with the program, so that a machine without any font draws the same page. */
final class Fonts {
    static final String NORMAL = "DejaVuSans.ttf";
    static final String BOLD = "DejaVuSans-Bold.ttf";

    /** Families for viewers of the SVG: the own font first, then fonts of the same widths. */
    static final String FAMILIES = "'DejaVu Sans', 'Bitstream Vera Sans', Verdana, sans-serif";

    private static final Map<String, byte[]> READ = new ConcurrentHashMap<>();

    private Fonts() {}

    /** A font file whole, read once a process. */
    static byte[] bytes(String file) {
        return READ.computeIfAbsent(file, name -> {
            try (InputStream in = Fonts.class.getResourceAsStream(name)) {
                if (in == null) {
                    throw new FileNotFoundException("lapyard/drawing/" + name + " is missing from this build");
                }
                return in.readAllBytes();
            } catch (IOException e) {
                throw unreadable(name, e);
            }
        });
    }

    static TrueTypeFont open(String file) {
        try {
            return new TTFParser().parse(new RandomAccessReadBuffer(bytes(file)));
        } catch (IOException e) {
            throw unreadable(file, e);
        }
    }

    static UncheckedIOException unreadable(String file, IOException e) {
        return new UncheckedIOException("the font " + file + " of this program cannot be read", e);
    }
}
