package lapyard.store;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * One line of a garden's history.
 *
 * @param restored the older revision whose document this one brought back
 * @param stamp    the name somebody gave this revision
 * @param printed  whether sheets of it were made for printing
 * @param refused  whether it came in with a file and holds a STOP, so that it cannot be restored
 */
public record Revision(
        long number,
        Kind kind,
        OptionalLong restored,
        String name,
        Instant saved,
        Optional<String> stamp,
        boolean printed,
        boolean refused) {
    public enum Kind {
        CREATED,
        SAVED,
        RESTORED,
        DELETED
    }
}
