package lapyard.geometry;

import lapyard.working.Whole;

/**
 * Lengths of screws as they are asked for. In inches they are sold by quarters to 3, by halves to 5 and whole from there; the
 * longest that is at most a fiftieth longer is named, so that none comes out where the one reckoned with does not.
 *
 * @see "ASME B18.6.1 (wood screws) for the lengths to 6 in, from memory; longer ones are common practice, no source"
 */
public final class ScrewLength {
    private static final double OVER = 1.02;

    private ScrewLength() {}

    /** {@code 100 mm}, {@code 4"}. */
    public static String words(double mm, boolean imperial) {
        return imperial ? inches(mm) : Length.withUnit(mm, false);
    }

    /** {@code 4"} for 100 mm. */
    public static String inches(double mm) {
        double most = mm * OVER / Length.INCH_MM;
        double step = most < 3 ? 0.25 : most < 5 ? 0.5 : 1;
        return Length.feetAndInches(Math.max(step, Whole.down(most / step) * step) * Length.INCH_MM);
    }
}
