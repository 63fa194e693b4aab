package lapyard.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import lapyard.catalogue.Section;
import lapyard.catalogue.StrengthClass;
import lapyard.construction.BedWork;
import lapyard.construction.Nest;
import lapyard.construction.Piece;
import lapyard.cutting.CuttingResult.BoardLine;
import lapyard.ground.BedGround;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.plan.Finding;
import lapyard.plan.Garden;
import lapyard.plan.RackBoard;
import lapyard.plan.Treatment;
import lapyard.standing.Footing;
import lapyard.standing.Standing;
import lapyard.standing.Verdict;
import lapyard.standing.Verdict.Outcome;

/** Whether the beds would stand, each on its own ground and of the boards that go into it. */
final class Stands {
    private Stands() {}

    /**
     * @param ground  of each bed, as {@code works} has them
     * @param cutting of the walls' timber, which tells what boards on hand go into which bed
     */
    static Map<String, Standing> of(Garden garden, List<BedGround> ground, List<BedWork> works, List<SectionCutting> cutting) {
        Map<String, Set<String>> boards = boardsOnHand(garden, works, cutting);
        Map<String, Standing> standing = new LinkedHashMap<>();
        for (int i = 0; i < works.size(); i++) {
            BedWork work = works.get(i);
            String id = work.bed().id();
            Optional<Section> bearers = garden.goods().catalogue().section(work.bed().inside().base().bearers().bearerSection());
            double bearerMm = bearers.map(Section::heightMm).orElse(0.0);
            Set<String> own = boards.getOrDefault(id, Set.of());
            List<String> unknown = garden.goods().rack().stream()
                    .filter(board -> own.contains(board.id())
                            && (board.past().origin().isEmpty() || board.past().treatment() == Treatment.UNKNOWN))
                    .map(RackBoard::id)
                    .toList();
            standing.put(id, Standing.of(
                    work,
                    garden.terms().loads(),
                    new Footing(ground.get(i).kinds(), bearerMm,
                            bearers.map(section -> bearerClass(section, work)).orElse(StrengthClass.LOWEST), !own.isEmpty(), String.join(", ", unknown))));
        }
        return standing;
    }

    /** Graded timber that is ripped has lost its grade until somebody grades it again: EN 14081-1, from memory. */
    private static StrengthClass bearerClass(Section section, BedWork work) {
        boolean ripped = work.bed().inside().base().bearers().bearerLiftMm() < section.thicknessMm() - 1e-9;
        return ripped ? StrengthClass.LOWEST : section.strength();
    }

    /** Ids of the boards on hand by the bed whose pieces are cut from them. */
    static Map<String, Set<String>> boardsOnHand(Garden garden, List<BedWork> works, List<SectionCutting> cutting) {
        Map<String, String> bedOf = new LinkedHashMap<>();
        for (BedWork work : works) {
            for (Piece piece : work.pieces()) bedOf.put(piece.mark(), work.bed().id());
        }
        Map<String, Set<String>> boards = new LinkedHashMap<>();
        for (SectionCutting section : cutting) {
            for (BoardLine line : section.result().plan()) {
                String from = line.stock().split(" ", 2)[0];
                if (garden.goods().rack().stream().anyMatch(board -> board.id().equals(from))) {
                    line.pieces().stream()
                            .flatMap(mark -> Nest.marks(mark).stream())
                            .forEach(mark -> boards.computeIfAbsent(bedOf.get(mark), bed -> new TreeSet<>()).add(from));
                }
            }
        }
        return boards;
    }

    /** What stands against the beds: why they are not designed here, and what does not hold. */
    static List<Finding> findings(Iterable<Standing> all) {
        List<Finding> findings = new ArrayList<>();
        for (Standing one : all) {
            findings.addAll(one.notDesigned());
            one.verdicts().stream().filter(verdict -> verdict.outcome() != Outcome.HOLDS).map(Verdict::finding).forEach(findings::add);
        }
        return findings;
    }
}
