package lapyard.cutting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapyard.working.Effort;
import lapyard.working.SearchBudget;

/**
 * Among plans of equal money and boards, one that is better to work with: first the shortest boards on hand, then the
 * longest single offcut, if it is worth keeping, then the fewest times that a board goes on the saw stop (each board once
 * for each length cut from it). Nothing is bought for it.
 *
 * @param keep shortest offcut worth keeping, in weight units
 */
record Tidying(WholeProblem problem, Filling filling, Effort effort, SearchBudget budget, long keep) {
    private static final int TARGETS = 12;
    private static final int MOST_PATTERNS = 250;

    Solution tidy(Solution plan) {
        Solution spared = sparing(plan);
        if (plan.patterns().size() > MOST_PATTERNS || plan.boards() < 2) return spared;
        Solution kept = new LongestOffcut(problem, keep, effort, budget).search(longestOffcut(spared));
        return fewestSettings(kept);
    }

    /** Moves what lies on a board on hand to a shorter one that waits and costs no more, light boards first. */
    Solution sparing(Solution plan) {
        int[] free = problem.supply.clone();
        plan.patterns().forEach((pattern, count) -> {
            if (pattern.stock() != Pattern.NONE && limited(pattern.stock())) free[pattern.stock()] -= count;
        });
        Map<Pattern, Integer> lines = new LinkedHashMap<>(plan.patterns());
        List<Pattern> order = new ArrayList<>(lines.keySet());
        order.removeIf(p -> p.stock() == Pattern.NONE || !limited(p.stock()));
        order.sort(Comparator.comparingLong(p -> p.weight(problem)));
        for (Pattern pattern : order) {
            long weight = pattern.weight(problem);
            int faces = pattern.goodFaces(problem);
            for (int k = problem.stocks() - 1; k > pattern.stock(); k--) {
                int times = Math.min(free[k], lines.getOrDefault(pattern, 0));
                if (!limited(k) || problem.cost[k] > problem.cost[pattern.stock()]) continue;
                if (problem.capacity[k] >= problem.capacity[pattern.stock()]) continue;
                if (problem.capacity[k] < weight || problem.stockFaces[k] < faces) continue;
                change(lines, pattern, -times);
                change(lines, pattern.on(k), times);
                free[k] -= times;
                free[pattern.stock()] += times;
            }
        }
        Solution spared = new Solution(problem);
        lines.forEach(spared::add);
        return spared;
    }

    private boolean limited(int stock) {
        return problem.supply[stock] != WholeProblem.UNLIMITED;
    }

    private int left(Pattern pattern) {
        return pattern.left(problem);
    }

    /** By exchanges between boards alone: a longer rest that is worth keeping on one board, or less money. */
    Solution longestOffcut(Solution plan) {
        List<Pattern> targets = new ArrayList<>(plan.patterns().keySet());
        targets.removeIf(p -> p.stock() == Pattern.NONE);
        targets.sort(Comparator.comparingInt(this::left).reversed());
        Solution best = plan;
        int most = best.longestRest();
        for (Pattern target : targets.subList(0, Math.min(TARGETS, targets.size()))) {
            Map<Pattern, Integer> others = new LinkedHashMap<>(plan.patterns());
            change(others, target, -1);
            Pattern emptied = emptied(target, others);
            Solution here = new Solution(problem);
            others.forEach(here::add);
            if (emptied.items().length > 0) here.add(emptied, 1);
            int rest = here.longestRest();
            if (here.cost() < best.cost() || here.cost() == best.cost() && rest > most && rest >= keep) {
                best = here;
                most = rest;
            }
        }
        return best;
    }

