package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * Numbers beside a line, each at its mark or as near after it as there is room, and none beyond the sheet. Where there are more than have
 * room, those nearest to their neighbours are left to the tables; the first and the last stay.
 *
 * @param marks  that are written, in their order
 * @param beside where each is written, in millimetres of the sheet along the line
 */
record Spread(List<Double> marks, List<Double> beside) {
    /** From number to number. */
    static final double PITCH = 4.2;

    /**
     * @param all     in their order
     * @param onSheet from a mark to its place along the line
     * @param before  room on the sheet before the line's beginning, mm
     * @param after   room on the sheet after it
     */
    static Spread of(List<Double> all, DoubleUnaryOperator onSheet, double before, double after) {
        List<Double> marks = new ArrayList<>(all);
        int most = Math.max(2, (int) Math.floor((before + after) / PITCH) + 1);
        while (marks.size() > most) marks.remove(closest(marks));
        List<Double> beside = new ArrayList<>();
        double next = -before;
        for (double mark : marks) {
            beside.add(Math.max(onSheet.applyAsDouble(mark), next));
            next = beside.get(beside.size() - 1) + PITCH;
        }
        double least = after;
        for (int i = beside.size() - 1; i >= 0; i--) {
            beside.set(i, Math.min(beside.get(i), least));
            least = beside.get(i) - PITCH;
        }
        return new Spread(marks, beside);
    }

    /** Of those between the first and the last. */
    private static int closest(List<Double> marks) {
        int closest = 1;
        for (int i = 2; i < marks.size() - 1; i++) if (gap(marks, i) < gap(marks, closest)) closest = i;
        return closest;
    }

    private static double gap(List<Double> marks, int i) {
        return Math.min(marks.get(i) - marks.get(i - 1), marks.get(i + 1) - marks.get(i));
    }
}
