package lapyard.diagrams;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lapyard.construction.BedWork;
import lapyard.construction.FloorBay;
import lapyard.construction.LinerPiece;
import lapyard.construction.Strip;
import lapyard.diagrams.BenchTable.Column;
import lapyard.drawing.Page;
import lapyard.drawing.Scale;
import lapyard.drawing.Shape;
import lapyard.drawing.Tag;
import lapyard.drawing.TextMeasure;
import lapyard.geometry.Jts;
import lapyard.geometry.Lengths;
import lapyard.geometry.Measure;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.geometry.Rectangle;
import lapyard.plan.Base;
import lapyard.plan.Bed;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import org.locationtech.jts.geom.Geometry;

/** A card a bed for its floor and its liner: bearers, beams and slats where they lie, their cut lists, and the liner in the order of laying. */
public final class FloorCards {
    private static final String CAUTION = "Lay the floor and the liner after the last coat has dried. Reclaimed slats: draw every nail, mask for dust,"
            + " no unknown coating. Fold liner with bare hands, cut away from yourself.";

    private static final double RIM = 8;
    /** The most height that the floor takes on its card. */
    private static final double DRAWING = 66;

    /** The most of it, and the width, for a bed whose ground stays open and whose letters have room there: it shows nothing but walls. */
    private static final double OPEN = 44;

    /** Radius of the sign with a wall's letter. */
    private static final double LETTER = 2;

    private static final double TITLE = 12;
    /** Height of the words above the columns, at most. */
    private static final double SECTION = 13;

    private FloorCards() {}

    /**
     * @param rolls follow on the same sheet where that holds all; else they have sheets of their own, see {@link #holdsRolls}
     * @return cards of all beds that have a floor or a liner, beds alike on one; one page that says so where none has
     */
    public static List<Page> pages(List<BedWork> works, List<RollSheets.Material> rolls, BenchOptions options) {
        return BenchSheet.pages(CAUTION, options, sheet -> {
            Optional<List<BenchSheet.Draft>> one = withRolls(sheet, works, rolls);
            List<BenchSheet.Draft> drafts = one.isPresent() ? one.get() : drafts(sheet, cards(sheet, works), List.of());
            return drafts.isEmpty() ? List.of(sheet.nothing("Base and liner", "No bed here has a slatted floor or a liner.")) : drafts;
        });
    }

    /** Between the drawing and its table. */
    private static final double BESIDE = 3;

    /** Between the last rule of a table and the words below it. */
    private static final double BELOW = 1.2;

    /** Whether the cards of {@link #pages} and the rolls stand on one sheet. */
    public static boolean holdsRolls(List<BedWork> works, List<RollSheets.Material> rolls, BenchOptions options) {
        return withRolls(new BenchSheet(CAUTION, options), works, rolls).isPresent();
    }

    /** Cards and rolls where one sheet holds them. */
    private static Optional<List<BenchSheet.Draft>> withRolls(BenchSheet sheet, List<BedWork> works, List<RollSheets.Material> rolls) {
        List<Flow.Block> cards = cards(sheet, works);
        double high = sheet.space().height();
        if (cards.stream().mapToDouble(card -> Math.min(card.heightMm(), high)).sum() > 2 * high) return Optional.empty();
        return Optional.of(drafts(sheet, cards, rolls)).filter(drafts -> drafts.size() == 1);
    }

    private static List<BenchSheet.Draft> drafts(BenchSheet sheet, List<Flow.Block> cards, List<RollSheets.Material> rolls) {
        Flow flow = new Flow(sheet, "Base and liner", "");
        flow.columns(2, Flow.APART, cards);
        if (!cards.isEmpty()) RollSheets.on(flow, rolls, sheet);
        return flow.drafts();
    }

