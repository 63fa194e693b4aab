package lapyard.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.util.List;
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
}
