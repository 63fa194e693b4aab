package lapyard.diagrams;

import java.util.Collection;
import java.util.List;
import lapyard.geometry.Point;

/** An upright box, in whatever millimetres. */
record Box(double left, double low, double right, double high) {
    static Box round(Collection<Point> points) {
        return new Box(
                points.stream().mapToDouble(Point::x).min().orElse(0),
                points.stream().mapToDouble(Point::y).min().orElse(0),
                points.stream().mapToDouble(Point::x).max().orElse(0),
                points.stream().mapToDouble(Point::y).max().orElse(0));
    }

    double width() {
        return right - left;
    }

    double height() {
        return high - low;
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