    private static List<Flow.Block> cards(BenchSheet sheet, List<BedWork> works) {
        Flow flow = new Flow(sheet, "Base and liner", "");
        double wide = flow.columnWidth(2, Flow.APART);
        Collection<List<BedWork>> alike = works.stream()
                .filter(work -> !work.bottom().bays().isEmpty() || !work.liner().isEmpty())
                .collect(Collectors.groupingBy(FloorCards::made, LinkedHashMap::new, Collectors.toList()))
                .values();
        List<Flow.Block> cards = new ArrayList<>();
        for (List<BedWork> beds : alike) {
            List<Flow.Block> card = card(sheet, beds, flow, wide);
            Flow.Block whole = Flow.Block.of(card);
            // a card alone fills both columns; one that is higher than a sheet goes on in the next
            if (alike.size() == 1 || whole.heightMm() > sheet.space().height() - SECTION) cards.addAll(card);
            else cards.add(whole);
        }
        return cards;
    }

    /** All that a card shows but the bed's code: beds for which this is equal share a card. */
    private static List<Object> made(BedWork work) {
        Bed bed = work.bed();
        List<List<Object>> liner = work.liner().stream()
                .map(piece -> List.<Object>of(piece.wall(), piece.floor(), piece.widthMm(), piece.heightMm(), piece.layingOrder()))
                .toList();
        return List.of(
                bed.outline(), bed.placement().mirror(), bed.inside().base(), work.frame().inner(), work.bottom().bays(), work.bottom().slats(), liner,
                whole(work, QuantityKind.STAPLES, ""), whole(work, QuantityKind.LINER_SLITS, ""));
    }

    private static List<Flow.Block> card(BenchSheet sheet, List<BedWork> beds, Flow flow, double wide) {
        BedWork work = beds.get(0);
        Placement frame = new Placement(new Point(0, 0), 0, work.bed().placement().mirror());
        Box extent = Box.round(work.bed().outline().placed(frame).corners());
        boolean ground = work.bottom().bays().isEmpty();
        Scale beside = scale(sheet, extent, OPEN, OPEN);
        boolean narrow = ground && onWalls(work) && beside.paperMm(closest(work.bed())) >= 2 * LETTER;
        double drawn = narrow ? OPEN : wide;
        Scale scale = narrow ? beside : scale(sheet, extent, wide, ground && !onWalls(work) ? OPEN : DRAWING);
        double high = scale.paperMm(extent.height()) + 2 * RIM;
        List<Flow.Block> card = new ArrayList<>();
        double size = BenchSheet.fitting(about(sheet, work), 3.2, TypeSize.LEAST, false, wide - 10);
        String about = TextMeasure.cut(about(sheet, work), size, false, wide - 10);
        Flow.Block title = new Flow.Block(TITLE, false, (x, top) -> List.of(
                sheet.line(x, top, x + wide, top, Inks.THIN),
                sheet.tick(x + wide - TypeSize.TICK, top + TypeSize.TICK + 1, TypeSize.TICK),
                sheet.text(x, top + 6, BenchSheet.named(beds.stream().map(BedWork::bed).toList(), 5, wide - 10), 5, true).as(Tag.subheading()),
                sheet.text(x, top + 10.6, about, size, false).as(Tag.paragraph())));
        Flow.Block floor = new Flow.Block(high + 1, false, (x, top) -> drawing(sheet, work, frame, scale, new Box(x, top, x + drawn, top + high)));
        if (narrow) {
            Flow.Block table = Flow.Block.of(liner(sheet, work).blocks(wide - drawn - BESIDE));
            card.add(title);
            card.add(new Flow.Block(Math.max(floor.heightMm(), table.heightMm()), false, (x, top) -> Stream.concat(
                    floor.drawer().at(x, top).stream(), table.drawer().at(x + drawn + BESIDE, top).stream()).toList()));
        } else {
            card.add(Flow.Block.of(List.of(title, floor)));
            if (!ground) {
                card.addAll(whole(bays(sheet, work).blocks(wide), sheet));
                card.add(Flow.Block.gap(BELOW));
                card.addAll(flow.lines(cuts(sheet, work), 3.4, false, wide));
            }
            if (!work.liner().isEmpty()) card.addAll(whole(liner(sheet, work).blocks(wide), sheet));
        }
        card.add(Flow.Block.gap(BELOW));
        card.addAll(flow.lines(notes(sheet, work), 3.2, false, wide));
        card.add(Flow.Block.gap(4));
        return card;
    }

