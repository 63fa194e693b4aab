package lapyard.ground;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Writes millimetres as a plain number. */
final class PlainMm {
    private PlainMm() {}

    /** Millimetres to a tenth, the finest step of a document. */
    static String mm(double value) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(1, RoundingMode.HALF_UP);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }
}
