package lapyard.layout;

import java.util.List;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;

/** The yard turned so that rows lie along x: a place of the yard is turned by {@code -deg} about the origin. */
record Frame(double deg) {
    Point in(Point yard) {
        return yard.turned(-deg);
    }

    Point out(Point frame) {
        return frame.turned(deg);
    }

    List<Point> in(List<Point> yard) {
        return yard.stream().map(this::in).toList();
    }

    List<Point> in(Outline outline) {
        return in(outline.corners());
    }
}
