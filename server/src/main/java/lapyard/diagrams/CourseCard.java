package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import lapyard.construction.BedWork;
import lapyard.construction.Course;
import lapyard.construction.Piece;
import lapyard.construction.PieceEnd;
import lapyard.drawing.Scale;
import lapyard.drawing.Shape;
import lapyard.drawing.TextMeasure;
import lapyard.geometry.Lengths;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Lap;
import lapyard.plan.Lifting;

/** The card of one bed: each course seen from above, its timbers with marks, lengths, ends, seams, notches and screws. */
final class CourseCard {
    /** Courses side by side on a sheet. */
    private static final int ACROSS = 3;

    private static final double GAP = 5;
    private static final double HEAD = 8;
    private static final double RIM = 7;
    private static final double ROW = 5.6;
    private static final double TEXT = 3.5;
    private static final double LEAST_RING = 42;
    private static final double TABLE = 86;

    /** A bed that is so many times as wide as deep. */
    private static final double LONG = 2.2;

    private static final double NOTE = 3.1;
    private static final double NOTE_PITCH = 4.2;

    /** Places of tick, mark, length, board, start, end and weight, in parts of the width of a column. */
    private static final double[] AT = {0, 0.07, 0.29, 0.455, 0.57, 0.7, 0.84};

    private final BenchSheet sheet;
    private final BedWork work;
    private final Lifting lifting;
    private final CourseNotes notes;
    private final Map<String, String> boards;
    private final WarningFrame warning;

    CourseCard(BenchSheet sheet, CourseCards.Stack stack, Lifting lifting) {
        this.sheet = sheet;
        this.work = stack.work();
        this.boards = stack.boards();
        this.lifting = lifting;
        this.notes = new CourseNotes(stack, sheet);
        this.warning = new WarningFrame(sheet, stack.warnings());
    }

    List<BenchSheet.Draft> drafts() {
        List<BenchSheet.Draft> drafts = new ArrayList<>();
        List<Course> courses = work.frame().courses();
        int most = lying() ? rows() : ACROSS;
        for (int i = 0; i < courses.size(); i += most) {
            List<Course> some = courses.subList(i, Math.min(courses.size(), i + most));
            List<Shape> shapes = new ArrayList<>(warning.at(sheet.space().left(), sheet.space().low()));
            shapes.addAll(lying() ? rows(some) : columns(some));
            drafts.add(new BenchSheet.Draft(title(), about(), shapes));
        }
        return drafts;
    }

    /** What the warning leaves. */
    private Box space() {
        Box all = sheet.space();
        return new Box(all.left(), all.low() + warning.heightMm(), all.right(), all.high());
    }

    /** A long bed's courses lie one below the other, each with its table beside it. */
    private boolean lying() {
        Box extent = extent();
        return extent.width() > LONG * extent.height();
    }

    /** Courses of a long bed that find room on a sheet. */
    private int rows() {
        double free = space().height() - footHeight(notes.lines(work.frame().courses(), sheet.space().width()));
        int most = (int) (free / (HEAD + tableHeight(work.frame().courses(), ROW)));
        return Math.max(1, Math.min(ACROSS, most));
    }

    private static double footHeight(List<String> words) {
        return words.size() * NOTE_PITCH + 10;
    }

    private static double tableHeight(List<Course> courses, double row) {
        return 7 + row * pieces(courses);
    }

    private static int pieces(List<Course> courses) {
        return courses.stream().mapToInt(course -> course.pieces().size()).max().orElse(1);
    }

    private String title() {
        Bed bed = work.bed();
        boolean named = !bed.name().isBlank() && !bed.name().equals(bed.id());
        return "Course card, bed " + bed.id() + (named ? ", " + bed.name() : "");
    }

    private String about() {
        Bed bed = work.bed();
        Box box = Box.round(bed.outline().corners());
        String section = sheet.written(bed.section().thicknessMm()) + " × " + sheet.written(bed.section().heightMm());
        return sheet.written(box.width()) + " × " + sheet.written(box.height()) + " over all, " + sheet.written(bed.heightMm())
                + " high: " + bed.courses() + (bed.courses() == 1 ? " course of " : " courses of ") + section
                + (bed.walls().lap() == Lap.TURNING ? ", alternating lap" : ", long-wall lap");
    }

    /** Turned so that wall A is in front, mirrored as the bed stands. */
    private Placement frame() {
        return new Placement(new Point(0, 0), 0, work.bed().placement().mirror());
    }

    private Box extent() {
        return Box.round(work.bed().outline().placed(frame()).corners());
    }

    private List<Shape> columns(List<Course> courses) {
        Box space = space();
        int across = Math.max(2, Math.min(ACROSS, work.frame().courses().size()));
        double width = (space.width() - (across - 1) * GAP) / across;
        List<String> words = notes.lines(courses, space.width());
        double foot = footHeight(words);
        double row = Math.min(ROW, (space.height() - HEAD - LEAST_RING - foot - 7) / pieces(courses));
        double high = space.high() - foot - tableHeight(courses, row);
        Scale scale = scale(width, high - space.low() - HEAD);
        List<Shape> shapes = new ArrayList<>();
        for (int i = 0; i < courses.size(); i++) {
            double left = space.left() + i * (width + GAP);
            if (i > 0) {
                shapes.add(sheet.line(left - GAP / 2, space.low(), left - GAP / 2, space.high() - foot, Inks.THIN));
            }
            Box room = new Box(left, space.low() + HEAD, left + width, high);
            Box table = new Box(left, high, left + width, space.high() - foot);
            shapes.add(course(courses.get(i), scale, room, table, row));
        }
        shapes.addAll(foot(words, scale, space.high() - foot));
        return shapes;
    }

