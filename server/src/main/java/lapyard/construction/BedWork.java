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
 *     liner.area, liner.slits, staples, finish.area, finish.litres, inner.area
 * @param findings   about this bed alone
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
        List<Finding> findings) {
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
    }

    public List<Piece> pieces() {
        return courses.stream().flatMap(course -> course.pieces().stream()).toList();
    }
}
