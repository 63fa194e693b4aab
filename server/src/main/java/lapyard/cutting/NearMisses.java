package lapyard.cutting;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntFunction;
import lapyard.working.Effort;

/** Which repeated length, cut a little shorter, would save a board or money. Offered, never applied. */
public final class NearMisses {
    /** How much shorter a piece may be offered, mm; common practice, no source. */
    public static final int MOST_MM = 25;

    /** Each length is one search or more; for all of a job of more lengths than this one would have to wait. */
    public static final int MOST_LENGTHS = 40;

    /** What each search may take where many are asked for at once. */
    public static final Effort GLANCE = Effort.ofSteps(20_000, 2_000);

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

    /**
     * Pieces that can only be shorter all together.
     *
     * @param pieces how many of each demand, by its id; each above 0 and at most the demand's count
     */
    public record Change(Map<String, Integer> pieces) {
        public Change {
            pieces = Map.copyOf(pieces);
        }

        private static Change whole(List<CuttingProblem.Demand> demands) {
            Map<String, Integer> pieces = new LinkedHashMap<>();
            demands.forEach(demand -> pieces.put(demand.id(), demand.count()));
            return new Change(pieces);
        }
    }

    /** What a change brings, told as in {@link NearMiss}. */
    public record Saving(int shorterMm, boolean sure, BigDecimal saved, int boardsSaved, CuttingResult then) {}

    /** The plan with these pieces shorter by so many millimetres. */
    public static IntFunction<Optional<CuttingResult>> shortened(CuttingProblem problem, Change change, Effort effort) {
        return byMm -> Optional.of(shortened(problem, change, byMm, effort));
    }

    /**
     * Looks at what is {@link #MOST_MM} shorter, and where that saves, by halving, for the least shortening that saves as much.
     *
     * @param now     the plan as it stands
     * @param shorter the plan with so many millimetres less; empty where it can't be made so
     * @param bounded whether the bound of {@code now} is one of all plans without the change
     * @return empty where the change saves nothing
     */
    public static Optional<Saving> saving(CuttingResult now, IntFunction<Optional<CuttingResult>> shorter, boolean bounded) {
        Optional<CuttingResult> shortest = shorter.apply(MOST_MM).filter(plan -> better(plan, now));
        if (shortest.isEmpty()) return Optional.empty();
        int enough = MOST_MM;
        int tooLittle = 0;
        CuttingResult then = shortest.get();
        while (enough - tooLittle > 1) {
            int middle = (enough + tooLittle) / 2;
            Optional<CuttingResult> here = shorter.apply(middle).filter(plan -> !better(shortest.get(), plan));
            if (here.isPresent()) {
                enough = middle;
                then = here.get();
            } else {
                tooLittle = middle;
            }
        }
        boolean sure = bounded && then.cost().compareTo(now.lowerBound()) < 0;
        return Optional.of(new Saving(
                enough, sure, (sure ? now.lowerBound() : now.cost()).subtract(then.cost()), now.boards() - then.boards(), then));
    }

    /**
     * Solves once for every length that is cut at least twice, shortened by {@link #MOST_MM}, and where that saves
     * looks for the least shortening that saves as much.
     *
     * @param now       the plan of {@code problem} as it stands
     * @param most      lengths to try; of more, those that take the most timber
     * @return the largest saving of money first, then of boards, then the longest length
     */
    public static List<NearMiss> of(
            CuttingProblem problem, CuttingResult now, Effort effort, int most) {
        List<NearMiss> misses = new ArrayList<>();
        List<List<CuttingProblem.Demand>> lengths = repeated(problem, now).values().stream()
                .filter(demands -> count(demands) >= 2 && demands.get(0).lengthMm() > MOST_MM)
                .sorted(Comparator.comparingDouble((List<CuttingProblem.Demand> demands) -> count(demands) * demands.get(0).lengthMm()).reversed())
                .limit(most)
                .toList();
        for (List<CuttingProblem.Demand> demands : lengths) {
            saving(now, shortened(problem, Change.whole(demands), effort), true).ifPresent(saving -> misses.add(new NearMiss(
                    demands.get(0).lengthMm(),
                    count(demands),
                    saving.shorterMm(),
                    saving.sure(),
                    saving.saved(),
                    saving.boardsSaved(),
                    demands.stream().map(CuttingProblem.Demand::id).toList(),
                    saving.then())));
        }
        misses.sort(Comparator.comparing(NearMiss::saved).thenComparing(NearMiss::boardsSaved).thenComparing(NearMiss::lengthMm).reversed());
        return misses;
    }

    private static Map<Double, List<CuttingProblem.Demand>> repeated(CuttingProblem problem, CuttingResult now) {
        Map<Double, List<CuttingProblem.Demand>> byLength = new LinkedHashMap<>();
        for (var piece : problem.pieces()) {
            boolean cut = now.unplaced().stream().noneMatch(u -> u.id().equals(piece.id()));
            if (cut) byLength.computeIfAbsent(piece.lengthMm(), l -> new ArrayList<>()).add(piece);
        }
        return byLength;
    }

    private static int count(List<CuttingProblem.Demand> demands) {
        return demands.stream().mapToInt(CuttingProblem.Demand::count).sum();
    }

    private static boolean better(CuttingResult a, CuttingResult b) {
        if (a.unplaced().size() != b.unplaced().size()) return a.unplaced().size() < b.unplaced().size();
        int byMoney = a.cost().compareTo(b.cost());
        return byMoney < 0 || byMoney == 0 && a.boards() < b.boards();
    }

    private static CuttingResult shortened(CuttingProblem problem, Change change, int byMm, Effort effort) {
        List<CuttingProblem.Demand> pieces = new ArrayList<>();
        for (var piece : problem.pieces()) {
            int shorter = change.pieces().getOrDefault(piece.id(), 0);
            if (shorter > 0) {
                pieces.add(new CuttingProblem.Demand(
                        piece.id(), piece.lengthMm() - byMm, shorter, piece.stage(), piece.goodFaces()));
            }
            String rest = piece.id() + (shorter > 0 ? " as it is" : "");
            if (shorter < piece.count()) pieces.add(new CuttingProblem.Demand(rest, piece.lengthMm(), piece.count() - shorter, piece.stage(), piece.goodFaces()));
        }
        return CuttingSolver.solve(problem.with(problem.stock(), pieces), effort);
    }
}
