package lapyard.order;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import org.joda.money.CurrencyUnit;

/**
 * One order for the whole garden.
 *
 * @param total   of all priced lines, rounded to the currency
 * @param atLeast true where a line has no price or something could not be made, so that the true total is higher
 * @param lines   largest saving first, then by item
 */
public record Slip(CurrencyUnit currency, BigDecimal total, boolean atLeast, List<SlipLine> lines) {
    public Slip {
        lines = List.copyOf(lines);
    }

    public static final Comparator<SlipLine> LARGEST_SAVING_FIRST = Comparator.comparing(
                    (SlipLine line) -> line.saved().orElse(BigDecimal.ZERO))
            .reversed()
            .thenComparing(SlipLine::item);
}
