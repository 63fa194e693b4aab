package lapyard.geometry;

/**
 * Where a shape drawn in its own frame lies in the yard: mirror first (x to -x), then turn
 * counter-clockwise about the origin, then move the origin to {@code at}.
 *
 * @param turnDeg degrees counter-clockwise
 */
public record Placement(Point at, double turnDeg, boolean mirror) {
    public static final Placement NONE = new Placement(new Point(0, 0), 0, false);

    public Point toYard(Point own) {
        Point turned = turned(mirror ? -own.x() : own.x(), own.y(), 1);
        return new Point(turned.x() + at.x(), turned.y() + at.y());
    }

    /** The direction (x, y) of the yard as the shape's own frame sees it. */
    public Point directionToOwn(double x, double y) {
        Point back = turned(x, y, -1);
        return new Point(mirror ? -back.x() : back.x(), back.y());
    }

    /** Quarter turns are exact, so that right-angled beds stay right-angled to the last bit. */
    private Point turned(double x, double y, int sense) {
        double degrees = ((turnDeg * sense) % 360 + 360) % 360;
        if (degrees == 0) return new Point(x, y);
        if (degrees == 90) return new Point(-y, x);
        if (degrees == 180) return new Point(-x, -y);
        if (degrees == 270) return new Point(y, -x);
        double radians = Math.toRadians(degrees);
        return new Point(x * Math.cos(radians) - y * Math.sin(radians), x * Math.sin(radians) + y * Math.cos(radians));
    }
}
