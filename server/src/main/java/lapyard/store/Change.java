package lapyard.store;

/** What came of asking for a change. */
public sealed interface Change {
    /** It is on disk; {@code stored} is the garden as it now stands. */
    record Made(Stored stored) implements Change {}

    /** Somebody saved in between; nothing was changed. */
    record Stale(Stored current) implements Change {}

    /** There never was such a garden. */
    record NoSuchGarden(String id) implements Change {}

    /** It was deleted; restoring a revision brings it back. */
    record Deleted(Stored current) implements Change {}

    /** The garden has no such revision to restore; it has 1 to {@code newest}. */
    record NoSuchRevision(String id, long number, long newest) implements Change {}
}
