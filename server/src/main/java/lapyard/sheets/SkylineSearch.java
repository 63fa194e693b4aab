package lapyard.sheets;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Asks whether given pieces fit a stretch of roll; where cuts must run edge to edge, a partial layout that they cannot
 * take apart is dropped, as any part of a layout that they can is one too. The front of what is laid is a
 * skyline; the next piece always goes into its lowest niche, or the niche is given up as waste. As the stretch is
 * given, so is the waste it can bear, and whatever wastes more is dropped. A beam keeps the best partial layouts of
 * each number of pieces.
 *
 * @see "Burke, Kendall and Whitwell, A new placement heuristic for the orthogonal stock-cutting problem, Operations
 *     Research 52 (2004), for the lowest niche"
 */
final class SkylineSearch {
    /** Ways of judging partial layouts. */
    static final int TASTES = 6;

    private final RollJob job;
    private final int[] counts;
    private final int pieces;
    private final long area;
    private final long width;
    private final boolean straight;
    private final RollBudget work;

    SkylineSearch(RollJob job, int[] counts, long width, boolean straight, RollBudget work) {
        this.job = job;
        this.counts = counts;
        this.width = width;
        this.straight = straight;
        this.work = work;
        int n = 0;
        long sum = 0;
        for (int t = 0; t < counts.length; t++) {
            n += counts[t];
            sum += counts[t] * job.types[t].area();
        }
        this.pieces = n;
        this.area = sum;
    }

    /** A partial layout: corners of the front from left to right, and what came before. */
    private record Front(
            Front before, Block.Laid laid, long[] x, long[] y, int[] left, long area, long waste, double score) {}

    /** A piece in a niche, not worked out yet. */
    private record Choice(Front from, long[] x, long[] y, int niche, Block.Laid laid, long waste, double score) {}

    /**
     * @param height of the stretch
     * @param beam   how many partial layouts are kept
     * @param taste  which of several ways of judging partial layouts
     * @return where the pieces lie; null where none was found, which proves nothing
     */
    List<Block.Laid> fit(long height, int beam, int taste) {
        long bearable = width * height - area;
        if (bearable < 0) return null;
        List<Front> level = List.of(new Front(null, null, new long[] {0}, new long[] {0}, counts.clone(), 0, 0, 0));
        for (int n = 0; n < pieces; n++) {
            List<Choice> choices = new ArrayList<>();
            for (Front front : level) expand(front, height, bearable, taste, choices);
            work.spend(choices.size() * 25L + level.size() * 60L);
            if (work.over()) return null;
            choices.sort(Comparator.comparingDouble(Choice::score));
            Set<List<Long>> seen = new HashSet<>();
            List<Front> next = new ArrayList<>();
            long refused = 0;
            for (Choice choice : choices) {
                Front front = place(choice);
                if (straight && !StraightCuts.part(laid(front))) {
                    refused++;
                    continue;
                }
                if (seen.add(mark(front))) next.add(front);
                if (next.size() == beam) break;
            }
            work.spend(next.size() * 120L + (straight ? (next.size() + refused) * (n + 1) * 20L : 0));
            if (next.isEmpty()) return null;
            level = next;
        }
        return laid(level.get(0));
    }

    private static List<Block.Laid> laid(Front last) {
        List<Block.Laid> laid = new ArrayList<>();
        for (Front front = last; front.before != null; front = front.before) laid.add(front.laid);
        return laid;
    }

    private static List<Long> mark(Front front) {
        long left = 1;
        for (int count : front.left) left = left * 1_000_003 + count;
        long shape = 1;
        for (int i = 0; i < front.x.length; i++) shape = (shape * 1_000_003 + front.x[i]) * 998_244_353 + front.y[i];
        return List.of(left, shape);
    }

