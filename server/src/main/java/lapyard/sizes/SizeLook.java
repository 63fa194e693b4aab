package lapyard.sizes;

import java.util.ArrayList;
import java.util.List;
import lapyard.working.BrokenRule;

/**
 * How long to look, in counts alone, so that a garden has the same answers on every machine, however busy.
 *
 * @param estimates sizes whose cost is estimated
 * @param closely   whether an estimate may take some five times as long where few sides give
 * @param wholes    sizes that are worked out whole
 * @param changes   most changes of one answer
 */
public record SizeLook(int estimates, boolean closely, int wholes, int changes) {
    /** Gardens of more beds take longer for each count, so that a second is worth fewer. */
    private static final double BEDS = 8;

    private static final int LEAST_ESTIMATES = 200;
    private static final int LEAST_WHOLES = 8;

    public SizeLook {
        if (estimates < 1 || wholes < 1 || changes < 1) {
            throw new IllegalArgumentException("estimates, wholes and changes must be 1 or more, were " + estimates + ", " + wholes
                    + ", " + changes);
        }
    }

    /** So much is looked for first, in a longer look too. */
    private static final double FIRST_SECONDS = 5;

    private static final double CLOSELY_SECONDS = 20;

    /**
     * Looks one after the other that are worth so many seconds together, 200 estimates and 3 whole gardens a second, of more than 8 beds as
     * many fewer. They are worth 5 s, 10 s, 20 s, 40 s and so on by their ends, so that what takes twice as long begins with all that the
     * shorter would do.
     */
    public static List<SizeLook> ofSeconds(double seconds, int beds) {
        BrokenRule.between("look", "seconds", seconds, 0.001, 600, "s");
        List<SizeLook> looks = new ArrayList<>();
        double before = 0;
        for (double until = FIRST_SECONDS; before < seconds; until *= 2) {
            double end = Math.min(until, seconds);
            looks.add(worth(end - before, end >= CLOSELY_SECONDS, beds));
            before = end;
        }
        return looks;
    }

    private static SizeLook worth(double seconds, boolean closely, int beds) {
        double worth = seconds * Math.min(1, BEDS / Math.max(1, beds));
        return new SizeLook((int) Math.max(LEAST_ESTIMATES, 200 * worth), closely, (int) Math.max(LEAST_WHOLES, 3 * worth), closely ? 6 : 4);
    }

    /** For the growths that cost nothing, besides what is spent on savings: half as many. */
    SizeLook forGrowth() {
        return new SizeLook((estimates + 1) / 2, closely, (wholes + 1) / 2, 1);
    }
}
