package lapyard.sheets;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/**
 * Lays given pieces within a stretch of roll by straight cuts. A partial layout is a set of open rectangles; the next piece always goes
 * into a corner of the smallest, and a cut along one of its sides parts what is left there into two, or the rectangle is given up as
 * waste. As the stretch is given, so is the waste it can bear, and whatever wastes more is dropped; what pieces cannot fill of an open
 * rectangle ({@link SideSums}) counts as waste at once. A beam keeps the best partial layouts of each number of pieces; of those with
 * the same pieces and the same open rectangles it keeps one.
 */
final class CutBeam {
    /**
     * Partial layouts are judged by what they waste as a share of what they lay. Both weights are areas, as shares of that of
     * all pieces.
     *
     * @param start is added to the waste, so that it says how much it counts that much is laid
     * @param open  is added for each open rectangle, over the root of the number of pieces
     */
    record Taste(double start, double open) {}

    /** A rectangle may be given up so often before the next piece though something fits it. */
    private static final int GIVEN_UP = 1;
    private static final int CHOICES_AN_INSERTION = 6;
    private static final int OPERATIONS_A_LOOK = 4;

    private final RollJob job;
    private final int types;
    private final int pieces;
    private final long area;
    private final int[] counts;
    private final SideSums sums;
    /** Pieces as they may lie. */
    private final int lies;
    private final long[] wide;
    private final long[] high;
    /** How many of all sides fit the width and the height of a piece as it may lie. */
    private final int[] fitWide;
    private final int[] fitHigh;
    private final int[] typeOf;
    private final long[] typeMark;

    // partial layouts of one number of pieces, and those with one more
    private Open[] level = new Open[0];
    private Open[] next = new Open[0];
    private final BeamChoices choices = new BeamChoices();

    // what was laid, in order: the step before, and the piece
    private int[] before = new int[256];
    private Block.Laid[] laid = new Block.Laid[256];
    private int steps;

    /** A partial layout: open rectangles, each its x, y, width and height, and pieces left of each type. */
    private static final class Open {
        long[] rectangles = new long[32];
        int size;
        int[] left;
        long area;
        long waste;
        long mark;
        int step;

        int smallest() {
            int smallest = 0;
            for (int r = 4; r < size; r += 4)
                if (rectangles[r + 2] * rectangles[r + 3] < rectangles[smallest + 2] * rectangles[smallest + 3]) smallest = r;
            return smallest;
        }

        /** @return its area */
        long remove(int r) {
            long area = rectangles[r + 2] * rectangles[r + 3];
            mark -= BeamChoices.mix(rectangles[r + 2], rectangles[r + 3]);
            size -= 4;
            System.arraycopy(rectangles, size, rectangles, r, 4);
            return area;
        }

        void add(long x, long y, long width, long height) {
            if (size == rectangles.length) rectangles = Arrays.copyOf(rectangles, 2 * size);
            rectangles[size++] = x;
            rectangles[size++] = y;
            rectangles[size++] = width;
            rectangles[size++] = height;
            mark += BeamChoices.mix(width, height);
        }

        void take(Open from) {
            if (rectangles.length < from.size) rectangles = new long[from.rectangles.length];
            System.arraycopy(from.rectangles, 0, rectangles, 0, from.size);
            size = from.size;
            if (left == null) left = new int[from.left.length];
            System.arraycopy(from.left, 0, left, 0, left.length);
            area = from.area;
            waste = from.waste;
            mark = from.mark;
        }
    }

    private final Open trial = new Open();
    // the two rectangles that a cut leaves, shrunk to what can be filled
    private long wideBeside;
    private long highBeside;
    private long wideAfter;
    private long highAfter;

    /** @param longest no stretch is longer */
    CutBeam(RollJob job, long width, long longest, RollBudget work) {
        this.job = job;
        types = job.types.length;
        counts = new int[types];
        for (int t = 0; t < types; t++) counts[t] = job.types[t].count();
        pieces = job.pieces();
        area = job.area();
        sums = new SideSums(job, Math.max(width, longest), work);
        List<long[]> all = new ArrayList<>();
        for (int t = 0; t < types; t++) {
            RollJob.Type type = job.types[t];
            all.add(new long[] {type.width(), type.height(), t});
            if (job.turn && type.width() != type.height()) all.add(new long[] {type.height(), type.width(), t});
        }
        lies = all.size();
        wide = all.stream().mapToLong(a -> a[0]).toArray();
        high = all.stream().mapToLong(a -> a[1]).toArray();
        fitWide = all.stream().mapToInt(a -> sums.fitting(a[0])).toArray();
        fitHigh = all.stream().mapToInt(a -> sums.fitting(a[1])).toArray();
        typeOf = all.stream().mapToInt(a -> (int) a[2]).toArray();
        typeMark = new long[types];
        for (int t = 0; t < types; t++) typeMark[t] = BeamChoices.mix(t + 1, -7);
    }

    /**
     * @param beam how many partial layouts are kept
     * @return all pieces in the order in which they are laid; null where no layout was found, which proves nothing
     */
    List<Block.Laid> fit(long width, long height, int beam, Taste taste, RollBudget work) {
        long bearable = width * height - area;
        if (bearable < 0) return null;
        steps = 0;
        if (level.length < beam) level = Arrays.copyOf(level, beam);
        if (next.length < beam) next = Arrays.copyOf(next, beam);
        level[0] = whole(width, height);
        int many = 1;
        for (int n = 0; n < pieces; n++) {
            choices.clear(beam);
            for (int f = 0; f < many; f++) work.spend(expand(level[f], f, bearable, taste));
            if (work.over()) return null;
            int kept = choices.sift();
            for (int c = 0; c < kept; c++) place(level[choices.from(c)], choices.chosen(c), c);
            work.spend(kept * (40L + types));
            if (kept == 0) return null;
            Open[] swap = level;
            level = next;
            next = swap;
            many = kept;
        }
        List<Block.Laid> shortest = null;
        for (int f = 0; f < many; f++) {
            List<Block.Laid> found = laid(level[f].step);
            if (shortest == null || length(found) < length(shortest)) shortest = found;
        }
        return shortest;
    }

