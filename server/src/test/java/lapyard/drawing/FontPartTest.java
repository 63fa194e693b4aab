package lapyard.drawing;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.awt.geom.PathIterator;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import org.apache.fontbox.ttf.GlyphData;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FontPartTest {
    /** Letters of one outline, letters put together of others, a blank, and many of both. */
    private static final String WORDS = "Bed M, 2\u00bd m \u00c4\u00e9\u0151\u1ebf\u1f00 \u0416\u0451 \u2264\u25cf" + signs(0x21, 0x24f);

    private static String signs(int from, int to) {
        StringBuilder all = new StringBuilder();
        for (int c = from; c <= to; c++) all.append((char) c);
        return all.toString();
    }

    /** Read by a library that took no part in writing it. */
    @ParameterizedTest
    @ValueSource(strings = {Fonts.NORMAL, Fonts.BOLD})
    void everySignIsDrawnAsInTheWholeFont(String file) throws Exception {
        SignTables tables = new SignTables(Fonts.bytes(file));
        FontPart part = new FontPart(tables);
        List<Integer> places = new ArrayList<>();
        for (char c : WORDS.toCharArray()) places.add(part.place(tables.number(c)));
        byte[] bytes = part.file();
        try (TrueTypeFont whole = read(Fonts.bytes(file)); TrueTypeFont read = read(bytes)) {
            assertEquals(part.count(), read.getNumberOfGlyphs());
            for (int i = 0; i < places.size(); i++) {
                int sign = tables.number(WORDS.charAt(i));
                String words = "U+" + Integer.toHexString(WORDS.charAt(i));
                assertEquals(sign, part.sign(places.get(i)), words);
                assertEquals(whole.getAdvanceWidth(sign), read.getAdvanceWidth(places.get(i)), words);
                assertArrayEquals(outline(whole.getGlyph().getGlyph(sign)), outline(read.getGlyph().getGlyph(places.get(i))), 0, words);
            }
        }
        // OpenType specification, head: the sum of a whole font file, in words of four bytes
        int sum = 0;
        for (int at = 0; at < bytes.length; at += 4) sum += ByteBuffer.wrap(bytes).getInt(at);
        assertEquals(0xB1B0AFBA, sum);
    }

    private static TrueTypeFont read(byte[] file) throws Exception {
        return new TTFParser(true).parse(new RandomAccessReadBuffer(file));
    }

    private static double[] outline(GlyphData glyph) {
        List<Double> numbers = new ArrayList<>();
        if (glyph != null) {
            for (PathIterator path = glyph.getPath().getPathIterator(null); !path.isDone(); path.next()) {
                double[] six = new double[6];
                numbers.add((double) path.currentSegment(six));
                for (double one : six) numbers.add(one);
            }
        }
        return numbers.stream().mapToDouble(one -> one).toArray();
    }
}
