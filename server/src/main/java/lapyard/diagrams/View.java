package lapyard.diagrams;

import java.util.List;
import lapyard.drawing.Scale;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;

/**
 * Where real places lie on the sheet: as if standing with one's back to the house, so away from the house is up.
 *
 * @param origin the paper place of the real (0, 0)
 */
record View(Scale scale, Point origin) {
    Point on(Point real) {
        return new Point(origin.x() + scale.paperMm(real.x()), origin.y() - scale.paperMm(real.y()));
    }

    List<Point> on(List<Point> real) {
        return real.stream().map(this::on).toList();
    }

    List<Point> on(Outline real) {
        return on(real.corners());
    }
}
