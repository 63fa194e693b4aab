package lapyard.diagrams;

import java.util.Optional;
import java.util.Set;
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
 * @param layers   what is shown
 * @param split    whether a plan too large for one sheet goes on several with match lines; else it is refused
 * @param stale    why this plan is not to be worked by; empty where it is
 */
public record PlanOptions(
        Paper paper,
        Optional<Scale> scale,
        boolean mono,
        String revision,
        String date,
        Set<PlanLayer> layers,
        boolean split,
        Optional<String> stale) {

    public PlanOptions {
        layers = Set.copyOf(layers);
    }

    /** In colour at the largest scale that fits A3, or Tabloid for a garden in feet and inches. */
    public static PlanOptions usual(boolean imperial) {
        return new PlanOptions(
                imperial ? Paper.TABLOID : Paper.A3, Optional.empty(), false, "", "", PlanLayer.USUAL, false, Optional.empty());
    }

    public PlanOptions on(Paper other) {
        return new PlanOptions(other, scale, mono, revision, date, layers, split, stale);
    }

    public PlanOptions at(Scale other) {
        return new PlanOptions(paper, Optional.of(other), mono, revision, date, layers, split, stale);
    }

    public PlanOptions inMono() {
        return new PlanOptions(paper, scale, true, revision, date, layers, split, stale);
    }

    public PlanOptions stamped(String newRevision, String newDate) {
        return new PlanOptions(paper, scale, mono, newRevision, newDate, layers, split, stale);
    }

    public PlanOptions showing(Set<PlanLayer> others) {
        return new PlanOptions(paper, scale, mono, revision, date, others, split, stale);
    }

    public PlanOptions onSeveralSheets() {
        return new PlanOptions(paper, scale, mono, revision, date, layers, true, stale);
    }

    public PlanOptions stale(String why) {
        return new PlanOptions(paper, scale, mono, revision, date, layers, split, Optional.of(why));
    }

    /** Whether it is worked by: a plan without dimensions shows the garden as it will look. */
    boolean working() {
        return shows(PlanLayer.DIMENSIONS);
    }

    boolean shows(PlanLayer layer) {
        return layers.contains(layer);
    }
}
