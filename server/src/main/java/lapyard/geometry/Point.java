package lapyard.geometry;

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

    public Point middle(Point other) {
        return new Point((x + other.x) / 2, (y + other.y) / 2);
    }

    /** A part of the way to the other: this place at 0, the other at 1. */
    public Point towards(Point other, double share) {
        return new Point(x + (other.x - x) * share, y + (other.y - y) * share);
    }

    /** The place on the straight line from {@code a} to {@code b} that lies nearest to this one. */
    public Point nearestOn(Point a, Point b) {
        double dx = b.x - a.x;
        double dy = b.y - a.y;
        double square = dx * dx + dy * dy;
        return a.towards(b, square == 0 ? 0 : Math.max(0, Math.min(1, ((x - a.x) * dx + (y - a.y) * dy) / square)));
    }
}
