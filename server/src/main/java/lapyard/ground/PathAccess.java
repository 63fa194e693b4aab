package lapyard.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import lapyard.geometry.Jts;
import lapyard.geometry.Lengths;
import lapyard.geometry.Point;
import lapyard.plan.AccessStandard;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.GardenPath;
import lapyard.plan.Place.What;
import lapyard.plan.Place;
import lapyard.plan.WayKind;
import lapyard.plan.WayOut;
import lapyard.working.Whole;
import org.locationtech.jts.algorithm.construct.MaximumInscribedCircle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.linearref.LengthIndexedLine;

/** Paths against a standard: width, narrowest place, gradients, turning and passing places. */
final class PathAccess {
    /** Circles are found to this, mm. */
    private static final double CIRCLE_TO_MM = 5;

    private final Site site;
    private final List<GardenPath> paths;
    private final List<Geometry> strips;
    private final AccessStandard standard;
    private final List<AccessSheet.Row> rows = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();

    private PathAccess(Site site, List<GardenPath> paths, AccessStandard standard) {
        this.site = site;
        this.paths = paths;
        this.standard = standard;
        this.strips = paths.stream().map(Shapes::strip).toList();
    }

    static AccessSheet of(Site site, List<GardenPath> paths, Optional<Fall> fall, AccessStandard standard) {
        PathAccess access = new PathAccess(site, paths, standard);
        for (int i = 0; i < paths.size(); i++) {
            if (!access.strips.get(i).isEmpty()) {
                access.width(i);
                access.narrowest(i);
                int path = i;
                fall.ifPresent(plane -> access.gradients(path, plane));
                if (standard.named()) {
                    access.turning(i);
                    access.passing(i);
                }
            }
        }
        return new AccessSheet(standard, access.rows, access.findings);
    }

    private Place place(int path) {
        return Place.of(What.PATH, paths.get(path).id());
    }

    private String where(int path) {
        return "path " + paths.get(path).id();
    }

    private void width(int path) {
        double width = paths.get(path).widthMm();
        double shortBy = standard.walking().pathMm() - width;
        boolean fails = shortBy > Shapes.TOUCH_MM;
        rows.add(new AccessSheet.Row(where(path), AccessSheet.AccessCheck.WIDTH, width, standard.walking().pathMm(), "mm", fails ? shortBy : 0));
        if (fails) {
            findings.add(AccessSheet.finding(standard, FindingKind.PATH_NARROW, place(path), standard.walking().pathMm(), shortBy)
                    .with("width", Fact.mm(width)).way(WayKind.WIDEN_TO, Fact.mm(standard.walking().pathMm())));
        }
    }

    /** A narrow place may be as narrow as the standard's pinch where it is short, otherwise as narrow as a path. */
    private void narrowest(int path) {
        Geometry strip = strips.get(path);
        PathRoom room = PathRoom.of(paths.get(path), site.standingNear(strip));
        if (room.narrowMm() == 0 && room.widthMm() >= paths.get(path).widthMm()) return;
        boolean pinch = room.narrowMm() <= standard.walking().pinchLengthMm();
        double limit = pinch ? standard.walking().pinchMm() : standard.walking().pathMm();
        double shortBy = limit - room.widthMm();
        // a path that is narrow all along is told of as that
        boolean fails = Math.min(limit, paths.get(path).widthMm()) - room.widthMm() > Shapes.TOUCH_MM;
        rows.add(new AccessSheet.Row(where(path), AccessSheet.AccessCheck.NARROWEST, room.widthMm(), limit, "mm", fails ? shortBy : 0, Optional.of(room.at())));
        if (fails) {
            findings.add(AccessSheet.finding(standard, FindingKind.PATH_PINCHED, place(path), limit, shortBy)
                    .with(room.widthMm() > 0 ? "width" : "blocked", room.widthMm() > 0 ? Fact.mm(room.widthMm()) : Fact.name("blocked")).with("along", Fact.mm(room.alongMm()))
                    .way(WayKind.MOVE_OBSTACLE).way(WayKind.LEAD_ROUND));
        }
    }

    private void gradients(int path, Fall fall) {
        double along = 0;
        double across = 0;
        int steepest = 0;
        List<PathLeg> legs = PathLeg.of(paths.get(path));
        for (PathLeg leg : legs) {
            double up = Math.abs(fall.a() * leg.x() + fall.b() * leg.y());
            steepest = up > along ? legs.indexOf(leg) : steepest;
            along = Math.max(along, up);
            across = Math.max(across, Math.abs(fall.b() * leg.x() - fall.a() * leg.y()));
        }
        gradient(path, AccessSheet.AccessCheck.GRADIENT, along, standard.walking().gradient(), steepest + 1);
        gradient(path, AccessSheet.AccessCheck.CROSS_FALL, across, standard.walking().crossGradient(), 0);
    }

