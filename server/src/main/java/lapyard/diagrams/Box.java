package lapyard.diagrams;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import lapyard.geometry.Jts;
import lapyard.geometry.Point;
import lapyard.plan.Garden;
import org.locationtech.jts.geom.Envelope;

/** An upright box, in whatever millimetres. */
record Box(double left, double low, double right, double high) {
    /** A square about its middle. */
    static Box about(Point centre, double half) {
        return new Box(centre.x() - half, centre.y() - half, centre.x() + half, centre.y() + half);
    }

    /** The least box round one or more points. */
    static Box round(Collection<Point> points) {
        Envelope round = Jts.box(points);
        return new Box(round.getMinX(), round.getMinY(), round.getMaxX(), round.getMaxY());
    }

    /** The least box round the yard, its beds and more; of some size where there are none. */
    static Box round(Garden garden, List<Point> more) {
        List<Point> points = new ArrayList<>(more);
        garden.ground().outline().forEach(yard -> points.addAll(yard.corners()));
        garden.beds().forEach(bed -> points.addAll(bed.inYard().corners()));
        return points.isEmpty() ? new Box(0, 0, 10_000, 5_000) : round(points);
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
