package lapyard.sheets;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
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
    /** Such a part of what it may be longer a stretch is longer at a time. */
    private static final int LONGER_BY = 4;
    private static final int CHOICES_AN_INSERTION = 6;
    /** One choice more to so many, as some leave no room for the largest piece. */
    private static final int A_SPARE_OF = 4;

    private final long width;
    private final int[] counts;
    private final int types;
    private final int pieces;
    private final long area;
    private final Lies lies;
    private final long[] wide;
    private final long[] high;
    private final long[] size;
    private final int[] typeOf;
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

    /** Of the stretch, and the waste it can bear. */
    private long height;
    private long bearable;

    // the front that is gone on from, and its niche
    private final long[] x;
    private final long[] y;
    private int corners;
    private int niche;
    private long to;
    private long floor;
    /** The lowest level but the niche. */
    private long elsewhere;
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
        /** The same, largest first. */
        long[] large;
        /** Of {@link Lies#tallest}, those before this place are laid. */
        int tall;
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
        types = counts.length;
        lies = new Lies(job, counts, width);
        wide = lies.wide;
        high = lies.high;
        size = lies.size;
        typeOf = lies.typeOf;
        typeMark = new long[types];
        long sum = 0;
        int n = 0;
        for (int t = 0; t < types; t++) {
            typeMark[t] = BeamChoices.mix(t + 1, -7);
            sum += job.types[t].width() * job.types[t].height() * counts[t];
            n += counts[t];
        }
        area = sum;
        pieces = n;
        alike = Arrays.stream(counts).anyMatch(count -> count > 1);
        x = new long[pieces + 2];
        y = new long[pieces + 2];
    }

    /**
     * @param height  of the stretch that is asked for
     * @param longest that it may be, where all partial layouts end with pieces left
     * @param beam    how many partial layouts are kept
     * @return all pieces in the order in which they are laid; null where no layout was found, which proves nothing
     */
    List<Block.Laid> fit(long height, long longest, int beam, Taste taste, RollBudget work) {
        stretch(height);
        if (bearable < 0) return null;
        steps = 0;
        if (level.length < beam) level = Arrays.copyOf(level, beam);
        if (next.length < beam) next = Arrays.copyOf(next, beam);
        level[0] = empty();
        int fronts = 1;
        for (int n = 0; n < pieces; ) {
            int further = further(fronts, n + 1 == pieces, beam, taste, work);
            if (work.over()) return null;
            if (further == 0) {
                // most end with a piece or two left, for which a little more is enough
                if (this.height == longest) return null;
                stretch(this.height + (longest - this.height + LONGER_BY - 1) / LONGER_BY);
                continue;
            }
            fronts = further;
            n++;
            Front[] swap = level;
            level = next;
            next = swap;
        }
        Front lowest = level[0];
        for (int f = 1; f < fronts; f++) if (top(level[f]) < top(lowest)) lowest = level[f];
        return laid(lowest.step);
    }

    private void stretch(long height) {
        this.height = height;
        bearable = width * height - area;
    }

    /** Lays one piece more on the partial layouts in all ways that are best; returns how many there are then. */
    private int further(int fronts, boolean last, int beam, Taste taste, RollBudget work) {
        choices.clear(beam + beam / A_SPARE_OF);
        long looked = 0;
        for (int f = 0; f < fronts; f++) looked += expand(level[f], f, taste);
        work.spend(looked + fronts * 20L);
        if (work.over()) return 0;
        int kept = choices.sift();
        int further = 0;
        int tried = 0;
        for (int c = 0; c < kept && further < beam; c++, tried++) {
            place(level[choices.from(c)], choices.chosen(c), further);
            if (last || roomForLargest(next[further])) further++;
        }
        work.spend(tried * (30L + types / 8));
        return further;
    }

    private static long top(Front front) {
        long top = 0;
        for (int i = 0; i < front.corners; i++) top = Math.max(top, front.y[i]);
        return top;
    }

    /** Whether somewhere the largest piece that is left has room on the front. */
    private boolean roomForLargest(Front front) {
        int o = lies.bySize[lies.next(front.large, 0)];
        int other = lies.other[o];
        return room(front, wide[o], height - high[o]) || room(front, wide[other], height - high[other]);
    }

    private boolean room(Front front, long wanted, long floor) {
        long from = 0;
        for (int i = 0; i < front.corners; i++) {
            if (front.y[i] > floor) from = i + 1 < front.corners ? front.x[i + 1] : width;
            else if ((i + 1 < front.corners ? front.x[i + 1] : width) - from >= wanted) return true;
        }
        return false;
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
        front.open = lies.all();
        front.large = lies.all();
        front.left = alike ? counts.clone() : null;
        for (int t = 0; t < types; t++) front.mark += counts[t] * typeMark[t];
        front.step = -1;
        return front;
    }

    /** Notes what may be laid next; returns how many places were looked at. */
    private long expand(Front front, int f, Taste taste) {
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
            // what is left must still find room above it
            if (floor + high[lies.tallest[front.tall]] > height) break;
            leftWall = niche > 0 ? y[niche - 1] : height;
            rightWall = rightmost ? height : y[niche + 1];
            shape = front.mark;
            elsewhere = height;
            for (int i = 0; i < corners; i++) {
                if (i == niche) continue;
                shape += BeamChoices.mix(x[i], y[i]);
                elsewhere = Math.min(elsewhere, y[i]);
            }
            looked += look(front, f << 3 | given, bearable - waste, waste + taste.start * area + corner * corners, corner);
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
    private long look(Front front, int from, long spare, double leastBad, double corner) {
        long room = to - x[niche];
        long most = room - wide[lies.next(front.open, 0)];
        long looked = 4;
        // pieces beside which nothing fits: what they waste differs
        for (int o = lies.next(front.open, lies.upTo(most)); o < lies.count && wide[o] <= room; o = lies.next(front.open, o + 1)) {
            looked++;
            long top = floor + high[o];
            if (top > height) continue;
            long gap = room - wide[o];
            boolean atLeft = Math.abs(top - leftWall) <= Math.abs(top - rightWall);
            long lost = gap * (Math.min(top, atLeft ? rightWall : leftWall) - floor);
            if (lost > spare || Math.min(top, elsewhere) + heightWithout(front, o) > height) continue;
            any = true;
            int more = gap > 0 ? top == (atLeft ? leftWall : rightWall) ? 0 : 1 : (top == leftWall ? -1 : 0) + (top == rightWall ? -1 : 0);
            if (note(from, o, leastBad + lost + corner * more, front.area + size[o], top, atLeft)) looked += CHOICES_AN_INSERTION;
        }
        // beside the others something fits: the larger the better, whatever walls they meet
        for (int s = lies.next(front.large, 0); s < lies.count; s = lies.next(front.large, s + 1)) {
            int o = lies.bySize[s];
            looked++;
            boolean tooSmall = leastBad >= choices.worst * (double) (front.area + size[o]);
            if (tooSmall && any) break;
            long top = floor + high[o];
            if (wide[o] > most || top > height) continue;
            any = true;
            if (tooSmall) break;
            boolean atLeft = Math.abs(top - leftWall) <= Math.abs(top - rightWall);
            int more = top == (atLeft ? leftWall : rightWall) ? 0 : 1;
            if (note(from, o, leastBad + corner * more, front.area + size[o], top, atLeft)) looked += CHOICES_AN_INSERTION;
        }
        return looked;
    }

    private boolean note(int from, int o, double bad, double laid, long top, boolean atLeft) {
        // a product is much cheaper than a quotient, and most choices end here
        if (bad >= choices.worst * laid) return false;
        float score = (float) (bad / laid);
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
        if (front.open == null) {
            front.open = new long[old.open.length];
            front.large = new long[old.open.length];
        }
        System.arraycopy(old.open, 0, front.open, 0, old.open.length);
        System.arraycopy(old.large, 0, front.large, 0, old.large.length);
        if (alike) {
            if (front.left == null) front.left = new int[types];
            System.arraycopy(old.left, 0, front.left, 0, types);
        }
        if (!alike || --front.left[typeOf[o]] == 0) {
            int other = lies.other[o];
            Lies.remove(front.open, o);
            Lies.remove(front.open, other);
            Lies.remove(front.large, lies.rank[o]);
            Lies.remove(front.large, lies.rank[other]);
        }
        front.tall = tall(front, old.tall);
    }

    /** The first of {@link Lies#tallest} from this place on that is left. */
    private int tall(Front front, int from) {
        int[] tallest = lies.tallest;
        int place = from;
        while (place < tallest.length && !Lies.has(front.open, tallest[place])) place++;
        return place;
    }

    /** How high the pieces that are left reach at least from where they lie, when this one is laid. */
    private long heightWithout(Front front, int o) {
        int[] tallest = lies.tallest;
        int place = front.tall;
        if (typeOf[tallest[place]] == typeOf[o] && (!alike || front.left[typeOf[o]] == 1)) place = tall(front, place + 1);
        return place == tallest.length ? 0 : high[tallest[place]];
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
