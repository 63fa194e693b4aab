package lapyard.diagrams;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import lapyard.construction.BedWork;
import lapyard.construction.Course;
import lapyard.construction.Piece;
import lapyard.construction.PieceEnd;
import lapyard.drawing.Page;
import lapyard.drawing.Scale;
import lapyard.drawing.Shape;
import lapyard.drawing.Tag;
import lapyard.drawing.TextMeasure;
import lapyard.geometry.Lengths;
import lapyard.geometry.Measure;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.FindingList;
import lapyard.plan.Lap;
import lapyard.plan.Lifting;
import lapyard.plan.Place;
import lapyard.words.Wording;
import lapyard.working.Quantity;
import lapyard.working.SecondThread;
import lapyard.working.Whole;

/**
 * The card of a bed, or of beds that are alike, for whoever stacks it, up to four courses on a sheet. Courses that are laid alike
 * share a ring seen from above and a table of their timbers, with a box to tick for each course.
 */
public final class CourseCard {
    private static final String CAUTION =
            "Two people or more lift what has a dot. Screws: eyes covered, the other hand out of their line. Treated timber: gloves and mask,"
                    + " seal every cut end, burn no offcuts.";

    private static final int COURSES = 4;

    private static final double GAP = 6;
    private static final double HEAD = 8;
    private static final double RIM = 8;
    /** Above and below a ring, where words lie level. */
    private static final double EDGE = 6;
    private static final double ROW = TypeSize.TICK + 0.3;
    private static final double TABLE_HEAD = 6.5;
    private static final double TEXT = 3.4;
    private static final double LEAST_RING = 36;
    /** Part of the width that a table beside its ring has. */
    private static final double TABLE = 0.54;

    private static final double NOTE = 3;
    private static final double NOTE_PITCH = 3.6;

    /** Width of what a note is about. */
    private static final double ABOUT = 21;

    /** Widths of the columns that tell a timber: wall, length, start, end, mass; then of a course's box, mark and board. */
    private static final double[] TIMBER = {8, 19, 15, 15, 14};

    /** In feet and inches a length is twice as long, and read at arm's length all the same. */
    private static final double[] TIMBER_IN_FEET = {7, 30, 13, 13, 12};

    private static final double[] COURSE = {9.5, 17, 8};

    private final BenchSheet sheet;
    private final double[] timber;
    private final BedWork work;
    private final List<Bed> beds;
    private final Lifting lifting;
    private final CourseNotes notes;
    private final Map<String, String> boards;
    private final WarningFrame warning;

    /**
     * One bed to stack.
     *
     * @param quantities those of the bed, also what is scribed off its underside where the fall of the ground is known
     * @param boards     number of the board that each timber is cut from, by its mark; may be empty
     * @param warnings   what may hurt somebody at this bed
     */
    public record Stack(BedWork work, List<Quantity> quantities, Map<String, String> boards, List<Finding> warnings) {}

    /** All that a card shows but the bed's code and its boards: beds for which this is equal share a card. */
    private static List<Object> shown(Stack stack, BenchSheet sheet) {
        BedWork work = stack.work();
        Bed bed = work.bed();
        CourseNotes notes = new CourseNotes(work, stack.quantities(), sheet, true);
        List<Object> pieces = work.pieces().stream().<Object>map(piece ->
                List.of(piece.course(), piece.wall(), piece.part(), piece.lengthMm(), piece.start(), piece.end(), piece.seen())).toList();
        return List.of(
                bed.outline(), bed.placement().mirror(), bed.section(), bed.walls().lap(), bed.courses(), pieces, work.frame().notches(),
                work.frame().seams(), FindingList.singles(stack.warnings()).stream().map(CourseCard::told).toList(), notes.atWalls(), notes.notes(work.frame().courses(), Set.of()));
    }

    /** A warning but for its bed, where one sentence can tell it of several. */
    private static List<Object> told(Finding one) {
        if (!one.kind().merges) return List.of(one);
        List<Place.Part> within = one.place().parts().stream().filter(part -> part.what() != Place.What.BED).toList();
        return List.of(one.kind(), one.weight(), one.accepted(), one.facts(), within);
    }

