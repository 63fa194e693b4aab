package lapyard.plan;

import java.util.List;
import java.util.Set;

/**
 * What a layout of the yard is asked for.
 *
 * @param beds     wanted beds; empty to lay out the garden's own beds anew
 * @param pinned   ids of beds that stay where they are
 * @param pathMm   width of paths, mm; 0 for the width in the access standard
 * @param marginMm width to keep free along the edge of the yard, mm
 * @param ranking  what counts, the most important first, in words of {@link #COUNTS}
 */
public record LayoutWishes(List<Wish> beds, Set<String> pinned, double pathMm, double marginMm, List<String> ranking) {
    /** What proposals can be ranked by. */
    public static final List<String> COUNTS = List.of("beds", "area", "sun", "paths", "barrow", "hose", "cost");

    public static final LayoutWishes NONE = new LayoutWishes(List.of(), Set.of(), 0, 0, List.of("beds", "area", "sun", "cost"));

    public LayoutWishes {
        beds = List.copyOf(beds);
        pinned = Set.copyOf(pinned);
        ranking = List.copyOf(ranking);
    }
}
