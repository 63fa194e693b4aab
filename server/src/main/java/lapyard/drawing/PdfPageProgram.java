package lapyard.drawing;

import java.awt.image.BufferedImage;
import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import javax.imageio.ImageIO;
import lapyard.drawing.PdfPage.Trouble;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.encryption.InvalidPasswordException;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;

/** The process that {@link PdfPage} starts: a PDF on standard input, its first page as PNG on standard output. */
final class PdfPageProgram {
    /** A page shorter than this would be a line. */
    private static final int LEAST_PX = 8;

    private PdfPageProgram() {}

    public static void main(String[] none) {
        int status;
        // the picture alone: what libraries say goes elsewhere
        OutputStream out = new BufferedOutputStream(new FileOutputStream(FileDescriptor.out));
        System.setOut(System.err);
        try {
            status = paint(out);
        } catch (InvalidPasswordException locked) {
            status = Trouble.LOCKED.status();
        } catch (IOException | RuntimeException unreadable) {
            status = Trouble.UNREADABLE.status();
        } catch (StackOverflowError | OutOfMemoryError tooMuch) {
            status = Trouble.TOO_MUCH.status();
        }
        // whatever a page has started ends with it
        Runtime.getRuntime().halt(status);
    }

    private static int paint(OutputStream out) throws IOException {
        try (PDDocument document = Loader.loadPDF(System.in.readAllBytes())) {
            if (document.getNumberOfPages() == 0) return Trouble.NO_PAGE.status();
            PDRectangle box = document.getPage(0).getCropBox();
            float scale = PdfPage.LONG_SIDE_PX / Math.max(box.getWidth(), box.getHeight());
            if (!(Math.min(box.getWidth(), box.getHeight()) * scale >= LEAST_PX)) return Trouble.NO_PAGE.status();
            BufferedImage page = new PDFRenderer(document).renderImage(0, scale, ImageType.RGB);
            if (!ImageIO.write(page, "png", out)) throw new IOException("no PNG writer");
            out.flush();
            return 0;
        }
    }
}
