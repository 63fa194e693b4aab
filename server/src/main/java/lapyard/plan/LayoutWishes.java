package lapyard.plan;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * What a layout of the yard is asked for.
 *
 * @param beds     wanted beds; empty to lay out the garden's own beds anew
 * @param pinned   ids of beds that stay where they are
 * @param pathMm   width of paths, mm; 0 for the width in the access standard
 * @param marginMm width to keep free along the edge of the yard, mm
 * @param ranking  what counts, the most important first
 */
public record LayoutWishes(List<Wish> beds, Set<String> pinned, double pathMm, double marginMm, List<Merit> ranking) {
    /** What proposals can be ranked by. */
    public enum Merit {
        BEDS,
        AREA,
        SUN,
        PATHS,
        BARROW,
        HOSE,
        COST;

        public static Optional<Merit> of(String word) {
            return Arrays.stream(values()).filter(each -> each.word().equals(word)).findFirst();
        }

        /** As documents name it. */
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    public static final LayoutWishes NONE = new LayoutWishes(List.of(), Set.of(), 0, 0, List.of(Merit.BEDS, Merit.AREA, Merit.SUN, Merit.COST));

    public LayoutWishes {
        beds = List.copyOf(beds);
        pinned = Set.copyOf(pinned);
        ranking = List.copyOf(ranking);
    }
}
