package lapyard.ground;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers and ways as they are spoken in a finding. */
final class Say {
    private Say() {}

    /** Millimetres to a tenth, the least a document holds. */
    static String mm(double value) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(1, RoundingMode.HALF_UP);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }
}