    private static Scale scale(BenchSheet sheet, Box extent, double wide, double high) {
        return Scale.usual(Math.max(extent.width() / (wide - 2 * RIM), extent.height() / (high - 2 * RIM)), sheet.imperial);
    }

    /** Between the letters of two walls, mm of the yard. */
    private static double closest(Bed bed) {
        List<Point> letters = IntStream.range(0, bed.outline().sides()).mapToObj(side -> middle(bed.outline().corners(), side)).toList();
        return letters.stream().flatMapToDouble(one -> letters.stream().filter(other -> other != one).mapToDouble(one::distanceMm)).min().orElseThrow();
    }

    private static Point middle(List<Point> corners, int side) {
        return corners.get(side).middle(corners.get((side + 1) % corners.size()));
    }

    /** Not parted where a sheet can hold it. */
    private static List<Flow.Block> whole(List<Flow.Block> table, BenchSheet sheet) {
        Flow.Block one = Flow.Block.of(table);
        return one.heightMm() < sheet.space().height() - SECTION ? List.of(one) : table;
    }

    private static String about(BenchSheet sheet, BedWork work) {
        Base base = work.bed().inside().base();
        String floor = work.bottom().bays().isEmpty()
                ? "open base"
                : "slats " + sheet.written(base.slats().slatWidthMm()) + " × " + sheet.written(base.slats().slatThicknessMm()) + " on strips "
                        + sheet.written(base.bearers().bearerLiftMm()) + ": floor " + sheet.written(base.heightMm()) + " high";
        return floor + (work.liner().isEmpty() ? ", no liner" : ", liner in " + Measure.counted(work.liner().size(), "piece"));
    }

    /** The floor from above, wall A in front, with its rectangles, and how the bearers run. */
    private static List<Shape> drawing(BenchSheet sheet, BedWork work, Placement frame, Scale scale, Box space) {
        List<Point> outer = work.bed().outline().placed(frame).corners();
        View view = View.centred(scale, Box.round(outer), space);
        Inks inks = sheet.inks;
        List<Shape> shapes = new ArrayList<>();
        shapes.add(inks.timber().areas(List.of(view.on(outer), view.on(work.frame().inner().placed(frame).corners())), Optional.of(inks.pen(Inks.MEDIUM))));
        shapes.addAll(bearersAndSlats(work, frame, view, inks));
        if (!onWalls(work)) shapes.addAll(parts(sheet, work, frame, new Sketch(view, new Labels(space), inks, sheet.imperial)));
        for (int side = 0; side < (onWalls(work) ? outer.size() : 1); side++) {
            shapes.addAll(BedShapes.wallSign(Bed.wallLetter(side), middle(view.on(outer), side), LETTER, inks));
        }
        shapes.add(sheet.end(space.right(), space.high() - 1, scale.label(sheet.imperial), 2.9, false));
        return List.of(new Shape.Group(Shape.id("base", work.bed().id()), "Floor of bed " + work.bed().id(), "base", shapes));
    }

    private static List<Shape> bearersAndSlats(BedWork work, Placement frame, View view, Inks inks) {
        List<Point> walls = work.frame().inner().corners();
        List<Shape> laid = new ArrayList<>();
        List<Shape> slats = new ArrayList<>();
        for (FloorBay bay : work.bottom().bays()) {
            bay.bearersLaid().forEach(bearer -> laid.add(inks.of(Inks.BEARER).areas(inside(bearer, walls, frame, view), Optional.of(inks.pen(Inks.THIN)))));
            bay.slatsLaid().forEach(slat -> slats.add(new Shape.Area(
                    inside(slat, walls, frame, view), Optional.empty(), Optional.empty(), Optional.of(inks.pen(Inks.HAIR)))));
        }
        if (laid.isEmpty()) return List.of();
        return List.of(new Shape.Group(Shape.id("bearers", work.bed().id()), laid.size() + " bearers", "bearers", laid),
                new Shape.Group(Shape.id("slats", work.bed().id()), slats.size() + " slats", "slats", slats));
    }

