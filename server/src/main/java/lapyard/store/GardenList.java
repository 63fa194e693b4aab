package lapyard.store;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import lapyard.plan.GardenState;

/**
 * One page of the gardens.
 *
 * @param total how many there are on all pages
 * @param next  what to ask for to get the page after this one; empty on the last
 */
public record GardenList(List<Row> rows, long total, Optional<String> next) {
    public GardenList {
        rows = List.copyOf(rows);
    }

    /** @param client first line of whom the quote is for; empty where nobody is named */
    public record Row(String id, String name, String client, GardenState state, long revision, Instant changed) {}

    /** Which gardens are meant. */
    public enum Place {
        STANDING,
        /** Put away by hand. */
        ARCHIVED,
        DELETED
    }

    /** How the pages are ordered: by name, latest change first, by client with those of nobody last, by state. Then by name. */
    public enum Order {
        NAME("sort_key, id"),
        CHANGED("changed, id"),
        CLIENT("client_key, sort_key, id"),
        STATE("state, sort_key, id");

        final String columns;

        Order(String columns) {
            this.columns = columns;
        }
    }

    /**
     * What is asked for.
     *
     * @param limit rows on the page, 1 or more
     * @param after the {@code next} of the page before; in any order but by change an id does too: the page starts behind that garden
     * @param state only gardens of this state
     * @param words each stands in the name or in the client, in capitals or not
     */
    public record Ask(int limit, Optional<String> after, Place place, Optional<GardenState> state, List<String> words, Order order) {
        private static final int MOST_WORDS = 10;
        private static final String TIME_AND_ID = "[0-9]{1,18}-[a-z0-9-]+";

        public Ask {
            if (limit < 1) throw new IllegalArgumentException("a page has 1 row or more, was " + limit);
            if (order == Order.CHANGED && after.isPresent() && !after.get().matches(TIME_AND_ID))
                throw new IllegalArgumentException("after does not end a page in this order: take next from the page before");
            if (words.size() > MOST_WORDS) throw new IllegalArgumentException("at most " + MOST_WORDS + " words are looked for, were " + words.size());
            words = List.copyOf(words);
        }
    }
}
