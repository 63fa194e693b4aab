package lapyard.sheets;

import java.time.Duration;

/**
 * How long to search: the steps decide, so that the same problem gives the same layout; the clock only stops earlier.
 * A second is worth 100 000 steps, so an effort with steps without end is bounded by what its time is worth.
 */
public record Effort(long steps, Duration limit) {
    /** For a slip that follows each change of the garden. */
    public static final Effort QUICK = new Effort(3_000, Duration.ofSeconds(1));

    /** For a layout that is rolled out and cut. */
    public static final Effort FULL = new Effort(300_000, Duration.ofSeconds(10));
}
