package lapyard.order;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
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
 * @param amounts    by item what their lines need: boards and metres of roll as bought
 * @param charges    for all deliveries, by the id of the supplier; none that are 0
 * @param total      goods and charges
 * @param lowerBound however one bought bed by bed, it would cost no less
 */
public record Apart(
        Map<String, BigDecimal> goods, Map<String, Double> amounts, Map<String, BigDecimal> charges, BigDecimal total, BigDecimal lowerBound) {
    private static final int MOST_STEPS = 2_000_000;
    private static final int LEAST_STEPS = 20_000;

    /**
     * One who buys by itself. Several of one name are the ways to build what is theirs, of which the cheapest is bought.
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
        Map<String, List<Order>> ways = new LinkedHashMap<>();
        for (Buyer buyer : buyers) {
            Abandonable.check();
            SupplierChoice.Chosen chosen = known.computeIfAbsent(
                    alike(buyer.wanted()), same -> SupplierChoice.of(buyer.wanted(), suppliers, decimals, steps));
            ways.computeIfAbsent(buyer.owner(), owner -> new ArrayList<>()).add(order(buyer, chosen, suppliers, currency));
        }
        Map<String, BigDecimal> goods = new LinkedHashMap<>();
        Map<String, Double> amounts = new LinkedHashMap<>();
        Map<String, BigDecimal> charges = new LinkedHashMap<>();
        BigDecimal total = BigDecimal.ZERO;
        BigDecimal bound = BigDecimal.ZERO;
        for (List<Order> orders : ways.values()) {
            Order cheapest = orders.stream().min(Comparator.comparing(Order::total)).orElseThrow();
            for (SlipLine line : cheapest.lines()) {
                line.cost().ifPresent(cost -> goods.merge(line.item(), cost, BigDecimal::add));
                amounts.merge(line.item(), line.need(), Double::sum);
            }
            cheapest.charges().forEach((supplier, charge) -> charges.merge(supplier, charge, BigDecimal::add));
            total = total.add(cheapest.total());
            bound = bound.add(orders.stream().map(Order::least).min(BigDecimal::compareTo).orElseThrow());
        }
        return new Apart(goods, amounts, charges, Ordering.rounded(total, currency), Ordering.rounded(bound.min(total), currency));
    }

    /** @param least proved: this way costs no less */
    private record Order(List<SlipLine> lines, Map<String, BigDecimal> charges, BigDecimal total, BigDecimal least) {}

    private static Order order(Buyer buyer, SupplierChoice.Chosen chosen, List<Supplier> suppliers, CurrencyUnit currency) {
        Map<String, BigDecimal> spent = new HashMap<>();
        BigDecimal total = BigDecimal.ZERO;
        for (SlipLine line : chosen.lines()) {
            total = total.add(line.cost().orElse(BigDecimal.ZERO));
            line.parts().forEach((supplier, part) -> spent.merge(supplier, part, BigDecimal::add));
        }
        Map<String, BigDecimal> charges = new LinkedHashMap<>();
        for (Supplier supplier : suppliers) {
            BigDecimal charge = Ordering.rounded(supplier.chargeOn(spent.getOrDefault(supplier.id(), BigDecimal.ZERO)), currency);
            if (charge.signum() > 0) {
                charges.put(supplier.id(), charge);
                total = total.add(charge);
            }
        }
        BigDecimal least = (buyer.shares() ? goodsAtLeast(buyer.wanted()) : chosen.lowerBound()).subtract(buyer.unproved());
        return new Order(chosen.lines(), charges, total, least.max(BigDecimal.ZERO));
    }

    /** What the choice depends on; whose it is makes no difference. */
    private static List<Object> alike(List<Wanted> wanted) {
        return wanted.stream().map(one -> (Object) one.ways().stream().map(way -> List.of(way.item(), way.cost(), way.packs())).toList()).toList();
    }

    private static BigDecimal goodsAtLeast(List<Wanted> wanted) {
        BigDecimal sum = BigDecimal.ZERO;
        for (Wanted one : wanted) {
            sum = sum.add(one.ways().stream().flatMap(way -> way.cost().stream()).min(BigDecimal::compareTo).orElse(BigDecimal.ZERO));
        }
        return sum;
    }
}
