package lapyard.ground;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import lapyard.geometry.Jts;
import lapyard.geometry.Point;
import lapyard.plan.GardenPath;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.distance.DistanceOp;

/**
 * How wide a path is where it is narrowest. Along a leg the free width changes evenly between corners of what stands in
 * it, so the narrowest place lies at such a corner, or between two things that stand on opposite sides of the path.
 *
 * @param widthMm  free width there
 * @param at       its middle
 * @param alongMm  from the start of the path's line
 * @param narrowMm how far the path is narrower than its own width, along its line
 */
record PathRoom(double widthMm, Point at, double alongMm, double narrowMm) {
    private static final double BESIDE_MM = 0.01;

    /** @param standing beds and other things that may stand in the path */
    static PathRoom of(GardenPath path, List<Geometry> standing) {
        List<PathRoom> places = new ArrayList<>();
        double narrow = 0;
        for (PathLeg leg : PathLeg.of(path)) narrow += places(leg, standing, places);
        double narrowed = narrow;
        return places.stream()
                .min(Comparator.comparingDouble(PathRoom::widthMm).thenComparingDouble(PathRoom::alongMm))
                .map(room -> new PathRoom(room.widthMm, room.at, room.alongMm, narrowed))
                .orElse(new PathRoom(path.widthMm(), path.line().get(0), 0, 0));
    }

    /** Adds the free widths at each corner of what stands in the leg. @return length along which anything does */
    private static double places(PathLeg leg, List<Geometry> standing, List<PathRoom> places) {
        Polygon band = leg.band();
        List<Polygon> parts = new ArrayList<>();
        for (Geometry thing : standing) {
            if (thing.getEnvelopeInternal().intersects(band.getEnvelopeInternal()) && thing.intersects(band)) {
                parts.addAll(Jts.polygons(Jts.common(thing, band)));
            }
        }
        parts.removeIf(part -> part.getArea() < Shapes.TOUCH_MM * Shapes.TOUCH_MM);
        if (parts.isEmpty()) return 0;
        TreeSet<Double> stations = new TreeSet<>();
        Geometry all = Shapes.union(List.copyOf(parts));
        for (Coordinate corner : all.getCoordinates()) {
            double along = leg.along(corner);
            for (double s : new double[] {along - BESIDE_MM, along + BESIDE_MM}) if (s >= 0
                    && s <= leg.length()) stations.add(s);
        }
        double narrow = 0;
        double last = 0;
        boolean lastNarrow = false;
        for (double s : stations) {
            PathRoom room = widest(leg, s, all);
            boolean narrowHere = room.widthMm < 2 * leg.half() - Shapes.TOUCH_MM;
            if (narrowHere) places.add(room);
            narrow += narrowHere && lastNarrow ? s - last : 0;
            last = s;
            lastNarrow = narrowHere;
        }
        opposite(leg, parts, places);
        return narrow;
    }

    private static PathRoom widest(PathLeg leg, double s, Geometry taken) {
        LineString across = Shapes.FACTORY.createLineString(
                new Coordinate[] {leg.at(s, -leg.half()), leg.at(s, leg.half())});
        Geometry free = Jts.less(across, taken);
        LineSegment widest = null;
        for (int i = 0; i < free.getNumGeometries(); i++) {
            Coordinate[] ends = free.getGeometryN(i).getCoordinates();
            if (ends.length > 1) {
                LineSegment own = new LineSegment(ends[0], ends[ends.length - 1]);
                widest = widest == null || own.getLength() > widest.getLength() ? own : widest;
            }
        }
        Coordinate middle = widest == null ? leg.at(s, 0) : widest.midPoint();
        return new PathRoom(widest == null ? 0 : widest.getLength(), new Point(middle.x, middle.y), leg.before() + s,
                0);
    }

    /** Between a thing at the left edge and one at the right edge one walks aslant. */
    private static void opposite(PathLeg leg, List<Polygon> parts, List<PathRoom> places) {
        for (Polygon left : parts) {
            for (Polygon right : parts) {
                if (touches(leg, left, 1) && touches(leg, right, -1) && !touches(leg, left, -1) && !touches(leg, right, 1)) {
                    Coordinate[] nearest = new DistanceOp(left, right).nearestPoints();
                    LineSegment gap = new LineSegment(nearest[0], nearest[1]);
                    Coordinate middle = gap.midPoint();
                    if (gap.getLength() < 2 * leg.half()) {
                        places.add(new PathRoom(gap.getLength(), new Point(middle.x, middle.y),
                                leg.before() + leg.along(middle), 0));
                    }
                }
            }
        }
    }

    private static boolean touches(PathLeg leg, Polygon part, int side) {
        for (Coordinate corner : part.getCoordinates()) if (
                leg.across(corner) * side > leg.half() - Shapes.TOUCH_MM) return true;
        return false;
    }
}
