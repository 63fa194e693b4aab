package lapyard.drawing;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;
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
        static final int TABLE = 0x10000;

        /** Number of each code point's sign in the font file, 0 where the font has none. */
        final char[] numbers = new char[TABLE];
        /** Advance of each numbered sign, in font units. */
        final int[] advances;

        final String file;
        /** Name of the font by itself, as a PDF file tells it. */
        final String name;
        /** Font units in an em. */
        final int em;
        /** Left, bottom, right and top of the box around all signs, in font units. */
        final int[] box;
        /** Tops of H, x and d, and bottom of p, in font units. */
        final int capital, small, ascender, descender;

        /**
         * Reads the font's tables itself: to have a library look up each code point takes a tenth of a short command.
         *
         * @see "OpenType 1.9: The OpenType Font File; cmap (format 4), glyf, head, hhea, hmtx, loca, maxp"
         */
        private Signs(String file) {
            this.file = file;
            name = file.substring(0, file.indexOf('.'));
            ByteBuffer font = ByteBuffer.wrap(bytes(file));
            int head = table(font, "head");
            em = font.getChar(head + 18);
            box = IntStream.range(0, 4).map(side -> font.getShort(head + 36 + 2 * side)).toArray();
            number(font);
            int widths = table(font, "hmtx");
            int last = font.getChar(table(font, "hhea") + 34) - 1;
            advances = IntStream.range(0, font.getChar(table(font, "maxp") + 4)).map(sign -> font.getChar(widths + 4 * Math.min(sign, last))).toArray();
            capital = font.getShort(outline(font, 'H') + 8);
            small = font.getShort(outline(font, 'x') + 8);
            ascender = font.getShort(outline(font, 'd') + 8);
            descender = font.getShort(outline(font, 'p') + 4);
        }

        /** Where a table begins. */
        private static int table(ByteBuffer font, String tag) {
            int wanted = ByteBuffer.wrap(tag.getBytes(StandardCharsets.US_ASCII)).getInt();
            for (int at = 12; at < 12 + 16 * font.getChar(4); at += 16) {
                if (font.getInt(at) == wanted) return font.getInt(at + 8);
            }
            throw new IllegalStateException("the font has no table " + tag);
        }

        /** Where the outline of a letter begins: the box around it, then its points. */
        private int outline(ByteBuffer font, char letter) {
            int places = table(font, "loca");
            boolean wide = font.getShort(table(font, "head") + 50) == 1;
            int sign = numbers[letter];
            return table(font, "glyf") + (wide ? font.getInt(places + 4 * sign) : 2 * font.getChar(places + 2 * sign));
        }

        /** Takes the numbers from the runs of code points of the Unicode table that ends at U+FFFF. */
        private void number(ByteBuffer font) {
            int all = table(font, "cmap");
            int at = all + 4;
            while (font.getInt(at) != (3 << 16 | 1)) at += 8;
            int runs = all + font.getInt(at + 4);
            int size = font.getChar(runs + 6);
            for (int run = runs + 14; run < runs + 14 + size; run += 2) {
                int first = run + size + 2;
                int shift = first + size;
                int list = shift + size;
                for (int c = font.getChar(first); c <= font.getChar(run) && c < TABLE - 1; c++) {
                    int offset = font.getChar(list);
                    int sign = offset == 0 ? c : font.getChar(list + offset + 2 * (c - font.getChar(first)));
                    numbers[c] = sign == 0 ? 0 : (char) (sign + font.getShort(shift));
                }
            }
        }

        boolean has(int c) {
            return c < TABLE && numbers[c] > 0;
        }

        /** Advance in ems; signs of other fonts are mostly of wide scripts and pictures, which take about one em. */
        double em(int c) {
            return has(c) ? (float) advances[numbers[c]] / em : 1.3;
        }
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
