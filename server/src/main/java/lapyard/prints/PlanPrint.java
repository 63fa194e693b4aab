package lapyard.prints;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.diagrams.BenchOptions;
import lapyard.diagrams.PathCover;
import lapyard.diagrams.PlanDrawing;
import lapyard.diagrams.PlanLayer;
import lapyard.diagrams.PlanOptions;
import lapyard.drawing.Page;
import lapyard.drawing.Scale;
import lapyard.job.JobSheet;
import lapyard.plan.GardenPath;

/** The plan of a job sheet as a file. */
final class PlanPrint {
    private PlanPrint() {}

    /** @throws lapyard.working.BrokenRule for a paper, scale or layer that is not known
     * @throws lapyard.plan.CannotAnswer for a garden that does not fit */
    static List<Page> pages(JobSheet sheet, PrintAsk ask) {
        boolean imperial = sheet.garden().imperial();
        BenchOptions bench = ask.bench(sheet); // which lies on the usual paper of one bed
        boolean alone = ask.scale().isEmpty() && !ask.split() && sheet.beds().size() == 1;
        PlanOptions options = PlanOptions.of(ask.paper().isPresent() || alone ? bench : bench.on(PlanOptions.paper(imperial)));
        if (ask.scale().isPresent()) options = options.at(new Scale(ask.scale().getAsInt()));
        if (!ask.layers().isEmpty()) options = options.showing(PlanLayer.named(ask.layers()));
        if (ask.split()) options = options.onSeveralSheets();
        return PlanDrawing.pages(
                sheet.garden(), sheet.works(), covers(sheet), sheet.snags(), asked(sheet, options),
                options);
    }

    /** What the paths cover, with the material that is seen. */
    static List<PathCover> covers(JobSheet sheet) {
        List<PathCover> covers = new ArrayList<>();
        for (JobSheet.PathSheet one : sheet.paths()) {
            GardenPath path = one.path();
            // the top layer is what is seen
            String material = path.layers().isEmpty() ? "" : path.layers().get(path.layers().size() - 1).item();
            covers.add(new PathCover(path.id(), path.name(), one.cover(), material));
        }
        return covers;
    }

    /** The garden as it will look: what is worked by, such as levels, keep-clear zones and snags, is left off. */
    static List<Page> client(JobSheet sheet, PrintAsk ask) {
        return pages(sheet, ask.showing(PlanDrawing.CLIENT.stream().map(PlanLayer::label).sorted().toList()));
    }

    /** @throws CannotPrint where a layer is asked for that the garden says too little for */
    private static PlanDrawing.PegsAndSun asked(JobSheet sheet, PlanOptions options) {
        boolean pegs = options.layers().contains(PlanLayer.PEGS);
        boolean sun = options.layers().contains(PlanLayer.SUN);
        return new PlanDrawing.PegsAndSun(
                pegs ? Optional.of(GroundPrint.out(sheet)) : Optional.empty(), sun ? Optional.of(GroundPrint.sun(sheet)) : Optional.empty());
    }
}