    /** The rectangles of the floor, each with its mark and size as large as they fit. */
    private static List<Shape> parts(BenchSheet sheet, BedWork work, Placement frame, Sketch sketch) {
        List<Shape> shapes = new ArrayList<>();
        for (int i = 0; i < work.bottom().floor().size(); i++) {
            Rectangle floor = work.bottom().floor().get(i);
            List<Point> ring = sketch.on(new Box(floor.x(), floor.y(), floor.right(), floor.top()).corners().stream().map(frame::toYard).toList());
            shapes.add(Shape.Area.outline(ring, sketch.pen(Inks.WIDE).dashed(3, 1.2)));
            String name = part(work, i);
            String named = name + ": " + size(sheet, floor.widthMm(), floor.depthMm());
            Stream.of(Words.of(named, 3.4, true), Words.of(named, 2.5, true), Words.of(name, 3.4, true), Words.of(name, 2.5, true))
                    .map(words -> sketch.within(ring, words)).filter(drawn -> !drawn.isEmpty()).findFirst().ifPresent(shapes::addAll);
        }
        return shapes;
    }

    /** What is left of a bearer or slat inside the walls: it is sawn off along slanted ones. */
    private static List<List<Point>> inside(FloorBay.Laid laid, List<Point> walls, Placement frame, View view) {
        // most lie whole, and the library takes long to say so
        if (!saws(walls, Box.round(laid.corners()))) return List.of(view.on(laid.corners().stream().map(frame::toYard).toList()));
        Geometry left = Jts.common(Jts.area(laid.corners()), Jts.area(walls));
        return Jts.areas(left).stream().map(rings -> view.on(rings.get(0).stream().map(frame::toYard).toList())).toList();
    }

    /** Whether a wall is slanted or runs through a box; along its edge it may. */
    private static boolean saws(List<Point> walls, Box box) {
        Box within = box.grown(-1e-6);
        for (int i = 0; i < walls.size(); i++) {
            Box wall = Box.round(List.of(walls.get(i), walls.get((i + 1) % walls.size())));
            if (Math.min(wall.width(), wall.height()) > 1e-6 || wall.touches(within)) return true;
        }
        return false;
    }

    private static BenchTable bays(BenchSheet sheet, BedWork work) {
        BenchTable table = new BenchTable(
                sheet, "Floor, part by part", new Column("Part", 0.12, true), new Column("Bearers", 0.26, false),
                new Column("At most apart", 0.14, false), new Column("Slat rows, gap between", 0.22, false), new Column("A row, end to end", 0.26, false));
        for (int i = 0; i < work.bottom().bays().size(); i++) {
            FloorBay bay = work.bottom().bays().get(i);
            String rows = bay.slats().rows() + " rows, gap " + sheet.fine(Lengths.toTenth(bay.slats().gapMm()))
                    + (bay.slats().rippedMm() > 0 ? ", last ripped to " + sheet.written(bay.slats().rippedMm()) : "");
            boolean alike = bay.slats().rowsMm().stream().distinct().count() <= 1;
            table.row(
                    part(work, i), counted(sheet, bay.bearersMm()) + (bay.alongY() ? ", front to back" : ", side to side"),
                    sheet.written(bay.spacingMm()), rows,
                    alike ? bay.slats().piecesMm().stream().map(sheet::written).collect(Collectors.joining(" + ")) : "each row to its own length");
        }
        return table;
    }

    private static List<String> cuts(BenchSheet sheet, BedWork work) {
        Map<String, List<Double>> strips = new LinkedHashMap<>();
        for (Strip strip : work.bottom().strips()) strips.computeIfAbsent(strip.use(), use -> new ArrayList<>()).add(strip.lengthMm());
        List<String> cuts = new ArrayList<>();
        strips.forEach((use, lengths) -> cuts.add(use + "s " + counted(sheet, lengths)));
        cuts.add("slats " + work.bottom().slats().stream()
                .map(cut -> cut.count() + " of " + sheet.written(cut.lengthMm()))
                .collect(Collectors.joining(", ")));
        return List.of("Cut " + String.join("; ", cuts) + ".");
    }

