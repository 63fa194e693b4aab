package lapyard.standing;

/**
 * Push of level soil on an upright wall, by Rankine: kN, m and kN/m2.
 *
 * @param soilKnM3    weight of the soil, soaked
 * @param frictionDeg angle of friction
 * @param besideKpa   load on the soil beside the wall
 * @see "Rankine theory; at rest after Jaky"
 */
record EarthPressure(double soilKnM3, double frictionDeg, double besideKpa) {
    static final double WATER_KN_M3 = 9.81;

    /** Share of the weight above that pushes sideways on a wall that gives a little. */
    double active() {
        double tangent = Math.tan(Math.toRadians(45 - frictionDeg / 2));
        return tangent * tangent;
    }

    /** The same on a wall that gives nothing. */
    double atRest() {
        return 1 - Math.sin(Math.toRadians(frictionDeg));
    }

    double soilPartKpa(double depthM) {
        return active() * soilKnM3 * depthM;
    }

    double besidePartKpa() {
        return active() * besideKpa;
    }

    /** On each metre of wall, the soil drained. */
    double drainedKnM(double heightM) {
        return active() * soilKnM3 * heightM * heightM / 2 + besidePartKpa() * heightM;
    }

    /** Growth of the pressure with depth where the bed is full of water: what floats, and the water itself. */
    double blockedKpaPerM() {
        return active() * (soilKnM3 - WATER_KN_M3) + WATER_KN_M3;
    }

    double blockedKnM(double heightM) {
        return blockedKpaPerM() * heightM * heightM / 2;
    }
}
