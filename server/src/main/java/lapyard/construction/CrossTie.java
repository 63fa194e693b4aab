package lapyard.construction;

import lapyard.geometry.Point;

/**
 * A tie from wall to wall, with an upright batten at both ends so that it holds every course.
 *
 * @param wall     the wall it was set out on
 * @param atMm     along that wall from its outer start corner, as seams are
 * @param toWall   the wall it ends at
 * @param from     on the inner face of its wall, own frame
 * @param to       on the inner face of the other
 * @param heightMm of its middle over the ground
 */
public record CrossTie(String wall, double atMm, String toWall, Point from, Point to, double heightMm) {
    public double lengthMm() {
        return from.distanceMm(to);
    }
}
