package lapyard.ground;

import java.math.BigDecimal;
import java.math.RoundingMode;
import lapyard.plan.Finding.Amount;

/** Numbers and ways as they are spoken in a finding. */
final class Say {
    private Say() {}

    /** Millimetres to a tenth, the least a document holds. */
    static String mm(double value) {
        return plain(value, 1);
    }

    static String m2(double areaMm2) {
        BigDecimal squareMetres = decimal(areaMm2 / 1e6, 2);
        return (squareMetres.signum() == 0 ? plain(areaMm2 / 1e6, 4) : squareMetres.toPlainString()) + " m2";
    }

    static Amount amountMm(double value) {
        return new Amount(decimal(value, 1).doubleValue(), "mm");
    }

    static Amount amountM2(double areaMm2) {
        return new Amount(decimal(areaMm2 / 1e6, 4).doubleValue(), "m2");
    }

    private static String plain(double value, int decimals) {
        BigDecimal rounded = decimal(value, decimals);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    private static BigDecimal decimal(double value, int decimals) {
        return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
    }
}
