package lapyard.sheets;

import java.time.Duration;

/** How long to search: the steps decide, so that the same problem gives the same layout; the clock only stops earlier. */
public record Effort(long steps, Duration limit) {
    public static final Effort QUICK = new Effort(2_000, Duration.ofSeconds(1));
    public static final Effort FULL = new Effort(200_000, Duration.ofSeconds(5));
}
