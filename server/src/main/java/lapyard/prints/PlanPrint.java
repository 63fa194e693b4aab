package lapyard.prints;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.diagrams.AccessSheets;
import lapyard.diagrams.BenchOptions;
import lapyard.diagrams.PathCover;
import lapyard.diagrams.PlanDrawing;
import lapyard.diagrams.PlanLayer;
import lapyard.diagrams.PlanOptions;
import lapyard.diagrams.SettingOutSheets;
import lapyard.diagrams.ShadeSheet;
import lapyard.drawing.Page;
import lapyard.drawing.Scale;
import lapyard.ground.SettingOut;
import lapyard.ground.SunHours;
import lapyard.job.JobSheet;
import lapyard.plan.FindingKind;
import lapyard.plan.GardenPath;

/** The plan of a job sheet, and the sheets about its ground. */
final class PlanPrint {
    private PlanPrint() {}

    /** @throws lapyard.working.BrokenRule for a paper, scale or layer that is not known
     * @throws lapyard.plan.CannotAnswer for a garden that does not fit */
    static List<Page> pages(JobSheet sheet, PrintAsk ask) {
        boolean imperial = sheet.garden().imperial();
        BenchOptions bench = ask.bench(sheet); // which lies on the usual paper of one bed
        boolean alone = ask.plan().scale().isEmpty() && !ask.plan().split() && sheet.beds().size() == 1;
        PlanOptions options = new PlanOptions(
                ask.paper().isPresent() || alone ? bench : bench.on(PlanOptions.paper(imperial)), ask.plan().scale().isPresent() ? Optional.of(new Scale(ask.plan().scale().getAsInt())) : Optional.empty(),
                ask.plan().layers().isEmpty() ? PlanLayer.USUAL : PlanLayer.named(ask.plan().layers()), ask.plan().split());
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
        return new PlanDrawing.PegsAndSun(
                options.layers().contains(PlanLayer.PEGS) ? Optional.of(out(sheet)) : Optional.empty(),
                options.layers().contains(PlanLayer.SUN) ? Optional.of(sun(sheet)) : Optional.empty());
    }

    /** @throws CannotPrint where there is no baseline to measure from */
    private static SettingOut out(JobSheet sheet) {
        SettingOut out = SettingOut.of(sheet.garden(), sheet.ground().fall());
        if (out.baseline().isEmpty()) throw new CannotPrint(out.findings());
        return out;
    }

    /** @throws CannotPrint where no place and day are given */
    private static SunHours sun(JobSheet sheet) {
        return SunHours.of(sheet.garden(), sheet.ground().fall()).orElseThrow(() -> CannotPrint.of(FindingKind.SUN_NO_PLACE));
    }

    static List<Page> settingOut(JobSheet sheet, PrintAsk ask) {
        return SettingOutSheets.pages(sheet.garden(), out(sheet), ask.bench(sheet));
    }

    static List<Page> access(JobSheet sheet, PrintAsk ask) {
        if (!sheet.ground().access().standard().named()) {
            throw CannotPrint.of(FindingKind.ACCESS_NO_STANDARD);
        }
        return AccessSheets.pages(sheet.ground().access(), ask.bench(sheet));
    }

    static List<Page> shade(JobSheet sheet, PrintAsk ask) {
        return List.of(ShadeSheet.page(sheet.garden(), sun(sheet), ask.bench(sheet)));
    }
}
