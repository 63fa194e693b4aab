package lapyard.prints;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import lapyard.catalogue.TradeName;
import lapyard.cutting.SawBoard;
import lapyard.exchange.Table;
import lapyard.exchange.Table.Cell;
import lapyard.exchange.Table.Column;
import lapyard.exchange.Table.Form;
import lapyard.geometry.Length;
import lapyard.geometry.Measure;
import lapyard.geometry.Outline;
import lapyard.job.JobSheet;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.order.Ordering;
import lapyard.order.Slip;
import lapyard.order.SlipLine;
import lapyard.plan.Bed;
import lapyard.weekends.Weekends;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;

/** The slip, the cut list, the bed register and the weekends of a job sheet as tables to reckon on with. */
public record GardenTables(JobSheet sheet, boolean imperial, String lengthUnit) {

    public static List<Table> of(JobSheet sheet) {
        boolean imperial = sheet.garden().imperial();
        GardenTables tables = new GardenTables(sheet, imperial, imperial ? "in" : "mm");
        return List.of(tables.slip(), tables.cutList(), tables.register(), tables.weekends());
    }

    private String title(String what) {
        return Prints.title(sheet, what);
    }

    private Column length(String head) {
        return new Column(head + " " + lengthUnit, imperial ? Form.THREE_DECIMALS : Form.ONE_DECIMAL, 11);
    }

    private Cell length(double mm) {
        BigDecimal exact = BigDecimal.valueOf(mm);
        return Cell.of(imperial
                ? exact.divide(BigDecimal.valueOf(Length.INCH_MM), 3, RoundingMode.HALF_UP)
                : exact.setScale(1, RoundingMode.HALF_UP));
    }

    /** One row a pack; each supplier's goods and delivery add up to its order, the orders to the total. */
    private Table slip() {
        Slip slip = sheet.slip();
        Form money = Form.money(slip.currency().getDecimalPlaces());
        String code = slip.currency().getCode();
        Table table = new Table("Slip", title("slip, " + code + (slip.atLeast() ? ", at least: something has no price" : "")), List.of(
                Column.text("Supplier", 20), Column.text("Goods", 34), Column.text("Pack", 24), new Column("Count", Form.WHOLE, 8),
                new Column("Price " + code, money, 11), new Column("Cost " + code, money, 12),
                new Column("Needed", Form.THREE_DECIMALS, 11), Column.text("Unit", 10)));
        List<Integer> orders = new ArrayList<>();
        List<SlipLine> told = new ArrayList<>();
        for (Slip.Order order : slip.orders()) {
            int from = table.size();
            for (Slip.Part part : order.lines()) part(table, order, part, told);
            if (order.charge().signum() > 0)
                table.row(Cell.of(order.supplier().name()), Cell.of("Delivery"), Cell.NOTHING, Cell.NOTHING, Cell.NOTHING, Cell.of(order.charge()), Cell.NOTHING, Cell.NOTHING);
            if (table.size() == from) continue;
            orders.add(table.sum(Cell.of(order.supplier().name()), Cell.of("Sum of this order"), Cell.NOTHING, Cell.NOTHING, Cell.NOTHING,
                    new Table.Sum(from, table.size() - 1), Cell.NOTHING, Cell.NOTHING));
        }
        table.sum(Cell.of("Total"), Cell.NOTHING, Cell.NOTHING, Cell.NOTHING, Cell.NOTHING, new Table.SumOf(orders), Cell.NOTHING, Cell.NOTHING);
        return table;
    }

    private void part(Table table, Slip.Order order, Slip.Part part, List<SlipLine> told) {
        SlipLine line = part.line();
        boolean first = !told.contains(line);
        told.add(line);
        Cell need = first ? amount(line.need(), line.unit()) : Cell.NOTHING;
        Cell unit = first ? Cell.of(Measure.unit(line.unit(), imperial)) : Cell.NOTHING;
        Cell supplier = Cell.of(order.supplier().name());
        if (part.packs().isEmpty())
            table.row(supplier, Cell.of(line.label()), Cell.NOTHING, Cell.NOTHING, Cell.NOTHING, Cell.of(part.cost()), need, unit);
        for (Slip.Costed one : part.costed()) {
            SlipLine.PackCount pack = one.pack();
            table.row(supplier, Cell.of(line.label()), Cell.of(pack.words(imperial)), Cell.of(pack.count()), Cell.of(pack.price()),
                    one.cost().map(paid -> cost(pack, paid)).orElse(Cell.NOTHING), need, unit);
            need = Cell.NOTHING;
            unit = Cell.NOTHING;
        }
    }

    /** A formula where that is what is paid; an amount where rounding says otherwise. */
    private static Cell cost(SlipLine.PackCount pack, BigDecimal paid) {
        boolean exact = pack.cost().filter(cost -> cost.compareTo(paid) == 0).isPresent();
        return exact ? new Table.Product(3, 4) : Cell.of(paid);
    }