    private void gradient(int path, AccessSheet.AccessCheck what, double slope, double limit, int leg) {
        double over = slope - 1 / limit;
        boolean fails = over > 1e-6;
        double perMetre = over * 1000;
        rows.add(new AccessSheet.Row(
                where(path), what, slope == 0 ? Double.POSITIVE_INFINITY : 1 / slope, limit, "1:n", fails ? perMetre : 0));
        if (fails) {
            findings.add(AccessSheet.finding(standard, leg > 0 ? FindingKind.PATH_STEEP : FindingKind.PATH_CROSS_FALL, place(path), 0, 0)
                    .with("slope", new Fact.Slope(1 / slope)).with("limit", new Fact.Slope(limit))
                    .with("leg", Fact.name(String.valueOf(leg))).by(new Fact.Plain(Lengths.toTenth(perMetre), "mm a metre"))
                    .ways(leg > 0 ? List.of(WayOut.of(WayKind.ACROSS_FALL), WayOut.of(WayKind.STEPS_AND_RAMPS)) : List.of(WayOut.of(WayKind.CUT_UPPER_SIDE))));
        }
    }

    /** At an end that meets no other path there must be room to turn within one diameter of it. */
    private void turning(int path) {
        if (standard.walking().turningMm() <= 0) return;
        List<Point> line = Shapes.legs(paths.get(path).line());
        if (line.get(0).equals(line.get(line.size() - 1))) return;
        for (Point end : List.of(line.get(0), line.get(line.size() - 1))) {
            Geometry at = Shapes.FACTORY.createPoint(Shapes.coordinate(end));
            boolean met = false;
            for (int other = 0; other < paths.size(); other++) {
                met |= other != path && strips.get(other).isWithinDistance(at, Shapes.TOUCH_MM);
            }
            if (met) continue;
            double room = roomToTurn(at);
            double shortBy = standard.walking().turningMm() - room;
            boolean fails = shortBy > CIRCLE_TO_MM;
            rows.add(new AccessSheet.Row(where(path), AccessSheet.AccessCheck.TURNING, room, standard.walking().turningMm(), "mm", fails ? shortBy : 0, Optional.of(end)));
            if (fails) {
                findings.add(AccessSheet.finding(standard, FindingKind.PATH_TURNING, place(path), standard.walking().turningMm(), Math.round(shortBy))
                        .with("room", Fact.mm(Math.round(room))).with("end", Fact.spot(end.x(), end.y()))
                        .way(WayKind.FREE_TURNING, Fact.mm(standard.walking().turningMm())).way(WayKind.LEAD_ON));
            }
        }
    }

    /** Diameter of the largest circle that is free within one turning diameter of the place. */
    private double roomToTurn(Geometry at) {
        Geometry ground = Shapes.round(at, standard.walking().turningMm());
        if (site.yard().isPresent()) ground = Jts.common(ground, site.yard().get());
        List<Geometry> standing = site.standingNear(ground);
        if (!standing.isEmpty()) ground = Jts.less(ground, Shapes.union(standing));
        return Jts.polygons(ground).stream()
                .mapToDouble(part -> 2 * new MaximumInscribedCircle(part, CIRCLE_TO_MM).getRadiusLine().getLength()).max().orElse(0);
    }

    /** Ends and meetings with other paths are where two can pass. */
    private void passing(int path) {
        GardenPath own = paths.get(path);
        if (standard.walking().passingEveryMm() <= 0 || own.widthMm() >= standard.walking().passingMm() - Shapes.TOUCH_MM) return;
        LengthIndexedLine line = new LengthIndexedLine(Jts.line(Shapes.legs(own.line())));
        TreeSet<Double> places = new TreeSet<>(List.of(0.0, line.getEndIndex()));
        for (int other = 0; other < paths.size(); other++) {
            if (other != path && strips.get(other).intersects(strips.get(path))) {
                Coordinate middle = Jts.common(strips.get(other), strips.get(path)).getCentroid().getCoordinate();
                if (middle != null) places.add(line.project(middle));
            }
        }
        double longest = 0;
        double last = 0;
        for (double place : places) {
            longest = Math.max(longest, place - last);
            last = place;
        }
        double over = longest - standard.walking().passingEveryMm();
        boolean fails = over > Shapes.TOUCH_MM;
        rows.add(new AccessSheet.Row(where(path), AccessSheet.AccessCheck.PASSING, longest, standard.walking().passingEveryMm(), "mm", fails ? over : 0));
        if (fails) {
            int more = (int) Whole.up(longest / standard.walking().passingEveryMm()) - 1;
            findings.add(AccessSheet.finding(standard, FindingKind.PATH_PASSING, place(path), standard.walking().passingEveryMm(), Math.round(over))
                    .with("stretch", Fact.mm(Math.round(longest)))
                    .way(WayKind.PASSING_PLACES, Fact.count(more, "places"), Fact.mm(standard.walking().passingMm()))
                    .way(WayKind.WIDEN_TO, Fact.mm(standard.walking().passingMm())));
        }
    }
}
