package lapyard.job;

import java.math.BigDecimal;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import lapyard.catalogue.Supplier;
import lapyard.cutting.StagedCutting;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.order.Ordering;
import lapyard.order.Slip;

/**
 * What it costs to buy and cut in stages, beside all at once: the boards and the deliveries, which alone differ. It cuts
 * all boards again, so it is worked out only where it is shown.
 */
public final class StagingCost {
    private StagingCost() {}

    /**
     * @param boards     wall timber, bearers and beams together, those on hand that are opened among them
     * @param boardsCost what is paid for them, tax included; empty where a price is missing
     * @param drops      deliveries: one for each supplier who brings something before a weekend
     * @param delivery   all their charges
     * @param more       sum less that of the first way; empty where a price is missing
     */
    public record Way(String way, int boards, Optional<BigDecimal> boardsCost, int drops, BigDecimal delivery, Optional<BigDecimal> more) {
        public Optional<BigDecimal> sum() {
            return boardsCost.map(delivery::add);
        }
    }

    private record Boards(int boards, Optional<BigDecimal> paid) {
        Boards and(int more, Optional<BigDecimal> cost) {
            return new Boards(boards + more, paid.flatMap(all -> cost.map(all::add)));
        }

        Boards and(StagedCutting.Way way, boolean priced) {
            return and(way.boards(), priced ? Optional.of(way.paid()) : Optional.empty());
        }
    }

    private record Brought(int drops, BigDecimal charge) {}

    /** From all at once to nothing carried over. */
    public static List<Way> of(JobSheet sheet) {
        Slip slip = sheet.slip();
        UnaryOperator<BigDecimal> rounded = amount -> Ordering.rounded(amount, slip.currency());
        // strips are ripped for all beds at once: their boards are the same in every way
        Boards once = new Boards(0, Optional.of(BigDecimal.ZERO));
        for (SectionCutting strips : sheet.strips()) once = once.and(strips.saw().ways().get(0).boards(), strips.saw().ways().get(0).cost());
        Boards carried = once;
        Boards apart = once;
        for (SectionCutting cutting : sheet.cutting()) {
            StagedCutting staging = cutting.staging();
            once = once.and(staging.pooledOnce(), cutting.priced());
            carried = carried.and(new StagedCutting.Way(cutting.result().boards(), cutting.result().paid()), cutting.priced());
            apart = apart.and(staging.stageByStage(), cutting.priced());
        }
        Brought together = new Brought((int) slip.orders().stream().filter(order -> !order.lines().isEmpty()).count(),
                slip.orders().stream().map(Slip.Order::charge).reduce(BigDecimal.ZERO, BigDecimal::add));
        Brought staged = staged(sheet);
        Optional<BigDecimal> least = once.paid().map(together.charge()::add);
        return List.of(
                way("bought once, cut once", once, together, least, rounded),
                way("bought once, cut by the weekend", carried, together, least, rounded),
                way("bought by the weekend, offcuts carried on", carried, staged, least, rounded),
                way("bought by the weekend, nothing carried on", apart, staged, least, rounded));
    }

    private static Way way(String name, Boards boards, Brought brought, Optional<BigDecimal> least, UnaryOperator<BigDecimal> rounded) {
        Optional<BigDecimal> sum = boards.paid().map(brought.charge()::add);
        return new Way(name, boards.boards(), boards.paid().map(rounded), brought.drops(),
                rounded.apply(brought.charge()), sum.flatMap(all -> least.map(all::subtract)).map(rounded));
    }

    /**
     * One drop for each supplier and weekend; its goods are each line's cost by the share of the line needed then. What has no price costs
     * something, but is charged for only beside goods with a price, as on the slip.
     */
    private static Brought staged(JobSheet sheet) {
        List<Buying.Row> rows = Buying.of(sheet).rows();
        int drops = 0;
        BigDecimal charges = BigDecimal.ZERO;
        for (Slip.Order order : sheet.slip().orders()) {
            Supplier supplier = order.supplier();
            Map<Integer, BigDecimal> goods = new TreeMap<>();
            Set<Integer> unpriced = new HashSet<>();
            for (Slip.Part part : order.lines()) {
                BigDecimal cost = part.cost().orElse(BigDecimal.ZERO);
                List<Buying.Row> needed = rows.stream().filter(row -> row.item().equals(part.line().item())).toList();
                double whole = needed.stream().mapToDouble(Buying.Row::amount).sum();
                for (Buying.Row row : needed) {
                    if (part.cost().isEmpty() && order.goods().signum() > 0) unpriced.add(row.weekend());
                    goods.merge(row.weekend(), cost.multiply(BigDecimal.valueOf(whole > 0 ? row.amount() / whole : 1)), BigDecimal::add);
                }
            }
            drops += goods.size();
            for (Map.Entry<Integer, BigDecimal> drop : goods.entrySet()) {
                boolean unknown = drop.getValue().signum() == 0 && unpriced.contains(drop.getKey());
                charges = charges.add(unknown ? supplier.charge() : supplier.chargeOn(drop.getValue()));
            }
        }
        return new Brought(drops, charges);
    }
}
