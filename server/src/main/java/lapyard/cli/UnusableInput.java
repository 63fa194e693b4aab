package lapyard.cli;

/** The command line or a file cannot be used; the message is one line for standard error. */
final class UnusableInput extends Exception {
    private static final long serialVersionUID = 1;

    UnusableInput(String message) {
        super(message);
    }
}
