package lapyard.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.PriorityQueue;
import lapyard.geometry.Jts;
import lapyard.geometry.Point;
import org.locationtech.jts.algorithm.Distance;
import org.locationtech.jts.algorithm.PointLocation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.Polygon;

/**
 * The greatest distance from a place inside a bed to the nearest face that can be reached: squares are halved while the
 * distance at their middle plus half their diagonal could beat the best place found. Does what the geometry library's
 * largest empty circle does, without its cost along the ridge of a long bed.
 */
final class Reach {
    private static final int FIRST_SQUARES = 4;

    private final List<LineSegment> faces;
    private final List<Coordinate[]> rings = new ArrayList<>();
    private final double toMm;
    private double best;
    private Coordinate at = new Coordinate();

    private record Square(Coordinate middle, double half, double bound) implements Comparable<Square> {
        /** The most promising first. */
        @Override
        public int compareTo(Square other) {
            return Double.compare(other.bound, bound);
        }
    }

    private Reach(Geometry inside, List<LineSegment> faces, double toMm) {
        this.faces = faces;
        this.toMm = toMm;
        for (Polygon polygon : Jts.polygons(inside)) rings.add(polygon.getExteriorRing().getCoordinates());
    }

    /**
     * @param inside without holes
     * @param faces  at least one
     * @return short of the greatest by no more than {@code toMm}
     */
    static WallReach.Worst worst(Geometry inside, List<LineSegment> faces, double toMm) {
        return inside.isEmpty()
                ? new WallReach.Worst(0, new Point(0, 0))
                : new Reach(inside, faces, toMm).search(inside.getEnvelopeInternal());
    }

    private void look(Coordinate place, double distance) {
        if (distance > best) {
            best = distance;
            at = place;
        }
    }

    private WallReach.Worst search(Envelope bounds) {
        rings.forEach(ring -> List.of(ring).forEach(corner -> look(corner, distance(corner, faces))));
        double half = Math.max(bounds.getWidth(), bounds.getHeight()) / FIRST_SQUARES / 2;
        PriorityQueue<Square> squares = new PriorityQueue<>();
        for (double x = bounds.getMinX() + half; x - half < bounds.getMaxX(); x += 2 * half) {
            for (double y = bounds.getMinY() + half; y - half < bounds.getMaxY(); y += 2 * half) offer(squares, x, y, half);
        }
        while (!squares.isEmpty() && squares.peek().bound > best + toMm) {
            Square square = squares.poll();
            double quarter = square.half / 2;
            for (int i = 0; i < 4; i++) {
                offer(
                        squares,
                        square.middle.x + (i % 2 * 2 - 1) * quarter,
                        square.middle.y + (i / 2 * 2 - 1) * quarter,
                        quarter);
            }
        }
        return new WallReach.Worst(best, new Point(at.x, at.y));
    }

    private void offer(PriorityQueue<Square> squares, double x, double y, double half) {
        Coordinate middle = new Coordinate(x, y);
        double distance = distance(middle, faces);
        double bound = distance + half * Math.sqrt(2);
        if (bound <= best + toMm) return;
        if (isInside(middle)) {
            look(middle, distance);
        } else if (awayFromInside(middle, half * Math.sqrt(2))) {
            return;
        }
        squares.add(new Square(middle, half, bound));
    }

    private boolean isInside(Coordinate place) {
        for (Coordinate[] ring : rings) if (PointLocation.isInRing(place, ring)) return true;
        return false;
    }

    private boolean awayFromInside(Coordinate place, double mm) {
        for (Coordinate[] ring : rings) if (Distance.pointToSegmentString(place, ring) <= mm) return false;
        return true;
    }

    private static double distance(Coordinate place, List<LineSegment> segments) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < segments.size(); i++) least = Math.min(least, segments.get(i).distance(place));
        return least;
    }
}
