package lapyard.order;

import java.util.List;

/**
 * One line of the order before it is known who brings it.
 *
 * @param ways in which it can be bought, at least one; each covers the whole need
 */
public record Wanted(List<SlipLine> ways) {
    public Wanted {
        ways = List.copyOf(ways);
        if (ways.isEmpty()) throw new IllegalArgumentException("a line of an order needs one way to buy it");
    }

    /** The same where nobody asks what it costs bed by bed. */
    public Wanted withoutApart() {
        return new Wanted(ways.stream().map(SlipLine::withoutApart).toList());
    }

    /** Nothing to choose. */
    public static Wanted only(SlipLine line) {
        return new Wanted(List.of(line));
    }
}
