package lapyard.geometry;

import java.util.List;

/** A place in millimetres, x to the right, y away from the house. */
public record Point(double x, double y) {
    public Point {
        if (!Double.isFinite(x) || !Double.isFinite(y)) {
            throw new IllegalArgumentException("a point needs finite millimetres, was (" + x + ", " + y + ")");
        }
    }

    public double distanceMm(Point other) {
        return Math.hypot(other.x - x, other.y - y);
    }

    public Point plus(double dx, double dy) {
        return new Point(x + dx, y + dy);
    }

    public Point minus(Point other) {
        return new Point(x - other.x, y - other.y);
    }

    /** Gone so far in a direction of length 1, and so far to the left of it. */
    public Point moved(Point way, double along, double left) {
        return new Point(x + way.x * along - way.y * left, y + way.y * along + way.x * left);
    }

    /** The place so far away in a direction, degrees to the left from along x. */
    public Point away(double mm, double degrees) {
        double angle = Math.toRadians(degrees);
        return plus(mm * Math.cos(angle), mm * Math.sin(angle));
    }

    /** The direction to the other, length 1. */
    public Point way(Point to) {
        double length = distanceMm(to);
        return new Point((to.x - x) / length, (to.y - y) / length);
    }

    /** Of two directions: 0 where they are square to each other. */
    public double dot(Point other) {
        return x * other.x + y * other.y;
    }

    /** Of two directions: above 0 where the other turns to the left, 0 where they run along each other. */
    public double cross(Point other) {
        return x * other.y - y * other.x;
    }

    public Point middle(Point other) {
        return new Point((x + other.x) / 2, (y + other.y) / 2);
    }

    /** A part of the way to the other: this place at 0, the other at 1. */
    public Point towards(Point other, double share) {
        return new Point(x + (other.x - x) * share, y + (other.y - y) * share);
    }

    /** About the origin, counter-clockwise. Quarter turns are exact, so that right-angled beds stay right-angled to the last bit. */
    public Point turned(double turnDeg) {
        double degrees = (turnDeg % 360 + 360) % 360;
        if (degrees == 0) return this;
        if (degrees == 90) return new Point(-y, x);
        if (degrees == 180) return new Point(-x, -y);
        if (degrees == 270) return new Point(y, -x);
        double radians = Math.toRadians(degrees);
        return new Point(x * Math.cos(radians) - y * Math.sin(radians), x * Math.sin(radians) + y * Math.cos(radians));
    }

    /** Without what calculating adds to whole numbers. */
    public Point steady() {
        return new Point(Lengths.steady(x), Lengths.steady(y));
    }

    /** Whether it lies in a ring of corners. */
    public boolean within(List<Point> ring) {
        boolean in = false;
        for (int i = 0; i < ring.size(); i++) {
            Point a = ring.get(i);
            Point b = ring.get(i + 1 < ring.size() ? i + 1 : 0);
            if (a.y > y != b.y > y && x < a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y)) in = !in;
        }
        return in;
    }

    /** Whether the lines from {@code a} to {@code b} and from {@code c} to {@code d} cross, and not only touch. */
    public static boolean crossing(Point a, Point b, Point c, Point d) {
        return parted(a, b, c, d) && parted(c, d, a, b);
    }

    /** Whether the line from {@code a} to {@code b}, as long as it may be, runs between two places. */
    private static boolean parted(Point a, Point b, Point one, Point other) {
        Point along = b.minus(a);
        return along.cross(one.minus(a)) * along.cross(other.minus(a)) < 0;
    }

    /** The place on the straight line from {@code a} to {@code b} that lies nearest to this one. */
    public Point nearestOn(Point a, Point b) {
        double dx = b.x - a.x;
        double dy = b.y - a.y;
        double square = dx * dx + dy * dy;
        return a.towards(b, square == 0 ? 0 : Math.max(0, Math.min(1, ((x - a.x) * dx + (y - a.y) * dy) / square)));
    }
}
