package lapyard.diagrams;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import lapyard.sheets.RollResult.Placed;
import lapyard.sheets.RollResult.RollLayout;

/**
 * The order in which a laid-out roll is cut by straight cuts, each from edge to edge of what is then in hand. Parts come
 * off the roll's end one after the other, and each is cut up before the next is rolled out.
 *
 * @param cuts     in order
 * @param remnants what is left over, the largest first
 */
record RollCuts(List<Cut> cuts, List<Box> remnants) {
    /** Lengths that differ by less are the same place, mm. */
    private static final double SAME = 1e-3;

    /**
     * @param across whether it runs across the roll at a running distance; else along it
     * @param atMm   running distance from the roll's end, or distance from the roll's edge
     * @param fromMm where it begins: for a cut across, from the roll's edge; for one along, from the roll's end
     */
    record Cut(boolean across, double atMm, double fromMm, double toMm) {}

    /** Boxes have left and right across the roll, low and high along it. */
    static Optional<RollCuts> of(RollLayout layout, double widthMm) {
        List<Cut> cuts = new ArrayList<>();
        List<Box> remnants = new ArrayList<>();
        Box whole = new Box(0, 0, widthMm, layout.boughtMm());
        if (!cut(whole, layout.placed(), true, cuts, remnants)) {
            return Optional.empty();
        }
        remnants.sort(Comparator.comparingDouble((Box box) -> -box.width() * box.height())
                .thenComparingDouble(Box::low)
                .thenComparingDouble(Box::left));
        return Optional.of(new RollCuts(cuts, remnants));
    }

    /** @return false where the pieces cannot be parted by straight cuts */
    private static boolean cut(Box part, List<Placed> pieces, boolean acrossFirst, List<Cut> cuts, List<Box> remnants) {
        if (pieces.isEmpty()) {
            remnants.add(part);
            return true;
        }
        if (pieces.size() == 1 && fills(pieces.get(0), part)) {
            return true;
        }
        for (boolean across : new boolean[] {acrossFirst, !acrossFirst}) {
            Optional<Double> place = place(part, pieces, across);
            if (place.isPresent()) {
                double at = place.get();
                cuts.add(across ? new Cut(true, at, part.left(), part.right()) : new Cut(false, at, part.low(), part.high()));
                Box near = across ? new Box(part.left(), part.low(), part.right(), at) : new Box(part.left(), part.low(), at, part.high());
                Box far = across ? new Box(part.left(), at, part.right(), part.high()) : new Box(at, part.low(), part.right(), part.high());
                List<Placed> before = pieces.stream().filter(piece -> end(piece, across) <= at + SAME).toList();
                List<Placed> after = pieces.stream().filter(piece -> end(piece, across) > at + SAME).toList();
                return cut(near, before, !across, cuts, remnants) && cut(far, after, across, cuts, remnants);
            }
        }
        return false;
    }

    /** The nearest place where a cut crosses no piece. */
    private static Optional<Double> place(Box part, List<Placed> pieces, boolean across) {
        double low = across ? part.low() : part.left();
        double high = across ? part.high() : part.right();
        return pieces.stream().flatMap(piece -> Stream.of(start(piece, across), end(piece, across)))
                .sorted()
                .filter(at -> at > low + SAME && at < high - SAME)
                .filter(at -> pieces.stream().noneMatch(piece -> start(piece, across) < at - SAME && end(piece, across) > at + SAME))
                .findFirst();
    }

    private static double start(Placed piece, boolean across) {
        return across ? piece.y() : piece.x();
    }

    private static double end(Placed piece, boolean across) {
        return across ? piece.y() + piece.heightMm() : piece.x() + piece.widthMm();
    }

    private static boolean fills(Placed piece, Box part) {
        return Math.abs(piece.x() - part.left()) <= SAME
                && Math.abs(piece.y() - part.low()) <= SAME
                && Math.abs(end(piece, false) - part.right()) <= SAME
                && Math.abs(end(piece, true) - part.high()) <= SAME;
    }
}
