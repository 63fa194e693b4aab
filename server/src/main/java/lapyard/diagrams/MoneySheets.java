package lapyard.diagrams;

import java.util.List;
import lapyard.diagrams.BenchTable.Column;
import lapyard.drawing.Page;

/** Payments by day, and what was bought against the plan. */
public final class MoneySheets {
    private static final String CAUTION = "Amounts are those of the price lists; what a merchant agreed to in writing stands above them.";

    private MoneySheets() {}

    /**
     * @param dues   when, to whom, for what, amount, sum so far
     * @param bought see {@link #bought}
     */
    public static List<Page> pages(String garden, boolean imperial, String currency, String total, List<List<String>> dues, List<List<String>> bought, BenchOptions options) {
        BenchSheet sheet = new BenchSheet(garden, CAUTION, imperial, options);
        Flow flow = new Flow(sheet, "Money: what to pay when", "");
        flow.words(List.of(total), 4.4, true);
        BenchTable table = new BenchTable(sheet, "To pay, in " + currency, new Column("when", 0.2, true), new Column("to", 0.26, true),
                new Column("for", 0.26, false), new Column("amount", 0.14, true), new Column("sum so far", 0.14, false));
        dues.forEach(row -> table.row(row.toArray(String[]::new)));
        table.on(flow);
        flow.section("Money: bought against planned", "", 0.7);
        bought(sheet, flow, currency, bought);
        return sheet.pages(flow.drafts());
    }

    /** @param rows goods, packs planned, cost planned, packs bought, paid, over the plan */
    static void bought(BenchSheet sheet, Flow flow, String currency, List<List<String>> rows) {
        BenchTable table = new BenchTable(sheet, "Bought against planned, in " + currency, new Column("goods", 0.25, true), new Column("planned", 0.24, false),
                new Column("cost", 0.09, false), new Column("bought", 0.22, false), new Column("paid", 0.12, true), new Column("over", 0.08, true));
        rows.forEach(row -> table.row(row.toArray(String[]::new)));
        table.on(flow);
    }
}
