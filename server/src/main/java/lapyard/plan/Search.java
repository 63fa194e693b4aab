package lapyard.plan;

/** How long the cheapest cutting and roll layouts are looked for. A longer search may cost less; its answers take seconds. */
public enum Search {
    SHORT,
    LONG
}
