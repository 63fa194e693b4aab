package lapyard.store;

import java.time.Instant;
import java.util.Optional;

/**
 * One revision with its document, as it stands in the file of a garden.
 *
 * @param refused whether its document has a STOP, so that it can be read but not restored
 */
public record KeptRevision(
        long number, Revision.Kind kind, String name, Instant saved, Optional<String> stamp, String document, boolean refused) {}
