package lapyard.plan;

/**
 * Angled screws through the corner joints.
 *
 * @param lengthMm  of the screw, driven at 45 degrees from the inner face
 * @param perJoint  in each corner of each course
 * @param diameterMm of the shank
 */
public record Screws(double lengthMm, int perJoint, double diameterMm) {
    public static final Screws USUAL = new Screws(100, 2);

    /** With a shank of 6. */
    public Screws(double lengthMm, int perJoint) {
        this(lengthMm, perJoint, 6);
    }
}
