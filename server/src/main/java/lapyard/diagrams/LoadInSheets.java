package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import lapyard.construction.BedWork;
import lapyard.diagrams.BenchTable.Column;
import lapyard.drawing.Page;
import lapyard.drawing.Scale;
import lapyard.drawing.Shape;
import lapyard.geometry.Measure;
import lapyard.geometry.Point;
import lapyard.loadin.Load;
import lapyard.loadin.LoadIn;
import lapyard.loadin.Trips;
import lapyard.plan.Garden;
import lapyard.words.Wording;

/** The sheet for the day the goods come: what each drop holds and weighs, trips, lifts, the way in, barrow runs. */
public final class LoadInSheets {
    private LoadInSheets() {}

    private static final String CAUTION =
            "Stand clear of crane and tail lift. Over the limit: two people or more, or wheels. The plate of the vehicle goes first, and local rules.";

    /** Heights of the sketch of the yard, the first that the sheet still holds and that leaves room for numbers; else it has a sheet of its own. */
    private static final double[] SKETCH = {100, 85, 70, 55};

    /** Side of a bulk bag on paper that holds its number, mm. */
    static final double NUMBERED = 1.5 * TypeSize.LEAST;

    /**
     * @param works  of the garden's beds, for the sketch of where bags are put down
     * @param covers of its paths
     * @return one page or more; where nothing comes in it says so
     */
    public static List<Page> pages(Garden garden, List<BedWork> works, List<PathCover> covers, LoadIn loads, BenchOptions options) {
        return BenchSheet.pages(CAUTION, options, "Delivery and access", "", "Nothing comes in for this garden.", flow -> {
            if (loads.drops().isEmpty()) return;
            BenchSheet sheet = flow.sheet;
            loads.drops().forEach(drop -> drop(drop, sheet, flow));
            way(loads, Wording.of(sheet.imperial), sheet, flow);
            List<Point> places = loads.bagPlaces().orElse(List.of());
            if (!places.isEmpty()) sketch(garden, works, covers, places, sheet, options, flow);
        });
    }

    /** Where bulk bags are put down, numbered in the order in which their places are told. */
    private static void sketch(
            Garden garden, List<BedWork> works, List<PathCover> covers, List<Point> places, BenchSheet sheet, BenchOptions options, Flow flow) {
        double wide = sheet.space().width();
        Box extent = PlanDrawing.extent(garden, covers);
        DoubleFunction<Scale> scaled = high -> Scale.ofFives(SheetLayout.needs(extent, new Box(0, 0, wide, high)));
        double bag = garden.terms().wayIn().bagMm();
        double high = DoubleStream.of(SKETCH).filter(flow::holds).filter(one -> scaled.apply(one).paperMm(bag) >= NUMBERED).findFirst()
                .orElse(sheet.space().height() - 2);
        Scale scale = scaled.apply(high);
        double side = scale.paperMm(bag);
        flow.block(new Flow.Block(high, false, (x, top) -> {
            Box field = new Box(x, top, x + wide, top + high);
            View view = PlanTile.all(extent, scale, false, field).get(0).view();
            Labels labels = new Labels(field);
            List<Shape> bags = new ArrayList<>();
            for (int i = 0; i < places.size(); i++) {
                Box square = Box.about(view.on(places.get(i)), side / 2);
                labels.take(square.corners());
                bags.add(Inks.plain(sheet.inks.paper()).area(square, sheet.inks.pen(Inks.WIDE)));
                bags.add(Inks.sign(square.centre(), String.valueOf(i + 1), TypeSize.LEAST, sheet.inks.ink()));
            }
            List<Shape> shapes = new ArrayList<>(PlanDrawing.picture(garden, works, covers, scale, field, labels, options.mono()));
            shapes.addAll(bags);
            return shapes;
        }));
    }

    private static void drop(LoadIn.Drop drop, BenchSheet sheet, Flow flow) {
        String about = (drop.massAtLeast() ? "at least " : "") + kg(drop.massKg(), sheet) + ", " + m3(drop.volumeM3(), sheet) + " as counted"
                + (drop.supplier().leadDays() > 0 ? "; order " + Measure.counted(drop.supplier().leadDays(), "day") + " ahead" : "");
        flow.section("Delivery: " + drop.supplier().name(), about);
        flow.words(List.of(drop.trips()
                .map(trips -> trips.proved() ? "These are the fewest trips that carry " + (trips.tooMuch().isEmpty() ? "it." : "what can go on it.") : "It takes at least " + Measure.counted(trips.atLeast(), "trip") + ".")
                .orElse("Brought by the supplier; its vehicle is not on the list, so trips are not counted.")), 3.8, false);
        BenchTable table = new BenchTable(sheet, "Comes",
                new Column("count", 0.08, true), new Column("of", 0.34, true), new Column("for", 0.32, false),
                new Column(Measure.KG.unit(sheet.imperial) + " each", 0.12, false), new Column(Measure.KG.unit(sheet.imperial) + " all", 0.14, false));
        for (Load load : drop.loads()) {
            table.row(String.valueOf(load.count()), load.name(), load.label(), mass(load.massKg(), 1, sheet), mass(load.massKg(), load.count(), sheet));
        }
        table.on(flow, 2);
        drop.trips().ifPresent(trips -> trips(drop, trips, sheet).on(flow));
    }

