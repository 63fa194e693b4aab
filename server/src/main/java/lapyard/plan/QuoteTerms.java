package lapyard.plan;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * What a builder offers a client besides the goods.
 *
 * @param given         whether the document says anything of it
 * @param number        of the quote, as the builder counts
 * @param builder       name and address, as they shall stand on the quote
 * @param taxPercent    added to the price; empty where nothing is said of tax
 * @param marginPercent of the selling price, 0 to below 100
 * @param exclusions    what is not in the price
 * @param validUntil    ISO 8601, empty where not said
 */
public record QuoteTerms(
        boolean given,
        String number,
        String client,
        String builder,
        Optional<BigDecimal> taxPercent,
        List<Labour> labour,
        BigDecimal marginPercent,
        List<String> exclusions,
        String validUntil) {
    public QuoteTerms {
        labour = List.copyOf(labour);
        exclusions = List.copyOf(exclusions);
    }

    /** {@code rate} is the cost of an hour, in the garden's currency. */
    public record Labour(String what, double hours, BigDecimal rate) {}

    public static final QuoteTerms NONE = new QuoteTerms(false, "", "", "", Optional.empty(), List.of(), BigDecimal.ZERO, List.of(), "");
}
