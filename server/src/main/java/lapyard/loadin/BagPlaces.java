package lapyard.loadin;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import lapyard.geometry.Jts;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Garden;
import lapyard.plan.GardenPath;
import lapyard.plan.Ground.KeepClear;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.operation.union.CascadedPolygonUnion;

/**
 * Where bulk bags can stand: in the yard, off every bed with room to work round it, off paths, which the barrow needs,
 * and off what is kept clear; nearest to the drop spot first. Places are tried on a grid, so one that only fits askew
 * or between two grid lines is not found.
 */
final class BagPlaces {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final double GRID_MM = 250;
    private static final int MOST_TRIED = 40_000;
    /** Room to work along a wall. */
    static final double BESIDE_BED_MM = 500;
    /** Two bags bulge. */
    private static final double BETWEEN_BAGS_MM = 100;

    private BagPlaces() {}

    /** Middles of at most {@code wanted} places; empty where no yard is drawn. */
    static Optional<List<Point>> of(Garden garden, double bagMm, Optional<Point> dropSpot, int wanted) {
        if (garden.ground().outline().isEmpty()) return Optional.empty();
        Outline yard = garden.ground().outline().get(0);
        PreparedGeometry inside = PreparedGeometryFactory.prepare(Jts.area(yard.corners()).buffer(0));
        List<Geometry> taken = new ArrayList<>();
        garden.beds().forEach(bed -> taken.add(Jts.area(bed.inYard().corners()).buffer(BESIDE_BED_MM)));
        for (GardenPath path : garden.paths()) taken.add(Jts.line(path.line()).buffer(path.widthMm() / 2));
        for (KeepClear kept : garden.ground().keepClear()) keptClear(kept).ifPresent(taken::add);
        Geometry all = taken.isEmpty() ? FACTORY.createPolygon() : CascadedPolygonUnion.union(taken);
        PreparedGeometry closed = PreparedGeometryFactory.prepare(all);
        Point from = dropSpot.orElse(yard.fromFrontLeft().corner(0));
        List<Point> candidates = grid(yard, bagMm);
        candidates.sort(Comparator.comparingDouble((Point point) -> point.distanceMm(from))
                .thenComparingDouble(Point::y)
                .thenComparingDouble(Point::x));
        List<Point> places = new ArrayList<>();
        for (Point middle : candidates) {
            if (places.size() == wanted) break;
            Geometry bag = square(middle, bagMm);
            boolean apart = places.stream().allMatch(other -> Math.max(
                    Math.abs(other.x() - middle.x()), Math.abs(other.y() - middle.y())) >= bagMm + BETWEEN_BAGS_MM);
            if (apart && inside.covers(bag) && !closed.intersects(bag)) places.add(middle);
        }
        return Optional.of(places);
    }

    private static List<Point> grid(Outline yard, double bagMm) {
        Envelope bounds = Jts.area(yard.corners()).getEnvelopeInternal();
        double step = GRID_MM;
        while ((bounds.getWidth() / step + 1) * (bounds.getHeight() / step + 1) > MOST_TRIED) step *= 2;
        List<Point> middles = new ArrayList<>();
        for (double y = bounds.getMinY() + bagMm / 2; y <= bounds.getMaxY() - bagMm / 2; y += step) {
            for (double x = bounds.getMinX() + bagMm / 2; x <= bounds.getMaxX() - bagMm / 2; x += step) middles.add(new Point(x, y));
        }
        return middles;
    }

    private static Optional<Geometry> keptClear(KeepClear kept) {
        if (kept.shape().isEmpty()) return Optional.empty();
        Geometry shape = Jts.thing(kept.leafMm() > 0 ? kept.shape().subList(0, 1) : kept.shape());
        if (kept.leafMm() == 0 && kept.shape().size() > 2) shape = shape.buffer(0);
        // a bag on a cover or in a gate's way is in the way whatever the clearance
        return Optional.of(shape.buffer(Math.max(100, kept.clearanceMm() + kept.leafMm())));
    }

    private static Geometry square(Point middle, double side) {
        double half = side / 2 - 1e-6;
        return FACTORY.toGeometry(new Envelope(middle.x() - half, middle.x() + half, middle.y() - half, middle.y() + half));
    }
}
