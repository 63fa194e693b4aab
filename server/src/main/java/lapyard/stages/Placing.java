package lapyard.stages;

import java.util.Arrays;
import lapyard.working.BrokenRule;
import lapyard.working.SearchBudget;

/**
 * When each task begins and ends, made by taking tasks one by one and placing each as early, or as late, as it goes.
 *
 * @see "Kolisch, Serial and parallel resource-constrained project scheduling methods revisited, EJOR 90:320-333 (1996)"
 * @see "Valls, Ballestín and Quintanilla, Justification and RCPSP, EJOR 165:375-386 (2005): the passes to and fro"
 */
final class Placing {
    /** So many windows in which a task does not fit are tried one by one; then what is full is skipped. */
    private static final int SKIPPING_FROM = 12;

    /** Clock units of free amounts that are copied at a time, at least. */
    private static final int PATTERN_UNITS = 64;

    private final Net net;
    private final SearchBudget budget;
    private final int resources;
    /** What is there in the first clock units, resource by resource; repeats for ever. */
    private final int[] pattern;
    /** What is left of each resource in each clock unit. */
    private int[] left = new int[0];
    private int heldTo;
    private final long[] keys;
    /** By kind of task and worked unit where it is known that the units from there on are too full: the other end of these. */
    private final int[][] full;

