/**
 * In: two or three texts of one garden as plain JSON objects. Out: what changed between them in the garden's own
 * words, or all changes put together. Must not know revisions, stores or HTTP, nor whether a text makes sense.
 */
package lapyard.history;
