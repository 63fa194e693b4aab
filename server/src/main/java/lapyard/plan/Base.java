package lapyard.plan;

/**
 * The floor of a bed: none, or slats on bearers.
 *
 * @param bearerSection  id of the catalogue section that is ripped into bearer strips
 * @param bearerLiftMm   thickness of a strip, which lifts the slats off the ground
 * @param bearerEveryMm  greatest distance between bearers
 * @param drainGapMm     gap left at an end of each bearer
 * @param slatWidthMm    reclaimed slat board
 * @param slatMaxGapMm   greatest gap between slat rows
 * @param slatClearanceMm taken off a row's length
 * @param bearerSpanMm   clear distance between the pads that bearers lie on, 0 where they lie on the ground all along
 * @param bySurface      true if the document does not say whether it is slatted; the ground under the bed then decides
 */
public record Base(
        boolean slatted,
        String bearerSection,
        double bearerLiftMm,
        double bearerEveryMm,
        double drainGapMm,
        double slatWidthMm,
        double slatThicknessMm,
        double slatLengthMm,
        double slatMaxGapMm,
        double slatClearanceMm,
        double slatLeastMm,
        double bearerSpanMm,
        boolean bySurface) {
    /** The usual base: slats and bearers on slab, concrete and ground that is not drawn; none on grass, soil and gravel. */
    public static final Base USUAL = new Base(true, "50x75", 23, 400, 30, 95, 22, 1200, 15, 5, 300, 0, true);

    /** The same floor of other slat boards. */
    public Base of(SlatBoards boards) {
        return new Base(slatted, bearerSection, bearerLiftMm, bearerEveryMm, drainGapMm, boards.widthMm(),
                boards.thicknessMm(), boards.lengthMm(), slatMaxGapMm, slatClearanceMm,
                Math.min(slatLeastMm, boards.lengthMm()), bearerSpanMm, bySurface);
    }

    /** The same floor with or without slats, now that it is settled. */
    public Base slatted(boolean wanted) {
        return new Base(wanted, bearerSection, bearerLiftMm, bearerEveryMm, drainGapMm, slatWidthMm, slatThicknessMm,
                slatLengthMm, slatMaxGapMm, slatClearanceMm, slatLeastMm, bearerSpanMm, false);
    }

    /** Height of the floor over the ground: 0 for an open base. */
    public double heightMm() {
        return slatted ? bearerLiftMm + slatThicknessMm : 0;
    }
}
