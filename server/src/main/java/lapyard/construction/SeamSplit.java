package lapyard.construction;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import lapyard.geometry.Lengths;
import lapyard.plan.Bed;
import lapyard.plan.Saw;
import lapyard.working.Whole;

/**
 * Where a wall longer than its boards is joined, alternating from course to course.
 *
 * @param oddMm     seams of courses 1, 3, 5 ... along the wall from its outer start corner, ascending
 * @param evenMm    seams of courses 2, 4, 6 ...
 * @param staggerMm least distance between a seam and one in the course above; infinite where only one kind has seams
 */
public record SeamSplit(List<Double> oddMm, List<Double> evenMm, double staggerMm) {
    public SeamSplit {
        oddMm = List.copyOf(oddMm);
        evenMm = List.copyOf(evenMm);
    }

    /** A wall in one part. */
    static final SeamSplit NONE = new SeamSplit(List.of(), List.of(), Double.POSITIVE_INFINITY);

    private static final double EPSILON = 1e-6;

    /** Ways to join one wall that are handed on; each costs a try of the cutting. */
    private static final int MOST_WAYS = 16;

    /**
     * Fewest seams first. The long part starts the odd courses and ends the even ones (or the other way round); it is
     * the shortest whole half metre, else whole 100 mm, that gives the stagger, else as long as it can be.
     *
     * @param longestMm longest part that a board gives
     * @return empty where no parts keep the least length, the distance from the corners and the longest board; a
     *     split that misses the stagger is the best that was tried, with up to two seams more than needed
     */
    static Optional<SeamSplit> of(Bed bed, int side, double longestMm, Saw saw) {
        Search search = new Search(bed, side, longestMm, saw);
        double longer = search.longerMm;
        double shorter = Math.min(search.joinOdd ? search.odd.lengthMm() : longer, search.joinEven ? search.even.lengthMm() : longer);
        int least = (int) Whole.up(longer / search.longestMm);
        for (int parts = least; parts <= least + 2; parts++) {
            for (double step : new double[] {500, 100}) {
                double first = Math.ceil(longer / parts / step - EPSILON) * step;
                for (double part = first; part <= search.longestMm; part += step) {
                    if (search.reached(parts, part, step)) return search.best;
                }
            }
            double most = Math.floor(10 * Math.min(search.longestMm, shorter - search.leastMm)) / 10;
            // where courses of one kind are shorter, equal short parts may give more than equal long ones
            double few = Math.ceil(10 * Math.max(search.leastMm, longer - (parts - 1) * search.longestMm)) / 10;
            if (search.reached(parts, most, 100) || search.reached(parts, few, 100) || parts == 2 && search.apart()) return search.best;
        }
        return search.best;
    }

    /**
     * All splits into the fewest parts that keep every rule, the one of {@link #of} first; those with long parts of
     * whole 100 mm or of a whole board, or that leave a whole board, in the order of their long parts; thinned out
     * evenly where they are many.
     *
     * @param boardsMm what whole boards give
     * @return only the first where it misses the stagger; empty where there is none
     */
    static List<SeamSplit> all(Bed bed, int side, double longestMm, Saw saw, Collection<Double> boardsMm) {
        Optional<SeamSplit> usual = of(bed, side, longestMm, saw);
        if (usual.isEmpty() || usual.get().staggerMm() < saw.seamStaggerMm() - EPSILON) return usual.stream().toList();
        int parts = Math.max(usual.get().oddMm().size(), usual.get().evenMm().size()) + 1;
        TreeSet<Double> longParts = new TreeSet<>();
        for (double part = 100; part <= longestMm; part += 100) longParts.add(part);
        for (double board : boardsMm) {
            longParts.add(Lengths.toTenth(board));
            for (boolean odd : new boolean[] {true, false}) longParts.add(Lengths.toTenth(WallRun.of(bed, side, odd).lengthMm() - board));
        }
        double share = new Search(bed, side, longestMm, saw).longerMm / parts - EPSILON;
        longParts.removeIf(part -> part < share);
        LinkedHashSet<SeamSplit> found = new LinkedHashSet<>();
        for (double part : longParts) {
            Search search = new Search(bed, side, longestMm, saw);
            if (search.reached(parts, part, 100)) found.add(search.best.orElseThrow());
        }
        found.remove(usual.get());
        List<SeamSplit> others = List.copyOf(found);
        List<SeamSplit> ways = new ArrayList<>(List.of(usual.get()));
        int most = Math.min(MOST_WAYS - 1, others.size());
        for (int i = 0; i < most; i++) ways.add(others.get((int) ((long) i * others.size() / most)));
        return ways;
    }

