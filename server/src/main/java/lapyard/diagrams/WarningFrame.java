package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import lapyard.drawing.Shape;
import lapyard.drawing.Tag;
import lapyard.drawing.TextMeasure;
import lapyard.geometry.Point;

/** What may hurt somebody, framed and in bold beside the work that it concerns. */
record WarningFrame(BenchSheet sheet, List<String> lines) {
    private static final double SIZE = 3.8;
    private static final double PITCH = SIZE * 1.3;
    private static final double PAD = 2.2;
    /** Room for the sign. */
    private static final double SIGN = 11;

    /** @param sentences as findings have them; none for no frame at all */
    static WarningFrame of(BenchSheet sheet, List<String> sentences) {
        double wide = sheet.space().width() - SIGN - 2 * PAD;
        return new WarningFrame(sheet, sentences.stream().flatMap(words -> TextMeasure.wrap(words, SIZE, true, wide).stream()).toList());
    }

    /** With the gap below it; 0 where there is nothing to warn of. */
    double heightMm() {
        return lines.isEmpty() ? 0 : frameMm() + 3;
    }

    private double frameMm() {
        return Math.max(SIGN, lines.size() * PITCH + 2 * PAD);
    }

    List<Shape> at(double x, double y) {
        if (lines.isEmpty()) return List.of();
        List<Shape> shapes = new ArrayList<>();
        Box frame = new Box(x, y, x + sheet.space().width(), y + frameMm());
        shapes.add(Inks.plain(sheet.inks.paper()).area(frame, sheet.inks.pen(Inks.BROAD)));
        Point middle = new Point(x + SIGN / 2, frame.centre().y());
        shapes.add(Shape.Area.filled(List.of(middle.plus(-3.6, 3), middle.plus(3.6, 3), middle.plus(0, -3.4)),
                sheet.inks.snag()));
        shapes.add(Inks.middle(middle.plus(0, 2.2), "!", 4.4, sheet.inks.paper()));
        shapes.addAll(sheet.inks.lines(x + SIGN, y + (frameMm() - lines.size() * PITCH) / 2 + SIZE, PITCH, lines, SIZE, true, Tag.paragraph()));
        return List.of(new Shape.Group("warning", "Warning", "warning", shapes));
    }

    /** Above what comes next, on the same sheet. */
    void on(Flow flow) {
        if (!lines.isEmpty()) flow.block(new Flow.Block(heightMm(), true, this::at));
    }
}
