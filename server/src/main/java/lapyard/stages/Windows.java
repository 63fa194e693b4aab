package lapyard.stages;

/** Between which units each task must lie if all is to end by a horizon, narrowed as far as simple reasons go. */
final class Windows {
    private static final int MOST_ROUNDS = 40;

    private final Net net;
    private final int horizon;
    /** Earliest start and latest end of each task. */
    final int[] start;
    final int[] end;
    private final int[] firstEnd;
    private final int[] lastStart;
    private final int[] firstRank;
    /** Pairs that need more than there is together; worked out with the first pair. */
    private boolean[][] apart;
    private long turns;
    private boolean changed;

    Windows(Net net, Priority priority, int horizon) {
        this.net = net;
        this.horizon = horizon;
        start = priority.head.clone();
        end = Priority.latestEnds(net, horizon);
        firstEnd = new int[net.n];
        lastStart = new int[net.n];
        firstRank = new int[net.n];
    }

    /** The same windows, to be narrowed apart; {@code other} has been narrowed. */
    Windows(Windows other) {
        net = other.net;
        horizon = other.horizon;
        start = other.start.clone();
        end = other.end.clone();
        firstEnd = other.firstEnd.clone();
        lastStart = other.lastStart.clone();
        firstRank = other.firstRank.clone();
        apart = other.apart;
    }

    /** Worked units at which a task may begin. */
    int places(int task) {
        return net.hours[task].rank(end[task]) - net.duration[task] - firstRank[task] + 1;
    }

    /** Leaves a task only the first or the last of its places, at least one. */
    void only(int task, int places, boolean early) {
        Hours hours = net.hours[task];
        if (early) end[task] = hours.clock(firstRank[task] + places + net.duration[task] - 2) + 1;
        else start[task] = hours.clock(hours.rank(end[task]) - net.duration[task] - places + 1);
    }

    int firstEnd(int task) {
        return firstEnd[task];
    }

    /** Since they were last asked for. */
    long turns() {
        long since = turns;
        turns = 0;
        return since;
    }

    /** Narrows by waits alone; false where some task has no room. */
    boolean waits() {
        for (int task : net.inOrder) {
            int earliest = start[task];
            for (int p = 0; p < net.before[task].length; p++) {
                earliest = Math.max(earliest, firstEnd[net.before[task][p]] + net.beforeLag[task][p]);
            }
            start[task] = Priority.firstStart(net, task, earliest);
            firstEnd[task] = Priority.end(net, task, start[task]);
        }
        for (int i = net.n - 1; i >= 0; i--) {
            int task = net.inOrder[i];
            int latest = end[task];
            for (int s = 0; s < net.after[task].length; s++) {
                latest = Math.min(latest, lastStart[net.after[task][s]] - net.afterLag[task][s]);
            }
            end[task] = latest;
            lastStart[task] = Priority.lastStart(net, task, latest);
            if (lastStart[task] < start[task] || firstEnd[task] > end[task]) return false;
            firstRank[task] = net.hours[task].rank(start[task]);
        }
        turns += 4L * net.n;
        return true;
    }

    /** Whether no schedule ends by the horizon, as far as can be seen. */
    boolean refuted() {
        for (int round = 0; round < MOST_ROUNDS; round++) {
            if (!waits()) return true;
            changed = false;
            if (!pairs() || !waits() || !sureParts()) return true;
            if (!changed) break;
        }
        return !waits();
    }

    /** Two tasks that need more than there is together lie one behind the other. */
    private boolean pairs() {
        if (apart == null) {
            apart = new boolean[net.n][net.n];
            for (int i = 0; i < net.n; i++) for (int j = i + 1; j < net.n; j++) apart[i][j] = tooMuchTogether(i, j);
        }
        for (int i = 0; i < net.n; i++) {
            if (net.duration[i] == 0) continue;
            for (int j = i + 1; j < net.n; j++) {
                // one that pauses while the other goes on may lie round it
                if (net.duration[j] == 0 || net.hours[i] != net.hours[j] || !apart[i][j]) continue;
                turns++;
                boolean iFirst = firstEnd[i] <= lastStart[j];
                boolean jFirst = firstEnd[j] <= lastStart[i];
                if (!iFirst && !jFirst) return false;
                if (!jFirst) behind(i, j);
                else if (!iFirst) behind(j, i);
            }
        }
        turns += (long) net.n * net.n / 4;
        return true;
    }