    /** Moves pieces of one board to room on others, or swaps them for shorter ones, the largest gain first. */
    private Pattern emptied(Pattern target, Map<Pattern, Integer> others) {
        Pattern now = target;
        while (true) {
            int most = 0;
            Pattern with = null;
            int given = -1;
            int taken = -1;
            for (Pattern other : others.keySet()) {
                if (other.stock() == Pattern.NONE) continue;
                int room = left(other);
                budget.spend((long) now.items().length * (other.items().length + 1));
                for (int mine : now.items()) {
                    if (problem.stockFaces[other.stock()] < problem.itemFaces[mine]) continue;
                    int size = problem.weight[mine];
                    if (size <= room && size > most) {
                        most = size;
                        with = other;
                        given = mine;
                        taken = -1;
                    }
                    for (int theirs : other.items()) {
                        int gain = size - problem.weight[theirs];
                        if (gain <= most || gain > room) continue;
                        if (problem.stockFaces[now.stock()] < problem.itemFaces[theirs]) continue;
                        most = gain;
                        with = other;
                        given = mine;
                        taken = theirs;
                    }
                }
            }
            if (with == null) break;
            change(others, with, -1);
            change(others, exchanged(with, taken, given), 1);
            now = exchanged(now, given, taken);
        }
        int[] supply = new int[problem.stocks()];
        for (int k = 0; k < supply.length; k++) supply[k] = problem.supply[k] == WholeProblem.UNLIMITED ? 1 : 0;
        return filling.cheapest(now, supply);
    }

    private Solution fewestSettings(Solution plan) {
        Map<Pattern, Integer> lines = new LinkedHashMap<>(plan.patterns());
        Pattern keeps = lines.keySet().stream()
                .filter(p -> p.stock() != Pattern.NONE && left(p) >= keep)
                .max(Comparator.comparingInt(this::left))
                .orElse(null);
        while (!budget.over() && swapOnce(lines, keeps)) {}
        Solution tidy = new Solution(problem);
        lines.forEach(tidy::add);
        return tidy;
    }

    /** One round over all pairs of boards; each swap of two pieces that saves settings is made as often as it can be. */
    private boolean swapOnce(Map<Pattern, Integer> lines, Pattern keeps) {
        boolean any = false;
        List<Pattern> all = new ArrayList<>(lines.keySet());
        for (int i = 0; i < all.size(); i++) {
            for (int j = i + 1; j < all.size(); j++) any |= swap(lines, all.get(i), all.get(j), keeps);
        }
        return any;
    }

    private boolean swap(Map<Pattern, Integer> lines, Pattern a, Pattern b, Pattern keeps) {
        int times = Math.min(lines.getOrDefault(a, 0), lines.getOrDefault(b, 0));
        if (times == 0 || a.equals(keeps) || b.equals(keeps)) return false;
        if (a.stock() == Pattern.NONE || b.stock() == Pattern.NONE) return false;
        budget.spend((long) a.items().length * b.items().length);
        for (int mine : a.items()) {
            for (int theirs : b.items()) {
                int more = problem.weight[theirs] - problem.weight[mine];
                if (mine == theirs || more > left(a) || -more > left(b)) continue;
                if (problem.stockFaces[b.stock()] < problem.itemFaces[mine]) continue;
                if (problem.stockFaces[a.stock()] < problem.itemFaces[theirs]) continue;
                Pattern newA = exchanged(a, mine, theirs);
                Pattern newB = exchanged(b, theirs, mine);
                int before = a.items().length + b.items().length;
                if (newA.items().length + newB.items().length >= before) continue;
                change(lines, a, -times);
                change(lines, b, -times);
                change(lines, newA, times);
                change(lines, newB, times);
                return true;
            }
        }
        return false;
    }

    private Pattern exchanged(Pattern pattern, int out, int in) {
        int[] copies = new int[problem.items()];
        for (int i = 0; i < pattern.items().length; i++) copies[pattern.items()[i]] = pattern.counts()[i];
        if (out >= 0) copies[out]--;
        if (in >= 0) copies[in]++;
        return Pattern.of(pattern.stock(), copies);
    }

    private static void change(Map<Pattern, Integer> lines, Pattern pattern, int by) {
        int now = lines.merge(pattern, by, Integer::sum);
        if (now == 0) lines.remove(pattern);
    }
}
