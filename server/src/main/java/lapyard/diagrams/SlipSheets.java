package lapyard.diagrams;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.catalogue.Supplier;
import lapyard.diagrams.BenchTable.Column;
import lapyard.drawing.Page;
import lapyard.geometry.Measure;
import lapyard.order.Slip;
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
    public static List<Page> pages(Slip slip, boolean example, String today, BenchOptions options) {
        return BenchSheet.pages(CAUTION, options, "Slip", "", "Nothing to buy for this garden.",
                flow -> slip.orders().forEach(order -> order(slip, order, example, today, flow.sheet, flow)));
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
        order.shortOfFree().ifPresent(less -> sum.add("Delivery is free on goods over " + order.supplier().freeOver().get().toPlainString() + ": " + less.toPlainString() + " short."));
        if (order.overLimit()) sum.add("Delivery is free: goods are over " + order.supplier().freeOver().get().toPlainString() + ".");
        flow.words(sum, 4.4, true);
        BenchTable table = new BenchTable(sheet, "To bring, in " + code,
                new Column("count", 0.09, true), new Column("of", 0.27, true), new Column("for", 0.34, false),
                new Column("each", 0.13, false), new Column("all", 0.17, true));
        for (Slip.Part part : order.lines()) {
            String needed = part.line().label() + ", needs " + need(part.line(), sheet);
            if (part.packs().isEmpty()) {
                table.row(part.cost().isPresent() ? "0" : "?", part.cost().isPresent() ? "nothing" : "ask the merchant",
                        needed, "", cost(part.cost()));
            }
            for (Slip.Costed one : part.costed()) {
                table.row(String.valueOf(one.pack().count()), one.pack().words(sheet.imperial), needed,
                        cost(one.pack().price().map(price -> price.setScale(Math.max(price.scale(), slip.currency().getDecimalPlaces())))), cost(one.cost()));
                needed = "";
            }
        }
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

    public static String cost(Optional<BigDecimal> cost) {
        return cost.map(BigDecimal::toPlainString).orElse("no price");
    }
}
