package lapyard.drawing;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOInvalidTreeException;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;
import lapyard.geometry.Length;
import lapyard.geometry.Point;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.GlyphData;
import org.apache.fontbox.ttf.TrueTypeFont;

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
        double greatest = Math.floor(Length.INCH_MM * Math.sqrt(MOST_PIXELS / (page.widthMm() * page.heightMm())));
        if (!(dpi >= 1 && dpi <= greatest)) {
            throw new IllegalArgumentException("a picture of this sheet has 1 to " + (long) greatest + " dpi, was " + dpi);
        }
        double pixelsInMm = dpi / Length.INCH_MM;
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

    /** The shapes of a page on a canvas of pixels. Letters are areas like others, so that no font of the machine is asked for. */
    private static final class PngCanvas {
        private final Graphics2D canvas;
        private final Map<Stroke, BasicStroke> pens = new HashMap<>();
        private final Letters normal = new Letters(Fonts.NORMAL);
        private final Letters bold = new Letters(Fonts.BOLD);

        /** @param canvas in pixels; its transform becomes that of the page */
        PngCanvas(Graphics2D canvas, double pixelsInMm) {
            this.canvas = canvas;
            canvas.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
            canvas.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
            canvas.scale(pixelsInMm, pixelsInMm);
        }

        void draw(List<Shape> shapes) {
            shapes.forEach(this::draw);
        }

        private void draw(Shape shape) {
            if (shape instanceof Shape.Group group) {
                draw(group.shapes());
            } else if (shape instanceof Shape.Window window) {
                java.awt.Shape before = canvas.getClip();
                canvas.clip(new Rectangle2D.Double(window.x(), window.y(), window.widthMm(), window.heightMm()));
                draw(window.shapes());
                canvas.setClip(before);
            } else if (shape instanceof Shape.Lines lines) {
                stroke(path(lines.lines(), false), lines.stroke());
            } else if (shape instanceof Shape.Area area) {
                area(area);
            } else if (shape instanceof Shape.Circle circle) {
                double r = circle.radiusMm();
                paint(new Ellipse2D.Double(circle.centre().x() - r, circle.centre().y() - r, 2 * r, 2 * r), circle.fill(), circle.stroke());
            } else if (shape instanceof Shape.Text text) {
                text(text);
            } else if (shape instanceof Shape.Picture picture) {
                picture(picture);
            } else if (!(shape instanceof Shape.Link)) {
                throw new IllegalStateException("no way to draw " + shape.getClass());
            }
        }

        private void picture(Shape.Picture picture) {
            BufferedImage image = PaperPhoto.pixels(picture.photo());
            canvas.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
            canvas.drawImage(image, new AffineTransform(picture.widthMm() / image.getWidth(), 0, 0, picture.heightMm() / image.getHeight(), picture.x(), picture.y()), null);
        }

        private void area(Shape.Area area) {
            Path2D rings = path(area.rings(), true);
            paint(rings, area.fill(), Optional.empty());
            area.hatch().ifPresent(hatch -> stroke(path(hatch.within(area.rings()), false), hatch.stroke()));
            paint(rings, Optional.empty(), area.stroke());
        }

        private void paint(java.awt.Shape outline, Optional<String> fill, Optional<Stroke> stroke) {
            if (fill.isPresent()) {
                canvas.setColor(colour(fill.get()));
                canvas.fill(outline);
            }
            stroke.ifPresent(pen -> stroke(outline, pen));
        }

        private void stroke(java.awt.Shape lines, Stroke stroke) {
            canvas.setColor(colour(stroke.colour()));
            canvas.setStroke(pens.computeIfAbsent(stroke, PngCanvas::pen));
            canvas.draw(lines);
        }

        private static BasicStroke pen(Stroke stroke) {
            float[] dashes = new float[stroke.dashMm().size()];
            for (int i = 0; i < dashes.length; i++) dashes[i] = stroke.dashMm().get(i).floatValue();
            return new BasicStroke(
                    (float) stroke.widthMm(), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND, 10, dashes.length == 0 ? null : dashes, 0);
        }

        private static Color colour(String colour) {
            return new Color(Integer.parseInt(colour, 1, 7, 16));
        }

        private static Path2D path(List<List<Point>> lines, boolean closed) {
            Path2D path = new Path2D.Double(Path2D.WIND_EVEN_ODD);
            for (List<Point> line : lines) {
                path.moveTo(line.get(0).x(), line.get(0).y());
                for (Point point : line.subList(1, line.size())) path.lineTo(point.x(), point.y());
                if (closed) path.closePath();
            }
            return path;
        }

        private void text(Shape.Text text) {
            String words = TextMeasure.drawable(text.text());
            double wide = text.anchor() == Shape.Anchor.START ? 0 : TextMeasure.widthMm(words, text.sizeMm(), text.bold());
            Letters letters = text.bold() ? bold : normal;
            AffineTransform before = canvas.getTransform();
            canvas.translate(text.at().x(), text.at().y());
            canvas.rotate(-Math.toRadians(text.turnDeg()));
            canvas.translate(text.anchor() == Shape.Anchor.MIDDLE ? -wide / 2 : -wide, 0);
            canvas.scale(text.sizeMm(), -text.sizeMm());
            canvas.setColor(colour(text.colour()));
            for (int i = 0; i < words.length(); i++) {
                canvas.fill(letters.outline(words.charAt(i)));
                canvas.translate(TextMeasure.widthMm(words.substring(i, i + 1), 1, text.bold()), 0);
            }
            canvas.setTransform(before);
        }

        /** Outlines of the letters of a font, 1 em high, y upwards. */
        private static final class Letters {
            private final String file;
            private final Map<Character, Path2D> outlines = new HashMap<>();
            private TrueTypeFont font;
            private CmapLookup glyphs;

            Letters(String file) {
                this.file = file;
            }

            Path2D outline(char c) {
                return outlines.computeIfAbsent(c, this::read);
            }

            private Path2D read(char c) {
                try {
                    if (font == null) {
                        font = Fonts.open(file);
                        glyphs = font.getUnicodeCmapLookup();
                    }
                    GlyphData glyph = font.getGlyph().getGlyph(glyphs.getGlyphId(c));
                    if (glyph == null) return new Path2D.Double();
                    double em = 1.0 / font.getUnitsPerEm();
                    return new Path2D.Double(glyph.getPath(), AffineTransform.getScaleInstance(em, em));
                } catch (IOException e) {
                    throw Fonts.unreadable(file, e);
                }
            }
        }
    }
}
