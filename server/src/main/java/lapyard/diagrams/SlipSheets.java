package lapyard.diagrams;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import lapyard.catalogue.Supplier;
import lapyard.diagrams.BenchTable.Column;
import lapyard.drawing.Page;
import lapyard.geometry.Measure;
import lapyard.order.Savings;
import lapyard.order.Slip;
import lapyard.order.SlipCsv;
import lapyard.order.SlipLine;

/** The order on paper: a sheet or more for each supplier to hand over. */
public final class SlipSheets {
    private SlipSheets() {}

    public static final String CAUTION =
            "Ask for sections as measured, dry or wet, and the treatment in writing: no tarred or creosoted timber near food. Prices hold as the supplier says.";

    /**
     * @param example whether prices are examples of ours
     * @param today   ISO 8601, to mark prices that no longer hold; empty for none
     */
    public static List<Page> pages(
            String garden, boolean imperial, Slip slip, boolean example, String today, BenchOptions options) {
        return BenchSheet.pages(garden, CAUTION, imperial, options, sheet -> {
            if (slip.orders().isEmpty()) {
                return List.of(sheet.nothing("Slip", "Nothing to buy for this garden."));
            }
            Flow flow = new Flow(sheet, "Slip", "");
            for (Slip.Order order : slip.orders()) {
                order(slip, order, example, today, sheet, flow);
            }
            return flow.drafts();
        });
    }

    /** Each supplier's order is a sheet to hand over: nothing else stands on it. */
    private static void order(Slip slip, Slip.Order order, boolean example, String today, BenchSheet sheet, Flow flow) {
        String code = slip.currency().getCode();
        flow.section("Slip: " + order.supplier().name(), about(order.supplier(), example, today), 0);
        List<String> sum = new ArrayList<>();
        sum.add("Goods " + order.goods().toPlainString() + ", delivery " + order.charge().toPlainString() + ": "
                + (order.atLeast() ? "at least " : "") + code + " " + order.total().toPlainString()
                + (order.tax().signum() > 0
                        ? ", in it " + order.tax().toPlainString() + " of tax at " + order.supplier().taxPercent().toPlainString() + " %"
                        : "") + ".");
        if (order.supplier().freeOver().isPresent()) {
            sum.add(order.shortOfFree()
                    .map(less -> "Delivery is free on goods over " + order.supplier().freeOver().get().toPlainString() + ": "
                            + less.toPlainString() + " short.")
                    .orElse("Delivery is free: goods are over " + order.supplier().freeOver().get().toPlainString() + "."));
        }
        flow.words(sum, 4.4, true);
        BenchTable table = new BenchTable(sheet, "To bring, in " + code,
                new Column("count", 0.09, true), new Column("of", 0.27, true), new Column("for", 0.34, false),
                new Column("each", 0.13, false), new Column("all", 0.17, true));
        for (Slip.Part part : order.lines()) {
            List<BigDecimal> costs = SlipCsv.packCosts(part);
            if (part.packs().isEmpty()) {
                table.row(part.cost().isPresent() ? "0" : "?", part.cost().isPresent() ? "nothing" : "ask the merchant",
                        part.line().label() + ", needs " + need(part.line(), sheet), "", cost(part.cost()));
            }
            for (int i = 0; i < part.packs().size(); i++) {
                SlipLine.PackCount pack = part.packs().get(i);
                table.row(
                        String.valueOf(pack.count()),
                        pack.words(sheet.imperial),
                        i == 0 ? part.line().label() + ", needs " + need(part.line(), sheet) : "",
                        pack.price().map(price -> price.setScale(Math.max(price.scale(), slip.currency().getDecimalPlaces())).toPlainString()).orElse("no price"),
                        costs.isEmpty() ? "no price" : costs.get(i).toPlainString());
            }
        }
        table.on(flow);
    }

