package lapyard.cutting;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import lapyard.working.Effort;

/** Which repeated length, cut a little shorter, would save a board or money. Offered, never applied. */
public final class NearMisses {
    /** How much shorter a piece may be offered, mm; common practice, no source. */
    public static final int MOST_MM = 25;

    /** Each length is one search or more; for all of a job of more lengths than this one would have to wait. */
    public static final int MOST_LENGTHS = 40;

    /** What each search may take where many are asked for at once. */
    public static final Effort GLANCE = new Effort(20_000, Duration.ofMillis(500), 2_000);

    private NearMisses() {}

    /**
     * {@code count} pieces of {@code lengthMm}, each {@code shorterMm} less, change the plan to {@code then}.
     *
     * @param shorterMm the least whole millimetres that bring the whole saving
     * @param sure      whether {@code then} costs less than the proved bound of the plan as it stands, so that the saving
     *     can't be had without; else it was found by search beside a plan that may not be the best
     * @param saved     money, 0 where only boards are saved; where it is sure, the amount that is
     * @param ids       the demands that would be cut shorter
     */
    public record NearMiss(
            double lengthMm,
            int count,
            int shorterMm,
            boolean sure,
            BigDecimal saved,
            int boardsSaved,
            List<String> ids,
            CuttingResult then) {
        public NearMiss {
            ids = List.copyOf(ids);
        }
    }

    /** Every repeated length, however many there are. */
    public static List<NearMiss> of(CuttingProblem problem, CuttingResult now, Effort effort) {
        return of(problem, now, Set.of(), effort, Integer.MAX_VALUE);
    }

    /** How many lengths are cut at least twice and could be shorter, without the demands that stay as they are. */
    public static int lengths(CuttingProblem problem, CuttingResult now, Set<String> asTheyAre) {
        return (int) repeated(problem, now, asTheyAre).values().stream().filter(NearMisses::worthATry).count();
    }

    /**
     * Solves once for every length that is cut at least twice, shortened by {@link #MOST_MM}, and where that saves
     * looks for the least shortening that saves as much.
     *
     * @param now       the plan of {@code problem} as it stands
     * @param asTheyAre ids of demands that can't be shorter
     * @param most      lengths to try; of more, those that take the most timber
     * @return the largest saving of money first, then of boards, then the longest length
     */
    public static List<NearMiss> of(
            CuttingProblem problem, CuttingResult now, Set<String> asTheyAre, Effort effort, int most) {
        List<NearMiss> misses = new ArrayList<>();
        List<List<CuttingProblem.Demand>> lengths = repeated(problem, now, asTheyAre).values().stream()
                .filter(NearMisses::worthATry)
                .sorted(Comparator.comparingDouble(NearMisses::timberMm).reversed())
                .limit(most)
                .toList();
        for (List<CuttingProblem.Demand> demands : lengths) {
            int count = count(demands);
            CuttingResult shortest = shortened(problem, demands, MOST_MM, effort);
            if (!better(shortest, now)) continue;
            int enough = MOST_MM;
            int tooLittle = 0;
            CuttingResult then = shortest;
            while (enough - tooLittle > 1) {
                int middle = (enough + tooLittle) / 2;
                CuttingResult here = shortened(problem, demands, middle, effort);
                if (better(shortest, here)) {
                    tooLittle = middle;
                } else {
                    enough = middle;
                    then = here;
                }
            }
            boolean sure = then.cost().compareTo(now.lowerBound()) < 0;
            misses.add(new NearMiss(
                    demands.get(0).lengthMm(),
                    count,
                    enough,
                    sure,
                    (sure ? now.lowerBound() : now.cost()).subtract(then.cost()),
                    now.boards() - then.boards(),
                    demands.stream().map(CuttingProblem.Demand::id).toList(),
                    then));
        }
        misses.sort((a, b) -> {
            int byMoney = b.saved().compareTo(a.saved());
            if (byMoney != 0) return byMoney;
            int byBoards = Integer.compare(b.boardsSaved(), a.boardsSaved());
            return byBoards != 0 ? byBoards : Double.compare(b.lengthMm(), a.lengthMm());
        });
        return misses;
    }

    private static Map<Double, List<CuttingProblem.Demand>> repeated(
            CuttingProblem problem, CuttingResult now, Set<String> asTheyAre) {
        Map<Double, List<CuttingProblem.Demand>> byLength = new LinkedHashMap<>();
        for (var piece : problem.pieces()) {
            boolean cut = !asTheyAre.contains(piece.id())
                    && now.unplaced().stream().noneMatch(u -> u.id().equals(piece.id()));
            if (cut) byLength.computeIfAbsent(piece.lengthMm(), l -> new ArrayList<>()).add(piece);
        }
        return byLength;
    }

    private static boolean worthATry(List<CuttingProblem.Demand> demands) {
        return count(demands) >= 2 && demands.get(0).lengthMm() > MOST_MM;
    }

    private static int count(List<CuttingProblem.Demand> demands) {
        return demands.stream().mapToInt(CuttingProblem.Demand::count).sum();
    }

    private static double timberMm(List<CuttingProblem.Demand> demands) {
        return count(demands) * demands.get(0).lengthMm();
    }

    private static boolean better(CuttingResult a, CuttingResult b) {
        int byMoney = a.cost().compareTo(b.cost());
        return byMoney < 0 || byMoney == 0 && a.boards() < b.boards();
    }

    private static CuttingResult shortened(
            CuttingProblem problem, List<CuttingProblem.Demand> demands, int byMm, Effort effort) {
        List<CuttingProblem.Demand> pieces = new ArrayList<>();
        for (var piece : problem.pieces()) {
            double length = demands.contains(piece) ? piece.lengthMm() - byMm : piece.lengthMm();
            pieces.add(new CuttingProblem.Demand(piece.id(), length, piece.count(), piece.stage(), piece.goodFaces()));
        }
        return CuttingSolver.solve(problem.with(problem.stock(), pieces), effort);
    }
}
