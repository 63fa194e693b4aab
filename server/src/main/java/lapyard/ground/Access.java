package lapyard.ground;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.GardenPath;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.distance.DistanceOp;

/** Room to walk and to reach, against defaults that no garden has to meet: notes only. */
final class Access {
    /** Default path width and one-side working reach; common practice, a local standard overrides both. */
    static final double PATH_MM = 1200;

    static final double REACH_MM = 600;

    /** Least gap beside a bed in which one can stand to tend it: 24 in, Connecticut conservation-district text. */
    static final double STAND_MM = 600;

    /** Shorter than this along a wall there is no place to stand; common practice, no source. */
    private static final double STAND_ALONG_MM = 300;

    /** Reach is told in whole millimetres. */
    private static final double REACH_TO_MM = 1;

    private final Site site;
    private final Map<List<Object>, Double> reaches = new HashMap<>();

    /** A stretch of wall that can be reached, in millimetres from its start. */
    private record Stretch(int wall, double fromMm, double toMm) {}

    private Access(Site site) {
        this.site = site;
    }

    static List<Finding> of(Site site, List<GardenPath> paths) {
        Access access = new Access(site);
        List<Finding> found = new ArrayList<>();
        for (GardenPath path : paths) {
            double shortBy = PATH_MM - path.widthMm();
            if (path.widthMm() > 0 && shortBy > Shapes.TOUCH_MM) {
                String way = "Widen it to " + Say.mm(PATH_MM);
                found.add(Finding.note(
                        "path " + path.id(),
                        Say.mm(path.widthMm()) + " wide, " + Say.mm(shortBy) + " under the usual "
                                        + Say.mm(PATH_MM),
                        Say.amountMm(shortBy),
                        way));
            }
        }
        for (Lot lot : site.lots()) {
            found.addAll(access.gaps(lot));
        }
        for (Lot lot : site.lots()) {
            found.addAll(access.reach(lot));
        }
        return found;
    }

    private List<Finding> gaps(Lot lot) {
        List<Finding> found = new ArrayList<>();
        List<Lot> near = site.near(lot.area(), PATH_MM);
        for (Lot other : near) {
            if (other.index() <= lot.index()
                    || !lot.area().isWithinDistance(other.area(), PATH_MM - Shapes.TOUCH_MM)
                    || lot.core().intersects(other.area())) {
                continue;
            }
            Coordinate[] nearest = new DistanceOp(lot.area(), other.area()).nearestPoints();
            if (blocked(nearest, lot, other, near)) {
                continue;
            }
            double gap = nearest[0].distance(nearest[1]);
            double shortBy = PATH_MM - gap;
            String way = "Move one of them " + Say.mm(Math.ceil(shortBy - 0.01));
            found.add(Finding.note(
                    lot.where() + ", " + other.where(),
                    Say.mm(gap) + " between beds " + lot.bed().id() + " and "
                                    + other.bed().id() + ", " + Say.mm(shortBy) + " under the usual " + Say.mm(PATH_MM)
                                   ,
                    Say.amountMm(shortBy),
                    way));
        }
        return found;
    }

    /** Whether a third bed stands in the gap, which is then no gap to walk in. */
    private static boolean blocked(Coordinate[] gap, Lot one, Lot other, List<Lot> near) {
        LineString across = Shapes.FACTORY.createLineString(gap);
        return near.stream()
                .anyMatch(third -> third != one
                        && third != other
                        && across.getEnvelopeInternal().intersects(third.area().getEnvelopeInternal())
                        && Shapes.common(across, third.area()).getLength() > Shapes.TOUCH_MM);
    }

    private List<Finding> reach(Lot lot) {
        List<Stretch> stretches = reachable(lot);
        if (stretches.isEmpty()) {
            List<String> ways = List.of("Leave " + Say.mm(STAND_MM) + " free along a wall");
            return List.of(Finding.note(
                    lot.where(),
                    "0 of its walls can be reached",
                    Say.amountMm(STAND_MM),
                    ways.toArray(String[]::new)));
        }
        Bed bed = lot.bed();
        double reach = reaches.computeIfAbsent(
                List.of(bed.outline(), bed.section().thicknessMm(), stretches), shape -> worstReach(bed, stretches));
        double over = reach - REACH_MM;
        if (over <= 1) {
            return List.of();
        }
        List<String> ways = List.of("Make it narrower", "Free another wall", "Lay a stepping board");
        return List.of(Finding.note(
                lot.where(),
                "Reach is " + Say.mm(Math.round(reach)) + ", " + Say.mm(Math.round(over)) + " over the usual "
                                + Say.mm(REACH_MM) + " from one side",
                Say.amountMm(Math.round(over)),
                ways.toArray(String[]::new)));
    }

