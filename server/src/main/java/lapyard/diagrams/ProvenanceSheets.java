package lapyard.diagrams;

import java.util.List;
import lapyard.drawing.Page;

/** Boards on hand with where each comes from and where it may go, and what stands in each bed: kept with the beds. */
public final class ProvenanceSheets {
    private static final String CAUTION =
            "Unknown is not safe: nothing of unknown origin, coating or treatment goes near food. Timber with creosote or CCA: licensed tip, never burn, saw or sand it.";

    private ProvenanceSheets() {}

    /** One kind of board; texts as they shall be read. */
    public record Board(String id, String what, String origin, String treatment, String checkedBy, String allowed, String beds) {}

    /** @param onHand boards on hand that are cut for it; empty where it is all new timber */
    public record Bed(String bed, boolean food, String onHand, String timber) {}

    public static List<Page> pages(String garden, boolean imperial, List<Board> boards, List<Bed> beds, BenchOptions options) {
        BenchSheet sheet = new BenchSheet(garden, CAUTION, imperial, options);
        Flow flow = new Flow(sheet, "Where boards come from", "to be kept with the beds, for whoever eats from them or takes them down");
        if (!boards.isEmpty()) {
            BenchTable table = new BenchTable(
                    sheet, "Boards on hand", column("Board", 0.08, true), column("What", 0.2, false), column("Comes from", 0.22, false),
                    column("Treatment", 0.16, false), column("Looked at by", 0.12, false), column("May go", 0.12, true), column("In beds", 0.1, false));
            boards.forEach(one -> table.row(one.id(), one.what(), one.origin(), one.treatment(), one.checkedBy(), one.allowed(), one.beds()));
            table.on(flow);
        }
        BenchTable table = new BenchTable(
                sheet, "Bed by bed", column("Bed", 0.14, true), column("Food", 0.1, true), column("Boards on hand", 0.4, false),
                column("Bought timber", 0.36, false));
        beds.forEach(one -> table.row(one.bed(), one.food() ? "food" : "", one.onHand().isEmpty() ? "none" : one.onHand(), one.timber()));
        table.on(flow);
        return sheet.pages(flow.drafts());
    }

    private static BenchTable.Column column(String head, double share, boolean bold) {
        return new BenchTable.Column(head, share, bold);
    }
}
