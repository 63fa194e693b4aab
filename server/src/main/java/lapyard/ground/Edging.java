package lapyard.ground;

import java.util.ArrayList;
import java.util.List;
import lapyard.geometry.Jts;
import lapyard.geometry.Lengths;
import lapyard.geometry.Point;
import lapyard.plan.GardenPath;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.index.strtree.STRtree;

/**
 * Where paths want an edging: the outline of all paths together, less their open ends and the sides that stand against
 * a bed or a wall. As covers share no ground, that is, path by path, the sides of its cover that no other cover, bed or open end
 * runs along.
 */
final class Edging {
    /** A bed or wall this near leaves no room for an edging. */
    private static final double AGAINST_MM = 5;

    /** Sine of the angle up to which two sides run along each other. */
    private static final double PARALLEL = 0.01;

    private final List<Geometry> covers;
    private final STRtree stops = new STRtree();

    /** @param owner index of the path whose own sides this does not stop; -1 stops all */
    private record Stop(LineSegment side, int owner) {}

    Edging(List<GardenPath> paths, List<Geometry> covers, List<Geometry> standing, List<LineString> walls) {
        this.covers = covers;
        standing.forEach(thing -> sides(thing).forEach(side -> add(side, -1)));
        for (LineString wall : walls) {
            List<LineSegment> sides = new ArrayList<>();
            ring(wall.getCoordinates(), sides);
            sides.forEach(side -> add(side, -1));
        }
        for (int i = 0; i < paths.size(); i++) {
            int owner = i;
            sides(covers.get(i)).forEach(side -> add(side, owner));
            openEnds(paths.get(i)).forEach(end -> add(end, -1));
        }
    }

    /** Lengths of the straight runs along the path's cover, in the order of its outline. */
    List<Double> runsMm(int path) {
        List<Double> runs = new ArrayList<>();
        for (LineSegment side : sides(covers.get(path))) {
            Envelope near = new Envelope(side.p0, side.p1);
            near.expandBy(AGAINST_MM);
            List<double[]> stopped = new ArrayList<>();
            for (Object found : stops.query(near)) {
                Stop stop = (Stop) found;
                if (stop.owner != path) along(side, stop.side, stopped);
            }
            Lengths.free(0, side.getLength(), stopped).stream().map(run -> run[1] - run[0]).filter(run -> run > Shapes.TOUCH_MM).forEach(runs::add);
        }
        return runs;
    }

    private void add(LineSegment side, int owner) {
        stops.insert(new Envelope(side.p0, side.p1), new Stop(side, owner));
    }

    /** Adds the stretch (from, to) of {@code side}, mm from its start, along which {@code stop} runs. */
    private static void along(LineSegment side, LineSegment stop, List<double[]> stopped) {
        double length = side.getLength();
        double x = (side.p1.x - side.p0.x) / length;
        double y = (side.p1.y - side.p0.y) / length;
        double sine = ((stop.p1.x - stop.p0.x) * y - (stop.p1.y - stop.p0.y) * x) / stop.getLength();
        double off = Math.max(side.distancePerpendicular(stop.p0), side.distancePerpendicular(stop.p1));
        if (Math.abs(sine) > PARALLEL || off > AGAINST_MM) return;
        double one = (stop.p0.x - side.p0.x) * x + (stop.p0.y - side.p0.y) * y;
        double other = (stop.p1.x - side.p0.x) * x + (stop.p1.y - side.p0.y) * y;
        double from = Math.max(0, Math.min(one, other));
        double to = Math.min(length, Math.max(one, other));
        if (to > from) stopped.add(new double[] {from, to});
    }

    /** The flat ends of a path; none where its line closes. */
    private static List<LineSegment> openEnds(GardenPath path) {
        List<Point> line = Shapes.legs(path.line());
        if (line.size() < 2 || line.get(0).equals(line.get(line.size() - 1))) return List.of();
        return List.of(
                end(line.get(0), line.get(1), path.widthMm()),
                end(line.get(line.size() - 1), line.get(line.size() - 2), path.widthMm()));
    }

    private static LineSegment end(Point at, Point next, double widthMm) {
        Point way = at.way(next);
        return new LineSegment(Shapes.coordinate(at.moved(way, 0, widthMm / 2)), Shapes.coordinate(at.moved(way, 0, -widthMm / 2)));
    }

    private static List<LineSegment> sides(Geometry area) {
        List<LineSegment> sides = new ArrayList<>();
        for (Polygon polygon : Jts.polygons(area)) {
            ring(polygon.getExteriorRing().getCoordinates(), sides);
            for (int i = 0; i < polygon.getNumInteriorRing(); i++) ring(polygon.getInteriorRingN(i).getCoordinates(), sides);
        }
        return sides;
    }

    private static void ring(Coordinate[] ring, List<LineSegment> sides) {
        for (int i = 0; i + 1 < ring.length; i++) if (!ring[i].equals2D(ring[i + 1])) sides.add(new LineSegment(ring[i], ring[i + 1]));
    }
}
