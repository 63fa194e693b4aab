/**
 * Laid out for you: a yard and a wish list go in, proposals of where beds and paths go come out, each a whole garden with
 * its figures. It knows no document, no clock and no screen.
 */
package lapyard.layout;
