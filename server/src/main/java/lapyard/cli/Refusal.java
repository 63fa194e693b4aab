package lapyard.cli;

/** What was typed or read cannot be used; the message is one line for standard error. */
final class Refusal extends Exception {
    private static final long serialVersionUID = 1;

    Refusal(String message) {
        super(message);
    }
}
