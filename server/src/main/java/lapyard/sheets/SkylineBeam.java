package lapyard.sheets;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;

/**
 * Lays given pieces within a stretch of roll. The front of what is laid is a skyline; the next piece always goes into its
 * lowest niche, or the niche is given up as waste. As the stretch is given, so is the waste it can bear, and whatever wastes
 * more is dropped. A beam keeps the best partial layouts of each number of pieces; of those with the same pieces and the
 * same front it keeps one.
 *
 * @see "Burke, Kendall and Whitwell, A new placement heuristic for the orthogonal stock-cutting problem, Operations
 *     Research 52 (2004), for the lowest niche; Zhang, Wei, Leung and Chen, A binary search heuristic algorithm based on
 *     randomized local search for the rectangular strip-packing problem, INFORMS Journal on Computing 25 (2013), for least
 *     waste and fewest corners of the front"
 */
final class SkylineBeam {
    /**
     * Partial layouts are judged by what they waste as a share of what they lay. Both weights are areas, as shares of that of
     * all pieces.
     *
     * @param start  is added to the waste, so that it says how much it counts that much is laid
     * @param corner is added for each level of the front, over the root of the number of pieces
     */
    record Taste(double start, double corner) {}

    /** A niche may be given up so often before the next piece though something fits it. */
    private static final int GIVEN_UP = 2;
    private static final int MOST_GIVEN_UP = 7;
    private static final int CHOICES_AN_INSERTION = 6;

    private final long width;
    private final int[] counts;
    private final int types;
    private final int pieces;
    private final long area;
    /** Pieces as they may lie, narrowest first. */
    private final int lies;
    private final long[] wide;
    private final long[] high;
    private final long[] size;
    private final int[] typeOf;
    /** The same piece the other way; itself where there is none. */
    private final int[] otherLie;
    private final boolean alike;

    private final long[] typeMark;

    // partial layouts of one number of pieces, and those with one more
    private Front[] level = new Front[0];
    private Front[] next = new Front[0];

    // what was laid, in order: the step before, and the piece
    private int[] before = new int[256];
    private int[] lie = new int[256];
    private long[] lieX = new long[256];
    private long[] lieY = new long[256];
    private int steps;

    private final BeamChoices choices = new BeamChoices();

    // the front that is gone on from, and its niche
    private final long[] x;
    private final long[] y;
    private int corners;
    private int niche;
    private long to;
    private long floor;
    private long leftWall;
    private long rightWall;
    /** Mark of the pieces that are left and of all levels but the niche. */
    private long shape;
    /** Whether something fits one of its niches. */
    private boolean any;

    /** A partial layout. */
    private static final class Front {
        long[] x = new long[8];
        long[] y = new long[8];
        int corners;
        /** Lies of pieces that are left, a bit each. */
        long[] open;
        /** Pieces left of each type; null where there is one of each. */
        int[] left;
        long area;
        long waste;
        long mark;
        int step;
    }

    SkylineBeam(RollJob job, int[] counts, long width) {
        this.width = width;
        this.counts = counts;
        this.types = counts.length;
        List<long[]> all = new ArrayList<>();
        long sum = 0;
        int n = 0;
        for (int t = 0; t < types; t++) {
            if (counts[t] == 0) continue;
            long w = job.types[t].width();
            long h = job.types[t].height();
            sum += w * h * counts[t];
            n += counts[t];
            if (w <= width) all.add(new long[] {w, h, t});
            if (job.turn && w != h && h <= width) all.add(new long[] {h, w, t});
        }
        all.sort(Comparator.comparingLong((long[] a) -> a[0]).thenComparingLong(a -> a[1]));
        alike = Arrays.stream(counts).anyMatch(count -> count > 1);
        area = sum;
        pieces = n;
        lies = all.size();
        wide = all.stream().mapToLong(a -> a[0]).toArray();
        high = all.stream().mapToLong(a -> a[1]).toArray();
        typeOf = all.stream().mapToInt(a -> (int) a[2]).toArray();
        size = all.stream().mapToLong(a -> a[0] * a[1]).toArray();
        otherLie = new int[lies];
        int[] seenLie = new int[types];
        Arrays.fill(seenLie, -1);
        for (int o = 0; o < lies; o++) {
            int other = seenLie[typeOf[o]];
            otherLie[o] = other < 0 ? o : other;
            if (other >= 0) otherLie[other] = o;
            seenLie[typeOf[o]] = o;
        }
        typeMark = new long[types];
        for (int t = 0; t < types; t++) typeMark[t] = BeamChoices.mix(t + 1, -7);
        x = new long[pieces + 2];
        y = new long[pieces + 2];
    }

