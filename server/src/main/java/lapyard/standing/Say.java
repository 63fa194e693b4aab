package lapyard.standing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import lapyard.geometry.Lengths;

/** Numbers as they are spoken. */
final class Say {
    private Say() {}

    static String mm(double mm) {
        return Lengths.text(Math.rint(mm));
    }

    static String whole(double number) {
        return rounded(number, 0);
    }

    static String tenth(double number) {
        return rounded(number, 1);
    }

    static String hundredth(double number) {
        return rounded(number, 2);
    }

    static String percent(double share) {
        return rounded(share * 100, 0) + " %";
    }

    /** Spans are told in whole 10 mm, rounded down: nobody sets out finer. */
    static double down(double mm) {
        return 10 * Math.floor(mm / 10 + 1e-9);
    }

    private static String rounded(double number, int decimals) {
        return BigDecimal.valueOf(number).setScale(decimals, RoundingMode.HALF_UP).toPlainString();
    }
}
