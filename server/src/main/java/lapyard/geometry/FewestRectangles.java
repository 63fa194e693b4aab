package lapyard.geometry;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Splits of a right-angled outline into the fewest rectangles.
 *
 * <p>Every cut starts at an inside corner; one that joins two inside corners on a level (a chord) settles both. So the
 * least number is inside corners - largest set of chords that do not meet + 1, and that set is found by matching the
 * upright chords against the level ones.
 *
 * @see "Lipski, Lodi, Luccio, Mugnai, Pagli, On two-dimensional data organization II, Fundamenta Informaticae 2 (1979) 245-260"
 * @see "Ferrari, Sankar, Sklansky, Minimal rectangular partitions of digitized blobs, CVGIP 28 (1984) 58-71"
 */
public final class FewestRectangles {
    /** Outlines of up to this many inside corners get all their splits, larger ones get one. */
    public static final int ALL_SPLITS_UP_TO = 6;

    private FewestRectangles() {}

    /**
     * One split.
     *
     * @param rectangles lowest first, then from the left; they cover the outline and do not overlap
     * @param cuts       the straight cuts that make it, one fewer than rectangles
     */
    public record Split(List<Rectangle> rectangles, List<Cut> cuts) {
        public Split {
            rectangles = List.copyOf(rectangles);
            cuts = List.copyOf(cuts);
        }
    }

    /** A straight cut, from its lower or left end. */
    public record Cut(Point from, Point to) {
        public boolean level() {
            return from.y() == to.y();
        }

        public double lengthMm() {
            return from.distanceMm(to);
        }
    }

    /**
     * Splits into the least number of rectangles: all of them up to {@link #ALL_SPLITS_UP_TO} inside corners, else
     * one. In a fixed order.
     *
     * @param outline all sides along the axes, not touching itself
     */
    public static List<Split> splits(Outline outline) {
        CutGrid grid = CutGrid.of(outline.counterClockwise());
        if (grid.insideCorners().isEmpty()) return List.of(grid.split(List.of()));
        List<CutGrid.Segment> free = largestSet(grid.chords());
        if (grid.insideCorners().size() > ALL_SPLITS_UP_TO) return List.of(grid.split(one(grid, free)));
        return new SplitSearch(grid, free.size()).all().stream().map(grid::split).toList();
    }

    /** Chords first, then a level cut from each inside corner that is left. */
    private static List<CutGrid.Segment> one(CutGrid grid, List<CutGrid.Segment> free) {
        List<CutGrid.Segment> cuts = new ArrayList<>(free);
        for (int corner : grid.insideCorners()) {
            if (cuts.stream().noneMatch(cut -> grid.endsAt(cut, corner))) cuts.add(grid.ray(corner, true, cuts));
        }
        return cuts;
    }

    /** A largest set of chords no two of which meet, by Koenig's theorem from a largest matching. */
    static List<CutGrid.Segment> largestSet(List<CutGrid.Segment> chords) {
        List<CutGrid.Segment> level = chords.stream().filter(CutGrid.Segment::level).toList();
        List<CutGrid.Segment> upright = chords.stream().filter(chord -> !chord.level()).toList();
        int[] partner = new int[upright.size()];
        Arrays.fill(partner, -1);
        for (int i = 0; i < level.size(); i++) augment(level, upright, i, partner, new boolean[upright.size()]);
        boolean[] matched = new boolean[level.size()];
        for (int one : partner) if (one >= 0) matched[one] = true;
        boolean[] reachedLevel = new boolean[level.size()];
        boolean[] reachedUpright = new boolean[upright.size()];
        for (int i = 0; i < level.size(); i++) if (!matched[i]) reach(level, upright, i, partner, reachedLevel, reachedUpright);
        List<CutGrid.Segment> set = new ArrayList<>();
        for (int i = 0; i < level.size(); i++) if (reachedLevel[i]) set.add(level.get(i));
        for (int j = 0; j < upright.size(); j++) if (!reachedUpright[j]) set.add(upright.get(j));
        set.sort(Comparator.naturalOrder());
        return set;
    }

    private static boolean augment(List<CutGrid.Segment> level, List<CutGrid.Segment> upright, int i, int[] partner, boolean[] tried) {
        for (int j = 0; j < upright.size(); j++) {
            if (!tried[j] && level.get(i).meets(upright.get(j))) {
                tried[j] = true;
                if (partner[j] < 0 || augment(level, upright, partner[j], partner, tried)) {
                    partner[j] = i;
                    return true;
                }
            }
        }
        return false;
    }

    private static void reach(
            List<CutGrid.Segment> level,
            List<CutGrid.Segment> upright,
            int i,
            int[] partner,
            boolean[] reachedLevel,
            boolean[] reachedUpright) {
        if (reachedLevel[i]) return;
        reachedLevel[i] = true;
        for (int j = 0; j < upright.size(); j++) {
            if (!reachedUpright[j] && level.get(i).meets(upright.get(j))) {
                reachedUpright[j] = true;
                if (partner[j] >= 0) reach(level, upright, partner[j], partner, reachedLevel, reachedUpright);
            }
        }
    }
}