    /**
     * @param height of the stretch
     * @param beam   how many partial layouts are kept
     * @return all pieces in the order in which they are laid; null where no layout was found, which proves nothing
     */
    List<Block.Laid> fit(long height, int beam, Taste taste, RollBudget work) {
        long bearable = width * height - area;
        if (bearable < 0) return null;
        steps = 0;
        if (level.length < beam) level = Arrays.copyOf(level, beam);
        if (next.length < beam) next = Arrays.copyOf(next, beam);
        level[0] = empty();
        int fronts = 1;
        for (int n = 0; n < pieces; n++) {
            choices.clear(beam);
            long looked = 0;
            for (int f = 0; f < fronts; f++) looked += expand(level[f], f, height, bearable, taste);
            work.spend(looked + fronts * 20L);
            if (work.over()) return null;
            int kept = choices.sift();
            for (int c = 0; c < kept; c++) place(level[choices.from(c)], choices.chosen(c), c);
            work.spend(kept * (30L + types / 8));
            if (kept == 0) return null;
            Front[] swap = level;
            level = next;
            next = swap;
            fronts = kept;
        }
        Front lowest = level[0];
        for (int f = 1; f < fronts; f++) if (top(level[f]) < top(lowest)) lowest = level[f];
        return laid(lowest.step);
    }

    private static long top(Front front) {
        long top = 0;
        for (int i = 0; i < front.corners; i++) top = Math.max(top, front.y[i]);
        return top;
    }

    private List<Block.Laid> laid(int last) {
        List<Block.Laid> laid = new ArrayList<>();
        for (int s = last; s >= 0; s = before[s])
            laid.add(new Block.Laid(typeOf[lie[s]], lieX[s], lieY[s], wide[lie[s]], high[lie[s]]));
        Collections.reverse(laid);
        return laid;
    }

    private Front empty() {
        Front front = new Front();
        front.corners = 1;
        front.open = new long[(lies + 63) / 64];
        for (int o = 0; o < lies; o++) front.open[o >> 6] |= 1L << o;
        front.left = alike ? counts.clone() : null;
        for (int t = 0; t < types; t++) front.mark += counts[t] * typeMark[t];
        front.step = -1;
        return front;
    }

    /** Notes what may be laid next; returns how many places were looked at. */
    private long expand(Front front, int f, long height, long bearable, Taste taste) {
        corners = front.corners;
        System.arraycopy(front.x, 0, x, 0, corners);
        System.arraycopy(front.y, 0, y, 0, corners);
        double corner = taste.corner * area / Math.sqrt(pieces);
        long waste = front.waste;
        long looked = 0;
        any = false;
        for (int given = 0; waste <= bearable; given++) {
            niche = lowest(y, corners);
            boolean rightmost = niche + 1 == corners;
            to = rightmost ? width : x[niche + 1];
            floor = y[niche];
            leftWall = niche > 0 ? y[niche - 1] : height;
            rightWall = rightmost ? height : y[niche + 1];
            shape = front.mark;
            for (int i = 0; i < corners; i++) if (i != niche) shape += BeamChoices.mix(x[i], y[i]);
            looked += look(front, f << 3 | given, height, bearable - waste, waste + taste.start * area + corner * corners, corner);
            if (given >= GIVEN_UP && any || given == MOST_GIVEN_UP || corners == 1) break;
            waste += (to - x[niche]) * (Math.min(leftWall, rightWall) - floor);
            corners = giveUp(x, y, corners, niche);
        }
        return looked;
    }

