package lapyard.stages;

import java.util.Arrays;

/**
 * The earliest that the last task can end, proved: an end is tried, and refused where waits, the work of any stretch of
 * time, or tasks that cannot lie beside each other leave no room for it.
 *
 * @see "Klein and Scholl, Computing lower bounds by destructive improvement, EJOR 112:322-346 (1999)"
 * @see "Baptiste, Le Pape and Nuijten, Satisfiability tests and time-bound adjustments for cumulative scheduling
 *     problems, Annals of Operations Research 92:305-333 (1999): the work that a stretch must hold"
 * @see "Carlier and Pinson, Adjustment of heads and tails for the job-shop problem, EJOR 78:146-161 (1994); Martin and Shmoys, A
 *     new approach to computing optimal schedules for the job-shop scheduling problem, IPCO 1996: places tried and left out"
 */
record Bound(Net net, Priority priority, StagingBudget budget) {
    /** Tasks up to which every stretch between a head and a latest end is looked at, and every pair of tasks. */
    private static final int STRETCHES = 500;
    private static final int PAIRS = 150;
    /** The share of the budget that may go into what is proved. */
    private static final double SHARE = 0.3;
    /** Of so few tasks the best schedule is found soon, so that more of the budget may go there. */
    private static final int FEW = 40;
    private static final double SHARE_OF_FEW = 0.6;

    /** Waits, and all work of each resource from the first head on. */
    int quick() {
        int least = priority.criticalPath;
        for (int r = 0; r < net.resources; r++) {
            long work = 0;
            int from = Integer.MAX_VALUE;
            for (int i = 0; i < net.n; i++) {
                long own = (long) net.duration[i] * amount(i, r);
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
     * @param least  proved before
     * @param upper  an end that is reached by some schedule
     */
    int best(int least, int upper) {
        if (net.n > STRETCHES) return least;
        int low = least;
        int high = upper;
        while (low < high && !budget.past(share())) {
            int middle = low + (high - low - 1) / 2;
            if (refuses(middle)) low = middle + 1;
            else high = middle;
        }
        if (net.n > PAIRS || low == upper) return low;
        low = bySets(low, upper);
        while (low < upper && !budget.past(share()) && refusedByTrying(low)) low++;
        return low;
    }

    private double share() {
        return net.n <= FEW ? SHARE_OF_FEW : SHARE;
    }

    private boolean refusedByTrying(int horizon) {
        Windows windows = new Windows(net, priority, horizon);
        return refuted(windows) || noPlaceLeft(windows) || tooMuchWorkShifted(windows, horizon)
                || new StartSearch(net, budget, share()).refuses(windows);
    }

    /**
     * Leaves out the first and the last places of each task, half of them at a time, where it leaves no room for the others
     * there; true where a task has no place left. Works again on what has become narrower until nothing does.
     */
    private boolean noPlaceLeft(Windows windows) {
        boolean narrower = true;
        while (narrower) {
            narrower = false;
            for (int task = 0; task < net.n; task++) {
                if (net.duration[task] == 0 || net.used[task].length == 0) continue;
                for (boolean early : new boolean[] {true, false}) {
                    int some = windows.places(task) / 2;
                    while (some > 0) {
                        if (budget.past(share())) return false;
                        Windows tried = new Windows(windows);
                        tried.only(task, some, early);
                        if (!refuted(tried)) {
                            some /= 2;
                            continue;
                        }
                        narrower = true;
                        windows.only(task, windows.places(task) - some, !early);
                        if (refuted(windows)) return true;
                        some = Math.min(some, windows.places(task) / 2);
                    }
                }
            }
        }
        return false;
    }

    private boolean refuted(Windows windows) {
        boolean refuted = windows.refuted();
        budget.spend(windows.turns());
        return refuted;
    }

    /** As far as sets of tasks that can be worked on at once refuse. */
    private int bySets(int least, int upper) {
        SetBound sets = new SetBound(net, budget);
        int low = least;
        int high = upper;
        while (low < high && !budget.past(share())) {
            int middle = low + (high - low - 1) / 2;
            Windows windows = new Windows(net, priority, middle);
            if (refuted(windows) || sets.refuses(windows, middle, share())) low = middle + 1;
            else high = middle;
        }
        return low;
    }

    /** Whether it is proved that not all can end by this unit. */
    boolean refuses(int horizon) {
        Windows windows = new Windows(net, priority, horizon);
        if (net.n <= PAIRS) {
            if (refuted(windows)) return true;
        } else if (!windows.waits()) {
            return true;
        }
        return net.n <= PAIRS ? tooMuchWorkShifted(windows, horizon) : tooMuchWork(windows, horizon);
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
                    int own = amount(task, r);
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
            int[] users = users(r);
            for (int a : from) {
                for (int b : to) {
                    if (b <= a) continue;
                    long work = 0;
                    for (int task : users) work += (long) amount(task, r) * windows.inside(task, a, b);
                    if (work > room[b] - room[a]) return true;
                }
            }
            budget.spend((long) from.length * to.length * users.length / 2);
        }
        return false;
    }

    private int[] users(int resource) {
        int[] users = new int[net.n];
        int count = 0;
        for (int i = 0; i < net.n; i++) if (amount(i, resource) > 0 && net.duration[i] > 0) users[count++] = i;
        return Arrays.copyOf(users, count);
    }

    private int amount(int task, int resource) {
        for (int u = 0; u < net.used[task].length; u++) if (net.used[task][u] == resource) return net.amount[task][u];
        return 0;
    }
}