    /** Each cut with its place on its board. */
    private Table cutList() {
        Table table = new Table("Cut list", title("cut list, places from the end that is trimmed first"), List.of(
                Column.text("Section", 14), new Column("Board", Form.WHOLE, 8), Column.text("Cut from", 14), length("Board length"), new Column("Cut", Form.WHOLE, 6),
                Column.text("Piece", 14), length("Length"), length("From"), length("To"), new Column("Stage", Form.WHOLE, 7), length("Left of the board")));
        BenchPrint.sawn(sheet).forEach(section -> cuts(table, section));
        table.sums(0, 6);
        return table;
    }

    private void cuts(Table table, SectionCutting section) {
        for (SawBoard board : section.saw().boards()) {
            for (int i = 0; i < board.cuts().size(); i++) {
                SawBoard.Cut cut = board.cuts().get(i);
                boolean last = i + 1 == board.cuts().size();
                table.row(Cell.of(TradeName.section(section.section(), imperial)), Cell.of(board.number()), Cell.of(board.stock()), length(board.lengthMm()), Cell.of(i + 1), Cell.of(cut.mark()),
                        length(cut.lengthMm()), length(cut.fromMm()), length(cut.toMm()), Cell.of(cut.stage()), last ? length(board.restMm()) : Cell.NOTHING);
            }
        }
    }

    private Table register() {
        Table table = new Table("Bed register", title("bed register"), List.of(
                Column.text("Bed", 8), Column.text("Name", 20), Column.text("Type", 8), length("Along"), length("Away"), new Column("Turn °", Form.ONE_DECIMAL, 8), length("Width"),
                length("Depth"), length("Height"), new Column("Courses", Form.WHOLE, 9), new Column("Stage", Form.WHOLE, 7),
                new Column("Timber " + Measure.METRES.unit(imperial), Form.THREE_DECIMALS, 11), new Column("Mass " + Measure.KG.unit(imperial), Form.ONE_DECIMAL, 11), new Column("Loose soil " + Measure.CUBIC_METRES.unit(imperial), Form.THREE_DECIMALS, 11)));
        for (JobSheet.BedSheet each : sheet.beds()) {
            Bed bed = each.work().bed();
            Outline box = bed.outline().box();
            table.row(Cell.of(bed.id()), Cell.of(bed.name().equals(bed.id()) ? "" : bed.name()), Cell.of(bed.type()), length(bed.placement().at().x()),
                    length(bed.placement().at().y()), Cell.of(BigDecimal.valueOf(bed.placement().turnDeg())), length(box.sideMm(0)), length(box.sideMm(1)), length(bed.heightMm()),
                    Cell.of(bed.courses()), Cell.of(bed.stage()), amount(each, QuantityKind.TIMBER_LENGTH, "m"), amount(each, QuantityKind.TIMBER_MASS, "kg"),
                    amount(each, QuantityKind.SOIL_LOOSE, "m3"));
        }
        table.sums(0, 11, 12, 13);
        return table;
    }

    private Cell amount(JobSheet.BedSheet bed, QuantityKind kind, String unit) {
        return amount(bed.quantities().stream().filter(quantity -> quantity.is(kind)).mapToDouble(Quantity::value).sum(), unit);
    }

    /** In the garden's own unit for one of the job sheet. */
    private Cell amount(double value, String unit) {
        return Cell.of(BigDecimal.valueOf(Measure.in(value, unit, imperial)).setScale(Ordering.NEED_DECIMALS, RoundingMode.HALF_UP));
    }

    /** What is done when; without a first day of work the days have a number only. */
    private Table weekends() {
        LocalTime begin = sheet.garden().people().crew().dates().from();
        Table table = new Table("Weekends", title("weekends"), List.of(
                new Column("Weekend", Form.WHOLE, 9), new Column("Day", Form.WHOLE, 6), new Column("Date", Form.DATE, 12), new Column("From", Form.TIME, 8),
                new Column("To", Form.TIME, 8), Column.text("Where", 14), Column.text("Task", 44), Column.text("People", 14), new Column("Minutes", Form.WHOLE, 9)));
        Map<String, Weekends.Task> tasks = sheet.weekends().byId();
        for (Weekends.Day day : sheet.weekends().days()) {
            Cell date = Cell.day(day.date());
            for (Weekends.Part part : day.parts()) {
                Weekends.Task task = tasks.get(part.task());
                table.row(Cell.of(day.weekend()), Cell.of(day.number() + 1), date, new Table.Clock(begin.plusMinutes(part.fromMinute())),
                        new Table.Clock(begin.plusMinutes(part.toMinute())), Cell.of(task.work().place()),
                        Cell.of(task.work().label() + (part.of() > 1 ? ", part " + part.number() + " of " + part.of() : "")), Cell.of(part.hands()),
                        Cell.of(part.toMinute() - part.fromMinute()));
            }
        }
        table.sums(0, 8);
        return table;
    }
}
