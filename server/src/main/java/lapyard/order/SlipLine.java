package lapyard.order;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import lapyard.catalogue.PackCode;
import lapyard.working.Working;

/**
 * One line of the order.
 *
 * @param item     the catalogue's name, {@code timber 100x200}, {@code liner}, {@code soil.topsoil}
 * @param label    in words
 * @param need     what the garden needs, spare included, in {@code unit}
 * @param packs    what to buy for it
 * @param leftOver bought less needed, in {@code unit}
 * @param cost     of the packs, rounded to the currency; empty where a price is missing
 * @param bedByBed what it costs in the orders of each bed and path by itself, {@link Apart}, delivery left out; empty where a
 *     price is missing
 * @param working  how need became packs
 * @param uses     who needs how much of it, spare left out; empty where that is not known
 */
public record SlipLine(
        String item,
        String label,
        double need,
        String unit,
        List<PackCount> packs,
        double leftOver,
        Optional<BigDecimal> cost,
        Optional<BigDecimal> bedByBed,
        Working working,
        List<Use> uses) {
    public SlipLine {
        packs = List.copyOf(packs);
        uses = List.copyOf(uses);
    }

    /** What pooling saves on this line; empty where a price is missing. */
    public Optional<BigDecimal> saved() {
        return cost.flatMap(pooled -> bedByBed.map(alone -> alone.subtract(pooled)));
    }

    /** The same line beside another cost of buying for each bed alone. */
    SlipLine boughtApart(BigDecimal cost) {
        return new SlipLine(item, label, need, unit, packs, leftOver, this.cost, Optional.of(cost), working, uses);
    }

    /** What this line and another of the same item ask for together. */
    public SlipLine with(SlipLine more) {
        Map<List<Object>, PackCount> all = new LinkedHashMap<>();
        Stream.of(packs, more.packs).flatMap(List::stream).forEach(pack -> all.merge(List.of(pack.pack(), pack.supplier()), pack,
                (one, other) -> new PackCount(one.pack(), one.count() + other.count(), one.price(), one.supplier())));
        return new SlipLine(item, label, need + more.need, unit, List.copyOf(all.values()), leftOver + more.leftOver, cost.flatMap(own -> more.cost.map(own::add)),
                bedByBed.flatMap(own -> more.bedByBed.map(own::add)),
                new Working(Stream.concat(working.inputs().stream(), more.working.inputs().stream()).toList(), working.formula(), working.source()),
                Stream.concat(uses.stream(), more.uses.stream()).toList());
    }

    SlipLine withoutApart() {
        return new SlipLine(item, label, need, unit, packs, leftOver, cost, Optional.empty(), working, uses);
    }

    public SlipLine usedBy(List<Use> who) {
        return new SlipLine(item, label, need, unit, packs, leftOver, cost, bedByBed, working, who);
    }

    /**
     * What each supplier gets of the cost, each part rounded as the cost is, so that the parts add up to it; a line
     * without packs is the one merchant's. Empty where a price is missing.
     */
    public Map<String, BigDecimal> parts() {
        Map<String, BigDecimal> parts = new LinkedHashMap<>();
        if (cost.isEmpty()) return parts;
        int decimals = cost.get().scale();
        BigDecimal sum = BigDecimal.ZERO;
        String last = "";
        for (PackCount pack : packs) {
            BigDecimal each = pack.price().orElse(BigDecimal.ZERO).multiply(BigDecimal.valueOf(pack.count()));
            parts.merge(pack.supplier(), each, BigDecimal::add);
            last = pack.supplier();
        }
        parts.replaceAll((supplier, exact) -> exact.setScale(decimals, RoundingMode.HALF_UP));
        for (BigDecimal part : parts.values()) sum = sum.add(part);
        BigDecimal rest = cost.get().subtract(sum);
        if (rest.signum() != 0 || parts.isEmpty()) parts.merge(last, rest, BigDecimal::add);
        return parts;
    }

    /** {@code pack} is a {@link PackCode}; {@code price} is of one pack; {@code supplier} is an id, empty for the one merchant. */
    public record PackCount(String pack, long count, Optional<BigDecimal> price, String supplier) {

        /** As a person asks for it, {@link PackCode#words}. */
        public String words(boolean imperial) {
            return PackCode.words(pack, imperial);
        }

        /** The exact cost of all packs; empty where a price is missing. */
        public Optional<BigDecimal> cost() {
            return price.map(each -> each.multiply(BigDecimal.valueOf(count)));
        }
    }

    /** {@code owner} as the gardener names it, {@code bed M}; the amount in the line's unit. */
    public record Use(String owner, double amount) {}
}
