package lapyard.job;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingProblem.Demand;
import lapyard.cutting.CuttingProblem.Stock;
import lapyard.cutting.CuttingResult.Unplaced;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.CuttingSolver;
import lapyard.cutting.Effort;
import lapyard.cutting.NearMisses;
import lapyard.job.JobSheet.SawWork;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.job.JobSheet.Way;

/**
 * What a person may weigh before a section's boards are bought. It takes many times as long as the job sheet itself,
 * so it is worked out only where it is shown.
 *
 * @param pooledOnce       what they take where all is cut on one day, so that no offcut is trimmed again
 * @param weekendByWeekend what the boards take where no offcut is carried from one weekend to the next
 * @param nearMisses       lengths that would save money if they were cut a little shorter, the largest saving first
 * @param lengthsTried     of {@code lengthsThere} that are cut at least twice, those that take the most timber
 */
public record SawAdvice(
        String section, Way pooledOnce, Way weekendByWeekend, List<NearMiss> nearMisses, int lengthsTried, int lengthsThere) {
    public SawAdvice {
        nearMisses = List.copyOf(nearMisses);
    }

    /**
     * {@code count} pieces of {@code lengthMm}, each {@code shorterMm} less, would cost {@code saved} less.
     * Offered, never applied: a shorter piece makes a smaller bed.
     *
     * @param sure        whether at least so much is saved beside any plan of the pieces as they are; else beside the plan
     *     found, which is not proved the best
     * @param saved       money; empty where the boards have no price
     * @param boardsSaved below 0 where more, shorter boards would be bought
     * @param marks       the pieces that would be shorter
     */
    public record NearMiss(
            double lengthMm,
            int count,
            int shorterMm,
            boolean sure,
            Optional<BigDecimal> saved,
            int boardsSaved,
            List<String> marks) {
        public NearMiss {
            marks = List.copyOf(marks);
        }
    }

    /** Each length is one search or more; for all of a garden of more lengths than this one would have to wait. */
    private static final int MOST_LENGTHS = 40;

    private static final Effort GLANCE = new Effort(20_000, Duration.ofMillis(500), 2_000);

    /** One for each section of wall timber, in the order of {@link JobSheet#cutting}. */
    public static List<SawAdvice> of(JobSheet sheet) {
        return sheet.cutting().stream().map(SawAdvice::of).toList();
    }

    private static SawAdvice of(SectionCutting cutting) {
        int there = NearMisses.lengths(cutting.saw().problem(), byDemand(cutting));
        int tried = Math.min(there, MOST_LENGTHS);
        return new SawAdvice(
                cutting.section(), pooledOnce(cutting), weekendByWeekend(cutting), nearMisses(cutting), tried, there);
    }

    private static Way pooledOnce(SectionCutting cutting) {
        CuttingProblem problem = cutting.saw().problem();
        boolean staged = problem.pieces().stream().mapToInt(Demand::stage).distinct().count() > 1;
        CuttingResult once = cutting.result();
        if (staged && problem.retrimMm() > 0) {
            once = CuttingSolver.solve(
                    problem.with(problem.stock(), problem.pieces().stream()
                            .map(piece -> new Demand(piece.id(), piece.lengthMm(), piece.count(), 1, piece.goodFace()))
                            .toList()),
                    Effort.QUICK);
        }
        return new Way("pooled once", once.boards(), priced(cutting) ? Optional.of(once.paid()) : Optional.empty());
    }

    /** Boards on hand go to the earliest weekend that takes them. */
    private static Way weekendByWeekend(SectionCutting cutting) {
        CuttingProblem problem = cutting.saw().problem();
        Map<Integer, List<Demand>> byWeekend = new TreeMap<>();
        problem.pieces().forEach(piece -> byWeekend.computeIfAbsent(piece.stage(), s -> new ArrayList<>()).add(piece));
        BigDecimal cost = BigDecimal.ZERO;
        int boards = 0;
        if (byWeekend.size() <= 1) {
            cost = cutting.result().paid();
            boards = cutting.result().boards();
            byWeekend.clear();
        }
        Map<String, Integer> used = new HashMap<>();
        for (List<Demand> pieces : byWeekend.values()) {
            List<Stock> left = problem.stock().stream()
                    .map(stock -> stock.available().isEmpty() ? stock : stock.with(stock.available().getAsInt() - used.getOrDefault(stock.id(), 0)))
                    .filter(stock -> stock.available().orElse(1) > 0)
                    .toList();
            CuttingResult own = CuttingSolver.solve(problem.with(left, pieces), Effort.QUICK);
            own.plan().forEach(line -> used.merge(line.stock(), line.count(), Integer::sum));
            cost = cost.add(own.paid());
            boards += own.boards();
        }
        return new Way("weekend by weekend", boards, priced(cutting) ? Optional.of(cost) : Optional.empty());
    }

    private static boolean priced(SectionCutting cutting) {
        return cutting.saw().ways().get(0).cost().isPresent();
    }

    /** The largest saving that is sure first, then what was only found by search. */
    private static List<NearMiss> nearMisses(SectionCutting cutting) {
        SawWork saw = cutting.saw();
        return NearMisses.of(saw.problem(), byDemand(cutting), GLANCE, MOST_LENGTHS).stream()
                .filter(miss -> miss.sure() || priced(cutting) || miss.boardsSaved() > 0)
                .sorted(Comparator.comparing(NearMisses.NearMiss::sure).reversed())
                .map(miss -> new NearMiss(
                        miss.lengthMm(),
                        miss.count(),
                        miss.shorterMm(),
                        miss.sure(),
                        priced(cutting) ? Optional.of(miss.saved()) : Optional.empty(),
                        miss.boardsSaved(),
                        miss.ids().stream().flatMap(id -> saw.marks().get(id).stream()).toList()))
                .toList();
    }

    /** The result with what could not be cut under the ids of the demands, as the problem has them. */
    private static CuttingResult byDemand(SectionCutting cutting) {
        Map<String, String> demandOf = new HashMap<>();
        cutting.saw().marks().forEach((id, marks) -> marks.forEach(mark -> demandOf.put(mark, id)));
        CuttingResult result = cutting.result();
        return result.renamed(result.plan(), result.unplaced().stream()
                .map(piece -> new Unplaced(
                        demandOf.getOrDefault(piece.id(), piece.id()), piece.lengthMm(), piece.count(), piece.why()))
                .toList());
    }
}