    /** Stretches of seen walls with room to stand before them: no bed, not out of the yard. */
    private List<Stretch> reachable(Lot lot) {
        Outline outline = lot.bed().inYard().counterClockwise();
        boolean mirrored = lot.bed().inYard().signedAreaMm2() < 0;
        List<Stretch> stretches = new ArrayList<>();
        for (int i = 0; i < outline.sides(); i++) {
            // Turning a mirrored outline round makes its side i the wall n - 2 - i, counted round.
            int wall = mirrored ? Math.floorMod(outline.sides() - 2 - i, outline.sides()) : i;
            if (!lot.bed().hidden().contains(Bed.wallLetter(wall))) {
                stretches.addAll(free(lot, outline.corner(i), outline.corner(i + 1), wall, mirrored));
            }
        }
        return stretches;
    }

    private List<Stretch> free(Lot lot, Point from, Point to, int wall, boolean mirrored) {
        double length = from.distanceMm(to);
        double x = (to.x() - from.x()) / length;
        double y = (to.y() - from.y()) / length;
        Coordinate[] ring = {
            Shapes.coordinate(from),
            new Coordinate(from.x() + y * STAND_MM, from.y() - x * STAND_MM),
            new Coordinate(to.x() + y * STAND_MM, to.y() - x * STAND_MM),
            Shapes.coordinate(to),
            Shapes.coordinate(from)
        };
        Polygon standing = Shapes.FACTORY.createPolygon(ring);
        List<double[]> taken = new ArrayList<>();
        for (Lot other : site.near(standing, 0)) {
            if (standing.intersects(other.core())) {
                take(Shapes.common(standing, other.core()), from, x, y, taken);
            }
        }
        if (!site.insideYard(standing)) {
            take(Shapes.less(standing, site.yard().orElseThrow()), from, x, y, taken);
        }
        taken.sort(Comparator.comparingDouble(span -> span[0]));
        taken.add(new double[] {length, length});
        List<Stretch> stretches = new ArrayList<>();
        double at = 0;
        for (double[] span : taken) {
            if (span[0] - at >= STAND_ALONG_MM) {
                double start = mirrored ? length - span[0] : at;
                double end = mirrored ? length - at : span[0];
                stretches.add(new Stretch(wall, Math.rint(start), Math.rint(end)));
            }
            at = Math.max(at, span[1]);
        }
        return stretches;
    }

    private static void take(Geometry blocking, Point from, double x, double y, List<double[]> taken) {
        for (Polygon part : Shapes.polygons(blocking)) {
            double least = Double.POSITIVE_INFINITY;
            double most = Double.NEGATIVE_INFINITY;
            for (Coordinate corner : part.getCoordinates()) {
                double along = (corner.x - from.x()) * x + (corner.y - from.y()) * y;
                least = Math.min(least, along);
                most = Math.max(most, along);
            }
            if (most - least > Shapes.TOUCH_MM) {
                taken.add(new double[] {least, most});
            }
        }
    }

    /** The greatest distance from a place inside the walls to the nearest outer face that can be reached. */
    private static double worstReach(Bed bed, List<Stretch> stretches) {
        Outline outline = bed.outline();
        Geometry inside = Shapes.offset(Shapes.area(outline), -bed.section().thicknessMm());
        if (outline.sides() == 4 && Cut.square(outline) && allRound(outline, stretches)) {
            return Math.min(outline.sideMm(0), outline.sideMm(1)) / 2;
        }
        List<LineSegment> faces = stretches.stream()
                .map(stretch -> new LineSegment(
                        Shapes.coordinate(along(outline, stretch, stretch.fromMm())),
                        Shapes.coordinate(along(outline, stretch, stretch.toMm()))))
                .toList();
        return Reach.worstMm(inside, faces, REACH_TO_MM);
    }

    private static boolean allRound(Outline outline, List<Stretch> stretches) {
        return stretches.size() == outline.sides()
                && stretches.stream().allMatch(s -> s.fromMm() == 0 && s.toMm() == Math.rint(outline.sideMm(s.wall())));
    }

    private static Point along(Outline outline, Stretch stretch, double mm) {
        Point from = outline.corner(stretch.wall());
        Point to = outline.corner(stretch.wall() + 1);
        double share = Math.min(1, mm / outline.sideMm(stretch.wall()));
        return new Point(from.x() + (to.x() - from.x()) * share, from.y() + (to.y() - from.y()) * share);
    }
}
