package lapyard.drawing;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
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

    /** What a page needs to know of a font's signs, and a PDF file of the font: a few tables of OpenType 1.9 (ISO/IEC 14496-22). */
    static final class Signs {
        private static final Signs NORMAL = new Signs(Fonts.NORMAL);
        private static final Signs BOLD = new Signs(Fonts.BOLD);
        /** Platform 3, encoding 10: the map of all of Unicode, in format 12. */
        private static final int UNICODE = 0x3000a;

        private final ByteBuffer font;
        /** Number of each code point's sign, 0 where the font has none. */
        private final char[] numbers = new char[0x10000];
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

        private Signs(String file) {
            this.file = file;
            this.name = file.replace(".ttf", "");
            font = ByteBuffer.wrap(bytes(file));
            int head = table("head");
            em = font.getChar(head + 18);
            box = new int[] {font.getShort(head + 36), font.getShort(head + 38), font.getShort(head + 40), font.getShort(head + 42)};
            advances = new int[font.getChar(table("maxp") + 4)];
            int widths = table("hmtx");
            // what follows has the last one's
            int last = font.getChar(table("hhea") + 34) - 1;
            for (int sign = 0; sign < advances.length; sign++) advances[sign] = font.getChar(widths + 4 * Math.min(sign, last));
            map(table("cmap"));
            capital = side('H', 8);
            small = side('x', 8);
            ascender = side('d', 8);
            descender = side('p', 4);
        }

        private int table(String tag) {
            int wanted = ByteBuffer.wrap(tag.getBytes(StandardCharsets.US_ASCII)).getInt();
            for (int entry = 12; entry < 12 + 16 * font.getChar(4); entry += 16) {
                if (font.getInt(entry) == wanted) return font.getInt(entry + 8);
            }
            throw missing(tag);
        }

        private IllegalStateException missing(String what) {
            return new IllegalStateException("the font " + file + " of this program is without its " + what);
        }

        private void map(int cmap) {
            int map = cmap + 4;
            while (font.getInt(map) != UNICODE) {
                map += 8;
                if (map == cmap + 4 + 8 * font.getChar(cmap + 2)) throw missing("map of Unicode");
            }
            int group = cmap + font.getInt(map + 4) + 16;
            int end = group + 12 * font.getInt(group - 4);
            // by code point: those beyond are of wide scripts and pictures
            for (; group < end && font.getInt(group) < numbers.length; group += 12) {
                int first = font.getInt(group);
                int past = Math.min(font.getInt(group + 4) + 1, numbers.length);
                for (int c = first; c < past; c++) numbers[c] = (char) (font.getInt(group + 8) + c - first);
            }
        }

        /** @param at of the side within a sign's description: 4 its bottom, 8 its top */
        private int side(char letter, int at) {
            boolean wide = font.getShort(table("head") + 50) == 1;
            int place = table("loca") + numbers[letter] * (wide ? 4 : 2);
            return font.getShort(table("glyf") + (wide ? font.getInt(place) : font.getChar(place) * 2) + at);
        }

        /** Number of a code point's sign in the font file, 0 where the font has none. */
        int number(int c) {
            return c < numbers.length ? numbers[c] : 0;
        }

        boolean has(int c) {
            return number(c) > 0;
        }

        /** Advance in ems; signs of other fonts are mostly of wide scripts and pictures, which take about one em. */
        double em(int c) {
            int number = number(c);
            return number > 0 ? (float) advances[number] / em : 1.3;
        }
    }

    /** The font with the outlines of its signs. */
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