    /**
     * Notes what may be laid in the niche.
     *
     * @param from     number of the front, and how often a niche was given up
     * @param spare    waste that is still bearable
     * @param leastBad how bad the front is before
     */
    private long look(Front front, int from, long height, long spare, double leastBad, double corner) {
        long[] open = front.open;
        int first = 0;
        while (open[first] == 0) first++;
        long narrowest = wide[64 * first + Long.numberOfTrailingZeros(open[first])];
        long room = to - x[niche];
        long looked = 0;
        long tooSmall = (long) (leastBad / choices.worst) - front.area;
        long bits = open[first];
        for (int word = first; ; ) {
            while (bits == 0 && ++word < open.length) bits = open[word];
            if (bits == 0) return looked;
            int o = 64 * word + Long.numberOfTrailingZeros(bits);
            bits &= bits - 1;
            if (wide[o] > room) return looked;
            looked++;
            long top = floor + high[o];
            if (top > height) continue;
            long gap = room - wide[o];
            // as small a piece beside a gap that others fill is no choice, whatever walls it meets
            if (gap < narrowest || size[o] > tooSmall) {
                boolean atLeft = Math.abs(top - leftWall) <= Math.abs(top - rightWall);
                long lost = gap < narrowest ? gap * (Math.min(top, atLeft ? rightWall : leftWall) - floor) : 0;
                if (lost > spare) continue;
                int more = gap > 0 ? top == (atLeft ? leftWall : rightWall) ? 0 : 1 : (top == leftWall ? -1 : 0) + (top == rightWall ? -1 : 0);
                double bad = leastBad + lost + corner * more;
                double laid = front.area + size[o];
                // a product is much cheaper than a quotient, and most choices end here
                if (bad < choices.worst * laid && note(from, o, (float) (bad / laid), top, atLeft)) {
                    looked += CHOICES_AN_INSERTION;
                    tooSmall = (long) (leastBad / choices.worst) - front.area;
                }
            }
            any = true;
        }
    }

    private boolean note(int from, int o, float score, long top, boolean atLeft) {
        if (score >= choices.worst) return false;
        boolean flush = top == rightWall && niche + 1 < corners;
        // equal marks are taken for equal layouts
        long now = shape - typeMark[typeOf[o]];
        if (to - x[niche] == wide[o] || atLeft) {
            if (top != leftWall || niche == 0) now += BeamChoices.mix(x[niche], top);
            if (to - x[niche] > wide[o]) now += BeamChoices.mix(x[niche] + wide[o], floor);
            else if (flush) now -= BeamChoices.mix(to, top);
        } else {
            now += BeamChoices.mix(x[niche], floor) + BeamChoices.mix(to - wide[o], top);
            if (flush) now -= BeamChoices.mix(to, top);
        }
        choices.note(score, from >> 3, o << 4 | (from & 7) << 1 | (atLeft ? 1 : 0), now);
        return true;
    }

    /** Raises a niche to its lower wall; returns how many levels are left. */
    private int giveUp(long[] x, long[] y, int corners, int niche) {
        long leftWall = niche > 0 ? y[niche - 1] : Long.MAX_VALUE;
        long rightWall = niche + 1 < corners ? y[niche + 1] : Long.MAX_VALUE;
        y[niche] = Math.min(leftWall, rightWall);
        return joined(x, y, corners);
    }

    /** Neighbouring levels of one height become one. */
    private static int joined(long[] x, long[] y, int corners) {
        int n = 0;
        for (int i = 0; i < corners; i++) {
            if (n > 0 && y[n - 1] == y[i]) continue;
            x[n] = x[i];
            y[n++] = y[i];
        }
        return n;
    }

