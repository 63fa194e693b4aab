package lapyard.store;

import java.time.Instant;

/**
 * A garden's document as it is kept.
 *
 * @param revision counts from 1; every change, deletion and restoring adds one
 * @param document the text exactly as it was given
 */
public record Stored(String id, String name, long revision, Instant saved, boolean deleted, String document) {}
