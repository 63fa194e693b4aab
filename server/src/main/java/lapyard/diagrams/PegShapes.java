package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
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

    static Shape.Group of(SettingOut out, List<BedShapes> beds, Sketch sketch) {
        List<Shape> shapes = new ArrayList<>();
        out.baseline().ifPresent(line -> shapes.addAll(baseline(line, sketch)));
        for (BedShapes bed : beds) {
            List<Point> ring = bed.outer();
            Box box = Box.round(ring);
            for (int i = 0; i < ring.size(); i++) {
                shapes.add(sign(ring.get(i), sketch.inks()));
                Words words = Words.of("P" + (i + 1), TEXT, false);
                shapes.addAll(words.first(sketch.labels(), round(ring.get(i), box, words), sketch.inks().water(), sketch.inks().plate()));
            }
        }
        return new Shape.Group("pegs", "Baseline and pegs", "pegs", shapes);
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
        return Stream.of(new double[][] {{x, y}, {x, 0}, {0, y}, {-x, y}, {x, -y}, {-x, -y}})
                .map(way -> words.at(peg.plus(way[0] * across, way[1] * down), 0)).toList();
    }

    private static List<Shape> baseline(Baseline line, Sketch sketch) {
        Point a = sketch.on(line.from());
        Point b = sketch.on(line.to());
        Inks inks = sketch.inks();
        List<Shape> shapes = new ArrayList<>(List.of(Shape.Lines.of(pen(inks), a, b), sign(a, inks), sign(b, inks)));
        Words words = Words.of("baseline " + Length.written(line.from().distanceMm(line.to()), sketch.imperial()), TEXT, false);
        sketch.labels().firstClear(words.beside(a, b, new double[] {0, -2.4, 2.4, -4.8, 4.8}, 0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9))
                .ifPresent(plate -> shapes.addAll(words.on(plate, inks.water(), Optional.of(inks.plate()))));
        return shapes;
    }
}
