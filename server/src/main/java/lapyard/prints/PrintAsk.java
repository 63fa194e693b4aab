package lapyard.prints;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import lapyard.diagrams.BenchOptions;
import lapyard.diagrams.LabelGrid;
import lapyard.diagrams.ListSheets;
import lapyard.diagrams.PlanLayer;
import lapyard.diagrams.Stamp;
import lapyard.drawing.Paper;
import lapyard.drawing.Scale;
import lapyard.job.JobSheet;
import lapyard.working.BrokenRule;

/**
 * How sheets are to be printed. What a kind of sheet has no use for it passes over.
 *
 * @param paper  a paper's name, not checked yet; empty for what is usual for the kind of sheet
 * @param mono   black on white, without fills
 * @param labels columns x rows of a sheet of labels with its margins, not checked yet; empty for what is usual
 * @param photos of the snag list
 */
public record PrintAsk(Optional<String> paper, boolean mono, OfPlan plan, OfSaw saw, Optional<String> labels, Stamp stamp, PhotosAtHand photos) {
    /**
     * @param scale  50 for 1:50; empty for the largest that fits
     * @param layers names of the layers; none for the usual ones
     * @param split  whether a plan too large for its paper goes on several sheets; else it is refused
     */
    public record OfPlan(OptionalInt scale, List<String> layers, boolean split) {
        public static final OfPlan USUAL = new OfPlan(OptionalInt.empty(), List.of(), false);
    }

    /**
     * @param longestMm       the longest part that can be carried in; empty where the merchant is asked for no cuts
     * @param minutesACut     empty for what is usual
     * @param minutesASetting empty for what is usual
     */
    public record OfSaw(OptionalDouble longestMm, OptionalDouble minutesACut, OptionalDouble minutesASetting) {
        public static final OfSaw USUAL = new OfSaw(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
    }

    /** No board is longer. */
    public static final int LONGEST_MM = 100_000;
    public static final int DAY_MINUTES = 24 * 60;

    /** All as usual, in colour, with this in the heading. */
    public static PrintAsk usual(String revision, String date) {
        return new PrintAsk(
                Optional.empty(), false, OfPlan.USUAL, OfSaw.USUAL, Optional.empty(), new Stamp(revision, date, Optional.empty()), PhotosAtHand.NONE);
    }

    /** On a paper, empty for what is usual. */
    public PrintAsk onPaper(Optional<String> name) {
        return new PrintAsk(name, mono, plan, saw, labels, stamp, photos);
    }

    /** The plan with these layers alone. */
    public PrintAsk showing(List<String> names) {
        return new PrintAsk(paper, mono, new OfPlan(plan.scale(), names, plan.split()), saw, labels, stamp, photos);
    }

    public PrintAsk showing(PhotosAtHand kept) {
        return new PrintAsk(paper, mono, plan, saw, labels, stamp, kept);
    }

    /** Sheets of words and tables about a garden. */
    ListSheets list(JobSheet sheet, String caution, String kind, String about) {
        return new ListSheets(caution, kind, about, bench(sheet));
    }

    /**
     * Looks at what no garden could be printed with.
     *
     * @throws BrokenRule                for a paper, scale or layer that is not known, or a length or time that nobody has
     * @throws lapyard.plan.CannotAnswer for labels that no sheet has
     */
    public void check() {
        Paper sheet = paper.map(Paper::named).orElse(Paper.A4);
        if (plan.scale().isPresent()) new Scale(plan.scale().getAsInt());
        PlanLayer.named(plan.layers());
        labels.ifPresent(words -> LabelGrid.read(words, sheet));
        saw.longestMm().ifPresent(mm -> BrokenRule.between("sheets", "longest", mm, 1, LONGEST_MM, "mm"));
        saw.minutesACut().ifPresent(minutes -> BrokenRule.between("sheets", "minutes a cut", minutes, 0, DAY_MINUTES, "minutes"));
        saw.minutesASetting().ifPresent(minutes -> BrokenRule.between("sheets", "minutes a setting", minutes, 0, DAY_MINUTES, "minutes"));
    }

    /**
     * For sheets on the bench.
     *
     * @throws lapyard.working.BrokenRule for a paper that is not known
     */
    BenchOptions bench(JobSheet sheet) {
        BenchOptions usual = BenchOptions.usual(sheet.garden().name(), sheet.garden().imperial());
        return new BenchOptions(usual.garden(), usual.imperial(), paper.map(Paper::named).orElse(usual.paper()), mono, stamp);
    }
}
