package lapyard.stages;

import java.time.Duration;

/**
 * How long to search. The steps bound the search, so the same problem gives the same schedule on any machine; the clock
 * only stops it earlier. A step is 1000 turns of the inner loop, a few microseconds of one core.
 *
 * @param patience steps to go on without a better schedule
 */
public record Effort(long steps, Duration limit, long patience) {
    /** For a schedule that follows each change of the garden. */
    public static final Effort QUICK = new Effort(2_000, Duration.ofSeconds(2), 1_000);

    /** For a schedule that people come by. */
    public static final Effort FULL = new Effort(400_000, Duration.ofSeconds(10), 100_000);

    public Effort {
        if (steps < 1 || patience < 1 || limit.isNegative()) {
            throw new IllegalArgumentException(
                    "steps and patience must be 1 or more and the limit not negative, were " + steps + ", " + patience
                            + ", " + limit);
        }
    }

    /** Goes on to the end of its steps. */
    public Effort(long steps, Duration limit) {
        this(steps, limit, steps);
    }
}
