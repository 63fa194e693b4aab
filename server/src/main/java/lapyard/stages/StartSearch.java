package lapyard.stages;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Refuses an end by trying all schedules: of the tasks that are not yet placed the one that can begin first begins there, or later. Where
 * the calendar is one for all and amounts are always there, no task of some best schedule can be moved forward alone, so one that does not
 * begin at its earliest begins as some other task ends that it shares a resource with: what it waits for has one place or can end earlier.
 * What is left to do when the same tasks are done is tried once: later, or with less room, it is refused as before.
 *
 * @see "Demeulemeester and Herroelen, Management Science 38:1803-1818 (1992): the same tasks done"
 * @see "Dorndorf, Pesch and Phan-Huy, A time-oriented branch-and-bound algorithm for resource-constrained project scheduling with
 *     generalised precedence constraints, Management Science 46:1365-1384 (2000)"
 */
final class StartSearch {
    private static final int MOST_KNOWN = 20_000;

    private final Net net;
    private final StagingBudget budget;
    private final double share;
    private final boolean even;
    private final boolean[][] linked;
    private final Map<BitSet, List<State>> refused = new HashMap<>();
    private int kept;
    private boolean over;

    /** Where tasks may still lie when those done are done; a task that has begun is placed. */
    private record State(BitSet done, boolean[] begun, int[] start, int[] end) {
        /** Whether what is still to be done can be done here as there. */
        boolean allows(State other) {
            for (int i = 0; i < start.length; i++) {
                if (done.get(i)) continue;
                boolean ends = begun[i] && other.begun[i] && end[i] <= other.end[i];
                if (!ends && (start[i] > other.start[i] || end[i] < other.end[i])) return false;
            }
            return true;
        }
    }

    /** @param share of the budget after which it gives up, refusing nothing */
    StartSearch(Net net, StagingBudget budget, double share) {
        this.net = net;
        this.budget = budget;
        this.share = share;
        boolean same = true;
        for (int r = 0; r < net.resources; r++) same &= net.there[r] == null;
        even = same;
        linked = new boolean[net.n][net.n];
        for (int i = 0; i < net.n; i++) {
            for (int j = 0; j < net.n; j++) linked[i][j] = i != j && net.duration[j] > 0 && share(i, j);
        }
    }

    private boolean share(int i, int j) {
        for (int one : net.used[i]) for (int other : net.used[j]) if (one == other) return true;
        return false;
    }

    /** Whether it is proved that these windows, which are narrowed, hold no schedule. */
    boolean refuses(Windows windows) {
        over = false;
        return none(windows) && !over;
    }

    /** False as soon as there is a schedule. */
    private boolean none(Windows given) {
        Windows windows = new Windows(given);
        State entered = null;
        while (true) {
            boolean refuted = windows.refuted();
            budget.spend(windows.turns());
            if (refuted) return known(entered);
            if (budget.past(share)) {
                over = true;
                return true;
            }
            int task = first(windows);
            if (task < 0) return false;
            State state = state(windows, windows.start[task]);
            if (seen(state)) return known(entered);
            if (entered == null) entered = state;
            Windows here = new Windows(windows);
            here.only(task, 1, true);
            if (!none(here)) return false;
            if (over) return true;
            int later = later(windows, task);
            if (later >= windows.end[task]) return known(entered);
            windows.start[task] = later;
        }
    }

    private State state(Windows windows, int now) {
        BitSet done = new BitSet(net.n);
        boolean[] begun = new boolean[net.n];
        for (int i = 0; i < net.n; i++) {
            if (windows.end[i] <= now) done.set(i);
            else begun[i] = windows.start[i] <= now && windows.firstEnd(i) == windows.end[i];
        }
        return new State(done, begun, windows.start.clone(), windows.end.clone());
    }

    /** What holds no schedule is kept, so that nothing that allows less is tried again. */
    private boolean known(State state) {
        if (state != null && !over && kept < MOST_KNOWN) {
            kept++;
            refused.computeIfAbsent(state.done(), done -> new ArrayList<>()).add(state);
        }
        return true;
    }

    private boolean seen(State state) {
        List<State> alike = refused.getOrDefault(state.done(), List.of());
        budget.spend((long) alike.size() * 4 + 8L * net.n);
        for (State other : alike) if (other.allows(state)) return true;
        return false;
    }

    /** Of the tasks that use something and have more than one place the one that can begin first; -1 where there is none. */
    private int first(Windows windows) {
        int first = -1;
        for (int i = 0; i < net.n; i++) {
            if (net.duration[i] == 0 || net.used[i].length == 0 || windows.places(i) <= 1) continue;
            if (first < 0 || windows.start[i] < windows.start[first]
                    || windows.start[i] == windows.start[first] && windows.end[i] < windows.end[first]) first = i;
        }
        return first;
    }

    /** The first clock unit at which the task may begin if not at its earliest. */
    private int later(Windows windows, int task) {
        int now = windows.start[task];
        if (!even) return now + 1;
        int later = Integer.MAX_VALUE;
        for (int j = 0; j < net.n; j++) if (linked[task][j] && windows.end[j] > now) later = Math.min(later, Math.max(now + 1, windows.firstEnd(j)));
        return later;
    }
}
