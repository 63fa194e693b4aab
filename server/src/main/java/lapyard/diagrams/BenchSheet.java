package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import lapyard.drawing.Page;
import lapyard.drawing.Shape;
import lapyard.drawing.Tag;
import lapyard.drawing.TextMeasure;
import lapyard.geometry.Length;
import lapyard.geometry.ScrewLength;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.BedNames;
import lapyard.words.Wording;

/** What all sheets for the bench have in common: frame, heading, stamp, caution, and sheet n of m. */
final class BenchSheet {
    private static final double HEAD = 15;
    private static final double FOOT = 6;
    private static final double STAMP = 9;
    private static final double GAP = 3;
    private static final double MARK = 3.6;

    /** Parts of the usual sizes, tried in this order. */
    static final double[] CLOSER = {0.94, 0.88, 0.82};

    /** One sheet saved of more than these is not worth smaller type on all of them, nor laying all out again. */
    static final int FEW_SHEETS = 40;

    /** A sheet of which less than this part is used. */
    static final double NEARLY_EMPTY = 0.25;

    private final String caution;
    private final BenchOptions options;
    final boolean imperial;
    final Inks inks;

    /** Type and gaps are so large a part of what is usual. */
    final double close;

    /** Where little goes on from one sheet to the next, more does. */
    final boolean shares;

    private final Box frame;

    /**
     * One sheet before it is known how many there will be.
     *
     * @param kinds headings of all that stands on it; the first is that of the sheet
     * @param thin  whether it begins with so little of what goes on from the sheet before that this had better stand there
     * @param used  part of its height
     */
    record Draft(List<String> kinds, String about, List<Shape> shapes, boolean thin, double used) {
        Draft(String kind, String about, List<Shape> shapes) {
            this(List.of(kind), about, shapes, false, 1);
        }

        String kind() {
            return kinds.get(0);
        }
    }

    /**
     * Sheets as they are usually laid out, or, where they are few, with smaller type and gaps if so little goes on to another
     * sheet that these save it. If one before the last is nearly empty all the same, the one before it shares what it holds.
     *
     * @param caution the line at the foot of every sheet
     * @param lay     draws the same on sheets of any {@link #close}
     */
    static List<Page> pages(String caution, BenchOptions options, Function<BenchSheet, List<Draft>> lay) {
        BenchSheet sheet = new BenchSheet(caution, options);
        List<Draft> best = lay.apply(sheet);
        for (int i = 0; i < CLOSER.length && best.size() <= FEW_SHEETS && thin(best) > 0; i++) {
            BenchSheet closer = new BenchSheet(caution, options, CLOSER[i], false);
            List<Draft> drafts = lay.apply(closer);
            if (drafts.size() < best.size() || drafts.size() == best.size() && thin(drafts) < thin(best)) {
                best = drafts;
                sheet = closer;
            }
        }
        if (nearlyEmpty(best) > 0) {
            List<Draft> shared = lay.apply(new BenchSheet(caution, options, sheet.close, true));
            if (shared.size() == best.size() && nearlyEmpty(shared) < nearlyEmpty(best)) best = shared;
        }
        return sheet.pages(best);
    }

    /**
     * As {@link #pages(String, BenchOptions, Function)}, of what flows from sheet to sheet below one heading.
     *
     * @param empty what a sheet says where nothing is laid out
     */
    static List<Page> pages(String caution, BenchOptions options, String kind, String about, String empty, Consumer<Flow> lay) {
        return pages(caution, options, sheet -> {
            Flow flow = new Flow(sheet, kind, about);
            lay.accept(flow);
            List<Draft> drafts = flow.drafts();
            return drafts.isEmpty() ? List.of(sheet.nothing(kind, empty)) : drafts;
        });
    }

    /** The last may be: there is nothing more. */
    private static long nearlyEmpty(List<Draft> drafts) {
        return drafts.stream().limit(Math.max(0, drafts.size() - 1)).filter(draft -> draft.used() < NEARLY_EMPTY).count();
    }

    private static long thin(List<Draft> drafts) {
        return drafts.stream().filter(Draft::thin).count();
    }

