package lapyard.stages;

import java.util.Arrays;

/** The clock units in which one kind of task can be worked on, numbered from 0; grows as far as it is asked. */
final class Hours {
    private final boolean[] cycle;
    private final int worksACycle;
    private final int longestRun;
    private int[] clock = new int[0];
    private int[] rank = {0};
    private int counted;

    /** @param cycle repeats for ever */
    Hours(boolean[] cycle) {
        this.cycle = cycle;
        int works = 0;
        for (boolean unit : cycle) works += unit ? 1 : 0;
        worksACycle = works;
        longestRun = longestRun(cycle, works);
    }

    private static int longestRun(boolean[] cycle, int works) {
        if (works == cycle.length) return Integer.MAX_VALUE;
        int longest = 0;
        int run = 0;
        for (int t = 0; t < 2 * cycle.length; t++) {
            run = cycle[t % cycle.length] ? run + 1 : 0;
            longest = Math.max(longest, run);
        }
        return longest;
    }

    boolean never() {
        return worksACycle == 0;
    }

    int cycleLength() {
        return cycle.length;
    }

    int worksACycle() {
        return worksACycle;
    }

    /** Units in the longest stretch without a break. */
    int longestRun() {
        return longestRun;
    }

    /** How many worked units lie before this clock unit. */
    int rank(int unit) {
        if (unit >= rank.length) grow(unit);
        return rank[unit];
    }

    /** The clock unit of the worked unit of this number. */
    int clock(int number) {
        while (number >= counted) grow(Math.max(64, 2 * rank.length));
        return clock[number];
    }

    /** As {@link #clock}, good for all numbers up to this one. */
    int[] clocks(int number) {
        while (number >= counted) grow(Math.max(64, 2 * rank.length));
        return clock;
    }

    private void grow(int unit) {
        if (worksACycle == 0 && unit > (1 << 28)) {
            throw new IllegalStateException("no unit of this calendar is ever worked");
        }
        int from = rank.length - 1;
        int to = Math.max(unit + 1, from * 2);
        rank = Arrays.copyOf(rank, to + 1);
        clock = Arrays.copyOf(clock, counted + (to - from));
        for (int t = from; t < to; t++) {
            if (cycle[t % cycle.length]) clock[counted++] = t;
            rank[t + 1] = counted;
        }
    }
}
