package lapyard.store;

/** The disk or the database failed under a call; nothing of that call was kept. */
public final class StoreFault extends RuntimeException {
    private final boolean full;

    StoreFault(String what, boolean full, Throwable cause) {
        super(what, cause);
        this.full = full;
    }

    /** True where the disk has no room left. */
    public boolean full() {
        return full;
    }
}
