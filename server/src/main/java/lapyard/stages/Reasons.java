package lapyard.stages;

import java.util.Arrays;
import java.util.Comparator;

/**
 * Bounds of whole numbers that are raised for reasons, and what is learned where they meet. Number {@code x} has two codes: {@code 2x}
 * stands for x and {@code 2x + 1} for -x, so that either bound only ever rises. A saying is a code and a value: that code is at least
 * that. What is learned is a list of sayings that cannot all hold.
 *
 * @see "Marques-Silva and Sakallah, GRASP, IEEE Transactions on Computers 48 (1999); Ohrimenko, Stuckey and Codish, Propagation via lazy
 *     clause generation, Constraints 14 (2009), for bounds as literals; Moskewicz and others, Chaff, DAC 2001, for two watched literals"
 */
final class Reasons {
    private static final double MORE_EACH_TIME = 1 / 0.95;
    private static final double MOST_WEIGHT = 1e100;
    /** Values of a code that are told apart when it is looked at who watches; more are taken together. */
    private static final int MOST_STRETCHES = 500;

    /** By code. */
    final int[] bound;
    /** How often a number was of late among the reasons why something cannot be. */
    final double[] weight;
    /** Codes raised, in order. */
    int[] code = new int[256];
    int raised;
    /** Up to here it was looked at what follows. */
    int heard;
    /** Work done since it was last asked for. */
    long turns;

    private double more = 1;
    private int[] old = new int[256];
    private int[] level = new int[256];
    /** The time before at which this code was raised; -1 where there is none. */
    private int[] prior = new int[256];
    private int[][] because = new int[256][];
    /** The value to which it was raised, and whether less of it needs as much less of the last saying for which it was. */
    private int[] reached = new int[256];
    private boolean[] slides = new boolean[256];
    private final int[] last;
    private int[] levelAt = new int[64];
    private int levels;

    /** Bounds before anything was supposed. */
    private int[] base;
    /** By code and by stretch of values above the base: lists that have such a saying among their first two, and how many. */
    private final int[][][][] watching;
    private final int[][] watchers;
    private final int[] width;

    private int[] conflict;
    private int[] learned;
    private int[][] lists = new int[256][];
    private int count;
    /** While it is learned: at what time the value that is needed of a code was reached; -1 where none is needed. */
    private final int[] needed;
    private final int[] need;
    private final boolean[] seen;
    private final int[] touched;
    private int touches;
    private int open;

    Reasons(int numbers) {
        bound = new int[2 * numbers];
        weight = new double[numbers];
        last = new int[2 * numbers];
        Arrays.fill(last, -1);
        watching = new int[2 * numbers][][][];
        watchers = new int[2 * numbers][];
        width = new int[2 * numbers];
        needed = last.clone();
        need = new int[2 * numbers];
        seen = new boolean[2 * numbers];
        touched = new int[2 * numbers];
    }

    int levels() {
        return levels;
    }

    /** From here on all is taken back together. */
    void suppose(int code, int value) {
        if (levels == levelAt.length) levelAt = Arrays.copyOf(levelAt, 2 * levels);
        levelAt[levels++] = raised;
        raise(code, value);
    }

    /** @param why sayings that hold and from which it follows; of the other code of the same number they may say that this is false */
    boolean raise(int code, int value, int... why) {
        if (bound[code] >= value) return true;
        if (value + bound[code ^ 1] > 0) {
            conflict = Arrays.copyOf(why, why.length + 2);
            conflict[why.length] = code ^ 1;
            conflict[why.length + 1] = 1 - value;
            return false;
        }
        if (raised == this.code.length) grow();
        this.code[raised] = code;
        old[raised] = bound[code];
        level[raised] = levels;
        prior[raised] = last[code];
        because[raised] = why;
        reached[raised] = value;
        slides[raised] = false;
        last[code] = raised++;
        bound[code] = value;
        return true;
    }

