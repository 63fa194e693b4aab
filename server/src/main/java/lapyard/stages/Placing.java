package lapyard.stages;

import java.util.Arrays;
import lapyard.working.BrokenRule;

/**
 * When each task begins and ends, made by taking tasks one by one and placing each as early, or as late, as it goes.
 *
 * @see "Kolisch, Serial and parallel resource-constrained project scheduling methods revisited, EJOR 90:320-333 (1996)"
 * @see "Valls, Ballestín and Quintanilla, Justification and RCPSP, EJOR 165:375-386 (2005): the passes to and fro"
 */
final class Placing {
    private final Net net;
    private final StagingBudget budget;
    private final int resources;
    private int[] held = new int[0];
    private int heldTo;
    private final long[] keys;

    Placing(Net net, StagingBudget budget) {
        this.net = net;
        this.budget = budget;
        resources = net.resources;
        keys = new long[net.n];
    }

    /** A schedule; {@code start} and {@code end} in clock units. */
    static final class Times {
        final int[] start;
        final int[] end;
        int last;

        Times(int n) {
            start = new int[n];
            end = new int[n];
        }

        void set(Times other) {
            System.arraycopy(other.start, 0, start, 0, start.length);
            System.arraycopy(other.end, 0, end, 0, end.length);
            last = other.last;
        }
    }

    /** Each task as early as it goes, in this order, which puts none before what it waits for. */
    void forward(int[] order, Times into) {
        clear();
        int last = 0;
        for (int task : order) {
            int earliest = net.notBefore[task];
            int[] before = net.before[task];
            int[] lags = net.beforeLag[task];
            for (int p = 0; p < before.length; p++) {
                int free = into.end[before[p]] + lags[p];
                if (free > earliest) earliest = free;
            }
            early(task, earliest, into);
            if (into.end[task] > last) last = into.end[task];
        }
        into.last = last;
    }

    private void early(int task, int earliest, Times into) {
        int length = net.duration[task];
        if (length == 0) {
            into.start[task] = earliest;
            into.end[task] = earliest;
            return;
        }
        Hours hours = net.hours[task];
        int from = hours.rank(earliest);
        int[] used = net.used[task];
        int[] amount = net.amount[task];
        long turns = 1;
        search:
        while (true) {
            int[] clock = hours.clocks(from + length - 1);
            int beyond = clock[from + length - 1] + 1;
            hold(beyond);
            // from the end: the last unit that is taken says how far to move on
            for (int k = from + length - 1; k >= from; k--) {
                turns++;
                if (!fits(clock[k], used, amount)) {
                    from = k + 1;
                    continue search;
                }
            }
            if (net.unbroken[task] && beyond - clock[from] != length) {
                int k = from + length - 1;
                while (clock[k] - clock[k - 1] == 1) k--;
                from = k;
                continue;
            }
            take(task, clock, from, length, into);
            break;
        }
        budget.spend(turns);
    }

    private boolean fits(int unit, int[] used, int[] amount) {
        int at = unit * resources;
        for (int u = 0; u < used.length; u++) {
            int r = used[u];
            if (held[at + r] + amount[u] > net.there(r, unit)) return false;
        }
        return true;
    }

    private void take(int task, int[] clock, int from, int length, Times into) {
        int[] used = net.used[task];
        int[] amount = net.amount[task];
        for (int k = from; k < from + length; k++) {
            int at = clock[k] * resources;
            for (int u = 0; u < used.length; u++) held[at + used[u]] += amount[u];
        }
        into.start[task] = clock[from];
        into.end[task] = clock[from + length - 1] + 1;
        if (into.end[task] > heldTo) heldTo = into.end[task];
    }

    /** Each task as late as it goes before {@code into.last}, the one that ends last first; none moves earlier. */
    void backward(Times into) {
        clear();
        hold(into.last);
        int[] order = lastFirst(into);
        for (int task : order) {
            int latest = into.last;
            int[] after = net.after[task];
            int[] lags = net.afterLag[task];
            for (int s = 0; s < after.length; s++) {
                int free = into.start[after[s]] - lags[s];
                if (free < latest) latest = free;
            }
            late(task, latest, into);
        }
    }

    private void late(int task, int latest, Times into) {
        int length = net.duration[task];
        if (length == 0) {
            into.start[task] = latest;
            into.end[task] = latest;
            return;
        }
        Hours hours = net.hours[task];
        int to = hours.rank(latest);
        int[] used = net.used[task];
        int[] amount = net.amount[task];
        long turns = 1;
        search:
        while (true) {
            int[] clock = hours.clocks(to - 1);
            int from = to - length;
            for (int k = from; k < to; k++) {
                turns++;
                if (!fits(clock[k], used, amount)) {
                    to = k;
                    continue search;
                }
            }
            if (net.unbroken[task] && clock[to - 1] + 1 - clock[from] != length) {
                int k = from;
                while (clock[k + 1] - clock[k] == 1) k++;
                to = k + 1;
                continue;
            }
            take(task, clock, from, length, into);
            break;
        }
        budget.spend(turns);
    }

    /** To the latest and back to the earliest: seldom longer, often shorter. */
    void toAndFro(Times into, int[] order) {
        backward(into);
        byStart(into, order);
        forward(order, into);
    }

    /** Tasks by their start, none before what it waits for. */
    void byStart(Times times, int[] order) {
        for (int i = 0; i < net.n; i++) keys[i] = ((long) times.start[i] << 24 | net.place[i]);
        Arrays.sort(keys);
        for (int i = 0; i < net.n; i++) order[i] = net.inOrder[(int) (keys[i] & 0xFFFFFF)];
    }

    private int[] lastFirst(Times times) {
        for (int i = 0; i < net.n; i++) keys[i] = ((long) times.end[i] << 24 | net.place[i]);
        Arrays.sort(keys);
        int[] order = new int[net.n];
        for (int i = 0; i < net.n; i++) order[i] = net.inOrder[(int) (keys[net.n - 1 - i] & 0xFFFFFF)];
        return order;
    }

    private void clear() {
        Arrays.fill(held, 0, Math.min(held.length, heldTo * resources), 0);
        heldTo = 0;
    }

    private void hold(int units) {
        long wanted = (long) units * resources;
        if (wanted <= held.length) return;
        if (wanted > 2L * Net.FURTHEST) {
            throw BrokenRule.of(BrokenRule.Rule.TASKS_FAR, "tasks").with("most", 2L * Net.FURTHEST / Math.max(1, resources), "clock units");
        }
        held = Arrays.copyOf(held, (int) Math.max(wanted, Math.min(2L * held.length, 2L * Net.FURTHEST)));
    }
}
