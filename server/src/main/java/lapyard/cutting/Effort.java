package lapyard.cutting;

import java.time.Duration;

/**
 * How long to search. The steps bound the search, so the same problem gives the same plan on any machine;
 * the clock only stops it earlier.
 */
public record Effort(long steps, Duration limit) {
    /** For a slip that follows each change of the garden. */
    public static final Effort QUICK = new Effort(200_000, Duration.ofSeconds(2));

    /** For a plan that is taken to the saw. */
    public static final Effort FULL = new Effort(20_000_000, Duration.ofSeconds(10));
}
