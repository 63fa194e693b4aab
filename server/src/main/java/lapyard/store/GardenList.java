package lapyard.store;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * One page of the gardens, by name.
 *
 * @param total how many there are on all pages
 * @param next  what to ask for to get the page after this one; empty on the last
 */
public record GardenList(List<Row> rows, long total, Optional<String> next) {
    public GardenList {
        rows = List.copyOf(rows);
    }

    public record Row(String id, String name, long revision, Instant changed) {}
}
