/**
 * In: garden documents. Out: the same, with every revision, whatever happened to the process.
 * Must not know HTTP, nor what a garden means beyond its being readable.
 */
package lapyard.store;
