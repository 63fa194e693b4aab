package lapyard.working;

import java.time.Duration;

/**
 * How long to search. The steps bound the search, so the same problem gives the same plan on any machine. The clock can only
 * stop it earlier, and does so only where somebody asked for a plan within seconds: every other effort is {@link #ofSteps}.
 * Each solver says what a step of its own is worth.
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

    /** Longer than any search; no clock is looked at. */
    private static final Duration NO_CLOCK = Duration.ofDays(36_500);

    /** Bounded by its steps alone: one plan, however busy the machine is. */
    public static Effort ofSteps(long steps, long patience) {
        return new Effort(steps, NO_CLOCK, patience);
    }

    /** As above, to the end of its steps. */
    public static Effort ofSteps(long steps) {
        return ofSteps(steps, steps);
    }

    /** Goes on to the end of its steps. */
    public Effort(long steps, Duration limit) {
        this(steps, limit, steps);
    }
}
