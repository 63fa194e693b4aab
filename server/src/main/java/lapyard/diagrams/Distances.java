package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.drawing.Shape;
import lapyard.geometry.Chords;
import lapyard.geometry.Length;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Bed;

/**
 * Where each bed stands: from its left and from its front to the next bed or to the edge of the yard, whichever comes first,
 * so that every bed is tied to the house wall or the boundary through its neighbours.
 *
 * @param chains drawn before; what they tell is left off
 */
record Distances(List<Standing> beds, Optional<Outline> yard, Chains chains, Sketch sketch, List<String> leftOut) {
    /** Shares of a side at which its distance may be drawn, the first that is free. */
    private static final double[] AT = {0.25, 0.75, 0.12, 0.88, 0.5, 0.35, 0.65};
    private static final double SLANT = 0.7;

    Distances(List<BedShapes> beds, Optional<Outline> yard, Chains chains, Sketch sketch) {
        this(beds.stream().map(bed -> Standing.of(bed.bed())).toList(), yard, chains, sketch, new ArrayList<>());
    }

    private record Standing(String id, Outline outline, Box box) {
        static Standing of(Bed bed) {
            Outline outline = bed.inYard();
            return new Standing(bed.id(), outline, Box.round(outline.corners()));
        }

        /** Whether some line runs through both. */
        boolean inLine(boolean front, Standing other) {
            return front ? box.left() <= other.box.right() && other.box.left() <= box.right() : box.low() <= other.box.high() && other.box.low() <= box.high();
        }

        /** Whether it may have an edge on this line that is not behind {@code before} and not before {@code least}. */
        boolean mayStop(boolean front, double at, double before, double least) {
            double from = front ? box.left() : box.low();
            double to = front ? box.right() : box.high();
            return from <= at && at <= to && (front ? box.low() : box.left()) <= before + 1 && (front ? box.high() : box.right()) >= least - 1;
        }
    }

    /** Beds with a distance that found no room; known once {@link #shapes} was called. */
    @Override
    public List<String> leftOut() {
        return leftOut.stream().distinct().toList();
    }

    Shape.Group shapes() {
        List<Shape> shapes = new ArrayList<>();
        for (Standing bed : beds) {
            for (boolean front : new boolean[] {false, true}) {
                if (!chains.tells(bed.id(), front)) side(bed, front).ifPresent(shapes::addAll);
            }
        }
        return new Shape.Group("distances", "Where beds stand", "distances", shapes);
    }

    /** @param front from the front of the bed, else from its left */
    private Optional<List<Shape>> side(Standing bed, boolean front) {
        Box box = bed.box();
        List<Standing> inLine = beds.stream().filter(other -> other != bed && other.inLine(front, bed)).toList();
        List<Told> candidates = new ArrayList<>();
        for (double share : AT) {
            double at = front ? box.left() + share * box.width() : box.low() + share * box.height();
            Optional<Double> from = edge(bed.outline(), front, at, Double.POSITIVE_INFINITY, true);
            if (from.isEmpty()) continue;
            Optional<Double> to = nearest(inLine, front, at, from.get());
            if (to.isEmpty() || from.get() - to.get() < 1) continue;
            Told told = told(front, at, to.get(), from.get());
            Optional<List<Shape>> drawn = line(front, told);
            if (drawn.isPresent()) return drawn;
            candidates.add(told);
        }
        Optional<List<Shape>> led = candidates.stream().flatMap(told -> led(told).stream()).findFirst();
        if (led.isEmpty() && !candidates.isEmpty()) leftOut.add(bed.id());
        return led;
    }

    /** The nearest edge before a place, of one of these beds or of the yard. */
    private Optional<Double> nearest(List<Standing> others, boolean front, double at, double before) {
        Optional<Double> nearest = yard.flatMap(edge -> edge(edge, front, at, before, false));
        for (Standing other : others) {
            if (!other.mayStop(front, at, before, nearest.orElse(Double.NEGATIVE_INFINITY))) continue;
            Optional<Double> edge = edge(other.outline(), front, at, before, false);
            if (edge.isPresent() && (nearest.isEmpty() || edge.get() > nearest.get())) nearest = edge;
        }
        return nearest;
    }

    /** The first edge of an outline along a line, or the last one before a place. */
    private static Optional<Double> edge(Outline outline, boolean upright, double at, double before, boolean first) {
        Optional<Double> found = Optional.empty();
        for (Chords.Span span : Chords.at(outline, upright, at)) {
            for (double place : new double[] {span.fromMm(), span.toMm()}) {
                if (place > before + 0.5) continue;
                if (first) return Optional.of(place);
                found = Optional.of(place);
            }
        }
        return found;
    }

    /** Of a figure, and the line that it tells on the paper. */
    private record Told(Words words, Point a, Point b) {}

    private Told told(boolean front, double at, double from, double to) {
        Point a = sketch.on(front ? new Point(at, from) : new Point(from, at));
        Point b = sketch.on(front ? new Point(at, to) : new Point(to, at));
        return new Told(Words.of(Length.whole(to - from, sketch.imperial()), Dimensions.TEXT, false), a, b);
    }

    /** The distance with its figure on a leader. */
    private Optional<List<Shape>> led(Told told) {
        return Dimensions.leader(sketch, told.a, told.b, told.words).map(leader -> Dimensions.drawn(List.of(List.of(told.a, told.b)), leader, sketch.inks()));
    }

    private Optional<List<Shape>> line(boolean front, Told told) {
        Point a = told.a;
        Point b = told.b;
        Words words = told.words;
        double length = a.distanceMm(b);
        Point middle = a.middle(b);
        boolean upright = front != sketch.view().turned();
        double turn = upright ? 90 : 0;
        boolean inside = length >= words.widthMm() + 2 * SLANT;
        // a short distance has its figure beside its line
        Plate plate = inside ? words.at(middle, turn) : words.at(
                upright ? new Point(middle.x() + words.widthMm() / 2 + 0.8, middle.y()) : middle.plus(0, -(words.heightMm() / 2 + 0.6)), 0);
        if (!sketch.labels().free(plate) || !sketch.labels().clearOfSolids(plate)) return Optional.empty();
        sketch.labels().take(plate.corners());
        Point way = a.way(b);
        List<List<Point>> lines = new ArrayList<>(List.of(List.of(a, b)));
        lines.addAll(Dimensions.strokes(way.plus(-way.y(), way.x()), a, b));
        return Optional.of(Dimensions.drawn(lines, words.on(plate, sketch.inks()), sketch.inks()));
    }
}
