package lapyard.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import lapyard.geometry.Jts;
import lapyard.geometry.Lengths;
import lapyard.geometry.Outline;
import lapyard.geometry.OutlineCheck;
import lapyard.geometry.Point;
import lapyard.plan.AccessStandard;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.GardenPath;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.WayKind;
import lapyard.plan.WayOut;
import lapyard.working.Whole;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.distance.DistanceOp;

/** Room to walk between beds and to reach into them, against a standard. */
final class Access {
    private final Site site;
    private final AccessStandard standard;
    private final List<AccessSheet.Row> rows = new ArrayList<>();
    private final Function<WallReach, WallReach.Worst> reaches;

    private Access(Site site, AccessStandard standard, Function<WallReach, WallReach.Worst> reaches) {
        this.site = site;
        this.standard = standard;
        this.reaches = reaches;
    }

    static AccessSheet of(
            Site site, List<GardenPath> paths, Optional<Fall> fall, AccessStandard standard, Function<WallReach, WallReach.Worst> reaches) {
        Access access = new Access(site, standard, reaches);
        AccessSheet ways = PathAccess.of(site, paths, fall, standard);
        access.rows.addAll(ways.rows());
        List<Finding> found = new ArrayList<>(ways.findings());
        for (Lot lot : site.lots()) found.addAll(access.gaps(lot));
        for (Lot lot : site.lots()) {
            found.addAll(access.reach(lot));
            access.rim(lot).ifPresent(found::add);
        }
        return new AccessSheet(standard, access.rows, found);
    }

    private void row(String where, AccessSheet.AccessCheck what, double measured, double limit, double missing) {
        rows.add(new AccessSheet.Row(where, what, measured, limit, "mm", missing));
    }

    private Optional<Finding> rim(Lot lot) {
        if (standard.height().rimMostMm() <= 0) return Optional.empty();
        double height = lot.bed().heightMm();
        boolean low = height < standard.height().rimLeastMm();
        double limit = low ? standard.height().rimLeastMm() : standard.height().rimMostMm();
        double off = Math.max(0, low ? limit - height : height - limit);
        row(lot.where(), AccessSheet.AccessCheck.RIM, height, limit, off);
        if (off <= Shapes.TOUCH_MM) return Optional.empty();
        int courses = (int) Whole.up(off / lot.bed().section().heightMm());
        return Optional.of(AccessSheet.finding(standard, FindingKind.RIM_HEIGHT, Place.bed(lot.bed().id()), limit, off)
                .with("height", Fact.mm(height)).with(low ? "least" : "most", Fact.mm(limit))
                .way(low ? WayKind.ADD_COURSES : WayKind.TAKE_OFF_COURSES, Fact.count(courses, "courses"))
                .way(WayKind.STEP_GROUND));
    }

    private List<Finding> gaps(Lot lot) {
        double pathMm = standard.walking().pathMm();
        List<Finding> found = new ArrayList<>();
        List<Lot> near = site.near(lot.area(), pathMm);
        for (Lot other : near) {
            if (other.index() <= lot.index()
                    || !lot.area().isWithinDistance(other.area(), pathMm - Shapes.TOUCH_MM)
                    || lot.core().intersects(other.area())) {
                continue;
            }
            Coordinate[] nearest = new DistanceOp(lot.area(), other.area()).nearestPoints();
            if (blocked(nearest, lot, other, near)) continue;
            double gap = nearest[0].distance(nearest[1]);
            double shortBy = pathMm - gap;
            row(lot.where() + ", " + other.where(), AccessSheet.AccessCheck.GAP, gap, pathMm, shortBy);
            found.add(AccessSheet.finding(standard, FindingKind.GAP_NARROW, Place.bed(lot.bed().id()).then(What.BED, other.bed().id()), pathMm, shortBy)
                    .with("gap", Fact.mm(gap)).way(widening(lot, other, nearest, Math.ceil(shortBy - 0.01))));
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
                        && Jts.common(across, third.area()).getLength() > Shapes.TOUCH_MM);
    }

    /**
     * A wall to free is offered only where one is blocked. A rectangle that is free all round is reached from both long
     * sides, so twice what is too far comes off its shorter side, if enough of it is left for its timber.
     */
    private static List<WayOut> easier(Bed bed, List<WallReach.Stretch> stretches, double overMm) {
        List<WayOut> ways = new ArrayList<>();
        boolean free = stretches.stream().mapToDouble(one -> one.toMm() - one.fromMm()).sum() >= bed.outline().perimeterMm() - Shapes.TOUCH_MM;
        double left = Math.floor(Math.min(bed.outline().sideMm(0), bed.outline().sideMm(1)) - 2 * overMm);
        if (free && bed.outline().sides() == 4 && bed.outline().upright() && left >= OutlineCheck.Rules.bed(bed.section().thicknessMm()).leastWidthMm()) {
            ways.add(WayOut.of(WayKind.MAKE_NARROWER, Fact.mm(left)));
        }
        ways.add(WayOut.of(WayKind.STEPPING_BOARD));
        if (!free) ways.add(WayOut.of(WayKind.FREE_WALL));
        return ways;
    }

