package lapyard.job;

import java.util.ArrayList;
import java.util.List;
import lapyard.catalogue.Section;
import lapyard.job.Chalking.Quality;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.RackBoard;
import lapyard.plan.WayKind;

/** What boards on hand measure and weigh, beside what their section says. */
final class Measured {
    /** Boards of one course may differ by so much in thickness and height. Common practice, no source. */
    static final double TOLERANCE_MM = 2;

    private Measured() {}

    /** Whether a board may lie in a course with its section's other boards. */
    static boolean fits(RackBoard board, Section section) {
        return off(board.thicknessMm(), section.thicknessMm()) <= TOLERANCE_MM + 1e-9
                && off(board.heightMm(), section.heightMm()) <= TOLERANCE_MM + 1e-9;
    }

    private static double off(double measuredMm, double sectionMm) {
        return measuredMm == 0 ? 0 : Math.abs(measuredMm - sectionMm);
    }

    static List<Finding> findings(Garden garden, Section section) {
        List<Finding> found = new ArrayList<>();
        for (RackBoard board : garden.goods().rack()) {
            if (!board.section().equals(section.id()) || fits(board, section)) continue;
            boolean high = off(board.heightMm(), section.heightMm()) > TOLERANCE_MM;
            double measured = high ? board.heightMm() : board.thicknessMm();
            double meant = high ? section.heightMm() : section.thicknessMm();
            double thick = board.thicknessMm() == 0 ? section.thicknessMm() : board.thicknessMm();
            double tall = board.heightMm() == 0 ? section.heightMm() : board.heightMm();
            found.add(Finding.of(FindingKind.BOARD_OFF_SIZE, Place.of(What.BOARD, board.id()))
                    .with("section", Fact.name(section.id())).with(high ? "high" : "thick", Fact.mm(measured)).with("meant", Fact.mm(meant))
                    .with("allowed", Fact.mm(TOLERANCE_MM)).by(Fact.mm(Math.abs(measured - meant)))
                    .way(WayKind.OWN_SECTION, Fact.size(thick, tall)).way(WayKind.MEASURE_AGAIN));
        }
        return found;
    }

    /** The mass of a stock length or of a run of a board on hand; a board that was not weighed takes the density of its section. */
    static Quality quality(Garden garden, Section section, String stock) {
        for (RackBoard board : garden.goods().rack()) {
            if (!board.section().equals(section.id())) continue;
            for (RackBoard.Span run : board.usableRuns(garden.goods().saw().keepOffcutMm())) {
                if (PooledTimber.runId(board, run).equals(stock)) {
                    double volumeM3 = board.lengthMm() * section.thicknessMm() * section.heightMm() / 1e9;
                    double density = board.weightKg() > 0 ? board.weightKg() / volumeM3 : section.densityKgM3();
                    return new Quality(density, board.goodFaces());
                }
            }
        }
        return new Quality(section.densityKgM3(), section.goodFaces());
    }
}
