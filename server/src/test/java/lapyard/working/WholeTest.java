package lapyard.working;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Random;
import org.junit.jupiter.api.Test;

class WholeTest {
    /** Against decimals, which are exact: lengths in tenths of a millimetre over steps in tenths. */
    @Test
    void countsAsDecimalsDo() {
        Random random = new Random(8221);
        int missed = 0;
        for (int i = 0; i < 20_000; i++) {
            BigDecimal step = BigDecimal.valueOf(1 + random.nextInt(20_000), 1);
            BigDecimal length = random.nextBoolean() ? step.multiply(BigDecimal.valueOf(random.nextInt(500))) : BigDecimal.valueOf(random.nextInt(300_000), 1);
            // told in metres and in parts that are added, as volumes and runs are
            double amount = (length.doubleValue() / 1000 + 0.1 - 0.1) / (step.doubleValue() / 1000);
            String what = length + " by " + step;
            assertEquals(length.divide(step, 0, RoundingMode.CEILING).doubleValue(), Whole.up(amount), 0, what);
            assertEquals(length.divide(step, 0, RoundingMode.FLOOR).doubleValue(), Whole.down(amount), 0, what);
            if (Math.ceil(amount) != Whole.up(amount)) missed++;
        }
        assertTrue(missed > 100, "cases in which plain rounding up counts one too many: " + missed);
    }
}
