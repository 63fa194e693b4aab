package lapyard.plan;

import lapyard.catalogue.Goods;

/**
 * The liner of a bed.
 *
 * @param material   a catalogue roll material
 * @param slitsPerM2 drain slits in its floor
 * @param over       what of a bed it covers
 * @param turnInMm   of a liner on the walls alone, turned in at their foot under the soil
 */
public record Liner(boolean wanted, String material, Edges edges, double slitsPerM2, Staples staples, Over over, double turnInMm) {
    /**
     * @param lapMm      where two pieces overlap
     * @param trimMm     added to the rise, cut off after stapling
     * @param belowRimMm how far below the rim it ends
     */
    public record Edges(double lapMm, double trimMm, double belowRimMm) {}

    /**
     * @param stapleEveryMm  along the top edge
     * @param stapleLengthMm length of a staple's legs
     */
    public record Staples(double stapleEveryMm, int staplesPerFold, int staplesPerPatch, double stapleLengthMm) {}

    /** What a liner covers. */
    public enum Over {
        /** Floor and walls on a slatted base, the walls alone on an open one. */
        BY_BASE,
        /** Floor and walls. */
        FLOOR,
        /** The walls alone: water and roots go down into the ground. */
        WALLS
    }

    /** Timber that must be left behind the legs of a staple. */
    public static final double BEHIND_MM = 5;

    /** Turned in at the foot of a wall by 100; common practice, no source. */
    public static final Liner USUAL = new Liner(true, Goods.LINER.item(), new Edges(300, 50, 25), 4, new Staples(100, 6, 8, 10), Over.BY_BASE, 100);
    public static final Liner NONE = new Liner(false, USUAL.material, USUAL.edges, USUAL.slitsPerM2, USUAL.staples, USUAL.over, USUAL.turnInMm);

    /** Whether a bed with such a base is lined over its floor too. */
    public boolean overFloor(Base base) {
        return over == Over.FLOOR || over == Over.BY_BASE && base.slatted();
    }
}
