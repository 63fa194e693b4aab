package lapyard.working;

import java.time.Duration;

/**
 * How long to search. The steps bound the search, so the same problem gives the same plan on any machine; the clock only
 * stops it earlier. Each solver says what a step of its own is worth.
 *
 * @param patience steps to go on without a better plan or a better bound once a first plan stands
 */
public record Effort(long steps, Duration limit, long patience) {
    public Effort {
        if (steps < 1 || patience < 1 || limit.isNegative()) {
            throw new IllegalArgumentException("steps and patience must be 1 or more and the limit not negative, were "
                    + steps + ", " + patience + ", " + limit);
        }
    }

    /** Goes on to the end of its steps. */
    public Effort(long steps, Duration limit) {
        this(steps, limit, steps);
    }
}