    /** @param caution the line at the foot of every sheet */
    BenchSheet(String caution, BenchOptions options) {
        this(caution, options, 1, false);
    }

    BenchSheet(String caution, BenchOptions options, double close, boolean shares) {
        this.close = close;
        this.shares = shares;
        this.caution = caution;
        this.imperial = options.imperial();
        this.options = options;
        this.inks = new Inks(options.mono());
        this.frame = SheetLayout.frame(options.paper().longMm, options.paper().shortMm);
    }

    /** A size of type on these sheets. */
    double size(double usual) {
        return Math.max(TypeSize.LEAST, usual * close);
    }

    /** A sheet that says why it is empty. */
    Draft nothing(String kind, String why) {
        return new Draft(kind, "", List.of(text(space().left(), space().low() + 8, why, 5, true)));
    }

    /** Where a sheet is free to be drawn on. */
    Box space() {
        double stamp = options.stamp().stale().isPresent() ? STAMP : 0;
        return new Box(frame.left() + GAP, frame.low() + HEAD + stamp + GAP, frame.right() - GAP, frame.high() - FOOT - 1);
    }

    List<Page> pages(List<Draft> drafts) {
        List<Page> pages = new ArrayList<>();
        for (Draft draft : drafts) {
            String sheet = "sheet " + (pages.size() + 1) + " of " + drafts.size();
            List<Shape> shapes = new ArrayList<>();
            shapes.add(Shape.Area.outline(frame.corners(), inks.pen(Inks.BROAD)));
            shapes.addAll(head(draft, sheet));
            shapes.addAll(stamp());
            shapes.addAll(draft.shapes());
            shapes.add(line(frame.left(), frame.high() - FOOT, frame.right(), frame.high() - FOOT, Inks.NARROW));
            shapes.add(fitted(frame.left() + GAP, frame.high() - 1.9, caution, 2.7, false,
                    frame.width() - 2 * GAP).as(Tag.paragraph()));
            pages.add(new Page(
                    draft.kind() + ", " + sheet, options.paper().longMm, options.paper().shortMm, shapes, draft.kinds()));
        }
        return pages;
    }

    private List<Shape> head(Draft draft, String sheet) {
        double left = frame.left() + GAP;
        double right = frame.right() - GAP;
        double room = frame.width() - 2 * GAP;
        double first = frame.low() + 7;
        double second = frame.low() + 12.6;
        double large = fitting(draft.kind(), 6, 4, true, room * 0.6);
        String kind = TextMeasure.cut(draft.kind(), large, true, room * 0.6);
        double place = right - TextMeasure.widthMm(sheet, 5, true) - 5;
        double wide = place - left - TextMeasure.widthMm(kind, large, true) - 5;
        String date = options.stamp().dateBeside();
        String stamped = (options.stamp().revision().isEmpty() ? "no revision kept" : options.stamp().revision()) + (date.isEmpty() ? "" : ", " + date);
        List<Shape> shapes = new ArrayList<>();
        shapes.add(text(left, first, kind, large, true).as(Tag.heading()));
        shapes.add(fitted(left, second, draft.about(), 3.6, false, room * 0.68).as(Tag.paragraph()));
        shapes.add(end(right, first, sheet, 5, true).as(Tag.RUNNING_HEAD));
        String named = options.garden().isBlank() ? "Garden" : options.garden();
        double small = fitting(named, 4, TypeSize.LEAST, true, wide);
        shapes.add(end(place, first, TextMeasure.cut(named, small, true, wide), small, true).as(Tag.RUNNING_HEAD));
        shapes.add(end(right, second, TextMeasure.cut(stamped, 3, false, room * 0.3), 3, false).as(Tag.RUNNING_HEAD));
        shapes.add(line(frame.left(), frame.low() + HEAD, frame.right(), frame.low() + HEAD, Inks.WIDE));
        return shapes;
    }

    private List<Shape> stamp() {
        Box band = new Box(frame.left(), frame.low() + HEAD, frame.right(), frame.low() + HEAD + STAMP);
        return options.stamp().stale().map(why -> inks.stale(why, band, 4.6)).stream().toList();
    }

