package lapyard.stages;

/** Between which units each task must lie if all is to end by a horizon, narrowed as far as simple reasons go. */
final class Windows {
    private final Net net;
    /** Earliest start and latest end of each task. */
    final int[] start;
    final int[] end;
    private final int[] firstEnd;
    private final int[] lastStart;
    private final int[] firstRank;

    Windows(Net net, Priority priority, int horizon) {
        this.net = net;
        start = priority.head.clone();
        end = Priority.latestEnds(net, horizon);
        firstEnd = new int[net.n];
        lastStart = new int[net.n];
        firstRank = new int[net.n];
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
        return true;
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
