package lapyard.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import lapyard.order.Quote;
import lapyard.plan.QuoteTerms;
import lapyard.working.Working;

/** The wire forms of a quote, of a variation of the order, of merchants' offers and of money over time. */
public final class MoneyJson {
    private MoneyJson() {}

    private record Whole(String number, String client, String validUntil, String currency, BigDecimal margin, BigDecimal cost,
            BigDecimal price, boolean atLeast, List<Line> lines, List<String> exclusions, Working working) {}

    private record Line(String what, Optional<BigDecimal> cost, Optional<BigDecimal> price) {}

    public static ObjectNode of(Quote quote, QuoteTerms terms) {
        return Wire.of(new Whole(
                terms.number(), terms.client(), terms.validUntil(), quote.currency().getCode(), quote.marginPercent(),
                quote.cost(), quote.price(), quote.atLeast(),
                quote.lines().stream()
                        .map(line -> new Line(
                                line.what(),
                                Optional.of(line.cost()).filter(cost -> line.priced()),
                                Optional.of(line.price()).filter(price -> line.priced())))
                        .toList(),
                terms.exclusions(), quote.working()));
    }

    /** A variation, merchants' offers or payments. */
    public static ObjectNode of(Record money) {
        return Wire.of(money);
    }
}
