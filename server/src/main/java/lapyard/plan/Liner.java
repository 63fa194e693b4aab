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
        int staplesPerPatch) {
    public static final Liner USUAL = new Liner(true, "liner", 300, 50, 25, 4, 100, 6, 8);
    public static final Liner NONE = new Liner(false, "liner", 300, 50, 25, 4, 100, 6, 8);
}
