package lapyard.plan;

/**
 * The floor of a bed: none, or slats on bearers.
 *
 * @param bearerSpanMm clear distance between the pads that bearers lie on, 0 where they lie on the ground all along
 * @param bySurface    true if the document does not say whether it is slatted; the ground under the bed then decides
 */
public record Base(boolean slatted, Bearers bearers, Slats slats, double bearerSpanMm, boolean bySurface) {
    /** The usual base: slats and bearers on slab, concrete and ground that is not drawn; none on grass, soil and gravel. */
    public static final Base USUAL = new Base(true, new Bearers("50x75", 23, 400, 30), new Slats(95, 22, 1200, 15, 5, 300), 0, true);

    /**
     * Strips under the slats.
     *
     * @param bearerSection id of the catalogue section that is ripped into strips
     * @param bearerLiftMm  thickness of a strip, which lifts the slats off the ground
     * @param bearerEveryMm greatest distance between bearers
     * @param drainGapMm    gap left at an end of each bearer
     */
    public record Bearers(String bearerSection, double bearerLiftMm, double bearerEveryMm, double drainGapMm) {}

    /**
     * Reclaimed boards in rows.
     *
     * @param slatMaxGapMm    greatest gap between rows
     * @param slatClearanceMm taken off a row's length
     * @param slatLeastMm     shortest piece of a row
     */
    public record Slats(double slatWidthMm, double slatThicknessMm, double slatLengthMm, double slatMaxGapMm, double slatClearanceMm, double slatLeastMm) {}

    /** The same floor of other slat boards. */
    public Base of(SlatBoards boards) {
        Slats others = new Slats(boards.widthMm(), boards.thicknessMm(), boards.lengthMm(), slats.slatMaxGapMm, slats.slatClearanceMm,
                Math.min(slats.slatLeastMm, boards.lengthMm()));
        return new Base(slatted, bearers, others, bearerSpanMm, bySurface);
    }

    /** The same floor with or without slats, now that it is settled. */
    public Base slatted(boolean wanted) {
        return slatted(wanted, false);
    }

    /** @param bySurface whether that is what stands until the ground has decided */
    public Base slatted(boolean wanted, boolean bySurface) {
        return new Base(wanted, bearers, slats, bearerSpanMm, bySurface);
    }

    /** Height of the floor over the ground: 0 for an open base. */
    public double heightMm() {
        return slatted ? bearers.bearerLiftMm + slats.slatThicknessMm : 0;
    }
}
