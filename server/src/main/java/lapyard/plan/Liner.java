package lapyard.plan;

/**
 * The liner of a bed.
 *
 * @param material      a catalogue roll material
 * @param lapMm         where two pieces overlap
 * @param trimMm        added to the rise, cut off after stapling
 * @param belowRimMm    how far below the rim it ends
 * @param slitsPerM2    drain slits in its floor
 * @param stapleEveryMm along the top edge
 * @param stapleMm      length of a staple's legs
 */
public record Liner(
        boolean wanted,
        String material,
        double lapMm,
        double trimMm,
        double belowRimMm,
        double slitsPerM2,
        double stapleEveryMm,
        int staplesPerFold,
        int staplesPerPatch,
        double stapleMm) {
    /** Timber that must be left behind the legs of a staple. */
    public static final double BEHIND_MM = 5;

    public static final Liner USUAL = new Liner(true, "liner", 300, 50, 25, 4, 100, 6, 8);
    public static final Liner NONE = new Liner(false, "liner", 300, 50, 25, 4, 100, 6, 8);

    /** With staples of 10. */
    public Liner(
            boolean wanted,
            String material,
            double lapMm,
            double trimMm,
            double belowRimMm,
            double slitsPerM2,
            double stapleEveryMm,
            int staplesPerFold,
            int staplesPerPatch) {
        this(wanted, material, lapMm, trimMm, belowRimMm, slitsPerM2, stapleEveryMm, staplesPerFold, staplesPerPatch, 10);
    }
}
