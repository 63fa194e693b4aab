package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.stream.DoubleStream;
import lapyard.construction.BedWork;
import lapyard.construction.CrossTie;
import lapyard.construction.CrossTies;
import lapyard.construction.Piece;
import lapyard.drawing.Shape;
import lapyard.drawing.TextMeasure;
import lapyard.geometry.Length;
import lapyard.geometry.Measure;
import lapyard.geometry.Point;
import lapyard.plan.Bed;

/**
 * One bed as it lies: ring of timbers, soil, its letter A and its label.
 *
 * @param working whether what only those who build it need is drawn too: cross ties, posts, the letter of the front wall
 * @param outer   face of its walls on the paper
 * @param room    within them
 */
record BedShapes(Bed bed, Optional<BedWork> work, Sketch sketch, boolean working, List<Point> outer, List<Point> room) {
    /** Names are cut at this width on paper; the title carries them whole. */
    private static final double LONGEST_NAME = 60;

    /** Between a label and the timbers. */
    private static final double AIR = 0.4;

    private static final double[] LARGE = {4.2, 3.5, 3, 2.5};
    /** Side of the sign of a batten or a post. */
    private static final double SUPPORT = 1.2;

    private static final double[] SMALL = {TypeSize.BED, 3, TypeSize.LEAST};

    BedShapes(Bed bed, Optional<BedWork> work, Sketch sketch, boolean working) {
        this(bed, work, sketch, working, sketch.on(bed.inYard()), work.map(w -> sketch.on(w.frame().inner().placed(bed.placement()))).orElse(sketch.on(bed.inYard())));
    }

    Shape.Group shapes() {
        List<Shape> shapes = new ArrayList<>();
        Inks.Filling soil = sketch.inks().of(Inks.PLANTED);
        if (work.isPresent()) {
            shapes.add(soil.areas(List.of(room), Optional.empty()));
            shapes.add(sketch.inks().timber().areas(List.of(outer, room), Optional.of(sketch.pen(Inks.OUTLINE))));
            topCourse(work.get()).ifPresent(shapes::add);
            if (working) shapes.addAll(supports(work.get()));
        } else {
            shapes.add(soil.area(outer, sketch.pen(Inks.OUTLINE)));
        }
        if (working) shapes.addAll(frontWall());
        return new Shape.Group(Shape.id("bed", bed.id()), title(), "bed", shapes);
    }

    private String title() {
        return "Bed " + bed.id() + (named() ? ", " + bed.name() : "") + ": " + size() + (sketch.imperial() ? "" : " mm") + ", "
                + Measure.counted(bed.courses(), "course");
    }

    private boolean named() {
        return !bed.name().isBlank() && !bed.name().equals(bed.id());
    }

    /** Length by depth by height over all, in the bed's own frame. */
    private String size() {
        return ground() + " × " + Length.written(bed.heightMm(), sketch.imperial());
    }

    private String ground() {
        Box box = Box.round(bed.outline().corners());
        return Length.written(box.width(), sketch.imperial()) + " × " + Length.written(box.height(), sketch.imperial());
    }

    /** The joints of the course that is seen from above. */
    private Optional<Shape> topCourse(BedWork built) {
        int top = built.frame().courses().size() - 1;
        if (top < 0 || built.frame().courses().get(top).pieces().isEmpty()) {
            return Optional.empty();
        }
        List<List<Point>> rings = new ArrayList<>();
        for (Piece piece : built.frame().courses().get(top).pieces()) {
            List<Point> ring = new ArrayList<>(
                    piece.lies().corners().stream().map(bed.placement()::toYard).map(sketch::on).toList());
            ring.add(ring.get(0));
            rings.add(ring);
        }
        return Optional.of(new Shape.Lines(rings, sketch.pen(Inks.SECONDARY)));
    }

    /** Cross ties with the battens at their ends, and posts, where they stand. */
    private List<Shape> supports(BedWork built) {
        CrossTies held = CrossTies.of(bed, built.frame().inner(), built.frame().seams());
        List<Shape> shapes = new ArrayList<>();
        for (CrossTie tie : held.ties()) {
            Point from = sketch.on(bed.placement().toYard(tie.from()));
            Point to = sketch.on(bed.placement().toYard(tie.to()));
            shapes.add(Shape.Lines.of(sketch.pen(Inks.OUTLINE), from, to));
            shapes.add(supportSign(towards(from, to), sketch.inks()));
            shapes.add(supportSign(towards(to, from), sketch.inks()));
        }
        for (CrossTies.Post post : held.posts()) {
            int side = bed.wallLetters().indexOf(post.wall());
            Point in = post.at().moved(built.frame().inner().leg(side), 0, 1);
            shapes.add(supportSign(
                    towards(sketch.on(bed.placement().toYard(post.at())), sketch.on(bed.placement().toYard(in))), sketch.inks()));
        }
        return shapes;
    }

    /** The middle of a sign that stands against a wall. */
    private static Point towards(Point face, Point other) {
        return face.towards(other, SUPPORT / 2 / face.distanceMm(other));
    }

    static Shape supportSign(Point at, Inks inks) {
        return Shape.Area.filled(Box.about(at, SUPPORT / 2).corners(), inks.ink());
    }

    private List<Shape> frontWall() {
        Box box = Box.round(outer);
        double smallest = Math.min(box.width(), box.height());
        if (smallest < 7) {
            return List.of();
        }
        double radius = smallest < 14 ? 1.25 : 1.6;
        Point a = outer.get(0);
        Point b = outer.get(1);
        // Into the bed, which lies to the left of wall A, or to its right where it is mirrored.
        double side = bed.placement().mirror() ? -1 : 1;
        Point way = a.way(b);
        List<Plate> plates = new ArrayList<>();
        for (double in : new double[] {0, radius + 0.5}) {
            for (double t : new double[] {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8}) {
                plates.add(new Plate(a.towards(b, t).moved(way, 0, -side * in), 2 * radius, 2 * radius, 0));
            }
        }
        return sketch.labels().first(plates).map(plate -> wallSign("A", plate.centre(), radius, sketch.inks())).orElse(List.of());
    }

