package lapyard.plan;

import java.util.List;
import java.util.Set;

/**
 * What a yard is laid out for.
 *
 * @param beds     wanted; none for the garden's own beds, laid out anew
 * @param pinned   ids of beds that stay where they are
 * @param pathMm   width of paths; 0 for what the access standard asks for
 * @param marginMm kept free along the edge of the yard
 * @param ranking  what counts most, first things first, words of {@link #COUNTS}
 */
public record Wishes(List<Wish> beds, Set<String> pinned, double pathMm, double marginMm, List<String> ranking) {
    /** What proposals can be ranked by. */
    public static final List<String> COUNTS = List.of("beds", "area", "sun", "paths", "barrow", "hose", "cost");

    public static final Wishes NONE = new Wishes(List.of(), Set.of(), 0, 0, List.of("beds", "area", "sun", "cost"));

    public Wishes {
        beds = List.copyOf(beds);
        pinned = Set.copyOf(pinned);
        ranking = List.copyOf(ranking);
    }
}
