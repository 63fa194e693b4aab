package lapyard.drawing;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.logging.LogFactory;
import org.apache.commons.logging.impl.NoOpLog;
import org.apache.fontbox.ttf.HeaderTable;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TextMeasureTest {
    /** Against the font machinery of the JDK. */
    @ParameterizedTest
    @ValueSource(strings = {"Bed M", "3000 × 2400 × 600", "7' 10 1/2\"", "ÄÖÜ ß é", "iiiiWWWW", "Σ π ≤"})
    void isAsWideAsTheJdkSetsIt(String text) throws Exception {
        for (boolean bold : new boolean[] {false, true}) {
            InputStream in = new ByteArrayInputStream(Fonts.bytes(bold ? Fonts.BOLD : Fonts.NORMAL));
            Font font = Font.createFont(Font.TRUETYPE_FONT, in).deriveFont(1000f);
            double jdk = font.getStringBounds(text, new FontRenderContext(null, true, true)).getWidth() / 1000;
            assertEquals(jdk * 4, TextMeasure.widthMm(text, 4, bold), 0.02, text);
        }
    }

    @Test
    void cutsWithAnEllipsisAndNeverTooWide() {
        assertEquals("short", TextMeasure.cut("short", 3, false, 50));
        for (String words : TestPages.HOSTILE) {
            for (double most : new double[] {5, 20, 60}) {
                String cut = TextMeasure.cut(words, 3, false, most);
                assertTrue(TextMeasure.widthMm(cut, 3, false) <= most, cut);
                assertTrue(cut.codePoints().noneMatch(c -> c >= 0xD800 && c <= 0xDFFF), "half a pair in " + cut);
            }
        }
    }

    @Test
    void wrapsBetweenWordsAndLosesNone() {
        String words = "Find buried pipes and cables before anything is dug or driven.";
        List<String> lines = TextMeasure.wrap(words, 3, false, 40);
        assertTrue(lines.size() > 2);
        assertEquals(words, String.join(" ", lines));
        lines.forEach(line -> assertTrue(TextMeasure.widthMm(line, 3, false) <= 40, line));
    }

    /** Feet, inches and sixteenths stay together on a line that holds them, whatever stands before. */
    @Test
    void aLengthInFeetIsOneWord() {
        String length = "10' 11 13/16\"";
        for (double most = 30; most < 90; most += 0.5) {
            List<String> lines = TextMeasure.wrap("1 of " + length + " and course 3 of 8' 4\", stage 2 cuts 3/4\" off " + length + ".", 3, false, most);
            assertEquals(2, lines.stream().filter(line -> line.contains(length)).count(), lines::toString);
            assertTrue(lines.stream().anyMatch(line -> line.contains("8' 4\"")), lines::toString);
            lines.forEach(line -> assertTrue(TextMeasure.widthMm(line, 3, false) <= 90, line));
        }
        assertEquals(List.of("10' 11", "13/16\""), TextMeasure.wrap(length, 3, false, 15));
    }

    /** Greedy by definition: a line takes the next word while the whole of it, measured anew, still fits. */
    @Test
    void wrapsAsOneWhoMeasuresEachLineAnew() {
        Random random = new Random(311);
        for (int round = 0; round < 300; round++) {
            List<String> words = new ArrayList<>();
            for (int i = random.nextInt(30); i >= 0; i--) words.add("Wi\u00e9 m.".repeat(4).replace(" ", "").substring(0, 1 + random.nextInt(random.nextInt(9) == 0 ? 20 : 7)));
            double most = 8 + random.nextInt(60);
            List<String> lines = new ArrayList<>();
            String line = "";
            for (String word : words) {
                boolean fits = line.isEmpty() || TextMeasure.widthMm(line + " " + word, 3, false) <= most;
                if (!fits) lines.add(line);
                line = fits && !line.isEmpty() ? line + " " + word : word;
                // a word that is too long is broken where the line is full
                while (line.length() > 1 && TextMeasure.widthMm(line, 3, false) > most) {
                    int end = line.length() - 1;
                    while (end > 1 && TextMeasure.widthMm(line.substring(0, end), 3, false) > most) end--;
                    lines.add(line.substring(0, end));
                    line = line.substring(end);
                }
            }
            lines.add(line);
            assertEquals(lines, TextMeasure.wrap(String.join(" ", words), 3, false, most), "round " + round);
        }
    }

    @Test
    void aMarkThatIsTooLongIsBrokenAfterItsHyphen() {
        assertEquals(List.of("KITCHEN1-", "1Aa"), TextMeasure.wrap("KITCHEN1-1Aa", 3, true, TextMeasure.widthMm("KITCHEN1-1", 3, true)));
    }

    @Test
    void plainWordsStandAsTheyAreAndTheRestIsMadePlain() {
        for (String plain : List.of("", "Bed M", "3000 \u00d7 2400", "a b c")) assertEquals(plain, PlainText.of(plain));
        for (String[] pair : new String[][] {
            {" a", "a"}, {"a ", "a"}, {"a  b", "a b"}, {"a\u00a0b", "a b"}, {"a\u0085b", "ab"}, {"a\tb", "a b"}, {"a\u0007b", "ab"}, {" ", ""},
            {"a\u202eb", "ab"}, {"a\ud800b", "a\ufffdb"}})
            assertEquals(pair[1], PlainText.of(pair[0]), pair[0]);
    }

    /** Outside: what FontBox reads in the file. */
    @Test
    void everySignIsTheOneOfTheWholeFont() throws Exception {
        for (boolean bold : new boolean[] {false, true}) {
            Fonts.Signs signs = Fonts.signs(bold);
            try (TrueTypeFont whole = Fonts.open(signs.file)) {
                for (int c = 0; c <= 0xffff; c++) assertEquals(whole.getUnicodeCmapLookup().getGlyphId(c), signs.number(c), Integer.toHexString(c));
                assertEquals(whole.getNumberOfGlyphs(), signs.advances.length);
                for (int sign = 0; sign < signs.advances.length; sign++) assertEquals(whole.getAdvanceWidth(sign), signs.advances[sign]);
                assertEquals(whole.getUnitsPerEm(), signs.em);
                HeaderTable head = whole.getHeader();
                assertArrayEquals(new int[] {head.getXMin(), head.getYMin(), head.getXMax(), head.getYMax()}, signs.box);
                assertEquals(List.of(top(whole, 'H'), top(whole, 'x'), top(whole, 'd')), List.of(signs.capital, signs.small, signs.ascender));
                assertEquals(whole.getGlyph().getGlyph(signs.number('p')).getYMinimum(), (short) signs.descender);
            }
        }
    }

    @Test
    void theLibrariesOfPaperBeginNoLogging() {
        assertTrue(LogFactory.getLog(TrueTypeFont.class) instanceof NoOpLog);
    }

    private static int top(TrueTypeFont font, char letter) throws Exception {
        return font.getGlyph().getGlyph(font.getUnicodeCmapLookup().getGlyphId(letter)).getYMaximum();
    }
}
