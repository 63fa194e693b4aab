package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import lapyard.construction.BedWork;
import lapyard.construction.Course;
import lapyard.construction.Piece;
import lapyard.drawing.Page;
import lapyard.drawing.Scale;
import lapyard.drawing.Shape;
import lapyard.drawing.TextMeasure;
import lapyard.geometry.Length;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Lap;

/** The card of one bed for whoever stacks it: each course seen from above, its timbers with marks, lengths and ends. */
public final class CourseCard {
    /** Courses on one page. */
    private static final int ROWS = 3;

    private static final double FILING = 20;
    private static final double EDGE = 10;
    private static final double HEAD = 15;
    private static final double TABLE = 74;
    private static final double RIM = 8;
    private static final double LINE = 4.3;
    private static final double TEXT = 2.6;
    private static final double GAP = 5;
    private static final double FOOT = Panel.BLOCK_HEIGHT + GAP;

    private final BedWork work;
    private final boolean imperial;
    private final double liftLimitKg;
    private final PlanOptions options;
    private final Inks inks;
    private final Box space;
    private final Panel panel;

    private CourseCard(BedWork work, boolean imperial, double liftLimitKg, PlanOptions options) {
        this.work = work;
        this.imperial = imperial;
        this.liftLimitKg = liftLimitKg;
        this.options = options;
        this.inks = new Inks(options.mono());
        this.space = new Box(FILING, EDGE, options.paper().shortMm - EDGE, options.paper().longMm - EDGE);
        this.panel = new Panel(SheetLayout.panelWidth(options.paper()), inks);
    }

    /**
     * One page of upright paper for up to three courses, as many pages as the bed has need of.
     *
     * @param garden      name for the title block
     * @param liftLimitKg what one person lifts; heavier pieces are marked
     * @param options     a scale here is the scale of the rings
     * @throws DoesNotFit where a ring is too large for the paper at the scale asked for
     */
    public static List<Page> draw(
            BedWork work, String garden, boolean imperial, double liftLimitKg, PlanOptions options) {
        CourseCard card = new CourseCard(work, imperial, liftLimitKg, options);
        Scale scale = card.scale();
        List<Page> pages = new ArrayList<>();
        int count = work.courses().size();
        int of = Math.max(1, (count + ROWS - 1) / ROWS);
        for (int i = 0; i < of; i++) {
            List<Course> some = work.courses().subList(i * ROWS, Math.min(count, (i + 1) * ROWS));
            pages.add(card.page(some, garden, scale, (i + 1) + " of " + of));
        }
        return pages;
    }

    /** Turned so that wall A is in front, mirrored as the bed stands. */
    private Placement frame() {
        return new Placement(new Point(0, 0), 0, work.bed().placement().mirror());
    }

    private Box extent() {
        return Box.round(work.bed().outline().placed(frame()).corners());
    }

    private double rowHeight() {
        int rows = Math.min(ROWS, Math.max(1, work.courses().size()));
        return (space.height() - HEAD - FOOT) / rows;
    }

    private Scale scale() {
        Box extent = extent();
        double wide = space.width() - TABLE - 2 * RIM - GAP;
        double high = rowHeight() - 2 * RIM - 6;
        double needs = Math.max(extent.width() / wide, extent.height() / high);
        Scale usual = Scale.usual(needs - 1e-9, imperial);
        options.scale().filter(asked -> asked.n() < needs - 1e-9).ifPresent(asked -> {
            double missing = Math.max(asked.paperMm(extent.width()) - wide, asked.paperMm(extent.height()) - high);
            throw new DoesNotFit(options.paper(), asked, missing, usual);
        });
        return options.scale().orElse(usual);
    }

    private Page page(List<Course> courses, String garden, Scale scale, String sheet) {
        List<Shape> shapes = new ArrayList<>();
        shapes.add(PlanDrawing.frame(options.paper().shortMm, options.paper().longMm, space, inks));
        shapes.addAll(head());
        double y = space.low() + HEAD;
        for (Course course : courses) {
            shapes.add(row(course, scale, y));
            y += rowHeight();
        }
        shapes.addAll(foot(garden, scale, sheet));
        return new Page(
                "Course card, bed " + work.bed().id() + ", sheet " + sheet,
                options.paper().shortMm,
                options.paper().longMm,
                shapes);
    }

    private List<Shape> head() {
        Bed bed = work.bed();
        Box box = Box.round(bed.outline().corners());
        boolean named = !bed.name().isBlank() && !bed.name().equals(bed.id());
        String title = TextMeasure.cut("Bed " + bed.id() + (named ? ", " + bed.name() : ""), 5, true, space.width() - 2 * GAP);
        String section = written(bed.section().thicknessMm()) + " × " + written(bed.section().heightMm());
        String about = written(box.width()) + " × " + written(box.height()) + " over all, " + written(bed.heightMm())
                + " high in " + bed.courses() + (bed.courses() == 1 ? " course" : " courses") + " of " + section
                + (bed.lap() == Lap.TURNING ? ", turning lap" : ", long-wall lap");
        return List.of(
                text(space.left() + GAP, space.low() + 7, title, 5, true),
                text(space.left() + GAP, space.low() + 12, about, TEXT, false));
    }