    /**
     * @param lifting     what one person lifts; heavier pieces get a dot
     * @param stacks      beds in the order of the cards
     */
    public static List<Page> pages(Lifting lifting, List<Stack> stacks, BenchOptions options) {
        BenchSheet sheet = new BenchSheet(CAUTION, options);
        List<List<Object>> shown = SecondThread.each(stacks, stack -> shown(stack, sheet));
        Map<List<Object>, List<Stack>> alike = new LinkedHashMap<>();
        for (int i = 0; i < stacks.size(); i++) alike.computeIfAbsent(shown.get(i), card -> new ArrayList<>()).add(stacks.get(i));
        List<BenchSheet.Draft> drafts = SecondThread.each(List.copyOf(alike.values()), beds -> new CourseCard(sheet, beds, lifting).drafts()).stream().flatMap(List::stream).toList();
        return sheet.pages(drafts.isEmpty() ? List.of(sheet.nothing("Course cards", "No beds stand in this garden yet.")) : drafts);
    }

    /** @param alike beds that differ in code and place alone; the first is drawn */
    private CourseCard(BenchSheet sheet, List<Stack> alike, Lifting lifting) {
        Stack first = alike.get(0);
        this.sheet = sheet;
        this.timber = sheet.imperial ? TIMBER_IN_FEET : TIMBER;
        this.work = first.work();
        this.beds = alike.stream().map(stack -> stack.work().bed()).toList();
        this.boards = beds.size() > 1 ? Map.of() : first.boards();
        this.lifting = lifting;
        this.notes = new CourseNotes(work, first.quantities(), sheet, beds.size() > 1);
        List<Finding> warnings = FindingList.merged(FindingList.singles(alike.stream().flatMap(stack -> stack.warnings().stream()).toList()));
        this.warning = WarningFrame.of(sheet, warnings.stream().map(Wording.of(sheet.imperial)::text).toList());
    }

    List<BenchSheet.Draft> drafts() {
        List<BenchSheet.Draft> drafts = new ArrayList<>();
        List<Course> courses = work.frame().courses();
        for (int i = 0; i < courses.size(); i += COURSES) {
            List<List<Course>> groups = alike(courses.subList(i, Math.min(courses.size(), i + COURSES)));
            // one ring has the whole sheet, its table beside it
            boolean together = groups.size() > 1 && above(groups).isPresent();
            List<List<List<Course>>> sheets = together ? List.of(groups) : groups.stream().map(List::of).toList();
            String title = "Course card, " + BenchSheet.named(beds, 4, sheet.space().width() * 0.5).replaceFirst("^Bed", "bed");
            for (List<List<Course>> some : sheets) drafts.add(new BenchSheet.Draft(title, about(), sheet(some, together)));
        }
        return drafts;
    }

    /** Courses whose timbers lie alike. */
    private List<List<Course>> alike(List<Course> courses) {
        return new ArrayList<>(courses.stream().collect(Collectors.groupingBy(
                course -> course.pieces().stream()
                        .map(piece -> List.of(piece.wall(), piece.part(), piece.lengthMm(), piece.start(), piece.end(), piece.seen()))
                        .toList(),
                LinkedHashMap::new, Collectors.toList())).values());
    }

    private String about() {
        Bed bed = work.bed();
        Box box = Box.round(bed.outline().corners());
        String section = sheet.written(bed.section().thicknessMm()) + " × " + sheet.written(bed.section().heightMm());
        return sheet.written(box.width()) + " × " + sheet.written(box.height()) + " over all, " + sheet.written(bed.heightMm())
                + " high: " + Measure.counted(bed.courses(), "course") + " of " + section
                + (notes.mitred() ? ", mitred corners" : bed.walls().lap() == Lap.TURNING ? ", alternating lap" : ", long-wall lap")
                + (beds.size() > 1 ? "; one copy for each bed" : "");
    }

    /** Turned so that wall A is in front, mirrored as the bed stands. */
    private Placement frame() {
        return new Placement(new Point(0, 0), 0, work.bed().placement().mirror());
    }

