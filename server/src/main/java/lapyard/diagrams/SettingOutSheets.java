package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import lapyard.drawing.Page;
import lapyard.ground.Pegs;
import lapyard.ground.SettingOut;
import lapyard.plan.Garden;

/** The sheets by which beds are pegged out: the yard to scale with its baseline, then bed by bed. */
public final class SettingOutSheets {
    private SettingOutSheets() {}

    private static final String CAUTION =
            "Find buried pipes and cables before a peg is driven. Two people to a tape, held level. Cap the pegs: they trip and they stab.";

    private static final double TEXT = 4.2;
    private static final double APART = 7;

    /**
     * @param out with a baseline
     * @return one page for the yard, then the beds, as many to a page as fit
     */
    public static List<Page> pages(Garden garden, SettingOut out, BenchOptions options) {
        // the same on sheets with smaller type; places for the names of many beds take long to find
        BenchSheet.Draft plan = new SettingOutPlan(garden, out, new BenchSheet(CAUTION, options)).draft();
        return BenchSheet.pages(CAUTION, options, sheet -> {
            List<BenchSheet.Draft> drafts = new ArrayList<>(List.of(plan));
            Flow flow = new Flow(
                    sheet,
                    "Setting-out, bed by bed",
                    "along and off the baseline, tapes from both its ends; all within " + sheet.written(Pegs.TOLERANCE_MM));
            if (garden.ground().baseline().isEmpty()) {
                flow.words(List.of("No baseline was chosen: all is measured from the front of the yard, or from its longest side where the front is a corner."), TEXT, false);
            }
            flow.words(List.of("Tape laid once along the baseline: " + String.join(", ", running(out).stream().map(sheet::written).toList()) + "."), TEXT, true);
            out.square()
                    .ifPresent(square -> flow.words(
                            List.of("Square to the baseline at its start: " + sheet.written(square.alongMm()) + " along, "
                                    + sheet.written(square.otherMm()) + " off, " + sheet.written(square.acrossMm())
                                    + " across from mark to mark."),
                            TEXT,
                            false));
            double wide = flow.columnWidth(2, APART);
            List<Flow.Block> beds = new ArrayList<>();
            List<SettingOutBed> large = new ArrayList<>();
            for (SettingOut.BedPegs pegs : out.beds()) {
                SettingOutBed bed = new SettingOutBed(pegs, sheet);
                bed.block(flow, wide).ifPresentOrElse(beds::add, () -> large.add(bed));
            }
            flow.columns(2, APART, beds);
            large.forEach(bed -> bed.table(flow));
            drafts.addAll(flow.drafts());
            return drafts;
        });
    }

    /** Every distance along the baseline once, shortest first. */
    static TreeSet<Double> running(SettingOut out) {
        TreeSet<Double> marks = new TreeSet<>();
        for (SettingOut.BedPegs bed : out.beds()) {
            for (double mark : bed.pegs().runningMm()) {
                Double before = marks.floor(mark + 0.5);
                if (before == null || mark - before > 0.5) {
                    marks.add(mark);
                }
            }
        }
        return marks;
    }
}
