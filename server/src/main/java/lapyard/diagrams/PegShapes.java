package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import lapyard.drawing.Shape;
import lapyard.drawing.Stroke;
import lapyard.geometry.Length;
import lapyard.geometry.Point;
import lapyard.ground.SettingOut;
import lapyard.plan.Baseline;

/** The baseline and the pegs of each bed, numbered as on its setting-out sheet. */
final class PegShapes {
    private static final double TEXT = TypeSize.LEAST;
    private static final double RADIUS = 0.6;

    private PegShapes() {}

    static Shape.Group of(SettingOut out, List<BedShapes> beds, View view, Labels labels, Inks inks, boolean imperial) {
        List<Shape> shapes = new ArrayList<>();
        out.baseline().ifPresent(line -> shapes.addAll(baseline(line, view, labels, inks, imperial)));
        for (BedShapes bed : beds) {
            List<Point> ring = bed.outer();
            Box box = Box.round(ring);
            for (int i = 0; i < ring.size(); i++) {
                Point peg = ring.get(i);
                shapes.add(sign(peg, inks));
                labels.first(round(peg, box, Words.of("P" + (i + 1), TEXT, false)), plate -> true)
                        .ifPresent(named("P" + (i + 1), inks, shapes));
            }
        }
        return new Shape.Group("pegs", "Baseline and pegs", "pegs", shapes);
    }

    private static Consumer<Plate> named(String words, Inks inks, List<Shape> shapes) {
        return plate -> shapes.addAll(Words.of(words, TEXT, false).on(plate, inks.water(), Optional.of(inks.plate())));
    }

    static Shape sign(Point at, Inks inks) {
        return Shape.Circle.dot(at, RADIUS, inks.water());
    }

    static Stroke pen(Inks inks) {
        return Stroke.of(inks.water(), Inks.OUTLINE).dashed(6, 1);
    }

    /** Outside the bed first, then over its timbers. */
    private static List<Plate> round(Point peg, Box bed, Words words) {
        double x = peg.x() < bed.centre().x() ? -1 : 1;
        double y = peg.y() < bed.centre().y() ? -1 : 1;
        double across = words.widthMm() / 2 + RADIUS + 0.2;
        double down = words.heightMm() / 2 + RADIUS;
        List<Plate> plates = new ArrayList<>();
        for (double[] way : new double[][] {{x, y}, {x, 0}, {0, y}, {-x, y}, {x, -y}, {-x, -y}}) {
            plates.add(words.at(peg.plus(way[0] * across, way[1] * down), 0));
        }
        return plates;
    }

    private static List<Shape> baseline(Baseline line, View view, Labels labels, Inks inks, boolean imperial) {
        Point a = view.on(line.from());
        Point b = view.on(line.to());
        List<Shape> shapes = new ArrayList<>(List.of(Shape.Lines.of(pen(inks), a, b), sign(a, inks), sign(b, inks)));
        Words words = Words.of("baseline " + Length.written(line.from().distanceMm(line.to()), imperial), TEXT, false);
        Point way = a.way(b);
        List<Plate> plates = new ArrayList<>();
        for (double off : new double[] {0, 2.4, -2.4, 4.8, -4.8}) {
            for (double t : new double[] {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9}) {
                plates.add(words.at(a.towards(b, t).moved(way, 0, -off), GroundShapes.readable(a, b)));
            }
        }
        labels.first(plates, labels::clearOfSolids)
                .ifPresent(plate -> shapes.addAll(words.on(plate, inks.water(), Optional.of(inks.plate()))));
        return shapes;
    }
}
