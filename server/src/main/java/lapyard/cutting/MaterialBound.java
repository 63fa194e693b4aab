package lapyard.cutting;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What the bare length costs if nothing were wasted: boards filled to the end, the cheapest by length first. */
final class MaterialBound {
    private MaterialBound() {}

    /** In cost units, rounded up; never above the best plan that leaves nothing uncut. */
    static long cost(WholeProblem problem) {
        BigInteger wanted = BigInteger.ZERO;
        for (int i = 0; i < problem.items(); i++) {
            wanted = wanted.add(BigInteger.valueOf(problem.weight[i]).multiply(BigInteger.valueOf(problem.demand[i])));
        }
        List<Integer> order = new ArrayList<>();
        for (int k = 0; k < problem.stocks(); k++) order.add(k);
        order.sort(Comparator.comparing(k -> new Rate(problem.cost[k], problem.capacity[k])));
        long sum = 0;
        for (int k : order) {
            BigInteger capacity = BigInteger.valueOf(problem.capacity[k]);
            BigInteger cost = BigInteger.valueOf(problem.cost[k]);
            BigInteger here = capacity.multiply(BigInteger.valueOf(problem.supply[k]));
            // The board that is only partly needed counts by its part, so rounding up stays with the sum.
            if (problem.supply[k] == WholeProblem.UNLIMITED || here.compareTo(wanted) >= 0) return sum + ceiling(cost.multiply(wanted), capacity);
            sum += problem.cost[k] * problem.supply[k];
            wanted = wanted.subtract(here);
        }
        return sum;
    }

    private static long ceiling(BigInteger above, BigInteger below) {
        BigInteger[] parts = above.divideAndRemainder(below);
        return parts[0].longValueExact() + (parts[1].signum() > 0 ? 1 : 0);
    }

    private record Rate(long cost, long capacity) implements Comparable<Rate> {
        @Override
        public int compareTo(Rate other) {
            return Long.compare(
                    Math.multiplyExact(cost, other.capacity), Math.multiplyExact(other.cost, capacity));
        }
    }
}
