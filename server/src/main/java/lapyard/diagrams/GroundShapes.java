package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.drawing.Shape;
import lapyard.drawing.Stroke;
import lapyard.geometry.Jts;
import lapyard.geometry.Length;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.ground.GateSwing;
import lapyard.plan.Garden;
import lapyard.plan.Ground;
import lapyard.plan.KeepClearKind;
import org.locationtech.jts.geom.Geometry;

/** The yard, its surfaces, levels and what is to be kept clear. */
record GroundShapes(Garden garden, Sketch sketch) {
    /** Ends of one side of the house wall may differ by this much. */
    private static final double LEVEL_MM = 1;

    private static final double WALL_BAND = 2.2;
    private static final double TEXT = 2.5;

    /** @param surfaces whether they are shown on the yard's own ground */
    Shape.Group ground(boolean surfaces) {
        List<Shape> shapes = new ArrayList<>();
        garden.ground().outline().forEach(yard -> shapes.add(sketch.inks().yard().areas(List.of(sketch.on(yard)), Optional.empty())));
        int number = 0;
        for (Ground.Surface surface : surfaces ? garden.ground().surfaces() : List.<Ground.Surface>of()) {
            Inks.Filling filling = sketch.inks().surface(surface.kind());
            List<Shape> areas = Jts.areas(inYard(surface.outline())).stream()
                    .map(rings -> (Shape) filling.areas(rings.stream().map(sketch::on).toList(),
                    Optional.of(sketch.pen(Inks.SECONDARY))))
                    .toList();
            number++;
            shapes.add(new Shape.Group("surface-" + number, surface.kind().code(), "surface", areas));
        }
        return new Shape.Group("ground", "", "ground", shapes);
    }

    /** What of a surface lies within the yard; all of it where there is no yard. */
    private Geometry inYard(Outline surface) {
        Geometry whole = Jts.area(surface.corners());
        return garden.ground().outline().stream().findFirst().map(yard -> Jts.common(whole, Jts.area(yard.corners()))).orElse(whole);
    }

    /** The edge of the yard with the lengths of its sides and the house wall, taking their room. */
    Shape.Group edge() {
        List<Shape> shapes = new ArrayList<>();
        List<Shape> over = new ArrayList<>();
        for (Outline drawn : garden.ground().outline()) {
            Outline yard = drawn.counterClockwise();
            double front = yard.corners().stream().mapToDouble(Point::y).min().orElseThrow();
            for (int i = 0; i < yard.sides(); i++) {
                Point a = yard.corner(i);
                Point b = yard.corner(i + 1);
                boolean house = a.y() - front < LEVEL_MM && b.y() - front < LEVEL_MM;
                if (house) {
                    shapes.add(houseWall(sketch.on(a), sketch.on(b)));
                }
                sketch.labels().take(Labels.line(sketch.on(a), sketch.on(b)));
                String words = (house ? "house wall " : "") + Length.written(a.distanceMm(b), sketch.imperial());
                over.addAll(along(sketch.on(a), sketch.on(b), words, house ? WALL_BAND : 0));
            }
            shapes.add(Shape.Area.outline(sketch.on(drawn), sketch.pen(Inks.CUT)));
        }
        shapes.addAll(over);
        return new Shape.Group("yard", "Edge of the yard", "yard", shapes);
    }

    private Shape houseWall(Point a, Point b) {
        // the yard lies to the left of a to b as it is drawn
        List<Point> band = List.of(a, b, b.moved(a.way(b), 0, WALL_BAND), a.moved(a.way(b), 0, WALL_BAND));
        sketch.labels().take(band);
        return sketch.inks().of(Inks.HOUSE_WALL).area(band, sketch.pen(Inks.SIGN));
    }

    /** The words outside a side of the yard, which lies to the left of a to b. */
    private List<Shape> along(Point a, Point b, String text, double band) {
        Words words = Words.of(text, TEXT, false);
        double length = a.distanceMm(b);
        if (length < words.widthMm() * 0.8) {
            return List.of();
        }
        double[] out = {band + 0.9 + words.heightMm() / 2};
        return words.first(sketch.labels(), words.beside(a, b, out, 0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8), sketch.inks().ink());
    }

    /** The turn of words along a line on the paper. */
    static double readable(Point a, Point b) {
        return readable(Math.toDegrees(Math.atan2(a.y() - b.y(), b.x() - a.x())));
    }

    /** Turned by half a turn where the text would stand on its head: read from below or from the right. */
    static double readable(double degrees) {
        double turn = ((degrees % 360) + 360) % 360;
        turn = turn > 90.01 && turn <= 270.01 ? turn - 180 : turn;
        return Math.abs(turn) < 1e-9 || Math.abs(turn - 360) < 1e-9 ? 0 : turn;
    }

