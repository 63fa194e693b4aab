package lapyard.prints;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import lapyard.diagrams.PathCover;
import lapyard.diagrams.PlanDrawing;
import lapyard.diagrams.PlanOptions;
import lapyard.drawing.Page;
import lapyard.drawing.Paper;
import lapyard.drawing.PdfWriter;
import lapyard.drawing.PngWriter;
import lapyard.drawing.Scale;
import lapyard.drawing.SvgWriter;
import lapyard.job.JobSheet;
import lapyard.plan.GardenPath;

/** The plan of a job sheet as a file. */
public final class PlanPrint {
    private static final double SCREEN_DPI = 150;

    private PlanPrint() {}

    /** @throws IllegalArgumentException for a paper or scale that is not known, or a garden that does not fit */
    public static Page page(JobSheet sheet, PrintAsk ask) {
        PlanOptions options = PlanOptions.usual(sheet.garden().imperial()).stamped(ask.revision(), ask.date());
        if (ask.paper().isPresent()) {
            options = options.on(Paper.named(ask.paper().get()));
        }
        if (ask.scale().isPresent()) {
            options = options.at(new Scale(ask.scale().getAsInt()));
        }
        if (ask.mono()) {
            options = options.inMono();
        }
        List<PathCover> covers = new ArrayList<>();
        for (JobSheet.PathSheet one : sheet.paths()) {
            GardenPath path = one.path();
            // the top layer is what is seen
            String material = path.layers().isEmpty() ? "" : path.layers().get(path.layers().size() - 1).item();
            covers.add(new PathCover(path.id(), path.name(), one.cover(), material));
        }
        return PlanDrawing.draw(
                sheet.garden(), sheet.beds().stream().map(JobSheet.BedSheet::work).toList(), covers, sheet.snags(), options);
    }

    /** @param format {@code svg}, {@code pdf} or {@code png} */
    public static byte[] file(Page page, String format) {
        return switch (format) {
            case "svg" -> SvgWriter.write(page).getBytes(StandardCharsets.UTF_8);
            case "pdf" -> PdfWriter.write(List.of(page));
            case "png" -> PngWriter.write(page, SCREEN_DPI);
            default -> throw new IllegalArgumentException("a plan can be svg, pdf or png, not " + format);
        };
    }
}
