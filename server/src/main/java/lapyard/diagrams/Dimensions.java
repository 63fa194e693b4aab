package lapyard.diagrams;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lapyard.drawing.Shape;
import lapyard.geometry.Length;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Bed;

/**
 * Dimension lines along the walls of a bed, after ISO 129-1: a line parallel to what is measured between two extension
 * lines, oblique strokes at its ends, the figure read from below or from the right. A line that has no room anywhere
 * is left off and counted.
 */
final class Dimensions {
    static final double TEXT = TypeSize.LEAST;

    /** From the wall to its dimension line, nearest first. */
    private static final double[] OFF = {3, 4.4, 6, 8, 10.5};

    /** How long a leader to a length may be. */
    private static final double LEADER = 17;

    /** Extension lines begin this far from the wall, and run this far past the dimension line. */
    static final double GAP = 0.7;

    static final double PAST = 0.8;

    static final double STROKE = 0.7;

    /** Lines of one row share their extension lines, and their ends may touch them. */
    private static final double END = 0.7;

    /** Sides of the same length to a hundredth of a millimetre are opposite sides of a rectangle. */
    private static final double SAME_MM = 0.01;

    private final Sketch sketch;
    private final Chains chains;

    private int leftOut;

    /** Extension lines that stand, for those of the next wall in the same row. */
    private final Set<String> witnessed = new HashSet<>();

    /** @param chains drawn before; what they tell is left off */
    Dimensions(Chains chains, Sketch sketch) {
        this.chains = chains;
        this.sketch = sketch;
    }

    /** Every wall, of a rectangle one of each two that are alike. */
    Shape.Group of(Bed bed) {
        Outline outline = bed.inYard();
        List<Point> ring = sketch.on(outline);
        boolean rectangle = outline.sides() == 4
                && Math.abs(outline.sideMm(0) - outline.sideMm(2)) < SAME_MM
                && Math.abs(outline.sideMm(1) - outline.sideMm(3)) < SAME_MM;
        double side = new Outline(ring).signedAreaMm2() < 0 ? 1 : -1;
        List<Shape> shapes = new ArrayList<>();
        for (int i = 0; i < (rectangle ? 2 : outline.sides()); i++) {
            if (chains.tells(bed.id(), true) && spans(outline, i, true) || chains.tells(bed.id(), false) && spans(outline, i, false)) continue;
            Optional<List<Shape>> drawn = wall(ring, i, side, outline.sideMm(i));
            if (drawn.isEmpty() && rectangle) drawn = wall(ring, i + 2, side, outline.sideMm(i));
            if (drawn.isEmpty()) {
                Words words = Words.of(Length.written(outline.sideMm(i), sketch.imperial()), TEXT, false);
                drawn = leader(sketch, ring.get(i), ring.get((i + 1) % ring.size()), words);
            }
            drawn.ifPresent(shapes::addAll);
            if (drawn.isEmpty()) leftOut++;
        }
        return new Shape.Group(Shape.id("dimensions", bed.id()), "", "dimensions", shapes);
    }

    /** Whether a side is as long as the whole bed along an axis of the yard. */
    private static boolean spans(Outline outline, int side, boolean fromFront) {
        Box box = Box.round(outline.corners());
        Point a = outline.corner(side);
        Point b = outline.corner(side + 1);
        double along = fromFront ? b.y() - a.y() : b.x() - a.x();
        double across = fromFront ? b.x() - a.x() : b.y() - a.y();
        return Math.abs(across) < SAME_MM && Math.abs(Math.abs(along) - (fromFront ? box.height() : box.width())) < SAME_MM;
    }

    /** A length that finds no room along its line stands beside it, with a leader to it. */
    static Optional<List<Shape>> leader(Sketch sketch, Point a, Point b, Words words) {
        return sketch.labels().beside(Labels.line(a, b), words, LEADER).map(led -> sketch.led(led, words, Inks.DIMENSION));
    }

    /** Walls whose length found no room so far. */
    int leftOut() {
        return leftOut;
    }

