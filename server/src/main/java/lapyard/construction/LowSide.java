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

    private static final double COS_45 = Math.sqrt(0.5);

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
        double namedX = 0;
        double namedY = 0;
        for (int side = 0; side < outline.sides(); side++) {
            Point along = outline.direction(side);
            double outX = along.y();
            double outY = -along.x();
            if (bed.walls().low().contains(Bed.wallLetter(side))) {
                walls.add(side);
                namedX += outX * outline.sideMm(side);
                namedY += outY * outline.sideMm(side);
            } else if (bed.walls().low().isEmpty()
                    && falling.isPresent()
                    && outX * falling.get().x() + outY * falling.get().y() >= (COS_45 - 1e-9) * fall) {
                walls.add(side);
            }
        }
        if (walls.isEmpty() && bed.walls().low().isEmpty() && falling.isPresent()) walls.addAll(facing(outline, falling.get()));
        // Named walls that face each other leave the direction to the fall.
        boolean named = Math.hypot(namedX, namedY) > 1;
        return new LowSide(named ? Optional.of(new Point(namedX, namedY)) : falling, walls);
    }

    /** Where an angled bed has a point downhill: the walls that look down the fall most. */
    private static List<Integer> facing(Outline outline, Point fall) {
        double most = 0;
        for (int side = 0; side < outline.sides(); side++) most = Math.max(most, outwards(outline, side, fall));
        List<Integer> walls = new ArrayList<>();
        for (int side = 0; side < outline.sides(); side++) if (outwards(outline, side, fall) >= most * (1 - 1e-3)) walls.add(side);
        return walls;
    }

    private static double outwards(Outline outline, int side, Point fall) {
        Point along = outline.direction(side);
        return along.y() * fall.x() - along.x() * fall.y();
    }
}
