package lapyard.construction;

import java.util.List;
import lapyard.geometry.Outline;
import lapyard.geometry.Rectangle;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.working.Quantity;

/**
 * All that is built of one bed, before anything is bought.
 *
 * @param inner      inner faces of the walls, own frame
 * @param floor      the inner outline in the fewest rectangles, R1, R2 ...
 * @param strips     bearers and beams to cut from ripped strips
 * @param slats      cut list of the slats
 * @param quantities timber.length, timber.volume, timber.mass, ends.area, notches, notches.area (where there are
 *     notches), lifts.two-people, screws and pilots (left out where a screw would break out), seam.plates and
 *     seam.screws (where there are seams), base.bearers and base.slats (on a slatted base), liner (one a piece),
 *     brackets, ties.course and ties.cross where asked for, liner.area, liner.slits, staples, finish.area, finish.litres, seal.litres, inner.area
 * @param findings   about this bed alone
 * @param screws     places of the corner screws; none where they would break out
 * @param crossTies  ties from wall to wall; none where none are asked for
 * @param bays       the slatted floor, rectangle by rectangle; empty for an open base
 * @param leftOut    whether something could not be made and was left out
 */
public record BedWork(
        Bed bed,
        Outline inner,
        List<Rectangle> floor,
        List<Course> courses,
        List<Seam> seams,
        List<Notch> notches,
        List<Strip> strips,
        List<SlatCut> slats,
        List<LinerPiece> liner,
        List<Quantity> quantities,
        List<Finding> findings,
        List<CornerScrew> screws,
        List<CrossTie> crossTies,
        List<FloorBay> bays,
        boolean leftOut) {
    public BedWork {
        floor = List.copyOf(floor);
        courses = List.copyOf(courses);
        seams = List.copyOf(seams);
        notches = List.copyOf(notches);
        strips = List.copyOf(strips);
        slats = List.copyOf(slats);
        liner = List.copyOf(liner);
        quantities = List.copyOf(quantities);
        findings = List.copyOf(findings);
        screws = List.copyOf(screws);
        crossTies = List.copyOf(crossTies);
        bays = List.copyOf(bays);
    }

    /** Of one timber as it is lifted. */
    public double massKg(Piece piece) {
        return Timber.massKg(bed, piece.meanMm());
    }

    public List<Piece> pieces() {
        return courses.stream().flatMap(course -> course.pieces().stream()).toList();
    }
}
