package lapyard.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.WayKind;
import lapyard.working.Whole;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.operation.distance.DistanceOp;

/** Soil kept down where a bed stands against a wall with a damp-proof course. */
final class DampCourse {
    /** Soil stays at least this far below the course; common practice, no source. */
    static final double BELOW_MM = 150;

    /** Further off, the wall stays dry behind the bed; common practice, no source. */
    static final double AGAINST_MM = 75;

    private DampCourse() {}

    static List<Finding> of(Site site, Lot lot, Optional<Fall> fall) {
        List<Finding> found = new ArrayList<>();
        for (Zone zone : site.zonesNear(lot.area(), AGAINST_MM)) {
            if (zone.kept().dampCourseMm() > 0 && zone.shape().isWithinDistance(lot.area(), AGAINST_MM)) {
                Bed bed = lot.bed();
                // The soil is level; the ground at the wall may lie above the bed's lowest corner.
                Coordinate at = new DistanceOp(lot.area(), zone.shape()).nearestPoints()[0];
                double above = fall.map(plane -> plane.lowestMm(bed) - plane.dropMm(new Point(at.x, at.y))).orElse(0.0);
                double soil = bed.heightMm() - bed.planting().fill().freeboardMm() - above;
                double over = soil - (zone.kept().dampCourseMm() - BELOW_MM);
                if (over > Shapes.TOUCH_MM) {
                    int courses = (int) Whole.up(over / bed.section().heightMm());
                    Finding told = Finding.of(FindingKind.SOIL_OVER_DAMP_COURSE, Place.bed(bed.id())).way(WayKind.MOVE_OFF_WALL, Fact.mm(AGAINST_MM));
                    if (courses < bed.courses()) told = told.way(WayKind.TAKE_OFF_COURSES, Fact.count(courses, "courses"));
                    found.add(told
                            .with("what", Fact.name(zone.name())).with("soil", Fact.mm(soil)).with("below", Fact.mm(BELOW_MM)).with("course", Fact.mm(zone.kept().dampCourseMm()))
                            .by(Fact.mm(over)));
                }
            }
        }
        return found;
    }
}
