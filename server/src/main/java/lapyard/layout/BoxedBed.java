package lapyard.layout;

import lapyard.plan.Bed;

/**
 * The box round a wanted bed in the frame, either as drawn or turned by 90 degrees.
 *
 * @param wish   index in the wish list
 * @param turned whether the box is turned by 90 degrees
 * @param leastReachMm the reach to its worst point if all walls can be reached, mm; the standard asks no less of it
 */
record BoxedBed(int wish, Bed bed, boolean turned, double w, double d, double leastReachMm) {
    /** Whether its reach is only known with all its sides free: it is no rectangle, or some of its walls are hidden. */
    boolean allRound() {
        return bed.outline().sides() != 4 || !bed.outline().upright() || !bed.walls().hidden().isEmpty();
    }

    double thicknessMm() {
        return bed.section().thicknessMm();
    }
}
