package lapyard.stages;

import java.util.PriorityQueue;

/** Heads and tails of the tasks without regard to resources, and the orders made from them. */
final class Priority {
    private final Net net;
    /** Earliest start and end of each task, waits and calendar regarded, resources not. */
    final int[] head;
    final int[] headEnd;
    /** How late each task may end if all is to end as early as waits alone allow. */
    final int[] latestEnd;
    /** What waits alone allow: no schedule ends earlier. */
    final int criticalPath;

    Priority(Net net) {
        this.net = net;
        head = new int[net.n];
        headEnd = new int[net.n];
        int last = 0;
        for (int task : net.inOrder) {
            int earliest = net.notBefore[task];
            for (int p = 0; p < net.before[task].length; p++) {
                earliest = Math.max(earliest, headEnd[net.before[task][p]] + net.beforeLag[task][p]);
            }
            head[task] = firstStart(net, task, earliest);
            headEnd[task] = end(net, task, head[task]);
            last = Math.max(last, headEnd[task]);
        }
        criticalPath = last;
        latestEnd = latestEnds(net, last);
    }

    /** The first clock unit from {@code earliest} on in which the task may begin. */
    static int firstStart(Net net, int task, int earliest) {
        int length = net.duration[task];
        if (length == 0) return earliest;
        Hours hours = net.hours[task];
        int from = hours.rank(earliest);
        if (net.unbroken[task]) {
            while (hours.clock(from + length - 1) - hours.clock(from) != length - 1) from++;
        }
        return hours.clock(from);
    }

    static int end(Net net, int task, int start) {
        int length = net.duration[task];
        if (length == 0) return start;
        Hours hours = net.hours[task];
        return hours.clock(hours.rank(start) + length - 1) + 1;
    }

    /** The last clock unit in which the task may begin and end by {@code latest}; below 0 where there is none. */
    static int lastStart(Net net, int task, int latest) {
        int length = net.duration[task];
        if (length == 0 || latest < 0) return latest;
        Hours hours = net.hours[task];
        int to = hours.rank(latest);
        if (net.unbroken[task]) {
            while (to >= length && hours.clock(to - 1) - hours.clock(to - length) != length - 1) to--;
        }
        return to < length ? -1 : hours.clock(to - length);
    }

    /** Latest ends of all tasks if the last is to end by {@code horizon}; a start below its head shows that it cannot. */
    static int[] latestEnds(Net net, int horizon) {
        int[] ends = new int[net.n];
        for (int i = net.n - 1; i >= 0; i--) {
            int task = net.inOrder[i];
            int latest = horizon;
            for (int s = 0; s < net.after[task].length; s++) {
                int next = net.after[task][s];
                latest = Math.min(latest, lastStart(net, next, ends[next]) - net.afterLag[task][s]);
            }
            ends[task] = latest;
        }
        return ends;
    }

    /** Tasks by this key, smallest first, each behind all that it waits for. */
    int[] order(double[] key) {
        PriorityQueue<Integer> free = new PriorityQueue<>((a, b) -> {
            int byKey = Double.compare(key[a], key[b]);
            return byKey != 0 ? byKey : Integer.compare(a, b);
        });
        int[] open = new int[net.n];
        for (int i = 0; i < net.n; i++) {
            open[i] = net.before[i].length;
            if (open[i] == 0) free.add(i);
        }
        int[] order = new int[net.n];
        for (int done = 0; done < net.n; done++) {
            int task = free.poll();
            order[done] = task;
            for (int next : net.after[task]) if (--open[next] == 0) free.add(next);
        }
        return order;
    }
}
