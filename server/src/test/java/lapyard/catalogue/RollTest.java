package lapyard.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class RollTest {
    /** 1 ft = 304.8 mm exactly, by the international yard of 1959; 51 of them by 304.8 are 50.99999999999999 in binary. */
    @Test
    void aRollSoldByTheFootGivesAllItsFeet() {
        for (int feet = 1; feet <= 400; feet++) {
            OptionalDouble all = OptionalDouble.of(feet * 3048 / 10.0);
            assertEquals(all.getAsDouble(), new Roll("R", "liner", 2000, Optional.empty(), 304.8, all, "", OptionalDouble.empty(), true).longestMm(), 1e-9);
        }
    }
}
