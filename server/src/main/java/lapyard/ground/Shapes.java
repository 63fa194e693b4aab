package lapyard.ground;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.function.ToDoubleFunction;
import lapyard.geometry.Jts;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.GardenPath;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/** Outlines and paths as shapes of the geometry library, and back. */
final class Shapes {
    static final GeometryFactory FACTORY = new GeometryFactory();

    /** Half of what a tape can read: closer than this is touching, not overlapping. */
    static final double TOUCH_MM = 0.5;

    /** A bend sharper than about 12 degrees between its legs is cut off square instead of running to a point. */
    private static final double MITRE_LIMIT = 10;

    private static final int QUADRANT_SEGMENTS = 32;

    private Shapes() {}

    static Coordinate coordinate(Point point) {
        return new Coordinate(point.x(), point.y());
    }

    /** Corners and edges of an outline; crossing sides are mended so that later steps can go on. */
    static Geometry area(Outline outline) {
        Polygon drawn = Jts.area(outline.corners());
        return drawn.isValid() ? drawn : GeometryFixer.fix(drawn);
    }

    /** All places within half the width of the line: bends mitred, ends flat; empty for a line without length. */
    static Geometry strip(GardenPath path) {
        List<Point> line = legs(path.line());
        if (line.size() < 2 || path.widthMm() <= 0) return FACTORY.createPolygon();
        return offset(Jts.line(line), path.widthMm() / 2);
    }

    /** The line without points that stand on the one before. */
    static List<Point> legs(List<Point> line) {
        List<Point> kept = new ArrayList<>();
        for (Point point : line) if (kept.isEmpty() || kept.get(kept.size() - 1).distanceMm(point) > 0) kept.add(point);
        return kept;
    }

    /** Moved inwards (below 0) or outwards with square corners and ends. */
    static Geometry offset(Geometry shape, double mm) {
        BufferParameters square = new BufferParameters(
                QUADRANT_SEGMENTS, BufferParameters.CAP_FLAT, BufferParameters.JOIN_MITRE, MITRE_LIMIT);
        square.setSimplifyFactor(0);
        return BufferOp.bufferOp(shape, mm, square);
    }

    /** All places within the distance, round about corners. */
    static Geometry round(Geometry shape, double mm) {
        return shape.buffer(mm, QUADRANT_SEGMENTS);
    }

    static Geometry union(Collection<Geometry> shapes) {
        return shapes.isEmpty() ? FACTORY.createPolygon() : OverlayNGRobust.union(shapes);
    }

    /** Outlines without holes that together cover the same ground; a hole is opened by a cut straight through it. */
    static List<Outline> outlines(Geometry geometry) {
        List<Outline> outlines = new ArrayList<>();
        for (Polygon polygon : Jts.polygons(geometry)) {
            if (polygon.getNumInteriorRing() == 0) {
                outlines.add(outline(polygon));
                continue;
            }
            Envelope all = polygon.getEnvelopeInternal();
            double cut = polygon.getInteriorRingN(0).getEnvelopeInternal().centre().x;
            for (Envelope half : List.of(
                    new Envelope(all.getMinX(), cut, all.getMinY(), all.getMaxY()),
                    new Envelope(cut, all.getMaxX(), all.getMinY(), all.getMaxY()))) {
                outlines.addAll(outlines(Jts.common(polygon, FACTORY.toGeometry(half))));
            }
        }
        return outlines;
    }

    /** The least and the greatest place of a shape's corners along a line. */
    static double[] extent(Geometry shape, ToDoubleFunction<Coordinate> along) {
        DoubleSummaryStatistics places = Arrays.stream(shape.getCoordinates()).mapToDouble(along).summaryStatistics();
        return new double[] {places.getMin(), places.getMax()};
    }

    private static Outline outline(Polygon polygon) {
        return new Outline(Jts.points(polygon.getExteriorRing())).counterClockwise().fromFrontLeft();
    }
}
