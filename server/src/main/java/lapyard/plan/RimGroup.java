package lapyard.plan;

import java.util.List;
import java.util.OptionalDouble;

/**
 * Beds whose rims shall be level with each other.
 *
 * @param levelMm of the rims below the level string; empty for that of the highest rim as it stands
 */
public record RimGroup(List<String> beds, OptionalDouble levelMm) {
    public RimGroup {
        beds = List.copyOf(beds);
    }
}
