package lapyard.drawing;

import java.nio.ByteBuffer;

/**
 * The tables of a TrueType font that say which signs it has, how wide and how high they are, read where they lie in the file
 * (ISO/IEC 14496-22, Open Font Format, 5.2 and 5.3; the same as the OpenType specification's head, hhea, hmtx, maxp, cmap, loca and
 * glyf). A parser that makes objects of the tables takes a tenth of the take-off of one bed.
 */
final class SignTables {
    private static final int TABLE_RECORDS = 12;
    private static final int RECORD = 16;
    private static final int UNICODE = 0;
    private static final int WINDOWS = 3;

    private final ByteBuffer file;
    private final int head;
    private final int widths;
    private final int places;
    private final int outlines;
    private final int segments;
    private final int count;

    /** Signs from this one on are as wide as the one before it. */
    private final int alike;

    /** @param font one that has these tables and a mapping from Unicode, as the program's own have */
    SignTables(byte[] font) {
        file = ByteBuffer.wrap(font);
        head = start("head");
        widths = start("hmtx");
        places = start("loca");
        outlines = start("glyf");
        count = number16(start("maxp") + 4);
        alike = number16(start("hhea") + 34);
        segments = segments(start("cmap"));
    }

    private int start(String tag) {
        return file.getInt(record(tag) + 8);
    }

    boolean has(String tag) {
        return record(tag) > 0;
    }

    /** A copy of a whole table. */
    byte[] table(String tag) {
        return copy(start(tag), file.getInt(record(tag) + 12));
    }

    private byte[] copy(int from, int length) {
        byte[] bytes = new byte[length];
        file.get(from, bytes);
        return bytes;
    }

    /** Where the directory tells of a table; 0 where it does not. */
    private int record(String tag) {
        for (int i = 0; i < number16(4); i++) {
            int record = TABLE_RECORDS + i * RECORD;
            int same = 0;
            while (same < 4 && file.get(record + same) == tag.charAt(same)) same++;
            if (same == 4) return record;
        }
        return 0;
    }

    /** The mapping from two-byte code points: format 4 of Unicode. */
    private int segments(int cmap) {
        for (int i = 0; i < number16(cmap + 2); i++) {
            int platform = number16(cmap + 4 + 8 * i);
            int there = cmap + file.getInt(cmap + 8 + 8 * i);
            if ((platform == UNICODE || platform == WINDOWS && number16(cmap + 6 + 8 * i) == 1) && number16(there) == 4) return there;
        }
        throw new IllegalArgumentException("the font has no mapping from Unicode");
    }

    int em() {
        return number16(head + 18);
    }

    /** How many signs the font has. */
    int count() {
        return count;
    }

    /** Left, bottom, right and top of the box around all signs, in font units. */
    int[] box() {
        return new int[] {file.getShort(head + 36), file.getShort(head + 38), file.getShort(head + 40), file.getShort(head + 42)};
    }

    /** Number of a code point's sign, 0 where there is none. @param c up to U+FFFF */
    int number(int c) {
        int twice = number16(segments + 6);
        int ends = segments + 14;
        int low = 0;
        int high = twice / 2 - 1;
        while (low < high) {
            int middle = (low + high) / 2;
            if (number16(ends + 2 * middle) < c) low = middle + 1;
            else high = middle;
        }
        int starts = ends + twice + 2 + 2 * low;
        int start = number16(starts);
        if (c < start || c > number16(ends + 2 * low)) return 0;
        int delta = number16(starts + twice);
        int offsetAt = starts + 2 * twice;
        int offset = number16(offsetAt);
        if (offset == 0) return c + delta & 0xFFFF;
        int sign = number16(offsetAt + offset + 2 * (c - start));
        return sign == 0 ? 0 : sign + delta & 0xFFFF;
    }

    /** Advance of a sign, in font units. */
    int advance(int sign) {
        return number16(widths + 4 * Math.min(sign, alike - 1));
    }

    /** Bottom of a sign with an outline, in font units. */
    int bottom(int sign) {
        return file.getShort(outlines + place(sign) + 4);
    }

    /** Top of a sign with an outline, in font units. */
    int top(int sign) {
        return file.getShort(outlines + place(sign) + 8);
    }

    /** Room left of a sign, in font units. */
    int leftSide(int sign) {
        return file.getShort(sign < alike ? widths + 4 * sign + 2 : widths + 4 * alike + 2 * (sign - alike));
    }

    /** A copy of a sign's outline; empty for a blank. */
    byte[] outline(int sign) {
        return copy(outlines + place(sign), place(sign + 1) - place(sign));
    }

    private int place(int sign) {
        boolean wide = file.getShort(head + 50) != 0;
        return wide ? file.getInt(places + 4 * sign) : 2 * number16(places + 2 * sign);
    }

    private int number16(int at) {
        return Short.toUnsignedInt(file.getShort(at));
    }
}
