package lapyard.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import lapyard.geometry.Point;
import lapyard.plan.AccessStandard;
import lapyard.plan.Finding;
import lapyard.plan.GardenPath;
import org.locationtech.jts.algorithm.construct.MaximumInscribedCircle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
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

    private String where(int path) {
        return "path " + paths.get(path).id();
    }

    private void width(int path) {
        double width = paths.get(path).widthMm();
        double shortBy = standard.pathMm() - width;
        boolean fails = shortBy > Shapes.TOUCH_MM;
        rows.add(new AccessSheet.Row(where(path), "width", width, standard.pathMm(), "mm", fails ? shortBy : 0));
        if (fails) {
            findings.add(AccessSheet.finding(
                    standard,
                    where(path),
                    Say.mm(width) + " wide, " + Say.mm(shortBy) + " under "
                            + AccessSheet.limit(standard, standard.pathMm()),
                    Say.amountMm(shortBy),
                    List.of("Widen it to " + Say.mm(standard.pathMm()))));
        }
    }

    /** A narrow place may be as narrow as the standard's pinch where it is short, otherwise as narrow as a path. */
    private void narrowest(int path) {
        Geometry strip = strips.get(path);
        List<Geometry> standing = new ArrayList<>();
        site.near(strip, 0).forEach(lot -> standing.add(lot.area()));
        site.zonesNear(strip, 0).stream().filter(Zone::solid).forEach(zone -> standing.add(zone.shape()));
        PathRoom room = PathRoom.of(paths.get(path), standing);
        if (room.narrowMm() == 0 && room.widthMm() >= paths.get(path).widthMm()) {
            return;
        }
        boolean pinch = room.narrowMm() <= standard.pinchLengthMm();
        double limit = pinch ? standard.pinchMm() : Math.min(standard.pathMm(), paths.get(path).widthMm());
        double shortBy = limit - room.widthMm();
        boolean fails = shortBy > Shapes.TOUCH_MM;
        rows.add(new AccessSheet.Row(where(path), "narrowest", room.widthMm(), limit, "mm", fails ? shortBy : 0, Optional.of(room.at())));
        if (fails) {
            findings.add(AccessSheet.finding(
                    standard,
                    where(path),
                    Say.mm(room.widthMm()) + " at its narrowest, " + Say.mm(room.alongMm()) + " along it at ("
                            + Say.mm(room.at().x()) + ", " + Say.mm(room.at().y()) + "), " + Say.mm(shortBy)
                            + " under " + AccessSheet.limit(standard, limit),
                    Say.amountMm(shortBy),
                    List.of("Move what stands in it", "Lead the path round it")));
        }
    }

    private void gradients(int path, Fall fall) {
        List<Point> line = Shapes.legs(paths.get(path).line());
        double along = 0;
        double across = 0;
        int steepest = 0;
        for (int i = 0; i + 1 < line.size(); i++) {
            double length = line.get(i).distanceMm(line.get(i + 1));
            double x = (line.get(i + 1).x() - line.get(i).x()) / length;
            double y = (line.get(i + 1).y() - line.get(i).y()) / length;
            double up = Math.abs(fall.a() * x + fall.b() * y);
            steepest = up > along ? i : steepest;
            along = Math.max(along, up);
            across = Math.max(across, Math.abs(fall.b() * x - fall.a() * y));
        }
        gradient(path, "gradient", along, standard.gradient(), " on leg " + (steepest + 1));
        gradient(path, "cross fall", across, standard.crossGradient(), " across");
    }

    private void gradient(int path, String what, double slope, double limit, String place) {
        double over = slope - 1 / limit;
        boolean fails = over > 1e-6;
        double perMetre = over * 1000;
        rows.add(new AccessSheet.Row(
                where(path), what, slope == 0 ? Double.POSITIVE_INFINITY : 1 / slope, limit, "1:n", fails ? perMetre : 0));
        if (fails) {
            findings.add(AccessSheet.finding(
                    standard,
                    where(path),
                    "1:" + Say.mm(1 / slope) + place + ", " + Say.mm(perMetre) + " in each metre steeper than 1:"
                            + Say.mm(limit),
                    new Finding.Amount(Math.round(perMetre * 10) / 10.0, "mm a metre"),
                    what.equals("gradient")
                            ? List.of("Lead it across the fall", "Level it in steps and ramps")
                            : List.of("Cut it level on the upper side")));
        }
    }

    /** At an end that meets no other path there must be room to turn within one diameter of it. */
    private void turning(int path) {
        if (standard.turningMm() <= 0) {
            return;
        }
        List<Point> line = Shapes.legs(paths.get(path).line());
        if (line.get(0).equals(line.get(line.size() - 1))) {
            return;
        }
        for (Point end : List.of(line.get(0), line.get(line.size() - 1))) {
            Geometry at = Shapes.FACTORY.createPoint(Shapes.coordinate(end));
            boolean met = false;
            for (int other = 0; other < paths.size(); other++) {
                met |= other != path && strips.get(other).isWithinDistance(at, Shapes.TOUCH_MM);
            }
            if (met) {
                continue;
            }
            double room = roomToTurn(at);
            double shortBy = standard.turningMm() - room;
            boolean fails = shortBy > CIRCLE_TO_MM;
            rows.add(new AccessSheet.Row(
                    where(path), "turning", room, standard.turningMm(), "mm", fails ? shortBy : 0, Optional.of(end)));
            if (fails) {
                findings.add(AccessSheet.finding(
                        standard,
                        where(path),
                        Say.mm(Math.round(room)) + " to turn in at its end at (" + Say.mm(end.x()) + ", "
                                + Say.mm(end.y()) + "), " + Say.mm(Math.round(shortBy)) + " under "
                                + AccessSheet.limit(standard, standard.turningMm()),
                        Say.amountMm(Math.round(shortBy)),
                        List.of("Free a place of " + Say.mm(standard.turningMm()) + " across at its end",
                                "Lead it on into another path")));
            }
        }
    }

    /** Diameter of the largest circle that is free within one turning diameter of the place. */
    private double roomToTurn(Geometry at) {
        Geometry ground = Shapes.round(at, standard.turningMm());
        if (site.yard().isPresent()) {
            ground = Shapes.common(ground, site.yard().get());
        }
        List<Geometry> standing = new ArrayList<>();
        for (Lot lot : site.near(ground, 0)) {
            standing.add(lot.area());
        }
        site.zonesNear(ground, 0).stream().filter(Zone::solid).forEach(zone -> standing.add(zone.shape()));
        if (!standing.isEmpty()) {
            ground = Shapes.less(ground, Shapes.union(standing));
        }
        double widest = 0;
        for (Polygon part : Shapes.polygons(ground)) {
            widest = Math.max(widest, 2 * new MaximumInscribedCircle(part, CIRCLE_TO_MM).getRadiusLine().getLength());
        }
        return widest;
    }

    /** Ends and meetings with other paths are where two can pass. */
    private void passing(int path) {
        GardenPath own = paths.get(path);
        if (standard.passingEveryMm() <= 0 || own.widthMm() >= standard.passingMm() - Shapes.TOUCH_MM) {
            return;
        }
        LengthIndexedLine line = new LengthIndexedLine(Shapes.line(Shapes.legs(own.line())));
        TreeSet<Double> places = new TreeSet<>(List.of(0.0, line.getEndIndex()));
        for (int other = 0; other < paths.size(); other++) {
            if (other != path && strips.get(other).intersects(strips.get(path))) {
                Coordinate middle = Shapes.common(strips.get(other), strips.get(path)).getCentroid().getCoordinate();
                if (middle != null) {
                    places.add(line.project(middle));
                }
            }
        }
        double longest = 0;
        double last = 0;
        for (double place : places) {
            longest = Math.max(longest, place - last);
            last = place;
        }
        double over = longest - standard.passingEveryMm();
        boolean fails = over > Shapes.TOUCH_MM;
        rows.add(new AccessSheet.Row(
                where(path), "passing", longest, standard.passingEveryMm(), "mm", fails ? over : 0));
        if (fails) {
            int more = (int) Math.ceil(longest / standard.passingEveryMm() - 1e-9) - 1;
            findings.add(AccessSheet.finding(
                    standard,
                    where(path),
                    Say.mm(Math.round(longest)) + " without a place to pass, " + Say.mm(Math.round(over)) + " over "
                            + AccessSheet.limit(standard, standard.passingEveryMm()),
                    Say.amountMm(Math.round(over)),
                    List.of(more + (more == 1 ? " place of " : " places of ") + Say.mm(standard.passingMm())
                            + " square along it", "Widen it to " + Say.mm(standard.passingMm()))));
        }
    }
}
