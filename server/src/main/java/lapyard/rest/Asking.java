package lapyard.rest;

import java.util.Optional;

/**
 * Who asks, while a thread answers.
 *
 * @param request its id, in the answer's headers and in every line of the log that belongs to it
 * @param who     {@code anyone}, {@code editor}, {@code reader} or {@code share}
 * @param garden  the one that the holder of a share may read
 */
record Asking(String request, String who, Optional<String> garden) {
    private static final ThreadLocal<Asking> NOW = new ThreadLocal<>();

    static void begin(Asking asking) {
        NOW.set(asking);
    }

    static void end() {
        NOW.remove();
    }

    static Optional<Asking> now() {
        return Optional.ofNullable(NOW.get());
    }

    /** The one garden that this caller may know of; empty where there is no such limit. */
    static Optional<String> onlyGarden() {
        return now().flatMap(Asking::garden);
    }
}
