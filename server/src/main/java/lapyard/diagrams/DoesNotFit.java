package lapyard.diagrams;

import lapyard.drawing.Paper;
import lapyard.drawing.Scale;

/** A garden that is too large for a sheet at the scale asked for. */
public final class DoesNotFit extends IllegalArgumentException {
    private final Scale nearest;

    /**
     * @param missingMm by how much the drawing is too large for the sheet, on paper
     * @param nearest   the largest usual scale that fits the same paper
     */
    DoesNotFit(Paper paper, Scale asked, double missingMm, Scale nearest) {
        super((long) Math.ceil(missingMm) + " mm too large for " + paper.label() + " at " + asked + ". Use " + nearest
                + ", or larger paper.");
        this.nearest = nearest;
    }

    /** The largest usual scale that fits the same paper. */
    public Scale nearest() {
        return nearest;
    }
}
