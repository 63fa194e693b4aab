package lapyard.diagrams;

import java.util.List;
import lapyard.diagrams.BenchTable.Column;
import lapyard.drawing.Page;
import lapyard.geometry.Measure;

/** The list of all beds with where each stands and what it takes, a box to tick a bed, and the sum of each type. */
public final class BedRegister {
    private static final String CAUTION =
            "Two people or more lift each timber whose mark has a dot. Check each bed's place on the plan before anything is cut for it.";

    private BedRegister() {}

    /**
     * One bed, or one type with all its beds; texts as they shall be read.
     *
     * @param bed    its name, or the type's
     * @param what   its own name and type, or how many beds there are
     * @param size   outer width by depth by height
     * @param stands place of its front left corner and its turn; empty for a type
     * @param when   stage; empty for a type
     */
    public record Row(String bed, String what, String size, String stands, String when, String timber, String mass, String soil) {}

    /** @return one page or more; a garden without beds has one that says so */
    public static List<Page> pages(String garden, boolean imperial, List<Row> beds, List<Row> types, List<String> warnings, BenchOptions options) {
        return BenchSheet.pages(garden, CAUTION, imperial, options, sheet -> {
            if (beds.isEmpty()) {
                return List.of(sheet.nothing("Bed register", "No bed stands in this garden yet."));
            }
            Flow flow = new Flow(
                    sheet, "Bed register", Measure.counted(beds.size(), "bed") + ", each to be ticked when it is filled");
            BenchTable table = new BenchTable(
                    sheet, "Beds", new Column("Bed", 0.07, true), new Column("Name, type", 0.18, false),
                            new Column("Width, depth, height", 0.18, false),
                    new Column("Stands at: along, away", 0.21, false), new Column("Stage", 0.08, false),
                            new Column("Timber", 0.09, false),
                    new Column("Mass", 0.08, false), new Column("Loose soil", 0.07, false),
                            new Column("Done", 0.04, false));
            beds.forEach(row -> table.row(row.bed(), row.what(), row.size(), row.stands(), row.when(), row.timber(), row.mass(), row.soil(), BenchTable.TICK));
            new WarningFrame(sheet, warnings).on(flow);
            table.on(flow);
            if (!types.isEmpty()) {
                BenchTable sums = new BenchTable(
                        sheet, "Types", new Column("Type", 0.14, true), new Column("Beds", 0.22, false),
                                new Column("Width, depth, height", 0.28, false),
                        new Column("Timber", 0.12, false), new Column("Mass", 0.12, false),
                                new Column("Loose soil", 0.12, false));
                types.forEach(row -> sums.row(row.bed(), row.what(), row.size(), row.timber(), row.mass(), row.soil()));
                sums.on(flow);
            }
            return flow.drafts();
        });
    }
}
