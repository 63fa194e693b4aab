package lapyard.construction;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import lapyard.geometry.Lengths;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Ties;
import lapyard.plan.Ties.Support;
import lapyard.working.Whole;

/**
 * What holds the walls of a bed between their corners: ties square across it and posts.
 *
 * @param ties     those behind joints first, then in the order of the longest wall
 * @param posts    in the order of the document
 * @param restsMm  for each side where ties and posts hold it, along its inner face from its start, ascending
 * @param clearMm  for each side the longest clear run between its corners, ties and posts
 * @param untied   letters of walls that still have too long a run: nothing stands square opposite
 * @param crossed  letters of walls that still have too long a run: ties that stand already cross it at every height
 * @param hinges   joints of walls with nothing behind them, which carry no bending
 */
public record CrossTies(
        List<CrossTie> ties,
        List<Post> posts,
        List<List<Double>> restsMm,
        List<Double> clearMm,
        List<String> untied,
        List<String> crossed,
        List<Seam> hinges) {
    /** Walls count as facing each other within a degree or so. */
    private static final double FACING = -0.9998;

    /** A tie lands well clear of a corner. */
    private static final double FROM_CORNER_MM = 50;

    /** A batten or a post takes both ends of a joint this far off its middle; common practice, no source. */
    static final double BEHIND_MM = 25;

    /** Rods that cross are this far apart in height, and off the joints of courses; common practice, no source. */
    private static final double CROSSING_MM = 25;

    public CrossTies {
        ties = List.copyOf(ties);
        posts = List.copyOf(posts);
        restsMm = List.copyOf(restsMm);
        clearMm = List.copyOf(clearMm);
        untied = List.copyOf(untied);
        crossed = List.copyOf(crossed);
        hinges = List.copyOf(hinges);
    }

    private record Hit(int side, Point at, double alongMm) {}

    /** A post in the ground inside a wall, {@code atMm} along it from its outer start corner; {@code at} on its inner face. */
    public record Post(String wall, double atMm, Point at) {}

    /**
     * As the bed asks for them.
     *
     * @param inner inner faces, corner by corner as the bed's outline
     */
    public static CrossTies of(Bed bed, Outline inner, List<Seam> seams) {
        Ties.Across across = bed.making().ties().across();
        return new Laying(bed, inner, seams).laid(across.crossTies() && highEnough(bed), across.crossOverMm(), across.crossEveryMm());
    }

    /** Whether its walls are not too low for cross ties. */
    public static boolean highEnough(Bed bed) {
        return bed.heightMm() >= bed.making().ties().across().crossFromMm() - 1e-6;
    }

    /** With a tie behind each joint and no clear run over {@code everyMm}, whatever the bed asks for. */
    public static CrossTies advised(Bed bed, Outline inner, List<Seam> seams, double everyMm) {
        return new Laying(bed, inner, seams).laid(true, everyMm, everyMm);
    }

    /** Ties and posts as they are set out, one after the other. */
    private static final class Laying {
        private final Bed bed;
        private final Outline inner;
        private final List<Seam> seams;
        private final List<TreeSet<Double>> rests = new ArrayList<>();
        private final List<CrossTie> ties = new ArrayList<>();
        private final List<Post> posts = new ArrayList<>();
        private final TreeSet<Integer> untied = new TreeSet<>();
        private final TreeSet<Integer> crossed = new TreeSet<>();

        Laying(Bed bed, Outline inner, List<Seam> seams) {
            this.bed = bed;
            this.inner = inner;
            this.seams = seams;
            for (int side = 0; side < inner.sides(); side++) rests.add(new TreeSet<>());
        }

        CrossTies laid(boolean wanted, double overMm, double everyMm) {
            List<Integer> longestFirst = IntStream.range(0, inner.sides())
                    .boxed()
                    .sorted(Comparator.comparingDouble((Integer side) -> -Lengths.toTenth(inner.sideMm(side))))
                    .toList();
            for (Support named : bed.making().ties().supports()) {
                int side = bed.wallLetters().indexOf(named.wall());
                for (double place : named.atMm().isPresent() ? List.of(named.atMm().getAsDouble()) : joints(side)) {
                    double own = place - startMm(side);
                    if (named.post()) {
                        post(side, own);
                    } else {
                        tieOrTell(side, own);
                    }
                }
            }
            for (int side : wanted ? longestFirst : List.<Integer>of()) {
                for (double place : joints(side)) {
                    double own = place - startMm(side);
                    if (!held(side, own)) tie(side, own);
                }
            }
            for (int side : wanted ? longestFirst : List.<Integer>of()) {
                for (double place : places(rests.get(side), inner.sideMm(side), overMm, everyMm)) tieOrTell(side, place);
            }
            List<Double> clear = new ArrayList<>();
            for (int side = 0; side < inner.sides(); side++) clear.add(longest(rests.get(side), inner.sideMm(side)));
            return new CrossTies(
                    ties, posts, rests.stream().map(List::copyOf).toList(), clear,
                    untied.stream().map(Bed::wallLetter).toList(), crossed.stream().map(Bed::wallLetter).toList(),
                    seams.stream().filter(seam -> {
                        int side = bed.wallLetters().indexOf(seam.wall());
                        return !held(side, seam.atMm() - startMm(side));
                    }).toList());
        }

        /** Places of a wall's joints from its outer start corner, each once, ascending. */
        private List<Double> joints(int side) {
            String wall = Bed.wallLetter(side);
            return seams.stream().filter(seam -> seam.wall().equals(wall)).map(Seam::atMm).distinct().sorted().toList();
        }

        /** How far the inner face begins past the outer start corner of its wall. */
        private double startMm(int side) {
            return CrossTies.startMm(bed, inner, side);
        }

        private boolean held(int side, double ownMm) {
            return rests.get(side).stream().anyMatch(rest -> Math.abs(rest - ownMm) <= BEHIND_MM + 1e-6);
        }

        private void post(int side, double ownMm) {
            rests.get(side).add(ownMm);
            posts.add(new Post(Bed.wallLetter(side), Lengths.toTenth(ownMm + startMm(side)), inner.at(side, ownMm, 0).steady()));
        }

        private void tieOrTell(int side, double ownMm) {
            if (!tie(side, ownMm)) (opposite(inner, side, ownMm).isPresent() ? crossed : untied).add(side);
        }

        /** @return false where nothing stands square opposite, or every height is taken by ties that it would cross */
        private boolean tie(int side, double ownMm) {
            Optional<Hit> hit = opposite(inner, side, ownMm);
            Optional<CrossTie> tie = hit.flatMap(there -> passing(CrossTies.tie(bed, inner, side, ownMm, there)));
            tie.ifPresent(laid -> {
                rests.get(side).add(ownMm);
                rests.get(hit.get().side()).add(hit.get().alongMm());
                ties.add(laid);
            });
            return tie.isPresent();
        }

        /** The same tie at the height nearest its own, above before below, at which no earlier tie crosses it. */
        private Optional<CrossTie> passing(CrossTie tie) {
            return heightsMm(tie.heightMm())
                    .filter(heightMm -> ties.stream().noneMatch(other -> other.heightMm() == heightMm && Point.crossing(other.from(), other.to(), tie.from(), tie.to())))
                    .mapToObj(heightMm -> new CrossTie(tie.wall(), tie.atMm(), tie.toWall(), tie.from(), tie.to(), heightMm))
                    .findFirst();
        }

        /** Where a rod may pass: in each course by steps from its middle, clear of the joints above and below it. */
        private DoubleStream heightsMm(double nearestMm) {
            double courseMm = bed.section().heightMm();
            int steps = Math.max(0, (int) Whole.down((courseMm / 2 - CROSSING_MM) / CROSSING_MM));
            return IntStream.range(0, bed.courses())
                    .boxed()
                    .flatMap(course -> IntStream.rangeClosed(-steps, steps).mapToObj(step -> (course + 0.5) * courseMm + step * CROSSING_MM))
                    .sorted(Comparator.comparingLong((Double heightMm) -> Math.round(10 * Math.abs(heightMm - nearestMm))).thenComparing(Comparator.reverseOrder()))
                    .mapToDouble(Double::doubleValue);
        }
    }

    private static double startMm(Bed bed, Outline inner, int side) {
        return inner.corner(side).minus(bed.outline().corner(side)).dot(inner.direction(side));
    }

    /** Even places in each gap over the least: ceil(gap / every) - 1 of them. */
    private static List<Double> places(TreeSet<Double> landed, double lengthMm, double overMm, double everyMm) {
        List<Double> ends = new ArrayList<>(landed);
        ends.add(lengthMm);
        List<Double> places = new ArrayList<>();
        double from = 0;
        for (double to : ends) {
            int more = to - from > overMm + 1e-6 ? (int) Whole.up((to - from) / everyMm) - 1 : 0;
            for (int i = 1; i <= more; i++) places.add(from + (to - from) * i / (more + 1));
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
        Point along = inner.direction(side);
        Point start = inner.at(side, placeMm, 0);
        Point in = new Point(-along.y(), along.x());
        Hit nearest = null;
        double nearestMm = Double.POSITIVE_INFINITY;
        for (int other = 0; other < inner.sides(); other++) {
            Point way = inner.direction(other);
            double cross = in.cross(way);
            Point off = inner.corner(other).minus(start);
            double far = off.cross(way) / cross;
            double at = off.cross(in) / cross;
            if (far > 1e-6 && far < nearestMm && at > -1e-6 && at < inner.sideMm(other) + 1e-6) {
                nearestMm = far;
                nearest = new Hit(other, start.moved(in, far, 0), at);
            }
        }
        if (nearest == null) return Optional.empty();
        boolean facing = along.dot(inner.direction(nearest.side())) < FACING;
        boolean clear = nearest.alongMm() > FROM_CORNER_MM
                && nearest.alongMm() < inner.sideMm(nearest.side()) - FROM_CORNER_MM;
        return facing && clear ? Optional.of(nearest) : Optional.empty();
    }

    private static CrossTie tie(Bed bed, Outline inner, int side, double placeMm, Hit hit) {
        return new CrossTie(
                Bed.wallLetter(side), Lengths.toTenth(placeMm + startMm(bed, inner, side)),
                Bed.wallLetter(hit.side()), inner.at(side, placeMm, 0).steady(), hit.at().steady(), heightMm(bed));
    }

    /** Through the middle of the course nearest 0.4 of the height: between the push's third and mid-height. */
    static double heightMm(Bed bed) {
        double course = bed.section().heightMm();
        int lower = (int) Whole.down(0.4 * bed.heightMm() / course);
        return Math.min(lower, bed.courses() - 1) * course + course / 2;
    }
}
