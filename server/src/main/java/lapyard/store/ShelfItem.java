package lapyard.store;

import java.time.Instant;

/**
 * Something that is kept once for all gardens, as it is in one of its revisions.
 *
 * @param kind     what it is, a word of the caller's
 * @param revision counts from 1; every revision stays
 * @param content  the text as it was given; empty in a list
 * @param gardens  how many gardens use any revision of it; 0 where that was not asked
 */
public record ShelfItem(String id, String kind, String name, long revision, Instant saved, boolean deleted, String content, long gardens) {}
