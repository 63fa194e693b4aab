package lapyard.plan;

/**
 * Finish on all faces.
 *
 * @param coverM2PerLitre of a coat
 * @param rough           1, and more for wood that takes more than its cover says
 */
public record Finish(boolean wanted, int coats, double coverM2PerLitre, double rough) {
    /** USDA Forest Products Laboratory, Wood Handbook, ch. 16: saw-textured wood 2.4 to 4.9 m2 a litre, smooth 4.9 to 9.8. */
    public static double usualCoverM2(boolean planed) {
        return planed ? 9 : 5;
    }

    public static final Finish USUAL = new Finish(true, 2, 5, 1);
    public static final Finish NONE = new Finish(false, 2, 5, 1);
}
