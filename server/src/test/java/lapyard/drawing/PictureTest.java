package lapyard.drawing;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.StringReader;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.PDFStreamEngine;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.contentstream.operator.OperatorProcessor;
import org.apache.pdfbox.contentstream.operator.state.Concatenate;
import org.apache.pdfbox.contentstream.operator.state.Restore;
import org.apache.pdfbox.contentstream.operator.state.Save;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.util.Matrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.xml.sax.InputSource;

/** A photo on a page, as PDFBox, the JDK's XML parser and its picture readers find it. */
class PictureTest {
    /** Its quarters are red and green above, blue and white below. */
    private static BufferedImage quarters(int wide, int high) {
        BufferedImage image = new BufferedImage(wide, high, BufferedImage.TYPE_INT_RGB);
        for (int x = 0; x < wide; x++) {
            for (int y = 0; y < high; y++) {
                Color colour = y < high / 2 ? x < wide / 2 ? Color.RED : Color.GREEN : x < wide / 2 ? Color.BLUE : Color.WHITE;
                image.setRGB(x, y, colour.getRGB());
            }
        }
        return image;
    }

    private static byte[] file(String format, BufferedImage image) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(image, format, out);
        return out.toByteArray();
    }

    /** R, G, B or W for each quarter: above left, above right, below left, below right. */
    private static String seen(BufferedImage image) {
        StringBuilder seen = new StringBuilder();
        for (int y = 1; y <= 3; y += 2) for (int x = 1; x <= 3; x += 2) seen.append(letter(new Color(image.getRGB(image.getWidth() * x / 4, image.getHeight() * y / 4))));
        return seen.toString();
    }

    private static char letter(Color colour) {
        boolean red = colour.getRed() > 128;
        boolean green = colour.getGreen() > 128;
        boolean blue = colour.getBlue() > 128;
        return red && green && blue ? 'W' : red ? 'R' : green ? 'G' : blue ? 'B' : '?';
    }

    private static BufferedImage read(byte[] picture) throws Exception {
        return ImageIO.read(new ByteArrayInputStream(picture));
    }

    /**
     * Exif 2.3 (CIPA DC-008-2012), 4.6.4, tag 0x0112: where the 0th row and the 0th column of the file are seen: 1 top left,
     * 2 top right, 3 bottom right, 4 bottom left, 5 left top, 6 right top, 7 right bottom, 8 left bottom. The file reads RG over BW.
     */
    @ParameterizedTest
    @CsvSource({"1, RGBW", "2, GRWB", "3, WBGR", "4, BWRG", "5, RBGW", "6, BRWG", "7, WGBR", "8, GWRB"})
    void aPhotoIsSeenTheWayTheCameraWasHeld(int up, String quarters) throws Exception {
        byte[] jpeg = file("jpeg", quarters(160, 96));
        ByteBuffer exif = ByteBuffer.allocate(36).put(new byte[] {(byte) 0xFF, (byte) 0xE1, 0, 34}).put("Exif\0\0II".getBytes(StandardCharsets.US_ASCII));
        exif.order(java.nio.ByteOrder.LITTLE_ENDIAN).putShort((short) 42).putInt(8).putShort((short) 1).putShort((short) 0x0112).putShort((short) 3).putInt(1).putShort((short) up);
        ByteArrayOutputStream phone = new ByteArrayOutputStream();
        phone.writeBytes(Arrays.copyOf(jpeg, 2));
        phone.writeBytes(exif.array());
        phone.writeBytes(Arrays.copyOfRange(jpeg, 2, jpeg.length));
        byte[] kept = Photo.of(phone.toByteArray()).bytes();
        assertEquals(up, Photo.of(kept).up(), "what is kept still knows it");
        Photo photo = PaperPhoto.of(kept, 50, 50, false).orElseThrow();
        assertEquals(quarters, seen(read(photo.bytes())));
        assertEquals(up < 5 ? 160 : 96, photo.widthPx());
        assertEquals(1, photo.up());
    }

    /** 200 dots in an inch of 25.4 mm: 50.8 mm are 400. */
    @ParameterizedTest
    @CsvSource({"jpeg, 4000, 3000, 400, 300", "png, 1500, 3000, 150, 300", "png, 40, 30, 40, 30", "jpeg, 3000, 1, 400, 1"})
    void noPhotoIsFinerThanPaperShows(String format, int wide, int high, int widePx, int highPx) throws Exception {
        Photo photo = PaperPhoto.of(file(format, quarters(wide, high)), 50.8, 38.1, false).orElseThrow();
        assertEquals(widePx, photo.widthPx());
        assertEquals(highPx, photo.heightPx());
        if (highPx > 1) assertEquals("RGBW", seen(read(photo.bytes())));
    }

    /** Luma of red, green, blue and white by ITU-R BT.601: 76, 150, 29 and 255 (from memory). */
    @Test
    void inMonoAPhotoIsGrey() throws Exception {
        BufferedImage grey = read(PaperPhoto.of(file("png", quarters(160, 96)), 50, 30, true).orElseThrow().bytes());
        int[] xs = {grey.getWidth() / 4, 3 * grey.getWidth() / 4};
        int[] ys = {grey.getHeight() / 4, 3 * grey.getHeight() / 4};
        int[] luma = {76, 150, 29, 255};
        for (int i = 0; i < 4; i++) {
            Color seen = new Color(grey.getRGB(xs[i % 2], ys[i / 2]));
            for (int part : new int[] {seen.getRed(), seen.getGreen(), seen.getBlue()}) assertEquals(luma[i], part, 4, "quarter " + i);
        }
    }

    @Test
    void whatCannotBeDecodedIsNoPicture() throws Exception {
        byte[] cut = file("png", quarters(300, 200));
        Arrays.fill(cut, 41, cut.length - 12, (byte) 7);
        assertTrue(PaperPhoto.of(cut, 50, 50, false).isEmpty());
        assertTrue(PaperPhoto.of(new byte[] {1, 2, 3}, 50, 50, false).isEmpty());
        assertTrue(PaperPhoto.of(file("png", new BufferedImage(4001, 4000, BufferedImage.TYPE_BYTE_BINARY)), 50, 50, false).isEmpty(), "over 16 million pixels");
    }

    private static Page page() throws Exception {
        Photo photo = PaperPhoto.of(file("jpeg", quarters(160, 96)), 50, 30, false).orElseThrow();
        return new Page("p", 210, 297, List.of(TestPages.text("before"), new Shape.Picture(30, 40, 50, 30, photo, "photo of: rim <splinters>", Tag.AROUND), TestPages.text("after"),
                new Shape.Picture(100, 40, 25, 15, photo, "again", Tag.AROUND)), List.of());
    }

    /** Where pictures are painted: their matrix takes the unit square to them (PDF 32000-1:2008, 8.9.5.1). */
    private static final class Painted extends PDFStreamEngine {
        private final List<Matrix> places = new ArrayList<>();
        private final List<PDImageXObject> images = new ArrayList<>();

        Painted() {
            addOperator(new Concatenate(this));
            addOperator(new Save(this));
            addOperator(new Restore(this));
            addOperator(new OperatorProcessor(this) {
                @Override
                public void process(Operator operator, List<COSBase> operands) throws java.io.IOException {
                    places.add(getGraphicsState().getCurrentTransformationMatrix());
                    images.add((PDImageXObject) getResources().getXObject((COSName) operands.get(0)));
                }

                @Override
                public String getName() {
                    return "Do";
                }
            });
        }
    }

    @Test
    void pdfHoldsThePictureAtItsPlaceAndSizeAndSaysWhatItShows() throws Exception {
        byte[] bytes = PdfWriter.write(List.of(page()));
        assertArrayEquals(bytes, PdfWriter.write(List.of(page())));
        double point = 72 / 25.4;
        try (PDDocument pdf = Loader.loadPDF(bytes)) {
            Painted painted = new Painted();
            painted.processPage(pdf.getPage(0));
            assertEquals(2, painted.images.size());
            Matrix place = painted.places.get(0);
            assertEquals(30 * point, place.getTranslateX(), 0.01);
            assertEquals((297 - 40 - 30) * point, place.getTranslateY(), 0.01);
            assertEquals(50 * point, place.getScaleX(), 0.01);
            assertEquals(30 * point, place.getScaleY(), 0.01);
            assertEquals("RGBW", seen(painted.images.get(0).getImage()));
            assertEquals(painted.images.get(0).getCOSObject(), painted.images.get(1).getCOSObject(), "one photo stands in the file once");
            List<String> read = new ArrayList<>();
            PDStructureElement section = (PDStructureElement) ((PDStructureElement) pdf.getDocumentCatalog().getStructureTreeRoot().getKids().get(0)).getKids().get(0);
            for (Object kid : section.getKids()) {
                PDStructureElement part = (PDStructureElement) kid;
                read.add(part.getStructureType() + (part.getAlternateDescription() == null ? "" : " " + part.getAlternateDescription()));
            }
            assertEquals(List.of("P", "Figure photo of: rim <splinters>", "P", "Figure again"), read);
            BufferedImage drawn = new org.apache.pdfbox.rendering.PDFRenderer(pdf).renderImageWithDPI(0, 25.4f);
            assertEquals("RGBW", seen(drawn.getSubimage(30, 40, 50, 30)), "upright");
        }
    }

    @Test
    void svgHoldsThePictureItself() throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultInstance();
        factory.setNamespaceAware(true);
        var images = factory.newDocumentBuilder().parse(new InputSource(new StringReader(SvgWriter.write(page())))).getElementsByTagNameNS("http://www.w3.org/2000/svg", "image");
        assertEquals(2, images.getLength());
        var image = (org.w3c.dom.Element) images.item(0);
        assertEquals(List.of("30", "40", "50", "30"), List.of(image.getAttribute("x"), image.getAttribute("y"), image.getAttribute("width"), image.getAttribute("height")));
        String[] data = image.getAttributeNS("http://www.w3.org/1999/xlink", "href").split(",");
        assertEquals("data:image/jpeg;base64", data[0]);
        assertEquals("RGBW", seen(read(Base64.getDecoder().decode(data[1]))));
        assertEquals("photo of: rim <splinters>", image.getTextContent().strip());
        assertEquals(List.of(), SvgWriterTest.faults(SvgWriter.write(page())));
    }

    @Test
    void pngShowsThePicture() throws Exception {
        assertEquals("RGBW", seen(read(PngWriter.write(page(), 25.4)).getSubimage(30, 40, 50, 30)));
    }
}
