package lapyard.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PackCodeTest {
    /** 2400 / 304.8 = 7.874 ft, 7' 10 1/2"; 25 l / 3.785411784 = 6.6 gal; worked by hand. */
    @ParameterizedTest
    @CsvSource({
        "board of 2400, board of 2400 mm, board of 7' 10 1/2\"",
        "board of 2.4 m, board of 2400 mm, board of 7' 10 1/2\"",
        "bulk bag 0.75 m3, bulk bag 0.75 m³, bulk bag 0.98 cu yd",
        "bag of 25 l, bag of 25 l, bag of 6.6 gal",
        "reclaimed board, reclaimed board, reclaimed board"
    })
    void packsAreCalledInTheMeasuresOfTheGarden(String code, String metric, String imperial) {
        assertEquals(metric, PackCode.words(code, false));
        assertEquals(imperial, PackCode.words(code, true));
    }
}
