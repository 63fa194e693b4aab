package lapyard.diagrams;

import java.util.Optional;
import java.util.Set;
import lapyard.drawing.Paper;
import lapyard.drawing.Scale;

/**
 * How a plan is to be drawn.
 *
 * @param sheet  as other sheets; it is laid whichever way gives the larger scale
 * @param scale  empty for the largest usual scale that fits
 * @param layers what is shown
 * @param split  whether a plan too large for one sheet goes on several with match lines; else it is refused
 */
public record PlanOptions(BenchOptions sheet, Optional<Scale> scale, Set<PlanLayer> layers, boolean split) {
    /** The paper of a plan of several beds. */
    public static Paper paper(boolean imperial) {
        return imperial ? Paper.TABLOID : Paper.A3;
    }

    /** Whether it is worked by: a plan without dimensions shows the garden as it will look. */
    boolean working() {
        return shows(PlanLayer.DIMENSIONS);
    }

    boolean shows(PlanLayer layer) {
        return layers.contains(layer);
    }
}
