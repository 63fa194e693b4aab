package lapyard.json;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import lapyard.working.Look;

/**
 * What of a job sheet is asked for.
 *
 * @param parts names of its parts; none for all
 * @param bed   the only one of {@code beds}; empty for all
 * @param look  how much is looked for before it is answered
 */
public record SheetAsk(Set<String> parts, Optional<String> bed, Look look) {
    public static final SheetAsk WHOLE = new SheetAsk(Set.of(), Optional.empty(), Look.WHOLE);

    /** What the yard shows of the beds and how good the plans are, without all that is known of them: no parts of the whole. */
    private static final Set<String> IN_SHORT = Set.of("yard", "searches");

    /** @throws IllegalArgumentException for a name of no part, with those that there are */
    public SheetAsk {
        parts = new TreeSet<>(parts);
        for (String part : parts) {
            if (!JobSheetJson.names().contains(part))
                throw new IllegalArgumentException("the whole job sheet has no part " + part + ": its parts are " + String.join(", ", JobSheetJson.names()));
        }
    }

    public static SheetAsk of(List<String> parts, Optional<String> bed) {
        return new SheetAsk(Set.copyOf(parts), bed, Look.WHOLE);
    }

    /** The same parts after more or less looking. */
    public SheetAsk at(Look other) {
        return new SheetAsk(parts, bed, other);
    }

    /** The caution goes with the findings that it belongs to; that it is a first look is always told. */
    boolean has(String part) {
        return part.equals("look") || (parts.isEmpty() ? !IN_SHORT.contains(part) : parts.contains(part.equals("caution") ? "snags" : part));
    }

    boolean hasBed(String id) {
        return bed.isEmpty() || bed.get().equals(id);
    }

    /** The same for all that ask for the same parts. */
    public String key() {
        return String.join(" ", Stream.concat(parts.stream(), bed.stream().map(id -> "bed " + id)).toList());
    }
}
