package lapyard.drawing;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Set;
import lapyard.working.BrokenRule.Rule;
import lapyard.working.BrokenRule;

/**
 * A photo as it is kept: the picture alone. What a camera writes beside it (place, time, maker, thumbnails, texts) is taken
 * out; of it only stays which way is up.
 *
 * @param type {@code image/jpeg} or {@code image/png}
 * @param up   which way is up, 1 to 8 as Exif has it (tag 0x0112); 1 where the picture lies as it is seen
 * @see "JPEG: ITU-T T.81 (1992), annex B; Exif: CIPA DC-008, 4.6.4; PNG: W3C, third edition, 5 and 11"
 */
public record Photo(String type, int widthPx, int heightPx, int up, byte[] bytes) {
    /** The longest that is kept, bytes. */
    public static final int MOST_BYTES = 1_500_000;

    private static final int MOST_PX = 10_000;
    /** Cameras write a dozen at most; each takes the time of a whole picture to decode. */
    private static final int MOST_SCANS = 100;
    private static final byte[] PNG = {(byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10};
    private static final Set<String> CHUNKS = Set.of("IHDR", "PLTE", "IDAT", "IEND", "tRNS", "gAMA", "sRGB", "cHRM", "pHYs", "sBIT", "bKGD");
    private static final byte[] EXIF = {'E', 'x', 'i', 'f', 0, 0};

    private static final int SOI = 0xD8;
    private static final int EOI = 0xD9;
    private static final int SOS = 0xDA;
    private static final int COM = 0xFE;
    private static final int APP0 = 0xE0;
    private static final int APP1 = 0xE1;
    private static final int APP14 = 0xEE;
    private static final int APP15 = 0xEF;

    /** @throws BrokenRule where it is no whole JPEG or PNG picture, or larger than we keep; the rule says which */
    public static Photo of(byte[] file) {
        if (file.length > MOST_BYTES) throw BrokenRule.of(Rule.PHOTO_LARGE, "photo").with("size", file.length, "bytes").with("most", MOST_BYTES, "bytes");
        try {
            if (file.length > 8 && Arrays.equals(PNG, Arrays.copyOf(file, 8))) return png(ByteBuffer.wrap(file));
            if (file.length > 4 && (file[0] & 0xFF) == 0xFF && (file[1] & 0xFF) == SOI) return jpeg(ByteBuffer.wrap(file));
        } catch (java.nio.BufferUnderflowException | IndexOutOfBoundsException | NegativeArraySizeException | java.nio.BufferOverflowException cut) {
            throw BrokenRule.of(Rule.PHOTO_DAMAGED, "photo");
        }
        throw BrokenRule.of(Rule.PHOTO_KIND, "photo");
    }

    private static Photo sized(String type, int wide, int high, int up, ByteArrayOutputStream out) {
        if (wide < 1 || high < 1) throw BrokenRule.of(Rule.PHOTO_DAMAGED, "photo");
        if (wide > MOST_PX || high > MOST_PX) throw BrokenRule.of(Rule.PHOTO_LARGE, "photo").with("size", wide + " by " + high + " pixels").with("most", MOST_PX + " pixels each way");
        return new Photo(type, wide, high, up, out.toByteArray());
    }

    private static Photo png(ByteBuffer in) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes(PNG);
        in.position(PNG.length);
        int wide = 0;
        int high = 0;
        while (true) {
            int length = in.getInt();
            byte[] name = new byte[4];
            in.get(name);
            String chunk = new String(name, StandardCharsets.US_ASCII);
            if (length < 0 || length > in.remaining()) throw new IndexOutOfBoundsException();
            byte[] rest = new byte[length + 4];
            in.get(rest);
            if (chunk.equals("IHDR")) {
                wide = ByteBuffer.wrap(rest).getInt();
                high = ByteBuffer.wrap(rest).getInt(4);
            }
            if (CHUNKS.contains(chunk)) {
                out.writeBytes(ByteBuffer.allocate(4).putInt(length).array());
                out.writeBytes(name);
                out.writeBytes(rest);
            }
            if (chunk.equals("IEND")) return sized("image/png", wide, high, 1, out);
        }
    }

    private static Photo jpeg(ByteBuffer in) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        in.getShort();
        out.write(0xFF);
        out.write(SOI);
        int up = 1;
        int wide = 0;
        int high = 0;
        int scans = 0;
        boolean begun = false;
        while (true) {
            int marker = marker(in);
            if (marker == EOI) {
                out.write(0xFF);
                out.write(EOI);
                return sized("image/jpeg", wide, high, up, out);
            }
            byte[] segment = new byte[(in.getShort() & 0xFFFF) - 2];
            in.get(segment);
            if (marker == APP1 && segment.length > 14 && Arrays.equals(EXIF, Arrays.copyOf(segment, 6))) up = orientation(ByteBuffer.wrap(segment, 6, segment.length - 6).slice());
            if (marker >= APP0 && marker <= APP15 && marker != APP0 && marker != APP14 || marker == COM) continue;
            boolean frame = marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 && marker != 0xCC;
            if (frame) {
                high = ByteBuffer.wrap(segment).getShort(1) & 0xFFFF;
                wide = ByteBuffer.wrap(segment).getShort(3) & 0xFFFF;
            }
            if (!begun && marker != APP0) {
                if (up > 1) segment(out, APP1, onlyOrientation(up));
                begun = true;
            }
            segment(out, marker, segment);
            if (marker != SOS) continue;
            if (++scans > MOST_SCANS) throw BrokenRule.of(Rule.PHOTO_DAMAGED, "photo");
            scan(in, out);
        }
    }

    private static int marker(ByteBuffer in) {
        if ((in.get() & 0xFF) != 0xFF) throw BrokenRule.of(Rule.PHOTO_DAMAGED, "photo");
        int marker = in.get() & 0xFF;
        while (marker == 0xFF) marker = in.get() & 0xFF;
        return marker;
    }

    private static void segment(ByteArrayOutputStream out, int marker, byte[] content) {
        out.write(0xFF);
        out.write(marker);
        out.write(content.length + 2 >> 8);
        out.write(content.length + 2);
        out.writeBytes(content);
    }

    /** Up to the next marker that is neither a stuffed byte nor a restart. */
    private static void scan(ByteBuffer in, ByteArrayOutputStream out) {
        while (true) {
            int at = in.position();
            int one = in.get() & 0xFF;
            if (one == 0xFF) {
                int next = in.get(in.position()) & 0xFF;
                if (next != 0 && !(next >= 0xD0 && next <= 0xD7)) {
                    in.position(at);
                    return;
                }
            }
            out.write(one);
        }
    }

    /** 1 to 8 as Exif has it; 1 where it says nothing. */
    private static int orientation(ByteBuffer tiff) {
        try {
            tiff.order(tiff.get(0) == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
            int at = tiff.getInt(4);
            for (int i = tiff.getShort(at); i > 0; i--, at += 12) {
                if (tiff.getShort(at + 2) == 0x0112) {
                    int up = tiff.getShort(at + 10);
                    return up >= 1 && up <= 8 ? up : 1;
                }
            }
        } catch (IndexOutOfBoundsException damaged) {
            return 1;
        }
        return 1;
    }

    private static byte[] onlyOrientation(int up) {
        ByteBuffer tiff = ByteBuffer.allocate(32).put(EXIF).put((byte) 'M').put((byte) 'M').putShort((short) 42).putInt(8).putShort((short) 1);
        return tiff.putShort((short) 0x0112).putShort((short) 3).putInt(1).putShort((short) up).putShort((short) 0).putInt(0).array();
    }
}
