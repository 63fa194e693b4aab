package lapyard.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import lapyard.catalogue.Supplier;
import lapyard.job.JobSheet;
import lapyard.json.Wire.IfGiven;
import lapyard.json.Wire.Unwrapped;
import lapyard.order.Savings;
import lapyard.order.Slip;
import lapyard.order.SlipCsv;
import lapyard.order.SlipLine;
import lapyard.working.Working;

/** The wire form of a slip: its lines, one order a supplier, what pooling saves, what each bed costs. */
final class SlipJson {
    private SlipJson() {}

    private record Whole(String currency, BigDecimal goods, BigDecimal total, boolean atLeast, BigDecimal lowerBound,
            boolean proven, List<Line> lines, List<Order> orders, List<Savings.Saving> savings, BigDecimal saved,
            @IfGiven Optional<BedByBed> bedByBed, List<Share> shares, boolean examplePrices) {}

    /** {@code goods}, {@code delivery} and {@code total} as it could be bought; no way to buy bed by bed costs under {@code lowerBound}. */
    private record BedByBed(BigDecimal goods, BigDecimal delivery, BigDecimal total, BigDecimal lowerBound, boolean proven) {}

    private record Line(String item, String label, double need, String unit, List<Bought> packs, double leftOver,
            Optional<BigDecimal> cost, Optional<BigDecimal> bedByBed, Optional<BigDecimal> saved, Working working) {}

    /** {@code called} as a person asks for it, in the garden's measures. */
    private record Bought(String pack, String called, long count, Optional<BigDecimal> price, String supplier) {}

    private record Order(String supplier, String name, int leadDays, String validUntil, BigDecimal goods, BigDecimal delivery,
            BigDecimal total, BigDecimal tax, BigDecimal taxRate, boolean atLeast, Optional<BigDecimal> freeOver,
            Optional<BigDecimal> shortOfFree, List<Part> lines) {}

    private record Part(String item, String label, List<Pack> packs, Optional<BigDecimal> cost) {}

    private record Pack(@Unwrapped Bought bought, Optional<BigDecimal> cost) {}

    private record Share(String owner, BigDecimal cost, @IfGiven OptionalDouble areaM2,
            @IfGiven Optional<BigDecimal> perM2, List<Cost> lines) {}

    private record Cost(String item, BigDecimal cost) {}

    static ObjectNode of(JobSheet sheet) {
        Slip slip = sheet.slip();
        Map<String, Double> areasM2 = sheet.areasM2();
        boolean imperial = sheet.garden().imperial();
        return Wire.of(new Whole(
                slip.currency().getCode(), slip.goods(), slip.total(), slip.atLeast(), slip.lowerBound(), slip.proven(),
                slip.lines().stream().map(line -> line(line, imperial)).toList(),
                slip.orders().stream().map(order -> order(order, imperial)).toList(),
                Savings.of(slip),
                Savings.total(slip),
                slip.apart().map(apart -> new BedByBed(apart.total().subtract(apart.delivery()), apart.delivery(), apart.total(),
                        apart.lowerBound(), apart.unproved().signum() == 0)),
                Savings.shares(slip).stream()
                        .map(share -> share(share, areasM2.getOrDefault(share.owner(), 0.0), slip.currency().getDecimalPlaces()))
                        .toList(),
                sheet.garden().goods().catalogue().examplePrices()));
    }

    private static Share share(Savings.Share share, double areaM2, int decimals) {
        List<Cost> lines = share.lines().entrySet().stream().map(line -> new Cost(line.getKey(), line.getValue())).toList();
        Optional<BigDecimal> perM2 = areaM2 > 0
                ? Optional.of(share.cost().divide(BigDecimal.valueOf(areaM2), decimals, RoundingMode.HALF_UP)) : Optional.empty();
        return new Share(share.owner(), share.cost(), areaM2 > 0 ? OptionalDouble.of(areaM2) : OptionalDouble.empty(), perM2, lines);
    }

    private static Line line(SlipLine line, boolean imperial) {
        return new Line(line.item(), line.label(), line.need(), line.unit(), line.packs().stream().map(pack -> bought(pack, imperial)).toList(), line.leftOver(), line.cost(),
                line.bedByBed(), line.saved(), line.working());
    }

    private static Bought bought(SlipLine.PackCount pack, boolean imperial) {
        return new Bought(pack.pack(), pack.words(imperial), pack.count(), pack.price(), pack.supplier());
    }

    private static Order order(Slip.Order order, boolean imperial) {
        Supplier supplier = order.supplier();
        return new Order(
                supplier.id(), supplier.name(), supplier.leadDays(), supplier.validUntil(), order.goods(), order.charge(),
                order.total(), order.tax(), supplier.taxPercent(), order.atLeast(), supplier.freeOver(),
                order.shortOfFree().filter(less -> less.signum() >= 0),
                order.lines().stream().map(part -> part(part, imperial)).toList());
    }

    private static Part part(Slip.Part part, boolean imperial) {
        List<BigDecimal> costs = SlipCsv.packCosts(part);
        List<Pack> packs = IntStream.range(0, part.packs().size())
                .mapToObj(i -> new Pack(bought(part.packs().get(i), imperial), costs.isEmpty() ? Optional.empty() : Optional.of(costs.get(i)))).toList();
        return new Part(part.line().item(), part.line().label(), packs, part.cost());
    }
}
