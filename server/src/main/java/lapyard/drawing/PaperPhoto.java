package lapyard.drawing;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Optional;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageInputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import lapyard.geometry.Length;

/** Makes kept photos ready for paper: a JPEG that lies as it is seen, no finer than paper shows. */
public final class PaperPhoto {
    static final int DPI = 200;
    /** Of more pixels a progressive JPEG would take over 100 MB to decode. */
    private static final long MOST_PX = 16_000_000;
    private static final float QUALITY = 0.85f;

    private PaperPhoto() {}

    /**
     * The photo for a box of a size, which it fills one way; transparent parts turn white.
     *
     * @param kept the bytes of a JPEG or PNG file
     * @param mono whether it is turned grey, for a printer without colours
     * @return empty where it cannot be decoded, or has more than 16 million pixels
     */
    public static Optional<Photo> of(byte[] kept, double widthMm, double heightMm, boolean mono) {
        try {
            Photo photo = Photo.of(kept);
            boolean lies = photo.up() >= 5;
            BufferedImage image = read(photo, lies ? heightMm : widthMm, lies ? widthMm : heightMm);
            BufferedImage seen = turned(image, photo.up());
            return Optional.of(Photo.of(jpeg(mono ? grey(seen) : seen)));
        } catch (IOException | RuntimeException unreadable) { // the decoders of the JDK throw either on damaged files
            return Optional.empty();
        }
    }

    /** @param photo as {@link #of} gives it */
    static BufferedImage pixels(Photo photo) {
        try {
            return ImageIO.read(new MemoryCacheImageInputStream(new ByteArrayInputStream(photo.bytes())));
        } catch (IOException e) {
            throw new IllegalStateException("a photo that was written cannot be read", e);
        }
    }

    private static BufferedImage read(Photo photo, double widthMm, double heightMm) throws IOException {
        ImageReader reader = ImageIO.getImageReadersByMIMEType(photo.type()).next();
        try {
            reader.setInput(new MemoryCacheImageInputStream(new ByteArrayInputStream(photo.bytes())), true, true);
            int wide = reader.getWidth(0);
            int high = reader.getHeight(0);
            if ((long) wide * high > MOST_PX) throw new IOException("the photo has over " + MOST_PX + " pixels");
            double shrink = Math.max(1, Math.max(wide * Length.INCH_MM / (widthMm * DPI), high * Length.INCH_MM / (heightMm * DPI)));
            ImageReadParam param = reader.getDefaultReadParam();
            int step = Math.max(1, (int) (shrink / 2));
            param.setSourceSubsampling(step, step, 0, 0);
            return shrunk(reader.read(0, param), atLeastOne(wide / shrink), atLeastOne(high / shrink));
        } finally {
            reader.dispose();
        }
    }

    private static int atLeastOne(double px) {
        return Math.max(1, (int) Math.round(px));
    }

    /** By halves first: a single step to under a half would leave pixels out. */
    private static BufferedImage shrunk(BufferedImage image, int wide, int high) {
        BufferedImage now = image;
        while (now.getWidth() >= 2 * wide && now.getHeight() >= 2 * high) now = drawn(now, now.getWidth() / 2, now.getHeight() / 2);
        return drawn(now, wide, high);
    }

    private static BufferedImage drawn(BufferedImage image, int wide, int high) {
        BufferedImage made = new BufferedImage(wide, high, BufferedImage.TYPE_INT_RGB);
        Graphics2D canvas = made.createGraphics();
        canvas.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        canvas.drawImage(image, 0, 0, wide, high, Color.WHITE, null);
        canvas.dispose();
        return made;
    }

    /**
     * The pixels as they are seen.
     *
     * @param up where the first row and the first column of the file are seen
     * @see "Exif 2.3 (CIPA DC-008-2012), 4.6.4, tag 0x0112"
     */
    private static BufferedImage turned(BufferedImage image, int up) {
        int wide = image.getWidth();
        int high = image.getHeight();
        boolean lies = up >= 5;
        boolean fromRight = up == 2 || up == 3 || up == 6 || up == 7;
        boolean fromBottom = up == 3 || up == 4 || up == 7 || up == 8;
        BufferedImage made = new BufferedImage(lies ? high : wide, lies ? wide : high, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < high; y++) {
            for (int x = 0; x < wide; x++) {
                int across = lies ? y : x;
                int down = lies ? x : y;
                made.setRGB(fromRight ? made.getWidth() - 1 - across : across, fromBottom ? made.getHeight() - 1 - down : down, image.getRGB(x, y));
            }
        }
        return made;
    }

    /** Each pixel as light as it is seen: luma of ITU-R BT.601-7, 2.5.1 (from memory). */
    private static BufferedImage grey(BufferedImage image) {
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                Color colour = new Color(image.getRGB(x, y));
                int luma = (int) Math.round(0.299 * colour.getRed() + 0.587 * colour.getGreen() + 0.114 * colour.getBlue());
                image.setRGB(x, y, new Color(luma, luma, luma).getRGB());
            }
        }
        return image;
    }

    private static byte[] jpeg(BufferedImage image) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByMIMEType("image/jpeg").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            ImageWriteParam param = writer.getDefaultWriteParam();
            param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            param.setCompressionQuality(QUALITY);
            writer.setOutput(out);
            writer.write(null, new IIOImage(image, null, null), param);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }
}
