package lapyard.prints;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import lapyard.diagrams.SlipSheets;
import lapyard.exchange.Table;
import lapyard.exchange.Table.Cell;
import lapyard.exchange.Table.Column;
import lapyard.exchange.Table.Form;
import lapyard.geometry.Length;
import lapyard.geometry.Measure;
import lapyard.job.JobSheet;
import lapyard.job.MerchantOffers;
import lapyard.job.Payments;
import lapyard.job.PriceRequest;

/** Tables that are made one by one, each as CSV or as a workbook of its own. */
public final class BuyingTables {
    private static final Map<String, Function<JobSheet, List<Table>>> ALL = Map.of("price-request", sheet -> List.of(priceRequest(sheet)),
            "offers", sheet -> List.of(offers(sheet)), "payments", BuyingTables::payments);

    private BuyingTables() {}

    public static boolean known(String name) {
        return ALL.containsKey(name);
    }

    /**
     * One table or more, as many sheets of a workbook; as CSV the first alone.
     *
     * @throws IllegalArgumentException where there is no such table
     */
    public static List<Table> of(String name, JobSheet sheet) {
        if (!known(name)) throw new IllegalArgumentException("there is no table " + name);
        return ALL.get(name).apply(sheet);
    }

    private static Cell amount(OptionalDouble value) {
        return value.isPresent() ? amount(value.getAsDouble()) : Cell.NOTHING;
    }

    private static Cell amount(double value) {
        return Cell.of(new BigDecimal(Measure.plain(value, 3)));
    }

    /** Its headings are those by which a merchant's list is read, so that it comes back filled in. */
    private static Table priceRequest(JobSheet sheet) {
        PriceRequest request = PriceRequest.of(sheet);
        String code = sheet.slip().currency().getCode();
        boolean imperial = sheet.garden().imperial();
        Table table = new Table("Price request", Prints.title(sheet, "request for prices" + request.answerBy().map(day -> ", answer by " + day).orElse("")), List.of(
                Column.text("Item", 16), Column.text("Description", 34), new Column("Thickness mm", Form.ONE_DECIMAL, 11), new Column("Height mm", Form.ONE_DECIMAL, 11),
                new Column("Length mm", Form.ONE_DECIMAL, 11), new Column("Width mm", Form.ONE_DECIMAL, 11), Column.text("Pack", 20), new Column("Content", Form.THREE_DECIMALS, 10),
                Column.text("Unit", 8), new Column("Count", Form.THREE_DECIMALS, 9), Column.text("Price is for", 11), Column.text("In all", 12), Column.text("Needed by", 14), Column.text("Currency", 9),
                new Column("Price", Form.money(sheet.slip().currency().getDecimalPlaces()), 11)));
        for (PriceRequest.Row row : request.rows()) {
            PriceRequest.Size size = row.size();
            String description = row.label() +  (imperial && size.lengthMm().isPresent() ? ", " + Length.written(size.lengthMm().getAsDouble(), true) : "");
            table.row(Cell.of(size.item()), Cell.of(description), amount(side(row, 0)), amount(side(row, 1)), amount(size.lengthMm()), amount(size.widthMm()),
                    Cell.of(size.pack()), amount(size.content()), Cell.of(size.unit()), row.count() == 0 ? Cell.NOTHING : amount(count(row, imperial)),
                    Cell.of(each(row, imperial)), Cell.of(SlipSheets.need(row.need(), row.needUnit(), imperial)), Cell.of(needed(row)), Cell.of(code), Cell.NOTHING);
        }
        return table;
    }

    private static OptionalDouble side(PriceRequest.Row row, int which) {
        return row.size().sectionMm().map(section -> OptionalDouble.of(section[which])).orElse(OptionalDouble.empty());
    }

    /** Rolls are priced by the metre, by the foot in a garden in feet; a list that comes back says which. */
    static String each(PriceRequest.Row row, boolean imperial) {
        return "a " + (imperial && row.size().each() == PriceRequest.Each.METRE ? "foot" : row.size().each().name().toLowerCase(Locale.ROOT));
    }

    /** In the unit that it is priced in. */
    static double count(PriceRequest.Row row, boolean imperial) {
        return row.size().each() == PriceRequest.Each.METRE ? Measure.METRES.in(row.count(), imperial) : row.count();
    }

    /** The day, or the weekend where the garden names no days. */
    static String needed(PriceRequest.Row row) {
        return row.needed().map(Object::toString).orElse(row.weekend() == 0 ? "" : "weekend " + row.weekend());
    }

