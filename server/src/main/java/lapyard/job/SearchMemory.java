package lapyard.job;

import java.util.function.Function;
import java.util.function.Predicate;
import lapyard.working.Abandonable;
import lapyard.working.RecentlyUsed;

/**
 * What was searched for before, so that a change of the garden is searched for only where it changes a search: a bed that
 * is moved leaves all cutting as it was. Equal asks have equal answers. Safe for many threads.
 */
public final class SearchMemory {
    /** A piece of a problem with its place in the result, as measured. */
    private static final long PIECE_BYTES = 300;

    private record Kept(Object result, long bytes) {}

    private final RecentlyUsed<Object, Kept> kept;

    /** @param limitBytes for all results together */
    public SearchMemory(long limitBytes) {
        this.kept = new RecentlyUsed<>(limitBytes, Kept::bytes);
    }

    /**
     * @param asked  what is searched for and how long, of a type that no other kind of search has
     * @param pieces of the problem
     * @param solve  works it out
     * @param whole  whether a result is what the ask gives, and not cut short by the clock
     */
    <A, R> R of(A asked, int pieces, Function<A, R> solve, Predicate<R> whole) {
        Abandonable.check();
        var known = kept.get(asked);
        if (known.isPresent()) {
            @SuppressWarnings("unchecked") // equal asks are of one type, and their results too
            R result = (R) known.get().result();
            return result;
        }
        R result = solve.apply(asked);
        if (!Thread.currentThread().isInterrupted() && whole.test(result)) kept.put(asked, new Kept(result, PIECE_BYTES * (pieces + 1)));
        return result;
    }
}
