package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import lapyard.drawing.Shape;
import lapyard.drawing.Stroke;
import lapyard.drawing.TextMeasure;
import lapyard.geometry.Point;

/** Lines of text that stand together on a plate, centred under each other. */
record Words(List<Line> lines) {
    /** From the text to the edge of its plate. */
    private static final double PAD = 0.5;

    private static final double PITCH = 1.12;

    record Line(String text, double sizeMm, boolean bold) {}

    static Words of(String text, double sizeMm, boolean bold) {
        return new Words(List.of(new Line(text, sizeMm, bold)));
    }

    double widthMm() {
        return lines.stream().mapToDouble(l -> TextMeasure.widthMm(l.text, l.sizeMm, l.bold)).max().orElse(0) + 2 * PAD;
    }

    double heightMm() {
        return lines.stream().mapToDouble(l -> l.sizeMm * PITCH).sum() + PAD;
    }

    /** The plate that holds them. */
    Plate at(Point centre, double turnDeg) {
        return new Plate(centre, widthMm(), heightMm(), turnDeg);
    }

    /** At the first of these places that is free; none where no place is. @param plate colour under the text */
    List<Shape> first(Labels labels, List<Plate> places, String ink, String plate) {
        return labels.first(places).map(place -> on(place, ink, Optional.of(plate))).orElse(List.of());
    }

    /** The same without a plate. */
    List<Shape> first(Labels labels, List<Plate> places, String ink) {
        return labels.first(places).map(place -> on(place, ink, Optional.empty())).orElse(List.of());
    }

    /** In ink on a plate that hides what lies below. */
    List<Shape> on(Plate place, Inks inks) {
        return on(place, inks.ink(), Optional.of(inks.plate()));
    }

    /** The same, level about a place. */
    List<Shape> about(Point centre, Inks inks) {
        return on(at(centre, 0), inks);
    }

    /** The same with a line to what they name; both take their room. */
    List<Shape> led(Labels labels, Labels.Led led, Stroke pen, Inks inks) {
        labels.lead(led);
        List<Shape> shapes = new ArrayList<>(List.of(Shape.Lines.of(pen, led.from(), led.to())));
        shapes.addAll(on(led.plate(), inks));
        return shapes;
    }

    /** Plates along a line, at parts of it. */
    List<Plate> along(Point a, Point b, double... parts) {
        return beside(a, b, new double[] {0}, parts);
    }

    /** Plates at parts of a line, all at the first distance to its left as one looks at the paper from below, then at the next. */
    List<Plate> beside(Point a, Point b, double[] lefts, double... parts) {
        double turn = GroundShapes.readable(a, b);
        return DoubleStream.of(lefts).boxed().flatMap(left -> DoubleStream.of(parts)
                .mapToObj(part -> at(left == 0 ? a.towards(b, part) : a.towards(b, part).moved(a.way(b), 0, left), turn))).toList();
    }

    /** @param plate colour under the text, empty for none */
    List<Shape> on(Plate place, String ink, Optional<String> plate) {
        List<Shape> shapes = new ArrayList<>();
        plate.ifPresent(colour -> shapes.add(Shape.Area.filled(place.corners(), colour)));
        double top = -heightMm() / 2 + PAD / 2;
        for (Line line : lines) {
            double base = top + line.sizeMm * (PITCH / 2 + Shape.Text.CAPITALS / 2);
            shapes.add(new Shape.Text(
                    place.at(0, base), line.text, line.sizeMm, Shape.Anchor.MIDDLE, place.turnDeg(), line.bold, ink));
            top += line.sizeMm * PITCH;
        }
        return shapes;
    }
}
