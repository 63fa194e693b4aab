package lapyard.stages;

import java.util.Arrays;
import lapyard.stages.Placing.Times;
import lapyard.working.SearchBudget;

/**
 * The earliest that the last task can end, proved: an end is tried, and refused where waits, the work of any stretch of
 * time, or tasks that cannot lie beside each other leave no room for it.
 *
 * @see "Klein and Scholl, Computing lower bounds by destructive improvement, EJOR 112:322-346 (1999)"
 * @see "Baptiste, Le Pape and Nuijten, Satisfiability tests and time-bound adjustments for cumulative scheduling
 *     problems, Annals of Operations Research 92:305-333 (1999): the work that a stretch must hold"
 */
record Bound(Net net, Priority priority, SearchBudget budget) {
    /** Tasks up to which every stretch between a head and a latest end is looked at, and every pair of tasks. */
    private static final int STRETCHES = 500;
    private static final int PAIRS = 150;
    /** The share of the budget that may go into what is proved. */
    private static final double SHARE = 0.3;
    /** Of so few tasks the best schedule is found soon, so that more of the budget may go there. */
    private static final int FEW = 40;
    private static final double SHARE_OF_FEW = 0.6;
    /**
     * An end costs about so many times what the one before it costs. Cheap is what costs such a part of what is left, and no more than what
     * was spent divided by it.
     */
    private static final double DEARER = 1.7;
    private static final double CHEAP = 0.25;

    /** Waits, and all work of each resource from the first head on. */
    int quick() {
        int least = priority.criticalPath;
        for (int r = 0; r < net.resources; r++) {
            long work = 0;
            int from = Integer.MAX_VALUE;
            for (int i = 0; i < net.n; i++) {
                long own = (long) net.duration[i] * net.amount(i, r);
                work += own;
                if (own > 0) from = Math.min(from, priority.head[i]);
            }
            if (work > 0) least = Math.max(least, endOf(r, from, work));
        }
        return least;
    }

    private int endOf(int resource, int from, long work) {
        int unit = from;
        while (work > 0) work -= net.workable(resource, unit++);
        return unit;
    }

    /**
     * @param least proved before
     * @param best  some schedule; where one is found that ends as early as any can, that one
     */
    int best(int least, Times best, Placing placing) {
        if (net.n > STRETCHES) return least;
        StartSearch search = net.n > PAIRS ? null : new StartSearch(net, budget, share(), StartSearch.LISTS);
        int low = least;
        int high = best.last;
        while (low < high && !budget.past(share())) {
            int middle = low + (high - low - 1) / 2;
            if (refuses(middle, search)) low = middle + 1;
            else high = middle;
        }
        return search == null ? low : rise(search, low, best, placing);
    }

    /** Refuses later and later ends, leaving out those that are cheap beside what later ones cost. */
    private int rise(StartSearch search, int from, Times best, Placing placing) {
        int low = from;
        long before = budget.spent();
        double cost = 0;
        while (low < best.last && !budget.past(share())) {
            long spent = budget.spent();
            double cheap = Math.min((budget.turns() * share() - spent) * CHEAP, (spent - before) / CHEAP);
            int over = cost == 0 ? 0 : (int) Math.max(0, Math.log(cheap / cost) / Math.log(DEARER) - 1);
            int end = Math.min(low + over, best.last - 1);
            if (search.refuses(new Windows(net, priority, end))) {
                low = end + 1;
                cost = budget.spent() - spent;
            } else {
                if (search.found() == null) return low;
                placing.better(search.found(), best);
                if (best.last > end) return low;
                cost = budget.turns();
            }
        }
        return low;
    }

    private double share() {
        return net.n <= FEW ? SHARE_OF_FEW : SHARE;
    }

    /** Whether it is proved, without supposing anything, that not all can end by this unit. */
    private boolean refuses(int horizon, StartSearch search) {
        Windows windows = new Windows(net, priority, horizon);
        if (search == null) return !windows.waits() || tooMuchWork(windows, horizon);
        return !search.narrow(windows) || tooMuchWorkShifted(windows, horizon);
    }

    private long[] workable(int resource, int horizon) {
        long[] sum = new long[horizon + 1];
        for (int t = 0; t < horizon; t++) sum[t + 1] = sum[t] + net.workable(resource, t);
        return sum;
    }

    /** Tasks that lie wholly in a stretch need more work than it has. */
    private boolean tooMuchWork(Windows windows, int horizon) {
        Integer[] byEnd = new Integer[net.n];
        for (int i = 0; i < net.n; i++) byEnd[i] = i;
        Arrays.sort(byEnd, (a, b) -> Integer.compare(windows.end[a], windows.end[b]));
        int[] from = Arrays.stream(windows.start).distinct().sorted().toArray();
        for (int r = 0; r < net.resources; r++) {
            long[] room = workable(r, horizon);
            for (int a : from) {
                long work = 0;
                for (int task : byEnd) {
                    int own = net.amount(task, r);
                    if (own == 0 || windows.start[task] < a) continue;
                    work += (long) own * net.duration[task];
                    if (work > room[windows.end[task]] - room[a]) return true;
                }
            }
            budget.spend((long) from.length * net.n);
        }
        return false;
    }

    /** As {@link #tooMuchWork}, also counting what must lie in the stretch of tasks that reach beyond it. */
    private boolean tooMuchWorkShifted(Windows windows, int horizon) {
        int[] from = Arrays.stream(windows.start).distinct().sorted().toArray();
        int[] to = Arrays.stream(windows.end).distinct().sorted().toArray();
        for (int r = 0; r < net.resources; r++) {
            long[] room = workable(r, horizon);
            int[] users = net.users(r);
            for (int a : from) {
                for (int b : to) {
                    if (b <= a) continue;
                    long work = 0;
                    for (int task : users) work += (long) net.amount(task, r) * windows.inside(task, a, b);
                    if (work > room[b] - room[a]) return true;
                }
            }
            budget.spend((long) from.length * to.length * users.length / 2);
        }
        return false;
    }
}
