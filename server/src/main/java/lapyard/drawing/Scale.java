package lapyard.drawing;

import java.util.List;
import lapyard.working.BrokenRule;

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

    private record Feet(int n, String words) {}

    /** Scales of drawings in feet and inches, common practice; each ratio is arithmetic: a foot is 12 inches. */
    private static final List<Feet> FEET = List.of(
            new Feet(1, "full size"),
            new Feet(2, "6 in = 1 ft"),
            new Feet(4, "3 in = 1 ft"),
            new Feet(8, "1 1/2 in = 1 ft"),
            new Feet(12, "1 in = 1 ft"),
            new Feet(16, "3/4 in = 1 ft"),
            new Feet(24, "1/2 in = 1 ft"),
            new Feet(32, "3/8 in = 1 ft"),
            new Feet(48, "1/4 in = 1 ft"),
            new Feet(64, "3/16 in = 1 ft"),
            new Feet(96, "1/8 in = 1 ft"),
            new Feet(120, "1 in = 10 ft"),
            new Feet(240, "1 in = 20 ft"),
            new Feet(480, "1 in = 40 ft"),
            new Feet(600, "1 in = 50 ft"),
            new Feet(1200, "1 in = 100 ft"));

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
        if (imperial) {
            for (Feet feet : FEET) {
                if (feet.n >= least) {
                    return new Scale(feet.n);
                }
            }
        }
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
        return new Scale(5 * (int) Math.max(1, Math.ceil(least / 5 - 1e-9)));
    }

    public double paperMm(double realMm) {
        return realMm / n;
    }

    public double realMm(double paperMm) {
        return paperMm * n;
    }

    /** As written in a title block: {@code 1:50}, or {@code 1/4 in = 1 ft (1:48)}. */
    public String label(boolean imperial) {
        String ratio = "1:" + n;
        if (!imperial) {
            return ratio;
        }
        return FEET.stream()
                .filter(feet -> feet.n == n)
                .map(feet -> feet.words + " (" + ratio + ")")
                .findFirst()
                .orElse(ratio);
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
