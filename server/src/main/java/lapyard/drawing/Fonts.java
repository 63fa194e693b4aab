package lapyard.drawing;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Properties;

/** The font that travels with the program, so that a machine without any font draws the same page. */
final class Fonts {
    static final String FAMILY = "DejaVu Sans";

    /** Families for viewers of the SVG: the own font first, then fonts of the same widths. */
    static final String FAMILIES = "'DejaVu Sans', 'Bitstream Vera Sans', Verdana, sans-serif";

    final Path normal;
    final Path bold;

    private Fonts(Path normal, Path bold) {
        this.normal = normal;
        this.bold = bold;
    }

    private static final class Unpacked {
        private static final Fonts FONTS = unpack();
    }

    /**
     * Unpacks the fonts into a folder of their own and names them to Java's font machinery, once. To be called before
     * anything touches AWT: without this, AWT fails on a machine where fontconfig finds no font.
     */
    static Fonts ready() {
        return Unpacked.FONTS;
    }

    static InputStream open(String file) throws IOException {
        InputStream in = Fonts.class.getResourceAsStream(file);
        if (in == null) {
            throw new FileNotFoundException("lapyard/drawing/" + file + " is missing from this build");
        }
        return in;
    }

    private static Fonts unpack() {
        try {
            Path folder = Files.createTempDirectory("lapyard-font");
            folder.toFile().deleteOnExit();
            Fonts fonts = new Fonts(copy("DejaVuSans.ttf", folder), copy("DejaVuSans-Bold.ttf", folder));
            if (System.getProperty("java.awt.headless") == null) {
                System.setProperty("java.awt.headless", "true");
            }
            if (System.getProperty("sun.awt.fontconfig") == null) {
                System.setProperty("sun.awt.fontconfig", fonts.fontConfiguration(folder).toString());
            }
            return fonts;
        } catch (IOException e) {
            throw new UncheckedIOException("the fonts could not be unpacked into the folder for temporary files", e);
        }
    }

    private static Path copy(String file, Path folder) throws IOException {
        Path to = folder.resolve(file);
        to.toFile().deleteOnExit();
        try (InputStream in = open(file)) {
            Files.copy(in, to);
        }
        return to;
    }

    /** The form is that of the JDK's own fontconfig.properties. */
    private Path fontConfiguration(Path folder) throws IOException {
        Properties lines = new Properties();
        lines.setProperty("version", "1");
        lines.setProperty("sequence.allfonts", "default");
        for (String name : new String[] {"allfonts", "serif", "sansserif", "monospaced", "dialog", "dialoginput"}) {
            for (String style : new String[] {"plain", "bold", "italic", "bolditalic"}) {
                boolean heavy = style.startsWith("bold");
                String key = name.equals("allfonts") ? "allfonts.default" : name + "." + style + ".default";
                lines.setProperty(key, heavy && !name.equals("allfonts") ? FAMILY + " Bold" : FAMILY);
            }
        }
        lines.setProperty("filename.DejaVu_Sans", normal.toString());
        lines.setProperty("filename.DejaVu_Sans_Bold", bold.toString());
        Path file = folder.resolve("fontconfig.properties");
        file.toFile().deleteOnExit();
        try (var out = Files.newBufferedWriter(file)) {
            lines.store(out, null);
        }
        return file;
    }
}