    private void expand(Front front, long height, long bearable, int taste, List<Choice> into) {
        long[] x = front.x;
        long[] y = front.y;
        long waste = front.waste;
        long narrowest = Long.MAX_VALUE;
        for (int t = 0; t < front.left.length; t++) {
            if (front.left[t] == 0) continue;
            RollJob.Type type = job.types[t];
            narrowest = Math.min(narrowest, job.turn ? Math.min(type.width(), type.height()) : type.width());
        }
        int filled = 0;
        int before = into.size();
        while (waste <= bearable) {
            int niche = lowest(y);
            long from = x[niche];
            long to = niche + 1 < x.length ? x[niche + 1] : width;
            long leftWall = niche > 0 ? y[niche - 1] : height;
            long rightWall = niche + 1 < y.length ? y[niche + 1] : height;
            for (int t = 0; t < front.left.length; t++) {
                if (front.left[t] == 0) continue;
                RollJob.Type type = job.types[t];
                for (int way = 0; way < (job.turn && type.width() != type.height() ? 2 : 1); way++) {
                    long w = way == 0 ? type.width() : type.height();
                    long h = way == 0 ? type.height() : type.width();
                    long top = y[niche] + h;
                    if (w > to - from || top > height) continue;
                    boolean atLeft = Math.abs(top - leftWall) <= Math.abs(top - rightWall);
                    long gap = to - from - w;
                    long farWall = atLeft ? rightWall : leftWall;
                    long lost = gap > 0 && gap < narrowest ? gap * (Math.min(top, farWall) - y[niche]) : 0;
                    if (waste + lost > bearable) continue;
                    boolean flush = gap == 0 || top == leftWall || top == rightWall;
                    Block.Laid laid = new Block.Laid(t, atLeft ? from : to - w, y[niche], w, h);
                    into.add(new Choice(
                            front,
                            x,
                            y,
                            niche,
                            laid,
                            waste,
                            score(front, waste + lost, w * h, flush, bearable, taste)));
                }
            }
            // a niche may be given up though something fits it; but a front that gives up much is better dropped
            if (filled++ >= 2 && into.size() > before) return;
            long level = Math.min(leftWall, rightWall);
            if (y.length == 1) return;
            waste += (to - from) * (level - y[niche]);
            int at = niche;
            long[] rx = x.clone();
            long[] ry = y.clone();
            ry[at] = level;
            x = rx;
            y = ry;
            long[][] joined = joined(x, y);
            x = joined[0];
            y = joined[1];
        }
    }

    private double score(Front front, long waste, long piece, boolean flush, long bearable, int taste) {
        double laid = front.area + piece;
        double roughly = switch (taste % 3) {
            case 0 -> 0.02 * area;
            case 1 -> 0.1 * area;
            default -> 0.3 * area;
        };
        // a gap beside a piece may yet be filled; how much it weighs goes with how much waste can be borne
        double tight = 0.05 + Math.min(1, bearable / (0.05 * area));
        double ragged = flush ? 0 : (taste < 3 ? 0.3 : 1) * area / pieces * tight;
        return (waste + roughly + ragged) / laid;
    }

    private static int lowest(long[] y) {
        int lowest = 0;
        for (int i = 1; i < y.length; i++) if (y[i] < y[lowest]) lowest = i;
        return lowest;
    }

    private Front place(Choice choice) {
        long[] x = choice.x;
        long[] y = choice.y;
        Block.Laid laid = choice.laid;
        int niche = choice.niche;
        long to = niche + 1 < x.length ? x[niche + 1] : width;
        boolean whole = laid.width() == to - x[niche];
        boolean atLeft = laid.x() == x[niche];
        int extra = whole ? 0 : 1;
        long[] nx = new long[x.length + extra];
        long[] ny = new long[y.length + extra];
        System.arraycopy(x, 0, nx, 0, niche + 1);
        System.arraycopy(y, 0, ny, 0, niche + 1);
        System.arraycopy(x, niche + 1, nx, niche + 1 + extra, x.length - niche - 1);
        System.arraycopy(y, niche + 1, ny, niche + 1 + extra, y.length - niche - 1);
        long top = laid.y() + laid.height();
        if (whole) {
            ny[niche] = top;
        } else if (atLeft) {
            ny[niche] = top;
            nx[niche + 1] = laid.x() + laid.width();
            ny[niche + 1] = laid.y();
        } else {
            nx[niche + 1] = laid.x();
            ny[niche + 1] = top;
        }
        long[][] joined = joined(nx, ny);
        int[] left = choice.from.left.clone();
        left[laid.type()]--;
        long area = choice.from.area + laid.width() * laid.height();
        return new Front(choice.from, laid, joined[0], joined[1], left, area, choice.waste, choice.score);
    }

    /** Neighbouring stretches of one height become one. */
    private static long[][] joined(long[] x, long[] y) {
        int n = 0;
        long[] jx = new long[x.length];
        long[] jy = new long[y.length];
        for (int i = 0; i < x.length; i++) {
            if (n > 0 && jy[n - 1] == y[i]) continue;
            jx[n] = x[i];
            jy[n++] = y[i];
        }
        return n == x.length ? new long[][] {x, y} : new long[][] {Arrays.copyOf(jx, n), Arrays.copyOf(jy, n)};
    }
}
