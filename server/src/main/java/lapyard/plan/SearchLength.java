package lapyard.plan;

/** How long the program searches for the cheapest cutting and roll layouts. A longer search may find a cheaper order and takes seconds. */
public enum SearchLength {
    SHORT,
    LONG
}
