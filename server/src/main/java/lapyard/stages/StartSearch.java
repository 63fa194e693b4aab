package lapyard.stages;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import lapyard.stages.Placing.Times;
import lapyard.working.SearchBudget;

/**
 * Refuses an end by trying all schedules, and learns from each contradiction which starts cannot go together. A number says at which
 * of its worked units a task begins (at which clock unit, where it takes none); another says which of two tasks goes first that need more
 * than there is together.
 *
 * @see "Schutt, Feydy, Stuckey and Wallace, Solving RCPSP/max by lazy clause generation, Journal of Scheduling 16 (2013)"
 */
final class StartSearch {
    /** Contradictions after which it begins anew with what was learned. */
    private static final int FIRST_TURN = 100;
    private static final double LONGER_TURN = 1.5;
    /** So many lists of what was learned are kept at most: a few MB. */
    static final int LISTS = 10_000;
    /** What is counted here takes half as long as what is counted elsewhere. */
    private static final int TURNS_A_TURN = 2;

    private final Net net;
    private final SearchBudget budget;
    private final double share;
    private final int mostLists;
    /** By resource: the tasks that use it, those that use most first. */
    private final int[][] users;
    /** Two tasks each, and by task the numbers of its pairs. */
    private final int[][] pairs;
    private final int[][] pairsOf;

    private Reasons reasons;
    private Held[] held;
    private final boolean[] changed;
    private boolean settled;

    /**
     * @param share     of the budget after which it gives up, refusing nothing
     * @param mostLists of what was learned are kept
     */
    StartSearch(Net net, SearchBudget budget, double share, int mostLists) {
        this.mostLists = mostLists;
        this.net = net;
        this.budget = budget;
        this.share = share;
        users = IntStream.range(0, net.resources).mapToObj(net::users).toArray(int[][]::new);
        List<int[]> list = new ArrayList<>();
        List<List<Integer>> of = new ArrayList<>();
        for (int i = 0; i < net.n; i++) of.add(new ArrayList<>());
        for (int i = 0; i < net.n; i++) {
            for (int j = i + 1; j < net.n; j++) {
                if (!net.apart(i, j)) continue;
                of.get(i).add(list.size());
                of.get(j).add(list.size());
                list.add(new int[] {i, j});
            }
        }
        pairs = list.toArray(int[][]::new);
        pairsOf = of.stream().map(each -> each.stream().mapToInt(Integer::intValue).toArray()).toArray(int[][]::new);
        changed = new boolean[net.resources];
    }

    /** Narrows windows by all that follows without supposing anything; false where they hold no schedule. */
    boolean narrow(Windows windows) {
        if (!windows.waits()) return false;
        reasons = new Reasons(net.n + pairs.length);
        int horizon = 0;
        for (int i = 0; i < net.n; i++) {
            reasons.bound[2 * i] = soonest(i, windows.start[i]);
            reasons.bound[2 * i + 1] = -latest(i, windows.end[i]);
            horizon = Math.max(horizon, windows.end[i]);
        }
        for (int p = 0; p < pairs.length; p++) reasons.bound[2 * (net.n + p) + 1] = -1;
        int units = horizon;
        held = IntStream.range(0, net.resources).mapToObj(r -> new Held(net, r, users[r], units)).toArray(Held[]::new);
        Arrays.fill(changed, true);
        boolean some = true;
        for (int i = 0; i < net.n && some; i++) some = waits(2 * i) && waits(2 * i + 1) && apart(i);
        some = some && follows();
        budget.spend(reasons.turns / TURNS_A_TURN);
        for (int i = 0; i < net.n; i++) {
            windows.start[i] = start(i, low(i));
            windows.end[i] = end(i, high(i));
        }
        return some && windows.waits();
    }