    static long length(List<Block.Laid> laid) {
        long length = 0;
        for (Block.Laid one : laid) length = Math.max(length, one.y() + one.height());
        return length;
    }

    private List<Block.Laid> laid(int last) {
        List<Block.Laid> all = new ArrayList<>();
        for (int s = last; s >= 0; s = before[s]) all.add(laid[s]);
        Collections.reverse(all);
        return all;
    }

    private Open whole(long width, long height) {
        Open open = new Open();
        open.left = counts.clone();
        long across = sums.across(width, height);
        long along = sums.along(height, width);
        open.add(0, 0, across, along);
        open.waste = width * height - across * along;
        for (int t = 0; t < types; t++) open.mark += counts[t] * typeMark[t];
        open.step = -1;
        return open;
    }

    /** Notes what may be laid next; returns how many operations that took. */
    private long expand(Open open, int f, long bearable, Taste taste) {
        trial.take(open);
        long operations = 10;
        double base = taste.start * area;
        double perOpen = taste.open * area / Math.sqrt(pieces);
        for (int given = 0; trial.size > 0 && trial.waste <= bearable && given < 15; given++) {
            int at = trial.smallest();
            long w = trial.rectangles[at + 2];
            long h = trial.rectangles[at + 3];
            int fitW = sums.fitting(w);
            int fitH = sums.fitting(h);
            long shape = trial.mark - BeamChoices.mix(w, h);
            int others = trial.size / 4 - 1;
            boolean any = false;
            for (int o = 0; o < lies; o++) {
                if (wide[o] > w || high[o] > h || trial.left[typeOf[o]] == 0) continue;
                any = true;
                operations += OPERATIONS_A_LOOK;
                double laid = trial.area + wide[o] * high[o];
                for (int cut = 0; cut < 2; cut++) {
                    // where a side is full both cuts are one
                    if (cut == 1 && (wide[o] == w || high[o] == h)) break;
                    long lost = part(w, h, fitW, fitH, o, cut);
                    if (trial.waste + lost > bearable) continue;
                    int now = others + (wideBeside > 0 ? 1 : 0) + (wideAfter > 0 ? 1 : 0);
                    float score = (float) ((trial.waste + lost + base + perOpen * now) / laid);
                    if (score >= choices.worst) continue;
                    long mark = shape - typeMark[typeOf[o]];
                    if (wideBeside > 0) mark += BeamChoices.mix(wideBeside, highBeside);
                    if (wideAfter > 0) mark += BeamChoices.mix(wideAfter, highAfter);
                    choices.note(score, f, o << 5 | given << 1 | cut, mark);
                    operations += CHOICES_AN_INSERTION;
                }
            }
            if (any && given >= GIVEN_UP) break;
            trial.waste += trial.remove(at);
        }
        return operations;
    }

    /**
     * Works out what a piece in the corner of a rectangle leaves.
     *
     * @param fitW how many sides fit the rectangle's width
     * @param fitH how many sides fit its height
     * @param o    the piece as it lies
     * @param cut  0: along the piece's side over the whole height; 1: across the whole width
     * @return what is lost at once
     */
    private long part(long w, long h, int fitW, int fitH, int o, int cut) {
        long beside = w - wide[o];
        long after = h - high[o];
        long besideHeight = cut == 0 ? h : high[o];
        long afterWidth = cut == 0 ? wide[o] : w;
        wideBeside = beside == 0 ? 0 : sums.acrossWhere(beside, cut == 0 ? fitH : fitHigh[o]);
        highBeside = wideBeside == 0 ? 0 : sums.along(besideHeight, beside);
        int fitAfter = sums.fitting(after);
        wideAfter = after == 0 ? 0 : sums.acrossWhere(afterWidth, fitAfter);
        highAfter = wideAfter == 0 ? 0 : sums.alongWhere(after, cut == 0 ? fitWide[o] : fitW);
        return beside * besideHeight + after * afterWidth - wideBeside * highBeside - wideAfter * highAfter;
    }

    private void place(Open old, int choice, int into) {
        Open open = next[into] == null ? next[into] = new Open() : next[into];
        open.take(old);
        for (int given = choice >> 1 & 15; given > 0; given--) open.waste += open.remove(open.smallest());
        int o = choice >> 5;
        int at = open.smallest();
        long x = open.rectangles[at];
        long y = open.rectangles[at + 1];
        long w = open.rectangles[at + 2];
        long h = open.rectangles[at + 3];
        open.remove(at);
        open.waste += part(w, h, sums.fitting(w), sums.fitting(h), o, choice & 1);
        if (wideBeside > 0) open.add(x + wide[o], y, wideBeside, highBeside);
        if (wideAfter > 0) open.add(x, y + high[o], wideAfter, highAfter);
        open.left[typeOf[o]]--;
        open.mark -= typeMark[typeOf[o]];
        open.area += wide[o] * high[o];
        if (steps == before.length) {
            before = Arrays.copyOf(before, 2 * steps);
            laid = Arrays.copyOf(laid, 2 * steps);
        }
        before[steps] = old.step;
        laid[steps] = new Block.Laid(typeOf[o], x, y, wide[o], high[o]);
        open.step = steps++;
    }
}
