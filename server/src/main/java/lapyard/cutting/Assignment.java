package lapyard.cutting;

import java.util.Arrays;

/**
 * What goes where at the least cost: the transportation problem, solved to its optimum by shortest augmenting paths.
 *
 * @see "Ahuja, Magnanti, Orlin, Network Flows (Prentice Hall, 1993), section 9.7, successive shortest path algorithm"
 */
public final class Assignment {
    /** Cost of a pair that must not be. */
    public static final long NEVER = Long.MAX_VALUE / 4;

    private Assignment() {}

    /**
     * @param there  how many of each kind are to be placed, 0 or more
     * @param places how many places of each kind there are, together as many as {@code there}
     * @param cost   of one of kind i in a place of kind j, up to 1e12 either way, or {@link #NEVER}
     * @return how many of kind i go to places of kind j
     * @throws IllegalArgumentException where both sides differ in number, or only a forbidden pair is left
     */
    public static int[][] cheapest(int[] there, int[] places, long[][] cost) {
        int total = Arrays.stream(there).sum();
        if (total != Arrays.stream(places).sum()) {
            throw new IllegalArgumentException(
                    total + " to place, " + Arrays.stream(places).sum() + " places: they must be as many");
        }
        int[][] flow = new int[there.length][places.length];
        int[] left = there.clone();
        int[] free = places.clone();
        for (int placed = 0; placed < total; ) {
            placed += augment(left, free, cost, flow);
        }
        return flow;
    }

    /** One cheapest path from a kind with something left to a kind of place that is free; Bellman and Ford's rounds. */
    private static int augment(int[] left, int[] free, long[][] cost, int[][] flow) {
        int kinds = left.length;
        int places = free.length;
        long[] toKind = new long[kinds];
        long[] toPlace = new long[places];
        int[] placeFrom = new int[places];
        int[] kindFrom = new int[kinds];
        Arrays.fill(toPlace, NEVER);
        Arrays.fill(kindFrom, -1);
        for (int i = 0; i < kinds; i++) {
            toKind[i] = left[i] > 0 ? 0 : NEVER;
        }
        boolean changed = true;
        while (changed) {
            changed = false;
            for (int i = 0; i < kinds; i++) {
                for (int j = 0; j < places; j++) {
                    if (toKind[i] < NEVER && cost[i][j] < NEVER && toKind[i] + cost[i][j] < toPlace[j]) {
                        toPlace[j] = toKind[i] + cost[i][j];
                        placeFrom[j] = i;
                        changed = true;
                    }
                    if (flow[i][j] > 0 && toPlace[j] < NEVER && toPlace[j] - cost[i][j] < toKind[i]) {
                        toKind[i] = toPlace[j] - cost[i][j];
                        kindFrom[i] = j;
                        changed = true;
                    }
                }
            }
        }
        int end = -1;
        for (int j = 0; j < places; j++) {
            if (free[j] > 0 && toPlace[j] < NEVER && (end < 0 || toPlace[j] < toPlace[end])) {
                end = j;
            }
        }
        if (end < 0) {
            throw new IllegalArgumentException("only forbidden pairs are left");
        }
        int amount = free[end];
        int j = end;
        int start = placeFrom[j];
        while (kindFrom[start] >= 0) {
            j = kindFrom[start];
            amount = Math.min(amount, flow[start][j]);
            start = placeFrom[j];
        }
        amount = Math.min(amount, left[start]);
        left[start] -= amount;
        free[end] -= amount;
        for (j = end; ; ) {
            int i = placeFrom[j];
            flow[i][j] += amount;
            if (kindFrom[i] < 0) {
                return amount;
            }
            j = kindFrom[i];
            flow[i][j] -= amount;
        }
    }
}
