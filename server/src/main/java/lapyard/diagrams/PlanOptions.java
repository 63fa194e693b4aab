package lapyard.diagrams;

import java.util.Optional;
import lapyard.drawing.Paper;
import lapyard.drawing.Scale;

/**
 * How a plan is to be drawn.
 *
 * @param paper    the sheet; it is laid whichever way gives the larger scale
 * @param scale    empty for the largest usual scale that fits
 * @param mono     black on white, without fills
 * @param revision as stamped, empty for none
 * @param date     as it shall be read, empty for none
 */
public record PlanOptions(Paper paper, Optional<Scale> scale, boolean mono, String revision, String date) {

    /** In colour at the largest scale that fits A3, or Tabloid for a garden in feet and inches. */
    public static PlanOptions usual(boolean imperial) {
        return new PlanOptions(imperial ? Paper.TABLOID : Paper.A3, Optional.empty(), false, "", "");
    }

    public PlanOptions on(Paper other) {
        return new PlanOptions(other, scale, mono, revision, date);
    }

    public PlanOptions at(Scale other) {
        return new PlanOptions(paper, Optional.of(other), mono, revision, date);
    }

    public PlanOptions inMono() {
        return new PlanOptions(paper, scale, true, revision, date);
    }

    public PlanOptions stamped(String newRevision, String newDate) {
        return new PlanOptions(paper, scale, mono, newRevision, newDate);
    }
}
