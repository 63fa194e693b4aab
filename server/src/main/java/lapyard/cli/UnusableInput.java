package lapyard.cli;

/** The command line or a file cannot be used; the message is one line for standard error. */
final class UnusableInput extends Exception {
    UnusableInput(String message) {
        super(message);
    }
}