    /** A flag with the number of the bed's stage, at its first corner or as near as there is room. */
    List<Shape> stage() {
        double radius = 1.9;
        Box box = Box.round(outer);
        List<Plate> plates = new ArrayList<>();
        for (Point corner : outer) {
            double x = corner.x() < box.centre().x() ? -1 : 1;
            double y = corner.y() < box.centre().y() ? -1 : 1;
            for (double out : new double[] {radius + 0.4, -radius - 0.6}) {
                plates.add(new Plate(corner.plus(x * out, y * out), 2 * radius, 2 * radius, 0));
            }
        }
        return sketch.labels().first(plates).map(plate -> stageSign(bed.stage(), plate.centre(), sketch.inks())).orElse(List.of());
    }

    static List<Shape> stageSign(int stage, Point at, Inks inks) {
        String number = Integer.toString(stage);
        double size = Math.min(2.6, 3.2 / TextMeasure.widthMm(number, 1, true));
        return List.of(Inks.plain(inks.ink()).area(Box.about(at, 1.8), inks.pen(Inks.SIGN)), Inks.sign(at, number, size, inks.paper()));
    }

    static List<Shape> wallSign(String letter, Point at, double radius, Inks inks) {
        double size = Math.max(TypeSize.LEAST, radius * 1.45);
        return List.of(new Shape.Circle(at, radius, Optional.of(inks.paper()), Optional.of(inks.pen(Inks.SIGN))),
                Inks.sign(at, letter, size, inks.ink()));
    }

    /** The label: within the bed if it can be, else beside it, with less and less to say; empty where nothing has room. */
    Optional<Shape.Group> label() {
        List<Double> angles = angles();
        Words code = Words.of(shortId(), TypeSize.LEAST, true);
        return within(angles.subList(0, 1), this::full, LARGE)
                .or(() -> within(angles, this::full, LARGE))
                .or(() -> within(angles, size -> idAndSize(size, true), SMALL))
                .or(() -> within(angles, size -> idAndSize(size, false), SMALL))
                .or(() -> within(angles, size -> Words.of(shortId() + " · " + ground(), size, true), SMALL))
                .or(() -> within(angles, size -> Words.of(shortId(), size, true), SMALL))
                .or(() -> beside(full(TypeSize.BED), 6))
                .or(() -> beside(idAndSize(TypeSize.BED, true), 6))
                .or(() -> beside(Words.of(shortId(), TypeSize.BED, true), 12))
                .or(() -> sketch.labels().over(outer, code).map(plate -> group(code.on(plate, sketch.inks()))))
                .or(() -> sketch.labels().anywhere(outer, code).map(led -> led(led, code)));
    }

    /** Wherever there is room, with a leader that ends in a dot on the bed. */
    private Shape.Group led(Labels.Led led, Words words) {
        List<Shape> shapes = sketch.led(led, words, Inks.SECONDARY);
        shapes.add(1, Shape.Circle.dot(led.to(), 0.5, sketch.inks().ink()));
        return group(shapes);
    }

    private Optional<Shape.Group> beside(Words words, double most) {
        return sketch.labels().beside(outer, words, most).map(led -> group(sketch.led(led, words, Inks.SECONDARY)));
    }

    private Shape.Group group(List<Shape> shapes) {
        return new Shape.Group(Shape.id("label", bed.id()), "", "label", shapes);
    }

    /** In the first of these sizes that finds room. */
    private Optional<Shape.Group> within(List<Double> angles, DoubleFunction<Words> words, double[] sizes) {
        return DoubleStream.of(sizes).mapToObj(size -> within(words.apply(size), angles)).flatMap(Optional::stream).findFirst();
    }

    private Optional<Shape.Group> within(Words words, List<Double> angles) {
        return sketch.labels().taken(sketch.labels().within(room, words.widthMm() + 2 * AIR, words.heightMm() + 2 * AIR, angles)
                .map(roomy -> words.at(roomy.centre(), roomy.turnDeg()))).map(plate -> group(words.on(plate, sketch.inks())));
    }

    private String shortId() {
        return TextMeasure.cut(bed.id(), 1, true, LONGEST_NAME / 4);
    }

    private Words full(double size) {
        List<Words.Line> lines = new ArrayList<>();
        lines.add(new Words.Line(shortId(), size, true));
        if (named()) {
            double small = Math.max(TypeSize.LEAST, size * 0.8);
            double most = Math.max(18, Math.min(LONGEST_NAME, Box.round(room).width() - 2));
            lines.add(new Words.Line(TextMeasure.cut(bed.name(), small, false, most), small, false));
        }
        lines.add(new Words.Line(size(), Math.max(TypeSize.LEAST, size * 0.75), false));
        return new Words(lines);
    }

    private Words idAndSize(double size, boolean high) {
        return new Words(List.of(
                new Words.Line(shortId(), size, true),
                new Words.Line(high ? size() : ground(), Math.max(TypeSize.LEAST, size * 0.75), false)));
    }

    /** Level first, then along the bed, then across it. */
    private List<Double> angles() {
        Point a = outer.get(0);
        Point b = outer.get(1);
        double along = GroundShapes.readable(a, b);
        return List.of(0.0, along, 90.0, GroundShapes.readable(along + 90)).stream().distinct().toList();
    }
}
