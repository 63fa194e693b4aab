package lapyard.store;

import java.time.Instant;
import java.util.Optional;

/** One revision with its document, as a garden's file carries it. */
public record Kept(
        long number, Revision.Kind kind, String name, Instant saved, Optional<String> stamp, String document) {}
