package lapyard.diagrams;

import java.util.List;
import lapyard.geometry.Point;

/** Questions about closed rings and lines on the paper. */
final class Rings {
    private Rings() {}

    /** Whether a ring lies wholly in another. */
    static boolean within(List<Point> inner, List<Point> ring) {
        for (Point p : inner) {
            if (!p.within(ring)) {
                return false;
            }
        }
        return !cross(inner, ring);
    }

    /** Whether two rings share ground. */
    static boolean meet(List<Point> one, List<Point> other) {
        return cross(one, other) || one.get(0).within(other) || other.get(0).within(one);
    }

    /** Whether a line from a to b meets the inside or the edge of a ring. */
    static boolean meets(Point a, Point b, List<Point> ring) {
        if (a.within(ring) || b.within(ring)) {
            return true;
        }
        for (int i = 0; i < ring.size(); i++) {
            if (crosses(a, b, ring.get(i), ring.get((i + 1) % ring.size()))) {
                return true;
            }
        }
        return false;
    }

    private static boolean cross(List<Point> one, List<Point> other) {
        for (int i = 0; i < one.size(); i++) {
            for (int j = 0; j < other.size(); j++) {
                if (crosses(
                        one.get(i), one.get((i + 1) % one.size()), other.get(j), other.get((j + 1) % other.size()))) {
                    return true;
                }
            }
        }
        return false;
    }

    static boolean crosses(Point a, Point b, Point c, Point d) {
        return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
    }

    private static double side(Point a, Point b, Point p) {
        return Math.signum((b.x() - a.x()) * (p.y() - a.y()) - (b.y() - a.y()) * (p.x() - a.x()));
    }

    static double distanceToEdge(List<Point> ring, Point p) {
        return p.distanceMm(nearestOnEdge(ring, p));
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
