package lapyard.order;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapyard.catalogue.Supplier;
import lapyard.working.Abandonable;
import org.joda.money.CurrencyUnit;

/**
 * What the same person would pay who bought for each bed and path by itself: one choice of suppliers and packs for each of
 * them, with deliveries and limits of free delivery of its own. It could really be bought so.
 *
 * @param goods      by item, in the order of the first buyer who wants it
 * @param charges    for all deliveries, by the id of the supplier; none that are 0
 * @param total      goods and charges
 * @param lowerBound however one bought bed by bed, it would cost no less
 */
public record Apart(Map<String, BigDecimal> goods, Map<String, BigDecimal> charges, BigDecimal total, BigDecimal lowerBound) {
    private static final int MOST_STEPS = 2_000_000;
    private static final int LEAST_STEPS = 20_000;

    /**
     * One who buys by itself.
     *
     * @param owner    as the gardener names it, {@code bed M}
     * @param unproved how much less the ways of all lines together could cost, where that was not ruled out
     * @param shares   whether boards on hand could be shared out otherwise, so that nothing is proved of its deliveries
     */
    public record Buyer(String owner, List<Wanted> wanted, BigDecimal unproved, boolean shares) {
        public Buyer {
            wanted = List.copyOf(wanted);
        }
    }

    public BigDecimal delivery() {
        return charges.values().stream().reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    /** What a saving against {@link #total} may be too large by; 0 where no way to buy bed by bed costs less. */
    public BigDecimal unproved() {
        return total.subtract(lowerBound);
    }

    static Apart of(List<Buyer> buyers, List<Supplier> suppliers, CurrencyUnit currency) {
        int decimals = currency.getDecimalPlaces();
        int steps = Math.max(LEAST_STEPS, MOST_STEPS / Math.max(1, buyers.size()));
        Map<List<Object>, SupplierChoice.Chosen> known = new HashMap<>();
        Map<String, BigDecimal> goods = new LinkedHashMap<>();
        Map<String, BigDecimal> charges = new LinkedHashMap<>();
        BigDecimal total = BigDecimal.ZERO;
        BigDecimal bound = BigDecimal.ZERO;
        for (Buyer buyer : buyers) {
            Abandonable.check();
            SupplierChoice.Chosen chosen = known.computeIfAbsent(
                    alike(buyer.wanted()), same -> SupplierChoice.of(buyer.wanted(), suppliers, decimals, steps));
            Map<String, BigDecimal> spent = new HashMap<>();
            BigDecimal own = BigDecimal.ZERO;
            for (SlipLine line : chosen.lines()) {
                if (line.cost().isPresent()) {
                    goods.merge(line.item(), line.cost().get(), BigDecimal::add);
                    own = own.add(line.cost().get());
                }
                line.parts().forEach((supplier, part) -> spent.merge(supplier, part, BigDecimal::add));
            }
            for (Supplier supplier : suppliers) {
                BigDecimal charge = Ordering.rounded(supplier.chargeOn(spent.getOrDefault(supplier.id(), BigDecimal.ZERO)), currency);
                if (charge.signum() > 0) {
                    charges.merge(supplier.id(), charge, BigDecimal::add);
                    own = own.add(charge);
                }
            }
            total = total.add(own);
            BigDecimal least = (buyer.shares() ? goodsAtLeast(buyer.wanted()) : chosen.lowerBound()).subtract(buyer.unproved());
            bound = bound.add(least.max(BigDecimal.ZERO));
        }
        return new Apart(goods, charges, Ordering.rounded(total, currency), Ordering.rounded(bound.min(total), currency));
    }

    /** What the choice depends on; whose it is makes no difference. */
    private static List<Object> alike(List<Wanted> wanted) {
        List<Object> alike = new ArrayList<>();
        for (Wanted one : wanted) {
            alike.add(one.ways().stream().map(way -> List.of(way.item(), way.cost(), way.packs())).toList());
        }
        return alike;
    }

    private static BigDecimal goodsAtLeast(List<Wanted> wanted) {
        BigDecimal sum = BigDecimal.ZERO;
        for (Wanted one : wanted) {
            sum = sum.add(one.ways().stream().flatMap(way -> way.cost().stream()).min(BigDecimal::compareTo).orElse(BigDecimal.ZERO));
        }
        return sum;
    }
}
