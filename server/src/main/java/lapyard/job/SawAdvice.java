package lapyard.job;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingProblem.Demand;
import lapyard.cutting.CuttingProblem.Stock;
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
 * @param weekendByWeekend what the boards take where no offcut is carried from one weekend to the next
 * @param nearMisses       lengths that would save money if they were cut a little shorter, the largest saving first
 */
public record SawAdvice(String section, Way weekendByWeekend, List<NearMiss> nearMisses) {
    public SawAdvice {
        nearMisses = List.copyOf(nearMisses);
    }

    /**
     * {@code count} pieces of {@code lengthMm}, each {@code shorterMm} less, would cost at least {@code saved} less.
     * Offered, never applied: a shorter piece makes a smaller bed.
     *
     * @param saved       money; empty where the boards have no price
     * @param boardsSaved below 0 where more, shorter boards would be bought
     * @param marks       the pieces that would be shorter
     */
    public record NearMiss(
            double lengthMm, int count, int shorterMm, Optional<BigDecimal> saved, int boardsSaved, List<String> marks) {
        public NearMiss {
            marks = List.copyOf(marks);
        }
    }

    /** Each length is one search or more; a garden of more lengths than this would be waited for. */
    private static final int MOST_LENGTHS = 40;

    private static final Effort GLANCE = new Effort(20_000, Duration.ofMillis(500), 2_000);

    /** One for each section of wall timber, in the order of {@link JobSheet#cutting}. */
    public static List<SawAdvice> of(JobSheet sheet) {
        return sheet.cutting().stream()
                .map(cutting -> new SawAdvice(cutting.section(), weekendByWeekend(cutting), nearMisses(cutting)))
                .toList();
    }

    /** Boards on hand go to the earliest weekend that takes them. */
    private static Way weekendByWeekend(SectionCutting cutting) {
        CuttingProblem problem = cutting.saw().problem();
        Map<Integer, List<Demand>> byWeekend = new TreeMap<>();
        problem.pieces().forEach(piece -> byWeekend.computeIfAbsent(piece.stage(), s -> new ArrayList<>()).add(piece));
        BigDecimal cost = BigDecimal.ZERO;
        int boards = 0;
        if (byWeekend.size() <= 1) {
            cost = cutting.result().cost();
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
            cost = cost.add(own.cost());
            boards += own.boards();
        }
        return new Way("weekend by weekend", boards, priced(cutting) ? Optional.of(cost) : Optional.empty());
    }

    private static boolean priced(SectionCutting cutting) {
        return cutting.saw().ways().get(0).cost().isPresent();
    }

    /** Only what is sure to save: the shorter pieces cost less than the proved bound of the plan as it stands. */
    private static List<NearMiss> nearMisses(SectionCutting cutting) {
        SawWork saw = cutting.saw();
        CuttingResult now = cutting.result();
        if (saw.problem().pieces().stream().mapToDouble(Demand::lengthMm).distinct().count() > MOST_LENGTHS
                || !now.unplaced().isEmpty()) {
            return List.of();
        }
        return NearMisses.of(saw.problem(), now, GLANCE).stream()
                .filter(miss -> miss.then().cost().compareTo(now.lowerBound()) < 0)
                .map(miss -> new NearMiss(
                        miss.lengthMm(),
                        miss.count(),
                        miss.shorterMm(),
                        priced(cutting) ? Optional.of(now.lowerBound().subtract(miss.then().cost())) : Optional.empty(),
                        miss.boardsSaved(),
                        miss.ids().stream().flatMap(id -> saw.marks().get(id).stream()).toList()))
                .toList();
    }
}
