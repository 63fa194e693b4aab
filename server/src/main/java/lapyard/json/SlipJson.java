package lapyard.json;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import lapyard.job.JobSheet;
import lapyard.job.Payments;
import lapyard.json.Wire.IfGiven;
import lapyard.order.Savings;
import lapyard.order.Slip;
import lapyard.order.SlipLine;
import lapyard.working.Look;

/** The wire form of a slip: its lines, one order a supplier, what pooling saves, what each bed costs. */
final class SlipJson {
    private SlipJson() {}

    /** {@code toPay} is given where it is not the total, as goods were bought at other prices or beyond the order. */
    private record Whole(String currency, BigDecimal goods, BigDecimal total, @IfGiven Optional<BigDecimal> toPay, boolean atLeast, BigDecimal lowerBound,
            boolean proven, List<SlipLine> lines, List<Slip.Order> orders, @IfGiven Optional<List<Savings.Saving>> savings, Optional<BigDecimal> saved,
            @IfGiven Optional<BedByBed> bedByBed, List<Share> shares, boolean examplePrices) {}

    /** {@code goods}, {@code delivery} and {@code total} as it could be bought; no way to buy bed by bed costs under {@code lowerBound}. */
    private record BedByBed(BigDecimal goods, BigDecimal delivery, BigDecimal total, BigDecimal lowerBound, boolean proven) {}

    private record Share(String owner, BigDecimal cost, @IfGiven OptionalDouble areaM2,
            @IfGiven Optional<BigDecimal> perM2, List<Cost> lines) {}

    private record Cost(String item, BigDecimal cost) {}

    static Record of(JobSheet sheet) {
        Slip slip = sheet.slip();
        Optional<Look> whole = Optional.of(sheet.look()).filter(Look.WHOLE::equals);
        Map<String, Double> areasM2 = sheet.areasM2();
        return new Whole(
                slip.currency().getCode(), slip.goods(), slip.total(), toPay(sheet), slip.atLeast(), slip.lowerBound(), slip.proven(), slip.lines(), slip.orders(),
                whole.map(look -> Savings.of(slip)), whole.flatMap(look -> Savings.total(slip)),
                slip.apart().map(apart -> new BedByBed(apart.total().subtract(apart.delivery()), apart.delivery(), apart.total(),
                        apart.lowerBound(), apart.unproved().signum() == 0)),
                Savings.shares(slip).stream()
                        .map(share -> share(share, areasM2.getOrDefault(share.owner(), 0.0), slip.currency().getDecimalPlaces()))
                        .toList(),
                sheet.garden().goods().catalogue().examplePrices());
    }

    private static Optional<BigDecimal> toPay(JobSheet sheet) {
        if (sheet.garden().people().tally().bought().isEmpty()) return Optional.empty();
        return Optional.of(Payments.of(sheet).total()).filter(total -> total.compareTo(sheet.slip().total()) != 0);
    }

    private static Share share(Savings.Share share, double areaM2, int decimals) {
        List<Cost> lines = share.lines().entrySet().stream().map(line -> new Cost(line.getKey(), line.getValue())).toList();
        Optional<BigDecimal> perM2 = areaM2 > 0
                ? Optional.of(share.cost().divide(BigDecimal.valueOf(areaM2), decimals, RoundingMode.HALF_UP)) : Optional.empty();
        return new Share(share.owner(), share.cost(), areaM2 > 0 ? OptionalDouble.of(areaM2) : OptionalDouble.empty(), perM2, lines);
    }
}
