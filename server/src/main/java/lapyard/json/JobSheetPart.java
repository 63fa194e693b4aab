package lapyard.json;

import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Parts of a job sheet that are asked for by themselves. Some stand in the whole, the others are worked out only where they are
 * asked for. {@link #TAKE_OFF} is beds and paths, {@link #ORDER} slip and snags.
 */
public enum JobSheetPart {
    TAKE_OFF,
    CUTTING,
    ROLLS,
    SLIP,
    SNAGS,
    ORDER,
    TALLY,
    GROUND,
    PEGS,
    SUN,
    WEEKENDS,
    ADVICE,
    LOADS,
    OFFERS,
    PAYMENTS,
    QUOTE;

    /** As it is written in addresses: {@code take-off}. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** @throws IllegalArgumentException for a name of no part, with those that there are */
    public static JobSheetPart of(String code) {
        return Stream.of(values()).filter(part -> part.code().equals(code)).findFirst().orElseThrow(() -> new IllegalArgumentException(
                "the job sheet has no part " + code + ": parts are " + Stream.of(values()).map(JobSheetPart::code).collect(Collectors.joining(", "))));
    }
}
