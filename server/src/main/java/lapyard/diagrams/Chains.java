package lapyard.diagrams;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import lapyard.drawing.Shape;
import lapyard.geometry.Length;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;

/**
 * Chains of dimensions outside the yard, after ISO 129-1: along each straight side the beds that nothing hides from it, from one
 * end of the side to the other. What a chain tells, also of beds in line with those, is told nowhere else on the plan.
 */
final class Chains {
    /** From the side to its chain, nearest first: clear of the side's own length and the band of the house wall. */
    private static final double[] OFF = {9, 11, 13, 15.5, 18};

    /** Places nearer than this are one. */
    private static final double SAME_MM = 1;

    private final List<Standing> beds;
    private final Optional<List<Point>> yard;
    private final Sketch sketch;
    private final Set<String> told = new HashSet<>();

    Chains(List<BedShapes> beds, Optional<Outline> yard, Sketch sketch) {
        this.sketch = sketch;
        this.beds = beds.stream().map(bed -> new Standing(bed.bed().id(), level(bed.bed().inYard()))).toList();
        this.yard = yard.map(this::level);
    }

    /** A bed as it lies on the sheet, in real mm: x to the right, y up. */
    private record Standing(String id, List<Point> ring) {
        double low(Side side) {
            return ring.stream().mapToDouble(side::along).min().orElseThrow();
        }

        double high(Side side) {
            return ring.stream().mapToDouble(side::along).max().orElseThrow();
        }

        /** How far out towards the side it comes. */
        double out(Side side) {
            return ring.stream().mapToDouble(side::out).max().orElseThrow();
        }

        /** The corner at a place along the side that comes furthest out. */
        Point corner(Side side, double along) {
            return ring.stream()
                    .filter(at -> Math.abs(side.along(at) - along) < SAME_MM)
                    .max(Comparator.comparingDouble(side::out))
                    .orElseThrow();
        }
    }

    /** A side of the sheet with the way out of the yard, on paper. */
    private enum Side {
        BELOW(0, 1),
        LEFT(-1, 0),
        ABOVE(0, -1),
        RIGHT(1, 0);

        private final int x;
        private final int y;

        Side(int x, int y) {
            this.x = x;
            this.y = y;
        }

        boolean upright() {
            return x != 0;
        }

        double along(Point at) {
            return upright() ? at.y() : at.x();
        }

        double out(Point at) {
            return x * at.x() - y * at.y();
        }

        Point moved(Point on, double by) {
            return on.plus(x * by, y * by);
        }
    }

    private List<Point> level(Outline outline) {
        return outline.corners().stream().map(at -> View.level(at, sketch.view().turned())).toList();
    }

    /** Whether a chain tells where a bed lies along an axis of the yard, and its size along it. */
    boolean tells(String bed, boolean fromFront) {
        return told.contains(key(bed, fromFront != sketch.view().turned()));
    }

    private static String key(String bed, boolean upright) {
        return (upright ? "y " : "x ") + bed;
    }

    /** A chain for each side that shows beds which no chain before it tells, and has room for all its figures. */
    Shape.Group shapes() {
        List<Shape> shapes = new ArrayList<>();
        for (List<Point> ring : yard.stream().toList()) {
            for (Side side : Side.values()) {
                double edge = ring.stream().mapToDouble(side::out).max().orElseThrow();
                List<Point> ends = ring.stream()
                        .filter(at -> edge - side.out(at) < SAME_MM)
                        .sorted(Comparator.comparingDouble(side::along))
                        .toList();
                if (ends.size() > 1) shapes.addAll(chain(side, ends.get(0), ends.get(ends.size() - 1)));
            }
        }
        return new Shape.Group("chains", "Where beds stand along the sides of the yard", "dimensions", shapes);
    }