    /** As {@link #raise}, where each unit less would follow from a unit less of the last saying. */
    boolean slide(int code, int value, int... why) {
        int before = raised;
        boolean good = raise(code, value, why);
        if (raised > before) slides[before] = true;
        return good;
    }

    /** @param sayings hold, and cannot all hold */
    boolean contradict(int... sayings) {
        conflict = sayings;
        return false;
    }

    private void grow() {
        int size = 2 * raised;
        code = Arrays.copyOf(code, size);
        old = Arrays.copyOf(old, size);
        level = Arrays.copyOf(level, size);
        prior = Arrays.copyOf(prior, size);
        because = Arrays.copyOf(because, size);
        reached = Arrays.copyOf(reached, size);
        slides = Arrays.copyOf(slides, size);
    }

    /** Takes back all that was raised above this level. */
    void backTo(int level) {
        if (level >= levels) return;
        levels = level;
        while (raised > levelAt[level]) {
            int c = code[--raised];
            bound[c] = old[raised];
            last[c] = prior[raised];
        }
        heard = Math.min(heard, raised);
    }

    /** When this was reached; -1 where it always holds. */
    private int time(int code, int value) {
        int at = last[code];
        while (at >= 0 && old[at] >= value) at = prior[at];
        return at >= 0 && level[at] > 0 ? at : -1;
    }

    /**
     * Learns from the last contradiction: goes back and raises what follows. False where nothing was supposed that led to it, so that
     * there is no way out.
     */
    boolean learn() {
        int high = 0;
        for (int k = 0; k < conflict.length; k += 2) {
            int at = time(conflict[k], conflict[k + 1]);
            if (at >= 0) high = Math.max(high, level[at]);
        }
        if (high == 0) return false;
        backTo(high);
        touches = 0;
        open = 0;
        for (int k = 0; k < conflict.length; k += 2) want(conflict[k], conflict[k + 1]);
        int at = raised - 1;
        while (needed[code[at]] != at || open > 1) {
            int c = code[at];
            if (needed[c] == at) {
                needed[c] = -1;
                open--;
                for (int k = 0; k < because[at].length; k += 2) if (because[at][k] != (c ^ 1)) want(because[at][k], wanted(at, k));
            }
            at--;
        }
        keep(code[at]);
        return true;
    }

    /** What of a saying is enough for that which is needed of the code raised at this time. */
    private int wanted(int at, int k) {
        boolean less = slides[at] && k == because[at].length - 2;
        return because[at][k + 1] - (less ? reached[at] - need[code[at]] : 0);
    }

    private void want(int code, int value) {
        turns += 2;
        int at = time(code, value);
        if (at < 0 || needed[code] >= at && need[code] >= value) return;
        if (level[at] == levels && (needed[code] < 0 || level[needed[code]] < levels)) open++;
        if (!seen[code]) touched[touches++] = code;
        seen[code] = true;
        needed[code] = at;
        need[code] = value;
        if ((weight[code >> 1] += more) > MOST_WEIGHT) {
            for (int x = 0; x < weight.length; x++) weight[x] /= MOST_WEIGHT;
            more /= MOST_WEIGHT;
        }
    }

    /** Keeps what is needed, so far as it does not follow from the rest, and denies the one saying of this level. */
    private void keep(int last) {
        int[] list = new int[2 * touches];
        list[0] = last;
        list[1] = need[last];
        int size = 2;
        int second = -1;
        for (int k = 0; k < touches; k++) {
            int c = touched[k];
            if (c == last || needed[c] < 0) continue;
            if (follows(c)) {
                needed[c] = -1;
                continue;
            }
            list[size] = c;
            list[size + 1] = need[c];
            if (second < 0 || needed[c] > needed[list[second]]) second = size;
            size += 2;
        }
        int back = second < 0 ? 0 : level[needed[list[second]]];
        for (int k = 0; k < touches; k++) {
            needed[touched[k]] = -1;
            seen[touched[k]] = false;
        }
        more *= MORE_EACH_TIME;
        list = Arrays.copyOf(list, size);
        backTo(back);
        learned = list;
        if (second < 0) return;
        swap(list, 2, second);
        if (count == lists.length) lists = Arrays.copyOf(lists, 2 * count);
        lists[count++] = list;
        watch(list);
    }

