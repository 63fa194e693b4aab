package lapyard.cutting;

import java.util.Arrays;

/**
 * Pieces cut from one board: {@code counts[i]} of item {@code items[i]}, items ascending.
 *
 * @param stock index of the board in {@link WholeProblem}, or {@link #NONE} for pieces left uncut
 */
record Pattern(int stock, int[] items, int[] counts) {
    static final int NONE = -1;

    /** The pattern with these copies of every item, zeros left out. */
    static Pattern of(int stock, int[] copies) {
        int n = 0;
        for (int copy : copies) if (copy > 0) n++;
        int[] items = new int[n];
        int[] counts = new int[n];
        int at = 0;
        for (int i = 0; i < copies.length; i++) {
            if (copies[i] == 0) continue;
            items[at] = i;
            counts[at++] = copies[i];
        }
        return new Pattern(stock, items, counts);
    }

    Pattern on(int otherStock) {
        return new Pattern(otherStock, items, counts);
    }

    long weight(WholeProblem problem) {
        long sum = 0;
        for (int i = 0; i < items.length; i++) sum += (long) problem.weight[items[i]] * counts[i];
        return sum;
    }

    /** What its board has left, in weight units. */
    int left(WholeProblem problem) {
        return (int) (problem.capacity[stock] - weight(problem));
    }

    /** How many good faces its board must have. */
    int goodFaces(WholeProblem problem) {
        int faces = 0;
        for (int item : items) faces = Math.max(faces, problem.itemFaces[item]);
        return faces;
    }

    int pieces() {
        int sum = 0;
        for (int count : counts) sum += count;
        return sum;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Pattern p
                && p.stock == stock
                && Arrays.equals(p.items, items)
                && Arrays.equals(p.counts, counts);
    }

    @Override
    public int hashCode() {
        return (Arrays.hashCode(items) * 31 + Arrays.hashCode(counts)) * 31 + stock;
    }
}
