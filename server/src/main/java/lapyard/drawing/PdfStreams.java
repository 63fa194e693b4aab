package lapyard.drawing;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import org.apache.fop.pdf.PDFName;
import org.apache.fop.pdf.PDFStream;

/** Bytes as streams of a PDF (ISO 32000-1:2008, 7.3.8). */
final class PdfStreams {
    private PdfStreams() {}

    /** The bytes as they are. */
    static PDFStream plain(byte[] bytes) {
        PDFStream stream = new PDFStream();
        stream.getFilterList().setDisableAllFilters(true);
        try {
            stream.setData(bytes);
        } catch (IOException e) {
            throw memoryFails(e);
        }
        return stream;
    }

    /** The bytes packed at once: what is drawn is far longer than that and would wait for its turn. */
    static PDFStream packed(byte[] bytes) {
        PDFStream stream = plain(deflated(bytes));
        stream.put("Filter", new PDFName("FlateDecode"));
        return stream;
    }

    static byte[] deflated(byte[] whole) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(whole.length / 3);
        Deflater deflater = new Deflater();
        try (DeflaterOutputStream out = new DeflaterOutputStream(bytes, deflater)) {
            out.write(whole);
        } catch (IOException e) {
            throw memoryFails(e);
        } finally {
            deflater.end();
        }
        return bytes.toByteArray();
    }

    private static IllegalStateException memoryFails(IOException e) {
        return new IllegalStateException("memory cannot be written to", e);
    }
}
