package lapyard.drawing;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import org.apache.fop.pdf.PDFDictionary;
import org.apache.fop.pdf.PDFDocument;
import org.apache.fop.pdf.PDFName;
import org.apache.fop.pdf.PDFObject;
import org.apache.fop.pdf.PDFStream;
import org.apache.fop.pdf.Version;
import org.apache.fop.pdf.VersionController;

/**
 * The library's document with an end of its own. The library keeps each packed object until the file ends, which takes a hundred bytes
 * for each of several hundred thousand, and writes the time. Here they are written at once, and only their places are kept
 * (ISO 32000-1:2008, 7.5.7 and 7.5.8).
 */
final class PdfFile extends PDFDocument {
    /** Bytes of an entry of the cross-reference: its kind, then where, then which. */
    private static final int ENTRY = 7;

    /** By number of an object: that of the stream that it is packed in, 0 for none, and its place there. */
    private int[] streams = new int[1024];

    private char[] places = new char[1024];

    PdfFile() {
        super("Lapyard", VersionController.getFixedVersionController(Version.V1_7));
        objects.remove(getInfo());
    }

    /** Keeps numbers for objects that follow each other. @return the first */
    int reserve(int numbers) {
        objectcount += numbers;
        return objectcount - numbers + 1;
    }

    /** Packs objects with reserved numbers, from this one on, into one stream. */
    void packed(int first, String[] objects) {
        StringBuilder heads = new StringBuilder();
        StringBuilder bodies = new StringBuilder();
        for (int i = 0; i < objects.length; i++) {
            heads.append(first + i).append(' ').append(bodies.length()).append(' ');
            bodies.append(objects[i]).append('\n');
        }
        PDFStream stream = PdfStreams.packed(encode(heads.toString() + bodies));
        stream.put("Type", new PDFName("ObjStm"));
        stream.put("N", objects.length);
        stream.put("First", heads.length());
        registerObject(stream);
        if (streams.length < first + objects.length) {
            streams = Arrays.copyOf(streams, 2 * (first + objects.length));
            places = Arrays.copyOf(places, streams.length);
        }
        for (int i = 0; i < objects.length; i++) {
            streams[first + i] = stream.getObjectNumber().getNumber();
            places[first + i] = (char) i;
        }
    }

    interface Identifying {
        /** Hexadecimal digits that stand for all that was written so far. */
        String identifier();
    }

    /** Writes what is left and the places of all. @param info what the file says of itself */
    void end(PDFDictionary info, Identifying identifying, OutputStream out) throws IOException {
        registerObject(info);
        output(out);
        for (PDFObject last : List.copyOf(trailerObjects)) {
            streamIndirectObject(last, out);
            output(out);
        }
        int own = reserve(1);
        long start = position;
        byte[] entries = PdfStreams.deflated(entries(own, start));
        String id = identifying.identifier();
        String head = own + " 0 obj\n<< /Type /XRef /Size " + (own + 1) + " /W [1 4 2] /Root " + getRoot().referencePDF() + " /Info " + info.referencePDF()
                + " /ID [<" + id + "> <" + id + ">] /Filter /FlateDecode /Length " + entries.length + " >>\nstream\n";
        ByteArrayOutputStream end = new ByteArrayOutputStream(entries.length + 512);
        end.write(encode(head));
        end.write(entries);
        end.write(("\nendstream\nendobj\nstartxref\n" + start + "\n%%EOF\n").getBytes(StandardCharsets.US_ASCII));
        out.write(end.toByteArray());
    }

    private byte[] entries(int own, long start) {
        byte[] entries = new byte[ENTRY * (own + 1)];
        for (int i = 1; i < own; i++) {
            int in = i < streams.length ? streams[i] : 0;
            Long offset = i <= indirectObjectOffsets.size() ? indirectObjectOffsets.get(i - 1) : null;
            if (in != 0) entry(entries, i, 2, in, places[i]);
            else if (offset != null) entry(entries, i, 1, offset, 0);
        }
        entry(entries, own, 1, start, 0);
        entries[5] = (byte) 0xFF; // number 0 begins the list of those that are free
        entries[6] = (byte) 0xFF;
        return entries;
    }

    private static void entry(byte[] entries, int number, int kind, long where, int which) {
        int at = ENTRY * number;
        entries[at] = (byte) kind;
        for (int i = 0; i < 4; i++) entries[at + 1 + i] = (byte) (where >> 24 - 8 * i);
        entries[at + 5] = (byte) (which >> 8);
        entries[at + 6] = (byte) which;
    }
}
