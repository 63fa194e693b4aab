package lapyard.plan;

/**
 * What holds a stack together besides its corner screws; all of it is left out unless asked for.
 *
 * @param brackets        a bracket in each corner of each course, inside
 * @param bracketFixings  screws a bracket
 * @param courseTies      straps inside, each over the joint between two courses
 * @param courseEveryMm   greatest distance between them along a piece
 * @param courseFixings   screws a strap
 * @param fixingMm        length of the screws of brackets and straps
 * @param crossTies       ties from wall to wall across the bed
 * @param crossEveryMm    greatest clear run of a wall between them
 * @param crossFromMm     walls lower than this need none
 */
public record Ties(
        boolean brackets,
        int bracketFixings,
        boolean courseTies,
        double courseEveryMm,
        int courseFixings,
        double fixingMm,
        boolean crossTies,
        double crossEveryMm,
        double crossFromMm) {
    public static final Ties USUAL = new Ties(false, 6, false, 600, 4, 50, false, 1800, 400);

    /** Timber that must be left behind the tip of a screw driven square into a face. */
    public static final double BEHIND_MM = 10;
}
