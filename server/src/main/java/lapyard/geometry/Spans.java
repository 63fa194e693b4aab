package lapyard.geometry;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.TreeSet;

/**
 * How an outline whose sides run along the axes can change its size and still close: between two neighbouring coordinates
 * of its corners lies a span, and all corners beyond a span move together when it is made longer or shorter. A rectangle
 * has one span across and one deep; an L has two of each.
 */
public final class Spans {
    private Spans() {}

    /**
     * @param acrossX whether spans along x are meant, else along y
     * @return lengths in mm, from the least coordinate on
     * @throws IllegalArgumentException if the outline is not upright
     */
    public static List<Double> of(Outline outline, boolean acrossX) {
        if (!outline.upright()) throw new IllegalArgumentException("only an outline with square corners along the axes has spans");
        List<Double> at = coordinates(outline, acrossX);
        return java.util.stream.IntStream.range(1, at.size()).mapToObj(i -> at.get(i) - at.get(i - 1)).toList();
    }

    /** Numbers of the sides that become longer with the span. */
    public static List<Integer> sides(Outline outline, boolean acrossX, int span) {
        List<Double> at = coordinates(outline, acrossX);
        double from = at.get(span);
        double to = at.get(span + 1);
        return java.util.stream.IntStream.range(0, outline.sides()).filter(side -> {
            double a = coordinate(outline.corner(side), acrossX);
            double b = coordinate(outline.corner(side + 1), acrossX);
            return Math.min(a, b) < to - Outline.STRAY_MM && Math.max(a, b) > from + Outline.STRAY_MM;
        }).boxed().toList();
    }

    /** The outline with one span longer, shorter where {@code byMm} is below 0; its first corner stays in its place. */
    public static Outline stretched(Outline outline, boolean acrossX, int span, double byMm) {
        double beyond = coordinates(outline, acrossX).get(span) + Outline.STRAY_MM;
        return new Outline(outline.corners().stream().map(corner -> {
            if (coordinate(corner, acrossX) <= beyond) return corner;
            return acrossX ? new Point(corner.x() + byMm, corner.y()) : new Point(corner.x(), corner.y() + byMm);
        }).toList());
    }

    /** Of outlines with more sides only pairs of parallel sides are looked for. */
    private static final int MOST_SIDES = 12;

    /** How far unit vectors may miss: corners are given in whole mm. Over 25 mm it makes 0.05. */
    private static final double NEAR = 0.002;

    /**
     * The sets of sides that may all become shorter by one length while every angle stays: those whose directions add up to
     * nothing, as the sides of a closed outline do. Sets that hold no other such set, then all sides where they close too.
     *
     * @return numbers of sides, ascending; of an outline of more than 12 sides only the pairs
     */
    public static List<List<Integer>> closing(Outline outline) {
        List<List<Integer>> sets = new ArrayList<>();
        int sides = outline.sides();
        for (int size = 2; size <= (sides > MOST_SIDES ? 2 : sides); size++) subsets(outline, size, 0, List.of(), new Point(0, 0), sets);
        return sets;
    }

    private static void subsets(Outline outline, int size, int from, List<Integer> taken, Point sum, List<List<Integer>> sets) {
        if (taken.size() == size) {
            boolean least = size == outline.sides() || sets.stream().noneMatch(taken::containsAll);
            if (least && Math.hypot(sum.x(), sum.y()) < NEAR) sets.add(taken);
            return;
        }
        for (int side = from; side <= outline.sides() - (size - taken.size()); side++) {
            List<Integer> more = new ArrayList<>(taken);
            more.add(side);
            subsets(outline, size, side + 1, List.copyOf(more), sum.moved(outline.direction(side), 1, 0), sets);
        }
    }

    /** The outline with these sides shorter, which close together; its first corner stays in its place. */
    public static Outline shorter(Outline outline, Collection<Integer> sides, double byMm) {
        List<Point> corners = new ArrayList<>(List.of(outline.corner(0)));
        for (int side = 0; side < outline.sides() - 1; side++) {
            double length = outline.sideMm(side) - (sides.contains(side) ? byMm : 0);
            corners.add(corners.get(side).moved(outline.direction(side), length, 0));
        }
        return new Outline(corners);
    }

    /** Corners that stray by less than a hair share a coordinate. */
    private static List<Double> coordinates(Outline outline, boolean acrossX) {
        TreeSet<Double> all = new TreeSet<>();
        outline.corners().forEach(corner -> {
            double at = coordinate(corner, acrossX);
            Double near = all.ceiling(at - 2 * Outline.STRAY_MM);
            if (near == null || near > at + 2 * Outline.STRAY_MM) all.add(at);
        });
        return List.copyOf(all);
    }

    private static double coordinate(Point point, boolean acrossX) {
        return acrossX ? point.x() : point.y();
    }
}
