package lapyard.ground;

import java.util.ArrayList;
import java.util.List;
import lapyard.geometry.Point;
import lapyard.plan.GardenPath;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Polygon;

/**
 * A leg of a path's line: places are told along it from its start, and across it to the left; mm.
 *
 * @param x      of its direction
 * @param half   of the width of the path
 * @param before length of the legs before it
 */
record PathLeg(Point from, double x, double y, double length, double half, double before) {
    /** Of the line without points that stand on the one before. */
    static List<PathLeg> of(GardenPath path) {
        List<Point> line = Shapes.legs(path.line());
        List<PathLeg> legs = new ArrayList<>();
        double before = 0;
        for (int i = 0; i + 1 < line.size(); i++) {
            Point from = line.get(i);
            Point to = line.get(i + 1);
            Point way = from.way(to);
            legs.add(new PathLeg(from, way.x(), way.y(), from.distanceMm(to), path.widthMm() / 2, before));
            before += from.distanceMm(to);
        }
        return legs;
    }

    Coordinate at(double along, double across) {
        return new Coordinate(from.x() + along * x - across * y, from.y() + along * y + across * x);
    }

    double along(Coordinate c) {
        return (c.x - from.x()) * x + (c.y - from.y()) * y;
    }

    double across(Coordinate c) {
        return (c.y - from.y()) * x - (c.x - from.x()) * y;
    }

    /** Its part of the path, square at both ends. */
    Polygon band() {
        return box(0, length, -half, half);
    }

    Polygon box(double start, double end, double low, double high) {
        return Shapes.FACTORY.createPolygon(
                new Coordinate[] {at(start, low), at(end, low), at(end, high), at(start, high), at(start, low)});
    }
}