    /** 8 of 1270, 5 of 870: longest first. */
    private static String counted(BenchSheet sheet, List<Double> lengths) {
        return new TreeSet<>(lengths).descendingSet().stream()
                .map(length -> lengths.stream().filter(length::equals).count() + " of " + sheet.written(length))
                .collect(Collectors.joining(", "));
    }

    private static BenchTable liner(BenchSheet sheet, BedWork work) {
        if (onWalls(work)) {
            double cut = sheet.imperial ? 0.4 : 0.32;
            BenchTable table = new BenchTable(
                    sheet, "Liner, one piece a wall", new Column("Count", 0.14, true), new Column("Pieces", 0.68 - cut, true), new Column("Cut, width × height", cut, false),
                    new Column("Walls", 0.18, false));
            Map<String, List<LinerPiece>> cuts = new LinkedHashMap<>();
            work.liner().forEach(piece -> cuts.computeIfAbsent(size(sheet, piece.widthMm(), piece.heightMm()), same -> new ArrayList<>()).add(piece));
            cuts.forEach((size, alike) -> table.row(
                    Integer.toString(alike.size()), alike.stream().map(LinerPiece::id).collect(Collectors.joining(", ")), size,
                    alike.stream().map(LinerPiece::wall).collect(Collectors.joining(", "))));
            return table;
        }
        BenchTable table = new BenchTable(
                sheet, "Liner, the downhill piece first", new Column("Lay", 0.1, true), new Column("Piece", 0.2, true),
                new Column("Cut, width × height", 0.35, false), new Column("Covers of the floor", 0.35, false));
        work.liner().stream().sorted((a, b) -> Integer.compare(a.layingOrder(), b.layingOrder())).forEach(piece -> table.row(
                Integer.toString(piece.layingOrder()), piece.id(), size(sheet, piece.widthMm(), piece.heightMm()),
                size(sheet, piece.floor().widthMm(), piece.floor().depthMm())));
        return table;
    }

    /** Whether the ground stays open and liner hangs on the walls alone. */
    private static boolean onWalls(BedWork work) {
        return !work.liner().isEmpty() && !work.liner().get(0).wall().isEmpty();
    }

    /** The mark of a part of the floor; with the bed's code before it, as other marks, it is taken for no bed. */
    private static String part(BedWork work, int i) {
        return work.bed().id() + "-R" + (i + 1);
    }

    private static String size(BenchSheet sheet, double width, double height) {
        return sheet.written(width) + " × " + sheet.written(height);
    }

    private static List<String> notes(BenchSheet sheet, BedWork work) {
        List<String> notes = new ArrayList<>();
        if (!work.bottom().bays().isEmpty()) {
            notes.add("Bearers stop " + sheet.written(work.bed().inside().base().bearers().drainGapMm()) + " short, so that water runs out past their ends.");
        }
        if (!work.liner().isEmpty()) {
            notes.add(!work.liner().get(0).wall().isEmpty()
                    ? "Liner: " + whole(work, QuantityKind.STAPLES, "staples") + "lapped round each corner, turned in at the foot under the soil;"
                            + " the ground stays open."
                    : "Liner: " + whole(work, QuantityKind.LINER_SLITS, "drain slits") + whole(work, QuantityKind.STAPLES, "staples")
                            + "folds at the corners, never cuts; slit and patch an inside corner.");
        }
        return notes;
    }

    private static String whole(BedWork work, QuantityKind kind, String words) {
        return work.quantities().stream()
                .filter(quantity -> quantity.is(kind))
                .mapToDouble(Quantity::value)
                .mapToObj(value -> Math.round(value) + " " + words + ", ")
                .findFirst()
                .orElse("");
    }
}
