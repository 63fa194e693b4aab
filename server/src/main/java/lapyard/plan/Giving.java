package lapyard.plan;

import java.util.List;
import java.util.Map;

/**
 * Which beds of a garden may give, and what must stay alike. Beds of a type always do.
 *
 * @param byBed  by the bed's id; beds that are not in it stay as they are
 * @param alike  ids of beds that change by the same amounts, list by list
 * @param inLine whether outer walls of two beds that lie in one line must stay so
 * @param equalGaps whether equal gaps between neighbours of a row must stay equal
 */
public record Giving(Map<String, Give> byBed, List<List<String>> alike, boolean inLine, boolean equalGaps) {
    public static final Giving NONE = new Giving(Map.of(), List.of(), true, true);

    public Giving {
        byBed = Map.copyOf(byBed);
        alike = alike.stream().map(List::copyOf).toList();
    }
}
