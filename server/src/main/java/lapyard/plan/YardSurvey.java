package lapyard.plan;

import java.util.List;
import lapyard.geometry.Point;

/**
 * The yard as it was taped: corners fixed from a baseline, or sides walked round, and tapes that check them.
 *
 * @param from    first mark of the baseline, where a walk begins
 * @param to      second mark; a walk's first side runs towards it
 * @param corners in order round the yard; empty for a walk
 * @param walk    sides in order; empty where corners were fixed
 */
public record YardSurvey(Point from, Point to, List<Corner> corners, List<Leg> walk, List<Check> checks) {
    public YardSurvey {
        corners = List.copyOf(corners);
        walk = List.copyOf(walk);
        checks = List.copyOf(checks);
    }

    /** How one corner was fixed. */
    public sealed interface Corner {
        /** @param left whether it lies to the left as one looks from the first mark to the second */
        record Tapes(double firstMm, double secondMm, boolean left) implements Corner {}

        /** @param offMm to the left of the baseline, below 0 to its right */
        record Offset(double alongMm, double offMm) implements Corner {}
    }

    /**
     * One side as walked.
     *
     * @param tapedMm along the ground
     * @param turnDeg at its end, 90 to the left, -90 to the right
     * @param fallMm  difference of level between its ends, either way, where the tape lay along a slope
     */
    public record Leg(double tapedMm, double turnDeg, double fallMm) {}

    /** A tape between two corners, numbered from 1. */
    public record Check(int from, int to, double tapedMm) {}
}
