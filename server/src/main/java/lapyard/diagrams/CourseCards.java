package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import lapyard.construction.BedWork;
import lapyard.drawing.Page;
import lapyard.plan.Lifting;
import lapyard.working.Quantity;
import lapyard.working.Abandonable;

/** A card a bed for whoever stacks it, up to three courses on a sheet, in the order of building. */
public final class CourseCards {
    private static final String CAUTION =
            "Two people lift what has a dot. Screws: eyes covered, the other hand out of their line. Treated timber: gloves and mask,"
                    + " seal every cut end, burn no offcuts.";

    private CourseCards() {}

    /**
     * One bed to stack.
     *
     * @param quantities those of the bed, also what is scribed off its underside where the fall of the ground is known
     * @param boards     number of the board that each timber is cut from, by its mark; may be empty
     * @param warnings   what may hurt somebody at this bed
     */
    public record Stack(BedWork work, List<Quantity> quantities, Map<String, String> boards, List<String> warnings) {
        public Stack {
            quantities = List.copyOf(quantities);
            boards = Map.copyOf(boards);
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * @param garden      name for the heading
     * @param lifting     what one person lifts; heavier pieces get a dot
     * @param stacks      beds in the order of the cards
     */
    public static List<Page> pages(
            String garden, boolean imperial, Lifting lifting, List<Stack> stacks, BenchOptions options) {
        BenchSheet sheet = new BenchSheet(garden, CAUTION, imperial, options);
        List<BenchSheet.Draft> drafts = new ArrayList<>();
        for (Stack stack : stacks) {
            Abandonable.check();
            drafts.addAll(new CourseCard(sheet, stack, lifting).drafts());
        }
        return sheet.pages(drafts.isEmpty() ? List.of(sheet.nothing("Course cards", "No beds stand in this garden yet.")) : drafts);
    }
}
