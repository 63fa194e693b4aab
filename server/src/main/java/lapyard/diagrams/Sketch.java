package lapyard.diagrams;

import java.util.List;
import lapyard.drawing.Shape;
import lapyard.drawing.Stroke;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;

/** What all parts of a drawing share: where real places lie, the room that is taken, the inks, and the measures that are written. */
record Sketch(View view, Labels labels, Inks inks, boolean imperial) {
    Point on(Point real) {
        return view.on(real);
    }

    List<Point> on(List<Point> real) {
        return view.on(real);
    }

    List<Point> on(Outline real) {
        return view.on(real);
    }

    Stroke pen(double widthMm) {
        return inks.pen(widthMm);
    }

    /** Words wholly within a ring, level or upright, on a plate; none where they find no room. */
    List<Shape> within(List<Point> ring, Words words) {
        return labels.within(ring, words).map(plate -> words.on(plate, inks)).orElse(List.of());
    }

    /** Words at the end of a line to what they name. */
    List<Shape> led(Labels.Led led, Words words, double pen) {
        return words.led(labels, led, pen(pen), inks);
    }
}