    private Box extent() {
        return Box.round(work.bed().outline().placed(frame()).corners());
    }

    /** What the warning and the words at the foot leave. */
    private Box space(List<List<Line>> words) {
        Box all = sheet.space();
        double foot = words.stream().mapToInt(List::size).max().orElse(0) * NOTE_PITCH + 9;
        return new Box(all.left(), all.low() + warning.heightMm(), all.right(), all.high() - foot);
    }

    /** A line of the foot, in the left or the right of two columns. */
    private record Line(String about, String words) {}

    /** The notes in lines of half the width, a note never split between the columns; the left one is the longer. */
    private List<List<Line>> lines(List<Course> courses, Set<String> homeless) {
        double wide = (sheet.space().width() - GAP) / 2 - ABOUT;
        List<List<Line>> notes = new ArrayList<>();
        for (CourseNotes.Note note : this.notes.notes(courses, homeless)) {
            List<String> wrapped = TextMeasure.wrap(note.words(), NOTE, false, wide);
            notes.add(IntStream.range(0, wrapped.size()).mapToObj(i -> new Line(i == 0 ? note.about() : "", wrapped.get(i))).toList());
        }
        int all = notes.stream().mapToInt(List::size).sum();
        List<Line> left = new ArrayList<>();
        List<Line> right = new ArrayList<>();
        for (List<Line> note : notes) (right.isEmpty() && 2 * left.size() < all ? left : right).addAll(note);
        return List.of(left, right);
    }

    private static double tableHeight(List<Course> group) {
        return TABLE_HEAD + ROW * group.get(0).pieces().size();
    }

    private double width(int groups) {
        return (sheet.space().width() - (Math.max(2, groups) - 1) * GAP) / Math.max(2, groups);
    }

    private double needed(List<Course> group) {
        return sum(timber) + group.size() * sum(COURSE);
    }

    /** Height of rings above their tables, side by side; empty where those leave no room for a ring. */
    private OptionalDouble above(List<List<Course>> groups) {
        Box space = space(lines(groups.stream().flatMap(List::stream).toList(), Set.of()));
        double tables = groups.stream().mapToDouble(CourseCard::tableHeight).max().orElse(0);
        boolean wide = groups.size() <= 2 || groups.stream().allMatch(group -> needed(group) <= width(groups.size()));
        double high = space.height() - HEAD - tables;
        return wide && high >= LEAST_RING ? OptionalDouble.of(high) : OptionalDouble.empty();
    }

    /** Once more where words found no room at a wall and so stand at the foot. */
    private List<Shape> sheet(List<List<Course>> groups, boolean above) {
        Set<String> homeless = new LinkedHashSet<>();
        while (true) {
            int before = homeless.size();
            List<List<Line>> words = lines(groups.stream().flatMap(List::stream).toList(), homeless);
            List<Shape> shapes = new ArrayList<>(warning.at(sheet.space().left(), sheet.space().low()));
            Box space = space(words);
            shapes.addAll(above ? columns(groups, space, homeless) : band(groups.get(0), space, homeless));
            if (homeless.size() > before) continue;
            shapes.addAll(foot(words, space));
            return shapes;
        }
    }

    private List<Shape> columns(List<List<Course>> groups, Box space, Set<String> homeless) {
        double width = width(groups.size());
        double tables = groups.stream().mapToDouble(CourseCard::tableHeight).max().orElse(0);
        List<Shape> shapes = new ArrayList<>();
        Scale scale = scale(width, space.height() - HEAD - tables);
        for (int i = 0; i < groups.size(); i++) {
            double left = space.left() + i * (width + GAP);
            if (i > 0) shapes.add(sheet.line(left - GAP / 2, space.low(), left - GAP / 2, space.high(), Inks.THIN));
            Box room = new Box(left, space.low() + HEAD, left + width, space.high() - tables);
            shapes.addAll(group(groups.get(i), scale, room, new Box(left, space.high() - tables, left + width, space.high()), homeless));
        }
        return shapes;
    }

