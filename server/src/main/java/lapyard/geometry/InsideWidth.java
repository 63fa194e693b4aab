package lapyard.geometry;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/** A clear width between the inner faces of two walls, which may be below 0, near a place. */
record InsideWidth(double widthMm, boolean facing, int side, int other, Point at) {
    /** Walls whose inner faces look at each other: their turn is 120 degrees or more. */
    private static final double FACING = -0.5 - 1e-9;

    private static final double NEAR_MM = 1e-6;
    private static final double HAIR_MM = 0.01;

    /**
     * The narrowest place, where it falls short of {@code leastMm}: between two walls that face each other, between
     * an inside corner and a wall across from it, or from a wall of a triangle to its far corner. Where two walls are as narrow over a length, its middle.
     *
     * @param outline either way round, not touching itself
     * @param insetMm thickness of the walls
     */
    static Optional<OutlineFault> narrowest(Outline outline, double insetMm, double leastMm) {
        boolean reversed = outline.signedAreaMm2() < 0;
        // a hair inside, so that a line along a wall runs within
        Outline outer = outline.counterClockwise();
        Outline round = Inset.of(outer, HAIR_MM);
        Outline inner = Inset.of(outer, insetMm);
        int n = round.sides();
        List<InsideWidth> widths = new ArrayList<>();
        for (int i = 0; n == 3 && i < n; i++) widths.add(height(round, inner, i));
        for (int i = 0; i < n; i++) {
            for (int j = i + 2; j < n - (i == 0 ? 1 : 0); j++) {
                boolean facing = round.direction(i).dot(round.direction(j)) < FACING;
                boolean corners = round.insideCorner(i) || round.insideCorner(i + 1)
                        || round.insideCorner(j) || round.insideCorner(j + 1);
                if (facing || corners) nearest(outer, round, inner, i, j, facing).ifPresent(widths::add);
            }
        }
        return widths.stream().filter(width -> width.widthMm < leastMm - NEAR_MM).min(Comparator.comparingLong((InsideWidth width) -> Math.round(width.widthMm / NEAR_MM)).thenComparing(width -> !width.facing)).map(width -> {
            IntStream both = IntStream.of(width.side, width.other).map(side -> reversed ? Math.floorMod(n - 2 - side, n) : side);
            List<Integer> sides = (n == 3 ? both : both.sorted()).boxed().toList();
            return new OutlineFault(
                    OutlineFault.Kind.INSIDE_NARROW, sides.stream().map(side -> side + 1).toList(), sides, leastMm - width.widthMm, "mm", width.at);
        });
    }

    /** From a wall of a triangle, the last told, to the corner of the two others; below 0 where the walls fill it. Moved out, that wall alone widens it by as much. */
    private static InsideWidth height(Outline round, Outline inner, int i) {
        Point from = inner.corner(i);
        Point top = inner.corner(i + 2);
        double width = round.direction(i).cross(top.minus(from));
        return new InsideWidth(width, false, (i + 1) % 3, i, top.middle(top.nearestOn(from, inner.corner(i + 1))).steady());
    }

    /**
     * From each end of one inner face to the nearest place of the other; crossing faces have no width at all. From an inside corner
     * to the wall behind the next there is none either, unless they face each other: the corner between is open to its tip.
     */
    private static Optional<InsideWidth> nearest(Outline outline, Outline round, Outline inner, int i, int j, boolean facing) {
        List<InsideWidth> ends = new ArrayList<>();
        for (int turn = 0; turn < 4; turn++) {
            int across = turn < 2 ? j : i;
            int corner = turn < 2 ? i + turn : j + turn - 2;
            Point outer = round.corner(corner);
            Point outerTo = outer.nearestOn(round.corner(across), round.corner(across + 1));
            int on = Math.floorMod(across - corner, round.sides());
            boolean behindNext = on == 1 || on == round.sides() - 2;
            if (!facing && (behindNext || !round.insideCorner(corner)) || !within(outline, outer, outerTo)) continue;
            Point from = inner.corner(corner);
            Point to = from.nearestOn(inner.corner(across), inner.corner(across + 1));
            double width = Math.copySign(from.distanceMm(to), to.minus(from).dot(outerTo.minus(outer)));
            ends.add(new InsideWidth(width, facing, i, j, from.middle(to)));
        }
        double least = ends.stream().mapToDouble(InsideWidth::widthMm).min().orElse(0);
        return ends.stream().filter(end -> end.widthMm <= least + NEAR_MM).map(end -> end.at.steady()).distinct()
                .reduce(Point::middle).map(at -> new InsideWidth(least, facing, i, j, at));
    }

    /** Whether the straight line between two places of the outline's edge runs inside it. */
    private static boolean within(Outline outline, Point from, Point to) {
        return DoubleStream.of(0.02, 0.25, 0.5, 0.75, 0.98).allMatch(share -> from.towards(to, share).within(outline.corners()));
    }
}
