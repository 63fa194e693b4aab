package lapyard.answers;

/** Ends the wait of a caller who is gone: there is nobody to answer. */
public final class CallerLeft extends RuntimeException {
    private static final long serialVersionUID = 1;

    CallerLeft() {
        super("the caller is gone", null, false, false);
    }
}
