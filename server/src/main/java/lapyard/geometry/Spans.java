package lapyard.geometry;

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
        if (!outline.upright()) {
            throw new IllegalArgumentException("only an outline with square corners along the axes has spans");
        }
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
            if (coordinate(corner, acrossX) <= beyond) {
                return corner;
            }
            return acrossX ? new Point(corner.x() + byMm, corner.y()) : new Point(corner.x(), corner.y() + byMm);
        }).toList());
    }

    /** Corners that stray by less than a hair share a coordinate. */
    private static List<Double> coordinates(Outline outline, boolean acrossX) {
        TreeSet<Double> all = new TreeSet<>();
        outline.corners().forEach(corner -> {
            double at = coordinate(corner, acrossX);
            Double near = all.ceiling(at - 2 * Outline.STRAY_MM);
            if (near == null || near > at + 2 * Outline.STRAY_MM) {
                all.add(at);
            }
        });
        return List.copyOf(all);
    }

    private static double coordinate(Point point, boolean acrossX) {
        return acrossX ? point.x() : point.y();
    }
}
