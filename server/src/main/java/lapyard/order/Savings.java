package lapyard.order;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.working.Working;

/** What buying as one saves, and what each bed and path costs of it. */
public final class Savings {
    private Savings() {}

    /** One line bought as one and bed by bed; {@code saved} is the difference, below 0 where pooling costs. */
    public record Saving(
            String item, String label, BigDecimal pooled, BigDecimal bedByBed, BigDecimal saved, Working working) {}

    /** What one bed or path costs; {@code lines} by item, in the slip's order. */
    public record Share(String owner, BigDecimal cost, Map<String, BigDecimal> lines) {}

    /** The owner of costs that belong to no bed: delivery, and lines without known use. */
    public static final String WHOLE_GARDEN = "the whole garden";

    /** What deliveries cost, on both sides. */
    public static final String DELIVERY = "delivery";

    /** What may be too much in the savings of all lines, as a cheaper way to buy bed by bed was not ruled out. */
    public static final String UNPROVED = "unproved";

    /** Lines with both prices, deliveries, and what is not proved of them, largest saving first. Their sum is never too large. */
    public static List<Saving> of(Slip slip) {
        List<Saving> savings = new ArrayList<>();
        for (SlipLine line : slip.lines()) {
            if (line.saved().isEmpty()) continue;
            BigDecimal pooled = line.cost().orElseThrow();
            BigDecimal alone = line.bedByBed().orElseThrow();
            String formula = "bed by bed " + alone.toPlainString() + " - pooled " + pooled.toPlainString() + " = "
                    + line.saved().orElseThrow().toPlainString() + " " + slip.currency().getCode() + "; "
                    + line.working().formula();
            savings.add(new Saving(
                    line.item(), line.label(), pooled, alone, line.saved().orElseThrow(),
                    new Working(line.working().inputs(), formula, line.working().source())));
        }
        slip.apart().ifPresent(apart -> {
            BigDecimal delivery = slip.total().subtract(slip.goods());
            if (delivery.signum() != 0 || apart.delivery().signum() != 0) {
                savings.add(saving(slip, DELIVERY, "Delivery", delivery, apart.delivery(), "each order's charge and limit of free delivery"));
            }
            if (apart.unproved().signum() != 0) {
                savings.add(saving(slip, UNPROVED, "Not proved", BigDecimal.ZERO.setScale(apart.unproved().scale()), apart.unproved().negate(),
                        "bed by bed " + apart.total().toPlainString() + " was found, and under " + apart.lowerBound().toPlainString()
                                + " nobody can buy so"));
            }
        });
        savings.sort(Comparator.comparing(Saving::saved).reversed());
        return savings;
    }

    /** The least that buying as one saves, all lines and deliveries together; empty where it is not proved that it costs no more. */
    public static Optional<BigDecimal> total(Slip slip) {
        return Optional.of(of(slip).stream().map(Saving::saved).reduce(BigDecimal.ZERO.setScale(slip.currency().getDecimalPlaces()), BigDecimal::add))
                .filter(saved -> saved.signum() >= 0);
    }

    private static Saving saving(Slip slip, String item, String label, BigDecimal pooled, BigDecimal alone, String why) {
        BigDecimal saved = alone.subtract(pooled);
        return new Saving(item, label, pooled, alone, saved, new Working(List.of(), "bed by bed " + alone.toPlainString() + " - pooled "
                + pooled.toPlainString() + " = " + saved.toPlainString() + " " + slip.currency().getCode() + "; " + why, Working.COMMON_PRACTICE));
    }

    /**
     * Every line's cost, split by what each bed and path uses of it; delivery is split by the goods. The parts add up
     * to the slip's total to the last decimal: each is rounded down, and what is over goes to the largest remainders,
     * the first first.
     */
    public static List<Share> shares(Slip slip) {
        Map<String, Map<String, BigDecimal>> byOwner = new LinkedHashMap<>();
        int decimals = slip.currency().getDecimalPlaces();
        for (SlipLine line : slip.lines()) {
            line.cost().filter(cost -> cost.signum() != 0).ifPresent(cost -> {
                Map<String, BigDecimal> weights = new LinkedHashMap<>();
                line.uses().forEach(use -> weights.merge(use.owner(), BigDecimal.valueOf(use.amount()), BigDecimal::add));
                split(cost, weights, decimals).forEach((owner, part) ->
                        byOwner.computeIfAbsent(owner, o -> new LinkedHashMap<>()).merge(line.item(), part, BigDecimal::add));
            });
        }
        BigDecimal delivery = slip.total().subtract(slip.goods());
        if (delivery.signum() != 0) {
            Map<String, BigDecimal> goods = new LinkedHashMap<>();
            byOwner.forEach((owner, lines) -> goods.put(owner, sum(lines)));
            // nothing is brought without goods that cost something, so everybody named has a share already
            split(delivery, goods, decimals).forEach((owner, part) -> byOwner.get(owner).put(DELIVERY, part));
        }
        return byOwner.entrySet().stream()
                .map(entry -> new Share(entry.getKey(), sum(entry.getValue()), entry.getValue()))
                .toList();
    }

    private static BigDecimal sum(Map<String, BigDecimal> parts) {
        return parts.values().stream().reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    /** Parts of an amount by weight, each to {@code decimals}, adding up to it exactly. */
    static Map<String, BigDecimal> split(BigDecimal amount, Map<String, BigDecimal> weights, int decimals) {
        BigDecimal all = sum(weights);
        if (all.signum() == 0) return Map.of(WHOLE_GARDEN, amount);
        Map<String, BigDecimal> parts = new LinkedHashMap<>();
        Map<String, BigDecimal> over = new LinkedHashMap<>();
        BigDecimal left = amount;
        for (Map.Entry<String, BigDecimal> weight : weights.entrySet()) {
            BigDecimal exact = amount.multiply(weight.getValue()).divide(all, decimals + 12, RoundingMode.FLOOR);
            BigDecimal part = exact.setScale(decimals, RoundingMode.FLOOR);
            parts.put(weight.getKey(), part);
            over.put(weight.getKey(), exact.subtract(part));
            left = left.subtract(part);
        }
        BigDecimal least = BigDecimal.ONE.movePointLeft(decimals);
        List<String> largest = new ArrayList<>(over.keySet());
        largest.sort(Comparator.comparing(over::get, Comparator.reverseOrder()));
        for (String owner : largest) {
            if (left.compareTo(least) < 0) break;
            parts.merge(owner, least, BigDecimal::add);
            left = left.subtract(least);
        }
        return parts;
    }
}