    /** Whether it is proved that these windows hold no schedule; they are narrowed. */
    boolean refuses(Windows windows) {
        settled = false;
        if (!narrow(windows)) return true;
        reasons.settle();
        int turn = FIRST_TURN;
        for (int learned = 0; !budget.past(share); ) {
            reasons.turns = 0;
            if (follows()) {
                settled = !suppose();
                if (settled) return false;
            } else {
                if (!reasons.learn()) return true;
                goneBack();
                reasons.deny();
                Arrays.fill(changed, false);
                if (++learned == turn || reasons.lists() >= mostLists) beginAnew();
                if (learned == turn) turn += (int) (turn * LONGER_TURN);
            }
            budget.spend(reasons.turns / TURNS_A_TURN);
        }
        return false;
    }

    private void beginAnew() {
        if (reasons.levels() > 0) {
            reasons.backTo(0);
            goneBack();
        }
        if (reasons.lists() >= mostLists) reasons.forget();
    }

    private void goneBack() {
        for (Held each : held) {
            reasons.turns += each.follow(reasons.bound) + each.users.length;
            each.settle();
        }
    }

    /** The schedule because of which the last windows were not refused; null where none came about. Ends are left out. */
    Times found() {
        if (!settled) return null;
        Times found = new Times(net.n);
        for (int i = 0; i < net.n; i++) found.start[i] = start(i, low(i));
        return found;
    }

    // a task's number: worked units before its start, or the clock unit where it takes no time

    private int soonest(int task, int clock) {
        return net.duration[task] == 0 ? clock : net.hours[task].rank(Priority.firstStart(net, task, clock));
    }

    private int latest(int task, int end) {
        int start = Priority.lastStart(net, task, end);
        return net.duration[task] == 0 || start < 0 ? start : net.hours[task].rank(start);
    }

    private int start(int task, int number) {
        return net.duration[task] == 0 ? number : net.hours[task].clock(number);
    }

    private int end(int task, int number) {
        return net.duration[task] == 0 ? number : net.hours[task].clock(number + net.duration[task] - 1) + 1;
    }

    private int low(int task) {
        return reasons.bound[2 * task];
    }

    private int high(int task) {
        return -reasons.bound[2 * task + 1];
    }

    /** All that follows; false for a contradiction. */
    private boolean follows() {
        while (true) {
            while (reasons.heard < reasons.raised) {
                int code = reasons.code[reasons.heard];
                if (!reasons.follow(reasons.heard++)) return false;
                if (code >= 2 * net.n) {
                    if (!inTurn((code >> 1) - net.n)) return false;
                    continue;
                }
                int task = code >> 1;
                for (int r : net.used[task]) changed[r] = true;
                if (!waits(code) || !apart(task)) return false;
            }
            int r = 0;
            while (r < changed.length && !changed[r]) r++;
            if (r == changed.length) return true;
            changed[r] = false;
            if (!fit(held[r])) return false;
        }
    }

    /** What others wait for, or wait for it, and places that breaks leave out. */
    private boolean waits(int code) {
        int task = code >> 1;
        int value = reasons.bound[code];
        boolean early = (code & 1) == 0;
        if (net.unbroken[task] && net.duration[task] > 0) {
            int place = early ? soonest(task, start(task, value)) : -latest(task, end(task, -value));
            if (!reasons.raise(code, place, code, value)) return false;
            value = reasons.bound[code];
        }
        int[] others = early ? net.after[task] : net.before[task];
        int[] lags = early ? net.afterLag[task] : net.beforeLag[task];
        reasons.turns += others.length + 1;
        for (int k = 0; k < others.length; k++) {
            int other = others[k];
            int place = early ? soonest(other, end(task, value) + lags[k]) : -latest(other, start(task, -value) - lags[k]);
            if (!(slides(task, other, lags[k]) ? reasons.slide(2 * other + (code & 1), place, code, value)
                    : reasons.raise(2 * other + (code & 1), place, code, value))) return false;
        }
        return true;
    }

    /** Whether one moves by as many worked units as the other. */
    private boolean slides(int task, int other, int lag) {
        return lag == 0 && net.hours[task] == net.hours[other] && !net.unbroken[other] && net.duration[task] > 0 && net.duration[other] > 0;
    }

    private boolean apart(int task) {
        reasons.turns += pairsOf[task].length;
        for (int p : pairsOf[task]) if (!inTurn(p)) return false;
        return true;
    }

