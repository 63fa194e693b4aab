package lapyard.drawing;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOInvalidTreeException;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;

/** Writes a page as PNG. */
public final class PngWriter {
    private PngWriter() {}

    /** About 250 MB of picture while it is drawn. */
    private static final double MOST_PIXELS = 64e6;

    /**
     * The page in pixels on white; the file says how large a pixel is, so that it prints in true size.
     *
     * @param dpi pixels in an inch of 25.4 mm
     * @throws IllegalArgumentException when dpi is not above 0 or makes too large a picture, naming the greatest dpi
     */
    public static byte[] write(Page page, double dpi) {
        double greatest = Math.floor(25.4 * Math.sqrt(MOST_PIXELS / (page.widthMm() * page.heightMm())));
        if (!(dpi >= 1 && dpi <= greatest)) {
            throw new IllegalArgumentException("a picture of this sheet has 1 to " + (long) greatest + " dpi, was " + dpi);
        }
        double pixelsInMm = dpi / 25.4;
        BufferedImage image = new BufferedImage(
                (int) Math.round(page.widthMm() * pixelsInMm),
                (int) Math.round(page.heightMm() * pixelsInMm),
                BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        try {
            graphics.setColor(Color.WHITE);
            graphics.fillRect(0, 0, image.getWidth(), image.getHeight());
            new PngCanvas(graphics, pixelsInMm).draw(page.shapes());
        } finally {
            graphics.dispose();
        }
        return encoded(image, pixelsInMm);
    }

    private static byte[] encoded(BufferedImage image, double pixelsInMm) {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (var out = ImageIO.createImageOutputStream(bytes)) {
            IIOMetadata about = writer.getDefaultImageMetadata(ImageTypeSpecifier.createFromBufferedImageType(image.getType()), null);
            about.mergeTree("javax_imageio_png_1.0", pixelSize(pixelsInMm));
            writer.setOutput(out);
            writer.write(new IIOImage(image, null, about));
            out.flush();
            return bytes.toByteArray();
        } catch (IIOInvalidTreeException e) {
            throw new IllegalStateException("the picture's pixel size could not be noted", e);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            writer.dispose();
        }
    }

    private static IIOMetadataNode pixelSize(double pixelsInMm) {
        IIOMetadataNode root = new IIOMetadataNode("javax_imageio_png_1.0");
        IIOMetadataNode size = new IIOMetadataNode("pHYs");
        String inMetre = String.valueOf(Math.round(pixelsInMm * 1000));
        size.setAttribute("pixelsPerUnitXAxis", inMetre);
        size.setAttribute("pixelsPerUnitYAxis", inMetre);
        size.setAttribute("unitSpecifier", "meter");
        root.appendChild(size);
        return root;
    }
}
