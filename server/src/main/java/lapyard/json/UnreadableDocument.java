package lapyard.json;

/** The text is no JSON document at all; the message says where and what to do. */
public final class UnreadableDocument extends Exception {
    public UnreadableDocument(String message) {
        super(message);
    }
}
