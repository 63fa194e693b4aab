package lapyard.drawing;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicReferenceArray;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TTFTable;
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
                if (in == null) throw new FileNotFoundException("lapyard/drawing/" + name + " is missing from this build");
                return in.readAllBytes();
            } catch (IOException e) {
                throw unreadable(name, e);
            }
        });
    }

    /** A font's signs up to U+FFFF; both fonts are read at their first use. */
    static Signs signs(boolean bold) {
        return bold ? Signs.BOLD : Signs.NORMAL;
    }

    /** What a page needs to know of a font's signs, and a PDF file of the font. */
    static final class Signs {
        private static final Signs NORMAL = new Signs(Fonts.NORMAL);
        private static final Signs BOLD = new Signs(Fonts.BOLD);
        private static final int TABLE = 0x10000;
        private static final int ROW = 0x100;

        /** Number and advance of 256 code points each, looked up when the first of them is used: most rows never are. */
        private final AtomicReferenceArray<char[]> rows = new AtomicReferenceArray<>(TABLE / ROW);

        final SignTables tables;

        final String file;
        /** Name of the font by itself, as a PDF file tells it. */
        final String name;
        /** Font units in an em. */
        final int em;

        private Signs(String file) {
            this.file = file;
            this.name = file.replace(".ttf", "");
            tables = new SignTables(bytes(file));
            em = tables.em();
        }

        /** Top of a letter above the line, in font units. */
        int top(char letter) {
            return tables.top(number(letter));
        }

        /** Bottom of a letter above the line, in font units; below it where negative. */
        int bottom(char letter) {
            return tables.bottom(number(letter));
        }

        /** Number of a code point's sign in the font file, 0 where the font has none. */
        int number(int c) {
            return c >= TABLE ? 0 : row(c)[c % ROW];
        }

        private char[] row(int c) {
            char[] row = rows.get(c / ROW);
            if (row == null) {
                row = new char[2 * ROW];
                for (int i = 0; i < ROW; i++) {
                    row[i] = (char) tables.number(c / ROW * ROW + i);
                    row[ROW + i] = (char) tables.advance(row[i]);
                }
                rows.set(c / ROW, row);
            }
            return row;
        }

        boolean has(int c) {
            return number(c) > 0;
        }

        /** Advance in ems; signs of other fonts are mostly of wide scripts and pictures, which take about one em. */
        double em(int c) {
            if (!has(c)) return 1.3;
            return (float) row(c)[ROW + c % ROW] / em;
        }
    }

    /** Reads of a font what its outlines need: half the time of all its tables goes into the others. */
    private static final class OutlineParser extends TTFParser {
        private static final Set<String> OTHERS = Set.of("GDEF", "GPOS", "GSUB", "kern", "name", "post");

        OutlineParser() {
            super(true); // as fonts within a file, which may be without names
        }

        @Override
        protected TTFTable readTable(String tag) {
            return super.readTable(OTHERS.contains(tag) ? "left" : tag);
        }
    }

    /** A font with the outlines of its signs. */
    static TrueTypeFont open(String file) {
        try {
            return new OutlineParser().parse(new RandomAccessReadBuffer(bytes(file)));
        } catch (IOException e) {
            throw unreadable(file, e);
        }
    }

    static UncheckedIOException unreadable(String file, IOException e) {
        return new UncheckedIOException("the font " + file + " of this program cannot be read", e);
    }
}
