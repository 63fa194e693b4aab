package lapyard.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import lapyard.geometry.Jts;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.Ground;
import lapyard.plan.Place.What;
import lapyard.plan.Place;
import lapyard.plan.SurfaceKind;
import lapyard.plan.WayKind;
import lapyard.plan.WayOut;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.valid.IsValidOp;

/**
 * All that is wrong with how things lie in the yard, each with its amount and a way out: beds, paths and keep-clear
 * that get in each other's way or leave the yard, level readings off the plane, scribes too deep, surfaces that
 * overlap, and, as notes, gaps and reach under the access defaults.
 */
public final class Clashes {
    /** More overlaps than this are told together; moving off one of so many is no way out. */
    private static final int MOST_TOLD_APART = 3;

    private Clashes() {}

    /**
     * In the order of the document: the drawing, the survey, the levels, bed by bed, surfaces, paths, rims, access. Where
     * an outline crosses itself nothing can be measured, and the list ends with the levels.
     */
    public static List<Finding> of(Garden garden) {
        return sheet(garden, WallReach::worst).map(GroundSheet::findings).orElseGet(() -> {
            List<Finding> found = new ArrayList<>(crossings(garden));
            found.addAll(read(garden));
            return found;
        });
    }

    /** What keeps a garden from being stored: sides that cross, too few levels, paths that leave the yard. */
    public static List<Finding> stops(Garden garden) {
        List<Finding> found = new ArrayList<>(crossings(garden));
        boolean crossed = !found.isEmpty();
        found.addAll(read(garden));
        if (!crossed && !garden.paths().isEmpty()) found.addAll(PathChecks.of(new Site(garden), garden.paths()));
        found.removeIf(finding -> finding.weight() != Finding.Weight.STOP);
        return found;
    }

    private static List<Finding> read(Garden garden) {
        List<Finding> found = new ArrayList<>();
        garden.ground().survey().ifPresent(survey -> found.addAll(SurveyedYard.of(survey).findings()));
        found.addAll(Fall.findings(garden.ground().levels()));
        return found;
    }

    /** Empty where an outline crosses itself. */
    static Optional<GroundSheet> sheet(Garden garden, Function<WallReach, WallReach.Worst> reaches) {
        if (!crossings(garden).isEmpty()) return Optional.empty();
        Ground ground = garden.ground();
        List<Finding> found = new ArrayList<>(read(garden));
        Site site = new Site(garden);
        SurfaceChecks surfaces = new SurfaceChecks(site, ground.surfaces());
        Optional<Fall> fall = Fall.of(ground.levels());
        List<BedGround> beds = new ArrayList<>();
        for (Lot lot : site.lots()) {
            site.yard().ifPresent(yard -> overTheEdge(site, lot, yard).ifPresent(found::add));
            found.addAll(onOtherBeds(site, lot));
            site.zonesNear(lot.area(), 1).forEach(zone -> inZone(site, lot, zone).ifPresent(found::add));
            found.addAll(DampCourse.of(site, lot, fall));
            Map<SurfaceKind, Double> areas = surfaces.areasUnder(lot);
            found.addAll(surfaces.under(lot, areas));
            BedGround bed = BedGround.of(lot, areas, fall, ground.preparation(), garden.terms().loads());
            found.addAll(bed.findings());
            beds.add(bed);
        }
        found.addAll(surfaces.ofTheYard());
        found.addAll(PathChecks.of(site, garden.paths()));
        Rims.Outcome rims = Rims.of(garden, fall);
        found.addAll(rims.findings());
        AccessSheet access = Access.of(site, garden.paths(), fall, ground.access(), reaches);
        found.addAll(access.findings());
        return Optional.of(new GroundSheet(
                ground.survey().map(SurveyedYard::of),
                fall,
                GroundSheet.quantities(surfaces, fall, ground),
                beds,
                PathWork.of(garden.paths(), garden.beds(), ground.keepClear()),
                Nearness.of(site),
                access,
                rims.beds(),
                found));
    }

