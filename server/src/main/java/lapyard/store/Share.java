package lapyard.store;

import java.time.Instant;
import java.util.Optional;

/**
 * Leave to read one garden.
 *
 * @param label says who has it
 * @param ends  from then on it is as if it had been taken back; empty where it lasts until it is
 */
public record Share(String id, String garden, String label, Instant made, Optional<Instant> ends) {
    boolean standsAt(Instant now) {
        return ends.isEmpty() || now.isBefore(ends.get());
    }
}
