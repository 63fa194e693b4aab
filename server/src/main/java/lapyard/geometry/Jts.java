package lapyard.geometry;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.geom.TopologyException;
import org.locationtech.jts.geom.util.PolygonExtracter;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/** Between our points and the geometry library's. */
public final class Jts {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    /** A ten-thousandth of a millimetre. */
    private static final PrecisionModel GRID = new PrecisionModel(1e4);

    private Jts() {}

    public static Polygon area(List<Point> ring) {
        List<Point> closed = new ArrayList<>(ring);
        closed.add(ring.get(0));
        return FACTORY.createPolygon(coordinates(closed));
    }

    /** A point, a line or an area, by the number of points. */
    public static Geometry thing(List<Point> points) {
        return points.size() > 2 ? area(points) : line(points);
    }

    /** The ring of a part of a disc, or of the whole, in so many steps a quarter; from its first edge, the middle last. */
    public static List<Point> sector(Point middle, double radiusMm, double fromDeg, double sweepDeg, int steps) {
        List<Point> ring = new ArrayList<>();
        int all = (int) (steps * sweepDeg / 90);
        for (int i = 0; i <= all; i++) ring.add(middle.away(radiusMm, fromDeg + sweepDeg * i / all));
        if (sweepDeg == 360) ring.remove(all);
        else ring.add(middle);
        return ring;
    }

    /** The least upright box round some points. */
    public static Envelope box(Iterable<Point> points) {
        Envelope box = new Envelope();
        for (Point point : points) box.expandToInclude(point.x(), point.y());
        return box;
    }

    /** A line, or the place of a single point. */
    public static Geometry line(List<Point> points) {
        return points.size() == 1 ? FACTORY.createPoint(coordinates(points)[0]) : FACTORY.createLineString(coordinates(points));
    }

    private static Coordinate[] coordinates(List<Point> points) {
        return points.stream().map(p -> new Coordinate(p.x(), p.y())).toArray(Coordinate[]::new);
    }

    /** The outer ring of the largest area in it; empty where it has none. */
    public static Optional<List<Point>> largestRing(Geometry geometry) {
        return polygons(geometry).stream().max(Comparator.comparingDouble(Polygon::getArea)).map(largest -> points(largest.getExteriorRing()));
    }

    /** What two shapes share, found where plain overlay would lose its way too. */
    public static Geometry common(Geometry one, Geometry other) {
        return overlay(one, other, OverlayNG.INTERSECTION);
    }

    public static Geometry less(Geometry whole, Geometry taken) {
        return overlay(whole, taken, OverlayNG.DIFFERENCE);
    }

    /**
     * Exactly, where that gives a whole shape. Sides that all but lie on each other at an angle to the yard may leave one that
     * crosses itself by a rounding; then with all corners on the grid. Of shapes that share ground and touch along a side elsewhere
     * it is the ground alone: with that line beside it no further overlay takes it.
     */
    private static Geometry overlay(Geometry one, Geometry other, int operation) {
        try {
            Geometry exact = OverlayNGRobust.overlay(one, other, operation);
            if (exact.isValid()) return exact.getDimension() == 2 && exact.getNumGeometries() > 1 ? FACTORY.buildGeometry(polygons(exact)) : exact;
        } catch (TopologyException crossing) {
            // the grid has no such crossing
        }
        OverlayNG onGrid = new OverlayNG(one, other, GRID, operation);
        onGrid.setStrictMode(true);
        return onGrid.getResult();
    }

    public static List<Polygon> polygons(Geometry shape) {
        List<Polygon> found = new ArrayList<>();
        for (Object polygon : PolygonExtracter.getPolygons(shape)) if (!((Polygon) polygon).isEmpty()) found.add((Polygon) polygon);
        return found;
    }

    /** The rings of each polygon of a shape, the outer one first. */
    public static List<List<List<Point>>> areas(Geometry shape) {
        List<List<List<Point>>> areas = new ArrayList<>();
        for (Polygon polygon : polygons(shape)) {
            List<List<Point>> rings = new ArrayList<>();
            rings.add(points(polygon.getExteriorRing()));
            for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
                rings.add(points(polygon.getInteriorRingN(i)));
            }
            areas.add(rings);
        }
        return areas;
    }

    /** The corners of a closed ring, each once. */
    public static List<Point> points(LineString ring) {
        List<Point> points = new ArrayList<>();
        Coordinate[] corners = ring.getCoordinates();
        for (int i = 0; i + 1 < corners.length; i++) {
            points.add(new Point(corners[i].x, corners[i].y));
        }
        return points;
    }
}
