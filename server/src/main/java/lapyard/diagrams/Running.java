package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import lapyard.drawing.Shape;
import lapyard.drawing.TextMeasure;

/**
 * A place along a board written beside it; those that would touch stand on further lines.
 *
 * @param x     where the place is on the sheet
 * @param from  where its words begin
 * @param level the line, 0 next to the board
 */
record Running(String words, double x, double from, int level) {
    static final int LEVELS = 3;

    /** Of the words, as bars and rolls have them. */
    static final double SIZE = 3.2;

    /** From one line of words to the next. */
    static final double LEVEL = 3.6;

    /**
     * @param placesMm along the board, first one first
     * @param onSheet  from a place to its x
     * @param leftmost where words may begin
     */
    static List<Running> of(BenchSheet sheet, List<Double> placesMm, DoubleUnaryOperator onSheet, double size, double leftmost) {
        double[] free = new double[LEVELS];
        List<Running> written = new ArrayList<>();
        for (double place : placesMm) {
            double x = onSheet.applyAsDouble(place);
            String words = sheet.written(place);
            double width = TextMeasure.widthMm(words, size, true);
            double from = Math.min(Math.max(x - width / 2, leftmost), sheet.space().right() - width);
            int level = 0;
            while (level < LEVELS - 1 && from < free[level] + 1) {
                level++;
            }
            free[level] = from + width;
            written.add(new Running(words, x, from, level));
        }
        return written;
    }

    /** Above a board's upper edge, with a line from the words down to a place. */
    List<Shape> above(BenchSheet sheet, double top, double to, double pen) {
        double y = top - 1.8 - level * LEVEL;
        return List.of(sheet.line(x, y + 0.5, x, to, pen), sheet.text(from, y, words, SIZE, true));
    }
}