    /** A move of either bed straight away from the other that meets nothing else; else a bed that stays wide enough for its timber. */
    private WayOut widening(Lot one, Lot other, Coordinate[] nearest, double mm) {
        double gap = nearest[0].distance(nearest[1]);
        for (Lot moving : List.of(other, one)) {
            Coordinate from = moving == other ? nearest[0] : nearest[1];
            Coordinate to = moving == other ? nearest[1] : nearest[0];
            double dx = (to.x - from.x) / gap * mm;
            double dy = (to.y - from.y) / gap * mm;
            if (gap > Shapes.TOUCH_MM && site.clear(moving.moved(dx, dy))) {
                Lot stays = moving == other ? one : other;
                return WayOut.of(WayKind.MOVE_APART, Fact.name(moving.bed().id()), Fact.mm(mm), Fact.spot(dx, dy), Fact.name(stays.bed().id()));
            }
        }
        boolean across = Math.abs(nearest[0].x - nearest[1].x) > Math.abs(nearest[0].y - nearest[1].y);
        for (Lot cut : List.of(other, one)) {
            Envelope box = cut.area().getEnvelopeInternal();
            double left = (across ? box.getWidth() : box.getHeight()) - mm;
            if (left >= OutlineCheck.Rules.bed(cut.bed().section().thicknessMm()).leastWidthMm()) {
                return WayOut.of(WayKind.NARROWER_BY, Fact.mm(mm), Fact.name(cut.bed().id()));
            }
        }
        return WayOut.of(WayKind.LEAVE_ONE_OUT);
    }

    private List<Finding> reach(Lot lot) {
        List<WallReach.Stretch> stretches = reachable(lot);
        if (stretches.isEmpty()) {
            row(lot.where(), AccessSheet.AccessCheck.REACH, Double.POSITIVE_INFINITY, standard.reaching().reachMm(), standard.reaching().standMm());
            return List.of(AccessSheet.finding(standard, FindingKind.REACH_NONE, Place.bed(lot.bed().id()), standard.reaching().standMm(), standard.reaching().standMm())
                    .way(WayKind.STANDING_ROOM, Fact.mm(standard.reaching().standMm())));
        }
        Bed bed = lot.bed();
        WallReach.Worst worst = reaches.apply(new WallReach(bed.outline(), bed.section().thicknessMm(), stretches));
        double reach = worst.mm();
        double over = reach - standard.reaching().reachMm();
        rows.add(new AccessSheet.Row(
                lot.where(), AccessSheet.AccessCheck.REACH, reach, standard.reaching().reachMm(), "mm", over <= WallReach.TO_MM ? 0 : over,
                Optional.of(bed.placement().toYard(worst.at()))));
        if (over <= WallReach.TO_MM) return List.of();
        return List.of(AccessSheet.finding(standard, FindingKind.REACH_FAR, Place.bed(lot.bed().id()), standard.reaching().reachMm(), Math.round(over))
                .with("reach", Fact.mm(Math.round(reach)))
                .ways(easier(bed, stretches, over)));
    }

    /** Stretches of seen walls with room to stand before them: no bed, not out of the yard. */
    private List<WallReach.Stretch> reachable(Lot lot) {
        Outline outline = lot.bed().inYard().counterClockwise();
        boolean mirrored = lot.bed().inYard().signedAreaMm2() < 0;
        List<WallReach.Stretch> stretches = new ArrayList<>();
        for (int i = 0; i < outline.sides(); i++) {
            // Turning a mirrored outline round makes its side i the wall n - 2 - i, counted round.
            int wall = mirrored ? Math.floorMod(outline.sides() - 2 - i, outline.sides()) : i;
            if (!lot.bed().walls().hidden().contains(Bed.wallLetter(wall))) {
                stretches.addAll(free(outline.corner(i), outline.corner(i + 1), wall, mirrored));
            }
        }
        return stretches;
    }

    private List<WallReach.Stretch> free(Point from, Point to, int wall, boolean mirrored) {
        double length = from.distanceMm(to);
        Point way = from.way(to);
        Polygon standing = Jts.area(List.of(from, from.moved(way, 0, -standard.reaching().standMm()), to.moved(way, 0, -standard.reaching().standMm()), to));
        List<double[]> taken = new ArrayList<>();
        for (Lot other : site.near(standing, 0)) {
            if (standing.intersects(other.core())) take(Jts.common(standing, other.core()), from, way, taken);
        }
        for (Zone zone : site.zonesNear(standing, 0)) {
            if (zone.solid() && standing.intersects(zone.shape())) take(Jts.common(standing, zone.shape()), from, way, taken);
        }
        if (!site.insideYard(standing)) take(Jts.less(standing, site.yard().orElseThrow()), from, way, taken);
        return Lengths.free(0, length, taken).stream()
                .filter(span -> span[1] - span[0] >= Math.min(standard.reaching().standAlongMm(), length))
                .map(span -> mirrored ? new double[] {length - span[1], length - span[0]} : span)
                .map(span -> new WallReach.Stretch(wall, Math.rint(span[0]), Math.rint(span[1]))).toList();
    }

    private static void take(Geometry blocking, Point from, Point way, List<double[]> taken) {
        for (Polygon part : Jts.polygons(blocking)) {
            double[] span = Shapes.extent(part, corner -> new Point(corner.x, corner.y).minus(from).dot(way));
            if (span[1] - span[0] > Shapes.TOUCH_MM) taken.add(span);
        }
    }
}
