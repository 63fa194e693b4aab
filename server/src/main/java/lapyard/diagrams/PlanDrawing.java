package lapyard.diagrams;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import lapyard.construction.BedWork;
import lapyard.drawing.Page;
import lapyard.drawing.Shape;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.Garden;
import lapyard.plan.Ground.KeepClear;

/** Draws the plan of a whole garden. */
public final class PlanDrawing {
    private PlanDrawing() {}

    /** Round the beds, where no yard is drawn. */
    private static final double MARGIN_MM = 500;

    /** The plan without paths' covers and without snags. */
    public static Page draw(Garden garden, List<BedWork> works, PlanOptions options) {
        return draw(garden, works, List.of(), List.of(), options);
    }

    /**
     * The garden to scale as if standing with one's back to the house, the house wall along the bottom edge.
     *
     * @param works    of the beds, for their inner faces and joints; a bed without is drawn by its outline
     * @param covers   of the paths; a path without is drawn by its middle line
     * @param findings whose snags get a letter in the yard and a line in the list, as long as there is room
     * @throws DoesNotFit               where the sheet cannot hold the garden at the scale asked for
     * @throws IllegalArgumentException where the garden is too large for any scale
     */
    public static Page draw(
            Garden garden, List<BedWork> works, List<PathCover> covers, List<Finding> findings, PlanOptions options) {
        Inks inks = new Inks(options.mono());
        PlanSnags snags = new PlanSnags(findings);
        Panel panel = new Panel(SheetLayout.panelWidth(options.paper()), inks);
        List<Panel.Piece> flow = new ArrayList<>();
        List<Legend.Entry> legend = Legend.of(garden, works, covers, snags.count() > 0, inks);
        if (!legend.isEmpty()) {
            flow.add(panel.heading("Legend"));
            legend.forEach(entry -> flow.add(panel.entry(entry)));
        }
        flow.addAll(panel.cautions());
        double must = flow.stream().mapToDouble(Panel.Piece::height).sum();

        Box extent = extent(garden, covers);
        SheetLayout.Chosen sheet =
                SheetLayout.choose(options.paper(), options.scale(), garden.imperial(), extent, must);
        SheetLayout layout = sheet.layout();
        View view = sheet.view(extent);

        List<Shape> shapes = new ArrayList<>();
        shapes.add(frame(layout.width(), layout.height(), layout.space(), inks));
        int unnamed = drawing(shapes, garden, works, covers, snags, view, inks, new Labels(layout.field()));

        List<Shape> beside = new ArrayList<>();
        if (unnamed > 0) {
            flow.add(panel.words(unnamed + (unnamed == 1 ? " bed has" : " beds have")
                    + " no room for a name at this scale: draw it larger.", 3));
        }
        Columns columns = new Columns(layout.columns());
        flow.forEach(piece -> beside.addAll(columns.put(piece)));
        beside.addAll(snagList(snags, panel, columns));
        beside.addAll(panel.barAndNorth(
                sheet.scale(), garden.ground().northDeg(), garden.imperial(), layout.block().left(), layout.block().low()));
        Panel.Title title = new Panel.Title(
                garden.name().isBlank() ? "Garden" : garden.name(), "Garden plan", options.revision(), options.date(), "1 of 1", options.paper().label(), garden.imperial());
        beside.addAll(panel.title(
                title, sheet.scale(), layout.block().left(), layout.block().high() - Panel.BLOCK_HEIGHT));
        shapes.add(new Shape.Group("panel", "Legend and title block", "panel", beside));
        return new Page(
                (garden.name().isBlank() ? "Garden plan" : "Garden plan, " + garden.name()) + ", "
                        + sheet.scale().label(garden.imperial()),
                layout.width(),
                layout.height(),
                shapes);
    }

    /** The sheet itself, so that viewers with a dark ground show it as paper, and the frame. */
    static Shape frame(double width, double height, Box space, Inks inks) {
        return new Shape.Group(
                "frame",
                "",
                "frame",
                List.of(
                        Shape.Area.box(0, 0, width, height, Optional.of(inks.paper()), Optional.empty()),
                        Shape.Area.box(
                                space.left(), space.low(), space.width(), space.height(), Optional.empty(),
                                Optional.of(inks.pen(Inks.BROAD)))));
    }

