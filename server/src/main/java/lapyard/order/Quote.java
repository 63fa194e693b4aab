package lapyard.order;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapyard.working.Working;
import org.joda.money.CurrencyUnit;

/**
 * What the goods and the work are sold for.
 *
 * @param lines   goods line by line, delivery, work
 * @param cost    of all lines
 * @param price   of all lines: the sum of their prices, each rounded
 * @param atLeast whether something in it has no price yet
 */
public record Quote(
        CurrencyUnit currency, List<Line> lines, BigDecimal marginPercent, BigDecimal cost, BigDecimal price, boolean atLeast, Working working) {
    private static final BigDecimal HUNDRED = new BigDecimal(100);

    public Quote {
        lines = List.copyOf(lines);
    }

    /** {@code price} is empty of meaning where {@code priced} is false: the cost is not known yet. */
    public record Line(String what, boolean priced, BigDecimal cost, BigDecimal price) {}

    /** {@code rate} is the cost of an hour. */
    public record PaidWork(String what, double hours, BigDecimal rate) {}

    /**
     * Price = cost / (1 - margin): the margin is a share of the selling price, not of the cost.
     *
     * @param marginPercent 0 to below 100
     */
    public static BigDecimal price(BigDecimal cost, BigDecimal marginPercent, int decimals) {
        return cost.multiply(HUNDRED).divide(HUNDRED.subtract(marginPercent), decimals, RoundingMode.HALF_UP);
    }

    /**
     * The price split as the cost of the goods is, by {@link Savings#split}: work and delivery go with the goods.
     *
     * @return by owner; none where nothing has a cost
     */
    public Map<String, BigDecimal> shares(List<Savings.Share> goods) {
        if (goods.stream().allMatch(share -> share.cost().signum() == 0)) return Map.of();
        Map<String, BigDecimal> costs = new LinkedHashMap<>();
        goods.forEach(share -> costs.put(share.owner(), share.cost()));
        return Savings.split(price, costs, currency.getDecimalPlaces());
    }

    public static Quote of(Slip slip, List<PaidWork> works, BigDecimal marginPercent) {
        int decimals = slip.currency().getDecimalPlaces();
        List<Line> lines = new ArrayList<>();
        for (SlipLine line : slip.lines()) {
            BigDecimal cost = line.cost().orElse(BigDecimal.ZERO);
            lines.add(new Line(line.label(), line.cost().isPresent(), cost, price(cost, marginPercent, decimals)));
        }
        BigDecimal delivery = slip.total().subtract(slip.goods());
        if (delivery.signum() > 0) lines.add(new Line("Delivery", true, delivery, price(delivery, marginPercent, decimals)));
        for (PaidWork work : works) {
            BigDecimal cost = Ordering.rounded(BigDecimal.valueOf(work.hours()).multiply(work.rate()), slip.currency());
            lines.add(new Line(work.what() + ", " + BigDecimal.valueOf(work.hours()).stripTrailingZeros().toPlainString() + " h", true, cost,
                    price(cost, marginPercent, decimals)));
        }
        BigDecimal cost = lines.stream().map(Line::cost).reduce(BigDecimal.ZERO.setScale(decimals), BigDecimal::add);
        BigDecimal price = lines.stream().map(Line::price).reduce(BigDecimal.ZERO.setScale(decimals), BigDecimal::add);
        Working working = Working.of(
                "price = cost / (1 - margin), each line rounded half up, then added",
                Working.COMMON_PRACTICE,
                Working.Input.of("cost", cost.doubleValue(), slip.currency().getCode()),
                Working.Input.of("margin", marginPercent.doubleValue() / 100, ""));
        return new Quote(slip.currency(), lines, marginPercent, cost, price, slip.atLeast(), working);
    }
}
