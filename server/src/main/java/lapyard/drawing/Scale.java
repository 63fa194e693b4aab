package lapyard.drawing;

import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import lapyard.working.BrokenRule;
import lapyard.working.Whole;

/**
 * A reduction 1:n.
 *
 * @param n what stands for 1 on paper, 1 to 100 million
 */
public record Scale(int n) implements Comparable<Scale> {
    public static final int GREATEST = 100_000_000;

    public Scale {
        BrokenRule.between("scale", "scale", n, 1, GREATEST, "");
    }

    /** Scales of drawings in feet and inches, common practice; each ratio is arithmetic: a foot is 12 inches. */
    private static final NavigableMap<Integer, String> FEET = new TreeMap<>(Map.ofEntries(
            Map.entry(1, "full size"),
            Map.entry(2, "6 in = 1 ft"),
            Map.entry(4, "3 in = 1 ft"),
            Map.entry(8, "1 1/2 in = 1 ft"),
            Map.entry(12, "1 in = 1 ft"),
            Map.entry(16, "3/4 in = 1 ft"),
            Map.entry(24, "1/2 in = 1 ft"),
            Map.entry(32, "3/8 in = 1 ft"),
            Map.entry(48, "1/4 in = 1 ft"),
            Map.entry(64, "3/16 in = 1 ft"),
            Map.entry(96, "1/8 in = 1 ft"),
            Map.entry(120, "1 in = 10 ft"),
            Map.entry(240, "1 in = 20 ft"),
            Map.entry(480, "1 in = 40 ft"),
            Map.entry(600, "1 in = 50 ft"),
            Map.entry(1200, "1 in = 100 ft")));

    /**
     * Reductions within ten: ISO 5455:1979 recommends 1, 2, 5 and their tens; it leaves intermediate scales open, and scale rules
     * have 1:25, 1:75 and 1:125 as well (common practice, no source).
     */
    private static final double[] STEPS = {1, 1.25, 2, 2.5, 5, 7.5};

    /** Below it a sheet shows parts, and no rule has scales in between. */
    private static final double LEAST_BETWEEN = 20;

    /**
     * The largest usual scale not larger than 1:{@code least}: of those on scale rules, or of the scales in feet and inches
     * while those last.
     */
    public static Scale usual(double least, boolean imperial) {
        if (imperial && least <= FEET.lastKey()) return new Scale(FEET.ceilingKey((int) Math.ceil(least)));
        for (long ten = 1; ten <= GREATEST; ten *= 10) {
            for (double step : STEPS) {
                double n = step * ten;
                boolean between = step != 1 && step != 2 && step != 5;
                if (n >= least && n <= GREATEST && (!between || n >= LEAST_BETWEEN)) {
                    return new Scale((int) n);
                }
            }
        }
        throw new IllegalArgumentException("nothing that large can be drawn: 1:" + Math.round(least) + " would be needed");
    }

    /** Of what nobody measures from the sheet, as all is written beside it: the largest of 1:5, 1:10, 1:15 and so on. */
    public static Scale ofFives(double least) {
        return new Scale(5 * (int) Math.max(1, Whole.up(least / 5)));
    }

    public double paperMm(double realMm) {
        return realMm / n;
    }

    public double realMm(double paperMm) {
        return paperMm * n;
    }

    /** As written in a title block: {@code 1:50}, or {@code 1/4 in = 1 ft (1:48)}. */
    public String label(boolean imperial) {
        return imperial && FEET.containsKey(n) ? FEET.get(n) + " (" + this + ")" : toString();
    }

    @Override
    public int compareTo(Scale other) {
        return Integer.compare(n, other.n);
    }

    @Override
    public String toString() {
        return "1:" + n;
    }
}
