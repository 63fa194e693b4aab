package lapyard.diagrams;

import lapyard.drawing.Paper;

/**
 * Of which garden the sheets for the saw bench are and how they are to be drawn; they always lie on the long side.
 *
 * @param garden   its name, for the heading
 * @param imperial whether lengths are in feet and inches
 * @param mono     black on white, without fills
 */
public record BenchOptions(String garden, boolean imperial, Paper paper, boolean mono, Stamp stamp) {
    /** In colour on A4, or Letter for a garden in feet and inches. */
    public static BenchOptions usual(String garden, boolean imperial) {
        return new BenchOptions(garden, imperial, imperial ? Paper.LETTER : Paper.A4, false, Stamp.NONE);
    }

    public BenchOptions on(Paper other) {
        return new BenchOptions(garden, imperial, other, mono, stamp);
    }
}
