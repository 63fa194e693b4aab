package lapyard.plan;

import java.util.List;

/**
 * Angled screws through the corner joints.
 *
 * @param lengthMm  of the screw, driven at 45 degrees from the inner face
 * @param perJoint  in each corner of each course
 * @param diameterMm of the shank
 */
public record Screws(double lengthMm, int perJoint, double diameterMm) {
    /** In timber of 100; {@code Construction.usualScrews} has the longest that thinner timber takes. */
    public static final Screws USUAL = new Screws(120, 2, 6);

    /** Screws of this length are plain {@code screws} in the catalogue, others carry their length in the name. */
    public static final double PLAIN_MM = 100;

    /** Lengths that every merchant sells, longest first; common practice, no source. */
    public static final List<Double> SOLD_MM = List.of(120.0, 100.0, 90.0, 80.0, 70.0, 60.0, 50.0, 40.0, 30.0);
}
