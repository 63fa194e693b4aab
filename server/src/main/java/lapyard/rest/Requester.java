package lapyard.rest;

import java.util.Optional;

/**
 * Who sent the request that a thread is answering.
 *
 * @param request id of the request, in the headers of the answer and in its lines of the log
 * @param who     {@code anyone}, {@code editor}, {@code reader} or {@code share}
 * @param garden  the garden that a share gives access to
 */
record Requester(String request, String who, Optional<String> garden) {
    private static final ThreadLocal<Requester> NOW = new ThreadLocal<>();

    static void begin(Requester asking) {
        NOW.set(asking);
    }

    static void end() {
        NOW.remove();
    }

    static Optional<Requester> now() {
        return Optional.ofNullable(NOW.get());
    }

    /** The one garden that this caller may know of; empty where there is no such limit. */
    static Optional<String> onlyGarden() {
        return now().flatMap(Requester::garden);
    }
}
