package lapyard.cutting;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Tries every way to share a handful of pieces among boards; shares no code with the search. */
final class BruteForce {
    /** Least money, and the fewest boards at that money. */
    record Least(BigDecimal money, int boards) implements Comparable<Least> {
        @Override
        public int compareTo(Least other) {
            int byMoney = money.compareTo(other.money);
            return byMoney != 0 ? byMoney : Integer.compare(boards, other.boards);
        }
    }

    private final CuttingProblem problem;
    private final List<CuttingProblem.Demand> pieces = new ArrayList<>();
    private final Map<String, Least> known = new HashMap<>();

    private BruteForce(CuttingProblem problem) {
        this.problem = problem;
        for (var demand : problem.pieces()) for (int i = 0; i < demand.count(); i++) pieces.add(demand);
    }

    /** @return null where the boards cannot hold all pieces */
    static Least of(CuttingProblem problem) {
        BruteForce all = new BruteForce(problem);
        int[] there = problem.stock().stream()
                .mapToInt(s -> s.available().orElse(all.pieces.size()))
                .toArray();
        return all.least(0, there);
    }

    private Least least(int done, int[] there) {
        if (done == (1 << pieces.size()) - 1) return new Least(BigDecimal.ZERO, 0);
        String key = done + Arrays.toString(there);
        if (known.containsKey(key)) return known.get(key);
        Least best = null;
        int rest = ((1 << pieces.size()) - 1) & ~done;
        int first = Integer.lowestOneBit(rest);
        for (int set = rest; set > 0; set = (set - 1) & rest) {
            if ((set & first) == 0) continue;
            for (int k = 0; k < there.length; k++) {
                if (there[k] == 0 || !fits(set, problem.stock().get(k))) continue;
                there[k]--;
                Least after = least(done | set, there);
                there[k]++;
                if (after == null) continue;
                Least here = new Least(after.money().add(problem.stock().get(k).price()), after.boards() + 1);
                if (best == null || here.compareTo(best) < 0) best = here;
            }
        }
        known.put(key, best);
        return best;
    }

    private boolean fits(int set, CuttingProblem.Stock board) {
        BigDecimal used = BigDecimal.valueOf(problem.endTrimMm()).multiply(BigDecimal.valueOf(2));
        int n = 0;
        for (int i = 0; i < pieces.size(); i++) {
            if ((set >> i & 1) == 0) continue;
            if (pieces.get(i).goodFace() && !board.goodFace()) return false;
            used = used.add(BigDecimal.valueOf(pieces.get(i).lengthMm()));
            n++;
        }
        used = used.add(BigDecimal.valueOf(problem.kerfMm()).multiply(BigDecimal.valueOf(n - 1L)));
        return used.compareTo(BigDecimal.valueOf(board.lengthMm())) <= 0;
    }
}