    private List<Shape> chain(Side side, Point first, Point last) {
        double from = side.along(first);
        double to = side.along(last);
        List<Standing> seen = beds.stream()
                .filter(bed -> bed.low(side) > from - SAME_MM && bed.high(side) < to + SAME_MM)
                .filter(bed -> beds.stream().noneMatch(other -> hides(other, bed, side)))
                .filter(bed -> !told.contains(key(bed.id(), side.upright())))
                .toList();
        if (seen.isEmpty()) return List.of();
        List<Point> places = new ArrayList<>(List.of(first, last));
        for (Standing bed : seen) {
            places.add(bed.corner(side, bed.low(side)));
            places.add(bed.corner(side, bed.high(side)));
        }
        places.sort(Comparator.comparingDouble(side::along));
        for (double off : OFF) {
            Optional<List<Shape>> drawn = at(side, places, sketch.on(real(first)), off);
            if (drawn.isPresent()) {
                beds.stream().filter(bed -> inLine(bed, places, side)).forEach(bed -> told.add(key(bed.id(), side.upright())));
                return drawn.get();
            }
        }
        return List.of();
    }

    /** Whether a bed lies from one place of a chain to the next: it is seen from the side, or stands in line with one that is. */
    private static boolean inLine(Standing bed, List<Point> places, Side side) {
        for (int i = 0; i + 1 < places.size(); i++) {
            if (Math.abs(side.along(places.get(i)) - bed.low(side)) < SAME_MM
                    && Math.abs(side.along(places.get(i + 1)) - bed.high(side)) < SAME_MM) return true;
        }
        return false;
    }

    /** Whether one bed stands, even in part, between another and the side. */
    private static boolean hides(Standing one, Standing other, Side side) {
        return one != other
                && one.low(side) < other.high(side) - SAME_MM && other.low(side) < one.high(side) - SAME_MM
                && one.out(side) > other.out(side) - SAME_MM;
    }

    private Point real(Point level) {
        return sketch.view().turned() ? new Point(level.y(), -level.x()) : level;
    }

    /** The chain at a distance from the side, if all of it is free there. */
    private Optional<List<Shape>> at(Side side, List<Point> places, Point edge, double off) {
        List<Plate> room = new ArrayList<>();
        List<Shape> figures = new ArrayList<>();
        List<List<Point>> lines = new ArrayList<>();
        Point line = side.moved(edge, off);
        List<Point> stops = places.stream()
                .map(place -> sketch.on(real(place)))
                .map(on -> side.upright() ? new Point(line.x(), on.y()) : new Point(on.x(), line.y()))
                .toList();
        for (int i = 0; i + 1 < stops.size(); i++) {
            double mm = side.along(places.get(i + 1)) - side.along(places.get(i));
            if (mm < SAME_MM) continue;
            Words words = Words.of(Length.whole(mm, sketch.imperial()), Dimensions.TEXT, false);
            Optional<Plate> plate = plate(side, stops.get(i), stops.get(i + 1), words, room);
            if (plate.isEmpty()) return Optional.empty();
            room.add(plate.get());
            figures.addAll(words.on(plate.get(), sketch.inks()));
        }
        Point start = stops.get(0);
        Point end = stops.get(stops.size() - 1);
        Plate whole = Dimensions.thin(start, end);
        if (!sketch.labels().free(whole)) return Optional.empty();
        lines.add(List.of(start, end));
        for (int i = 0; i < stops.size(); i++) {
            lines.add(List.of(side.moved(sketch.on(real(places.get(i))), Dimensions.GAP), side.moved(stops.get(i), Dimensions.PAST)));
            lines.addAll(Dimensions.strokes(new Point(1, -1), stops.get(i)));
        }
        room.forEach(plate -> sketch.labels().take(plate.corners()));
        sketch.labels().take(whole.corners());
        return Optional.of(Dimensions.drawn(lines, figures, sketch.inks()));
    }

    /** On the line where the figure fits between its strokes, else beyond or before it. */
    private Optional<Plate> plate(Side side, Point a, Point b, Words words, List<Plate> room) {
        Point middle = a.middle(b);
        double turn = side.upright() ? 90 : 0;
        boolean fits = a.distanceMm(b) >= words.widthMm() + 3 * Dimensions.STROKE;
        double beside = words.heightMm() / 2 + 1;
        for (double off : fits ? new double[] {0} : new double[] {beside, -beside}) {
            Plate plate = words.at(side.moved(middle, off), turn);
            if (sketch.labels().free(plate) && room.stream().noneMatch(other -> Plate.overlap(other.corners(), plate.corners()))) return Optional.of(plate);
        }
        return Optional.empty();
    }
}