    private static BenchTable trips(LoadIn.Drop drop, Trips trips, BenchSheet sheet) {
        var vehicle = drop.vehicle().orElseThrow();
        BenchTable table = new BenchTable(sheet, Measure.counted(trips.trips().size(), "trip") + " of the "
                        + vehicle.name() + ": " + kg(vehicle.payloadKg(), sheet) + ", bed " + sheet.written(vehicle.bedLengthMm()) + ", "
                        + m3(vehicle.volumeM3(), sheet),
                new Column("trip", 0.1, true), new Column(Measure.KG.unit(sheet.imperial), 0.15, false), new Column("load", 0.75, false));
        int number = 1;
        for (Trips.Trip trip : trips.trips()) {
            String load = trip.counts().entrySet().stream()
                    .map(entry -> entry.getValue() + " x " + entry.getKey().name() + " (" + entry.getKey().label() + ")")
                    .collect(Collectors.joining(", "));
            table.row(String.valueOf(number++), Measure.KG.number(trip.massKg(), 1, sheet.imperial), load);
        }
        for (Load load : trips.tooMuch()) {
            table.row("none", "", load.count() + " x " + load.name() + " (" + load.label() + ") cannot go on it");
        }
        return table;
    }

    private static void way(LoadIn loads, Wording wording, BenchSheet sheet, Flow flow) {
        flow.section("Access: lifts, way in, barrow", "");
        flow.words(List.of(String.join(" ", loads.cautions())), 3.2, false);
        List<String> words = Stream.of(
                        loads.longest().map(load -> longest(load, loads.roundTurn(), sheet)).stream(),
                        loads.bags() > 0 ? Stream.of(bags(loads, sheet)) : Stream.<String>empty(),
                        loads.findings().stream().map(wording::paragraph))
                .flatMap(told -> told).toList();
        if (!words.isEmpty()) flow.words(words, 4, true);
        double half = flow.columnWidth(2, Flow.APART);
        flow.columns(2, Flow.APART, Stream.of(lifts(loads, sheet), barrows(loads, sheet))
                .filter(table -> !table.isEmpty()).map(table -> Flow.Block.of(table.blocks(half))).toList());
    }

    private static String longest(Load load, OptionalDouble roundTurn, BenchSheet sheet) {
        return "Longest: " + load.name() + ", " + load.label()
                + (roundTurn.isPresent() ? ". Round the turn goes up to " + sheet.written(roundTurn.getAsDouble()) + ", carried level." : ".");
    }

    private static String bags(LoadIn loads, BenchSheet sheet) {
        return "Bulk bags and heaps take " + Measure.counted(loads.bags(), "place") + " and are emptied where they stand"
                + loads.bagPlaces().map(places -> places.isEmpty() ? ": no place is free" : ", as numbered in the sketch: " + putDown(loads) + ". Middles at "
                        + places.stream()
                                .map(point -> sheet.written(point.x()) + " / " + sheet.written(point.y()))
                                .collect(Collectors.joining(", "))
                        + " (across / away from the house)").orElse("") + ".";
    }

    private static BenchTable lifts(LoadIn loads, BenchSheet sheet) {
        BenchTable lifts = new BenchTable(sheet, "Lifts over the limit for one person",
                new Column("people", 0.25, true), new Column(Measure.KG.unit(sheet.imperial), 0.11, true), new Column("count", 0.1, false), new Column("of", 0.54, false));
        for (LoadIn.Lift lift : loads.lifts()) {
            lifts.row(lift.people() + (lift.beyondCrew() ? ", wheels" : lift.overGuide() ? ", over guide" : ""), Measure.KG.number(lift.massKg(), 1, sheet.imperial), String.valueOf(lift.load().count()),
                    lift.load().name() + ", " + lift.load().label());
        }
        return lifts;
    }

    private static BenchTable barrows(LoadIn loads, BenchSheet sheet) {
        BenchTable barrows = new BenchTable(sheet, "Barrow",
                new Column("runs", 0.12, true), new Column("hours", 0.12, false), new Column(Measure.CUBIC_METRES.unit(sheet.imperial), 0.16, false), new Column("of", 0.6, false));
        long runs = 0;
        double hours = 0;
        for (LoadIn.Barrows one : loads.barrows()) {
            barrows.row(String.valueOf(one.runs()), Measure.of(one.hours(), "", 1, false), Measure.CUBIC_METRES.number(one.volumeM3(), 3, sheet.imperial), one.label());
            runs += one.runs();
            hours += one.hours();
        }
        if (!barrows.isEmpty()) barrows.row(String.valueOf(runs), Measure.of(hours, "", 1, false), "", "all");
        return barrows;
    }

    /** What stands at which of the numbered places. */
    private static String putDown(LoadIn loads) {
        List<String> all = new ArrayList<>();
        long from = 1;
        for (LoadIn.Drop drop : loads.drops()) {
            for (Load load : drop.loads()) {
                if (!load.bulk()) continue;
                long to = from + load.places() - 1;
                all.add((to == from ? "" + from : from + " to " + to) + " " + load.label() + ", " + load.count() + " × " + load.name());
                from = to + 1;
            }
        }
        return String.join("; ", all);
    }

    private static String mass(OptionalDouble each, long count, BenchSheet sheet) {
        return each.isPresent() ? Measure.KG.number(each.getAsDouble() * count, 1, sheet.imperial) : "not known";
    }

    private static String kg(double kg, BenchSheet sheet) {
        return Measure.KG.written(kg, 0, sheet.imperial);
    }

    private static String m3(double m3, BenchSheet sheet) {
        return Measure.CUBIC_METRES.written(m3, 2, sheet.imperial);
    }
}