    private Optional<List<Shape>> wall(List<Point> ring, int i, double side, double lengthMm) {
        int n = ring.size();
        Point a = ring.get(i % n);
        Point b = ring.get((i + 1) % n);
        double length = a.distanceMm(b);
        Words words = Words.of(Length.written(lengthMm, sketch.imperial()), TEXT, false);
        if (length < words.widthMm() + 4 * STROKE) return Optional.empty();
        Point way = a.way(b);
        Point out = new Point(-side * way.y(), side * way.x());
        Witness first = new Witness(a, along(a, ring.get((i + n - 1) % n), out));
        Witness second = new Witness(b, along(b, ring.get((i + 2) % n), out));
        double beyond = Math.max(first.wall, second.wall);
        for (double base : beyond > 0 ? new double[] {0, beyond} : new double[] {0}) {
            for (double off : OFF) {
                Optional<List<Shape>> drawn = at(base + off, first, second, out, words, way);
                if (drawn.isPresent()) return drawn;
            }
        }
        return Optional.empty();
    }

    /** A corner to measure from; the bed's next wall runs on outwards from it for some way. */
    private record Witness(Point corner, double wall) {
        /** The extension line to a dimension line, none where the next wall reaches it. */
        Optional<List<Point>> line(double off, Point out) {
            return wall > off ? Optional.empty() : Optional.of(List.of(corner.moved(out, wall + GAP, 0), corner.moved(out, off + PAST, 0)));
        }
    }

    /** How far the wall from a corner to the next runs straight out, 0 where it does not. */
    private static double along(Point corner, Point next, Point out) {
        double length = corner.distanceMm(next);
        double outwards = next.minus(corner).dot(out);
        return outwards > length * (1 - 1e-6) ? length : 0;
    }

    private Optional<List<Shape>> at(double off, Witness first, Witness second, Point out, Words words, Point way) {
        Point from = first.corner.moved(out, off, 0);
        Point to = second.corner.moved(out, off, 0);
        double turn = GroundShapes.readable(Math.toDegrees(Math.atan2(-way.y(), way.x())));
        Plate plate = words.at(from.middle(to), turn);
        List<List<Point>> lines = new ArrayList<>(List.of(List.of(from, to)));
        List<Plate> room = new ArrayList<>(List.of(plate, thin(from.moved(way, END, 0), to.moved(way, -END, 0))));
        for (Witness witness : List.of(first, second)) {
            witness.line(off, out).filter(line -> !witnessed.contains(place(line))).ifPresent(line -> {
                lines.add(line);
                room.add(thin(line.get(0), line.get(1)));
            });
        }
        if (!room.stream().allMatch(one -> sketch.labels().free(one) && sketch.labels().clearOfSolids(one))) return Optional.empty();
        room.forEach(one -> sketch.labels().take(one.corners()));
        lines.forEach(line -> witnessed.add(place(line)));
        List<List<Point>> all = new ArrayList<>(lines);
        all.addAll(strokes(way.plus(out.x(), out.y()), from, to));
        return Optional.of(drawn(all, words.on(plate, sketch.inks()), sketch.inks()));
    }

    /** The oblique strokes at the ends of a dimension line. */
    static List<List<Point>> strokes(Point slant, Point... ends) {
        return Stream.of(ends).map(end -> List.of(end.moved(slant, -STROKE, 0), end.moved(slant, STROKE, 0))).toList();
    }

    /** Lines with their figures over them. */
    static List<Shape> drawn(List<List<Point>> lines, List<Shape> figures, Inks inks) {
        List<Shape> shapes = new ArrayList<>(List.of(new Shape.Lines(lines, inks.pen(Inks.DIMENSION))));
        shapes.addAll(figures);
        return shapes;
    }

    private static String place(List<Point> line) {
        return line.stream().map(at -> Math.round(at.x() * 1000) + " " + Math.round(at.y() * 1000)).collect(Collectors.joining(", "));
    }

    /** The room of a line. */
    static Plate thin(Point from, Point to) {
        return new Plate(from.middle(to), from.distanceMm(to), 0.6,
                Math.toDegrees(Math.atan2(from.y() - to.y(), to.x() - from.x())));
    }
}
