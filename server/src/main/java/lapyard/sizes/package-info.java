/**
 * Sizes that give: a garden and by how much its beds may change go in; the changes that save, few before many, and what
 * each bed could grow by at no cost come out. Every answer is a whole garden. It knows no document, no clock and no screen.
 */
package lapyard.sizes;
