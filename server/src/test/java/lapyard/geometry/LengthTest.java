package lapyard.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LengthTest {
    /** Arithmetic on 1 in = 25.4 mm exactly (international yard and pound agreement, 1959). */
    @ParameterizedTest(name = "{0} mm is {1}")
    @CsvSource(quoteCharacter = '|', textBlock = """
        2400.3,  7' 10 1/2"
        2400,    7' 10 1/2"
        304.8,   1'
        25.4,    1"
        12.7,    1/2"
        0,       0"
        0.7,     0"
        0.8,     1/16"
        1.5875,  1/16"
        304.79,  1'
        914.4,   3'
        927.1,   3' 1/2"
        106.3625, 4 3/16"
        -76.2,   -3"
        -0.3,    0"
        30480,   100'
        """)
    void isWrittenInFeetInchesAndReducedSixteenths(double mm, String written) {
        assertEquals(written, Length.feetAndInches(mm));
    }

    @ParameterizedTest(name = "{0} mm is {1}")
    @CsvSource({"2400, 2400", "3354.1019, 3354.1", "0.04, 0", "-0.04, 0", "1e9, 1000000000", "99.96, 100", "0.25, 0.3", "1200.05, 1200.1", "-1.15, -1.1"})
    void isWrittenInMillimetresToATenth(double mm, String written) {
        assertEquals(written, Length.written(mm, false));
    }

    @Test
    void isNeverMoreThanHalfASixteenthOff() {
        for (int tenths = 0; tenths < 40_000; tenths += 7) {
            double mm = tenths / 10.0;
            assertEquals(mm, read(Length.feetAndInches(mm)), 25.4 / 32 + 1e-9);
        }
    }

    /** The reader of the test's own: feet, inches and a fraction. */
    private static double read(String written) {
        double mm = 0;
        for (String part : written.replace("\"", "").split(" ")) {
            if (part.endsWith("'")) {
                mm += Double.parseDouble(part.substring(0, part.length() - 1)) * 304.8;
            } else if (part.contains("/")) {
                String[] fraction = part.split("/");
                mm += Double.parseDouble(fraction[0]) / Double.parseDouble(fraction[1]) * 25.4;
            } else {
                mm += Double.parseDouble(part) * 25.4;
            }
        }
        return mm;
    }
}
