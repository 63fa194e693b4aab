package lapyard.diagrams;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import lapyard.construction.BedWork;
import lapyard.drawing.Page;
import lapyard.drawing.Scale;
import lapyard.drawing.Shape;
import lapyard.drawing.TextMeasure;
import lapyard.geometry.Length;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.ground.GateSwing;
import lapyard.ground.SettingOut;
import lapyard.ground.SunHours;
import lapyard.plan.Bed;
import lapyard.plan.BedNames;
import lapyard.plan.CannotAnswer;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.GardenPath;
import lapyard.plan.Ground.KeepClear;
import lapyard.plan.Place;
import lapyard.plan.WayKind;
import lapyard.words.Wording;

public record PlanDrawing(
        Garden garden, List<BedWork> works, List<PathCover> covers, PlanSnags snags, PegsAndSun asked, PlanOptions options, Inks inks) {
    /** The most sheets that one plan is split over. */
    static final int MOST_SHEETS = 60;

    /** What a client sees of a garden. */
    public static final Set<PlanLayer> CLIENT = Set.of(PlanLayer.GROUND, PlanLayer.PATHS, PlanLayer.BEDS);

    /** Kept free for the map of the sheets, where there are several. */
    private static final double KEY_ROOM = 44;

    /**
     * What is worked out only for a plan that shows it.
     *
     * @param pegs for the layer of the pegs
     * @param sun  for the layer of the sun
     */
    public record PegsAndSun(Optional<SettingOut> pegs, Optional<SunHours> sun) {
        public static final PegsAndSun NOTHING = new PegsAndSun(Optional.empty(), Optional.empty());
    }

    /**
     * The garden to scale as if standing with one's back to the house, the house wall along the bottom edge.
     *
     * @param works    of the beds, for their inner faces and joints; a bed without is drawn by its outline
     * @param covers   of the paths; a path without is drawn by its middle line
     * @param findings whose snags get a letter in the yard and a line in the list, as long as there is room
     * @param asked    a layer whose part is not there is not drawn
     * @return one sheet, or several where the options allow it
     * @throws CannotAnswer where the sheet cannot hold the garden at the scale asked for, or it would take too many sheets
     */
    public static List<Page> pages(
            Garden garden, List<BedWork> works, List<PathCover> covers, List<Finding> findings, PegsAndSun asked, PlanOptions options) {
        PlanSnags shown = options.shows(PlanLayer.SNAGS) ? PlanSnags.of(findings, Wording.of(garden.imperial())) : PlanSnags.NONE;
        return new PlanDrawing(garden, works, covers, shown, asked, options, new Inks(options.sheet().mono())).pages();
    }

    private List<Page> pages() {
        Panel panel = new Panel(SheetLayout.panelWidth(options.sheet().paper()), inks);
        List<Flow.Block> flow = new ArrayList<>();
        List<Legend.Entry> legend = Legend.of(garden, works, covers, snags.count() > 0, asked, options.layers(), inks);
        if (!legend.isEmpty()) {
            flow.add(panel.heading("Legend"));
            legend.forEach(entry -> flow.add(panel.entry(entry)));
        }
        flow.addAll(panel.cautions());
        double must = Flow.Block.high(flow);

        Box extent = extent(garden, covers);
        SheetLayout.Chosen sheet = options.split()
                ? SheetLayout.roomiest(options.sheet().paper(), options.scale(), garden.imperial(), extent, must, KEY_ROOM)
                : SheetLayout.choose(options.sheet().paper(), options.scale(), garden.imperial(), extent, must);
        List<PlanTile> tiles = PlanTile.all(extent, sheet.scale(), sheet.turned(), sheet.layout().field());
        if (tiles.size() > MOST_SHEETS) {
            throw new CannotAnswer(Finding.of(FindingKind.PLAN_SHEETS_MANY, Place.field("plan")).with("scale", Fact.name(sheet.scale().toString()))
                    .with("sheets", Fact.count(tiles.size(), "sheets")).with("paper", Fact.name(options.sheet().paper().label()))
                    .with("most", Fact.count(MOST_SHEETS, "sheets")).way(WayKind.SMALLER_SCALE).way(WayKind.LARGER_PAPER));
        }
        return tiles.stream().map(tile -> page(panel, flow, sheet, tile)).toList();
    }

    /**
     * The garden as it will look, without a sheet of its own, in the middle of a field that holds it at this scale.
     *
     * @param labels of the field, where something is drawn over the picture
     */
    static List<Shape> picture(Garden garden, List<BedWork> works, List<PathCover> covers, Scale scale, Box field, Labels labels, boolean mono) {
        PlanOptions options = new PlanOptions(BenchOptions.usual("", garden.imperial()), Optional.empty(), CLIENT, false);
        PlanTile tile = PlanTile.all(extent(garden, covers), scale, false, field).get(0);
        List<Shape> shapes = new ArrayList<>();
        new PlanDrawing(garden, works, covers, PlanSnags.NONE, PegsAndSun.NOTHING, options, new Inks(mono)).drawing(shapes, tile, labels);
        return shapes;
    }

    private Page page(Panel panel, List<Flow.Block> flow, SheetLayout.Chosen sheet, PlanTile tile) {
        SheetLayout layout = sheet.layout();
        List<Shape> shapes = new ArrayList<>();
        shapes.add(frame(layout.width(), layout.height(), layout.space(), inks));
        Labels labels = new Labels(tile.seen());
        List<Shape> yard = new ArrayList<>();
        options.sheet().stamp().stale().ifPresent(why -> {
            Box band = new Box(layout.field().left(), layout.field().low(), layout.field().right(), layout.field().low() + 7);
            labels.take(band.corners());
            yard.add(inks.stale(why, band, 3.8));
        });
        Optional<Shape> matches = tile.matchLines(inks, labels);
        List<Shape> drawn = new ArrayList<>();
        Missing missing = drawing(drawn, tile, labels);
        if (tile.of() > 1) {
            Box seen = tile.seen();
            shapes.add(new Shape.Window("seen", seen.left(), seen.low(), seen.width(), seen.height(), drawn));
        } else {
            shapes.addAll(drawn);
        }
        matches.ifPresent(shapes::add);
        shapes.addAll(yard);

        shapes.add(new Shape.Group("panel", "Legend and title block", "panel", beside(panel, flow, sheet, tile, missing)));
        String place = tile.of() > 1 ? ", sheet " + tile.number() + " of " + tile.of() : "";
        return new Page((garden.name().isBlank() ? "Garden plan" : "Garden plan, " + garden.name()) + ", "
                        + sheet.scale().label(garden.imperial()) + place, layout.width(), layout.height(), shapes, List.of());
    }

    /** All that stands beside the drawing, in columns, with the title block below. */
    private List<Shape> beside(Panel panel, List<Flow.Block> flow, SheetLayout.Chosen sheet, PlanTile tile, Missing missing) {
        SheetLayout layout = sheet.layout();
        String[] builder = garden.terms().quote().builder().split("[,\n]", 2);
        Panel.Title title = new Panel.Title(
                garden.name().isBlank() ? "Garden" : garden.name(), options.working() ? "Garden plan" : "Client's plan", garden.terms().quote().client(),
                builder[0].strip(), builder.length > 1 ? builder[1].strip() : "", options.sheet().stamp().revision(), options.sheet().stamp().date(),
                tile.number() + " of " + tile.of(), options.sheet().paper().label(), garden.imperial());
        List<Shape> beside = new ArrayList<>(panel.title(
                title, sheet.scale(), layout.block().left(), layout.block().high() - Panel.BLOCK_HEIGHT));
        List<Flow.Block> pieces = new ArrayList<>();
        if (tile.of() > 1) {
            pieces.add(panel.heading("Sheet " + tile.number() + " of " + tile.of()));
            pieces.add(new Flow.Block(tile.keyHeight(KEY_ROOM - 10) + 3, false, (x, y) -> tile.key(x, y, KEY_ROOM - 10, inks)));
        }
        pieces.addAll(flow);
        pieces.addAll(missing.told(panel));
        if (slanted(garden, options)) {
            pieces.add(panel.words("Distances run along and square to the front. Where beds or sides are slanted they may come closer.", 3));
        }
        Columns columns = new Columns(layout.columns());
        pieces.forEach(piece -> beside.addAll(columns.put(piece)));
        List<Flow.Block> told = IntStream.range(0, snags.count()).mapToObj(i -> panel.snag(Bed.smallLetter(i), snags.words(i))).toList();
        beside.addAll(columns.list(panel.heading("Snags"), told, left ->
                panel.words(left + (left < told.size() ? " more" : "") + " in the list of snags", 1)));
        beside.addAll(panel.barAndNorth(
                sheet.scale(), garden, sheet.turned(), layout.block().left(), layout.block().low()));
        return beside;
    }

    /** The sheet itself, so that viewers with a dark ground show it as paper, and the frame. */
    static Shape frame(double width, double height, Box space, Inks inks) {
        return new Shape.Group("frame", "", "frame", List.of(
                Shape.Area.filled(new Box(0, 0, width, height).corners(), inks.paper()), Shape.Area.outline(space.corners(), inks.pen(Inks.CUT))));
    }

    /** What had no room on a sheet: names of beds, lengths of walls, and the beds with a distance. */
    private record Missing(int names, int lengths, List<String> far) {
        List<Flow.Block> told(Panel panel) {
            List<Flow.Block> pieces = new ArrayList<>();
            if (names > 0) pieces.add(panel.words(names + (names == 1 ? " bed has" : " beds have") + " no room for a name at this scale: draw it larger.", 3));
            if (lengths > 0) pieces.add(panel.words(lengths + (lengths == 1 ? " length finds" : " lengths find") + " no room at this scale: see the setting-out sheets.", 3));
            if (!far.isEmpty()) {
                pieces.add(panel.words("How far " + BedNames.where(far) + (far.size() == 1 ? " lies" : " lie")
                        + " from its neighbours has no room at this scale: see the setting-out sheets.", 4));
            }
            return pieces;
        }
    }

    private Optional<Outline> yard() {
        return garden.ground().outline().stream().findFirst();
    }

    private List<BedShapes> bedsOn(PlanTile tile, Sketch sketch) {
        if (!options.shows(PlanLayer.BEDS)) return List.of();
        Map<String, BedWork> built =
                works.stream().collect(Collectors.toMap(work -> work.bed().id(), Function.identity(), (a, b) -> a));
        return garden.beds().stream()
                .map(bed -> new BedShapes(bed, Optional.ofNullable(built.get(bed.id())), sketch, options.working()))
                .filter(bed -> Box.round(bed.outer()).touches(tile.seen()))
                .toList();
    }

    private Missing drawing(List<Shape> shapes, PlanTile tile, Labels labels) {
        Sketch sketch = new Sketch(tile.view(), labels, inks, garden.imperial());
        List<BedShapes> beds = bedsOn(tile, sketch);
        GroundShapes ground = new GroundShapes(garden, sketch);
        PathShapes paths = new PathShapes(garden, covers, sketch);
        beds.forEach(bed -> labels.solid(bed.outer()));
        below(shapes, ground, paths, tile.view());
        shapes.add(new Shape.Group(
                "beds", "", "beds", beds.stream().map(bed -> (Shape) bed.shapes()).toList()));
        // a chain that runs on over a match line is no chain
        Chains chains = new Chains(beds, tile.of() > 1 ? Optional.empty() : yard(), sketch);
        if (options.shows(PlanLayer.DIMENSIONS)) shapes.add(chains.shapes());
        if (options.shows(PlanLayer.STAGES)) {
            shapes.add(new Shape.Group(
                    "stages", "Stage in which each bed is built", "stages", beds.stream().flatMap(bed -> bed.stage().stream()).toList()));
        }
        // beds have their room before all else that has a name
        List<Shape> names = new ArrayList<>();
        int unnamed = names(names, beds, tile);
        if (options.shows(PlanLayer.LEVELS)) shapes.add(ground.levels());
        if (options.shows(PlanLayer.PATHS)) shapes.add(paths.names());
        shapes.add(ground.names(options.shows(PlanLayer.GROUND), options.shows(PlanLayer.KEEP_CLEAR)));
        shapes.add(new Shape.Group("bed-names", "", "names", names));
        shapes.add(snags.letters(
                garden.beds().stream().collect(Collectors.toMap(Bed::id, Function.identity(), (a, b) -> a)), sketch));
        if (options.shows(PlanLayer.PEGS)) {
            asked.pegs().ifPresent(out -> shapes.add(PegShapes.of(out, beds, sketch)));
        }
        Missing missing = options.shows(PlanLayer.DIMENSIONS) ? dimensions(shapes, beds, chains, sketch, unnamed) : new Missing(unnamed, 0, List.of());
        if (garden.beds().isEmpty() && yard().isEmpty()) shapes.add(nothing(sketch));
        return missing;
    }

    /** @return how many beds that this tile has to name find no room for it */
    private static int names(List<Shape> names, List<BedShapes> beds, PlanTile tile) {
        int unnamed = 0;
        for (BedShapes bed : beds) {
            Optional<Shape.Group> label = bed.label();
            label.ifPresent(names::add);
            boolean here = Box.round(List.of(Box.round(bed.outer()).centre())).touches(tile.own());
            unnamed += label.isEmpty() && here ? 1 : 0;
        }
        return unnamed;
    }

    /** What a plan of nothing says. */
    private Shape.Group nothing(Sketch sketch) {
        Words nothing = Words.of("Nothing to draw yet: outline the yard or add a bed.", 4, false);
        Plate middle = new Plate(sketch.on(extent(garden, covers).centre()), nothing.widthMm(), nothing.heightMm(), 0);
        return new Shape.Group("nothing", "", "names", nothing.on(middle, inks.ink(), Optional.empty()));
    }

    private Missing dimensions(List<Shape> shapes, List<BedShapes> beds, Chains chains, Sketch sketch, int unnamed) {
        Distances distances = new Distances(beds, yard(), chains, sketch);
        shapes.add(distances.shapes());
        Dimensions walls = new Dimensions(chains, sketch);
        shapes.add(new Shape.Group(
                "dimensions", "Lengths of walls", "dimensions", beds.stream().map(bed -> (Shape) walls.of(bed.bed())).toList()));
        return new Missing(unnamed, walls.leftOut(), distances.leftOut());
    }

    /** What lies under the beds. */
    private void below(List<Shape> shapes, GroundShapes ground, PathShapes paths, View view) {
        shapes.add(ground.ground(options.shows(PlanLayer.GROUND)));
        if (options.shows(PlanLayer.SUN)) {
            asked.sun().ifPresent(sun -> shapes.add(new Shape.Group(
                    "sun", "Direct sun on " + sun.day().day(), "sun", ShadeSheet.cells(garden, sun, view, inks))));
        }
        if (options.shows(PlanLayer.PATHS)) shapes.add(paths.shapes(options.working()));
        if (options.shows(PlanLayer.KEEP_CLEAR)) shapes.add(ground.keepClear(false));
        else if (options.shows(PlanLayer.GROUND)) shapes.add(ground.trees());
        shapes.add(ground.edge());
        if (options.shows(PlanLayer.KEEP_CLEAR)) shapes.add(ground.keepClear(true));
    }

    /** Whether a bed has a wall that runs neither along the front nor square to it, so that its distances do not tell all. */
    private static boolean slanted(Garden garden, PlanOptions options) {
        return options.shows(PlanLayer.DIMENSIONS) && garden.beds().size() > 1 && garden.beds().stream().map(Bed::inYard)
                .flatMap(outline -> IntStream.range(0, outline.sides()).mapToObj(outline::leg))
                .anyMatch(leg -> Math.min(Math.abs(leg.x()), Math.abs(leg.y())) > 1);
    }

    /** All that is to be drawn, in the yard's millimetres. */
    static Box extent(Garden garden, List<PathCover> covers) {
        List<Point> points = new ArrayList<>();
        covers.forEach(cover -> cover.cover().stream().map(Outline::corners).forEach(points::addAll));
        garden.paths().forEach(path -> points.addAll(path.line()));
        for (KeepClear clear : garden.ground().keepClear()) {
            points.addAll(clear.shape());
            if (clear.leafMm() > 0) {
                points.addAll(GateSwing.of(clear, garden.ground().outline()).ring());
            }
        }
        if (garden.ground().outline().isEmpty()) garden.ground().surfaces().forEach(surface -> points.addAll(surface.outline().corners()));
        garden.ground().levels().forEach(level -> points.add(level.at()));
        return Box.round(garden, points);
    }

    /** The paths: what they cover, their middle lines, their names and widths. */
    private record PathShapes(Garden garden, List<PathCover> covers, Sketch sketch) {
        private static final double LONGEST_NAME = 50;

        /** @param middles whether the middle lines are drawn */
        Shape.Group shapes(boolean middles) {
            List<Shape> shapes = new ArrayList<>();
            List<String> materials = Legend.materials(covers);
            for (PathCover cover : covers) {
                Inks.Filling filling = sketch.inks().path(cover.material(), materials.indexOf(cover.material()));
                List<Shape> areas = cover.cover().stream().<Shape>map(ring -> filling.area(sketch.on(ring), sketch.pen(Inks.SECONDARY))).toList();
                String name = cover.name().isBlank() || cover.name().equals(cover.id()) ? "" : ", " + cover.name();
                shapes.add(new Shape.Group(Shape.id("path", cover.id()), "Path " + cover.id() + name, "path", areas));
            }
            for (GardenPath path : garden.paths()) {
                if (path.line().size() > 1 && (middles || covers.isEmpty())) {
                    shapes.add(new Shape.Lines(List.of(sketch.on(path.line())), Legend.centreLine(sketch.inks())));
                }
            }
            return new Shape.Group("paths", "", "paths", shapes);
        }

        Shape.Group names() {
            return new Shape.Group("path-names", "", "names", garden.paths().stream().flatMap(path -> name(path).stream()).toList());
        }

        private List<Shape> name(GardenPath path) {
            String name = path.name().isBlank() ? path.id() : path.name();
            String wide = Length.written(path.widthMm(), garden.imperial()) + " wide";
            double size = Math.max(TypeSize.LEAST, Math.min(2.8, sketch.view().scale().paperMm(path.widthMm()) * 0.6));
            for (String text : List.of(TextMeasure.cut(name, size, false, LONGEST_NAME) + ", " + wide, wide)) {
                Words words = Words.of(text, size, false);
                List<Plate> plates = legs(path).stream().filter(leg -> leg.get(0).distanceMm(leg.get(1)) >= words.widthMm())
                        .flatMap(leg -> words.along(leg.get(0), leg.get(1), 0.5, 0.35, 0.65, 0.2, 0.8, 0.27, 0.73, 0.12, 0.88).stream()).toList();
                Optional<Plate> place = sketch.labels().firstClear(plates);
                if (place.isPresent()) return words.on(place.get(), sketch.inks());
            }
            return List.of();
        }

        /** The straight parts on the paper, longest first. */
        private List<List<Point>> legs(GardenPath path) {
            List<Point> line = sketch.on(path.line());
            return IntStream.range(1, line.size()).mapToObj(i -> line.subList(i - 1, i + 1))
                    .sorted(Comparator.comparingDouble(leg -> -leg.get(0).distanceMm(leg.get(1)))).toList();
        }
    }
}