    /** Lists that were learned and are kept. */
    int lists() {
        return count;
    }

    /** Forgets the longer half of what was learned; only while nothing is supposed. */
    void forget() {
        Arrays.sort(lists, 0, count, Comparator.comparingInt(list -> list.length));
        Arrays.fill(lists, count / 2, count, null);
        count /= 2;
        Arrays.fill(watching, null);
        Arrays.fill(watchers, null);
        for (int k = 0; k < count; k++) watch(lists[k]);
    }

    /** Raises what follows from what was learned last. */
    void deny() {
        raise(learned[0] ^ 1, 1 - learned[1], learned);
    }

    private boolean follows(int c) {
        int[] why = because[needed[c]];
        if (why.length == 0) return false;
        for (int k = 0; k < why.length; k += 2) {
            if (why[k] == (c ^ 1)) continue;
            turns++;
            int wanted = wanted(needed[c], k);
            if ((needed[why[k]] < 0 || need[why[k]] < wanted || why[k] == c) && time(why[k], wanted) >= 0) return false;
        }
        return true;
    }

    private static void swap(int[] list, int a, int b) {
        for (int k = 0; k < 2; k++) {
            int kept = list[a + k];
            list[a + k] = list[b + k];
            list[b + k] = kept;
        }
    }

    private void watch(int[] list) {
        watch(list, 0);
        watch(list, 2);
    }

    private void watch(int[] list, int place) {
        int code = list[place];
        if (watching[code] == null) {
            int values = -base[code ^ 1] - base[code];
            width[code] = 1 + values / MOST_STRETCHES;
            watching[code] = new int[1 + values / width[code]][2][];
            watchers[code] = new int[watching[code].length];
        }
        int stretch = stretch(code, list[place + 1]);
        int count = watchers[code][stretch]++;
        if (count == watching[code][stretch].length) watching[code][stretch] = Arrays.copyOf(watching[code][stretch], 2 * count);
        watching[code][stretch][count] = list;
    }

    private int stretch(int code, int value) {
        return (value - base[code] - 1) / width[code];
    }

    /** From here on it is learned: what holds now always holds. */
    void settle() {
        base = bound.clone();
    }

    /** What follows by what was learned from what was raised at this time; false for a contradiction. */
    boolean follow(int at) {
        int c = code[at];
        turns++;
        if (watching[c] == null) return true;
        for (int stretch = stretch(c, old[at] + 1); stretch <= stretch(c, bound[c]); stretch++) {
            if (watchers[c][stretch] > 0 && !follow(c, stretch)) return false;
        }
        return true;
    }

    private boolean follow(int code, int stretch) {
        int[][] lists = watching[code][stretch];
        int kept = 0;
        int count = watchers[code][stretch];
        boolean good = true;
        turns += 2 * count;
        for (int w = 0; w < count; w++) {
            int[] list = lists[w];
            int mine = list[0] == code ? 0 : 2;
            int other = 2 - mine;
            boolean stays = !good || bound[code] < list[mine + 1] || bound[list[other] ^ 1] >= 1 - list[other + 1];
            if (!stays) {
                int free = 4;
                while (free < list.length && bound[list[free]] >= list[free + 1]) free += 2;
                turns += free / 4;
                stays = free >= list.length;
                if (stays) {
                    good = raise(list[other] ^ 1, 1 - list[other + 1], list);
                } else {
                    swap(list, mine, free);
                    watch(list, mine);
                }
            }
            if (stays) lists[kept++] = list;
        }
        watchers[code][stretch] = kept;
        return good;
    }
}