    /** @return how many beds had no room for a label */
    private static int drawing(
            List<Shape> shapes,
            Garden garden,
            List<BedWork> works,
            List<PathCover> covers,
            PlanSnags snags,
            View view,
            Inks inks,
            Labels labels) {
        Map<String, BedWork> built =
                works.stream().collect(Collectors.toMap(work -> work.bed().id(), Function.identity(), (a, b) -> a));
        List<BedShapes> beds = garden.beds().stream()
                .map(bed -> new BedShapes(bed, Optional.ofNullable(built.get(bed.id())), view, inks, garden.imperial()))
                .toList();
        GroundShapes ground = new GroundShapes(garden, view, inks, labels);
        PathShapes paths = new PathShapes(garden, covers, view, inks);
        beds.forEach(bed -> labels.solid(bed.outer()));

        shapes.add(ground.ground());
        shapes.add(paths.shapes());
        shapes.add(ground.things());
        shapes.add(ground.edge());
        shapes.add(ground.gates());
        shapes.add(new Shape.Group(
                "beds", "", "beds", beds.stream().map(bed -> (Shape) bed.shapes(labels)).toList()));
        List<Shape> names = new ArrayList<>();
        int unnamed = 0;
        for (BedShapes bed : beds) {
            Optional<Shape.Group> label = bed.label(labels);
            label.ifPresent(names::add);
            unnamed += label.isEmpty() ? 1 : 0;
        }
        shapes.add(ground.levels());
        shapes.add(paths.names(labels));
        shapes.add(ground.names());
        shapes.add(new Shape.Group("bed-names", "", "names", names));
        shapes.add(snags.letters(
                garden.beds().stream().collect(Collectors.toMap(Bed::id, Function.identity(), (a, b) -> a)),
                view,
                inks,
                labels));
        if (garden.beds().isEmpty() && garden.ground().outline().isEmpty()) {
            Words nothing = Words.of("Nothing to draw yet: outline the yard or stand a bed.", 4, false);
            Plate middle = new Plate(view.on(extent(garden, covers).centre()), nothing.widthMm(), nothing.heightMm(), 0);
            shapes.add(new Shape.Group("nothing", "", "names", nothing.on(middle, inks.ink(), Optional.empty())));
        }
        return unnamed;
    }

    private static List<Shape> snagList(PlanSnags snags, Panel panel, Columns columns) {
        List<Shape> shapes = new ArrayList<>();
        if (snags.count() == 0) {
            return shapes;
        }
        List<Panel.Piece> pieces = new ArrayList<>();
        for (int i = 0; i < snags.count(); i++) {
            pieces.add(panel.snag(PlanSnags.letter(i), snags.words(i)));
        }
        Panel.Piece heading = panel.heading("Snags");
        Panel.Piece rest = panel.words(snags.count() + " more in the list of snags", 1);
        if (!columns.holds(List.of(heading, pieces.get(0), rest))) {
            return columns.holds(List.of(rest))
                    ? columns.put(panel.words(snags.count() + " in the list of snags", 1))
                    : shapes;
        }
        shapes.addAll(columns.put(heading));
        for (int i = 0; i < pieces.size(); i++) {
            boolean last = i == pieces.size() - 1;
            if (!columns.holds(last ? List.of(pieces.get(i)) : List.of(pieces.get(i), rest))) {
                shapes.addAll(columns.put(panel.words(pieces.size() - i + " more in the list of snags", 1)));
                break;
            }
            shapes.addAll(columns.put(pieces.get(i)));
        }
        return shapes;
    }

    /** All that is to be drawn, in the yard's millimetres. */
    private static Box extent(Garden garden, List<PathCover> covers) {
        List<Point> points = new ArrayList<>();
        garden.beds().forEach(bed -> points.addAll(bed.inYard().corners()));
        covers.forEach(cover -> cover.cover().stream().map(Outline::corners).forEach(points::addAll));
        garden.paths().forEach(path -> points.addAll(path.line()));
        for (KeepClear clear : garden.ground().keepClear()) {
            points.addAll(clear.shape());
            if (clear.leafMm() > 0) {
                points.addAll(GateSwing.of(clear, garden.ground().outline()).swept());
            }
        }
        garden.ground().surfaces().forEach(surface -> points.addAll(surface.outline().corners()));
        garden.ground().levels().forEach(level -> points.add(level.at()));
        garden.ground().outline().stream().map(Outline::corners).flatMap(Collection::stream).forEach(points::add);
        if (points.isEmpty()) {
            return new Box(0, 0, 10_000, 5_000);
        }
        Box box = Box.round(points);
        return garden.ground().outline().isEmpty() ? box.grown(MARGIN_MM) : box;
    }
}
