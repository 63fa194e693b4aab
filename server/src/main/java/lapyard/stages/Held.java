package lapyard.stages;

import java.util.Arrays;

/**
 * What tasks surely hold of one resource, unit by unit, kept up as bounds move to and fro. A place that was free stays free where nothing
 * was added, so that few need to be looked at again.
 */
final class Held {
    private final Net net;
    /** The tasks that use it, those that use most first, and how much each. */
    final int[] users;
    final int[] amount;
    private final int resource;
    /** By clock unit. */
    private final int[] held;
    /** By user: the worked units that it surely holds. */
    private final int[] from;
    private final int[] to;
    /** By user: the first and the last place when last looked at; they were free. */
    private final int[] first;
    private final int[] last;
    /** How many units hold more than is there. */
    private int over;
    /** Between which units something was added since the last look, and before it. */
    private int addedFrom = Integer.MAX_VALUE;
    private int addedTo;
    private int newFrom;
    private int newTo;

    Held(Net net, int resource, int[] users, int horizon) {
        this.net = net;
        this.resource = resource;
        this.users = users;
        amount = new int[users.length];
        for (int u = 0; u < users.length; u++) amount[u] = net.amount(users[u], resource);
        held = new int[horizon + 1];
        from = new int[users.length];
        to = new int[users.length];
        first = new int[users.length];
        last = new int[users.length];
        Arrays.fill(first, -1);
        Arrays.fill(last, -1);
    }

    /** Takes over what surely holds by these bounds; says how many units changed. */
    int follow(int[] bound) {
        int changes = 0;
        for (int u = 0; u < users.length; u++) {
            int task = users[u];
            int a = -bound[2 * task + 1];
            int b = Math.max(a, bound[2 * task] + net.duration[task]);
            if (a == from[u] && b == to[u]) continue;
            changes += move(u, a, b);
        }
        return changes;
    }

    private int move(int u, int a, int b) {
        int oldFrom = from[u];
        int oldTo = to[u];
        for (int k = oldFrom; k < Math.min(a, oldTo); k++) change(u, k, -amount[u]);
        for (int k = Math.max(b, oldFrom); k < oldTo; k++) change(u, k, -amount[u]);
        for (int k = a; k < Math.min(oldFrom, b); k++) change(u, k, amount[u]);
        for (int k = Math.max(oldTo, a); k < b; k++) change(u, k, amount[u]);
        from[u] = a;
        to[u] = b;
        return Math.max(oldTo, b) - Math.min(oldFrom, a);
    }

    private void change(int u, int k, int by) {
        int t = net.hours[users[u]].clock(k);
        boolean was = held[t] > room(t);
        held[t] += by;
        if (by > 0) {
            addedFrom = Math.min(addedFrom, t);
            addedTo = Math.max(addedTo, t + 1);
        }
        if (was != held[t] > room(t)) over += was ? -1 : 1;
    }

    /** Forgets what was added: where bounds go back, places were looked at before. */
    void settle() {
        addedFrom = Integer.MAX_VALUE;
        addedTo = 0;
    }

    /** From here on it is told which places need a look since this was last called. */
    void look() {
        newFrom = addedFrom;
        newTo = addedTo;
        settle();
    }

    /** A unit that holds more than is there; -1 for none. */
    int tooFull() {
        if (over == 0) return -1;
        int t = 0;
        while (held[t] <= room(t)) t++;
        return t;
    }

    int room(int t) {
        return net.there(resource, t);
    }

    boolean needsFirst(int u, int place) {
        return place != first[u] || needs(u, place);
    }

    boolean needsLast(int u, int place) {
        return place != last[u] || needs(u, place);
    }

    private boolean needs(int u, int place) {
        if (newFrom >= newTo) return false;
        Hours hours = net.hours[users[u]];
        return hours.clock(place) < newTo && hours.clock(place + net.duration[users[u]] - 1) >= newFrom;
    }

    void first(int u, int place) {
        first[u] = place;
    }

    void last(int u, int place) {
        last[u] = place;
    }

    /** Whether the others leave room for this user in its worked unit k. */
    boolean free(int u, int k) {
        int t = net.hours[users[u]].clock(k);
        return held[t] + (k >= from[u] && k < to[u] ? 0 : amount[u]) <= room(t);
    }

    /** Sayings of some users but {@code not} that together hold more than this in a unit, behind so many empty places. */
    int[] reason(int[] bound, int t, int not, int much, int places) {
        int[] sayings = new int[places + 4 * users.length];
        int n = places;
        int sum = 0;
        for (int u = 0; u < users.length && sum <= much; u++) {
            int task = users[u];
            int k = net.hours[task].rank(t);
            if (u == not || -bound[2 * task + 1] > k || bound[2 * task] + net.duration[task] <= k || net.hours[task].clock(k) != t) continue;
            sum += amount[u];
            sayings[n++] = 2 * task;
            sayings[n++] = k - net.duration[task] + 1;
            sayings[n++] = 2 * task + 1;
            sayings[n++] = -k;
        }
        return Arrays.copyOf(sayings, n);
    }
}
