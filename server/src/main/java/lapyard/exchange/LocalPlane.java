package lapyard.exchange;

import lapyard.geometry.Point;

/**
 * The plane that touches the earth at a place, in metres east and north of it. Over a yard of 200 m it is right to less than 1 mm
 * a metre at every latitude where people garden.
 *
 * @see "NIMA TR8350.2, WGS 84: semi-major axis 6 378 137 m, flattening 1/298.257223563; radii of curvature in the meridian and in the prime vertical"
 */
final class LocalPlane {
    private static final double AXIS_M = 6_378_137;
    private static final double FLATTENING = 1 / 298.257223563;
    private static final double SQUARED = FLATTENING * (2 - FLATTENING);

    private final double longitude;
    private final double latitude;
    private final double metresEast;
    private final double metresNorth;

    /** @param longitude of the place where it touches, degrees; so is {@code latitude} */
    LocalPlane(double longitude, double latitude) {
        this.longitude = longitude;
        this.latitude = latitude;
        double sine = Math.sin(Math.toRadians(latitude));
        double bent = 1 - SQUARED * sine * sine;
        metresEast = Math.toRadians(1) * AXIS_M / Math.sqrt(bent) * Math.cos(Math.toRadians(latitude));
        metresNorth = Math.toRadians(1) * AXIS_M * (1 - SQUARED) / Math.pow(bent, 1.5);
    }

    Point at(double otherLongitude, double otherLatitude) {
        return new Point((otherLongitude - longitude) * metresEast, (otherLatitude - latitude) * metresNorth);
    }
}
