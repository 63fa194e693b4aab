package lapyard.job;

import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToLongFunction;
import lapyard.working.Abandonable;
import lapyard.working.RecentlyUsed;

/**
 * What was searched for before, so that a change of the garden is searched for only where it changes a search: a bed that
 * is moved leaves all cutting as it was. Equal asks have equal answers. Safe for many threads.
 */
public final class SearchMemory {
    /** A piece of a problem with its place in the result, as measured. */
    private static final long PIECE_BYTES = 300;

    /** What parts may take of all, so that they push out few searches, which take longer to do again. */
    private static final int PARTS_SHARE = 4;

    private record Kept(Object result, long bytes) {}

    /** Questions are long: each is hashed once, and before others have to wait for it. */
    private record Question(Object asked, int hash) {
        Question(Object asked) {
            this(asked, asked.hashCode());
        }

        @Override
        public int hashCode() {
            return hash;
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Question that && hash == that.hash && asked.equals(that.asked);
        }
    }

    private final RecentlyUsed<Question, Kept> kept;
    private final RecentlyUsed<Question, Kept> parts;

    /** @param limitBytes for all results together */
    public SearchMemory(long limitBytes) {
        this.kept = new RecentlyUsed<>(limitBytes - limitBytes / PARTS_SHARE, Kept::bytes);
        this.parts = new RecentlyUsed<>(limitBytes / PARTS_SHARE, Kept::bytes);
    }

    /**
     * A part of a garden that is no search but is asked for again and again, such as the timbers of a bed.
     *
     * @param asked  all that it depends on, of a type that no other kind of part has
     * @param make   works it out
     * @param pieces as many of a problem's pieces as it takes the room of
     */
    <A, R> R part(A asked, Function<A, R> make, ToLongFunction<R> pieces) {
        Question question = new Question(asked);
        Optional<R> known = known(parts, question);
        if (known.isPresent()) return known.get();
        R part = make.apply(asked);
        parts.put(question, new Kept(part, PIECE_BYTES * (pieces.applyAsLong(part) + 1)));
        return part;
    }

    /**
     * @param asked  what is searched for and how long, equal to no ask of another kind
     * @param pieces of the problem
     * @param solve  works it out
     */
    <A, R> R of(A asked, int pieces, Function<A, R> solve) {
        Abandonable.check();
        Question question = new Question(asked);
        Optional<R> known = known(kept, question);
        if (known.isPresent()) return known.get();
        R result = solve.apply(asked);
        if (!Thread.currentThread().isInterrupted()) kept.put(question, new Kept(result, PIECE_BYTES * (pieces + 1)));
        return result;
    }

    /** What was found for this ask, where it is remembered. */
    <A, R> Optional<R> known(A asked) {
        return known(kept, new Question(asked));
    }

    /**
     * Remembers what a whole search chose, in place of what the one before it chose: only a first look asks for it, as
     * {@link #chosen}.
     */
    <A, R> void choose(A among, R choice) {
        parts.put(new Question(among), new Kept(choice, PIECE_BYTES));
    }

    /** @param among of a type that no part has */
    <A, R> Optional<R> chosen(A among) {
        return known(parts, new Question(among));
    }

    @SuppressWarnings("unchecked") // equal asks are of one type, and their results too
    private static <R> Optional<R> known(RecentlyUsed<Question, Kept> kept, Question asked) {
        return kept.get(asked).map(known -> (R) known.result());
    }
}
