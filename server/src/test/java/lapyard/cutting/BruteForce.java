package lapyard.cutting;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** Tries every way to share a handful of pieces among boards; shares no code with the search. */
final class BruteForce {
    /** Least money, the fewest boards at that money, and the longest rest worth keeping that these boards can leave. */
    record Least(BigDecimal money, int boards, BigDecimal longest) implements Comparable<Least> {
        @Override
        public int compareTo(Least other) {
            int byMoney = money.compareTo(other.money);
            int byBoards = byMoney != 0 ? byMoney : Integer.compare(boards, other.boards);
            return byBoards != 0 ? byBoards : other.longest.compareTo(longest);
        }
    }

    /** Answers of before: several tests ask for the same. */
    private static final Map<CuttingProblem, Optional<Least>> ANSWERS = new ConcurrentHashMap<>();

    private final CuttingProblem problem;
    private final List<CuttingProblem.Demand> pieces = new ArrayList<>();
    private final Map<String, Least> known = new HashMap<>();

    private BruteForce(CuttingProblem problem) {
        this.problem = problem;
        for (var demand : problem.pieces()) for (int i = 0; i < demand.count(); i++) pieces.add(demand);
    }

    /** @return null where the boards cannot hold all pieces */
    static Least of(CuttingProblem problem) {
        return ANSWERS.computeIfAbsent(problem, BruteForce::tried).orElse(null);
    }

    private static Optional<Least> tried(CuttingProblem problem) {
        BruteForce all = new BruteForce(problem);
        int[] there = problem.stock().stream()
                .mapToInt(s -> s.available().orElse(all.pieces.size()))
                .toArray();
        return Optional.ofNullable(all.least(0, there));
    }

    private Least least(int done, int[] there) {
        if (done == (1 << pieces.size()) - 1) return new Least(BigDecimal.ZERO, 0, BigDecimal.ZERO);
        String key = done + Arrays.toString(there);
        if (known.containsKey(key)) return known.get(key);
        Least best = null;
        int rest = ((1 << pieces.size()) - 1) & ~done;
        int first = Integer.lowestOneBit(rest);
        for (int set = rest; set > 0; set = (set - 1) & rest) {
            if ((set & first) == 0) continue;
            for (int k = 0; k < there.length; k++) {
                if (there[k] == 0) continue;
                BigDecimal left = left(set, problem.stock().get(k));
                if (left.signum() < 0) continue;
                if (left.compareTo(BigDecimal.valueOf(problem.keepOffcutMm())) < 0) left = BigDecimal.ZERO;
                there[k]--;
                Least after = least(done | set, there);
                there[k]++;
                if (after == null) continue;
                Least here = new Least(
                        after.money().add(problem.stock().get(k).worth()), after.boards() + 1, after.longest().max(left));
                if (best == null || here.compareTo(best) < 0) best = here;
            }
        }
        known.put(key, best);
        return best;
    }

    /** Below 0 where the board can't hold these pieces, those of later stages behind a trim of their own. */
    private BigDecimal left(int set, CuttingProblem.Stock board) {
        BigDecimal used = BigDecimal.valueOf(problem.endTrimMm()).multiply(BigDecimal.valueOf(board.sawnEnd() ? 1 : 2));
        Set<Integer> stages = new HashSet<>();
        int n = 0;
        for (int i = 0; i < pieces.size(); i++) {
            if ((set >> i & 1) == 0) continue;
            if (pieces.get(i).goodFaces() > board.goodFaces()) return BigDecimal.ONE.negate();
            stages.add(pieces.get(i).stage());
            used = used.add(BigDecimal.valueOf(pieces.get(i).lengthMm()));
            n++;
        }
        used = used.add(BigDecimal.valueOf(problem.kerfMm()).multiply(BigDecimal.valueOf(n - 1L)));
        used = used.add(BigDecimal.valueOf(problem.retrimMm()).multiply(BigDecimal.valueOf(stages.size() - 1L)));
        return BigDecimal.valueOf(board.lengthMm()).subtract(used);
    }
}
