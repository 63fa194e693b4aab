package lapyard.job;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;

/**
 * What was searched for before, so that a change of the garden is searched for only where it changes a search: a bed that
 * is moved leaves all cutting as it was. The least lately used are forgotten. Safe for many threads.
 *
 * @param <A> what is searched for and how long; equal asks have equal answers
 */
final class Solved<A, R> {
    /** Pieces of all problems kept together; a piece and its place take a few hundred bytes. */
    private static final int MOST_PIECES = 40_000;
    /** A larger problem would push out all others. */
    private static final int MOST_OF_ONE = MOST_PIECES / 8;

    private record Kept<R>(R result, int pieces) {}

    private final Map<A, Kept<R>> kept = new LinkedHashMap<>(64, 0.75f, true);
    private int pieces;

    /**
     * @param of    pieces of the problem
     * @param solve works it out
     * @param whole whether a result is what the ask gives, and not cut short by the clock
     */
    R of(A asked, int of, Function<A, R> solve, Function<R, Boolean> whole) {
        synchronized (kept) {
            Kept<R> known = kept.get(asked);
            if (known != null) {
                return known.result();
            }
        }
        R result = solve.apply(asked);
        if (of <= MOST_OF_ONE && !Thread.currentThread().isInterrupted() && whole.apply(result)) {
            keep(asked, new Kept<>(result, of + 1));
        }
        return result;
    }

    private void keep(A asked, Kept<R> one) {
        synchronized (kept) {
            Kept<R> before = kept.put(asked, one);
            pieces += one.pieces() - (before == null ? 0 : before.pieces());
            var eldest = kept.values().iterator();
            while (pieces > MOST_PIECES) {
                pieces -= eldest.next().pieces();
                eldest.remove();
            }
        }
    }
}
