package lapyard.construction;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import lapyard.geometry.Lengths;
import lapyard.plan.Saw;

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

    /**
     * Fewest seams first. The long part starts the odd courses and ends the even ones (or the other way round); it is
     * the shortest whole half metre, else whole 100 mm, that gives the stagger, else as long as it can be.
     *
     * @param wallMm    outer length of the wall
     * @param longestMm longest part that a board gives
     * @return empty where no parts keep the least length, the distance from the corners and the longest board; a
     *     split that misses the stagger is the best there is of up to two seams more than needed
     */
    static Optional<SeamSplit> of(WallRun odd, WallRun even, boolean evenLaid, double wallMm, double longestMm, Saw saw) {
        boolean joinOdd = odd.lengthMm() > longestMm + EPSILON;
        boolean joinEven = evenLaid && even.lengthMm() > longestMm + EPSILON;
        double longer = Math.max(joinOdd ? odd.lengthMm() : 0, joinEven ? even.lengthMm() : 0);
        double shorter = Math.min(joinOdd ? odd.lengthMm() : longer, joinEven ? even.lengthMm() : longer);
        int least = (int) Math.ceil((longer - EPSILON) / longestMm);
        Search search = new Search(odd, even, joinOdd, joinEven, wallMm, longestMm, saw);
        for (int parts = least; parts <= least + 2; parts++) {
            for (double step : new double[] {500, 100}) {
                double first = Math.ceil(longer / parts / step - EPSILON) * step;
                for (double part = first; part <= longestMm + EPSILON; part += step) {
                    if (search.reached(parts, part, step)) return search.best;
                }
            }
            double most = Math.floor(10 * (Math.min(longestMm, shorter - saw.leastPartMm()) + EPSILON)) / 10;
            if (search.reached(parts, most, 100)) return search.best;
        }
        return search.best;
    }

    /** Ways to join one wall that are handed on; each costs a try of the cutting. */
    private static final int MOST_WAYS = 16;

    /**
     * All splits into the fewest parts that keep every rule, the one of {@link #of} first; those with long parts of
     * whole 100 mm or of a whole board, or that leave a whole board, in the order of their long parts; thinned out
     * evenly where they are many.
     *
     * @param boardsMm what whole boards give
     * @return only the first where it misses the stagger; empty where there is none
     */
    static List<SeamSplit> all(
            WallRun odd,
            WallRun even,
            boolean evenLaid,
            double wallMm,
            double longestMm,
            Saw saw,
            Collection<Double> boardsMm) {
        Optional<SeamSplit> usual = of(odd, even, evenLaid, wallMm, longestMm, saw);
        if (usual.isEmpty() || usual.get().staggerMm() < saw.seamStaggerMm() - EPSILON) return usual.stream().toList();
        boolean joinOdd = !usual.get().oddMm().isEmpty();
        boolean joinEven = !usual.get().evenMm().isEmpty();
        double longer = Math.max(joinOdd ? odd.lengthMm() : 0, joinEven ? even.lengthMm() : 0);
        int parts = Math.max(usual.get().oddMm().size(), usual.get().evenMm().size()) + 1;
        TreeSet<Double> longParts = new TreeSet<>();
        for (double part = Math.ceil(longer / parts / 100 - EPSILON) * 100; part <= longestMm + EPSILON; part += 100) longParts.add(part);
        for (double board : boardsMm) {
            longParts.add(Lengths.toTenth(board));
            for (WallRun run : List.of(odd, even)) longParts.add(Lengths.toTenth(run.lengthMm() - board));
        }
        longParts.removeIf(part -> part < longer / parts - EPSILON || part > longestMm + EPSILON);
        LinkedHashSet<SeamSplit> found = new LinkedHashSet<>();
        for (double part : longParts) {
            Search search = new Search(odd, even, joinOdd, joinEven, wallMm, longestMm, saw);
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
        private final double wallMm;
        private final double longestMm;
        private final Saw saw;
        private Optional<SeamSplit> best = Optional.empty();

        Search(WallRun odd, WallRun even, boolean joinOdd, boolean joinEven, double wallMm, double longestMm, Saw saw) {
            this.odd = odd;
            this.even = even;
            this.joinOdd = joinOdd;
            this.joinEven = joinEven;
            this.wallMm = wallMm;
            this.longestMm = longestMm;
            this.saw = saw;
        }

        /** Tries a long part of this length, with equal middle parts where there are more than two. */
        boolean reached(int parts, double longMm, double stepMm) {
            if (parts == 2) return reached(parts, longMm, 0, true) || reached(parts, longMm, 0, false);
            double first = Math.ceil(saw.leastPartMm() / stepMm - EPSILON) * stepMm;
            for (double middle = first; middle <= longestMm + EPSILON; middle += stepMm) {
                if (reached(parts, longMm, middle, true) || reached(parts, longMm, middle, false)) return true;
            }
            return false;
        }

        private boolean reached(int parts, double longMm, double middleMm, boolean longFirst) {
            List<Double> oddSeams = joinOdd ? seams(odd, parts, longMm, middleMm, longFirst) : List.of();
            List<Double> evenSeams = joinEven ? seams(even, parts, longMm, middleMm, !longFirst) : List.of();
            if (joinOdd && !sound(odd, oddSeams) || joinEven && !sound(even, evenSeams)) return false;
            double stagger = stagger(oddSeams, evenSeams);
            if (best.isEmpty() || stagger > best.get().staggerMm() + EPSILON) {
                best = Optional.of(new SeamSplit(oddSeams, evenSeams, stagger));
            }
            if (stagger >= saw.seamStaggerMm() - EPSILON) {
                best = Optional.of(new SeamSplit(oddSeams, evenSeams, stagger));
                return true;
            }
            return false;
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
            double from = run.fromMm();
            double clearFrom = Math.max(run.start().outerMm(), run.start().innerMm());
            double clearEnd = Math.min(run.end().outerMm(), run.end().innerMm());
            for (int i = 0; i <= seams.size(); i++) {
                double to = i < seams.size() ? seams.get(i) : run.toMm();
                double clearTo = i < seams.size() ? to : clearEnd;
                if (clearTo - clearFrom < saw.leastPartMm() - EPSILON || to - from > longestMm + EPSILON) return false;
                clearFrom = to;
                if (i < seams.size()
                        && (to < saw.seamFromCornerMm() - EPSILON || to > wallMm - saw.seamFromCornerMm() + EPSILON)) {
                    return false;
                }
                from = to;
            }
            return true;
        }

        /** Least distance between the two ascending lists. */
        private static double stagger(List<Double> one, List<Double> other) {
            double least = Double.POSITIVE_INFINITY;
            int i = 0;
            int j = 0;
            while (i < one.size() && j < other.size()) {
                least = Math.min(least, Math.abs(one.get(i) - other.get(j)));
                if (one.get(i) < other.get(j)) {
                    i++;
                } else {
                    j++;
                }
            }
            return least;
        }
    }
}
