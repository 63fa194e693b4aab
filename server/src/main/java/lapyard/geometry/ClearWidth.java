package lapyard.geometry;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.IntUnaryOperator;

/** A clear width inside walls, which may be below 0, between two sides near a place. */
record ClearWidth(double widthMm, int side, int other, Point at) {
    /**
     * The narrowest, where it falls short of {@code leastMm}.
     *
     * @param drawn number of a side in the outline as it was drawn
     */
    static Optional<OutlineFault> narrowest(List<ClearWidth> widths, double leastMm, IntUnaryOperator drawn) {
        return widths.stream()
                .filter(width -> width.widthMm < leastMm - 1e-6)
                .min(Comparator.comparingDouble(ClearWidth::widthMm).thenComparingInt(ClearWidth::side).thenComparingInt(ClearWidth::other))
                .map(width -> {
                    int one = drawn.applyAsInt(width.side);
                    int other = drawn.applyAsInt(width.other);
                    List<Integer> sides = List.of(Math.min(one, other), Math.max(one, other));
                    List<Integer> corners = sides.stream().map(side -> side + 1).toList();
                    return new OutlineFault(OutlineFault.Kind.INSIDE_NARROW, corners, sides, leastMm - width.widthMm, "mm", width.at);
                });
    }
}
