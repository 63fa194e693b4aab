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

    /** How many of each kind are still to be placed, and how many places of each kind are free. */
    private final int[] left;
    private final int[] free;
    private final long[][] cost;
    /** How many of kind i are in places of kind j. */
    private final int[][] flow;

    // cheapest paths: what each kind and each place costs to reach, and what stands before it; -1 where a path starts
    private final long[] toKind;
    private final long[] toPlace;
    private final int[] kindFrom;
    private final int[] placeFrom;

    private Assignment(int[] there, int[] places, long[][] cost) {
        this.cost = cost;
        left = there.clone();
        free = places.clone();
        flow = new int[left.length][free.length];
        toKind = new long[left.length];
        kindFrom = new int[left.length];
        toPlace = new long[free.length];
        placeFrom = new int[free.length];
    }

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
        Assignment assignment = new Assignment(there, places, cost);
        for (int placed = 0; placed < total; ) {
            placed += assignment.augment();
        }
        return assignment.flow;
    }

    /** Sends as many as can go along one cheapest path, from a kind with something left to a kind of place that is free. */
    private int augment() {
        findPaths();
        int end = cheapestEnd();
        int start = placeFrom[end];
        int amount = free[end];
        while (kindFrom[start] >= 0) {
            int j = kindFrom[start];
            amount = Math.min(amount, flow[start][j]);
            start = placeFrom[j];
        }
        amount = Math.min(amount, left[start]);
        left[start] -= amount;
        free[end] -= amount;
        for (int j = end; j >= 0; ) {
            int i = placeFrom[j];
            flow[i][j] += amount;
            j = kindFrom[i];
            if (j >= 0) flow[i][j] -= amount;
        }
        return amount;
    }

    /** Bellman and Ford's rounds. */
    private void findPaths() {
        Arrays.fill(toPlace, NEVER);
        Arrays.fill(kindFrom, -1);
        for (int i = 0; i < left.length; i++) {
            toKind[i] = left[i] > 0 ? 0 : NEVER;
        }
        boolean changed = true;
        while (changed) {
            changed = false;
            for (int i = 0; i < left.length; i++) {
                for (int j = 0; j < free.length; j++) {
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
    }

    private int cheapestEnd() {
        int end = -1;
        for (int j = 0; j < free.length; j++) {
            if (free[j] > 0 && toPlace[j] < NEVER && (end < 0 || toPlace[j] < toPlace[end])) {
                end = j;
            }
        }
        if (end < 0) {
            throw new IllegalArgumentException("only forbidden pairs are left");
        }
        return end;
    }
}
