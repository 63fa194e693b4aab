/**
 * In: garden documents. Out: the same, with every revision, whatever happened to the process.
 * Must not know HTTP, nor what a garden means beyond what its list shows.
 */
package lapyard.store;
