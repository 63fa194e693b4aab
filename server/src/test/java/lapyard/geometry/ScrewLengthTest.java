package lapyard.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ScrewLengthTest {
    /** ASME B18.6.1 lists 1 to 3 by quarters, 3 to 5 by halves, 6 in (from memory); 8 and 10 in are common practice, no source. 1 in = 25.4 mm. */
    @ParameterizedTest
    @CsvSource({"30, '1\"'", "40, '1 1/2\"'", "50, '2\"'", "60, '2 1/4\"'", "70, '2 3/4\"'", "80, '3\"'", "90, '3 1/2\"'", "100, '4\"'", "120, '4 1/2\"'",
        "152.4, '6\"'", "160, '6\"'", "200, '8\"'", "250, '10\"'", "260, '10\"'"})
    void aScrewIsNamedAsItIsSoldInInches(double mm, String inches) {
        assertEquals(inches, ScrewLength.words(mm, true));
    }
}
