package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.stream.IntStream;
import lapyard.construction.BedWork;
import lapyard.construction.CornerScrew;
import lapyard.construction.Course;
import lapyard.construction.Notch;
import lapyard.construction.Piece;
import lapyard.construction.PieceEnd;
import lapyard.drawing.Shape;
import lapyard.drawing.Stroke;
import lapyard.geometry.Length;
import lapyard.geometry.Outline;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Joint;
import lapyard.plan.Lifting;
import lapyard.working.QuantityKind;

/**
 * One course from above: its timbers with the signs that are written on them (a bar across the end that runs past, a
 * triangle to the seen face, a dot on heavy ones, a wave where a notch is under), seam plates, corner screws and lengths,
 * what is notched and scribed at each wall, and diagonals.
 */
record CourseRing(BedWork work, Course course, Placement frame, Sketch sketch, Lifting lifting) {
    /** From the end of a timber to its bar, on paper. */
    private static final double BAR_IN = 1.3;

    private static final double SCREW = 2.6;
    private static final double PLATE = 6;

    /** Parts of a wall or a timber at which words are tried. */
    private static final double[] BESIDE = {0.5, 0.4, 0.6, 0.3, 0.7};

    /**
     * @param atWalls   words to stand inside a wall, by its letter
     * @param diagonals corners from 0 by what is written along them
     * @param homeless  gains the walls and diagonals whose words find no room
     */
    List<Shape> shapes(Map<String, String> atWalls, Map<String, int[]> diagonals, Set<String> homeless) {
        List<Shape> shapes = new ArrayList<>();
        for (Piece piece : course.pieces()) {
            List<Point> lies =
                    sketch.on(piece.lies().corners().stream().map(frame::toYard).toList());
            sketch.labels().take(lies);
            shapes.add(sketch.inks().timber().area(lies, sketch.pen(Inks.MEDIUM)));
        }
        for (Piece piece : course.pieces()) {
            double in = sketch.view().scale().realMm(BAR_IN);
            if (piece.start().kind() == PieceEnd.Kind.RUNS_PAST) {
                shapes.add(across(piece, Math.max(piece.start().outerMm(), piece.start().innerMm()) + in));
            }
            if (piece.end().kind() == PieceEnd.Kind.RUNS_PAST) {
                shapes.add(across(piece, Math.min(piece.end().outerMm(), piece.end().innerMm()) - in));
            }
            signs(piece, shapes);
        }
        if (course.number() == 1) {
            work.frame().notches().forEach(notch -> shapes.add(wave(notch)));
        }
        work.frame().seams().stream()
                .filter(seam -> seam.course() == course.number())
                .forEach(seam -> shapes.add(plate(seam.wall(), seam.atMm())));
        course.pieces().forEach(piece -> screws(piece, shapes));
        course.pieces().forEach(piece -> shapes.addAll(label(piece)));
        for (int corner = 0; corner < outline().sides(); corner++) {
            number(corner, shapes);
        }
        atWalls.forEach((wall, words) -> atWall(wall, words, homeless, shapes));
        diagonals.forEach((words, corners) -> diagonal(words, corners, homeless, shapes));
        return shapes;
    }

    /** Inside its wall: what is done there before the course is laid. */
    private void atWall(String wall, String text, Set<String> homeless, List<Shape> shapes) {
        int side = work.bed().wallLetters().indexOf(wall);
        double length = outline().sideMm(side);
        for (double size : new double[] {3.4, 3, TypeSize.LEAST}) {
            Words words = Words.of(text, size, false);
            List<Plate> plates = new ArrayList<>();
            for (double out : new double[] {1.2, 4.6, 8}) {
                double in = thick() + sketch.view().scale().realMm(words.heightMm() / 2 + out);
                for (double t : BESIDE) plates.add(words.at(on(wall, length * t, in), turn(wall)));
            }
            List<Shape> drawn = words.first(sketch.labels(), plates, sketch.inks().water());
            shapes.addAll(drawn);
            if (!drawn.isEmpty()) return;
        }
        homeless.add(wall);
    }

    private double turn(String wall) {
        Point start = on(wall, 0, 0);
        Point end = on(wall, outline().sideMm(work.bed().wallLetters().indexOf(wall)), 0);
        return GroundShapes.readable(start, end);
    }

    /** From corner to corner of the outer faces, broken where its length is written. */
    private void diagonal(String text, int[] corners, Set<String> homeless, List<Shape> shapes) {
        Point a = sketch.on(frame.toYard(outline().corner(corners[0])));
        Point b = sketch.on(frame.toYard(outline().corner(corners[1])));
        Words words = Words.of(text, 3.2, true);
        List<Shape> drawn = words.first(sketch.labels(), words.along(a, b, 0.5, 0.42, 0.58, 0.35, 0.65, 0.28, 0.72), sketch.inks().ink(), sketch.inks().paper());
        if (drawn.isEmpty()) homeless.add(text);
        else shapes.add(0, Shape.Lines.of(sketch.pen(Inks.NARROW).dashed(2.4, 1.2), a, b));
        shapes.addAll(drawn);
    }

