package lapyard.plan;

/**
 * By how much the sides of a bed may give, in mm: {@code least} is 0 or below, for smaller, {@code most} 0 or above.
 *
 * @param widthLeastMm of each span along the bed's own x
 * @param depthLeastMm of each span along its own y
 * @param stepMm       sizes change by whole steps of this
 */
public record Give(double widthLeastMm, double widthMostMm, double depthLeastMm, double depthMostMm, double stepMm) {
    public static final double USUAL_STEP_MM = 5;

    /** A bed that stays as it is. */
    public static final Give NOTHING = new Give(0, 0, 0, 0, USUAL_STEP_MM);

    public Give {
        if (widthLeastMm > 0 || depthLeastMm > 0 || widthMostMm < 0 || depthMostMm < 0 || !(stepMm > 0)) {
            throw new IllegalArgumentException("a side gives from 0 or less to 0 or more in steps above 0 mm, was " + widthLeastMm
                    + " to " + widthMostMm + ", " + depthLeastMm + " to " + depthMostMm + ", step " + stepMm);
        }
    }

    public boolean nothing() {
        return widthLeastMm == 0 && widthMostMm == 0 && depthLeastMm == 0 && depthMostMm == 0;
    }
}
