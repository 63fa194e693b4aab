package lapyard.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import lapyard.geometry.Jts;
import lapyard.geometry.Lengths;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import org.locationtech.jts.geom.Envelope;

/**
 * A wanted bed as it may lie in the frame: turned by quarters, with the box round it and the rectangles that it fills.
 *
 * @param wish     index in the wish list
 * @param quarters that it is turned by, counter-clockwise, 0 to 3
 * @param parts    rectangles that cover its outline, from the box's left front corner
 * @param leastReachMm the reach to its worst point if all walls can be reached, mm; the standard asks no less of it
 */
record BoxedBed(int wish, Bed bed, int quarters, double w, double d, List<Part> parts, double leastReachMm) {
    /** Deepest rectangle along a slanted side. */
    private static final double SLAB_MM = 200;

    record Part(double x, double y, double w, double d) {}

    static BoxedBed of(int wish, Bed bed, int quarters) {
        List<Point> turned = bed.outline().corners().stream().map(corner -> corner.turned(90 * quarters)).toList();
        Envelope box = Jts.box(turned);
        List<Point> own = turned.stream().map(corner -> corner.plus(-box.getMinX(), -box.getMinY())).toList();
        return new BoxedBed(wish, bed, quarters, box.getWidth(), box.getHeight(), parts(own), Math.min(box.getWidth(), box.getHeight()) / 2);
    }

    /** All ways to lie that differ: a square one, a rectangle two, any other four. */
    static List<BoxedBed> all(int wish, Bed bed) {
        List<BoxedBed> all = new ArrayList<>();
        for (int quarters = 0; quarters < 4; quarters++) {
            BoxedBed one = of(wish, bed, quarters);
            boolean rectangle = one.parts.size() == 1 && bed.outline().sides() == 4;
            if (all.stream().noneMatch(other -> rectangle && other.w == one.w && other.d == one.d)) all.add(one);
        }
        return all;
    }

    /**
     * Rectangles that cover the outline: slabs between neighbouring levels of its corners, and along a slanted side as many more as
     * keep each within {@link #SLAB_MM}; those of one width are one. Of an outline with square corners they fill just that.
     */
    static List<Part> parts(List<Point> corners) {
        TreeSet<Double> levels = new TreeSet<>();
        corners.forEach(corner -> levels.add(Lengths.toTenth(corner.y())));
        for (int c = 0; c < corners.size(); c++) {
            Point a = corners.get(c);
            Point b = corners.get((c + 1) % corners.size());
            if (Math.abs(a.x() - b.x()) < 0.1 || Math.abs(a.y() - b.y()) < 0.1) continue;
            int slabs = (int) Math.ceil(Math.abs(b.y() - a.y()) / SLAB_MM);
            for (int i = 1; i < slabs; i++) levels.add(Lengths.toTenth(a.y() + (b.y() - a.y()) * i / slabs));
        }
        List<Part> parts = new ArrayList<>();
        List<Double> ys = new ArrayList<>(levels);
        for (int i = 0; i + 1 < ys.size(); i++) {
            double front = ys.get(i);
            double back = ys.get(i + 1);
            List<double[]> sides = new ArrayList<>();
            for (int c = 0; c < corners.size(); c++) {
                Point a = corners.get(c);
                Point b = corners.get((c + 1) % corners.size());
                double middle = (front + back) / 2;
                if (Math.min(a.y(), b.y()) < middle && Math.max(a.y(), b.y()) > middle) sides.add(new double[] {at(a, b, front), at(a, b, back)});
            }
            sides.sort(Comparator.comparingDouble(side -> side[0] + side[1]));
            for (int x = 0; x + 1 < sides.size(); x += 2) {
                double left = Math.min(sides.get(x)[0], sides.get(x)[1]);
                double right = Math.max(sides.get(x + 1)[0], sides.get(x + 1)[1]);
                add(parts, new Part(left, front, right - left, back - front));
            }
        }
        return parts;
    }

    /** Where the side from {@code a} to {@code b} crosses a level; at the nearer end where it does not reach so far. */
    private static double at(Point a, Point b, double y) {
        double part = Math.max(0, Math.min(1, (y - a.y()) / (b.y() - a.y())));
        return a.x() + (b.x() - a.x()) * part;
    }

    private static void add(List<Part> parts, Part more) {
        for (int i = 0; i < parts.size(); i++) {
            Part below = parts.get(i);
            if (below.x == more.x && below.w == more.w && below.y + below.d == more.y) {
                parts.set(i, new Part(below.x, below.y, below.w, below.d + more.d));
                return;
            }
        }
        parts.add(more);
    }

    boolean rectangle() {
        return bed.outline().sides() == 4 && bed.outline().upright();
    }

    /** Whether its reach is only known with all its sides free: it is no rectangle, or some of its walls are hidden. */
    boolean allRound() {
        return !rectangle() || !bed.walls().hidden().isEmpty();
    }

    double thicknessMm() {
        return bed.section().thicknessMm();
    }
}
