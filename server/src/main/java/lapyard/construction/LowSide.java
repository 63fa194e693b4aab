package lapyard.construction;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Bed;

/**
 * Where water leaves a bed.
 *
 * @param toward direction in the bed's own frame, of any length; empty if it is not known
 * @param walls  side numbers of the low walls, ascending
 */
record LowSide(Optional<Point> toward, List<Integer> walls) {
    /** A slope under 1 in a million is a rounding error of the level readings. */
    private static final double LEVEL = 1e-6;

    LowSide {
        walls = List.copyOf(walls);
    }

    /**
     * Walls named by hand count before the fall; a wall is low where the ground falls outwards within 45 degrees of
     * square across it.
     */
    static LowSide of(Bed bed, Optional<Point> downhill) {
        Outline outline = bed.outline();
        double fall = downhill.map(slope -> Math.hypot(slope.x(), slope.y())).orElse(0.0);
        Optional<Point> falling = fall > LEVEL ? downhill : Optional.empty();
        List<Integer> walls = new ArrayList<>();
        Point named = new Point(0, 0);
        for (int side = 0; side < outline.sides(); side++) {
            if (bed.walls().low().contains(Bed.wallLetter(side))) {
                walls.add(side);
                named = named.moved(outline.direction(side), 0, -outline.sideMm(side));
            } else if (bed.walls().low().isEmpty()
                    && falling.isPresent()
                    && falling.get().cross(outline.direction(side)) >= (WallRun.COS_45 - 1e-9) * fall) {
                walls.add(side);
            }
        }
        if (walls.isEmpty() && bed.walls().low().isEmpty() && falling.isPresent()) walls.addAll(facing(outline, falling.get()));
        // Named walls that face each other leave the direction to the fall.
        return new LowSide(Math.hypot(named.x(), named.y()) > 1 ? Optional.of(named) : falling, walls);
    }

    /** Where an angled bed has a point downhill: the walls that look down the fall most. */
    private static List<Integer> facing(Outline outline, Point fall) {
        double most = 0;
        for (int side = 0; side < outline.sides(); side++) most = Math.max(most, fall.cross(outline.direction(side)));
        List<Integer> walls = new ArrayList<>();
        for (int side = 0; side < outline.sides(); side++) if (fall.cross(outline.direction(side)) >= most * (1 - 1e-3)) walls.add(side);
        return walls;
    }
}
