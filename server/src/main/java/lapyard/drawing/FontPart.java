package lapyard.drawing;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;

/**
 * Some signs of a TrueType font as a font file of its own, numbered in the order in which they were asked for (ISO/IEC 14496-22, Open
 * Font Format; the tables that a PDF needs: ISO 32000-1:2008, 9.9).
 */
final class FontPart {
    /** Sign 0 stands for what a font has not. */
    private static final int MISSING = 0;

    private static final int TRUETYPE = 0x00010000;
    private static final int WHOLE_SUM = 0xB1B0AFBA;

    /** Flags of a sign that is put together of others: what stands behind its number. */
    private static final int WORDS = 1, SCALE = 8, MORE = 0x20, TWO_SCALES = 0x40, FOUR_SCALES = 0x80;

    private final SignTables whole;
    private final char[] places;
    private char[] signs = new char[64];
    private int count;

    FontPart(SignTables whole) {
        this.whole = whole;
        places = new char[whole.count()];
        place(MISSING);
    }

    /** Number of a sign in the part, for its number in the whole font; it is taken in where it is new. */
    int place(int sign) {
        if (places[sign] == 0 && (sign != MISSING || count == 0)) {
            if (count == signs.length) signs = Arrays.copyOf(signs, 2 * count);
            signs[count] = (char) sign;
            places[sign] = (char) count++;
        }
        return places[sign];
    }

    /** How many signs it has; what {@link #file} takes in for others is among them after that. */
    int count() {
        return count;
    }

    /** Number in the whole font of a sign of the part. */
    int sign(int place) {
        return signs[place];
    }

    /** The font file. Signs that others are put together of come with them. */
    byte[] file() {
        ByteArrayOutputStream outlines = new ByteArrayOutputStream();
        ByteBuffer starts = ByteBuffer.allocate(4 * (whole.count() + 1));
        for (int i = 0; i < count; i++) { // grows while it runs
            starts.putInt(outlines.size());
            byte[] outline = whole.outline(signs[i]);
            if (outline.length > 0 && outline[0] < 0) renumber(ByteBuffer.wrap(outline));
            outlines.write(outline, 0, outline.length);
            while (outlines.size() % 4 != 0) outlines.write(0);
        }
        starts.putInt(outlines.size());
        ByteBuffer widths = ByteBuffer.allocate(4 * count);
        for (int i = 0; i < count; i++) widths.putShort((short) whole.advance(signs[i])).putShort((short) whole.leftSide(signs[i]));
        Map<String, byte[]> tables = new TreeMap<>();
        for (String same : new String[] {"cvt ", "fpgm", "prep"}) if (whole.has(same)) tables.put(same, whole.table(same));
        tables.put("glyf", outlines.toByteArray());
        tables.put("loca", Arrays.copyOf(starts.array(), starts.position()));
        tables.put("hmtx", widths.array());
        ByteBuffer head = ByteBuffer.wrap(whole.table("head")).putInt(8, 0).putShort(50, (short) 1);
        tables.put("head", head.array());
        tables.put("hhea", ByteBuffer.wrap(whole.table("hhea")).putShort(34, (short) count).array());
        tables.put("maxp", ByteBuffer.wrap(whole.table("maxp")).putShort(4, (short) count).array());
        return written(tables);
    }

    /** The signs of a sign that is put together get their places. */
    private void renumber(ByteBuffer outline) {
        int at = 10;
        int flags;
        do {
            flags = outline.getShort(at);
            outline.putShort(at + 2, (short) place(Short.toUnsignedInt(outline.getShort(at + 2))));
            at += 4 + ((flags & WORDS) != 0 ? 4 : 2);
            at += (flags & SCALE) != 0 ? 2 : (flags & TWO_SCALES) != 0 ? 4 : (flags & FOUR_SCALES) != 0 ? 8 : 0;
        } while ((flags & MORE) != 0);
    }

    private static byte[] written(Map<String, byte[]> tables) {
        int heads = 12 + 16 * tables.size();
        int length = heads;
        for (byte[] table : tables.values()) length += padded(table.length);
        ByteBuffer file = ByteBuffer.allocate(length);
        int power = Integer.highestOneBit(tables.size());
        file.putInt(TRUETYPE).putShort((short) tables.size());
        file.putShort((short) (16 * power)).putShort((short) Integer.numberOfTrailingZeros(power)).putShort((short) (16 * (tables.size() - power)));
        int at = heads;
        int head = 0;
        for (Map.Entry<String, byte[]> table : tables.entrySet()) {
            byte[] bytes = table.getValue();
            for (int i = 0; i < 4; i++) file.put((byte) table.getKey().charAt(i));
            file.put(at, bytes);
            file.putInt(sum(file, at, padded(bytes.length))).putInt(at).putInt(bytes.length);
            if (table.getKey().equals("head")) head = at;
            at += padded(bytes.length);
        }
        file.putInt(head + 8, WHOLE_SUM - sum(file, 0, length));
        return file.array();
    }

    private static int padded(int length) {
        return length + 3 & ~3;
    }

    private static int sum(ByteBuffer file, int from, int length) {
        int sum = 0;
        for (int i = 0; i < length; i += 4) sum += file.getInt(from + i);
        return sum;
    }
}
