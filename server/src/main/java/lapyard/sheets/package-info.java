/**
 * In: rectangles wanted and rolls to cut them from. Out: roll layouts, their cost and a proved bound.
 * Must not know beds, liners' folds or documents.
 */
package lapyard.sheets;
