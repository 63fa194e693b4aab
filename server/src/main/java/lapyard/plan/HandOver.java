package lapyard.plan;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What is handed over with the garden.
 *
 * @param finishYears years from the last coat to the next, as the tin says; empty where it is not stated
 * @param tenders     who tends a bed, by its id
 * @param snags       what was found wrong on the walk round
 */
public record HandOver(OptionalInt finishYears, Map<String, String> tenders, List<Snag> snags) {
    public static final HandOver NONE = new HandOver(OptionalInt.empty(), Map.of(), List.of());

    public HandOver {
        tenders = Map.copyOf(tenders);
        snags = List.copyOf(snags);
    }

    /**
     * @param bed    its id; empty for what is at none
     * @param mended empty while it is open
     * @param photos ids of pictures kept with the garden
     */
    public record Snag(String bed, String text, Optional<LocalDate> found, Optional<LocalDate> mended, List<String> photos) {
        public Snag {
            photos = List.copyOf(photos);
        }
    }
}