    /** One ring with its table beside it. */
    private List<Shape> band(List<Course> group, Box space, Set<String> homeless) {
        double middle = space.right() - space.width() * TABLE;
        Box room = new Box(space.left(), space.low() + HEAD, middle - GAP, space.high());
        return group(group, scale(room.width(), room.height()), room, new Box(middle, space.low() + 2, space.right(), space.high()), homeless);
    }

    /** As large as the room allows; nobody measures from a ring. */
    private Scale scale(double wide, double high) {
        Box extent = extent();
        double needs = Math.max(extent.width() / (wide - 2 * RIM), extent.height() / (high - 2 * EDGE));
        return new Scale((int) Whole.up(Math.max(1, needs)));
    }

    private List<Shape> group(List<Course> group, Scale scale, Box room, Box table, Set<String> homeless) {
        List<Shape> shapes = new ArrayList<>();
        String numbers = group.stream().map(course -> String.valueOf(course.number())).collect(Collectors.joining(", "));
        boolean ground = group.get(0).number() == 1;
        boolean rim = group.get(group.size() - 1).number() == work.bed().courses();
        String words = (group.size() == 1 ? "Course " : "Courses ") + numbers
                + (ground ? group.size() == 1 ? ", on the ground" : ": 1 on the ground" : "")
                + (rim ? group.size() == 1 && !ground ? ", the rim" : ", " + work.bed().courses() + " the rim" : "");
        shapes.add(sheet.fitted(room.left(), room.low() - 2.2, words, TypeSize.ARMS_LENGTH, true,
                room.width()).as(Tag.subheading()));
        View view = View.centred(scale, extent(), room);
        CourseRing ring = new CourseRing(work, group.get(0), frame(), new Sketch(view, new Labels(room), sheet.inks, sheet.imperial), lifting);
        Map<String, String> atWalls = ground ? notes.atWalls() : Map.of();
        Map<String, int[]> diagonals = ground ? notes.diagonals() : Map.of();
        shapes.addAll(ring.shapes(atWalls, diagonals, homeless));
        List<Shape> whole = new ArrayList<>(List.of(new Shape.Group("course-" + group.get(0).number(), words, "course", shapes)));
        whole.addAll(table(group, table));
        return whole;
    }

    private List<Shape> table(List<Course> group, Box room) {
        double share = Math.min(1, room.width() / needed(group));
        double row = Math.min(ROW, (room.height() - TABLE_HEAD) / group.get(0).pieces().size());
        Tag tag = Tag.table();
        List<Shape> shapes = new ArrayList<>(heads(group, room, share, tag));
        double cut = group.get(0).pieces().stream()
                .mapToDouble(piece -> BenchSheet.fitting(sheet.written(piece.lengthMm()), TypeSize.ARMS_LENGTH, TypeSize.LEAST, true, timber[1] * share - 0.8))
                .min().orElse(TypeSize.ARMS_LENGTH);
        double y = room.low() + TABLE_HEAD;
        for (int i = 0; i < group.get(0).pieces().size(); i++) {
            shapes.add(sheet.line(room.left(), y, room.left() + needed(group) * share, y, Inks.HAIR));
            row(shapes, group, i, room.left(), y, row, share, cut, tag.row(timber.length + group.size()));
            y += row;
        }
        return shapes;
    }

    private List<Shape> heads(List<Course> group, Box room, double share, Tag tag) {
        List<Shape> shapes = new ArrayList<>();
        Tag told = tag.head(timber.length + group.size());
        String[] heads = {"wall", "cut to", "start", "end", Measure.KG.unit(sheet.imperial)};
        double x = room.left();
        for (int i = 0; i < heads.length; i++) {
            cell(shapes, x, room.low() + 4.4, heads[i], 2.8, false, timber[i] * share, told.cell(i));
            x += timber[i] * share;
        }
        for (int i = 0; i < group.size(); i++) {
            Course course = group.get(i);
            String full = course.number() + ": fixed, mark" + (boards.isEmpty() ? "" : ", board");
            boolean narrow = TextMeasure.widthMm(full, TypeSize.LEAST, false) > sum(COURSE) * share - 0.8;
            cell(shapes, x, room.low() + 4.4, narrow ? course.number() + ": mark" + (boards.isEmpty() ? "" : ", board") : full, 2.8, false, sum(COURSE) * share, told.cell(timber.length + i));
            x += sum(COURSE) * share;
        }
        return shapes;
    }

