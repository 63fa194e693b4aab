package lapyard.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Many beds in few words. */
class BedNamesTest {
    @Test
    void threeThatCountOnAreDrawnTogether() {
        assertEquals("01-03, 05, 06, X", BedNames.compact(List.of("01", "02", "03", "05", "06", "X")));
        assertEquals("R1, R2, S3-S5", BedNames.compact(List.of("R1", "R2", "S3", "S4", "S5")));
    }

    /** A name of goods with a comma of its own is one name. */
    @Test
    void namesWithCommasStayWhole() {
        assertEquals("Long screws, course to course and oil", BedNames.listed(List.of("Long screws, course to course", "oil")));
        assertEquals("01-03 and X", BedNames.listed(List.of("01", "02", "03", "X")));
    }

    @Test
    void aFindingNamesOneBedOrSeveral() {
        assertEquals("bed M", BedNames.where(List.of("M")));
        assertEquals("beds M, N", BedNames.where(List.of("M", "N")));
        assertEquals("beds 01-03, 05, 10", BedNames.where(List.of("10", "02", "01", "05", "03")));
    }
}
