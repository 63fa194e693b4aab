package lapyard.diagrams;

import lapyard.drawing.Paper;
import lapyard.drawing.Scale;
import lapyard.plan.CannotAnswer;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.WayKind;

/** A garden that is too large for a sheet at the scale asked for. */
public final class DoesNotFit extends CannotAnswer {
    /**
     * @param missingMm by how much the drawing is too large for the sheet, on paper
     * @param nearest   the largest usual scale that fits the same paper
     */
    DoesNotFit(Paper paper, Scale asked, double missingMm, Scale nearest) {
        super(Finding.of(FindingKind.PLAN_NOT_ON_SHEET, Place.field("plan")).with("scale", Fact.name(asked.toString()))
                .with("paper", Fact.name(paper.label())).by(Fact.mm(Math.ceil(missingMm)))
                .way(WayKind.SCALE_OF, Fact.name(nearest.toString())).way(WayKind.LARGER_PAPER));
    }
}
