package lapyard.diagrams;

import java.util.List;
import lapyard.geometry.Point;

/** Questions about closed rings and lines on the paper. */
final class Rings {
    private Rings() {}

    /** Whether a ring lies wholly in another. */
    static boolean within(List<Point> inner, List<Point> ring) {
        return inner.stream().allMatch(p -> p.within(ring)) && !cross(inner, ring);
    }

    /** Whether two rings share ground. */
    static boolean meet(List<Point> one, List<Point> other) {
        return cross(one, other) || one.get(0).within(other) || other.get(0).within(one);
    }

    /** Whether a line from a to b meets the inside or the edge of a ring. */
    static boolean meets(Point a, Point b, List<Point> ring) {
        return a.within(ring) || b.within(ring) || cross(a, b, ring);
    }

    private static boolean cross(Point a, Point b, List<Point> ring) {
        for (int i = 0; i < ring.size(); i++) {
            if (Point.crossing(a, b, ring.get(i), ring.get((i + 1) % ring.size()))) return true;
        }
        return false;
    }

    private static boolean cross(List<Point> one, List<Point> other) {
        for (int i = 0; i < one.size(); i++) {
            if (cross(one.get(i), one.get((i + 1) % one.size()), other)) return true;
        }
        return false;
    }

    /** The place on the ring's edge nearest to p. */
    static Point nearestOnEdge(List<Point> ring, Point p) {
        Point best = ring.get(0);
        double least = best.distanceMm(p);
        for (int i = 0; i < ring.size(); i++) {
            Point near = p.nearestOn(ring.get(i), ring.get((i + 1) % ring.size()));
            if (near.distanceMm(p) < least) {
                best = near;
                least = near.distanceMm(p);
            }
        }
        return best;
    }
}