    /** Things with the ground to keep clear round them; labels of other things keep off. */
    Shape.Group keepClear(boolean gates) {
        List<Shape> shapes = new ArrayList<>();
        int number = 0;
        for (Ground.KeepClear clear : garden.ground().keepClear()) {
            number++;
            if (clear.leafMm() > 0 == gates) {
                sketch.labels().solid(zone(clear));
                if (clear.shape().size() == 1) {
                    sketch.labels().take(around(sketch.on(clear.shape().get(0))));
                }
                List<Shape> own = gates ? gate(clear) : thing(clear);
                shapes.add(new Shape.Group("keep-clear-" + number, title(clear), "keep-clear", own));
            }
        }
        return new Shape.Group(gates ? "gates" : "things", "", "keep-clear", shapes);
    }

    /** What is to be kept clear, on the paper. */
    private List<Point> zone(Ground.KeepClear clear) {
        if (clear.leafMm() > 0) {
            return sketch.on(GateSwing.of(clear, garden.ground().outline()).ring());
        }
        return clear.clearanceMm() > 0
                ? sketch.on(widened(clear))
                : clear.shape().size() > 2 ? sketch.on(clear.shape()) : around(sketch.on(clear.shape().get(0)));
    }

    private String title(Ground.KeepClear clear) {
        String mm = sketch.imperial() ? "" : " mm";
        double size = clear.leafMm() > 0 ? clear.leafMm() : clear.clearanceMm();
        String what = clear.leafMm() > 0 ? ", leaf " : ", keep clear by ";
        return clear.kind().words() + (size > 0 ? what + Length.written(size, sketch.imperial()) + mm : "");
    }

    static Stroke clearPen(Inks inks) {
        return Stroke.of(inks.snag(), Inks.SIGN).dashed(1.6, 1);
    }

    private List<Shape> gate(Ground.KeepClear gate) {
        List<Shape> shapes = new ArrayList<>();
        GateSwing swing = GateSwing.of(gate, garden.ground().outline());
        Point hinge = sketch.on(gate.shape().get(0));
        shapes.add(sketch.inks().of(Inks.KEEP_CLEAR).area(sketch.on(swing.ring()), clearPen(sketch.inks())));
        swing.closed().map(sketch::on).ifPresent(closed -> {
            // The gap in the edge of the yard.
            shapes.add(Shape.Lines.of(Stroke.of(sketch.inks().paper(), Inks.CUT * 1.6), hinge, closed));
            shapes.add(Shape.Lines.of(sketch.pen(Inks.SIGN).dashed(1, 0.8), hinge, closed));
        });
        swing.open().map(sketch::on).ifPresent(open -> shapes.add(Shape.Lines.of(sketch.pen(Inks.OUTLINE), hinge, open)));
        shapes.add(Shape.Circle.dot(hinge, 0.7, sketch.inks().ink()));
        return shapes;
    }

    private List<Shape> thing(Ground.KeepClear clear) {
        List<Shape> shapes = new ArrayList<>();
        if (clear.clearanceMm() > 0) {
            shapes.add(sketch.inks().of(Inks.KEEP_CLEAR).area(sketch.on(widened(clear)), clearPen(sketch.inks())));
        }
        List<Point> on = sketch.on(clear.shape());
        if (on.size() > 2) {
            shapes.add(sketch.inks().of(Inks.OBSTACLE).area(on, sketch.pen(Inks.SIGN)));
        } else if (on.size() == 2) {
            shapes.add(Shape.Lines.of(sketch.pen(Inks.OUTLINE).dashed(3, 1), on.get(0), on.get(1)));
        } else {
            Point at = on.get(0);
            if (tree(clear)) {
                shapes.add(treeSign(at, sketch.inks()));
            } else {
                shapes.add(new Shape.Circle(at, 1.1, Optional.of(sketch.inks().paper()), Optional.of(sketch.pen(Inks.OUTLINE))));
                shapes.add(cross(at, 0.75, sketch.pen(Inks.OUTLINE)));
            }
        }
        return shapes;
    }

    static boolean tree(Ground.KeepClear clear) {
        return clear.kind() == KeepClearKind.TREE;
    }

    static Shape treeSign(Point at, Inks inks) {
        return new Shape.Circle(at, 1.1, Optional.of(inks.leaf()), Optional.of(Stroke.of(inks.paper(), Inks.SIGN)));
    }

