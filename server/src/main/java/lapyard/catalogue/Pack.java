package lapyard.catalogue;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * One size in which an item is sold.
 *
 * @param name    as the merchant says it, for example {@code box of 100}
 * @param content in the unit of its {@link PackGoods}, above 0
 */
public record Pack(String name, double content, Optional<BigDecimal> price) {}
