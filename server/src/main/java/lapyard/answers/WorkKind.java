package lapyard.answers;

/** Kinds of work, in the order in which they are preferred, with what each may take. */
public enum WorkKind {
    /** Work on a document that is to be saved, or on a merchant's list: it is short and a person waits for it. */
    CHECK("check", "checks", 20, 20),
    /** A job sheet or a part of it. */
    SHEET("job sheet", "job sheets", 50, 60),
    PRINT("print", "prints", 60, 300),
    /** A solve that is waited for, and the job sheet of a garden that is large or asks to be searched for long. */
    SEARCH("search", "searches", 60, 300),
    /** A solve that nobody waits for: only while nothing else waits, beside all other work. */
    UNWATCHED("search that nobody waits for", "searches that nobody waits for", Integer.MAX_VALUE, Integer.MAX_VALUE);

    private final String one;
    private final String many;
    /** Longest wait for a turn, s. */
    final int patienceSeconds;
    /** Longest turn, s. */
    final int limitSeconds;

    WorkKind(String one, String many, int patienceSeconds, int limitSeconds) {
        this.one = one;
        this.many = many;
        this.patienceSeconds = patienceSeconds;
        this.limitSeconds = limitSeconds;
    }

    String counted(long count) {
        return count + " " + (count == 1 ? one : many);
    }

    /** Whether the number that may wait is limited. Checks are short, and searches that nobody waits for are counted where they are kept. */
    boolean isBounded() {
        return this != CHECK && this != UNWATCHED;
    }

    /** Whether one turn may take long, so that never all turns are of these kinds. */
    boolean isLong() {
        return this == PRINT || this == SEARCH;
    }
}
