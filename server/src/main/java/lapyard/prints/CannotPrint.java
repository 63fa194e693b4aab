package lapyard.prints;

/** This garden has not what a kind of sheet shows; the message says what is missing and how to give it. */
public final class CannotPrint extends IllegalArgumentException {
    public CannotPrint(String message) {
        super(message);
    }
}