    Placing(Net net, SearchBudget budget) {
        this.net = net;
        this.budget = budget;
        resources = net.resources;
        keys = new long[net.n];
        full = new int[net.kinds][0];
        int cycle = net.cycleLength();
        int units = cycle * Math.max(1, (PATTERN_UNITS + cycle - 1) / cycle);
        pattern = new int[units * resources];
        for (int i = 0; i < pattern.length; i++) pattern[i] = net.there(i % resources, i / resources);
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
            atOnce(task, earliest, into);
            return;
        }
        Hours hours = net.hours[task];
        int from = hours.rank(earliest);
        long turns = 1;
        int failed = 0;
        while (true) {
            int to = from + length;
            int[] clock = hours.clocks(to - 1);
            hold(clock[to - 1] + 1);
            int taken = lastTaken(task, clock, from, to);
            turns += to - Math.max(from, taken);
            if (taken >= from) {
                from = taken + 1;
                if (++failed > SKIPPING_FROM) {
                    // the windows that end on full units
                    int more = (fullTo(task, taken) - taken - 1) / length;
                    turns += more;
                    from += more * length;
                }
            } else if (broken(task, clock, from, to)) {
                from = to - 1;
                while (clock[from] - clock[from - 1] == 1) from--;
            } else {
                take(task, clock, from, to, into);
                budget.spend(turns);
                return;
            }
        }
    }

    /** The last of these worked units in which the task does not fit, which says how far to move on; {@code from - 1} if it fits. */
    private int lastTaken(int task, int[] clock, int from, int to) {
        int[] used = net.used[task];
        int[] amount = net.amount[task];
        int k = to - 1;
        while (k >= from && fits(clock[k], used, amount)) k--;
        return k;
    }

    /** The first of these worked units in which the task does not fit; {@code to} if it fits. */
    private int firstTaken(int task, int[] clock, int from, int to) {
        int[] used = net.used[task];
        int[] amount = net.amount[task];
        int k = from;
        while (k < to && fits(clock[k], used, amount)) k++;
        return k;
    }

    /** Whether these worked units have hours off among them though the task is done in one go. */
    private boolean broken(int task, int[] clock, int from, int to) {
        return net.unbroken[task] && clock[to - 1] + 1 - clock[from] != to - from;
    }

    /** A task without a duration begins and ends at once. */
    private static void atOnce(int task, int at, Times into) {
        into.start[task] = at;
        into.end[task] = at;
    }

    private boolean fits(int unit, int[] used, int[] amount) {
        int at = unit * resources;
        for (int u = 0; u < used.length; u++) if (left[at + used[u]] < amount[u]) return false;
        return true;
    }

    /** The first worked unit behind this full one in which such a task fits: going forward what is full stays so. */
    private int fullTo(int task, int unit) {
        int[] ends = full(task, unit);
        int end = ends[unit] > 0 ? ends[unit] : unit + 1;
        while (!fits(net.hours[task], end, net.used[task], net.amount[task])) end = end < ends.length && ends[end] > 0 ? ends[end] : end + 1;
        ends = full(task, end);
        for (int k = unit; k < end; ) {
            int next = ends[k] > 0 ? ends[k] : k + 1;
            ends[k] = end;
            k = next;
        }
        return end;
    }

    /** The first of the full worked units in a row of which this is the last: going backward what is full stays so. */
    private int fullFrom(int task, int unit) {
        int[] starts = full(task, unit);
        // kept one higher, as 0 is what is not known
        int start = starts[unit] > 0 ? starts[unit] - 1 : unit;
        while (start > 0 && !fits(net.hours[task], start - 1, net.used[task], net.amount[task])) start = starts[start - 1] > 0 ? starts[start - 1] - 1 : start - 1;
        for (int k = unit; k >= start; ) {
            int next = starts[k] > 0 ? starts[k] - 2 : k - 1;
            starts[k] = start + 1;
            k = next;
        }
        return start;
    }

    private boolean fits(Hours hours, int worked, int[] used, int[] amount) {
        int unit = hours.clock(worked);
        return unit >= heldTo || fits(unit, used, amount);
    }

    private int[] full(int task, int unit) {
        int kind = net.kind[task];
        if (unit >= full[kind].length) full[kind] = Arrays.copyOf(full[kind], Math.max(unit + 1, 2 * full[kind].length));
        return full[kind];
    }

    private void take(int task, int[] clock, int from, int to, Times into) {
        int[] used = net.used[task];
        int[] amount = net.amount[task];
        for (int k = from; k < to; k++) {
            int at = clock[k] * resources;
            for (int u = 0; u < used.length; u++) left[at + used[u]] -= amount[u];
        }
        into.start[task] = clock[from];
        into.end[task] = clock[to - 1] + 1;
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
            atOnce(task, latest, into);
            return;
        }
        Hours hours = net.hours[task];
        int to = hours.rank(latest);
        long turns = 1;
        int failed = 0;
        while (true) {
            int from = to - length;
            int[] clock = hours.clocks(to - 1);
            int taken = firstTaken(task, clock, from, to);
            turns += Math.min(to, taken + 1) - from;
            if (taken < to) {
                to = taken;
                if (++failed > SKIPPING_FROM) {
                    // the windows that begin on full units
                    int more = (taken - fullFrom(task, taken)) / length;
                    turns += more;
                    to -= more * length;
                }
            } else if (broken(task, clock, from, to)) {
                to = from + 1;
                while (clock[to] - clock[to - 1] == 1) to++;
            } else {
                take(task, clock, from, to, into);
                budget.spend(turns);
                return;
            }
        }
    }

    /** To the latest and back to the earliest: seldom longer, often shorter. */
    void toAndFro(Times into, int[] order) {
        backward(into);
        byStart(into, order);
        forward(order, into);
    }

    /** Places tasks in the order in which they start, each as early as it goes, and takes that where it ends earlier. */
    void better(Times found, Times best) {
        int[] order = new int[net.n];
        Times placed = new Times(net.n);
        byStart(found, order);
        forward(order, placed);
        if (placed.last < best.last) best.set(placed);
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
        freed(0, Math.min(left.length, heldTo * resources));
        heldTo = 0;
        for (int[] known : full) Arrays.fill(known, 0);
    }

    private void freed(int from, int to) {
        for (int at = from; at < to; ) {
            int in = at % pattern.length;
            int length = Math.min(to - at, pattern.length - in);
            System.arraycopy(pattern, in, left, at, length);
            at += length;
        }
    }

    private void hold(int units) {
        long wanted = (long) units * resources;
        if (wanted <= left.length) return;
        if (wanted > 2L * Net.FURTHEST) {
            throw BrokenRule.of(BrokenRule.Rule.TASKS_FAR, "tasks").with("most", 2L * Net.FURTHEST / Math.max(1, resources), "clock units");
        }
        int before = left.length;
        left = Arrays.copyOf(left, (int) Math.max(wanted, Math.min(2L * left.length, 2L * Net.FURTHEST)));
        freed(before, left.length);
    }
}
