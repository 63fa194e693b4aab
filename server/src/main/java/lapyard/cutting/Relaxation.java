package lapyard.cutting;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import lapyard.working.SearchBudget;

/**
 * The cutting problem with fractions of boards allowed, over all patterns: columns are made as they are needed. From
 * the prices of any round comes a bound in exact whole numbers, converged or not: scale the prices down until no
 * bought board is worth more than it costs, and charge what a board on hand is worth beyond its cost once for each
 * that there is.
 *
 * @see "Gilmore and Gomory, Operations Research 9 (1961) 849-859; Farley, Operations Research 38 (1990) 922-923"
 */
final class Relaxation {
    private static final double TOLERANCE = 1e-7;
    private static final int COLUMNS_A_ROUND = 12;

    /** A pattern and how often the fractional plan uses it. */
    record Share(Pattern pattern, double amount) {}

    private final WholeProblem problem;
    private final SearchBudget budget;
    private final Knapsack knapsack;
    private final Master master;
    private final int items;
    private final int[] supplyRow;
    private final int limitedStocks;
    private final double unit;
    private final int scaleBits;
    private final List<Pattern> patterns = new ArrayList<>();
    private final Map<Pattern, Integer> known = new HashMap<>();
    private final int[] start;

    private int[] demand;
    private int[] supply;
    private final long[] worth;
    private final boolean[] open;
    private final long[] enough;
    private long bound;

    Relaxation(WholeProblem problem, SearchBudget budget) {
        this.problem = problem;
        this.budget = budget;
        knapsack = new Knapsack(problem, budget);
        items = problem.items();
        supplyRow = new int[problem.stocks()];
        int limited = 0;
        long dearest = 1;
        for (int k = 0; k < supplyRow.length; k++) {
            supplyRow[k] = problem.supply[k] == WholeProblem.UNLIMITED ? -1 : items + limited++;
            dearest = Math.max(dearest, problem.cost[k]);
        }
        limitedStocks = limited;
        unit = dearest;
        for (long uncut : problem.uncutCost) dearest = Math.max(dearest, uncut);
        long pieces = 1;
        for (int count : problem.demand) pieces += count;
        scaleBits = Math.max(0, Math.min(48, 60 - bits(pieces)) - bits(dearest));
        worth = new long[items];
        open = new boolean[problem.stocks()];
        enough = new long[problem.stocks()];
        master = new Master(items, limited, budget);
        start = new int[items + limited];
        for (int r = 0; r < start.length; r++) {
            patterns.add(null);
            start[r] = r;
        }
        for (int i = 0; i < items; i++) start[i] = add(leastFor(i));
        master.startWith(start);
        of(problem.demand, problem.supply);
    }

    private static int bits(long value) {
        return 64 - Long.numberOfLeadingZeros(value);
    }

    /** One piece on the cheapest board that can always be bought, or left uncut. */
    private Pattern leastFor(int item) {
        int best = Pattern.NONE;
        for (int k = 0; k < problem.stocks(); k++) {
            if (supplyRow[k] >= 0 || !problem.holds(k, item)) continue;
            if (best == Pattern.NONE || problem.cost[k] < problem.cost[best]) best = k;
        }
        return new Pattern(best, new int[] {item}, new int[] {1});
    }

    int add(Pattern pattern) {
        Integer there = known.get(pattern);
        if (there != null) return there;
        int n = pattern.items().length;
        int extra = pattern.stock() != Pattern.NONE && supplyRow[pattern.stock()] >= 0 ? 1 : 0;
        int[] rows = new int[n + extra];
        double[] entries = new double[n + extra];
        for (int i = 0; i < n; i++) {
            rows[i] = pattern.items()[i];
            entries[i] = pattern.counts()[i];
        }
        double cost = 0;
        if (pattern.stock() == Pattern.NONE) {
            for (int i = 0; i < n; i++) cost += problem.uncutCost[pattern.items()[i]] / unit * pattern.counts()[i];
        } else {
            cost = problem.cost[pattern.stock()] / unit;
        }
        if (extra == 1) {
            rows[n] = supplyRow[pattern.stock()];
            entries[n] = 1;
        }
        int column = master.addColumn(cost, rows, entries, n + extra);
        patterns.add(pattern);
        known.put(pattern, column);
        if (demand != null) master.bar(column, !fits(pattern));
        return column;
    }

    /** Sets what is still to be cut and which boards are still there. */
    void of(int[] demandLeft, int[] supplyLeft) {
        demand = demandLeft.clone();
        supply = supplyLeft.clone();
        int[] limited = new int[limitedStocks];
        for (int k = 0; k < supplyRow.length; k++) {
            if (supplyRow[k] >= 0) limited[supplyRow[k] - items] = supply[k];
            open[k] = supplyRow[k] < 0 || supply[k] > 0;
        }
        for (int c = 0; c < patterns.size(); c++) {
            if (patterns.get(c) != null) master.bar(c, !fits(patterns.get(c)));
        }
        master.rightHandSide(demand, limited);
    }

    private boolean fits(Pattern pattern) {
        for (int i = 0; i < pattern.items().length; i++) {
            if (pattern.counts()[i] > demand[pattern.items()[i]]) return false;
        }
        return pattern.stock() == Pattern.NONE || open[pattern.stock()];
    }

