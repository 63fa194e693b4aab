/**
 * In: shapes on a page, in paper millimetres. Out: SVG, PDF and PNG of identical content.
 * Must not know beds, timber or gardens.
 */
package lapyard.drawing;
