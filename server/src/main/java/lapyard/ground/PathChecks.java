package lapyard.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import lapyard.geometry.Jts;
import lapyard.geometry.Point;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.GardenPath;
import lapyard.plan.Place.What;
import lapyard.plan.Place;
import lapyard.plan.WayKind;
import lapyard.plan.WayOut;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/** Paths that leave the yard, and beds that stand on paths. */
final class PathChecks {
    /** What is lost in turning and joining coordinates; far below what a tape reads. */
    private static final double ROUNDING_MM = 0.01;

    private PathChecks() {}

    static List<Finding> of(Site site, List<GardenPath> paths) {
        List<Finding> found = new ArrayList<>();
        Optional<Geometry> yard = site.yard().map(ground -> Shapes.offset(ground, Shapes.TOUCH_MM));
        for (GardenPath path : paths) {
            Geometry strip = Shapes.strip(path);
            if (strip.isEmpty()) {
                found.add(withoutGround(path));
                continue;
            }
            yard.filter(ground -> !ground.covers(strip)).ifPresent(ground -> found.add(leaves(path, strip, site.yard().get())));
            for (Lot lot : site.near(strip, 0)) {
                if (lot.core().intersects(strip)) {
                    double area = Jts.common(lot.area(), strip).getArea();
                    List<WayOut> ways = site.waysOut(lot, strip, moved -> !moved.core().intersects(strip));
                    found.add(Finding.of(FindingKind.PATH_UNDER_BED, Place.bed(lot.bed().id()).then(What.PATH, path.id()))
                            .by(Fact.m2(area / 1e6)).ways(ways));
                }
            }
        }
        return found;
    }

    private static Finding withoutGround(GardenPath path) {
        return Finding.of(FindingKind.PATH_NOTHING, Place.of(What.PATH, path.id())).by(Fact.m2(0))
                .way(WayKind.PATH_LINE).way(WayKind.DELETE_PATH);
    }

    private static Finding leaves(GardenPath path, Geometry strip, Geometry yard) {
        double most = 0;
        Coordinate furthest = strip.getCoordinates()[0];
        for (Coordinate corner : strip.getCoordinates()) {
            double out = yard.distance(Shapes.FACTORY.createPoint(corner));
            if (out > most) {
                most = out;
                furthest = corner;
            }
        }
        Geometry fits = Shapes.offset(yard, ROUNDING_MM);
        List<Point> line = path.line();
        int nearest = 0;
        for (int i = 1; i < line.size(); i++) {
            if (Shapes.coordinate(line.get(i)).distance(furthest)
                    < Shapes.coordinate(line.get(nearest)).distance(furthest)) {
                nearest = i;
            }
        }
        List<WayOut> ways = new ArrayList<>();
        if (nearest == 0 || nearest == line.size() - 1) shorter(path, nearest == 0, fits).ifPresent(ways::add);
        int width = largest((int) path.widthMm(), mm -> fits.covers(Shapes.strip(widened(path, path.line(), mm))));
        if (width > 0) ways.add(WayOut.of(WayKind.NARROW_TO, Fact.mm(width)));
        ways.add(WayOut.of(WayKind.MOVE_POINT_IN, Fact.name(String.valueOf(nearest + 1))));
        return Finding.of(FindingKind.PATH_OUTSIDE, Place.of(What.PATH, path.id()))
                .with("point", Fact.name(String.valueOf(nearest + 1))).by(Fact.mm(most)).ways(ways);
    }

    private static Optional<WayOut> shorter(GardenPath path, boolean atStart, Geometry yard) {
        List<Point> line = path.line();
        int end = atStart ? 0 : line.size() - 1;
        Point last = line.get(end);
        Point before = line.get(atStart ? 1 : end - 1);
        int leg = (int) last.distanceMm(before);
        int kept = largest(leg, mm -> {
            List<Point> shorter = new ArrayList<>(line);
            shorter.set(end, before.towards(last, mm / last.distanceMm(before)));
            return yard.covers(Shapes.strip(widened(path, shorter, path.widthMm())));
        });
        return kept <= 0
                ? Optional.empty()
                : Optional.of(WayOut.of(atStart ? WayKind.BEGIN_LATER : WayKind.END_SOONER, Fact.mm(Math.ceil(last.distanceMm(before) - kept))));
    }

    private static GardenPath widened(GardenPath path, List<Point> line, double widthMm) {
        return new GardenPath(path.id(), path.name(), line, widthMm, List.of(), "", "", GardenPath.USUAL_LAP_MM);
    }

    /** The largest whole number under {@code most} that fits, by halving; 0 for none. */
    private static int largest(int most, IntPredicate fits) {
        int low = 0;
        int high = most;
        while (high - low > 1) {
            int middle = (low + high) / 2;
            if (fits.test(middle)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
