package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.drawing.Scale;
import lapyard.drawing.Shape;
import lapyard.drawing.Stroke;
import lapyard.geometry.Point;
import lapyard.working.Whole;

/**
 * The part of a plan that lies on one of several sheets. Neighbouring sheets show a strip twice; the match line runs
 * along its middle, and where two prints are cut and joined on it the drawing goes on.
 *
 * @param column from the left, from 0
 * @param row    from the back, from 0
 * @param field  of the sheet for the drawing
 */
record PlanTile(int column, int row, int columns, int rows, Box field, View view) {
    /** Shown on both sheets, on paper. */
    static final double STRIP = 12;

    /** From the edge of the field to what lies only on this sheet. */
    private static final double RIM = 9;

    private static final double TEXT = 2.4;

    /** All sheets, row after row from the back of the yard; one where all fits. */
    static List<PlanTile> all(Box real, Scale scale, boolean turned, Box field) {
        Box extent = turned ? Box.round(real.corners().stream().map(at -> View.level(at, true)).toList()) : real;
        double wide = field.width() - 2 * RIM;
        double high = field.height() - 2 * RIM;
        double paperWide = scale.paperMm(extent.width());
        double paperHigh = scale.paperMm(extent.height());
        int columns = count(paperWide, wide);
        int rows = count(paperHigh, high);
        // the drawing lies in the middle of all sheets together
        double left = (wide + (columns - 1) * (wide - STRIP) - paperWide) / 2;
        double top = (high + (rows - 1) * (high - STRIP) - paperHigh) / 2;
        List<PlanTile> tiles = new ArrayList<>();
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                double x = field.left() + RIM + left - column * (wide - STRIP);
                double y = field.low() + RIM + top - row * (high - STRIP);
                Point origin = new Point(x - scale.paperMm(extent.left()), y + scale.paperMm(extent.high()));
                tiles.add(new PlanTile(column, row, columns, rows, field, new View(scale, origin, turned)));
            }
        }
        return tiles;
    }

    private static int count(double paper, double room) {
        return Math.max(1, (int) Whole.up((paper - STRIP) / (room - STRIP)));
    }

    int number() {
        return row * columns + column + 1;
    }

    int of() {
        return rows * columns;
    }

    /** What is seen of the drawing: up to the far side of each strip. */
    Box seen() {
        return without(RIM);
    }

    /** What this sheet alone answers for: up to its match lines. */
    Box own() {
        return without(RIM + STRIP / 2);
    }

    /** The field, less by so much where the drawing goes on beyond it. */
    private Box without(double in) {
        return new Box(
                column > 0 ? field.left() + in : field.left(), row > 0 ? field.low() + in : field.low(),
                column < columns - 1 ? field.right() - in : field.right(), row < rows - 1 ? field.high() - in : field.high());
    }

    /** The match lines with the number of the sheet beyond each; they take their room. */
    Optional<Shape> matchLines(Inks inks, Labels labels) {
        List<Point> own = own().corners();
        List<Shape> shapes = new ArrayList<>();
        if (column > 0) shapes.addAll(match(own.get(0), own.get(3), number() - 1, -1, inks, labels));
        if (column < columns - 1) shapes.addAll(match(own.get(1), own.get(2), number() + 1, 1, inks, labels));
        if (row > 0) shapes.addAll(match(own.get(0), own.get(1), number() - columns, -1, inks, labels));
        if (row < rows - 1) shapes.addAll(match(own.get(3), own.get(2), number() + columns, 1, inks, labels));
        return shapes.isEmpty() ? Optional.empty() : Optional.of(new Shape.Group("match-lines", "Match lines", "match", shapes));
    }

    /** @param side of the line on which its words stand: -1 left of it or above, 1 right of it or below */
    private static List<Shape> match(Point from, Point to, int beyond, int side, Inks inks, Labels labels) {
        labels.take(Labels.line(from, to));
        Words words = Words.of("match line, sheet " + beyond + " goes on here", TEXT, true);
        boolean upright = from.x() == to.x();
        double off = side * (words.heightMm() / 2 + 0.8);
        Plate plate = words.at(from.middle(to).plus(upright ? off : 0, upright ? 0 : off), upright ? 90 : 0);
        labels.take(plate.corners());
        List<Shape> shapes = new ArrayList<>(List.of(Shape.Lines.of(Stroke.of(inks.ink(), Inks.OUTLINE).dashed(8, 1.5), from, to)));
        shapes.addAll(words.on(plate, inks));
        return shapes;
    }

    /** A small map of all sheets with this one filled, its upper left corner at a place. */
    List<Shape> key(double x, double y, double most, Inks inks) {
        double cell = Math.min(8, most / Math.max(columns, rows));
        List<Shape> shapes = new ArrayList<>();
        for (int r = 0; r < rows; r++) {
            for (int c = 0; c < columns; c++) {
                boolean here = r == row && c == column;
                Box place = new Box(x + c * cell * 1.4, y + r * cell, x + (c + 1) * cell * 1.4, y + (r + 1) * cell);
                shapes.add(Inks.plain(here ? inks.ink() : inks.paper()).area(place, inks.pen(Inks.SIGN)));
                double size = Math.min(2.6, cell * 0.6);
                shapes.add(new Shape.Text(
                        place.centre().plus(0, size * Shape.Text.CAPITALS / 2), "" + (r * columns + c + 1), size,
                        Shape.Anchor.MIDDLE, 0, here, here ? inks.paper() : inks.ink()));
            }
        }
        return shapes;
    }

    double keyHeight(double most) {
        return rows * Math.min(8, most / Math.max(columns, rows));
    }
}
