/**
 * In: points in millimetres, x right, y away from the house. Out: outlines, insets, areas, rectangles.
 * Must not know beds, timber or documents.
 */
package lapyard.geometry;
