/**
 * In: lengths wanted and stock to cut them from. Out: a cutting plan, its cost and a proved bound.
 * Must not know beds, walls or documents.
 */
package lapyard.cutting;
