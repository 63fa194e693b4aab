package lapyard.plan;

/**
 * What the check of a standing bed reckons with.
 *
 * @param soilKnM3    weight of soaked soil
 * @param frictionDeg angle of friction of the soil
 * @param besideKpa   load on the soil beside a wall: someone stands or wheels a barrow there
 * @param bowPart     a wall may bow by this part of its clear run, 200 for a 200th
 * @param sagPart     a slat or bearer may sag by this part of its span
 */
public record StandingRules(double soilKnM3, double frictionDeg, double besideKpa, double bowPart, double sagPart) {
    public static final StandingRules USUAL = new StandingRules(18, 30, 2.5, 200, 150);
}