    /**
     * Makes columns until none is missing, the bound reaches {@code cutoff}, the bound cannot rise any more, or the
     * rounds or the budget are used up.
     */
    void solve(long cutoff, int rounds) {
        bound = 0;
        for (int round = 0; round < rounds; round++) {
            optimise();
            if (round > 0 && budget.over()) return;
            double[] prices = master.prices();
            for (int i = 0; i < items; i++) {
                worth[i] = demand[i] == 0 ? 0 : Math.max(0, (long) Math.floor(prices[i] * unit * (1L << scaleBits)));
            }
            for (int k = 0; k < open.length; k++) enough[k] = (long) (allowed(k) * (1L << scaleBits));
            knapsack.solve(worth, demand, open, enough);
            bound = Math.max(bound, boundNow());
            if (bound >= cutoff || !addMissing() || bound >= Math.ceil(value() - 1e-6 * Math.max(1, unit * 1e-3))) return;
        }
    }

    private void optimise() {
        try {
            if (master.optimise()) return;
        } catch (ArithmeticException singular) {
            // as where the amounts are below nothing
        }
        master.startWith(start);
        master.optimise();
    }

    private boolean addMissing() {
        boolean any = false;
        int most = -1;
        double mostGain = 0;
        for (int k = 0; k < open.length; k++) {
            if (!open[k]) continue;
            double gain = gain(k);
            if (gain <= TOLERANCE) continue;
            any |= isNew(knapsack.pattern(k));
            if (gain > mostGain) {
                mostGain = gain;
                most = k;
            }
        }
        if (most < 0) return false;
        long above = (long) ((allowed(most) + TOLERANCE * unit) * (1L << scaleBits));
        for (Pattern pattern : knapsack.more(most, above, COLUMNS_A_ROUND)) any |= isNew(pattern);
        return any;
    }

    private boolean isNew(Pattern pattern) {
        int before = master.columns();
        add(pattern);
        return master.columns() > before;
    }

    /** What a board may be worth: its cost, and what its scarcity adds. */
    private double allowed(int stock) {
        double scarce = supplyRow[stock] < 0 ? 0 : Math.max(0, -master.prices()[supplyRow[stock]]);
        return problem.cost[stock] + scarce * unit;
    }

    private double gain(int stock) {
        return (knapsack.best(stock) / (double) (1L << scaleBits) - allowed(stock)) / unit;
    }

    private long boundNow() {
        long most = 1;
        long of = 1;
        for (int k = 0; k < open.length; k++) {
            if (supplyRow[k] >= 0) continue;
            long cost = problem.cost[k] << scaleBits;
            if (lessProduct(cost, of, knapsack.best(k), most)) {
                most = cost;
                of = knapsack.best(k);
            }
        }
        BigInteger up = BigInteger.valueOf(most);
        BigInteger down = BigInteger.valueOf(of);
        BigInteger sum = BigInteger.valueOf(wholeWorth()).multiply(up);
        for (int k = 0; k < open.length; k++) {
            if (supplyRow[k] < 0 || supply[k] == 0) continue;
            BigInteger beyond = BigInteger.valueOf(knapsack.best(k))
                    .multiply(up)
                    .subtract(BigInteger.valueOf(problem.cost[k]).shiftLeft(scaleBits).multiply(down));
            if (beyond.signum() > 0) sum = sum.subtract(beyond.multiply(BigInteger.valueOf(supply[k])));
        }
        BigInteger scaled = sum.signum() <= 0 ? BigInteger.ZERO : sum.divide(down);
        return scaled.negate().shiftRight(scaleBits).negate().longValueExact();
    }

    /** Whether a x b is less than c x d, all 0 or more. */
    private static boolean lessProduct(long a, long b, long c, long d) {
        int high = Long.compare(Math.multiplyHigh(a, b), Math.multiplyHigh(c, d));
        return high < 0 || high == 0 && Long.compareUnsigned(a * b, c * d) < 0;
    }

    /** The most that each board can hold of what the pieces are worth in the last round. */
    long[] boardWorth() {
        long[] values = new long[open.length];
        for (int k = 0; k < open.length; k++) values[k] = knapsack.best(k);
        return values;
    }

    /** As {@link #boardWorth}, of boards that are used up as well. */
    long[] anyBoardWorth() {
        boolean[] all = new boolean[open.length];
        Arrays.fill(all, true);
        knapsack.solve(worth, demand, all, enough);
        return boardWorth();
    }

    /** What all pieces still to be cut are worth in the last round. */
    long wholeWorth() {
        long sum = 0;
        for (int i = 0; i < items; i++) sum = Math.addExact(sum, Math.multiplyExact(worth[i], (long) demand[i]));
        return sum;
    }

    /** What the pieces were worth in the last round, in cost units. */
    double[] prices() {
        return Arrays.stream(worth).mapToDouble(each -> each / (double) (1L << scaleBits)).toArray();
    }

    /** The best bound of the last {@link #solve}, in cost units of the problem, for what was still to be cut then. */
    long bound() {
        return bound;
    }

    /** Value of the fractional plan, in cost units; a bound only when no column is missing, and only nearly exact. */
    double value() {
        return master.value() * unit;
    }

    /** The patterns in use. */
    List<Share> shares() {
        double[] amounts = master.amounts();
        List<Share> shares = new ArrayList<>();
        for (int r = 0; r < amounts.length; r++) {
            Pattern pattern = patterns.get(master.basicColumn(r));
            if (pattern != null && amounts[r] > 1e-9) shares.add(new Share(pattern, amounts[r]));
        }
        return shares;
    }
}
