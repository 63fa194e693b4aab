package lapyard.standing;

import lapyard.catalogue.StrengthClass;

/** What an angled corner screw holds against pulling out, N. */
final class ScrewHold {
    /** Wet for good, loaded for good, driven at an angle. */
    private static final double WET = 0.7;

    private static final double FOR_GOOD = 0.9;
    private static final double ANGLED = 0.67;

    private ScrewHold() {}

    /** Specific gravity, oven-dry mass over volume at 12 % moisture, of timber of a class on average. */
    static double gravity(StrengthClass timber) {
        return timber.meanDensityKgM3 / 1120;
    }

    /** Allowable pull out of a long face. @see "NDS wood screws, 2850 G2 D lb an inch = 19.65 G2 D N/mm" */
    static double allowableN(double gravity, double shankMm, double threadMm) {
        return 19.65 * gravity * gravity * shankMm * threadMm;
    }

    /** What is left of it in a wet bed. @see "NDS 2018, Tables 2.3.2 and 11.3.3, 12.5.4, from memory" */
    static double inABedN(double allowableN) {
        return allowableN * WET * FOR_GOOD * ANGLED;
    }
}
