package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.drawing.Shape;
import lapyard.drawing.Stroke;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.FindingList;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.words.Wording;

/** Snags of a plan, each with a letter that stands at its place in the yard and in the list. */
record PlanSnags(List<Finding> snags, Wording words) {
    static final double RADIUS = 1.9;

    static final PlanSnags NONE = new PlanSnags(List.of(), Wording.METRIC);

    static PlanSnags of(List<Finding> findings, Wording words) {
        return new PlanSnags(findings.stream().filter(finding -> finding.weight() != Finding.Weight.NOTE).toList(), words);
    }

    int count() {
        return snags.size();
    }

    String words(int i) {
        Finding snag = snags.get(i);
        return (snag.where().isBlank() ? "" : words.place(snag.place()) + ": ") + words.text(snag);
    }

    /** The letters of the snags that say in which bed they are. */
    Shape.Group letters(Map<String, Bed> beds, Sketch sketch) {
        List<Shape> shapes = new ArrayList<>();
        for (int i = 0; i < snags.size(); i++) {
            Place where = FindingList.singles(List.of(snags.get(i))).get(0).place();
            Optional<Bed> bed = where.ids(What.BED).stream().findFirst().map(beds::get);
            if (bed.isPresent()) {
                String letter = Bed.smallLetter(i);
                Point at = place(bed.get(), where.only(What.WALL), sketch.view());
                sketch.labels().first(near(at)).ifPresent(plate -> shapes.addAll(sign(letter, plate.centre(), sketch.inks())));
            }
        }
        return new Shape.Group("snags", "Snags", "snags", shapes);
    }

    private static Point place(Bed bed, Optional<String> wall, View view) {
        List<Point> outer = view.on(bed.inYard());
        int side = wall.map(bed.wallLetters()::indexOf).orElse(-1);
        if (side < 0) {
            return outer.get(outer.size() - 1);
        }
        Point a = outer.get(side);
        Point b = outer.get((side + 1) % outer.size());
        return a.middle(b);
    }

    /** At the place itself, then round it in growing circles. */
    private static List<Plate> near(Point at) {
        List<Plate> plates = new ArrayList<>();
        plates.add(new Plate(at, 2 * RADIUS, 2 * RADIUS, 0));
        for (double away = 2; away < 20; away += 2) {
            for (int i = 0; i < 12; i++) {
                double angle = Math.PI * i / 6;
                plates.add(new Plate(at.plus(away * Math.cos(angle), -away * Math.sin(angle)), 2 * RADIUS, 2 * RADIUS,
                        0));
            }
        }
        return plates;
    }

    static List<Shape> sign(String letter, Point at, Inks inks) {
        double size = letter.length() > 1 ? 2 : 2.6;
        return List.of(
                new Shape.Circle(at, RADIUS, Optional.of(inks.snag()), Optional.of(Stroke.of(inks.paper(), Inks.SIGN))),
                Inks.middle(at.plus(0, size * 0.3), letter, size, inks.paper()));
    }
}
