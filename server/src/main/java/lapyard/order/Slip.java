package lapyard.order;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import lapyard.catalogue.Supplier;
import org.joda.money.CurrencyUnit;

/**
 * One order for the whole garden, tax included.
 *
 * @param goods      all priced lines, each rounded to the currency
 * @param total      goods and delivery
 * @param atLeast    true where a line has no price or something could not be made, so that the true total is higher
 * @param lines      largest saving first, then by item
 * @param orders     one a supplier who sells any of it, in the order of the catalogue
 * @param lowerBound no choice of suppliers and packs costs less, delivery included
 * @param proven     whether the total is that bound
 * @param apart      what buying bed by bed would come to; empty where it was not asked
 */
public record Slip(
        CurrencyUnit currency,
        BigDecimal goods,
        BigDecimal total,
        boolean atLeast,
        List<SlipLine> lines,
        List<Order> orders,
        BigDecimal lowerBound,
        boolean proven,
        Optional<Apart> apart) {
    public Slip {
        lines = List.copyOf(lines);
        orders = List.copyOf(orders);
    }

    /** The same with something left out that cannot be made, so that the true total is higher. */
    public Slip withMoreToCome() {
        return new Slip(currency, goods, total, true, lines, orders, lowerBound, proven, apart);
    }

    /** Whether one of these suppliers brings some of the goods. */
    public boolean brings(String item, List<String> suppliers) {
        return lines.stream().anyMatch(line -> line.item().equals(item)
                && line.packs().stream().anyMatch(pack -> suppliers.contains(pack.supplier())));
    }

    public static final Comparator<SlipLine> LARGEST_SAVING_FIRST = Comparator.comparing(
                    (SlipLine line) -> line.saved().orElse(BigDecimal.ZERO))
            .reversed()
            .thenComparing(SlipLine::item);

    /**
     * What one supplier brings.
     *
     * @param lines   the parts of the slip's lines that this supplier sells, in the slip's order
     * @param goods   of the priced ones
     * @param charge  for delivery
     * @param tax     contained in goods and charge
     * @param atLeast true where one of the lines has no price
     */
    public record Order(Supplier supplier, List<Part> lines, BigDecimal goods, BigDecimal charge, BigDecimal tax, boolean atLeast) {
        public Order {
            lines = List.copyOf(lines);
        }

        public BigDecimal total() {
            return goods.add(charge);
        }

        /** The least that more goods must cost to make delivery free, in whole coins; empty where it is free, or never is. */
        public Optional<BigDecimal> shortOfFree() {
            return charge.signum() == 0 ? Optional.empty() : supplier.freeOver()
                    .map(limit -> limit.subtract(goods).setScale(goods.scale(), RoundingMode.FLOOR).add(BigDecimal.ONE.movePointLeft(goods.scale())));
        }

        /** Whether the goods are over the limit of free delivery. */
        public boolean overLimit() {
            return supplier.freeOver().filter(limit -> goods.compareTo(limit) > 0).isPresent();
        }
    }

    /** {@code cost} is empty where a price is missing. */
    public record Part(SlipLine line, List<SlipLine.PackCount> packs, Optional<BigDecimal> cost) {
        public Part {
            packs = List.copyOf(packs);
        }

        /** Each pack with its cost, rounded so that they add up to the part. */
        public List<Costed> costed() {
            List<Costed> costed = new ArrayList<>();
            Optional<BigDecimal> left = cost;
            for (SlipLine.PackCount pack : packs) {
                boolean last = costed.size() + 1 == packs.size();
                Optional<BigDecimal> own = left.map(rest -> last ? rest : pack.cost().orElse(BigDecimal.ZERO).setScale(rest.scale(), RoundingMode.HALF_UP));
                left = left.map(rest -> rest.subtract(own.get()));
                costed.add(new Costed(pack, own));
            }
            return costed;
        }
    }

    /** {@code cost} is empty where the part has no price. */
    public record Costed(SlipLine.PackCount pack, Optional<BigDecimal> cost) {}
}
