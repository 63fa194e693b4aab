package lapyard.plan;

import java.util.Optional;
import java.util.OptionalDouble;
import lapyard.catalogue.Vehicle;
import lapyard.geometry.Point;

/**
 * How goods come in from the road.
 *
 * @param given         whether the document says anything of it; only then are its findings among the garden's
 * @param vehicle       of the gardener's own, for what no supplier brings
 * @param passageMm     width of the narrowest passage before its turn, empty where there is none
 * @param afterTurnMm   width of the passage after the turn; empty where it does not turn
 * @param dropSpot      where the lorry sets down, in the yard
 * @param bagMm         side of the square that a bulk bag stands on
 * @param barrowLitres  of one barrow load
 */
public record WayIn(
        boolean given,
        Optional<Vehicle> vehicle,
        OptionalDouble passageMm,
        OptionalDouble afterTurnMm,
        Optional<Point> dropSpot,
        double bagMm,
        double barrowLitres) {
    public static final WayIn UNKNOWN = new WayIn(
            false, Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty(), 1000, 60);
}