    /** A timber in each course: what tells it, then of each course a box to tick, its mark and its board. */
    private void row(List<Shape> shapes, List<Course> group, int i, double left, double y, double row, double share, double cut, Tag tag) {
        Piece piece = group.get(0).pieces().get(i);
        double base = y + row * 0.68;
        double kg = work.massKg(piece);
        String[] cells = {
            piece.wall() + piece.part(), sheet.written(piece.lengthMm()), words(piece.start()), words(piece.end()),
            Measure.KG.number(kg, 1, sheet.imperial) + (lifting.heavy(kg) ? " ●" : "")
        };
        double x = left;
        for (int k = 0; k < cells.length; k++) {
            cell(shapes, x, base, cells[k], k == 1 ? cut : TEXT, k < 2 || k == 4 && lifting.heavy(kg), timber[k] * share, tag.cell(k));
            x += timber[k] * share;
        }
        for (int k = 0; k < group.size(); k++) {
            Piece own = group.get(k).pieces().get(i);
            Tag told = tag.cell(timber.length + k);
            shapes.add(sheet.tick(x, y + row - 0.15, Math.min(Math.min(TypeSize.TICK, row - 0.3), COURSE[0] * share - 0.6)));
            sheet.mark(x + COURSE[0] * share, base, notes.mark(own), COURSE[1] * share - 0.8).forEach(line -> shapes.add(line.as(told)));
            cell(shapes, x + (COURSE[0] + COURSE[1]) * share, base, boards.getOrDefault(own.mark(), ""), TEXT, false, COURSE[2] * share, told);
            x += sum(COURSE) * share;
        }
    }

    private static double sum(double[] widths) {
        return DoubleStream.of(widths).sum();
    }

    private void cell(List<Shape> shapes, double x, double base, String words, double size, boolean bold, double width, Tag tag) {
        sheet.narrow(x, base, words, size, bold, width - 0.8).forEach(line -> shapes.add(line.as(tag)));
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

    private List<Shape> foot(List<List<Line>> words, Box space) {
        List<Shape> shapes = new ArrayList<>();
        double top = space.high();
        shapes.add(sheet.line(space.left() - 3, top, space.right() + 3, top, Inks.NARROW));
        double x = space.left();
        for (Legend.Entry entry : CourseRing.legend(sheet.inks, work)) {
            Box box = new Box(x, top + 1.4, x + 9, top + 5.4);
            shapes.addAll(entry.sample().apply(box));
            shapes.add(sheet.text(box.right() + 1.2, top + 4.4, entry.words(), 2.9, false).as(Tag.paragraph()));
            x = box.right() + 1.2 + TextMeasure.widthMm(entry.words(), 2.9, false) + 4;
        }
        if (x + TextMeasure.widthMm(scheme(), 2.9, false) < space.right()) shapes.add(sheet.end(space.right(), top + 4.4, scheme(), 2.9, false).as(Tag.paragraph()));
        for (int i = 0; i < words.size(); i++) {
            double left = space.left() + i * (space.width() + GAP) / 2;
            double y = top + 9.4;
            Tag note = Tag.paragraph();
            for (Line line : words.get(i)) {
                if (!line.about().isEmpty()) {
                    note = Tag.paragraph();
                    cell(shapes, left, y, line.about(), NOTE, true, ABOUT, note);
                }
                shapes.add(sheet.text(left + ABOUT, y, line.words(), NOTE, false).as(note));
                y += NOTE_PITCH;
            }
        }
        return shapes;
    }

    /** How the words beside a wall are read, by those of wall A. */
    private String scheme() {
        Piece piece = work.frame().courses().get(0).pieces().get(0);
        return CourseRing.words(piece, work.bed(), sheet.imperial) + ": wall, cut to, outside";
    }
}
