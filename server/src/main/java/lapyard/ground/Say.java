package lapyard.ground;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
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

    /** {@code "140 over the edge at corner 3. Move left 140, or cut depth to 1060."} */
    static String withWays(String fact, List<String> ways) {
        if (ways.isEmpty()) {
            return fact;
        }
        StringBuilder text = new StringBuilder(fact).append(' ').append(ways.get(0));
        for (String way : ways.subList(1, ways.size())) {
            text.append(", or ")
                    .append(way.substring(0, 1).toLowerCase(java.util.Locale.ROOT))
                    .append(way.substring(1));
        }
        return text.append('.').toString();
    }

    private static String plain(double value, int decimals) {
        BigDecimal rounded = decimal(value, decimals);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    private static BigDecimal decimal(double value, int decimals) {
        return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
    }
}
