package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import lapyard.construction.BedWork;
import lapyard.drawing.Page;

/** A card a bed for whoever stacks it, up to three courses on a sheet, in the order of building. */
public final class CourseCards {
    private static final String CAUTION =
            "Two people lift what has a dot. Screws: eyes covered, the other hand out of their line. Treated timber: gloves and mask,"
                    + " seal every cut end, burn no offcuts.";

    private CourseCards() {}

    /**
     * @param garden      name for the heading
     * @param liftLimitKg what one person lifts; heavier pieces get a dot
     * @param works       beds in the order of the cards
     */
    public static List<Page> pages(
            String garden, boolean imperial, double liftLimitKg, List<BedWork> works, BenchOptions options) {
        BenchSheet sheet = new BenchSheet(garden, CAUTION, imperial, options);
        List<BenchSheet.Draft> drafts = new ArrayList<>();
        works.forEach(work -> drafts.addAll(new CourseCard(sheet, work, liftLimitKg).drafts()));
        return sheet.pages(drafts.isEmpty() ? List.of(sheet.nothing("Course cards", "No beds stand in this garden yet.")) : drafts);
    }
}