    /** One of the two goes first. */
    private boolean inTurn(int p) {
        int number = 2 * (net.n + p);
        int i = pairs[p][0];
        int j = pairs[p][1];
        if (low(i) + net.duration[i] > high(j) && !second(number + 1, 0, i, j)) return false;
        if (low(j) + net.duration[j] > high(i) && !second(number, 1, j, i)) return false;
        if (reasons.bound[number] == 1) return behind(number, 1, i, j);
        return reasons.bound[number + 1] < 0 || behind(number + 1, 0, j, i);
    }

    /** The first cannot end before the second begins. */
    private boolean second(int code, int value, int first, int second) {
        int from = low(first);
        return reasons.raise(code, value, 2 * first, from, 2 * second + 1, 1 - from - net.duration[first]);
    }

    private boolean behind(int code, int value, int first, int second) {
        int length = net.duration[first];
        return reasons.slide(2 * second, low(first) + length, code, value, 2 * first, low(first))
                && reasons.slide(2 * first + 1, length - high(second), code, value, 2 * second + 1, -high(second));
    }

    /** What tasks surely hold of a resource leaves less for the others. */
    private boolean fit(Held held) {
        reasons.turns += held.follow(reasons.bound) + held.users.length;
        held.look();
        int full = held.tooFull();
        if (full >= 0) return reasons.contradict(held.reason(reasons.bound, full, -1, held.room(full), 0));
        for (int u = 0; u < held.users.length; u++) {
            int task = held.users[u];
            if (low(task) == high(task)) continue;
            if (held.needsFirst(u, low(task)) && !early(held, u)) return false;
            if (held.needsLast(u, high(task)) && !late(held, u)) return false;
        }
        return true;
    }

    private boolean early(Held held, int u) {
        int task = held.users[u];
        int length = net.duration[task];
        int from = low(task);
        for (int k = from + length - 1; k >= from; k--) {
            reasons.turns++;
            if (held.free(u, k)) continue;
            int t = net.hours[task].clock(k);
            int[] why = held.reason(reasons.bound, t, u, held.room(t) - held.amount[u], 2);
            reasons.turns += held.users.length;
            why[0] = 2 * task;
            why[1] = k - length + 1;
            if (!reasons.raise(2 * task, k + 1, why)) return false;
            from = k + 1;
            k = from + length;
        }
        held.first(u, from);
        return true;
    }

    private boolean late(Held held, int u) {
        int task = held.users[u];
        int length = net.duration[task];
        int to = high(task);
        for (int k = to; k < to + length; k++) {
            reasons.turns++;
            if (held.free(u, k)) continue;
            int t = net.hours[task].clock(k);
            int[] why = held.reason(reasons.bound, t, u, held.room(t) - held.amount[u], 2);
            reasons.turns += held.users.length;
            why[0] = 2 * task + 1;
            why[1] = -k;
            if (!reasons.raise(2 * task + 1, length - k, why)) return false;
            to = k - length;
            k = to - 1;
        }
        held.last(u, to);
        return true;
    }

    /** Supposes something of what is open; false where all is settled. */
    private boolean suppose() {
        int chosen = -1;
        for (int x = 0; x < net.n + pairs.length; x++) {
            if (reasons.bound[2 * x] == -reasons.bound[2 * x + 1]) continue;
            if (x < net.n && (net.duration[x] == 0 || net.used[x].length == 0)) continue;
            if (chosen < 0 || reasons.weight[x] > reasons.weight[chosen]
                    || reasons.weight[x] == reasons.weight[chosen] && x < net.n && start(x, low(x)) < start(chosen, low(chosen))) chosen = x;
        }
        reasons.turns += (net.n + pairs.length) / 4;
        if (chosen < 0) return false;
        if (chosen >= net.n) {
            int i = pairs[chosen - net.n][0];
            int j = pairs[chosen - net.n][1];
            boolean first = low(i) + high(i) <= low(j) + high(j);
            reasons.suppose(2 * chosen + (first ? 0 : 1), first ? 1 : 0);
        } else {
            reasons.suppose(2 * chosen + 1, -low(chosen));
        }
        return true;
    }
}