    private List<Shape> rows(List<Course> courses) {
        Box space = space();
        List<String> words = notes.lines(courses, space.width());
        double foot = footHeight(words);
        double height = (space.height() - foot) / Math.min(rows(), work.frame().courses().size());
        double row = Math.min(ROW, (height - HEAD - 7) / pieces(courses));
        double middle = space.right() - TABLE;
        Scale scale = scale(middle - GAP - space.left(), height - HEAD);
        List<Shape> shapes = new ArrayList<>();
        for (int i = 0; i < courses.size(); i++) {
            double top = space.low() + i * height;
            if (i > 0) {
                shapes.add(sheet.line(space.left(), top - 1, space.right(), top - 1, Inks.THIN));
            }
            Box room = new Box(space.left(), top + HEAD, middle - GAP, top + height);
            Box table = new Box(middle, top + 1, space.right(), top + height);
            shapes.add(course(courses.get(i), scale, room, table, row));
        }
        shapes.addAll(foot(words, scale, space.high() - foot));
        return shapes;
    }

    /** As large as the room allows; nobody measures from a ring. */
    private Scale scale(double wide, double high) {
        Box extent = extent();
        double needs = Math.max(extent.width() / (wide - 2 * RIM), extent.height() / (high - 2 * RIM));
        return new Scale((int) Math.ceil(Math.max(1, needs - 1e-9)));
    }

    private Shape course(Course course, Scale scale, Box room, Box table, double row) {
        List<Shape> shapes = new ArrayList<>();
        String words = "Course " + course.number()
                + (course.number() == 1 ? ", on the ground" : course.number() == work.bed().courses() ? ", the rim" : "");
        shapes.add(sheet.text(room.left(), room.low() - 2.2, words, 5, true));
        Box extent = extent();
        View view = new View(
                scale,
                new Point(
                        room.centre().x() - scale.paperMm(extent.centre().x()),
                        room.centre().y() + scale.paperMm(extent.centre().y())));
        CourseRing ring = new CourseRing(work, course, frame(), view, sheet.inks, sheet.imperial, lifting);
        shapes.addAll(ring.shapes(new Labels(room)));
        shapes.addAll(table(course, table, row));
        return new Shape.Group("course-" + course.number(), words, "course", shapes);
    }

    private List<Shape> table(Course course, Box room, double row) {
        double size = Math.min(TEXT, row * 0.66);
        List<Shape> shapes = new ArrayList<>();
        String[] heads = {"", "mark", "cut to", "board", "start", "end", "kg"};
        for (int i = 1; i < heads.length; i++) {
            shapes.add(sheet.text(room.left() + AT[i] * room.width(), room.low() + 4, heads[i], 2.7, false));
        }
        double y = room.low() + 5.5;
        for (Piece piece : course.pieces()) {
            double base = y + row * 0.72;
            shapes.add(sheet.line(room.left(), y, room.right(), y, Inks.HAIR));
            shapes.add(sheet.tick(room.left(), base, Math.min(3.6, row * 0.68)));
            cell(shapes, room, 1, base, piece.mark(), size, true);
            cell(shapes, room, 2, base, sheet.written(piece.lengthMm()), size, true);
            cell(shapes, room, 3, base, boards.getOrDefault(piece.mark(), ""), size, false);
            cell(shapes, room, 4, base, words(piece.start()), size, false);
            cell(shapes, room, 5, base, words(piece.end()), size, false);
            double kg = massKg(piece);
            cell(shapes, room, 6, base, String.format(Locale.ROOT, "%.1f", kg) + (lifting.heavy(kg) ? " ●" : ""), size, lifting.heavy(kg));
            y += row;
        }
        return shapes;
    }

    private void cell(List<Shape> shapes, Box room, int column, double base, String words, double size, boolean bold) {
        double next = column + 1 < AT.length ? AT[column + 1] : 1.02;
        double wide = (next - AT[column]) * room.width() - 0.8;
        double fitting = BenchSheet.fitting(words, size, size * 0.6, bold, wide);
        shapes.add(sheet.text(
                room.left() + AT[column] * room.width(), base, TextMeasure.cut(words, fitting, bold, wide), fitting, bold));
    }

    private static String words(PieceEnd end) {
        String set = end.squareCut() ? "" : " " + Lengths.text(end.setDeg()) + "°";
        return switch (end.kind()) {
            case RUNS_PAST -> "through" + set;
            case STOPS_SHORT -> "butts" + set;
            case MITRE -> set.isEmpty() ? "square" : set.strip();
            case SEAM -> "joint";
        };
    }

    private double massKg(Piece piece) {
        var section = work.bed().section();
        return piece.meanMm() * section.thicknessMm() * section.heightMm() * section.densityKgM3() / 1e9;
    }

    private List<Shape> foot(List<String> words, Scale scale, double top) {
        Box space = space();
        List<Shape> shapes = new ArrayList<>();
        shapes.add(sheet.line(space.left() - 3, top, space.right() + 3, top, Inks.NARROW));
        double x = space.left();
        for (Legend.Entry entry : CourseRing.legend(sheet.inks, work)) {
            Box box = new Box(x, top + 1.6, x + 9, top + 5.6);
            shapes.addAll(entry.sample().apply(box));
            shapes.add(sheet.text(box.right() + 1.2, top + 4.6, entry.words(), 2.9, false));
            x = box.right() + 1.2 + TextMeasure.widthMm(entry.words(), 2.9, false) + 4;
        }
        shapes.add(sheet.end(space.right(), top + 4.6, "rings " + scale.label(sheet.imperial), 2.9, false));
        double y = top + 10;
        for (String line : words) {
            shapes.add(sheet.text(space.left(), y, line, NOTE, false));
            y += NOTE_PITCH;
        }
        return shapes;
    }
}
