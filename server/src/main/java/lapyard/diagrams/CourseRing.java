package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.construction.BedWork;
import lapyard.construction.Course;
import lapyard.construction.Notch;
import lapyard.construction.Piece;
import lapyard.construction.Piece.RunsPast;
import lapyard.drawing.Shape;
import lapyard.drawing.Stroke;
import lapyard.geometry.Length;
import lapyard.geometry.Outline;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;

/** One course from above: its timbers, bars across the ends that run past, waves where notches are, marks and lengths. */
final class CourseRing {
    /** From the end of a timber to its bar, on paper. */
    private static final double BAR_IN = 1.3;

    private final BedWork work;
    private final Course course;
    private final Placement frame;
    private final View view;
    private final Inks inks;
    private final boolean imperial;

    CourseRing(BedWork work, Course course, Placement frame, View view, Inks inks, boolean imperial) {
        this.work = work;
        this.course = course;
        this.frame = frame;
        this.view = view;
        this.inks = inks;
        this.imperial = imperial;
    }

    List<Shape> shapes(Labels labels) {
        List<Shape> shapes = new ArrayList<>();
        for (Piece piece : course.pieces()) {
            List<Point> lies =
                    view.on(piece.lies().corners().stream().map(frame::toYard).toList());
            labels.take(lies);
            shapes.add(new Shape.Area(
                    List.of(lies), inks.timber().fill(), Optional.empty(), Optional.of(inks.pen(Inks.MEDIUM))));
        }
        for (Piece piece : course.pieces()) {
            double in = view.scale().realMm(BAR_IN);
            if (piece.runsPast() == RunsPast.START || piece.runsPast() == RunsPast.BOTH) {
                shapes.add(across(piece, piece.fromMm() + in));
            }
            if (piece.runsPast() == RunsPast.END || piece.runsPast() == RunsPast.BOTH) {
                shapes.add(across(piece, piece.fromMm() + piece.lengthMm() - in));
            }
        }
        if (course.number() == 1) {
            work.notches().forEach(notch -> shapes.add(wave(notch)));
        }
        course.pieces().forEach(piece -> shapes.addAll(label(piece, labels)));
        return shapes;
    }

    private Outline outline() {
        return work.bed().outline();
    }

    /** A place along a wall from its outer start corner and inwards from its outer face, on paper. */
    private Point on(String wall, double along, double inwards) {
        int side = work.bed().walls().indexOf(wall);
        Point a = outline().corner(side);
        Point b = outline().corner(side + 1);
        double length = a.distanceMm(b);
        double x = (b.x() - a.x()) / length;
        double y = (b.y() - a.y()) / length;
        return view.on(frame.toYard(new Point(a.x() + x * along - y * inwards, a.y() + y * along + x * inwards)));
    }

    private Shape across(Piece piece, double along) {
        double thick = work.bed().section().thicknessMm();
        return Shape.Lines.of(
                inks.pen(Inks.BROAD), on(piece.wall(), along, thick * 0.1), on(piece.wall(), along, thick * 0.9));
    }

    private Shape wave(Notch notch) {
        double thick = work.bed().section().thicknessMm();
        double along = notch.atMm();
        double half = view.scale().realMm(0.5);
        List<Point> points = new ArrayList<>();
        for (int i = 0; i <= 12; i++) {
            points.add(on(notch.wall(), along + half * Math.sin(Math.PI * i / 3), thick * i / 12));
        }
        return new Shape.Lines(List.of(points), Stroke.of(inks.water(), Inks.MEDIUM));
    }

    /** Outside its wall, else inside; a short wall's words may have to stand across it. */
    private List<Shape> label(Piece piece, Labels labels) {
        Point start = on(piece.wall(), piece.fromMm(), 0);
        Point end = on(piece.wall(), piece.fromMm() + piece.lengthMm(), 0);
        double turn = GroundShapes.readable(Math.toDegrees(Math.atan2(start.y() - end.y(), end.x() - start.x())));
        double thick = work.bed().section().thicknessMm();
        for (double across : new double[] {0, 90}) {
            for (double size : new double[] {3, 2.6, 2.2, 1.9}) {
                Words words = Words.of(piece.mark() + " · " + Length.written(piece.lengthMm(), imperial), size, true);
                double out = view.scale().realMm((across == 0 ? words.heightMm() : words.widthMm()) / 2 + 0.5);
                List<Plate> plates = new ArrayList<>();
                for (double inwards : new double[] {-out, thick + out}) {
                    for (double t : new double[] {0.5, 0.4, 0.6, 0.3, 0.7}) {
                        Point centre = on(piece.wall(), piece.fromMm() + piece.lengthMm() * t, inwards);
                        plates.add(new Plate(
                                centre, words.widthMm(), words.heightMm(), GroundShapes.readable(turn + across)));
                    }
                }
                Optional<Plate> place = labels.first(plates, plate -> true);
                if (place.isPresent()) {
                    return words.on(place.get(), inks.ink(), Optional.empty());
                }
            }
        }
        return List.of();
    }

    /** A short timber for the legend. */
    static List<Shape> sample(Box box, boolean bar, boolean wave, Inks inks) {
        double middle = box.centre().y();
        List<Shape> shapes = new ArrayList<>();
        shapes.add(Shape.Area.box(
                box.left(), middle - 1, box.width(), 2, inks.timber().fill(), Optional.of(inks.pen(Inks.MEDIUM))));
        if (bar) {
            shapes.add(Shape.Lines.of(
                    inks.pen(Inks.BROAD),
                    new Point(box.left() + BAR_IN, middle - 0.8),
                    new Point(box.left() + BAR_IN, middle + 0.8)));
        }
        if (wave) {
            List<Point> points = new ArrayList<>();
            for (int i = 0; i <= 12; i++) {
                points.add(new Point(
                        box.centre().x() + 0.5 * Math.sin(Math.PI * i / 3), middle - 1 + i / 6.0));
            }
            shapes.add(new Shape.Lines(List.of(points), Stroke.of(inks.water(), Inks.MEDIUM)));
        }
        return shapes;
    }
}
