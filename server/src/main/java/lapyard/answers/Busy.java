package lapyard.answers;

/** The request is not answered now: other work goes first, or it took too long. It may be answered later. */
public final class Busy extends RuntimeException {
    private final int retrySeconds;

    /** @param what names what is waited for, and what to do */
    Busy(String what, int retrySeconds) {
        super(what, null, false, false);
        this.retrySeconds = retrySeconds;
    }

    public int retrySeconds() {
        return retrySeconds;
    }
}
