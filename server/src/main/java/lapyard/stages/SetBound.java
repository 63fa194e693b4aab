package lapyard.stages;

import java.util.Arrays;
import java.util.BitSet;
import lapyard.working.CoverProgramme;

/**
 * Refuses an end by the sets of tasks that can be worked on at once. The ends of the windows part time into stretches; in
 * each unit of a stretch some set of the tasks whose windows hold the stretch is worked on, no task together with one that
 * it waits for, no more than each resource has. If for some worth of a unit of each task the richest sets of all units
 * together are worth less than all tasks, the tasks have no room. Such a worth is sought by column generation, each
 * column being the richest sets of all stretches; whether it refuses the end is then decided in whole numbers.
 *
 * @see "Mingozzi, Maniezzo, Ricciardelli and Bianco, An exact algorithm for the resource-constrained project scheduling
 *     problem based on a new mathematical formulation, Management Science 44 (1998); Brucker and Knust, A linear programming
 *     and constraint propagation-based lower bound for the RCPSP, EJOR 127 (2000)"
 */
final class SetBound {
    private static final int MOST_ROUNDS = 300;
    /** Sets looked at in one stretch, at most. */
    private static final int MOST_SETS = 20_000;
    private static final long SCALE = 1L << 30;

    private final Net net;
    private final StagingBudget budget;
    /** Tasks that cannot be worked on in one unit: one waits for the other, or they use too much together. */
    private final BitSet[] apart;

    private int[] tasks;
    /** By stretch: its worked units, and the tasks whose windows hold it. */
    private int[] units;
    private int[][] alive;
    private int stretches;

    // the search for the richest set of a stretch
    private long[] worth;
    private int[] among;
    private long[] rest;
    private final int[] left;
    private final int[] chosen;
    private int chosenCount;
    private long best;
    private int[] bestSet = new int[0];
    private int sets;

    SetBound(Net net, StagingBudget budget) {
        this.net = net;
        this.budget = budget;
        this.left = new int[net.resources];
        this.chosen = new int[net.n];
        this.apart = apart();
    }

    private BitSet[] apart() {
        BitSet[] behind = new BitSet[net.n];
        for (int k = net.n - 1; k >= 0; k--) {
            int task = net.inOrder[k];
            behind[task] = new BitSet(net.n);
            for (int next : net.after[task]) {
                behind[task].set(next);
                behind[task].or(behind[next]);
            }
        }
        BitSet[] both = new BitSet[net.n];
        for (int i = 0; i < net.n; i++) both[i] = (BitSet) behind[i].clone();
        for (int i = 0; i < net.n; i++) for (int j = behind[i].nextSetBit(0); j >= 0; j = behind[i].nextSetBit(j + 1)) both[j].set(i);
        return both;
    }

    /** @param share of the budget after which it gives up, refusing nothing */
    boolean refuses(Windows windows, int horizon, double share) {
        tasks = new int[net.n];
        int count = 0;
        for (int i = 0; i < net.n; i++) if (net.duration[i] > 0 && net.used[i].length > 0) tasks[count++] = i;
        tasks = Arrays.copyOf(tasks, count);
        if (count == 0) return false;
        stretches(windows, horizon);
        double[] covers = new double[count];
        for (int t = 0; t < count; t++) {
            for (int s = 0; s < stretches; s++) if (holds(s, tasks[t])) covers[t] += units[s];
            covers[t] /= net.duration[tasks[t]];
            // the windows leave it no room
            if (covers[t] < 1) return true;
        }
        double[] costs = new double[count];
        Arrays.fill(costs, 1);
        CoverProgramme programme = new CoverProgramme(covers, costs);
        worth = new long[net.n];
        for (int round = 0; round < MOST_ROUNDS && !budget.past(share); round++) {
            // all tasks can be covered by sets, in parts
            if (programme.solve() <= 1) return false;
            double most = 0;
            for (int t = 0; t < count; t++) most = Math.max(most, programme.price(t) / net.duration[tasks[t]]);
            long all = 0;
            for (int t = 0; t < count; t++) {
                worth[tasks[t]] = (long) (programme.price(t) / net.duration[tasks[t]] / most * SCALE);
                all += worth[tasks[t]] * net.duration[tasks[t]];
            }
            double[] entering = new double[count];
            long there = 0;
            for (int s = 0; s < stretches; s++) {
                there += units[s] * richest(s);
                if (sets > MOST_SETS) return false;
                for (int task : bestSet) entering[Arrays.binarySearch(tasks, task)] += (double) units[s] / net.duration[task];
            }
            budget.spend((long) count * count);
            if (there < all) return true;
            if (!programme.enter(1, entering)) return false;
        }
        return false;
    }

    private boolean holds(int stretch, int task) {
        return Arrays.binarySearch(alive[stretch], task) >= 0;
    }

    private void stretches(Windows windows, int horizon) {
        int[] at = new int[2 * tasks.length];
        for (int t = 0; t < tasks.length; t++) {
            at[2 * t] = windows.start[tasks[t]];
            at[2 * t + 1] = windows.end[tasks[t]];
        }
        at = Arrays.stream(at).sorted().distinct().toArray();
        units = new int[at.length];
        alive = new int[at.length][];
        stretches = 0;
        for (int k = 0; k + 1 < at.length; k++) {
            int worked = 0;
            for (int unit = at[k]; unit < Math.min(at[k + 1], horizon); unit++) if (net.worked(unit)) worked++;
            if (worked == 0) continue;
            int[] here = new int[tasks.length];
            int count = 0;
            for (int task : tasks) if (windows.start[task] <= at[k] && windows.end[task] >= at[k + 1]) here[count++] = task;
            if (count == 0) continue;
            units[stretches] = worked;
            alive[stretches++] = Arrays.copyOf(here, count);
        }
    }

    /** @return the worth of the richest set of tasks of a stretch; {@code bestSet} holds it */
    private long richest(int stretch) {
        among = Arrays.stream(alive[stretch]).filter(task -> worth[task] > 0).boxed()
                .sorted((a, b) -> worth[a] != worth[b] ? Long.compare(worth[b], worth[a]) : Integer.compare(a, b))
                .mapToInt(Integer::intValue).toArray();
        rest = new long[among.length + 1];
        for (int i = among.length - 1; i >= 0; i--) rest[i] = rest[i + 1] + worth[among[i]];
        System.arraycopy(net.capacity, 0, left, 0, left.length);
        best = 0;
        bestSet = new int[0];
        chosenCount = 0;
        sets = 0;
        take(0, 0);
        budget.spend(sets + 2L * among.length);
        return best;
    }

    private void take(int from, long sum) {
        if (sum > best) {
            best = sum;
            bestSet = Arrays.copyOf(chosen, chosenCount);
        }
        for (int i = from; i < among.length && sum + rest[i] > best && sets <= MOST_SETS; i++) {
            int task = among[i];
            sets++;
            if (!fits(task)) continue;
            use(task, -1);
            chosen[chosenCount++] = task;
            take(i + 1, sum + worth[task]);
            chosenCount--;
            use(task, 1);
        }
    }

    private boolean fits(int task) {
        for (int u = 0; u < net.used[task].length; u++) if (net.amount[task][u] > left[net.used[task][u]]) return false;
        for (int i = 0; i < chosenCount; i++) if (apart[task].get(chosen[i])) return false;
        return true;
    }

    private void use(int task, int sign) {
        for (int u = 0; u < net.used[task].length; u++) left[net.used[task][u]] += sign * net.amount[task][u];
    }
}