    /** A column a merchant, one row a line of the slip; goods, delivery and total below. */
    private static Table offers(JobSheet sheet) {
        MerchantOffers offers = MerchantOffers.of(sheet);
        Form money = Form.money(offers.best().currency().getDecimalPlaces());
        List<Column> columns = new ArrayList<>(List.of(Column.text("Goods", 34), new Column("Needed", Form.THREE_DECIMALS, 11), Column.text("Unit", 10)));
        offers.merchants().forEach(one -> columns.add(new Column(one.supplier().name(), money, 14)));
        columns.add(new Column("Best split", money, 14));
        columns.add(Column.text("From", 26));
        Table table = new Table("Offers", Prints.title(sheet, "offers side by side, " + offers.best().currency().getCode() + ", delivery included"), columns);
        for (MerchantOffers.Line line : offers.lines()) {
            row(table, offers, Cell.of(line.label()), amount(line.need()), Cell.of(line.unit()),
                    one -> Optional.ofNullable(line.costs().get(one.supplier().id())), line.cost(), from(offers, line), false);
        }
        row(table, offers, Cell.of("Goods"), Cell.NOTHING, Cell.NOTHING, one -> Optional.of(one.goods()), Optional.of(offers.best().goods()), "", true);
        row(table, offers, Cell.of("Delivery"), Cell.NOTHING, Cell.NOTHING, one -> Optional.of(one.charge()),
                Optional.of(offers.best().total().subtract(offers.best().goods())), "", true);
        row(table, offers, Cell.of("Total of what is priced"), Cell.NOTHING, Cell.NOTHING, one -> Optional.of(one.total()), Optional.of(offers.best().total()),
                offers.proven() ? "no other split costs less" : "best split found", true);
        row(table, offers, Cell.of("Lines without a price"), Cell.NOTHING, Cell.NOTHING, one -> Optional.of(BigDecimal.valueOf(one.missing().size())),
                Optional.of(BigDecimal.valueOf(offers.lines().stream().filter(line -> line.cost().isEmpty()).count())), "", true);
        return table;
    }

    /** Who brings a line in the best split, by name. */
    static String from(MerchantOffers offers, MerchantOffers.Line line) {
        return String.join(" + ", line.chosen().stream().map(id -> offers.merchants().stream().filter(one -> one.supplier().id().equals(id))
                .map(one -> one.supplier().name()).findFirst().orElse("no price")).toList());
    }

    /** What must be paid when, and what was bought against the plan. */
    private static List<Table> payments(JobSheet sheet) {
        Payments payments = Payments.of(sheet);
        String code = payments.currency().getCode();
        Form money = Form.money(payments.currency().getDecimalPlaces());
        Table dues = new Table("Payments", Prints.title(sheet, "what to pay when, " + code + (payments.atLeast() ? ", at least: something has no price" : "")), List.of(
                new Column("Date", Form.DATE, 12), Column.text("When", 24), Column.text("To", 24), Column.text("For", 26), new Column("Amount " + code, money, 14)));
        for (Payments.Due due : payments.dues()) {
            dues.row(Cell.day(due.date()), Cell.of(due.date().isPresent() ? "" : OfficePrint.when(due)), Cell.of(due.supplier().name()),
                    Cell.of(due.what().words), Cell.of(due.amount()));
        }
        dues.sums(2, 4);
        Table bought = new Table("Bought", Prints.title(sheet, "bought against planned, " + code), List.of(Column.text("Goods", 30), Column.text("Planned", 26), new Column("Cost " + code, money, 12),
                Column.text("Bought", 26), new Column("Paid " + code, money, 12), new Column("Still to buy " + code, money, 12), new Column("Over the plan " + code, money, 12)));
        for (Payments.BoughtLine line : payments.bought()) {
            bought.row(Cell.of(line.label()), Cell.of(line.packs()), Cell.of(line.planned()), Cell.of(line.bought()), Cell.of(line.paid()), Cell.of(line.open()),
                    line.bought().isEmpty() ? Cell.NOTHING : Cell.of(line.over()));
        }
        bought.sums(0, 2, 4, 5, 6);
        return List.of(dues, bought);
    }

    private static void row(Table table, MerchantOffers offers, Cell what, Cell need, Cell unit, Function<MerchantOffers.Merchant, Optional<BigDecimal>> cost,
            Optional<BigDecimal> best, String from, boolean sum) {
        List<Cell> cells = new ArrayList<>(List.of(what, need, unit));
        offers.merchants().forEach(one -> cells.add(Cell.of(cost.apply(one))));
        cells.add(Cell.of(best));
        cells.add(Cell.of(from));
        if (sum) table.sum(cells.toArray(Cell[]::new));
        else table.row(cells.toArray(Cell[]::new));
    }
}
