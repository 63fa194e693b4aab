package lapyard.layout;

import lapyard.plan.Bed;

/**
 * A wanted bed as it may lie in the frame: a box, as it is or turned by a quarter.
 *
 * @param wish   its place in the wish list
 * @param turned whether its own x lies across the frame's
 * @param leastReachMm what its worst place is from its nearest wall if all are free: no place is asked for more
 */
record Kind(int wish, Bed bed, boolean turned, double w, double d, double leastReachMm) {
    /** Whether its reach is only known with all its sides free: it is no rectangle, or some of its walls are hidden. */
    boolean allRound() {
        return bed.outline().sides() != 4 || !bed.outline().upright() || !bed.walls().hidden().isEmpty();
    }

    double thicknessMm() {
        return bed.section().thicknessMm();
    }
}
