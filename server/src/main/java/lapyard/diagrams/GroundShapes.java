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
import lapyard.plan.Garden;
import lapyard.plan.Ground;
import lapyard.plan.KeepClearKind;
import org.locationtech.jts.geom.Geometry;

/** The yard, its surfaces, levels and what is to be kept clear. */
record GroundShapes(Garden garden, View view, Inks inks, Labels labels) {
    /** Ends of one side of the house wall may differ by this much. */
    private static final double LEVEL_MM = 1;

    private static final double WALL_BAND = 2.2;
    private static final double TEXT = 2.5;

    /** @param surfaces whether they are shown on the yard's own ground */
    Shape.Group ground(boolean surfaces) {
        List<Shape> shapes = new ArrayList<>();
        for (Outline yard : garden.ground().outline()) {
            List<Point> ring = view.on(yard);
            shapes.add(inks.yard().areas(List.of(ring), Optional.empty()));
        }
        int number = 0;
        for (Ground.Surface surface : surfaces ? garden.ground().surfaces() : List.<Ground.Surface>of()) {
            Inks.Filling filling = inks.surface(surface.kind());
            List<Shape> areas = Jts.areas(inYard(surface.outline())).stream()
                    .map(rings -> (Shape) filling.areas(rings.stream().map(view::on).toList(),
                    Optional.of(inks.pen(Inks.SECONDARY))))
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
                    shapes.add(houseWall(view.on(a), view.on(b)));
                }
                labels.take(Labels.line(view.on(a), view.on(b)));
                String words = (house ? "house wall " : "") + Length.written(a.distanceMm(b), garden.imperial());
                over.addAll(along(view.on(a), view.on(b), words, house ? WALL_BAND : 0));
            }
            shapes.add(Shape.Area.outline(view.on(drawn), inks.pen(Inks.CUT)));
        }
        shapes.addAll(over);
        return new Shape.Group("yard", "Edge of the yard", "yard", shapes);
    }

    private Shape houseWall(Point a, Point b) {
        // the yard lies to the left of a to b as it is drawn
        double out = WALL_BAND / a.distanceMm(b);
        double x = (a.y() - b.y()) * out;
        double y = (b.x() - a.x()) * out;
        List<Point> band = List.of(a, b, b.plus(x, y), a.plus(x, y));
        Inks.Filling filling = inks.houseWall();
        labels.take(band);
        return filling.area(band, inks.pen(Inks.SIGN));
    }

    /** The words outside a side of the yard, which lies to the left of a to b. */
    private List<Shape> along(Point a, Point b, String text, double band) {
        Words words = Words.of(text, TEXT, false);
        double length = a.distanceMm(b);
        if (length < words.widthMm() * 0.8) {
            return List.of();
        }
        Point way = a.way(b);
        double out = band + 0.9 + words.heightMm() / 2;
        List<Plate> plates = new ArrayList<>();
        for (double t : new double[] {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8}) {
            plates.add(words.at(a.towards(b, t).moved(way, 0, out), readable(a, b)));
        }
        return labels.first(plates, plate -> true)
                .map(plate -> words.on(plate, inks.ink(), Optional.empty()))
                .orElse(List.of());
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
    Shape.Group things() {
        return keepClear("things", false);
    }

    Shape.Group gates() {
        return keepClear("gates", true);
    }

    private Shape.Group keepClear(String id, boolean gates) {
        List<Shape> shapes = new ArrayList<>();
        int number = 0;
        for (Ground.KeepClear clear : garden.ground().keepClear()) {
            number++;
            if (clear.leafMm() > 0 == gates) {
                labels.solid(zone(clear));
                if (clear.shape().size() == 1) {
                    labels.take(around(view.on(clear.shape().get(0))));
                }
                List<Shape> own = gates ? gate(clear) : thing(clear);
                shapes.add(new Shape.Group("keep-clear-" + number, title(clear), "keep-clear", own));
            }
        }
        return new Shape.Group(id, "", "keep-clear", shapes);
    }

    /** What is to be kept clear, on the paper. */
    private List<Point> zone(Ground.KeepClear clear) {
        if (clear.leafMm() > 0) {
            return view.on(GateSwing.of(clear, garden.ground().outline()).swept());
        }
        return clear.clearanceMm() > 0
                ? view.on(widened(clear))
                : clear.shape().size() > 2 ? view.on(clear.shape()) : around(view.on(clear.shape().get(0)));
    }

    private String title(Ground.KeepClear clear) {
        String mm = garden.imperial() ? "" : " mm";
        double size = clear.leafMm() > 0 ? clear.leafMm() : clear.clearanceMm();
        String what = clear.leafMm() > 0 ? ", leaf " : ", keep clear by ";
        return clear.kind().words() + (size > 0 ? what + Length.written(size, garden.imperial()) + mm : "");
    }

    static Stroke clearPen(Inks inks) {
        return Stroke.of(inks.snag(), Inks.SIGN).dashed(1.6, 1);
    }

    private List<Shape> gate(Ground.KeepClear gate) {
        List<Shape> shapes = new ArrayList<>();
        Inks.Filling zone = inks.keepClear();
        GateSwing swing = GateSwing.of(gate, garden.ground().outline());
        Point hinge = view.on(gate.shape().get(0));
        shapes.add(zone.area(view.on(swing.swept()), clearPen(inks)));
        swing.closed().map(view::on).ifPresent(closed -> {
            // The gap in the edge of the yard.
            shapes.add(Shape.Lines.of(Stroke.of(inks.paper(), Inks.CUT * 1.6), hinge, closed));
            shapes.add(Shape.Lines.of(inks.pen(Inks.SIGN).dashed(1, 0.8), hinge, closed));
        });
        swing.open().map(view::on).ifPresent(open -> shapes.add(Shape.Lines.of(inks.pen(Inks.OUTLINE), hinge, open)));
        shapes.add(Shape.Circle.dot(hinge, 0.7, inks.ink()));
        return shapes;
    }

    private List<Shape> thing(Ground.KeepClear clear) {
        List<Shape> shapes = new ArrayList<>();
        Inks.Filling zone = inks.keepClear();
        if (clear.clearanceMm() > 0) {
            shapes.add(zone.area(view.on(widened(clear)), clearPen(inks)));
        }
        List<Point> on = view.on(clear.shape());
        if (on.size() > 2) {
            Inks.Filling filling = inks.obstacle();
            shapes.add(filling.area(on, inks.pen(Inks.SIGN)));
        } else if (on.size() == 2) {
            shapes.add(Shape.Lines.of(inks.pen(Inks.OUTLINE).dashed(3, 1), on.get(0), on.get(1)));
        } else {
            Point at = on.get(0);
            if (tree(clear)) {
                shapes.add(treeSign(at, inks));
            } else {
                shapes.add(new Shape.Circle(at, 1.1, Optional.of(inks.paper()), Optional.of(inks.pen(Inks.OUTLINE))));
                shapes.add(cross(at, 0.75, inks.pen(Inks.OUTLINE)));
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
                Inks.Filling filling = inks.tree();
                List<Point> ring = clear.clearanceMm() > 0 ? widened(clear) : clear.shape();
                shapes.add(filling.area(view.on(ring), Stroke.of(inks.leaf(), Inks.OUTLINE)));
            }
            if (clear.shape().size() == 1) shapes.add(treeSign(view.on(clear.shape().get(0)), inks));
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
            Point at = view.on(level.at());
            labels.take(new Box(at.x() - 0.5, at.y() - 0.5, at.x() + 0.5, at.y() + 0.5).corners());
            String drop = Length.written(level.dropMm(), garden.imperial());
            Words words = Words.of(drop, TypeSize.LEAST, false);
            List<Shape> own = new ArrayList<>(List.of(levelSign(at, inks)));
            labels.first(round(at, words), plate -> true)
                    .ifPresent(plate -> own.addAll(words.on(plate, inks.water(), Optional.of(inks.plate()))));
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
            String size = clear.leafMm() > 0 ? " " + Length.written(clear.leafMm(), garden.imperial()) : "";
            Words words = Words.of(clear.kind().words() + size, TypeSize.LEAST, false);
            labels.beside(ring, words.widthMm(), words.heightMm(), 12).ifPresent(led -> {
                labels.lead(led);
                shapes.add(Shape.Lines.of(Stroke.of(inks.snag(), Inks.DIMENSION), led.from(), led.to()));
                shapes.addAll(words.on(led.plate(), inks.snag(), Optional.of(inks.plate())));
            });
        }
        for (Ground.Surface surface : surfaces ? garden.ground().surfaces() : List.<Ground.Surface>of()) {
            Words words = Words.of(surface.kind().code(), TypeSize.LEAST, false);
            Jts.largestRing(inYard(surface.outline()))
                    .flatMap(ring -> labels.within(view.on(ring), words.widthMm(), words.heightMm(), List.of(0.0, 90.0)))
                    .filter(labels::clearOfSolids)
                    .ifPresent(plate -> {
                        labels.take(plate.corners());
                        shapes.addAll(words.on(plate, inks));
                    });
        }
        return new Shape.Group("ground-names", "", "names", shapes);
    }

    private static List<Point> around(Point at) {
        return new Box(at.x() - 1.2, at.y() - 1.2, at.x() + 1.2, at.y() + 1.2).corners();
    }
}
