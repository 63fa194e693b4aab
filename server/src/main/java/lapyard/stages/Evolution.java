package lapyard.stages;

import java.util.Arrays;
import java.util.SplittableRandom;
import lapyard.stages.Placing.Times;
import lapyard.working.SearchBudget;

/**
 * Search for the earliest end: a population of orders, crossed and shaken; each child is placed, pushed to the latest
 * and back to the earliest. A population that has grown alike makes room for a new one.
 *
 * @see "Valls, Ballestín and Quintanilla, A hybrid genetic algorithm for the RCPSP, EJOR 185:495-508 (2008)"
 * @see "Hartmann, A competitive genetic algorithm for RCPSP, Naval Research Logistics 45:733-750 (1998): two-point crossing"
 */
final class Evolution {
    private static final double SHAKE = 0.05;

    /** An order and the schedule that it gives. */
    private static final class One {
        final int[] order;
        final Times times;
        long mark;

        One(int n) {
            order = new int[n];
            times = new Times(n);
        }
    }

    private final Net net;
    private final Priority priority;
    private final Placing placing;
    private final SearchBudget budget;
    private final int bound;
    private final SplittableRandom random = new SplittableRandom(1);
    private final Times best;
    private final boolean[] taken;

    /** @param best is replaced by whatever is better */
    Evolution(Net net, Priority priority, Placing placing, SearchBudget budget, int bound, Times best) {
        this.net = net;
        this.priority = priority;
        this.placing = placing;
        this.budget = budget;
        this.bound = bound;
        this.best = best;
        taken = new boolean[net.n];
    }

    void run() {
        int round = 0;
        while (!done()) {
            population(round++);
        }
    }

    private boolean done() {
        return best.last <= bound || budget.over();
    }

    private void population(int round) {
        int size = net.n <= 40 ? 30 + 10 * Math.min(round, 5) : 40 + 10 * Math.min(round, 6);
        One[] all = new One[size];
        for (int i = 0; i < size && !done(); i++) {
            all[i] = new One(net.n);
            sample(all[i].order, i);
            place(all[i]);
        }
        if (done()) return;
        int own = Integer.MAX_VALUE;
        int idle = 0;
        One child = new One(net.n);
        int patience = 12 * size + 4 * net.n;
        while (idle < patience && !done()) {
            One mother = pick(all);
            One father = pick(all);
            cross(mother, father, child.order);
            shake(child.order);
            place(child);
            idle++;
            if (child.times.last < own) {
                own = child.times.last;
                idle = 0;
            }
            int worst = random.nextInt(size);
            for (int t = 0; t < 4; t++) {
                int other = random.nextInt(size);
                if (all[other].times.last > all[worst].times.last) worst = other;
            }
            if (child.times.last <= all[worst].times.last && fresh(all, child)) {
                One free = all[worst];
                all[worst] = child;
                child = free;
            }
        }
    }

    private boolean fresh(One[] all, One child) {
        for (One one : all) {
            if (one.mark == child.mark) return false;
        }
        return true;
    }

    private One pick(One[] all) {
        One a = all[random.nextInt(all.length)];
        One b = all[random.nextInt(all.length)];
        return a.times.last <= b.times.last ? a : b;
    }

    private void place(One one) {
        placing.forward(one.order, one.times);
        placing.toAndFro(one.times, one.order);
        long mark = 17;
        for (int start : one.times.start) mark = mark * 0x9E3779B97F4A7C15L + start + 1;
        one.mark = mark;
        if (one.times.last < best.last) {
            best.set(one.times);
            budget.renew();
            budget.tell(best.last, bound);
        }
    }

    /** A random order in which tasks of early latest ends tend to come first. */
    private void sample(int[] order, int number) {
        int[] open = new int[net.n];
        int[] free = new int[net.n];
        int frees = 0;
        for (int i = 0; i < net.n; i++) {
            open[i] = net.before[i].length;
            if (open[i] == 0) free[frees++] = i;
        }
        double[] weight = new double[net.n];
        boolean plain = number % 4 == 3;
        for (int done = 0; done < net.n; done++) {
            int latest = Integer.MIN_VALUE;
            for (int f = 0; f < frees; f++) latest = Math.max(latest, priority.latestEnd[free[f]]);
            double sum = 0;
            for (int f = 0; f < frees; f++) {
                double regret = latest - priority.latestEnd[free[f]] + 1.0;
                weight[f] = plain ? 1 : number == 0 && regret > 1 ? Math.pow(regret, 6) : regret;
                sum += weight[f];
            }
            double throwAt = random.nextDouble() * sum;
            int chosen = 0;
            while (chosen < frees - 1 && (throwAt -= weight[chosen]) > 0) chosen++;
            int task = free[chosen];
            free[chosen] = free[--frees];
            order[done] = task;
            for (int next : net.after[task]) if (--open[next] == 0) free[frees++] = next;
        }
    }

    /** The middle part in the father's order, the rest in the mother's. */
    private void cross(One mother, One father, int[] child) {
        int n = net.n;
        int a = random.nextInt(n);
        int b = random.nextInt(n);
        int from = Math.min(a, b);
        int to = Math.max(a, b) + 1;
        Arrays.fill(taken, false);
        System.arraycopy(mother.order, 0, child, 0, from);
        for (int i = 0; i < from; i++) taken[child[i]] = true;
        int at = from;
        for (int i = 0; i < n && at < to; i++) {
            int task = father.order[i];
            if (!taken[task]) {
                taken[task] = true;
                child[at++] = task;
            }
        }
        for (int i = from; i < n && at < n; i++) {
            int task = mother.order[i];
            if (!taken[task]) child[at++] = task;
        }
    }

    private void shake(int[] order) {
        for (int i = 0; i < order.length - 1; i++) {
            if (random.nextDouble() < SHAKE && !waits(order[i + 1], order[i])) {
                int task = order[i];
                order[i] = order[i + 1];
                order[i + 1] = task;
            }
        }
    }

    private boolean waits(int later, int earlier) {
        for (int task : net.before[later]) if (task == earlier) return true;
        return false;
    }
}
