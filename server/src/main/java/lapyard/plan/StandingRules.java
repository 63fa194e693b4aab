package lapyard.plan;

/**
 * What the check of a standing bed reckons with.
 *
 * @param soilKnM3    weight of wet, settled soil
 * @param frictionDeg angle of friction of the soil
 * @param besideKpa   load on the soil inside a bed: someone steps on it to tend it
 * @param bowPart     a wall may bow by this part of its clear run, 200 for a 200th
 * @param sagPart     a slat or bearer may sag by this part of its span
 */
public record StandingRules(double soilKnM3, double frictionDeg, double besideKpa, double bowPart, double sagPart) {
    /** Standard gravity, m/s2. */
    public static final double GRAVITY = 9.81;

    /** Wet, settled soil: 100 pcf, the HUD guide's weight of silty sand and sandy silt. */
    public static final double WET_KG_M3 = 1600;

    public static final String WET_SOURCE = "wet soil 1600 kg/m3 where nobody says otherwise: 100 pcf, HUD, Residential Structural Design Guide";

    /**
     * Soil and its push: one line of the table in HUD, Residential Structural Design Guide, silty sand and sandy silt, 100 pcf
     * and a share of 0.35, which a friction of 28.8 degrees gives. Stepped on: 20 psf, IBC 1607, landscaped areas of roofs
     * that nobody occupies. Bow and sag: EN 1995-1-1 Table 7.2, from memory.
     */
    public static final StandingRules USUAL = new StandingRules(WET_KG_M3 * GRAVITY / 1000, 28.8, 0.96, 200, 150);

    /** Of wet, settled soil. */
    public double soilKgM3() {
        return soilKnM3 * 1000 / GRAVITY;
    }
}
