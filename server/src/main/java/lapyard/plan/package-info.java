/**
 * In: the garden as its owner wrote it down, defaults filled in. Out: records to compute with, and findings.
 * Must not know JSON, files or how anything is computed from a garden.
 */
package lapyard.plan;
