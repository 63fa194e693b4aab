package lapyard.sizes;

import java.time.Duration;

/**
 * How long to look. The counts decide, so that a garden has the same answers on every machine; the clock only ends a look
 * earlier.
 *
 * @param estimates sizes whose cost is estimated
 * @param closely   whether an estimate may take some five times as long where few sides give
 * @param wholes    sizes that are worked out whole
 * @param changes   most changes of one answer
 */
public record SizeLook(int estimates, boolean closely, int wholes, int changes, Duration limit) {
    /** Only a machine under heavy load takes so many times as long as a look is worth. */
    private static final int LIMIT = 8;

    public SizeLook {
        if (estimates < 1 || wholes < 1 || changes < 1 || limit.isNegative()) {
            throw new IllegalArgumentException("estimates, wholes and changes must be 1 or more, were " + estimates + ", " + wholes
                    + ", " + changes);
        }
    }

    /** As much as so many seconds are worth: 200 estimates and 3 whole gardens a second. */
    public static SizeLook ofSeconds(double seconds) {
        if (!(seconds > 0) || seconds > 600) {
            throw new IllegalArgumentException("look for 0.1 to 600 seconds, was " + seconds);
        }
        boolean closely = seconds >= 20;
        return new SizeLook((int) Math.max(200, 200 * seconds), closely, (int) Math.max(8, 3 * seconds), closely ? 6 : 4,
                Duration.ofMillis((long) (LIMIT * 1000 * seconds)));
    }
}