    /** In whole millimetres, or in feet, inches and sixteenths. */
    String written(double mm) {
        return Length.whole(mm, imperial);
    }

    /** The length of a screw, as it is sold in inches. */
    String screw(double mm) {
        return imperial ? ScrewLength.inches(mm) : written(mm);
    }

    /** To a tenth of a millimetre: a kerf or a gap, which is many times on a sheet. */
    String fine(double mm) {
        return Length.written(mm, imperial);
    }

    Shape.Text text(double x, double y, String words, double size, boolean bold) {
        return inks.text(x, y, words, size, bold);
    }

    /** As large as fits the width, from {@code most} down to the least size of type; there its end is cut off. */
    Shape.Text fitted(double x, double y, String words, double most, boolean bold, double widthMm) {
        double size = fitting(words, most, TypeSize.LEAST, bold, widthMm);
        return text(x, y, TextMeasure.cut(words, size, bold, widthMm), size, bold);
    }

    /** In bold about a place, as large as fits the width. */
    Shape.Text middle(double x, double y, String words, double most, double widthMm) {
        double size = fitting(words, most, TypeSize.LEAST, true, widthMm);
        return Inks.sign(new Point(x, y), words, size, inks.ink());
    }

    Shape.Text end(double x, double y, String words, double size, boolean bold) {
        return inks.end(x, y, words, size, bold);
    }

    Shape line(double x0, double y0, double x1, double y1, double pen) {
        return Shape.Lines.of(inks.pen(pen), new Point(x0, y0), new Point(x1, y1));
    }

    /** An empty box to tick, its lower left corner on the base line of the text beside it. */
    Shape tick(double x, double y, double side) {
        return Inks.plain(inks.paper()).area(new Box(x, y - side, x + side, y), inks.pen(Inks.MEDIUM));
    }

    /** {@code Bed M, Herbs} or {@code Beds 1-8, 12: Herbs}, cut off where it is too wide. */
    static String named(List<Bed> beds, double size, double widthMm) {
        List<String> names = beds.stream()
                .filter(bed -> !bed.name().isBlank() && !bed.name().equals(bed.id()))
                .map(Bed::name)
                .distinct()
                .toList();
        String words = Wording.capital(BedNames.where(beds.stream().map(Bed::id).toList()))
                + (names.isEmpty() ? "" : (beds.size() == 1 ? ", " : ": ") + String.join(", ", names));
        return TextMeasure.cut(words, size, true, widthMm);
    }

    /** The number of a board in its ring, left of words on this base line. */
    List<Shape> boardNumber(double left, double base, String number) {
        return List.of(ring(left + 4, base - 1.5, 3.2), middle(left + 4, base - 1.5, number, 4, 5.6));
    }

    /** Of the colour of timber. */
    Shape ring(double x, double y, double radius) {
        return new Shape.Circle(new Point(x, y), radius, inks.timber().fill(), Optional.of(inks.pen(Inks.MEDIUM)));
    }

    /** A mark in bold, see {@link #narrow}. */
    List<Shape.Text> mark(double x, double base, String words, double room) {
        return narrow(x, base, words, MARK, true, room);
    }

    /** Words that are smaller where the room is narrow, then in two lines; cut off only where these are too wide as well. */
    List<Shape.Text> narrow(double x, double base, String words, double most, boolean bold, double room) {
        double size = fitting(words, most, TypeSize.LEAST, bold, room);
        List<String> lines = TextMeasure.wrap(words, size, bold, room);
        if (lines.size() != 2) return List.of(text(x, base, TextMeasure.cut(words, size, bold, room), size, bold));
        return List.of(text(x, base - size * 0.75, lines.get(0), size, bold), text(x, base + size * 0.4, lines.get(1), size, bold));
    }

    /** The largest of {@code most}, nine tenths of it and so on at which the words are no wider; {@code least} at the end. */
    static double fitting(String words, double most, double least, boolean bold, double widthMm) {
        double size = most;
        while (size > least && TextMeasure.widthMm(words, size, bold) > widthMm) {
            size = Math.max(least, size * 0.9);
        }
        return size;
    }
}
