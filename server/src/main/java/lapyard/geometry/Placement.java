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
        return new Point(mirror ? -own.x() : own.x(), own.y()).turned(turnDeg).plus(at.x(), at.y());
    }

    /** The direction (x, y) of the yard as the shape's own frame sees it. */
    public Point directionToOwn(double x, double y) {
        Point back = new Point(x, y).turned(-turnDeg);
        return new Point(mirror ? -back.x() : back.x(), back.y());
    }
}
