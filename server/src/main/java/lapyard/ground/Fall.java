package lapyard.ground;

import java.util.List;
import java.util.Optional;
import lapyard.geometry.Point;
import lapyard.plan.Ground;

/**
 * The plane of the ground: drop(x, y) = a x + b y + c, least squares through all readings.
 *
 * @param residualsMm reading less plane, one a reading
 */
public record Fall(double a, double b, double c, List<Double> residualsMm) {
    public Fall {
        residualsMm = List.copyOf(residualsMm);
    }

    /** Empty for fewer than three readings or readings all in a line. */
    public static Optional<Fall> of(List<Ground.Level> levels) {
        throw new UnsupportedOperationException();
    }

    /** The slope (x, y) in the yard, pointing downhill. */
    public Point downhill() {
        return new Point(a, b);
    }

    public double dropMm(Point at) {
        return a * at.x() + b * at.y() + c;
    }

    /** n of 1:n; infinite on level ground. */
    public double oneIn() {
        return 1 / Math.hypot(a, b);
    }
}