    /** What stands beside a timber: its wall and part, what it is cut to, and once for each wall its outside size. */
    static String words(Piece piece, Bed bed, boolean imperial) {
        String words = piece.wall() + piece.part() + " · " + Length.whole(piece.lengthMm(), imperial);
        if (!piece.part().isEmpty() && !piece.part().equals("a")) return words;
        return words + " (" + Length.whole(bed.outline().sideMm(bed.wallLetters().indexOf(piece.wall())), imperial) + ")";
    }

    /** The number of a corner, on the inside where there is room. */
    private void number(int corner, List<Shape> shapes) {
        Point before = outline().direction(corner - 1);
        Point after = outline().direction(corner);
        double x = -before.y() - after.y();
        double y = before.x() + after.x();
        double length = Math.max(0.1, Math.hypot(x, y));
        Words words = Words.of(String.valueOf(corner + 1), 2.8, false);
        Point at = outline().corner(corner);
        List<Plate> plates = new ArrayList<>();
        for (double in : new double[] {3.5, 4.5, 6, -2.5}) {
            double deep = in > 0 ? sketch.view().scale().realMm(in) + 1.5 * thick() : sketch.view().scale().realMm(in);
            plates.add(words.at(sketch.on(frame.toYard(at.plus(x / length * deep, y / length * deep))), 0));
        }
        shapes.addAll(words.first(sketch.labels(), plates, sketch.inks().water()));
    }

    private double thick() {
        return work.bed().section().thicknessMm();
    }

    private Outline outline() {
        return work.bed().outline();
    }

    /** A place along a wall from its outer start corner and inwards from its outer face, on paper. */
    private Point on(String wall, double along, double inwards) {
        return sketch.on(frame.toYard(outline().at(work.bed().wallLetters().indexOf(wall), along, inwards)));
    }

    private Shape across(Piece piece, double along) {
        return Shape.Lines.of(
                sketch.pen(Inks.BROAD), on(piece.wall(), along, thick() * 0.1), on(piece.wall(), along, thick() * 0.9));
    }

    /** On the top face: a triangle whose point looks to the seen face, and a dot where one person is not enough. */
    private void signs(Piece piece, List<Shape> shapes) {
        double middle = (piece.start().outerMm() + piece.end().outerMm()) / 2;
        double half = Math.min(thick() * 0.45, sketch.view().scale().realMm(1.1));
        if (piece.seen()) {
            shapes.add(Shape.Area.filled(List.of(on(piece.wall(), middle, thick() * 0.1), on(piece.wall(),
                    middle + half, thick() * 0.85), on(piece.wall(), middle - half, thick() * 0.85)), sketch.inks().ink()));
        }
        if (lifting.heavy(work.massKg(piece))) {
            double radius = Math.min(sketch.view().scale().paperMm(thick()) * 0.32, 0.8);
            shapes.add(Shape.Circle.dot(on(piece.wall(), middle + 3 * half, thick() / 2), radius, sketch.inks().ink()));
        }
    }

    private Shape wave(Notch notch) {
        double half = sketch.view().scale().realMm(0.5);
        return wave(sketch.inks(), (aside, down) -> on(notch.wall(), notch.atMm() + half * aside, thick() * down));
    }

    /** @param on from a place beside the middle, -1 to 1, and across the timber, 0 to 1, to the paper */
    private static Shape wave(Inks inks, BiFunction<Double, Double, Point> on) {
        List<Point> points = IntStream.rangeClosed(0, 12).mapToObj(i -> on.apply(Math.sin(Math.PI * i / 3), i / 12.0)).toList();
        return new Shape.Lines(List.of(points), Stroke.of(inks.water(), Inks.WIDE));
    }

    /** Behind a seam, on the inner face. */
    private Shape plate(String wall, double atMm) {
        double half = sketch.view().scale().realMm(PLATE / 2);
        double in = thick() + sketch.view().scale().realMm(0.6);
        Point a = on(wall, atMm - half, in);
        Point b = on(wall, atMm + half, in);
        sketch.labels().take(Labels.line(a, b));
        return Shape.Lines.of(sketch.pen(Inks.BROAD), a, b);
    }

    /** Through the inner face of a timber that stops short, at 45 degrees towards its end. */
    private void screws(Piece piece, List<Shape> shapes) {
        if (work.quantities().stream().noneMatch(quantity -> quantity.is(QuantityKind.SCREWS))) {
            return;
        }
        if (piece.start().kind() == PieceEnd.Kind.STOPS_SHORT) shapes.add(screw(piece.wall(), piece.start().innerMm(), -1));
        if (piece.end().kind() == PieceEnd.Kind.STOPS_SHORT) shapes.add(screw(piece.wall(), piece.end().innerMm(), 1));
        work.frame().screws().stream()
                .filter(screw -> screw.head().equals(piece.mark()) && work.bed().joint(screw.corner() - 1) == Joint.MITRE)
                .forEach(screw -> shapes.add(throughMitre(piece, screw)));
    }

