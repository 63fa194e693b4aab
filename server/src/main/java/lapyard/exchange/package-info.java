/**
 * In: tables of plain cells, lines on layers. Out: the same in open formats, and back.
 * Must not know what a garden is.
 */
package lapyard.exchange;
