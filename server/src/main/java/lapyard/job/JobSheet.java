package lapyard.job;

import java.util.List;
import lapyard.construction.BedWork;
import lapyard.cutting.CuttingResult;
import lapyard.geometry.Outline;
import lapyard.order.Slip;
import lapyard.plan.Finding;
import lapyard.plan.Garden;
import lapyard.plan.GardenPath;
import lapyard.sheets.RollResult;
import lapyard.working.Quantity;

/**
 * Everything about a garden: quantities with workings, pooled cutting and rolls, one slip, findings.
 *
 * @param strips  how the bearer strips are cut to length, by bearer section
 * @param leftOut whether something could not be made and was left out of the order
 */
public record JobSheet(
        Garden garden,
        List<BedSheet> beds,
        List<PathSheet> paths,
        List<SectionCutting> cutting,
        List<SectionCutting> strips,
        List<MaterialRolls> rolls,
        Slip slip,
        List<Finding> snags,
        boolean leftOut) {
    public JobSheet {
        beds = List.copyOf(beds);
        paths = List.copyOf(paths);
        cutting = List.copyOf(cutting);
        strips = List.copyOf(strips);
        rolls = List.copyOf(rolls);
        snags = List.copyOf(snags);
    }

    /** {@code quantities} are those of construction and of fill together. */
    public record BedSheet(BedWork work, List<Quantity> quantities) {
        public BedSheet {
            quantities = List.copyOf(quantities);
        }
    }

    /** {@code quantities}: path.area, path.volume (one a layer by item), edging.length, membrane. */
    public record PathSheet(GardenPath path, List<Outline> cover, List<Quantity> quantities) {
        public PathSheet {
            cover = List.copyOf(cover);
            quantities = List.copyOf(quantities);
        }
    }

    /** Pooled cutting of one section; {@code boardsBedByBed} is the sum of cutting each bed alone. */
    public record SectionCutting(String section, CuttingResult result, int boardsBedByBed) {}

    /** Pooled layout of one roll material; {@code metresBedByBed} is the length bought if each bed bought alone. */
    public record MaterialRolls(String material, RollResult result, double metresBedByBed) {}
}
