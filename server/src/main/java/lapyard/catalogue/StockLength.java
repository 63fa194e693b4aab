package lapyard.catalogue;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * A length in which one supplier sells a section.
 *
 * @param price    a board, in the garden's currency; empty where the merchant has not priced it yet
 * @param supplier id of who sells it, empty for the one merchant
 * @param bundle   bought in whole bundles of so many, 1 or more
 * @param least    the least count that is sold, 1 or more
 */
public record StockLength(double lengthMm, Optional<BigDecimal> price, String supplier, int bundle, int least) {

    /** What must be bought to have {@code count} boards: whole bundles, not under the least. */
    public int bought(int count) {
        int atLeast = count == 0 ? 0 : Math.max(count, least);
        return (atLeast + bundle - 1) / bundle * bundle;
    }
}
