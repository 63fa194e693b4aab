package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import lapyard.diagrams.BenchTable.Column;
import lapyard.drawing.Page;

/** What merchants are asked, and what they answered. */
public final class MerchantSheets {
    /** What a merchant fills in besides the prices. */
    private static final List<String> ASKED = List.of("Merchant", "Prices hold until", "With tax of, %", "Delivery charge", "Free over", "Days from order", "Payment");

    private MerchantSheets() {}

    /** One size to price; texts as they shall be read. */
    public record Size(String goods, String size, String count, String each, String needed) {}

    /** @param about what is said below the heading */
    public static List<Page> request(String garden, boolean imperial, String about, String currency, List<String> words, List<Size> sizes, BenchOptions options) {
        BenchSheet sheet = new BenchSheet(garden, SlipSheets.CAUTION, imperial, options);
        Flow flow = new Flow(sheet, "Request for prices", about);
        flow.words(words, 3.6, false);
        double wide = flow.columnWidth(ASKED.size(), 4);
        flow.block(new Flow.Block(14, false, (x, y) -> {
            List<lapyard.drawing.Shape> shapes = new ArrayList<>();
            for (int i = 0; i < ASKED.size(); i++) {
                double left = x + i * (wide + 4);
                shapes.add(sheet.text(left, y + 3.4, ASKED.get(i), 2.9, false));
                shapes.add(sheet.line(left, y + 11, left + wide, y + 11, Inks.THIN));
            }
            return shapes;
        }));
        BenchTable table = new BenchTable(sheet, "To price, in " + currency, new Column("goods", 0.3, true), new Column("size", 0.26, true),
                new Column("count", 0.1, true), new Column("price is for", 0.1, false), new Column("needed by", 0.12, false), new Column("price", 0.12, false));
        sizes.forEach(one -> table.row(one.goods(), one.size(), one.count(), one.each(), one.needed(), ""));
        table.on(flow);
        return sheet.pages(flow.drafts());
    }

    /**
     * The same lines from each merchant.
     *
     * @param merchants names, above the columns
     * @param rows      label, a cell for each merchant, the best split, and who brings it there
     */
    public static List<Page> offers(String garden, boolean imperial, String currency, List<String> words, List<String> merchants, List<List<String>> rows, BenchOptions options) {
        BenchSheet sheet = new BenchSheet(garden, SlipSheets.CAUTION, imperial, options);
        Flow flow = new Flow(sheet, "Offers side by side", "what the whole garden would cost from each alone, and from the best of them together");
        flow.words(words, 3.6, false);
        List<Column> columns = new ArrayList<>(List.of(new Column("goods", 0.26, true)));
        merchants.forEach(name -> columns.add(new Column(name, 0.46 / merchants.size(), false)));
        columns.add(new Column("best split", 0.12, true));
        columns.add(new Column("from", 0.16, false));
        BenchTable table = new BenchTable(sheet, "In " + currency, columns.toArray(Column[]::new));
        rows.forEach(row -> table.row(row.toArray(String[]::new)));
        table.on(flow);
        return sheet.pages(flow.drafts());
    }
}
