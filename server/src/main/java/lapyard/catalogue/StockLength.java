package lapyard.catalogue;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * A length in which a section is sold.
 *
 * @param price a board, in the garden's currency; empty where the merchant has not priced it yet
 */
public record StockLength(double lengthMm, Optional<BigDecimal> price) {}
