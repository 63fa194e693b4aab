package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import lapyard.construction.BedWork;
import lapyard.diagrams.BenchTable.Column;
import lapyard.drawing.Page;
import lapyard.drawing.Paper;
import lapyard.drawing.Scale;
import lapyard.drawing.Shape;
import lapyard.drawing.Tag;
import lapyard.plan.Garden;

/** Two ways to build a garden side by side, at one scale, with what each costs: what a client chooses from. */
public final class TwoOptions {
    private static final String CAUTION = "Not designed here: walls that hold back ground, beds on decks. Local codes go first.";

    /** Between the two plans. */
    private static final double GAP = 6;

    private static final double HEAD = 7;

    private TwoOptions() {}

    /** One of the two, as the client knows it. */
    public record Option(String name, Garden garden, List<BedWork> works, List<PathCover> covers) {}

    /** What is compared, as it shall be read. */
    public record Row(String what, String first, String second) {}

    /** Smaller than this a plan is not read: the sheet is the next larger paper. */
    private static final int SMALLEST = 100;

    /** @param larger whether a larger paper than that of the options may be taken where both plans would be too small on it */
    public static List<Page> pages(Option first, Option second, List<Row> rows, BenchOptions options, boolean larger) {
        BenchSheet usual = new BenchSheet(CAUTION, options);
        boolean small = larger && scale(usual, first, second, rows).n() > SMALLEST;
        BenchSheet sheet = small ? new BenchSheet(CAUTION, options.on(options.imperial() ? Paper.TABLOID : Paper.A3)) : usual;
        Scale scale = scale(sheet, first, second, rows);
        Box space = sheet.space();
        double wide = wide(sheet);
        double high = high(sheet, rows);
        BenchTable table = new BenchTable(sheet, "", new Column("", 0.3, false), new Column("first", 0.35, true), new Column("second", 0.35, true));
        rows.forEach(row -> table.row(row.what(), row.first(), row.second()));
        List<Option> both = List.of(first, second);
        Flow flow = new Flow(sheet, "Two options", "both at " + scale.label(options.imperial()));
        flow.block(new Flow.Block(HEAD + high, false, (x, top) -> {
            List<Shape> shapes = new ArrayList<>();
            for (int i = 0; i < 2; i++) {
                Option one = both.get(i);
                double left = x + i * (wide + GAP);
                Box place = new Box(left, top + HEAD, left + wide, top + HEAD + high);
                shapes.add(sheet.text(left, top + 4.6, (i == 0 ? "First: " : "Second: ") + one.name(), 4.6, true).as(Tag.subheading()));
                String prefix = i == 0 ? "first-" : "second-";
                shapes.addAll(renamed(prefix, PlanDrawing.picture(one.garden(), one.works(), one.covers(), scale, place, new Labels(place), options.mono())));
            }
            return shapes;
        }));
        table.on(flow);
        flow.block(new Flow.Block(TypeSize.TICK + 2, false, (x, top) -> List.of(
                sheet.text(x, top + 6, "Chosen:", 4.6, true),
                sheet.tick(x + 30, top + TypeSize.TICK, TypeSize.TICK), sheet.text(x + 41, top + 6, "first", 4.6, false),
                sheet.tick(x + 62, top + TypeSize.TICK, TypeSize.TICK), sheet.text(x + 73, top + 6, "second", 4.6, false),
                sheet.line(x + 110, top + TypeSize.TICK, x + 150, top + TypeSize.TICK, Inks.MEDIUM), sheet.text(x + 152, top + 6, "date", 2.9, false),
                sheet.line(x + 164, top + TypeSize.TICK, x + 220, top + TypeSize.TICK, Inks.MEDIUM), sheet.text(x + 222, top + 6, "signature", 2.9, false))));
        return sheet.pages(flow.drafts());
    }

    private static double wide(BenchSheet sheet) {
        return (sheet.space().width() - GAP) / 2;
    }

    private static double high(BenchSheet sheet, List<Row> rows) {
        return sheet.space().height() - HEAD - 24 - rows.size() * 8;
    }

    /** The largest at which both fit their halves. */
    private static Scale scale(BenchSheet sheet, Option first, Option second, List<Row> rows) {
        Box field = new Box(0, 0, wide(sheet), high(sheet, rows));
        double least = Stream.of(first, second).mapToDouble(one -> SheetLayout.needs(PlanDrawing.extent(one.garden(), one.covers()), field)).max().orElseThrow();
        return Scale.usual(least - 1e-9, sheet.imperial);
    }

    /** Each id of a page is used once, and both plans have a bed A. */
    private static List<Shape> renamed(String prefix, List<Shape> shapes) {
        return shapes.stream()
                .map(shape -> shape instanceof Shape.Group group
                        ? new Shape.Group(prefix + group.id(), group.title(), group.layer(), renamed(prefix, group.shapes()))
                        : shape)
                .toList();
    }
}
