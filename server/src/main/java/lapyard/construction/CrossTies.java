package lapyard.construction;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.IntStream;
import lapyard.geometry.Lengths;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Bed;

/**
 * Ties square across a bed that leave no wall a longer clear run than asked for.
 *
 * @param ties     in the order of the longest wall
 * @param clearMm  for each side the longest clear run between its corners and ties
 * @param untied   letters of walls that still have too long a run: nothing stands square opposite
 */
public record CrossTies(List<CrossTie> ties, List<Double> clearMm, List<String> untied) {
    /** Walls count as facing each other within a degree or so. */
    private static final double FACING = -0.9998;

    /** A tie lands well clear of a corner. */
    private static final double FROM_CORNER_MM = 50;

    public CrossTies {
        ties = List.copyOf(ties);
        clearMm = List.copyOf(clearMm);
        untied = List.copyOf(untied);
    }

    private record Hit(int side, Point at, double alongMm) {}

    /**
     * @param inner    inner faces, corner by corner as the bed's outline
     * @param everyMm  longest clear run, above 0; infinite for no ties
     */
    public static CrossTies of(Bed bed, Outline inner, double everyMm) {
        Map<Integer, TreeSet<Double>> landed = new HashMap<>();
        List<CrossTie> ties = new ArrayList<>();
        TreeSet<Integer> untied = new TreeSet<>();
        List<Integer> longestFirst = IntStream.range(0, inner.sides())
                .boxed()
                .sorted(Comparator.comparingDouble((Integer side) -> -Lengths.toTenth(inner.sideMm(side))))
                .toList();
        for (int side : longestFirst) {
            TreeSet<Double> own = landed.computeIfAbsent(side, s -> new TreeSet<>());
            for (double place : places(own, inner.sideMm(side), everyMm)) {
                opposite(inner, side, place)
                        .ifPresentOrElse(
                                hit -> {
                                    own.add(place);
                                    landed.computeIfAbsent(hit.side(), s -> new TreeSet<>())
                                            .add(hit.alongMm());
                                    ties.add(tie(bed, inner, side, place, hit));
                                },
                                () -> untied.add(side));
            }
        }
        List<Double> clear = new ArrayList<>();
        for (int side = 0; side < inner.sides(); side++) {
            clear.add(longest(landed.getOrDefault(side, new TreeSet<>()), inner.sideMm(side)));
        }
        return new CrossTies(ties, clear, untied.stream().map(Bed::wallLetter).toList());
    }

    /** Even places in each gap that is too long: ceil(gap / every) - 1 of them. */
    private static List<Double> places(TreeSet<Double> landed, double lengthMm, double everyMm) {
        List<Double> ends = new ArrayList<>(landed);
        ends.add(lengthMm);
        List<Double> places = new ArrayList<>();
        double from = 0;
        for (double to : ends) {
            int more = (int) Math.ceil((to - from) / everyMm - 1e-9) - 1;
            for (int i = 1; i <= more; i++) {
                places.add(from + (to - from) * i / (more + 1));
            }
            from = to;
        }
        return places;
    }

    private static double longest(TreeSet<Double> landed, double lengthMm) {
        double longest = 0;
        double from = 0;
        for (double to : landed) {
            longest = Math.max(longest, to - from);
            from = to;
        }
        return Math.max(longest, lengthMm - from);
    }

    /** What a line square off the inner face meets first; empty where that is no wall facing this one. */
    private static Optional<Hit> opposite(Outline inner, int side, double placeMm) {
        Point along = direction(inner, side);
        Point start = new Point(
                inner.corner(side).x() + along.x() * placeMm, inner.corner(side).y() + along.y() * placeMm);
        double inX = -along.y();
        double inY = along.x();
        Hit nearest = null;
        double nearestMm = Double.POSITIVE_INFINITY;
        for (int other = 0; other < inner.sides(); other++) {
            Point way = direction(inner, other);
            double cross = inX * way.y() - inY * way.x();
            if (other == side || Math.abs(cross) < 1e-9) {
                continue;
            }
            double dx = inner.corner(other).x() - start.x();
            double dy = inner.corner(other).y() - start.y();
            double far = (dx * way.y() - dy * way.x()) / cross;
            double at = (dx * inY - dy * inX) / cross;
            if (far > 1e-6 && far < nearestMm && at > -1e-6 && at < inner.sideMm(other) + 1e-6) {
                nearestMm = far;
                nearest = new Hit(other, new Point(start.x() + inX * far, start.y() + inY * far), at);
            }
        }
        if (nearest == null) {
            return Optional.empty();
        }
        Point way = direction(inner, nearest.side());
        boolean facing = along.x() * way.x() + along.y() * way.y() < FACING;
        boolean clear = nearest.alongMm() > FROM_CORNER_MM
                && nearest.alongMm() < inner.sideMm(nearest.side()) - FROM_CORNER_MM;
        return facing && clear ? Optional.of(nearest) : Optional.empty();
    }

    private static CrossTie tie(Bed bed, Outline inner, int side, double placeMm, Hit hit) {
        Point along = direction(inner, side);
        Point from = new Point(
                Lengths.steady(inner.corner(side).x() + along.x() * placeMm),
                Lengths.steady(inner.corner(side).y() + along.y() * placeMm));
        Point corner = bed.outline().corner(side);
        double at = (from.x() - corner.x()) * along.x() + (from.y() - corner.y()) * along.y();
        return new CrossTie(
                Bed.wallLetter(side),
                Lengths.toTenth(at),
                Bed.wallLetter(hit.side()),
                from,
                new Point(Lengths.steady(hit.at().x()), Lengths.steady(hit.at().y())),
                heightMm(bed));
    }

    /** Through the middle of the course nearest 0.4 of the height: between the push's third and mid-height. */
    static double heightMm(Bed bed) {
        double course = bed.section().heightMm();
        int lower = (int) Math.floor(0.4 * bed.heightMm() / course);
        return Math.min(lower, bed.courses() - 1) * course + course / 2;
    }

    private static Point direction(Outline outline, int side) {
        Point a = outline.corner(side);
        Point b = outline.corner(side + 1);
        double length = a.distanceMm(b);
        return new Point((b.x() - a.x()) / length, (b.y() - a.y()) / length);
    }
}
