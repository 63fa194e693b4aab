package lapyard.job;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.joda.money.CurrencyUnit;

/** Money on lines: rounded half up to the currency's own decimals. */
final class Lines {
    private Lines() {}

    static BigDecimal rounded(BigDecimal amount, CurrencyUnit currency) {
        return amount.setScale(currency.getDecimalPlaces(), RoundingMode.HALF_UP);
    }
}
