package lapyard.diagrams;

import java.util.Collection;
import java.util.List;
import lapyard.geometry.Point;

/** An upright box, in whatever millimetres. */
record Box(double left, double low, double right, double high) {
    /** The least box round one or more points. */
    static Box round(Collection<Point> points) {
        double left = Double.POSITIVE_INFINITY;
        double low = Double.POSITIVE_INFINITY;
        double right = Double.NEGATIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (Point p : points) {
            left = Math.min(left, p.x());
            low = Math.min(low, p.y());
            right = Math.max(right, p.x());
            high = Math.max(high, p.y());
        }
        return new Box(left, low, right, high);
    }

    double width() {
        return right - left;
    }

    double height() {
        return high - low;
    }

    boolean touches(Box other) {
        return left <= other.right && other.left <= right && low <= other.high && other.low <= high;
    }

    /** Whether another box lies in this one and nowhere at its edge. */
    boolean holds(Box other) {
        return left < other.left && other.right < right && low < other.low && other.high < high;
    }

    Point centre() {
        return new Point((left + right) / 2, (low + high) / 2);
    }

    Box grown(double by) {
        return new Box(left - by, low - by, right + by, high + by);
    }

    List<Point> corners() {
        return List.of(new Point(left, low), new Point(right, low), new Point(right, high), new Point(left, high));
    }
}
