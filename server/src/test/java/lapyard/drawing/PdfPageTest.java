package lapyard.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import javax.imageio.ImageIO;
import lapyard.working.BrokenRule.Rule;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.encryption.AccessPermission;
import org.apache.pdfbox.pdmodel.encryption.StandardProtectionPolicy;
import org.junit.jupiter.api.Test;

/** The first page of a PDF lies as it is on paper, and a hostile one is refused in a sentence. */
class PdfPageTest {
    /** A3 lying, ISO 216: 420 x 297 mm; a point is 1/72 inch, ISO 32000-1, 8.3.2.3. */
    private static final PDRectangle A3 = new PDRectangle(1190.55f, 841.89f);

    private static byte[] saved(PDDocument document) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        document.save(out);
        return out.toByteArray();
    }

    /** A red square of 100 points at the lower left and a blue one at the upper right; a second page all black. */
    private static PDDocument plan(PDRectangle size) throws IOException {
        PDDocument document = new PDDocument();
        for (Color[] page : new Color[][] {{Color.RED, Color.BLUE}, {Color.BLACK, Color.BLACK}}) {
            PDPage one = new PDPage(size);
            document.addPage(one);
            try (PDPageContentStream pen = new PDPageContentStream(document, one)) {
                pen.setNonStrokingColor(page[0]);
                pen.addRect(0, 0, 100, 100);
                pen.fill();
                pen.setNonStrokingColor(page[1]);
                pen.addRect(size.getWidth() - 100, size.getHeight() - 100, 100, 100);
                pen.fill();
            }
        }
        return document;
    }

    private static Rule refused(byte[] pdf) throws IOException {
        return assertInstanceOf(PdfPage.Result.Refused.class, PdfPage.paint(pdf, 5)).rule();
    }

    @Test
    void firstPageIsPaintedAsItLies() throws IOException {
        try (PDDocument document = plan(A3)) {
            byte[] png = assertInstanceOf(PdfPage.Result.Painted.class, PdfPage.paint(saved(document))).png();
            BufferedImage page = ImageIO.read(new ByteArrayInputStream(png));
            assertEquals(1600, page.getWidth());
            assertEquals(1131, page.getHeight(), 1); // 1600 x 297 / 420 = 1131.4
            assertEquals(Color.RED.getRGB(), page.getRGB(60, page.getHeight() - 60));
            assertEquals(Color.BLUE.getRGB(), page.getRGB(1540, 60));
            assertEquals(Color.WHITE.getRGB(), page.getRGB(800, 560));
        }
    }

    @Test
    void whatIsLockedOrNoPdfOrHasNoPageIsRefusedWithAWayOut() throws IOException {
        try (PDDocument document = plan(A3)) {
            document.protect(new StandardProtectionPolicy("owner", "user", new AccessPermission()));
            assertEquals(Rule.PDF_LOCKED, refused(saved(document)));
        }
        assertEquals(Rule.PDF_UNREADABLE, refused("%PDF-1.7 and no more".getBytes(StandardCharsets.US_ASCII)));
        try (PDDocument none = new PDDocument()) {
            assertEquals(Rule.PDF_NO_PAGE, refused(saved(none)));
        }
        try (PDDocument line = plan(new PDRectangle(14400, 1))) {
            assertEquals(Rule.PDF_NO_PAGE, refused(saved(line)));
        }
        assertThrows(IllegalArgumentException.class, () -> PdfPage.paint(new byte[PdfPage.MOST_BYTES + 1]));
    }

    /** 400 MB of drawing in a file of less than 1 MB. */
    @Test
    void smallFileThatGrowsIsEndedAndRefused() throws IOException {
        try (PDDocument document = new PDDocument()) {
            PDPage page = new PDPage(A3);
            document.addPage(page);
            PDStream content = new PDStream(document);
            byte[] square = "q 0 0 m 9 9 l S Q\n".repeat(4000).getBytes(StandardCharsets.US_ASCII);
            try (OutputStream out = content.createOutputStream(COSName.FLATE_DECODE)) {
                for (int written = 0; written < 400_000_000; written += square.length) out.write(square);
            }
            page.setContents(content);
            byte[] pdf = saved(document);
            assertTrue(pdf.length < PdfPage.MOST_BYTES, pdf.length + " bytes");
            assertTrue(Set.of(Rule.PDF_HEAVY, Rule.PDF_SLOW).contains(refused(pdf)));
        }
    }
}
