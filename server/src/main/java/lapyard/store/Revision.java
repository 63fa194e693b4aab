package lapyard.store;

import java.time.Instant;
import java.util.OptionalLong;

/**
 * One line of a garden's history.
 *
 * @param restored the older revision whose document this one brought back
 */
public record Revision(long number, Kind kind, OptionalLong restored, String name, Instant saved) {
    public enum Kind {
        CREATED,
        SAVED,
        RESTORED,
        DELETED
    }
}