    private static Optional<Finding> overTheEdge(Site site, Lot lot, Geometry yard) {
        if (site.insideYard(lot.core())) return Optional.empty();
        Outline outline = lot.bed().inYard();
        double most = 0;
        String atCorner = "";
        String wall = "";
        for (int i = 0; i < outline.sides(); i++) {
            double over = Shapes.FACTORY
                    .createPoint(Shapes.coordinate(outline.corner(i)))
                    .distance(yard);
            if (over > most + 1e-9) {
                most = over;
                atCorner = String.valueOf(i + 1);
            }
        }
        if (most <= Shapes.TOUCH_MM) {
            // No corner is out: a corner of the yard cuts into a wall.
            for (Coordinate corner : yard.getCoordinates()) {
                Geometry point = Shapes.FACTORY.createPoint(corner);
                double into = lot.area().covers(point) ? lot.area().getBoundary().distance(point) : 0;
                most = Math.max(most, into);
            }
            double longest = -1;
            for (int i = 0; i < outline.sides(); i++) {
                double out = Jts.less(Jts.line(List.of(outline.corner(i), outline.corner(i + 1))), yard).getLength();
                if (out > longest) {
                    longest = out;
                    wall = Bed.wallLetter(i);
                    atCorner = "";
                }
            }
        }
        List<WayOut> ways = site.waysOut(lot, yard, moved -> site.insideYard(moved.core()));
        return Optional.of(Finding.of(FindingKind.BED_OVER_EDGE, Place.bed(lot.bed().id()))
                .with(wall.isEmpty() ? "at-corner" : "along-wall", Fact.name(wall.isEmpty() ? atCorner : wall)).by(Fact.mm(most)).ways(ways));
    }

    private static List<Finding> onOtherBeds(Site site, Lot lot) {
        List<Lot> under = site.near(lot.area(), 0).stream()
                .filter(other -> other.index() < lot.index() && lot.core().intersects(other.area()))
                .toList();
        List<Finding> found = new ArrayList<>();
        if (under.size() > MOST_TOLD_APART) {
            double area = Jts.common(
                            lot.area(),
                            Shapes.union(under.stream().map(Lot::area).toList()))
                    .getArea();
            found.add(Finding.of(FindingKind.BED_ON_BEDS, Place.bed(lot.bed().id()))
                    .with("others", Fact.names(under.stream().map(other -> other.bed().id()).toList())).by(Fact.m2(area / 1e6))
                    .way(WayKind.MOVE_TO_FREE_PLACE));
            return found;
        }
        for (Lot other : under) {
            double area = Jts.common(lot.area(), other.area()).getArea();
            List<WayOut> ways = site.waysOut(lot, other.area(), moved -> !moved.core().intersects(other.area()));
            found.add(Finding.of(FindingKind.BED_ON_BEDS, Place.bed(lot.bed().id()))
                    .with("others", Fact.names(List.of(other.bed().id()))).by(Fact.m2(area / 1e6)).ways(ways));
        }
        return found;
    }

    private static Optional<Finding> inZone(Site site, Lot lot, Zone zone) {
        if (!zone.blocks(lot)) return Optional.empty();
        List<WayOut> ways = site.waysOut(lot, zone.keptClear(), moved -> !zone.blocks(moved));
        double shortBy = zone.shortByMm(lot);
        return Optional.of(zone.fact(lot, shortBy).ways(ways));
    }

    /** Outlines whose sides cross cannot be measured. */
    private static List<Finding> crossings(Garden garden) {
        List<Finding> found = new ArrayList<>();
        garden.ground().outline().forEach(outline -> crossing(Place.of(What.YARD), outline).ifPresent(found::add));
        for (Ground.Surface surface : garden.ground().surfaces()) {
            crossing(Place.of(What.SURFACE, surface.kind().code()), surface.outline()).ifPresent(found::add);
        }
        for (Ground.KeepClear kept : garden.ground().keepClear()) {
            if (kept.leafMm() == 0 && kept.shape().size() > 2) {
                crossing(Place.of(What.KEEP_CLEAR, kept.kind().code()), new Outline(kept.shape())).ifPresent(found::add);
            }
        }
        for (Bed bed : garden.beds()) crossing(Place.bed(bed.id()), bed.inYard()).ifPresent(found::add);
        return found;
    }

    private static Optional<Finding> crossing(Place where, Outline outline) {
        IsValidOp check = new IsValidOp(Jts.area(outline.corners()));
        if (check.isValid()) return Optional.empty();
        Coordinate place = check.getValidationError().getCoordinate();
        int corner = nearestCorner(outline, new Point(place.x, place.y));
        return Optional.of(Finding.of(FindingKind.OUTLINE_CROSSES, where)
                .with("at", Fact.spot(place.x, place.y)).with("corner-number", Fact.name(String.valueOf(corner)))
                .way(WayKind.CHECK_CORNER, Fact.name(String.valueOf(corner))).way(WayKind.CORNERS_IN_ORDER));
    }

    private static int nearestCorner(Outline outline, Point place) {
        int nearest = 0;
        for (int i = 1; i < outline.sides(); i++) {
            if (outline.corner(i).distanceMm(place) < outline.corner(nearest).distanceMm(place)) nearest = i;
        }
        return nearest + 1;
    }
}
