package lapyard.drawing;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.Inflater;
import lapyard.geometry.Point;
import org.junit.jupiter.api.Test;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

/** The places of all objects of a file, read byte by byte: readers find objects again where places are wrong, and say nothing. */
class PdfFileTest {
    private static void write(OutputStream out, int pages) throws IOException {
        PdfWriter writer = new PdfWriter(out, "Places");
        for (int i = 0; i < pages; i++) {
            List<Shape> shapes = new ArrayList<>(List.of(TestPages.line(), new Shape.Link(10, 10, 20, 5, (i + 1) % pages, "next", Tag.AROUND)));
            Tag table = Tag.table();
            for (int row = 0; row < 150; row++) {
                Tag cells = table.row(2);
                for (int k = 0; k < 2; k++) shapes.add(new Shape.Text(new Point(20 + 50 * k, row), i + " and " + row * i, 3, Shape.Anchor.START, 0, false, "#000000", cells.cell(k)));
            }
            writer.add(new Page("page " + i, 210, 297, shapes, List.of()));
        }
        writer.finish(List.of(new PdfWriter.Bookmark("all", 0, List.of(new PdfWriter.Bookmark("last", pages - 1, List.of())))));
    }

    private static byte[] written(int pages) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        write(bytes, pages);
        return bytes.toByteArray();
    }

    /** ISO 32000-1:2008, 7.5.7 (object streams) and 7.5.8 (cross-reference streams, here with entries of 1, 4 and 2 bytes). */
    @Test
    void everyObjectIsWhereTheFileSaysAndNoneIsMissing() throws Exception {
        byte[] file = written(40);
        String text = new String(file, StandardCharsets.ISO_8859_1);
        int places = Integer.parseInt(first("startxref\n(\\d+)\n%%EOF\n$", text));
        assertTrue(text.substring(places, places + 200).contains("/Type /XRef") && text.substring(places, places + 200).contains("/W [1 4 2]"));
        int size = Integer.parseInt(first("/Size (\\d+)", text.substring(places, places + 200)));
        byte[] entries = stream(file, text, places);
        assertEquals(7 * size, entries.length);
        String[] bodies = new String[size];
        Map<Integer, String> streams = new HashMap<>();
        int packed = 0;
        for (int number = 1; number < size; number++) {
            int where = (int) number(entries, 7 * number + 1, 4);
            if (entries[7 * number] == 1) {
                assertTrue(text.startsWith(number + " 0 obj", where), "object " + number + " at " + where);
                bodies[number] = text.substring(where, text.indexOf("endobj", where)).split("stream\r?\n", 2)[0];
            } else if (entries[7 * number] == 2) {
                int at = (int) number(entries, 7 * where + 1, 4);
                if (!streams.containsKey(where)) streams.put(where, new String(stream(file, text, at), StandardCharsets.ISO_8859_1));
                String held = streams.get(where);
                int first = Integer.parseInt(first("/First (\\d+)", text.substring(at, at + 200)));
                String[] heads = held.substring(0, first).split(" ");
                int which = (int) number(entries, 7 * number + 5, 2);
                assertEquals(String.valueOf(number), heads[2 * which], "in stream " + where);
                int from = first + Integer.parseInt(heads[2 * which + 1]);
                bodies[number] = held.substring(from, held.indexOf('\n', from));
                packed++;
            }
        }
        assertTrue(packed > 40 * 300, packed + " packed");
        int references = 0;
        for (int number = 1; number < size; number++) {
            Matcher reference = Pattern.compile("\\b(\\d+) 0 R").matcher(bodies[number] == null ? "" : bodies[number]);
            while (reference.find()) {
                assertTrue(bodies[Integer.parseInt(reference.group(1))] != null, "object " + number + " asks for " + reference.group());
                references++;
            }
        }
        assertTrue(references > packed, references + " references");
    }

    /** A disk that is full or a reader that went away. */
    @Test
    void whatCannotBeWrittenIsToldWhereverItBreaks() throws Exception {
        int whole = written(3).length;
        for (int most = 0; most < whole; most += whole / 50) {
            int room = most;
            OutputStream narrow = new OutputStream() {
                private int written;

                @Override
                public void write(int one) throws IOException {
                    if (written++ >= room) throw new IOException("full");
                }
            };
            assertEquals("full", assertThrows(IOException.class, () -> write(narrow, 3), "after " + room).getMessage());
        }
    }

    private static String first(String pattern, String text) {
        Matcher found = Pattern.compile(pattern).matcher(text);
        assertTrue(found.find(), pattern);
        return found.group(1);
    }

    /** Whole number, the highest byte first. */
    private static long number(byte[] bytes, int from, int count) {
        long number = 0;
        for (int i = 0; i < count; i++) number = number << 8 | bytes[from + i] & 0xff;
        return number;
    }

    private static byte[] stream(byte[] file, String text, int at) throws Exception {
        Matcher begins = Pattern.compile("stream\r?\n").matcher(text);
        assertTrue(begins.find(at));
        Inflater inflater = new Inflater();
        inflater.setInput(file, begins.end(), file.length - begins.end());
        byte[] whole = new byte[10_000_000];
        int length = inflater.inflate(whole);
        assertTrue(inflater.finished());
        inflater.end();
        return Arrays.copyOf(whole, length);
    }
}
