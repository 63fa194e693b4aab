package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import lapyard.construction.BedWork;
import lapyard.construction.CrossTies;
import lapyard.drawing.Shape;
import lapyard.drawing.Stroke;
import lapyard.geometry.Point;
import lapyard.ground.SettingOut;
import lapyard.ground.SunHours;
import lapyard.plan.Garden;
import lapyard.plan.Ground.KeepClear;
import lapyard.plan.SurfaceKind;

/** What the signs of a plan mean: only what is drawn on it. */
record Legend(Garden garden, Set<PlanLayer> layers, boolean working, Inks inks, List<Entry> entries) {
    /** Of surfaces and of path materials each, so that the legend never pushes the drawing off the sheet. */
    private static final int MOST_KINDS = 8;

    /** {@code sample} draws the sign into a box on the paper. */
    record Entry(String words, Function<Box, List<Shape>> sample) {}

    static List<Entry> of(Garden garden, List<BedWork> works, List<PathCover> paths, boolean snags,
            PlanDrawing.PegsAndSun asked, Set<PlanLayer> layers, Inks inks) {
        Legend legend = new Legend(garden, layers, layers.contains(PlanLayer.DIMENSIONS), inks, new ArrayList<>());
        if (!garden.ground().outline().isEmpty()) {
            legend.area("house wall", inks.of(Inks.HOUSE_WALL), Inks.SIGN);
            legend.line("edge of the yard", inks.pen(Inks.CUT));
        }
        if (layers.contains(PlanLayer.BEDS)) legend.beds(works);
        if (layers.contains(PlanLayer.PATHS)) legend.paths(paths);
        legend.ground();
        if (layers.contains(PlanLayer.PEGS) && asked.pegs().flatMap(SettingOut::baseline).isPresent()) {
            legend.line("baseline to measure from", PegShapes.pen(inks));
            legend.sign("peg, numbered as on its sheet", box -> List.of(PegShapes.sign(box.centre(), inks)));
        }
        if (layers.contains(PlanLayer.SUN) && asked.sun().isPresent()) {
            for (SunHours.Light light : SunHours.Light.values()) {
                legend.area(ShadeSheet.words(light), inks.light(light.ordinal()), Inks.SECONDARY);
            }
        }
        if (snags) legend.sign("snag, listed by its letter", box -> PlanSnags.sign("a", box.centre(), inks));
        return legend.entries;
    }

    private void beds(List<BedWork> works) {
        if (!works.isEmpty()) {
            area("timber, top course with its joints", inks.timber(), Inks.OUTLINE);
            List<CrossTies> held = !working ? List.of() : works.stream().map(built -> CrossTies.of(built.bed(), built.frame().inner(), built.frame().seams())).toList();
            if (held.stream().anyMatch(one -> !one.ties().isEmpty())) {
                sign("cross tie with a batten at both ends", box -> {
                    Point from = new Point(box.left() + 1, box.centre().y());
                    Point to = new Point(box.right() - 1, box.centre().y());
                    return List.of(Shape.Lines.of(inks.pen(Inks.OUTLINE), from, to), BedShapes.supportSign(from, inks), BedShapes.supportSign(to, inks));
                });
            }
            if (held.stream().anyMatch(one -> !one.posts().isEmpty())) {
                sign("post inside a wall", box -> List.of(BedShapes.supportSign(box.centre(), inks)));
            }
        }
        if (garden.beds().isEmpty()) return;
        area("planted ground of a bed", inks.of(Inks.PLANTED), Inks.SIGN);
        if (working) sign("wall A of a bed, its front", box -> BedShapes.wallSign("A", box.centre(), 1.6, inks));
        if (layers.contains(PlanLayer.STAGES)) sign("stage in which a bed is built", box -> BedShapes.stageSign(1, box.centre(), inks));
    }

    private void paths(List<PathCover> paths) {
        List<String> materials = materials(paths);
        for (int i = 0; i < Math.min(materials.size(), MOST_KINDS); i++) {
            // the catalogue's path.bark is bark
            String material = materials.get(i).substring(materials.get(i).lastIndexOf('.') + 1);
            area(material.isEmpty() ? "path" : "path, " + material, inks.path(materials.get(i), i), Inks.SECONDARY);
        }
        if (!garden.paths().isEmpty() && (working || paths.isEmpty())) line("middle of a path", centreLine(inks));
    }

    private void ground() {
        new TreeSet<>(garden.ground().surfaces().stream().filter(s -> layers.contains(PlanLayer.GROUND)).map(s -> s.kind().code()).toList())
                .stream().limit(MOST_KINDS).forEach(kind -> area(kind, inks.surface(SurfaceKind.of(kind)), Inks.SECONDARY));
        if (layers.contains(PlanLayer.KEEP_CLEAR)) keepClear(garden.ground().keepClear());
        boolean ground = layers.contains(PlanLayer.GROUND) || layers.contains(PlanLayer.KEEP_CLEAR);
        if (ground && garden.ground().keepClear().stream().anyMatch(GroundShapes::tree)) {
            sign("tree", box -> List.of(GroundShapes.treeSign(box.centre(), inks)));
        }
        if (layers.contains(PlanLayer.LEVELS) && !garden.ground().levels().isEmpty()) {
            sign("level reading: height below the string", box -> List.of(GroundShapes.levelSign(box.centre(), inks)));
        }
    }

    private void keepClear(List<KeepClear> all) {
        if (all.stream().anyMatch(k -> k.leafMm() <= 0 && !GroundShapes.tree(k))) {
            area("cover, tap or other thing to keep clear of", inks.of(Inks.OBSTACLE), Inks.SIGN);
        }
        if (all.stream().anyMatch(k -> k.leafMm() > 0 || k.clearanceMm() > 0)) {
            entries.add(new Entry("keep clear, also the swing of a gate", box ->
                    List.of(inks.of(Inks.KEEP_CLEAR).area(box, GroundShapes.clearPen(inks)))));
        }
    }

    /** The materials of the paths, each once, in the order of the paths. */
    static List<String> materials(List<PathCover> paths) {
        return paths.stream().map(PathCover::material).distinct().toList();
    }

    static Stroke centreLine(Inks inks) {
        return new Stroke(inks.ink(), Inks.DIMENSION, List.of(5.0, 0.8, 0.5, 0.8));
    }

    private void area(String words, Inks.Filling filling, double width) {
        entries.add(new Entry(words, box -> List.of(filling.area(box, inks.pen(width)))));
    }

    private void line(String words, Stroke stroke) {
        entries.add(new Entry(words, box -> List.of(Shape.Lines.of(
                stroke, new Point(box.left(), box.centre().y()), new Point(box.right(), box.centre().y())))));
    }

    private void sign(String words, Function<Box, List<Shape>> sample) {
        entries.add(new Entry(words, sample));
    }
}
