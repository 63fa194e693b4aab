package lapyard.answers;

/** Ends the wait of a caller who is gone: there is nobody to answer. */
public final class CallerLeft extends RuntimeException {
    CallerLeft() {
        super("the caller is gone", null, false, false);
    }
}
