/**
 * In: the yard, its levels, keep-clear and paths, the beds as they lie, tapes from the survey. Out: fall, scribes,
 * clashes, path quantities, pegs, yard corners.
 * Must not know how beds are built or bought.
 */
package lapyard.ground;
