package lapyard.geometry;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/** The clear width between the inner faces of a right-angled outline's walls. */
final class InsideWidth {
    private InsideWidth() {}

    /**
     * The narrowest place, where it falls short of {@code leastMm}.
     *
     * @param outline upright and right-angled, either way round, not touching itself
     * @param insetMm thickness of the walls
     */
    static Optional<OutlineFault> narrowest(Outline outline, double insetMm, double leastMm) {
        List<ClearWidth> gaps = new ArrayList<>();
        facing(outline, insetMm, true, gaps);
        facing(outline, insetMm, false, gaps);
        acrossCorners(outline, insetMm, leastMm, gaps);
        return ClearWidth.narrowest(gaps, leastMm, side -> side);
    }

    /** Walls that face each other: the widths of every strip of the outline between two neighbouring levels. */
    private static void facing(Outline outline, double insetMm, boolean across, List<ClearWidth> gaps) {
        TreeSet<Double> levels = new TreeSet<>();
        outline.corners().forEach(corner -> levels.add(across ? corner.y() : corner.x()));
        List<Double> list = List.copyOf(levels);
        for (int k = 0; k + 1 < list.size(); k++) {
            double middle = (list.get(k) + list.get(k + 1)) / 2;
            List<Integer> crossing = new ArrayList<>();
            for (int i = 0; i < outline.sides(); i++) {
                double from = across ? outline.corner(i).y() : outline.corner(i).x();
                double to = across
                        ? outline.corner(i + 1).y()
                        : outline.corner(i + 1).x();
                if (Math.min(from, to) < middle
                        && middle < Math.max(from, to)
                        && Math.abs(from - to) > 1 /* not a side along the strip that strays a hair */) {
                    crossing.add(i);
                }
            }
            crossing.sort(Comparator.comparingDouble(i -> place(outline, i, across)));
            for (int k2 = 0; k2 + 1 < crossing.size(); k2 += 2) {
                int one = crossing.get(k2);
                int other = crossing.get(k2 + 1);
                double low = place(outline, one, across);
                double high = place(outline, other, across);
                double centre = (low + high) / 2;
                gaps.add(new ClearWidth(
                        high - low - 2 * insetMm,
                        Math.min(one, other),
                        Math.max(one, other),
                        across ? new Point(centre, middle) : new Point(middle, centre)));
            }
        }
    }

    private static double place(Outline outline, int side, boolean across) {
        return across ? outline.corner(side).x() : outline.corner(side).y();
    }

    /** Inside corners that point at each other across a neck. */
    private static void acrossCorners(Outline given, double insetMm, double leastMm, List<ClearWidth> gaps) {
        boolean reversed = given.signedAreaMm2() < 0;
        Outline outline = given.counterClockwise();
        int n = outline.sides();
        for (int i = 0; i < n; i++) {
            if (!outline.insideCorner(i)) continue;
            Point p = outline.corner(i);
            Point into = into(outline, i);
            for (int j = i + 1; j < n; j++) {
                if (!outline.insideCorner(j)) continue;
                Point q = outline.corner(j);
                Point back = into(outline, j);
                double dx = (q.x() - p.x()) * into.x();
                double dy = (q.y() - p.y()) * into.y();
                if (dx <= 0 || dy <= 0 || back.x() != -into.x() || back.y() != -into.y()) continue;
                double freeX = dx - 2 * insetMm;
                double freeY = dy - 2 * insetMm;
                double width = freeX >= 0 && freeY >= 0 ? Math.hypot(freeX, freeY) : Math.max(freeX, freeY);
                if (width < leastMm && empty(outline, p, q)) {
                    int one = reversed ? n - 1 - i : i;
                    int other = reversed ? n - 1 - j : j;
                    gaps.add(new ClearWidth(width, Math.min(one, other), Math.max(one, other), p.middle(q)));
                }
            }
        }
    }

    /** From an inside corner straight away from the ground that it cuts out. */
    private static Point into(Outline outline, int i) {
        Point before = outline.uprightDirection(i - 1);
        Point after = outline.uprightDirection(i);
        return new Point(before.x() - after.x(), before.y() - after.y());
    }

    private static boolean empty(Outline outline, Point p, Point q) {
        double left = Math.min(p.x(), q.x());
        double right = Math.max(p.x(), q.x());
        double bottom = Math.min(p.y(), q.y());
        double top = Math.max(p.y(), q.y());
        for (int i = 0; i < outline.sides(); i++) {
            Point a = outline.corner(i);
            Point b = outline.corner(i + 1);
            if (Math.max(a.x(), b.x()) > left
                    && Math.min(a.x(), b.x()) < right
                    && Math.max(a.y(), b.y()) > bottom
                    && Math.min(a.y(), b.y()) < top) {
                return false;
            }
        }
        return true;
    }
}
