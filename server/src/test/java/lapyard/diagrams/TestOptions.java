package lapyard.diagrams;

import java.util.Optional;
import java.util.Set;
import lapyard.drawing.Paper;
import lapyard.drawing.Scale;

/** How tests ask for sheets, one thing after the other. */
final class TestOptions {
    private TestOptions() {}

    static BenchOptions mono(BenchOptions of) {
        return new BenchOptions(of.garden(), of.imperial(), of.paper(), true, of.stamp());
    }

    static BenchOptions stamped(BenchOptions of, String revision, String date) {
        return new BenchOptions(of.garden(), of.imperial(), of.paper(), of.mono(), new Stamp(revision, date, of.stamp().stale()));
    }

    static BenchOptions stale(BenchOptions of, String why) {
        return new BenchOptions(of.garden(), of.imperial(), of.paper(), of.mono(), new Stamp(of.stamp().revision(), of.stamp().date(), Optional.of(why)));
    }

    /** A plan at the largest scale that fits the sheet, with the usual layers. */
    static PlanOptions plan(BenchOptions sheet) {
        return new PlanOptions(sheet, Optional.empty(), PlanLayer.USUAL, false);
    }

    /** On the usual paper of several beds. */
    static PlanOptions plan(boolean imperial) {
        return plan(BenchOptions.usual("", imperial).on(PlanOptions.paper(imperial)));
    }

    static PlanOptions on(PlanOptions of, Paper paper) {
        return new PlanOptions(of.sheet().on(paper), of.scale(), of.layers(), of.split());
    }

    static PlanOptions at(PlanOptions of, int scale) {
        return new PlanOptions(of.sheet(), Optional.of(new Scale(scale)), of.layers(), of.split());
    }

    static PlanOptions showing(PlanOptions of, Set<PlanLayer> layers) {
        return new PlanOptions(of.sheet(), of.scale(), layers, of.split());
    }

    static PlanOptions split(PlanOptions of) {
        return new PlanOptions(of.sheet(), of.scale(), of.layers(), true);
    }
}
