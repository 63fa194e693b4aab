package lapyard.drawing;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicReferenceArray;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.HeaderTable;
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
        private static final int TABLE = 0x10000;
        private static final int ROW = 0x100;

        /** Numbers of 256 code points each, looked up when the first of them is used: most rows never are. */
        private final AtomicReferenceArray<char[]> rows = new AtomicReferenceArray<>(TABLE / ROW);
        private final CmapLookup lookup;
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
            try (TrueTypeFont font = open(file)) {
                em = font.getUnitsPerEm();
                lookup = font.getUnicodeCmapLookup();
                advances = new int[font.getNumberOfGlyphs()];
                for (int sign = 0; sign < advances.length; sign++) advances[sign] = font.getAdvanceWidth(sign);
                HeaderTable head = font.getHeader();
                box = new int[] {head.getXMin(), head.getYMin(), head.getXMax(), head.getYMax()};
                capital = top(font, 'H');
                small = top(font, 'x');
                ascender = top(font, 'd');
                descender = font.getGlyph().getGlyph(number('p')).getYMinimum();
            } catch (IOException e) {
                throw unreadable(file, e);
            }
        }

        private int top(TrueTypeFont font, char letter) throws IOException {
            return font.getGlyph().getGlyph(number(letter)).getYMaximum();
        }

        /** Number of a code point's sign in the font file, 0 where the font has none. */
        int number(int c) {
            if (c >= TABLE) return 0;
            char[] row = rows.get(c / ROW);
            if (row == null) {
                row = new char[ROW];
                for (int i = 0; i < ROW; i++) row[i] = (char) lookup.getGlyphId(c / ROW * ROW + i);
                rows.set(c / ROW, row);
            }
            return row[c % ROW];
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

    /** Tables that are asked for here. */
    private static final Set<String> TABLES = Set.of("cmap", "glyf", "head", "hhea", "hmtx", "loca", "maxp");
    /** Platform 3, encoding 10 of a font's maps: all of Unicode, the one that the library takes. */
    private static final int UNICODE = 0x3000a;

    /**
     * The font with all other tables under a tag that the library passes over, and with one map where it has one of all of
     * Unicode: reading the rest takes half the time (OpenType 1.9, table directory and cmap header).
     */
    private static byte[] shortened(byte[] whole) {
        ByteBuffer font = ByteBuffer.wrap(whole.clone());
        int tables = font.getShort(4);
        for (int entry = 12; entry < 12 + 16 * tables; entry += 16) {
            String tag = new String(whole, entry, 4, StandardCharsets.ISO_8859_1);
            if (!TABLES.contains(tag)) font.putInt(entry, 0x2d2d2d2d);
            if (tag.equals("cmap")) leaveOneMap(font, font.getInt(entry + 8));
        }
        return font.array();
    }

    private static void leaveOneMap(ByteBuffer font, int cmap) {
        int maps = font.getShort(cmap + 2);
        for (int map = 0; map < maps; map++) {
            if (font.getInt(cmap + 4 + 8 * map) == UNICODE) {
                font.putLong(cmap + 4, font.getLong(cmap + 4 + 8 * map));
                font.putShort(cmap + 2, (short) 1);
            }
        }
    }

    static TrueTypeFont open(String file) {
        try {
            // as a font within a file, which may be without names
            return new TTFParser(true).parse(new RandomAccessReadBuffer(shortened(bytes(file))));
        } catch (IOException e) {
            throw unreadable(file, e);
        }
    }

    static UncheckedIOException unreadable(String file, IOException e) {
        return new UncheckedIOException("the font " + file + " of this program cannot be read", e);
    }
}
