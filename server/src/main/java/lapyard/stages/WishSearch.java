package lapyard.stages;

import java.util.Arrays;
import java.util.SplittableRandom;
import lapyard.stages.Placing.Times;
import lapyard.working.SearchBudget;

/**
 * Search where more is wished than an early end: first that due tasks are not late, then that the last period of work is
 * an early one, then that the groups' ends are early, added up, then that groups are open for a short time, then the early
 * end itself. Tasks are taken by their latest
 * end, put off a little the later their group stands; then single groups and tasks are put off or brought forward.
 */
final class WishSearch {
    /** How far groups are put off against each other: from none to one strictly behind the other. */
    private static final double[] PUT_OFF = {0, 0.25, 0.5, 1, 1.5, 2, 4, 16};

    private final Net net;
    private final Priority priority;
    private final Placing placing;
    private final SearchBudget budget;
    private final Times best;
    private final SplittableRandom random = new SplittableRandom(1);
    private long[] bestScore;

    WishSearch(Net net, Priority priority, Placing placing, SearchBudget budget, Times best) {
        this.net = net;
        this.priority = priority;
        this.placing = placing;
        this.budget = budget;
        this.best = best;
        bestScore = score(best);
    }

    void run() {
        double[] latest = latestEnds();
        double apart = best.last / (double) Math.max(1, net.groups);
        double[] key = latest.clone();
        double[] bestKey = latest.clone();
        Times times = new Times(net.n);
        for (double putOff : PUT_OFF) {
            for (int i = 0; i < net.n; i++) {
                key[i] = latest[i] + (net.group[i] < 0 ? 0 : putOff * apart * net.group[i]);
            }
            if (place(key, times)) bestKey = key.clone();
            if (budget.over()) return;
        }
        while (!budget.over() && net.n > 1) {
            System.arraycopy(bestKey, 0, key, 0, net.n);
            // where keys put groups far apart, one task passes another only by a long leap
            double reach = random.nextInt(4) == 0
                    ? 1 + Arrays.stream(key).max().orElse(0) - Arrays.stream(key).min().orElse(0)
                    : Math.max(1, best.last);
            double by = (random.nextDouble() - 0.5) * reach * (random.nextInt(3) == 0 ? 1 : 0.2);
            int task = random.nextInt(net.n);
            boolean whole = net.group[task] >= 0 && random.nextBoolean();
            for (int i = 0; i < net.n; i++) {
                if (i == task || whole && net.group[i] == net.group[task]) key[i] += by;
            }
            if (place(key, times)) bestKey = key.clone();
        }
    }

    /** Places by these keys, and to and fro after that; whether it is as good as the best or better. */
    private boolean place(double[] key, Times times) {
        int[] order = priority.order(key);
        placing.forward(order, times);
        budget.spend(8L * net.n);
        boolean kept = keep(times);
        placing.toAndFro(times, order);
        return keep(times) | kept;
    }

    private boolean keep(Times times) {
        long[] score = score(times);
        int compared = Arrays.compare(score, bestScore);
        if (compared < 0) {
            best.set(times);
            bestScore = score;
            budget.renew();
        }
        return compared <= 0;
    }

    /** Latest ends where each due task is to be in time. */
    private double[] latestEnds() {
        double[] ends = new double[net.n];
        for (int i = net.n - 1; i >= 0; i--) {
            int task = net.inOrder[i];
            double latest = Math.min(priority.latestEnd[task], net.due[task]);
            for (int s = 0; s < net.after[task].length; s++) {
                int next = net.after[task][s];
                latest = Math.min(latest, ends[next] - net.afterLag[task][s] - net.duration[next]);
            }
            ends[task] = latest;
        }
        return ends;
    }

    private long[] score(Times times) {
        long late = 0;
        int[] first = new int[net.groups];
        int[] last = new int[net.groups];
        Arrays.fill(first, Integer.MAX_VALUE);
        for (int i = 0; i < net.n; i++) {
            late += Math.max(0, (long) times.end[i] - net.due[i]);
            int group = net.group[i];
            if (group >= 0) {
                first[group] = Math.min(first[group], times.start[i]);
                last[group] = Math.max(last[group], times.end[i]);
            }
        }
        long ready = 0;
        long open = 0;
        for (int g = 0; g < net.groups; g++) {
            ready += last[g];
            open += last[g] - first[g];
        }
        return new long[] {late, (times.last + net.period - 1) / net.period, ready, open, times.last};
    }
}