    private Shape row(Course course, Scale scale, double top) {
        List<Shape> shapes = new ArrayList<>();
        shapes.add(Shape.Lines.of(
                inks.pen(Inks.NARROW), new Point(space.left(), top), new Point(space.right(), top)));
        String words = "Course " + course.number() + (course.number() == 1 ? ", on the ground" : "")
                + (course.number() == work.bed().courses() ? ", the rim" : "");
        shapes.add(text(space.left() + GAP, top + 5, words, 3.2, true));
        Box room = new Box(space.left(), top + 6, space.right() - TABLE - GAP, top + rowHeight());
        Box extent = extent();
        View view = new View(
                scale,
                new Point(
                        room.centre().x() - scale.paperMm(extent.centre().x()),
                        room.centre().y() + scale.paperMm(extent.centre().y())));
        CourseRing ring = new CourseRing(work, course, frame(), view, inks, imperial);
        shapes.addAll(ring.shapes(new Labels(room)));
        shapes.addAll(table(course, space.right() - TABLE, top + 5));
        return new Shape.Group("course-" + course.number(), words, "course", shapes);
    }

    /** Rows narrow rather than run into the next course. */
    private List<Shape> table(Course course, double x, double top) {
        double[] at = {0, 19, 40, 56};
        double line = Math.min(LINE, (rowHeight() - 9) / Math.max(1, course.pieces().size()));
        double size = Math.min(TEXT, line * 0.72);
        List<Shape> shapes = new ArrayList<>();
        String[] heads = {"mark", "length", "runs past", "kg"};
        for (int i = 0; i < heads.length; i++) {
            shapes.add(text(x + at[i], top, heads[i], 2, false));
        }
        double y = top + line;
        for (Piece piece : course.pieces()) {
            double kg = massKg(piece);
            shapes.add(text(x + at[0], y, TextMeasure.cut(piece.mark(), size, true, 18), size, true));
            shapes.add(text(x + at[1], y, written(piece.lengthMm()), size, false));
            shapes.add(text(x + at[2], y, piece.runsPast().name().toLowerCase(Locale.ROOT), size, false));
            String lift = String.format(Locale.ROOT, "%.1f", kg) + (kg > liftLimitKg ? " two" : "");
            shapes.add(text(x + at[3], y, lift, size, kg > liftLimitKg));
            y += line;
        }
        return shapes;
    }

    /** Length by section by density of the wet timber. */
    private double massKg(Piece piece) {
        var section = work.bed().section();
        return piece.lengthMm() * section.thicknessMm() * section.heightMm() * section.densityKgM3() / 1e9;
    }

    private List<Shape> foot(String garden, Scale scale, String sheet) {
        double width = SheetLayout.panelWidth(options.paper());
        double left = space.right() - GAP / 2 - width;
        double top = space.high() - GAP / 2 - Panel.BLOCK_HEIGHT;
        List<Shape> shapes = new ArrayList<>();
        shapes.add(Shape.Lines.of(
                inks.pen(Inks.NARROW), new Point(space.left(), top - 1), new Point(space.right(), top - 1)));
        Panel narrow = new Panel(left - GAP - space.left() - GAP, inks);
        shapes.addAll(narrow.bar(scale, imperial, space.left() + GAP + 4, space.high() - 9, left - space.left() - 3 * GAP - 8));
        Panel.Title title = new Panel.Title(
                garden.isBlank() ? "Garden" : garden, "Course card", options.revision(), options.date(), sheet,
                options.paper().label(), imperial);
        shapes.addAll(panel.title(title, scale, left, space.high() - GAP / 2 - Panel.BLOCK_HEIGHT));
        Columns notes = new Columns(
                List.of(new Box(space.left() + GAP, top, left - GAP, space.high() - 14)));
        for (Panel.Piece piece : notes(narrow)) {
            shapes.addAll(notes.put(piece));
        }
        return shapes;
    }

    private List<Panel.Piece> notes(Panel narrow) {
        List<Panel.Piece> pieces = new ArrayList<>();
        pieces.add(narrow.entry(new Legend.Entry(
                "bar: this end runs past the corner", box -> CourseRing.sample(box, true, false, inks))));
        if (!work.notches().isEmpty()) {
            pieces.add(narrow.entry(new Legend.Entry(
                    "wave: drain notch on the underside, cut before course 1 is laid",
                    box -> CourseRing.sample(box, false, true, inks))));
        }
        pieces.add(narrow.words("Seen from above, wall A in front" + (frame().equals(Placement.NONE) ? "" : ", mirrored as this bed stands")
                + ". A mark is bed, course, wall; joined parts are a, b from the wall's start.", 9));
        pieces.add(narrow.words("two: over " + (long) liftLimitKg + " kg, lift with two people.", 9));
        pieces.add(narrow.words("Treated timber: gloves and mask at the saw, seal the cut ends, burn no offcuts.", 9));
        return pieces;
    }

    private String written(double mm) {
        return Length.written(mm, imperial);
    }

    private Shape text(double x, double y, String words, double size, boolean bold) {
        return new Shape.Text(new Point(x, y), words, size, Shape.Anchor.START, 0, bold, inks.ink());
    }
}
