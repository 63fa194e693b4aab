package lapyard.cutting;

import java.util.Arrays;

/** The most that fits in so much room, as the lengths at which it grows. Begins as nothing, worth 0, in no room. */
final class WorthSteps {
    private int[] length = new int[16];
    private long[] worth = new long[16];
    private int count = 1;

    /** How many different worths there are. */
    int count() {
        return count;
    }

    /**
     * Becomes what {@code other} is when a part may be added to it once.
     *
     * @param partLength above 0
     * @param partWorth  above 0
     * @param longest    room beyond which nobody asks
     */
    void bettered(WorthSteps other, int partLength, long partWorth, int longest) {
        int most = 2 * other.count;
        if (length.length < most) {
            length = new int[most];
            worth = new long[most];
        }
        count = 0;
        int with = 0;
        long last = -1;
        for (int without = 0; without < other.count || with < other.count; ) {
            long nextWith = with < other.count ? (long) other.length[with] + partLength : Long.MAX_VALUE;
            long nextWithout = without < other.count ? other.length[without] : Long.MAX_VALUE;
            long next = Math.min(nextWith, nextWithout);
            if (next > longest) return;
            long here = last;
            if (nextWithout == next) here = Math.max(here, other.worth[without++]);
            if (nextWith == next) here = Math.max(here, other.worth[with++] + partWorth);
            if (here == last) continue;
            length[count] = (int) next;
            worth[count++] = here;
            last = here;
        }
    }

    /** The most that fits in this room. */
    long at(int room) {
        int step = Arrays.binarySearch(length, 0, count, room);
        return worth[step < 0 ? -step - 2 : step];
    }

    /** Writes the most for each room into this table. */
    void spread(long[] table) {
        for (int i = 0; i < count; i++) {
            Arrays.fill(table, length[i], i + 1 < count ? length[i + 1] : table.length, worth[i]);
        }
    }
}
