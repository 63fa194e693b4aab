/**
 * In: the yard, its levels, keep-clear and paths, the beds as they lie. Out: fall, clashes, path quantities.
 * Must not know how beds are built or bought.
 */
package lapyard.ground;