    private void behind(int first, int second) {
        if (start[second] < firstEnd[first]) {
            start[second] = firstEnd[first];
            changed = true;
        }
        if (end[first] > lastStart[second]) {
            end[first] = lastStart[second];
            changed = true;
        }
    }

    private boolean tooMuchTogether(int i, int j) {
        int[] a = net.used[i];
        int[] b = net.used[j];
        for (int u = 0, v = 0; u < a.length && v < b.length; ) {
            if (a[u] == b[v]) {
                if (net.amount[i][u] + net.amount[j][v] > net.capacity[a[u]]) return true;
                u++;
                v++;
            } else if (a[u] < b[v]) {
                u++;
            } else {
                v++;
            }
        }
        return false;
    }

    /** What a task surely holds, from its last start to its first end, leaves less for the others. */
    private boolean sureParts() {
        int[] held = new int[Math.max(1, horizon) * Math.max(1, net.resources)];
        for (int i = 0; i < net.n; i++) hold(held, i, 1);
        for (int t = 0; t < horizon; t++) {
            for (int r = 0; r < net.resources; r++) {
                if (held[t * net.resources + r] > net.there(r, t)) return false;
            }
        }
        for (int i = 0; i < net.n; i++) {
            if (net.duration[i] == 0 || net.used[i].length == 0) continue;
            hold(held, i, -1);
            int from = firstFit(held, i);
            int to = lastFit(held, i);
            hold(held, i, 1);
            if (from < 0 || to < 0) return false;
            if (from > start[i]) {
                start[i] = from;
                changed = true;
            }
            if (to < end[i]) {
                end[i] = to;
                changed = true;
            }
        }
        return true;
    }

    private void hold(int[] held, int task, int sign) {
        Hours hours = net.hours[task];
        int to = hours.rank(Math.min(firstEnd[task], horizon));
        for (int k = hours.rank(lastStart[task]); k < to; k++) {
            int at = hours.clock(k) * net.resources;
            for (int u = 0; u < net.used[task].length; u++) held[at + net.used[task][u]] += sign * net.amount[task][u];
            turns++;
        }
    }

    private boolean fits(int[] held, int task, int unit) {
        turns++;
        for (int u = 0; u < net.used[task].length; u++) {
            int r = net.used[task][u];
            if (held[unit * net.resources + r] + net.amount[task][u] > net.there(r, unit)) return false;
        }
        return true;
    }

    private int firstFit(int[] held, int task) {
        Hours hours = net.hours[task];
        int length = net.duration[task];
        int from = firstRank[task];
        int run = 0;
        for (int k = from; hours.clock(k) < end[task]; k++) {
            run = fits(held, task, hours.clock(k)) ? run + 1 : 0;
            if (run == length) return hours.clock(k - length + 1);
        }
        return -1;
    }

    private int lastFit(int[] held, int task) {
        Hours hours = net.hours[task];
        int length = net.duration[task];
        int run = 0;
        for (int k = hours.rank(end[task]) - 1; k >= firstRank[task]; k--) {
            run = fits(held, task, hours.clock(k)) ? run + 1 : 0;
            if (run == length) return hours.clock(k + length - 1) + 1;
        }
        return -1;
    }

    /** Units that the task must work between {@code from} and {@code to}, wherever it lies in its window. */
    int inside(int task, int from, int to) {
        Hours hours = net.hours[task];
        int length = net.duration[task];
        if (end[task] <= from || start[task] >= to) return 0;
        int low = hours.rank(from);
        int high = hours.rank(to);
        int left = firstRank[task] + length - low;
        int right = high - (hours.rank(end[task]) - length);
        return Math.max(0, Math.min(Math.min(length, high - low), Math.min(left, right)));
    }
}
