package lapyard.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;

/** The clear width between the inner faces of an outline with angled corners. */
final class AngledWidth {
    /** Walls whose inner faces look at each other: their turn is 120 degrees or more. */
    private static final double FACING = -0.5 - 1e-9;

    private AngledWidth() {}

    /**
     * The narrowest place, where it falls short of {@code leastMm}: between two walls that face each other, or between
     * an inside corner and a wall across from it.
     *
     * @param outline either way round, not touching itself
     * @param insetMm thickness of the walls
     */
    static Optional<OutlineFault> narrowest(Outline outline, double insetMm, double leastMm) {
        boolean reversed = outline.signedAreaMm2() < 0;
        Outline round = outline.counterClockwise();
        Outline inner = Inset.of(round, insetMm);
        int n = round.sides();
        List<ClearWidth> gaps = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            for (int j = i + 1; j < n; j++) {
                boolean neighbours = j == i + 1 || i == 0 && j == n - 1;
                boolean facing = round.direction(i).dot(round.direction(j)) < FACING;
                boolean corners = round.insideCorner(i) || round.insideCorner(i + 1)
                        || round.insideCorner(j) || round.insideCorner(j + 1);
                if (!neighbours && (facing || corners)) nearest(round, inner, i, j, facing, gaps);
            }
        }
        return ClearWidth.narrowest(gaps, leastMm, side -> reversed ? Math.floorMod(n - 2 - side, n) : side);
    }

    /** From each end of one inner face to the nearest place of the other; crossing faces have no width at all. */
    private static void nearest(Outline round, Outline inner, int i, int j, boolean facing, List<ClearWidth> gaps) {
        for (int turn = 0; turn < 2; turn++) {
            int own = turn == 0 ? i : j;
            int across = turn == 0 ? j : i;
            for (int end = 0; end < 2; end++) {
                Point outer = round.corner(own + end);
                if (!facing && !round.insideCorner(own + end)) continue;
                Point from = inner.corner(own + end);
                Point to = from.nearestOn(inner.corner(across), inner.corner(across + 1));
                Point outerTo = outer.nearestOn(round.corner(across), round.corner(across + 1));
                if (!within(round, outer, outerTo)) continue;
                double width = Math.copySign(from.distanceMm(to), to.minus(from).dot(outerTo.minus(outer)));
                gaps.add(new ClearWidth(width, i, j, from.middle(to)));
            }
        }
    }

    /** Whether the straight line between two places of the outline's edge runs inside it. */
    private static boolean within(Outline outline, Point from, Point to) {
        return DoubleStream.of(0.02, 0.25, 0.5, 0.75, 0.98).allMatch(share -> from.towards(to, share).within(outline.corners()));
    }
}
