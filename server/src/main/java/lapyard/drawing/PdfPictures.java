package lapyard.drawing;

import java.io.IOException;
import java.io.OutputStream;
import java.util.IdentityHashMap;
import java.util.Map;
import org.apache.fop.pdf.PDFDocument;
import org.apache.fop.pdf.PDFName;
import org.apache.fop.pdf.PDFXObject;

/** The pictures of one PDF file: a JPEG goes in as it is (PDF 32000-1:2008, 7.4.8). */
final class PdfPictures {
    private final PDFDocument document;
    private final Map<Photo, String> names = new IdentityHashMap<>();

    PdfPictures(PDFDocument document) {
        this.document = document;
    }

    /** Hands a picture to the file, once. @return the name by which pages paint it */
    String name(Photo photo) {
        return names.computeIfAbsent(photo, this::add);
    }

    private String add(Photo photo) {
        String name = "I" + (names.size() + 1);
        Jpeg jpeg = new Jpeg(name, photo);
        document.registerObject(jpeg);
        document.getResources().addXObject(jpeg);
        return name;
    }

    private static final class Jpeg extends PDFXObject {
        private final byte[] bytes;

        Jpeg(String name, Photo photo) {
            bytes = photo.bytes();
            put("Type", new PDFName("XObject"));
            put("Subtype", new PDFName("Image"));
            put("Name", new PDFName(name));
            put("Width", photo.widthPx());
            put("Height", photo.heightPx());
            put("ColorSpace", new PDFName("DeviceRGB"));
            put("BitsPerComponent", 8);
            getFilterList().setDisableAllFilters(true);
            put("Filter", new PDFName("DCTDecode"));
        }

        @Override
        protected int getSizeHint() {
            return bytes.length;
        }

        @Override
        protected void outputRawStreamData(OutputStream out) throws IOException {
            out.write(bytes);
        }
    }
}
