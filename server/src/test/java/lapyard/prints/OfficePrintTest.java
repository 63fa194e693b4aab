package lapyard.prints;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class OfficePrintTest {
    /** 12 mm are 7.56 sixteenths of 25.4 mm: arithmetic. */
    @Test
    void feetAndInchesRoundANearMissUpToTheNextSixteenth() {
        assertEquals("12 mm", OfficePrint.shorter(12, false));
        assertEquals("1/2\"", OfficePrint.shorter(12, true));
        assertEquals("1\"", OfficePrint.shorter(25.4, true));
    }
}
