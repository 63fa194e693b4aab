package lapyard.diagrams;

import java.util.List;
import lapyard.geometry.Point;

/**
 * A box on the paper that may be turned: the room of a label.
 *
 * @param turnDeg degrees counter-clockwise as seen
 */
record Plate(Point centre, double widthMm, double heightMm, double turnDeg) {
    List<Point> corners() {
        return List.of(own(-0.5, 0.5), own(0.5, 0.5), own(0.5, -0.5), own(-0.5, -0.5));
    }

    /** The upright box around it. */
    Box box() {
        if (turnDeg != 0) return Box.round(corners());
        return new Box(centre.x() - widthMm / 2, centre.y() - heightMm / 2, centre.x() + widthMm / 2, centre.y() + heightMm / 2);
    }

    /** A place on the plate, in parts of its width to the right and of its height downwards from its centre. */
    Point own(double across, double down) {
        return at(across * widthMm, down * heightMm);
    }

    /** A place on the plate, millimetres to the right and downwards from its centre, along its own sides. */
    Point at(double x, double y) {
        if (turnDeg == 0) return new Point(centre.x() + x, centre.y() + y);
        double cos = Math.cos(Math.toRadians(turnDeg));
        double sin = Math.sin(Math.toRadians(turnDeg));
        return new Point(centre.x() + x * cos + y * sin, centre.y() - x * sin + y * cos);
    }

    /** Whether two convex rings share more than an edge: no side of either has the other wholly beyond it. */
    static boolean overlap(List<Point> one, List<Point> other) {
        return !parted(one, other) && !parted(other, one);
    }

    private static boolean parted(List<Point> sides, List<Point> other) {
        for (int i = 0; i < sides.size(); i++) {
            Point a = sides.get(i);
            Point b = sides.get((i + 1) % sides.size());
            double x = b.y() - a.y();
            double y = a.x() - b.x();
            if (x == 0 && y == 0) continue; // a corner that stands twice is no side
            double touch = 1e-6 * Math.sqrt(x * x + y * y);
            if (most(sides, x, y) <= -most(other, -x, -y) + touch || most(other, x, y) <= -most(sides, -x, -y) + touch) return true;
        }
        return false;
    }

    /** How far the ring reaches in a direction. */
    private static double most(List<Point> ring, double x, double y) {
        double most = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < ring.size(); k++) most = Math.max(most, ring.get(k).x() * x + ring.get(k).y() * y);
        return most;
    }
}
