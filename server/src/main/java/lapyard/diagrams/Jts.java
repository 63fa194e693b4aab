package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.geometry.Point;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

/** Between our points and the geometry library's. */
final class Jts {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private Jts() {}

    static Geometry area(List<Point> ring) {
        List<Point> closed = new ArrayList<>(ring);
        closed.add(ring.get(0));
        return FACTORY.createPolygon(coordinates(closed));
    }

    /** A point, a line or an area, by the number of points. */
    static Geometry thing(List<Point> points) {
        return switch (points.size()) {
            case 1 -> FACTORY.createPoint(coordinates(points)[0]);
            case 2 -> FACTORY.createLineString(coordinates(points));
            default -> area(points);
        };
    }

    private static Coordinate[] coordinates(List<Point> points) {
        return points.stream().map(p -> new Coordinate(p.x(), p.y())).toArray(Coordinate[]::new);
    }

    /** The outer ring of the largest area in it; empty where it has none. */
    static Optional<List<Point>> largestRing(Geometry geometry) {
        Polygon largest = null;
        for (int i = 0; i < geometry.getNumGeometries(); i++) {
            if (geometry.getGeometryN(i) instanceof Polygon part
                    && !part.isEmpty()
                    && (largest == null || part.getArea() > largest.getArea())) {
                largest = part;
            }
        }
        if (largest == null) {
            return Optional.empty();
        }
        Coordinate[] ring = largest.getExteriorRing().getCoordinates();
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < ring.length - 1; i++) {
            points.add(new Point(ring[i].x, ring[i].y));
        }
        return Optional.of(points);
    }
}
