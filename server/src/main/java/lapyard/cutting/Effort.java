package lapyard.cutting;

import java.time.Duration;

/**
 * How long to search. The steps bound the search, so the same problem gives the same plan on any machine;
 * the clock only stops it earlier. A step is about a microsecond of one core.
 *
 * @param patience steps to go on without a better plan or a better bound once a first plan stands
 */
public record Effort(long steps, Duration limit, long patience) {
    /** For a slip that follows each change of the garden. */
    public static final Effort QUICK = new Effort(450_000, Duration.ofSeconds(2), 6_000);

    /** For a plan that is taken to the saw. */
    public static final Effort FULL = new Effort(20_000_000, Duration.ofSeconds(10));

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
