/**
 * In: a job sheet and how it is to be printed. Out: the pages of each kind of sheet, alone or as the whole set.
 * Must not know HTTP, files, or how anything was computed or is drawn.
 */
package lapyard.prints;
