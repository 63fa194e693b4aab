package lapyard.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.List;
import lapyard.order.Quote;
import lapyard.plan.QuoteTerms;
import lapyard.words.Wording;
import lapyard.working.Working;

/** What of a garden is worked out only where it is asked for: deliveries, a quote, a variation of the order, merchants' offers, money over time. */
public final class AskedPartJson {
    private AskedPartJson() {}

    private record Whole(String number, String client, String validUntil, String currency, BigDecimal margin, BigDecimal cost,
            BigDecimal price, boolean atLeast, List<Quote.Line> lines, List<String> exclusions, Working working) {}

    public static ObjectNode of(Quote quote, QuoteTerms terms) {
        return Wire.of(new Whole(
                terms.number(), terms.client(), terms.validUntil(), quote.currency().getCode(), quote.marginPercent(),
                quote.cost(), quote.price(), quote.atLeast(),
                quote.lines(), terms.exclusions(), quote.working()));
    }

    /** All but a quote, findings in the garden's measures. */
    public static ObjectNode of(Record part, boolean imperial) {
        return Wire.of(part, Wording.of(imperial));
    }
}
