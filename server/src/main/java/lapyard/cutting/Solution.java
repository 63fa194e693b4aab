package lapyard.cutting;

import java.util.LinkedHashMap;
import java.util.Map;

/** Boards chosen so far: patterns with how often each is cut. Cost counts money first and boards second. */
final class Solution {
    private final WholeProblem problem;
    private final Map<Pattern, Integer> patterns = new LinkedHashMap<>();
    private long cost;
    private long boards;
    private long money;
    private long uncut;

    Solution(WholeProblem problem) {
        this.problem = problem;
    }

    Solution(Solution other) {
        this(other.problem);
        other.patterns.forEach(this::add);
    }

    void add(Pattern pattern, int count) {
        if (count == 0) return;
        patterns.merge(pattern, count, Integer::sum);
        if (pattern.stock() == Pattern.NONE) {
            for (int i = 0; i < pattern.items().length; i++) {
                cost += problem.uncutCost[pattern.items()[i]] * pattern.counts()[i] * count;
            }
            uncut += (long) pattern.pieces() * count;
        } else {
            cost += problem.cost[pattern.stock()] * count;
            money += problem.price[pattern.stock()] * count;
            boards += count;
        }
    }

    void addAll(Solution other) {
        other.patterns.forEach(this::add);
    }

    Map<Pattern, Integer> patterns() {
        return patterns;
    }

    long cost() {
        return cost;
    }

    /** In price units of the problem. */
    long money() {
        return money;
    }

    long boards() {
        return boards;
    }

    long uncut() {
        return uncut;
    }

    /** The longest rest on one of its boards, in weight units; 0 without a board. */
    int longestRest() {
        return patterns.keySet().stream().filter(pattern -> pattern.stock() != Pattern.NONE).mapToInt(pattern -> pattern.left(problem)).max().orElse(0);
    }
}