    /** Tries splits and keeps the one with the greatest stagger. */
    private static final class Search {
        private final WallRun odd;
        private final WallRun even;
        private final boolean joinOdd;
        private final boolean joinEven;
        /** The longer of those that must be joined. */
        private final double longerMm;
        private final double wallMm;
        /** Longest and shortest part, place of a joint and stagger, with a hair that calculating may add or take. */
        private final double longestMm;
        private final double leastMm;
        private final double cornerMm;
        private final double staggerMm;
        private Optional<SeamSplit> best = Optional.empty();

        Search(Bed bed, int side, double longestMm, Saw saw) {
            odd = WallRun.of(bed, side, true);
            even = WallRun.of(bed, side, false);
            this.longestMm = longestMm + EPSILON;
            leastMm = saw.leastPartMm() - EPSILON;
            cornerMm = saw.seamFromCornerMm() - EPSILON;
            staggerMm = saw.seamStaggerMm() - EPSILON;
            joinOdd = odd.lengthMm() > this.longestMm;
            joinEven = bed.courses() > 1 && even.lengthMm() > this.longestMm;
            longerMm = Math.max(joinOdd ? odd.lengthMm() : 0, joinEven ? even.lengthMm() : 0);
            wallMm = bed.outline().sideMm(side);
        }

        /** Tries a long part of this length, with equal middle parts where there are more than two. */
        boolean reached(int parts, double longMm, double stepMm) {
            if (parts == 2) return reached(parts, longMm, 0, true) || reached(parts, longMm, 0, false);
            for (double middle = Math.ceil(leastMm / stepMm) * stepMm; middle <= longestMm; middle += stepMm) {
                if (reached(parts, longMm, middle, true) || reached(parts, longMm, middle, false)) return true;
            }
            return false;
        }

        private boolean reached(int parts, double longMm, double middleMm, boolean longFirst) {
            List<Double> oddSeams = joinOdd ? seams(odd, parts, longMm, middleMm, longFirst) : List.of();
            List<Double> evenSeams = joinEven ? seams(even, parts, longMm, middleMm, !longFirst) : List.of();
            return reached(oddSeams, evenSeams);
        }

        /** Tries one joint a course, as far apart as they go: courses of two lengths may need two long parts. */
        boolean apart() {
            return apart(true) || apart(false);
        }

        private boolean apart(boolean oddFirst) {
            return reached(joinOdd ? List.of(place(odd, oddFirst)) : List.of(), joinEven ? List.of(place(even, !oddFirst)) : List.of());
        }

        /** Where the only joint can lie first or last, to a tenth. */
        private double place(WallRun run, boolean first) {
            double clearFrom = Math.max(run.start().outerMm(), run.start().innerMm());
            double clearTo = Math.min(run.end().outerMm(), run.end().innerMm());
            return first
                    ? Math.ceil(10 * Math.max(Math.max(cornerMm, clearFrom + leastMm), run.toMm() - longestMm)) / 10
                    : Math.floor(10 * Math.min(Math.min(wallMm - cornerMm, clearTo - leastMm), run.fromMm() + longestMm)) / 10;
        }

        private boolean reached(List<Double> oddSeams, List<Double> evenSeams) {
            if (joinOdd && !sound(odd, oddSeams) || joinEven && !sound(even, evenSeams)) return false;
            double stagger = stagger(oddSeams, evenSeams);
            boolean enough = stagger >= staggerMm;
            if (enough || best.isEmpty() || stagger > best.get().staggerMm() + EPSILON) {
                best = Optional.of(new SeamSplit(oddSeams, evenSeams, stagger));
            }
            return enough;
        }

        private static List<Double> seams(WallRun run, int parts, double longMm, double middleMm, boolean longFirst) {
            List<Double> seams = new ArrayList<>();
            for (int i = 0; i < parts - 1; i++) {
                int k = longFirst ? i : parts - 2 - i;
                double in = longMm + k * middleMm;
                seams.add(Lengths.steady(longFirst ? run.fromMm() + in : run.toMm() - in));
            }
            return seams;
        }

        private boolean sound(WallRun run, List<Double> seams) {
            double clearFrom = Math.max(run.start().outerMm(), run.start().innerMm());
            double clearTo = Math.min(run.end().outerMm(), run.end().innerMm());
            double first = seams.get(0);
            double last = seams.get(seams.size() - 1);
            return first >= cornerMm && wallMm - last >= cornerMm
                    && first - clearFrom >= leastMm && clearTo - last >= leastMm
                    && run.partsMm(seams).allMatch(part -> part >= leastMm && part <= longestMm);
        }

        private static double stagger(List<Double> one, List<Double> other) {
            return one.stream().flatMapToDouble(a -> other.stream().mapToDouble(b -> Math.abs(a - b))).min().orElse(Double.POSITIVE_INFINITY);
        }
    }
}
