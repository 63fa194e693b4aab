package lapyard.geometry;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** All ways to settle every inside corner with the fewest cuts. */
final class SplitSearch {
    private final CutGrid grid;
    private final List<Integer> corners;
    private final int chordsNeeded;
    private final Set<List<CutGrid.Segment>> seen = new HashSet<>();
    private final List<List<CutGrid.Segment>> found = new ArrayList<>();

    /** @param chordsNeeded size of the largest set of chords that do not meet */
    SplitSearch(CutGrid grid, int chordsNeeded) {
        this.grid = grid;
        this.corners = grid.insideCorners();
        this.chordsNeeded = chordsNeeded;
    }

    /**
     * Any cut may come before any other, since where two cross the earlier one runs through; equal sets of cuts are
     * looked at once.
     */
    List<List<CutGrid.Segment>> all() {
        extend(List.of(), 0, 0);
        found.sort((one, other) -> {
            for (int i = 0; i < one.size(); i++) {
                int order = one.get(i).compareTo(other.get(i));
                if (order != 0) {
                    return order;
                }
            }
            return 0;
        });
        return found;
    }

    private void extend(List<CutGrid.Segment> cuts, int settled, int chords) {
        int left = corners.size() - Integer.bitCount(settled);
        if (chords + left / 2 < chordsNeeded) {
            return;
        }
        if (left == 0) {
            found.add(cuts);
            return;
        }
        for (int i = 0; i < corners.size(); i++) {
            if ((settled & 1 << i) != 0) {
                continue;
            }
            for (boolean level : new boolean[] {true, false}) {
                CutGrid.Segment cut = grid.ray(corners.get(i), level, cuts);
                int now = settled;
                for (int j = 0; j < corners.size(); j++) {
                    if (grid.endsAt(cut, corners.get(j))) {
                        now |= 1 << j;
                    }
                }
                List<CutGrid.Segment> more = new ArrayList<>(cuts);
                more.add(cut);
                more.sort(Comparator.naturalOrder());
                if (seen.add(more)) {
                    extend(more, now, chords + Integer.bitCount(now) - Integer.bitCount(settled) - 1);
                }
            }
        }
    }
}
