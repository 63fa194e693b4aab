package lapyard.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PaperAndScaleTest {
    /** ISO 216: A0 is 841 x 1189 mm; each next sheet halves the longer side and rounds down to whole millimetres. */
    @Test
    void sheetsHalveAsIso216Says() {
        double shortSide = 841;
        double longSide = 1189;
        for (Paper paper : List.of(Paper.A0, Paper.A1, Paper.A2, Paper.A3, Paper.A4)) {
            assertEquals(shortSide, paper.shortMm, paper.label());
            assertEquals(longSide, paper.longMm, paper.label());
            double half = Math.floor(longSide / 2);
            longSide = shortSide;
            shortSide = half;
        }
    }

    /** ISO 216, the sizes as published. */
    @ParameterizedTest
    @CsvSource({"A0, 841, 1189", "A1, 594, 841", "A2, 420, 594", "A3, 297, 420", "a4, 210, 297"})
    void sheetsMeasureWhatIso216Prints(String name, double shortMm, double longMm) {
        assertEquals(shortMm, Paper.named(name).shortMm);
        assertEquals(longMm, Paper.named(name).longMm);
    }

    /** 8 1/2 x 11 in and 11 x 17 in of 25.4 mm. */
    @Test
    void inchSheetsMeasureTheirInches() {
        assertEquals(8.5 * 25.4, Paper.LETTER.shortMm, 1e-9);
        assertEquals(11 * 25.4, Paper.LETTER.longMm, 1e-9);
        assertEquals(11 * 25.4, Paper.TABLOID.shortMm, 1e-9);
        assertEquals(17 * 25.4, Paper.named("tabloid").longMm, 1e-9);
    }

    @Test
    void unknownPaperIsRefusedByName() {
        var e = assertThrows(IllegalArgumentException.class, () -> Paper.named("A9"));
        assertTrue(e.getMessage().contains("A9") && e.getMessage().contains("Tabloid"), e.getMessage());
    }

    /** ISO 5455:1979, recommended reductions, extended by powers of ten; 1:25, 1:75, 1:125 as on scale rules (common practice, no source). */
    @Test
    void usualScalesAreThoseOfIso5455AndOfScaleRules() {
        int[] published = {1, 2, 5, 10, 20, 25, 50, 75, 100, 125, 200, 250, 500, 750, 1000, 1250, 2000, 2500, 5000, 7500, 10000};
        for (int i = 0; i < published.length; i++) {
            assertEquals(published[i], Scale.usual(published[i], false).n());
            if (i > 0) {
                assertEquals(published[i], Scale.usual(published[i - 1] + 0.01, false).n());
            }
        }
    }

    /** Arithmetic: a foot is 12 inches, so 1/4 in = 1 ft is 1:48, 1/8 in = 1 ft is 1:96, 1 in = 10 ft is 1:120. */
    @ParameterizedTest
    @CsvSource({"40, 48, 1/4 in = 1 ft (1:48)", "49, 64, 3/16 in = 1 ft (1:64)", "65, 96, 1/8 in = 1 ft (1:96)", "97, 120, 1 in = 10 ft (1:120)"})
    void scalesInFeetAreWrittenInInchesToTheFoot(double least, int n, String label) {
        Scale scale = Scale.usual(least, true);
        assertEquals(n, scale.n());
        assertEquals(label, scale.label(true));
        assertEquals("1:" + n, scale.label(false));
    }

    /** Arithmetic: 5 m are 100 mm at 1:50 and 50 mm at 1:100; 96 px and 72 pt in an inch of 25.4 mm. */
    @Test
    void paperLengthsAreRealLengthsByScale() {
        assertEquals(100, new Scale(50).paperMm(5000), 1e-9);
        assertEquals(50, new Scale(100).paperMm(5000), 1e-9);
        assertEquals(60, new Scale(50).paperMm(3000), 1e-9);
        assertEquals(2.83465, PdfWriter.POINTS_IN_MM, 1e-5);
        assertEquals(3.77953, 96 / 25.4, 1e-5);
        // An A3 sheet with 20 mm on the left and 10 mm elsewhere covers 19.5 x 13.85 m at 1:50 (ISO 5457, from memory).
        assertEquals(19_500, new Scale(50).realMm(Paper.A3.longMm - 30), 1e-9);
        assertEquals(13_850, new Scale(50).realMm(Paper.A3.shortMm - 20), 1e-9);
    }

    @Test
    void whatNoScaleCanHoldIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new Scale(0));
        assertThrows(IllegalArgumentException.class, () -> new Scale(-50));
        assertThrows(IllegalArgumentException.class, () -> Scale.usual(1e12, false));
    }
}
