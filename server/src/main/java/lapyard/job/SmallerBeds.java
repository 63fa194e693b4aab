package lapyard.job;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import lapyard.construction.BedWork;
import lapyard.construction.Construction;
import lapyard.construction.Nest;
import lapyard.construction.Piece;
import lapyard.construction.SeamSplit;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.NearMisses;
import lapyard.geometry.Length;
import lapyard.geometry.Lengths;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.geometry.OutlineCheck;
import lapyard.geometry.Stretch;
import lapyard.job.JobSheet.BedSheet;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.plan.Bed;
import lapyard.plan.BedNames;
import lapyard.plan.Garden;
import lapyard.working.Whole;

/**
 * A way to make alike beds a little smaller with all their pieces, so that every course still closes and every angle stays. Walls
 * that could not be cut stay as they are.
 *
 * @param beds      ids, in the order of the document
 * @param walls     letters of the walls that become shorter
 * @param sides     their numbers
 * @param narrower  whether the beds become narrower, along x of their own frame
 * @param shallower whether they become less deep, along y; beds with angled corners are neither, their walls become shorter
 * @param rectangle whether the beds are rectangles, so that the walls need no naming
 * @param marks     the pieces that become shorter
 * @param change    the same as the cutting has them; empty where walls are joined or pieces could nest, so that they are laid out anew
 */
public record SmallerBeds(
        List<String> beds,
        List<String> walls,
        List<Integer> sides,
        boolean narrower,
        boolean shallower,
        boolean rectangle,
        List<String> marks,
        Optional<NearMisses.Change> change) {
    public SmallerBeds {
        beds = List.copyOf(beds);
        sides = List.copyOf(sides);
        walls = List.copyOf(walls);
        marks = List.copyOf(marks);
    }

    /** The properties that beds must share to change together. */
    private record Alike(Outline outline, int courses, Object lap) {}

    /** All there are for the beds of one section, those with the most pieces first. */
    static List<SmallerBeds> of(JobSheet sheet, SectionCutting cutting) {
        Map<Alike, List<BedWork>> alike = new LinkedHashMap<>();
        for (BedSheet bed : sheet.beds()) {
            Bed own = bed.work().bed();
            if (own.section().id().equals(cutting.section())) {
                alike.computeIfAbsent(new Alike(own.outline(), own.courses(), own.walls().lap()), a -> new ArrayList<>()).add(bed.work());
            }
        }
        Map<String, String> demandOf = new HashMap<>();
        cutting.saw().marks().forEach((id, marks) -> marks.forEach(mark -> Nest.marks(mark).forEach(one -> demandOf.put(one, id))));
        cutting.result().unplaced().forEach(piece -> Nest.marks(piece.id()).forEach(demandOf::remove));
        List<SmallerBeds> all = new ArrayList<>();
        alike.values().forEach(works -> of(works, demandOf, all));
        all.sort(Comparator.comparingInt((SmallerBeds one) -> -one.marks().size()));
        return all;
    }

    private static void of(List<BedWork> works, Map<String, String> demandOf, List<SmallerBeds> all) {
        Outline outline = works.get(0).bed().outline();
        if (!outline.upright()) {
            Stretch.closing(outline).forEach(sides -> change(works, sides, false, false, demandOf).ifPresent(all::add));
            return;
        }
        for (Stretch one : Stretch.of(outline)) change(works, one.sides(), one.acrossX(), !one.acrossX(), demandOf).ifPresent(all::add);
        if (outline.sides() == 4) change(works, List.of(0, 1, 2, 3), true, true, demandOf).ifPresent(all::add);
    }

    private static Optional<SmallerBeds> change(
            List<BedWork> works, List<Integer> sides, boolean narrower, boolean shallower, Map<String, String> demandOf) {
        TreeSet<String> walls = sides.stream().map(Bed::wallLetter).collect(Collectors.toCollection(TreeSet::new));
        Map<String, Integer> pieces = new LinkedHashMap<>();
        List<String> marks = new ArrayList<>();
        boolean anew = works.stream().anyMatch(work -> PooledTimber.angled(work.bed()));
        for (BedWork work : works) {
            for (Piece piece : work.pieces()) {
                if (walls.contains(piece.wall())) {
                    String demand = demandOf.get(piece.mark());
                    if (demand == null) return Optional.empty();
                    pieces.merge(demand, 1, Integer::sum);
                    marks.add(piece.mark());
                    anew |= !piece.part().isEmpty();
                }
            }
        }
        return Optional.of(new SmallerBeds(
                works.stream().map(work -> work.bed().id()).toList(), List.copyOf(walls), sides, narrower, shallower,
                works.get(0).bed().outline().sides() == 4, marks, anew ? Optional.empty() : Optional.of(new NearMisses.Change(pieces))));
    }

    /**
     * The cutting with these beds so much smaller, their walls joined and their pieces nested anew.
     *
     * @return empty where a bed can't be built so small, or all glances are spent
     */
    Optional<CuttingResult> planned(JobSheet sheet, SectionCutting cutting, double byMm, SearchOptions looking, Glances glances) {
        if (glances.spent()) return Optional.empty();
        List<Bed> then = new ArrayList<>();
        for (BedSheet one : sheet.beds()) {
            Bed bed = one.work().bed();
            if (!bed.section().id().equals(cutting.section())) continue;
            Bed smaller = beds.contains(bed.id()) ? bed.withOutline(drawn(Stretch.shorter(bed.outline(), sides, byMm))) : bed;
            if (!OutlineCheck.faults(smaller.outline(), OutlineCheck.Rules.bed(bed.section().thicknessMm())).isEmpty()) return Optional.empty();
            then.add(smaller);
        }
        Garden garden = sheet.garden().withBeds(then);
        Map<String, Map<Integer, SeamSplit>> joined = Joining.of(garden, looking);
        List<Blank> blanks = then.stream()
                .flatMap(bed -> Construction.pieces(bed, garden.goods().saw(), PooledTimber.longestPieceMm(garden, bed.section()),
                        joined.getOrDefault(bed.id(), Map.of())).stream().map(piece -> Blank.of(piece, bed.stage())))
                .toList();
        CuttingProblem problem = cutting.saw().problem();
        List<CuttingProblem.Stock> rack = problem.stock().stream().filter(stock -> stock.available().isPresent()).toList();
        return Optional.of(Nesting.cheapest(problem.with(problem.stock(), List.of()), blanks, List.of(), Set.of(), PooledTimber.graded(rack),
                (asked, least) -> glances.solve(asked), glances::solve).result());
    }

    /** In the tenths of a millimetre that a document holds. */
    private static Outline drawn(Outline outline) {
        return new Outline(outline.corners().stream()
                .map(corner -> new Point(Lengths.toTenth(corner.x()), Lengths.toTenth(corner.y())))
                .toList());
    }

    /**
     * As it is asked for, {@code make bed B 24 mm shallower}. Rounded up where it is written in sixteenths: a little too much still
     * saves, a little too little does not.
     */
    public String words(double byMm, boolean imperial) {
        double sixteenth = Length.INCH_MM / 16;
        String amount = Length.withUnit(imperial ? Whole.up(byMm / sixteenth) * sixteenth : byMm, imperial);
        if (!narrower && !shallower) {
            return "make walls " + String.join(", ", walls) + " of " + BedNames.where(beds) + " " + amount + " shorter";
        }
        String way = narrower && shallower ? "narrower and shallower by " + amount + " each"
                : amount + (narrower ? " narrower" : " shallower");
        return "make " + BedNames.where(beds) + " " + way + (rectangle ? "" : ", walls " + String.join(", ", walls));
    }
}
