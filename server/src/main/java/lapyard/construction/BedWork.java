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
 * @param quantities timber.length, timber.volume, timber.mass, ends.area, notches, notches.area (where there are
 *     notches), lifts.two-people, screws and pilots (left out where a screw would break out), seam.plates and
 *     seam.screws (where there are seams), base.bearers and base.slats (on a slatted base), liner (one a piece),
 *     brackets, ties.course and ties.cross where asked for, liner.area, liner.slits, staples, finish.area, finish.litres, seal.litres, inner.area
 * @param findings   about this bed alone
 * @param leftOut    whether something could not be made and was left out
 */
public record BedWork(
        Bed bed, Frame frame, Bottom bottom, List<LinerPiece> liner, List<Quantity> quantities, List<Finding> findings, boolean leftOut) {
    public BedWork {
        liner = List.copyOf(liner);
        quantities = List.copyOf(quantities);
        findings = List.copyOf(findings);
    }

    /**
     * The walls as stacked.
     *
     * @param inner     inner faces of the walls, own frame
     * @param screws    places of the corner screws; none where they would break out
     * @param crossTies ties from wall to wall; none where none are asked for
     */
    public record Frame(
            Outline inner,
            List<Course> courses,
            List<Seam> seams,
            List<Notch> notches,
            List<CornerScrew> screws,
            List<CrossTie> crossTies) {
        public Frame {
            courses = List.copyOf(courses);
            seams = List.copyOf(seams);
            notches = List.copyOf(notches);
            screws = List.copyOf(screws);
            crossTies = List.copyOf(crossTies);
        }
    }

    /**
     * What lies under the soil.
     *
     * @param floor  the inner outline in the fewest rectangles, R1, R2 ...
     * @param strips bearers and beams to cut from ripped strips
     * @param slats  cut list of the slats
     * @param bays   the slatted floor, rectangle by rectangle; empty for an open base
     */
    public record Bottom(List<Rectangle> floor, List<Strip> strips, List<SlatCut> slats, List<FloorBay> bays) {
        public Bottom {
            floor = List.copyOf(floor);
            strips = List.copyOf(strips);
            slats = List.copyOf(slats);
            bays = List.copyOf(bays);
        }
    }

    /** The same bed with its liner cut another way. */
    public BedWork withLiner(List<LinerPiece> pieces, List<Quantity> itsQuantities, List<Finding> itsFindings) {
        return new BedWork(bed, frame, bottom, pieces, itsQuantities, itsFindings, leftOut);
    }

    /** Of one timber as it is lifted. */
    public double massKg(Piece piece) {
        return bed.section().massKg(piece.meanMm());
    }

    public List<Piece> pieces() {
        return frame.courses().stream().flatMap(course -> course.pieces().stream()).toList();
    }
}
