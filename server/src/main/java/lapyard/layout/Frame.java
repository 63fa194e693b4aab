package lapyard.layout;

import java.util.List;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;

/** The yard turned so that rows lie along x: a place of the yard is turned by {@code -deg} about the origin. */
record Frame(double deg) {
    Point in(Point yard) {
        return turned(yard, -deg);
    }

    Point out(Point frame) {
        return turned(frame, deg);
    }

    List<Point> in(List<Point> yard) {
        return yard.stream().map(this::in).toList();
    }

    List<Point> in(Outline outline) {
        return in(outline.corners());
    }

    private static Point turned(Point at, double deg) {
        double turn = (deg % 360 + 360) % 360;
        if (turn == 0) return at;
        if (turn == 90) return new Point(-at.y(), at.x());
        if (turn == 180) return new Point(-at.x(), -at.y());
        if (turn == 270) return new Point(at.y(), -at.x());
        double cos = Math.cos(Math.toRadians(turn));
        double sin = Math.sin(Math.toRadians(turn));
        return new Point(at.x() * cos - at.y() * sin, at.x() * sin + at.y() * cos);
    }
}
