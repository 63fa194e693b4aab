package lapyard.job;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.joda.money.CurrencyUnit;

/** Rounds money on lines half up to the decimals of the currency. */
final class LineMoney {
    private LineMoney() {}

    static BigDecimal rounded(BigDecimal amount, CurrencyUnit currency) {
        return amount.setScale(currency.getDecimalPlaces(), RoundingMode.HALF_UP);
    }
}