    private void place(Front old, int choice, int into) {
        Front front = withLevelsOf(old, into);
        int corners = old.corners;
        long[] fx = front.x;
        long[] fy = front.y;
        int o = choice >> 4;
        long waste = old.waste;
        int niche = lowest(fy, corners);
        for (int given = choice >> 1 & 7; given > 0; given--) {
            long to = niche + 1 < corners ? fx[niche + 1] : width;
            long wall = Math.min(niche > 0 ? fy[niche - 1] : Long.MAX_VALUE, niche + 1 < corners ? fy[niche + 1] : Long.MAX_VALUE);
            waste += (to - fx[niche]) * (wall - fy[niche]);
            corners = giveUp(fx, fy, corners, niche);
            niche = lowest(fy, corners);
        }
        long to = niche + 1 < corners ? fx[niche + 1] : width;
        long floor = fy[niche];
        long top = floor + high[o];
        long at = fx[niche];
        boolean beside = to - at > wide[o];
        if (beside) part(front, corners++, niche, wide[o], (choice & 1) == 1, to);
        if (beside && (choice & 1) == 0) at = fx[++niche];
        fy[niche] = top;
        front.corners = joined(fx, fy, corners);
        takeOut(old, front, o);
        front.area = old.area + size[o];
        front.waste = waste;
        front.mark = old.mark - typeMark[typeOf[o]];
        front.step = step(old.step, o, at, floor);
    }

    /** Parts a niche at the side of a piece of this width that lies at its left or its right end. */
    private static void part(Front front, int corners, int niche, long wide, boolean left, long to) {
        System.arraycopy(front.x, niche + 1, front.x, niche + 2, corners - niche - 1);
        System.arraycopy(front.y, niche + 1, front.y, niche + 2, corners - niche - 1);
        front.x[niche + 1] = left ? front.x[niche] + wide : to - wide;
        front.y[niche + 1] = front.y[niche];
    }

    /** The next partial layout at this place, with the levels of another and room for one more. */
    private Front withLevelsOf(Front old, int into) {
        Front front = next[into] == null ? next[into] = new Front() : next[into];
        if (front.x.length < old.corners + 2) {
            front.x = new long[old.corners + 10];
            front.y = new long[old.corners + 10];
        }
        System.arraycopy(old.x, 0, front.x, 0, old.corners);
        System.arraycopy(old.y, 0, front.y, 0, old.corners);
        return front;
    }

    /** What is still to be laid: all that was but this piece. */
    private void takeOut(Front old, Front front, int o) {
        if (front.open == null) front.open = new long[old.open.length];
        System.arraycopy(old.open, 0, front.open, 0, old.open.length);
        if (alike) {
            if (front.left == null) front.left = new int[types];
            System.arraycopy(old.left, 0, front.left, 0, types);
        }
        if (!alike || --front.left[typeOf[o]] == 0) {
            front.open[o >> 6] &= ~(1L << o);
            front.open[otherLie[o] >> 6] &= ~(1L << otherLie[o]);
        }
    }

    /** Keeps where a piece was laid, and after which; returns its number. */
    private int step(int after, int o, long at, long floor) {
        if (steps == before.length) {
            before = Arrays.copyOf(before, 2 * steps);
            lie = Arrays.copyOf(lie, 2 * steps);
            lieX = Arrays.copyOf(lieX, 2 * steps);
            lieY = Arrays.copyOf(lieY, 2 * steps);
        }
        before[steps] = after;
        lie[steps] = o;
        lieX[steps] = at;
        lieY[steps] = floor;
        return steps++;
    }

    private static int lowest(long[] y, int corners) {
        int lowest = 0;
        for (int i = 1; i < corners; i++) if (y[i] < y[lowest]) lowest = i;
        return lowest;
    }
}