    /** Trees as they look, as wide as the ground that is kept clear for them; the ground to keep clear is not shown. */
    Shape.Group trees() {
        List<Shape> shapes = new ArrayList<>();
        for (Ground.KeepClear clear : garden.ground().keepClear()) {
            if (!tree(clear)) continue;
            if (clear.clearanceMm() > 0 || clear.shape().size() > 2) {
                List<Point> ring = clear.clearanceMm() > 0 ? widened(clear) : clear.shape();
                shapes.add(sketch.inks().of(Inks.TREE).area(sketch.on(ring), Stroke.of(sketch.inks().leaf(), Inks.OUTLINE)));
            }
            if (clear.shape().size() == 1) shapes.add(treeSign(sketch.on(clear.shape().get(0)), sketch.inks()));
        }
        return new Shape.Group("trees", "Trees", "trees", shapes);
    }

    /** All ground of the yard nearer to the thing than its clearance, in the yard. */
    private List<Point> widened(Ground.KeepClear clear) {
        Geometry round = Jts.thing(clear.shape()).buffer(clear.clearanceMm());
        return garden.ground().outline().stream()
                .findFirst()
                .flatMap(yard -> Jts.largestRing(Jts.common(round, Jts.area(yard.corners()))))
                .or(() -> Jts.largestRing(round))
                .orElse(clear.shape());
    }

    Shape.Group levels() {
        List<Shape> shapes = new ArrayList<>();
        int number = 0;
        for (Ground.Level level : garden.ground().levels()) {
            number++;
            Point at = sketch.on(level.at());
            sketch.labels().take(Box.about(at, 0.5).corners());
            String drop = Length.written(level.dropMm(), sketch.imperial());
            Words words = Words.of(drop, TypeSize.LEAST, false);
            List<Shape> own = new ArrayList<>(List.of(levelSign(at, sketch.inks())));
            own.addAll(words.first(sketch.labels(), round(at, words), sketch.inks().water(), sketch.inks().plate()));
            shapes.add(new Shape.Group("level-" + number, drop + " below the string", "level", own));
        }
        return new Shape.Group("levels", "Levels", "levels", shapes);
    }

    /** Right, left, above and below, each a little further off than the one before. */
    private static List<Plate> round(Point at, Words words) {
        List<Plate> plates = new ArrayList<>();
        for (double away : new double[] {0, 1.2, 2.4, 4}) {
            for (double[] way : new double[][] {{1, -1}, {1, 1}, {-1, -1}, {-1, 1}, {0, -1.6}, {0, 1.6}}) {
                double x = at.x() + way[0] * (words.widthMm() / 2 + 0.6 + away);
                double y = at.y() + way[1] * (words.heightMm() / 2 + 0.2 + away);
                plates.add(words.at(new Point(x, y), 0));
            }
        }
        return plates;
    }

    static Shape levelSign(Point at, Inks inks) {
        return cross(at, 1.1, Stroke.of(inks.water(), Inks.OUTLINE));
    }

    private static Shape cross(Point at, double half, Stroke stroke) {
        return new Shape.Lines(List.of(List.of(at.plus(-half, 0), new Point(at.x() + half, at.y())),
                List.of(at.plus(0, -half), at.plus(0, half))), stroke);
    }

    /** Words within surfaces and beside the things to keep clear of, where there is room left. */
    Shape.Group names(boolean surfaces, boolean keepClear) {
        List<Shape> shapes = new ArrayList<>();
        for (Ground.KeepClear clear : keepClear ? garden.ground().keepClear() : List.<Ground.KeepClear>of()) {
            List<Point> ring = zone(clear);
            String size = clear.leafMm() > 0 ? " " + Length.written(clear.leafMm(), sketch.imperial()) : "";
            Words words = Words.of(clear.kind().words() + size, TypeSize.LEAST, false);
            sketch.labels().beside(ring, words, 12).ifPresent(led -> {
                sketch.labels().lead(led);
                shapes.add(Shape.Lines.of(Stroke.of(sketch.inks().snag(), Inks.DIMENSION), led.from(), led.to()));
                shapes.addAll(words.on(led.plate(), sketch.inks().snag(), Optional.of(sketch.inks().plate())));
            });
        }
        for (Ground.Surface surface : surfaces ? garden.ground().surfaces() : List.<Ground.Surface>of()) {
            Words words = Words.of(surface.kind().code(), TypeSize.LEAST, false);
            Jts.largestRing(inYard(surface.outline()))
                    .flatMap(ring -> sketch.labels().taken(sketch.labels().within(sketch.on(ring), words.widthMm(), words.heightMm(), Labels.LEVEL_OR_UPRIGHT)
                            .filter(sketch.labels()::clearOfSolids)))
                    .ifPresent(plate -> shapes.addAll(words.on(plate, sketch.inks())));
        }
        return new Shape.Group("ground-names", "", "names", shapes);
    }

    private static List<Point> around(Point at) {
        return Box.about(at, 1.2).corners();
    }
}
