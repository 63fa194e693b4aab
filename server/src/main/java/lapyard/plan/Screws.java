package lapyard.plan;

/**
 * Angled screws through the corner joints.
 *
 * @param lengthMm  of the screw, driven at 45 degrees from the inner face
 * @param perJoint  in each corner of each course
 */
public record Screws(double lengthMm, int perJoint) {
    public static final Screws USUAL = new Screws(100, 2);
}