    /** For whoever bought: the sum, and what buying as one saves. */
    static void sum(Slip slip, BenchSheet sheet, Flow flow) {
        String code = slip.currency().getCode();
        flow.section("Office: the sum, and what is saved", slip.proven()
                ? "no other choice of suppliers and packs costs less"
                : "none can cost under " + slip.lowerBound().toPlainString());
        BenchTable orders = new BenchTable(sheet, "Suppliers, in " + code,
                new Column("supplier", 0.4, true), new Column("goods", 0.2, false), new Column("delivery", 0.2, false), new Column("total", 0.2, true));
        for (Slip.Order order : slip.orders()) {
            orders.row(order.supplier().name(), order.goods().toPlainString(), order.charge().toPlainString(),
                    (order.atLeast() ? "at least " : "") + order.total().toPlainString());
        }
        orders.row("All", slip.goods().toPlainString(), slip.total().subtract(slip.goods()).toPlainString(),
                (slip.atLeast() ? "at least " : "") + slip.total().toPlainString());
        orders.on(flow);
        BenchTable savings = new BenchTable(sheet, "Bought as one against bed by bed, largest saving first, in " + code,
                new Column("line", 0.46, true), new Column("bed by bed", 0.18, false), new Column("as one", 0.18, false), new Column("saved", 0.18, true));
        for (Savings.Saving saving : Savings.of(slip)) {
            savings.row(saving.label(), saving.bedByBed().toPlainString(), saving.pooled().toPlainString(), saving.saved().toPlainString());
        }
        savings.row("All", "", "", Savings.total(slip).toPlainString());
        savings.on(flow, 2);
    }

    /**
     * What each bed costs.
     *
     * @param areasM2 inside the walls, by {@code bed M}
     */
    static void shares(Slip slip, Map<String, Double> areasM2, BenchSheet sheet, Flow flow) {
        List<Savings.Share> shares = Savings.shares(slip);
        if (shares.isEmpty()) {
            return;
        }
        flow.section("Office: what each bed costs",
                "a line that several share is split by what each uses of it, delivery by the goods");
        BenchTable table = new BenchTable(sheet, "Beds and paths, in " + slip.currency().getCode(),
                new Column("for", 0.22, true), new Column("cost", 0.13, true), new Column("a " + Measure.SQUARE_METRES.unit(sheet.imperial) + " inside", 0.13, false), new Column("largest lines", 0.52, false));
        Map<String, String> labels = slip.lines().stream().collect(Collectors.toMap(SlipLine::item, SlipLine::label, (one, same) -> one));
        BigDecimal all = BigDecimal.ZERO;
        for (Savings.Share share : shares) {
            Double area = areasM2.get(share.owner());
            String perArea = area == null || area <= 0 ? "" : share.cost()
                    .divide(BigDecimal.valueOf(Measure.SQUARE_METRES.in(area, sheet.imperial)), slip.currency().getDecimalPlaces(), RoundingMode.HALF_UP).toPlainString();
            String largest = share.lines().entrySet().stream()
                    .sorted(Map.Entry.<String, BigDecimal>comparingByValue().reversed())
                    .limit(4)
                    .map(line -> labels.getOrDefault(line.getKey(), line.getKey()) + " " + line.getValue().toPlainString())
                    .collect(Collectors.joining("; "));
            table.row(share.owner(), share.cost().toPlainString(), perArea, largest);
            all = all.add(share.cost());
        }
        table.row("All", all.toPlainString(), "", "");
        table.on(flow);
    }

    private static String about(Supplier supplier, boolean example, String today) {
        String until = supplier.validUntil();
        boolean past = !until.isEmpty() && !today.isEmpty() && until.compareTo(today) < 0;
        List<String> about = new ArrayList<>();
        if (supplier.leadDays() > 0) about.add("order " + Measure.counted(supplier.leadDays(), "day") + " ahead");
        if (!until.isEmpty()) about.add(past ? "PRICES ENDED ON " + until + ": ask again" : "prices hold until " + until);
        if (example) about.add("example prices stand among these");
        return String.join("; ", about);
    }

    private static String need(SlipLine line, BenchSheet sheet) {
        return need(line.need(), line.unit(), sheet.imperial);
    }

    /** An amount that is needed, with its unit. */
    public static String need(double need, String unit, boolean imperial) {
        return imperial && Measure.of(unit).isPresent() ? Measure.of(need, unit, 2, true) : (Measure.plain(need, 2) + " " + Measure.sign(unit)).strip();
    }

    /** An amount of money where there is one. */
    public static String cost(Optional<BigDecimal> cost) {
        return cost.map(BigDecimal::toPlainString).orElse("no price");
    }
}
