package lapyard.sheets;

import java.util.Arrays;

/** The most that pieces side by side are worth in so much width, as the widths at which it grows. Begins as no piece, worth 0. */
final class BarWorth {
    private int[] width = new int[16];
    private double[] worth = new double[16];
    private int count = 1;

    /**
     * Becomes what {@code before} is when a piece may lie beside it once, one way or the other.
     *
     * @param across width of the piece each way, above 0
     * @param gain   what it is worth each way, 0 where it may not lie so
     * @param grid   width beyond which nobody asks
     */
    void bettered(BarWorth before, int[] across, double[] gain, int grid) {
        if (width.length < 3 * before.count) {
            width = new int[4 * before.count];
            worth = new double[4 * before.count];
        }
        count = 0;
        double last = -1;
        int without = 0;
        int first = gain[0] == 0 ? before.count : 0;
        int second = gain[1] == 0 ? before.count : 0;
        while (true) {
            int next = Math.min(before.from(without, 0), Math.min(before.from(first, across[0]), before.from(second, across[1])));
            if (next > grid) return;
            double here = last;
            if (before.from(without, 0) == next) here = Math.max(here, before.worth[without++]);
            if (before.from(first, across[0]) == next) here = Math.max(here, before.worth[first++] + gain[0]);
            if (before.from(second, across[1]) == next) here = Math.max(here, before.worth[second++] + gain[1]);
            if (here == last) continue;
            width[count] = next;
            worth[count++] = here;
            last = here;
        }
    }

    private int from(int step, int across) {
        return step < count ? width[step] + across : Integer.MAX_VALUE;
    }

    double at(int room) {
        int step = Arrays.binarySearch(width, 0, count, room);
        return worth[step < 0 ? -step - 2 : step];
    }

    /** The way in which this piece lies beside these in the bar of most worth; -1 where it does not. */
    int way(int[] across, double[] gain, int room) {
        double most = at(room);
        int way = -1;
        for (int i = 0; i < 2; i++) {
            if (gain[i] == 0 || across[i] > room) continue;
            double with = at(room - across[i]) + gain[i];
            if (with <= most) continue;
            most = with;
            way = i;
        }
        return way;
    }
}
