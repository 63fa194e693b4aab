package lapyard.diagrams;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import lapyard.construction.BedWork;
import lapyard.drawing.Page;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.FindingList;
import lapyard.plan.Lifting;
import lapyard.plan.Place;
import lapyard.working.Abandonable;
import lapyard.working.Quantity;

/** A card for whoever stacks a bed, up to four courses on a sheet, in the order of building; beds that are alike have one card. */
public final class CourseCards {
    private static final String CAUTION =
            "Two people or more lift what has a dot. Screws: eyes covered, the other hand out of their line. Treated timber: gloves and mask,"
                    + " seal every cut end, burn no offcuts.";

    private CourseCards() {}

    /**
     * One bed to stack.
     *
     * @param quantities those of the bed, also what is scribed off its underside where the fall of the ground is known
     * @param boards     number of the board that each timber is cut from, by its mark; may be empty
     * @param warnings   what may hurt somebody at this bed
     */
    public record Stack(BedWork work, List<Quantity> quantities, Map<String, String> boards, List<Finding> warnings) {
        public Stack {
            quantities = List.copyOf(quantities);
            boards = Map.copyOf(boards);
            warnings = List.copyOf(warnings);
        }
    }

    /** All that a card shows but the bed's code and its boards: beds for which this is equal share a card. */
    private static List<Object> shown(Stack stack, BenchSheet sheet) {
        BedWork work = stack.work();
        Bed bed = work.bed();
        CourseNotes notes = new CourseNotes(stack, sheet, true);
        List<Object> pieces = new ArrayList<>();
        work.pieces().forEach(piece ->
                pieces.add(List.of(piece.course(), piece.wall(), piece.part(), piece.lengthMm(), piece.start(), piece.end(), piece.seen())));
        return List.of(
                bed.outline(), bed.placement().mirror(), bed.section(), bed.walls().lap(), bed.courses(), pieces, work.frame().notches(),
                work.frame().seams(), FindingList.singles(stack.warnings()).stream().map(CourseCards::told).toList(), notes.atWalls(), notes.notes(work.frame().courses(), Set.of()));
    }

    /** A warning but for its bed, where one sentence can tell it of several. */
    private static List<Object> told(Finding one) {
        if (!one.kind().merges) return List.of(one);
        List<Place.Part> within = one.place().parts().stream().filter(part -> part.what() != Place.What.BED).toList();
        return List.of(one.kind(), one.weight(), one.accepted(), one.facts(), within);
    }

    /**
     * @param lifting     what one person lifts; heavier pieces get a dot
     * @param stacks      beds in the order of the cards
     */
    public static List<Page> pages(Lifting lifting, List<Stack> stacks, BenchOptions options) {
        BenchSheet sheet = new BenchSheet(CAUTION, options);
        Map<List<Object>, List<Stack>> alike =
                stacks.stream().collect(Collectors.groupingBy(stack -> shown(stack, sheet), LinkedHashMap::new, Collectors.toList()));
        List<BenchSheet.Draft> drafts = new ArrayList<>();
        for (List<Stack> beds : alike.values()) {
            Abandonable.check();
            drafts.addAll(new CourseCard(sheet, beds, lifting).drafts());
        }
        return sheet.pages(drafts.isEmpty() ? List.of(sheet.nothing("Course cards", "No beds stand in this garden yet.")) : drafts);
    }
}
