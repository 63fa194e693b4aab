package lapyard.diagrams;

import java.util.List;
import lapyard.drawing.Scale;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;

/**
 * Where real places lie on the sheet: as if standing with one's back to the house, so away from the house is up; or turned a
 * quarter counter-clockwise, so that the house is on the right and the sheet is read so from its right side.
 *
 * @param origin the paper place of the real (0, 0)
 */
record View(Scale scale, Point origin, boolean turned) {
    /** As large as a usual scale allows in the middle of a field with a rim. */
    static View usual(Box extent, Box field, double rim, boolean imperial) {
        return centred(Scale.usual(SheetLayout.needs(extent, field, rim) - 1e-9, imperial), extent, field);
    }

    /** What has this extent in the middle of a field. */
    static View centred(Scale scale, Box extent, Box field) {
        return new View(scale, field.centre().plus(-scale.paperMm(extent.centre().x()), scale.paperMm(extent.centre().y())), false);
    }

    Point on(Point real) {
        Point level = level(real, turned);
        return new Point(origin.x() + scale.paperMm(level.x()), origin.y() - scale.paperMm(level.y()));
    }

    /** A real place, or where it lies after a quarter turn. */
    static Point level(Point real, boolean turned) {
        return turned ? new Point(-real.y(), real.x()) : real;
    }

    List<Point> on(List<Point> real) {
        return real.stream().map(this::on).toList();
    }

    List<Point> on(Outline real) {
        return on(real.corners());
    }
}
