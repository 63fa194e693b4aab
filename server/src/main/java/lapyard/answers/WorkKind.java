package lapyard.answers;

/** Kinds of work, in the order in which they are preferred, with what each may take. */
public enum WorkKind {
    /** Work on a document that is to be saved, or on a merchant's list: it is short and a person waits for it. */
    CHECK("checks", 20, 20),
    /** A job sheet or a part of it. */
    SHEET("job sheets", 50, 60),
    PRINT("prints", 60, 300),
    /** A solve that is waited for, and the job sheet of a garden that is large or asks to be searched for long. */
    SEARCH("searches", 60, 300),
    /** A solve that nobody waits for: only while nothing else waits, beside all other work. */
    UNWATCHED("searches that nobody waits for", Integer.MAX_VALUE, Integer.MAX_VALUE);

    final String words;
    /** Longest wait for a turn, s. */
    final int patienceSeconds;
    /** Longest turn, s. */
    final int limitSeconds;

    WorkKind(String words, int patienceSeconds, int limitSeconds) {
        this.words = words;
        this.patienceSeconds = patienceSeconds;
        this.limitSeconds = limitSeconds;
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
