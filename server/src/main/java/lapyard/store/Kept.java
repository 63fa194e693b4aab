package lapyard.store;

import java.time.Instant;
import java.util.Optional;

/**
 * One revision with its document, as a garden's file carries it.
 *
 * @param refused whether its document holds a STOP, so that it can be read and not restored
 */
public record Kept(
        long number, Revision.Kind kind, String name, Instant saved, Optional<String> stamp, String document, boolean refused) {}
