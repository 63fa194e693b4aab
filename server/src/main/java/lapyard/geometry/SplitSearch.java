package lapyard.geometry;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * All ways to settle every inside corner with the fewest cuts.
 *
 * <p>Corners are taken in order. Each gets a cut, level or upright, as far as it now goes; or it waits, because in the
 * end its cut will be stopped sooner by one that is still to come. A corner that waits for nothing is a dead end.
 */
final class SplitSearch {
    private final CutGrid grid;
    private final List<Integer> corners;
    private final int chordsNeeded;
    private final Set<List<CutGrid.Segment>> found = new TreeSet<>(SplitSearch::compare);

    /** @param chordsNeeded size of the largest set of chords that do not meet */
    SplitSearch(CutGrid grid, int chordsNeeded) {
        this.grid = grid;
        this.corners = grid.insideCorners();
        this.chordsNeeded = chordsNeeded;
    }

    /** Each as its cuts in order, the sets of cuts in order. */
    List<List<CutGrid.Segment>> all() {
        extend(new ArrayList<>(), 0, 0, 0);
        return List.copyOf(found);
    }

    private static int compare(List<CutGrid.Segment> one, List<CutGrid.Segment> other) {
        for (int i = 0; i < one.size(); i++) {
            int order = one.get(i).compareTo(other.get(i));
            if (order != 0) return order;
        }
        return 0;
    }

    /**
     * @param settled corners that a cut ends at, a bit each
     * @param waiting corners that wait for another cut
     * @param chords  cuts that settled two
     */
    private void extend(List<CutGrid.Segment> cuts, int settled, int waiting, int chords) {
        int left = corners.size() - Integer.bitCount(settled);
        if (chords + left / 2 < chordsNeeded) return;
        if (left == 0) {
            List<CutGrid.Segment> set = new ArrayList<>(cuts);
            Collections.sort(set);
            found.add(set);
            return;
        }
        int next = Integer.numberOfTrailingZeros(~(settled | waiting));
        if (next >= corners.size()) return;
        CutGrid.Segment level = grid.ray(corners.get(next), true, cuts);
        CutGrid.Segment upright = grid.ray(corners.get(next), false, cuts);
        place(level, cuts, settled, waiting, chords);
        place(upright, cuts, settled, waiting, chords);
        if (stoppable(level, upright, cuts, settled, next)) extend(cuts, settled, waiting | 1 << next, chords);
    }

    private void place(CutGrid.Segment cut, List<CutGrid.Segment> cuts, int settled, int waiting, int chords) {
        int now = settled;
        int stillWaiting = waiting;
        for (int i = 0; i < corners.size(); i++) {
            if (grid.endsAt(cut, corners.get(i))) {
                now |= 1 << i;
            } else if ((waiting & 1 << i) != 0 && cut.meets(grid.ray(corners.get(i), !cut.level(), cuts))) {
                stillWaiting &= ~(1 << i);
            }
        }
        cuts.add(cut);
        extend(cuts, now, stillWaiting & ~now, chords + Integer.bitCount(now) - Integer.bitCount(settled) - 1);
        cuts.remove(cuts.size() - 1);
    }

    /** Whether a cut of some other open corner could cross one of these two. */
    private boolean stoppable(CutGrid.Segment level, CutGrid.Segment upright, List<CutGrid.Segment> cuts, int settled, int own) {
        for (int i = 0; i < corners.size(); i++) {
            if (i != own
                    && (settled & 1 << i) == 0
                    && (level.meets(grid.ray(corners.get(i), false, cuts))
                            || upright.meets(grid.ray(corners.get(i), true, cuts)))) {
                return true;
            }
        }
        return false;
    }
}
