package lapyard.store;

/** The disk or the database failed under a call; nothing of that call was kept, unless it is uncertain. */
public final class StoreFault extends RuntimeException {
    private final boolean full;
    private final boolean uncertain;

    StoreFault(String what, boolean full, Throwable cause) {
        this(what, full, false, cause);
    }

    private StoreFault(String what, boolean full, boolean uncertain, Throwable cause) {
        super(what, cause);
        this.full = full;
        this.uncertain = uncertain;
    }

    /** The change was sent and its answer was lost. */
    static StoreFault uncertain(Throwable cause) {
        return new StoreFault("the database's answer was lost: " + cause.getMessage(), false, true, cause);
    }

    /** True where the disk has no room left. */
    public boolean full() {
        return full;
    }

    /** True where nobody can say whether the change was kept: sent again, it is kept once. */
    public boolean uncertain() {
        return uncertain;
    }
}
