package lapyard.job;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import lapyard.construction.BedWork;
import lapyard.construction.Piece;
import lapyard.cutting.NearMisses;
import lapyard.geometry.Outline;
import lapyard.geometry.Spans;
import lapyard.job.JobSheet.BedSheet;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.plan.Bed;
import lapyard.plan.BedNames;

/**
 * A way to make alike beds a little smaller with all their pieces, so that every course still closes. Beds with square
 * corners only; walls that are joined, nested or could not be cut stay as they are.
 *
 * @param beds      ids, in the order of the document
 * @param walls     letters of the walls that become shorter
 * @param narrower  whether the beds become narrower, along x of their own frame
 * @param shallower whether they become less deep, along y
 * @param rectangle whether the beds are rectangles, so that the walls need no naming
 * @param marks     the pieces that become shorter
 * @param change    the same as the cutting has them
 */
public record SmallerBeds(
        List<String> beds,
        List<String> walls,
        boolean narrower,
        boolean shallower,
        boolean rectangle,
        List<String> marks,
        NearMisses.Change change) {
    public SmallerBeds {
        beds = List.copyOf(beds);
        walls = List.copyOf(walls);
        marks = List.copyOf(marks);
    }

    /** What is alike in beds that change together. */
    private record Alike(Outline outline, int courses, Object lap) {}

    /** All there are for the beds of one section, those with the most pieces first. */
    static List<SmallerBeds> of(JobSheet sheet, SectionCutting cutting) {
        Map<Alike, List<BedWork>> alike = new LinkedHashMap<>();
        for (BedSheet bed : sheet.beds()) {
            Bed own = bed.work().bed();
            if (own.section().id().equals(cutting.section()) && own.outline().upright()) {
                alike.computeIfAbsent(new Alike(own.outline(), own.courses(), own.walls().lap()), a -> new ArrayList<>())
                        .add(bed.work());
            }
        }
        Map<String, String> demandOf = new HashMap<>();
        cutting.saw().marks().forEach((id, marks) -> marks.forEach(mark -> demandOf.put(mark, id)));
        cutting.result().unplaced().forEach(piece -> demandOf.remove(piece.id()));
        List<SmallerBeds> all = new ArrayList<>();
        alike.values().forEach(works -> of(works, demandOf, all));
        all.sort(Comparator.comparingInt((SmallerBeds one) -> -one.marks().size()));
        return all;
    }

    private static void of(List<BedWork> works, Map<String, String> demandOf, List<SmallerBeds> all) {
        Outline outline = works.get(0).bed().outline();
        int across = Spans.of(outline, true).size();
        int deep = Spans.of(outline, false).size();
        for (int span = 0; span < across; span++) {
            change(works, Spans.sides(outline, true, span), true, false, demandOf).ifPresent(all::add);
        }
        for (int span = 0; span < deep; span++) {
            change(works, Spans.sides(outline, false, span), false, true, demandOf).ifPresent(all::add);
        }
        if (across == 1 && deep == 1) {
            change(works, List.of(0, 1, 2, 3), true, true, demandOf).ifPresent(all::add);
        }
    }

    private static Optional<SmallerBeds> change(
            List<BedWork> works, List<Integer> sides, boolean narrower, boolean shallower, Map<String, String> demandOf) {
        TreeSet<String> walls = sides.stream().map(Bed::wallLetter).collect(Collectors.toCollection(TreeSet::new));
        Map<String, Integer> pieces = new LinkedHashMap<>();
        List<String> marks = new ArrayList<>();
        for (BedWork work : works) {
            for (Piece piece : work.pieces()) {
                if (walls.contains(piece.wall())) {
                    String demand = demandOf.get(piece.mark());
                    if (!piece.part().isEmpty() || demand == null) {
                        return Optional.empty();
                    }
                    pieces.merge(demand, 1, Integer::sum);
                    marks.add(piece.mark());
                }
            }
        }
        return Optional.of(new SmallerBeds(
                works.stream().map(work -> work.bed().id()).toList(), List.copyOf(walls), narrower, shallower,
                works.get(0).bed().outline().sides() == 4, marks, new NearMisses.Change(pieces)));
    }

    /** As it is asked for, {@code make bed B 24 mm shallower}; {@code amount} with its unit. */
    public String words(String amount) {
        String way = narrower && shallower ? "narrower and shallower by " + amount + " each"
                : amount + (narrower ? " narrower" : " shallower");
        return "make " + BedNames.where(beds) + " " + way + (rectangle ? "" : ", walls " + String.join(", ", walls));
    }
}
