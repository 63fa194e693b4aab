package lapyard.catalogue;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One size in which one supplier sells an item.
 *
 * @param name     as the merchant says it, for example {@code box of 100}
 * @param content  in the unit of its {@link PackGoods}, above 0
 * @param supplier id of who sells it, empty for the one merchant
 * @param bundle   bought in whole bundles of so many, 1 or more
 * @param least    the least count that is sold, 1 or more
 * @param massKg   of one pack as carried; empty where it follows from the density of the goods or is not known
 */
public record Pack(
        String name,
        double content,
        Optional<BigDecimal> price,
        String supplier,
        int bundle,
        int least,
        OptionalDouble massKg) {
    public Pack {
        if (bundle < 1 || least < 1) {
            throw new IllegalArgumentException(name + ": bundle and least count must be 1 or more, were " + bundle + " and " + least);
        }
    }

    /** The least count that can really be bought: whole bundles, not under the least. */
    public int leastBundled() {
        return (least + bundle - 1) / bundle * bundle;
    }
}
