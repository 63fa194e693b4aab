package lapyard.loadin;

import java.util.OptionalDouble;
import lapyard.working.Whole;

/**
 * Some alike things that come in.
 *
 * @param item     of the order's line
 * @param name     as it is asked for, {@code board of 4800}
 * @param massKg   of one; empty where nobody knows
 * @param volumeM3 of one; 0 where it takes no room worth counting
 * @param lengthMm of one, the longest way; 0 where it is short
 * @param acrossMm the least width as it is carried level; 0 for what bends
 */
public record Load(
        String item,
        String label,
        String name,
        long count,
        OptionalDouble massKg,
        double volumeM3,
        double lengthMm,
        double acrossMm) {
    /** Heavier than this it is set down by the lorry's crane or tail lift and emptied where it stands. */
    static final double HAND_KG = 150;

    /** Longer than a bed by so much, mm; 0 or less where it fits. What bends is folded or stood up. */
    double longerThanMm(double bedMm) {
        return acrossMm > 0 ? lengthMm - bedMm : 0;
    }

    /** Places that all of it takes on the ground, one for each begun cubic metre of a bag or heap. */
    public long places() {
        return count * Math.max(1, (long) Whole.up(volumeM3));
    }

    public boolean bulk() {
        return massKg.isPresent() && massKg.getAsDouble() > HAND_KG && lengthMm == 0;
    }
}