    /** Where it lies, to scale. */
    private Shape throughMitre(Piece piece, CornerScrew screw) {
        boolean start = piece.wall().equals(Bed.wallLetter(screw.corner() - 1));
        boolean outer = screw.face() == CornerScrew.Face.OUTER;
        PieceEnd end = start ? piece.start() : piece.end();
        int towards = start ? -1 : 1;
        double angle = Math.toRadians(screw.angleDeg());
        double length = Math.max(work.bed().making().screws().lengthMm(), sketch.view().scale().realMm(SCREW));
        double along = (outer ? end.outerMm() : end.innerMm()) - towards * screw.entryMm();
        double face = outer ? 0 : thick();
        Point head = on(piece.wall(), along, face);
        Point tip = on(piece.wall(), along + towards * length * Math.cos(angle), face + (outer ? 1 : -1) * length * Math.sin(angle));
        return screw(head, tip);
    }

    private Shape screw(Point head, Point tip) {
        sketch.labels().take(Labels.line(head, tip));
        return Shape.Lines.of(Stroke.of(sketch.inks().snag(), Inks.MEDIUM), head, tip);
    }

    private Shape screw(String wall, double jointMm, int towards) {
        double step = sketch.view().scale().realMm(SCREW / 2);
        return screw(on(wall, jointMm - towards * step * 1.2, thick() + step * 0.9), on(wall, jointMm + towards * step * 0.8, thick() - step * 1.1));
    }

    /** Outside its wall, else inside; a short wall's words may have to stand across it. */
    private List<Shape> label(Piece piece) {
        double length = piece.outerFaceMm();
        double turn = turn(piece.wall());
        for (double across : new double[] {0, 90}) {
            for (double size : new double[] {TypeSize.ARMS_LENGTH, 4.4, 3.8, 3.2, 2.8, TypeSize.LEAST}) {
                Words words = Words.of(words(piece, work.bed(), sketch.imperial()), size, true);
                double out = sketch.view().scale().realMm((across == 0 ? words.heightMm() : words.widthMm()) / 2 + 0.5);
                List<Plate> plates = new ArrayList<>();
                for (double inwards : new double[] {-out, thick() + out}) {
                    for (double t : BESIDE) {
                        Point centre = on(piece.wall(), piece.start().outerMm() + length * t, inwards);
                        plates.add(words.at(centre, GroundShapes.readable(turn + across)));
                    }
                }
                List<Shape> drawn = words.first(sketch.labels(), plates, sketch.inks().ink());
                if (!drawn.isEmpty()) return drawn;
            }
        }
        return List.of();
    }

    /** What the signs mean, those that this bed has. */
    static List<Legend.Entry> legend(Inks inks, BedWork work) {
        List<Legend.Entry> entries = new ArrayList<>();
        entries.add(new Legend.Entry("runs through", box -> sample(box, inks, Shape.Lines.of(
                inks.pen(Inks.BROAD),
                new Point(box.left() + BAR_IN, box.centre().y() - 0.8),
                new Point(box.left() + BAR_IN, box.centre().y() + 0.8)))));
        entries.add(new Legend.Entry("seen face", box -> sample(box, inks, Shape.Area.filled(List.of(
                box.centre().plus(0, 0.9), box.centre().plus(-1, -0.7), box.centre().plus(1, -0.7)), inks.ink()))));
        entries.add(new Legend.Entry("more than one lifts", box ->
                sample(box, inks, Shape.Circle.dot(box.centre(), 0.65, inks.ink()))));
        if (!work.frame().notches().isEmpty()) {
            entries.add(new Legend.Entry("notch under", box -> sample(box, inks, wave(inks, (aside, down) ->
                    box.centre().plus(0.5 * aside, 2 * down - 1)))));
        }
        entries.add(new Legend.Entry("screws", box -> List.of(Shape.Lines.of(Stroke.of(inks.snag(), Inks.MEDIUM),
                box.centre().plus(-1, 1), box.centre().plus(1, -1)))));
        if (!work.frame().seams().isEmpty()) {
            entries.add(new Legend.Entry("joint, plate behind", box -> sample(box, inks, Shape.Lines.of(
                    inks.pen(Inks.BROAD), box.centre().plus(-2, 1.7), box.centre().plus(2, 1.7)))));
        }
        return entries;
    }

    private static List<Shape> sample(Box box, Inks inks, Shape sign) {
        double middle = box.centre().y();
        return List.of(inks.timber().area(new Box(box.left(), middle - 1, box.right(), middle + 1), inks.pen(Inks.MEDIUM)), sign);
    }
}
