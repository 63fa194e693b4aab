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
}
