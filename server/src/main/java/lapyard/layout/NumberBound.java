package lapyard.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import lapyard.geometry.Jts;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.ground.FreeGround;
import lapyard.plan.Wish;

/**
 * More beds than this cannot lie in a yard square to one direction, with paths that keep their width round corners. Half a path goes round each bed, and these larger boxes
 * do not overlap. Along any line they fill no more of it than sums of their sides can, so the sum over all lines is a bound
 * on their area; so is the ground that they can cover.
 *
 * @see "F. W. Barnes, Packing the maximum number of m x n tiles in a large p x q rectangle, Discrete Mathematics 26 (1979)
 *     93-100, from memory: bounds by what sides can fill; ours is proved by its words above"
 */
final class NumberBound {
    private static final double STRIP_MM = 100;

    private NumberBound() {}

    /** @param gapMm that two beds are apart at least */
    static int of(FreeGround ground, Frame frame, List<Wish> wishes, List<BoxedBed> kinds, double gapMm) {
        double half = gapMm / 2;
        List<List<Point>> rings = ground.beds().stream().map(frame::in).toList();
        boolean upright = rings.stream().allMatch(ring -> new Outline(ring).upright());
        double corner = upright ? half : half * Math.sqrt(2);
        double area = ground.coverableMm2(corner, half * Math.sqrt(2));
        area = Math.min(area, lines(rings, kinds, gapMm));
        area = Math.min(area, lines(rings.stream().map(Boxes::swapped).toList(), kinds, gapMm));
        List<double[]> each = new ArrayList<>();
        for (int i = 0; i < wishes.size(); i++) {
            int wish = i;
            BoxedBed kind = kinds.stream().filter(one -> one.wish() == wish).findFirst().orElseThrow();
            each.add(new double[] {covers(kind, gapMm), wishes.get(i).least(), wishes.get(i).most()});
        }
        return most(each, area);
    }

    /** The most of which the areas fit: what must be, then the smallest first; all of them freely where what must be does not fit. */
    private static int most(List<double[]> each, double area) {
        double left = area * (1 + 1e-9);
        if (each.stream().mapToDouble(one -> one[0] * one[1]).sum() > left) {
            return most(each.stream().map(one -> new double[] {one[0], 0, one[2]}).toList(), area);
        }
        int sum = 0;
        for (double[] one : each) {
            left -= one[0] * one[1];
            sum += (int) one[1];
        }
        for (double[] one : each.stream().sorted(Comparator.comparingDouble((double[] one) -> one[0])).toList()) {
            int more = (int) Math.min(one[2] - one[1], Math.floor(left / one[0]));
            sum += more;
            left -= more * one[0];
        }
        return sum;
    }

    /** At least so much of the ground has the bed with a square of half a gap carried round it; of a rectangle exactly so much. */
    private static double covers(BoxedBed kind, double gapMm) {
        return kind.bed().outline().areaMm2() + gapMm * kind.d() + gapMm * (kind.w() + gapMm);
    }

    private static double lines(List<List<Point>> rings, List<BoxedBed> kinds, double gapMm) {
        double half = gapMm / 2;
        List<Double> sides = kinds.stream().map(kind -> kind.w() + gapMm).distinct().toList();
        boolean boxes = kinds.stream().allMatch(BoxedBed::rectangle);
        double sum = 0;
        for (List<Point> ring : rings) {
            double low = Jts.box(ring).getMinY() - half;
            double high = Jts.box(ring).getMaxY() + half;
            for (double y = low; y < high; y += STRIP_MM) {
                double deep = Math.min(STRIP_MM, high - y);
                double[] span = span(ring, y - half, y + deep + half);
                double length = span[1] - span[0] + gapMm;
                if (length > 0) sum += deep * (boxes ? filled(sides, length) : length);
            }
        }
        return sum;
    }

    /** The largest sum of sides up to a length; the length itself where sides are no whole millimetres. */
    private static double filled(List<Double> sides, double length) {
        int whole = (int) Math.floor(length + 1e-6);
        if (sides.stream().anyMatch(side -> Math.rint(side) != side) || whole > 200_000) return length;
        boolean[] sums = new boolean[whole + 1];
        sums[0] = true;
        int most = 0;
        for (int i = 1; i <= whole; i++) {
            for (double side : sides) {
                if (side <= i && sums[i - (int) side]) sums[i] = true;
            }
            if (sums[i]) most = i;
        }
        return most;
    }

    private static double[] span(List<Point> ring, double from, double to) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < ring.size(); i++) {
            Point a = ring.get(i);
            Point b = ring.get((i + 1) % ring.size());
            double low = Math.max(from, Math.min(a.y(), b.y()));
            double high = Math.min(to, Math.max(a.y(), b.y()));
            if (low > high) continue;
            for (double y : new double[] {low, high}) {
                double x = a.y() == b.y() ? a.x() : a.x() + (b.x() - a.x()) * (y - a.y()) / (b.y() - a.y());
                least = Math.min(least, a.y() == b.y() ? Math.min(a.x(), b.x()) : x);
                most = Math.max(most, a.y() == b.y() ? Math.max(a.x(), b.x()) : x);
            }
        }
        return least > most ? new double[] {0, Double.NEGATIVE_INFINITY} : new double[] {least, most};
    }
}
