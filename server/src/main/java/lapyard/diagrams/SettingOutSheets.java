package lapyard.diagrams;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import lapyard.drawing.Page;
import lapyard.drawing.Scale;
import lapyard.drawing.Shape;
import lapyard.drawing.Stroke;
import lapyard.geometry.Point;
import lapyard.ground.Pegs;
import lapyard.ground.SettingOut;
import lapyard.plan.Baseline;
import lapyard.plan.Garden;

/** The sheets by which beds are pegged out: the yard to scale with its baseline, then bed by bed. */
public final class SettingOutSheets {
    private SettingOutSheets() {}

    private static final String CAUTION =
            "Find buried pipes and cables before a peg is driven. Two people to a tape, held level. Cap the pegs: they trip and they stab.";

    private static final double TEXT = 4.2;

    /** Distances on a tape that are one. */
    private static final double SAME_MM = 0.5;

    /**
     * @param out with a baseline
     * @return one page for the yard, then the beds, as many to a page as fit
     */
    public static List<Page> pages(Garden garden, SettingOut out, BenchOptions options) {
        // the same on sheets with smaller type; places for the names of many beds take long to find
        BenchSheet.Draft plan = new SettingOutPlan(garden, out, new BenchSheet(CAUTION, options), out.baseline().orElseThrow(), new ArrayList<>()).draft();
        return BenchSheet.pages(CAUTION, options, sheet -> {
            List<BenchSheet.Draft> drafts = new ArrayList<>(List.of(plan));
            Flow flow = new Flow(
                    sheet,
                    "Setting-out, bed by bed",
                    "along and off the baseline, tapes from both its ends; all within " + sheet.written(Pegs.TOLERANCE_MM));
            if (garden.ground().baseline().isEmpty()) {
                flow.words(List.of("No baseline was chosen: all is measured from the front of the yard, or from its longest side where the front is a corner."), TEXT, false);
            }
            flow.words(List.of("Tape laid once along the baseline: " + String.join(", ", running(out).stream().map(sheet::written).toList()) + "."), TEXT, true);
            out.square()
                    .ifPresent(square -> flow.words(
                            List.of("Square to the baseline at its start: " + sheet.written(square.alongMm()) + " along, "
                                    + sheet.written(square.otherMm()) + " off, " + sheet.written(square.acrossMm())
                                    + " across from mark to mark."),
                            TEXT,
                            false));
            // feet and sixteenths may need the whole width
            List<SettingOutBed> all = out.beds().stream().map(pegs -> new SettingOutBed(pegs, sheet)).toList();
            ToDoubleFunction<Integer> size = columns -> all.stream().mapToDouble(bed -> bed.size(flow.columnWidth(columns, Flow.APART))).min().orElse(TypeSize.LEAST);
            int columns = size.applyAsDouble(2) >= TypeSize.LEAST ? 2 : 1;
            double wide = flow.columnWidth(columns, Flow.APART);
            double type = Math.max(TypeSize.LEAST, size.applyAsDouble(columns));
            List<Flow.Block> beds = new ArrayList<>();
            List<SettingOutBed> large = new ArrayList<>();
            all.forEach(bed -> bed.block(flow, wide, type).ifPresentOrElse(beds::add, () -> large.add(bed)));
            flow.columns(columns, Flow.APART, beds);
            large.forEach(bed -> bed.table(flow));
            drafts.addAll(flow.drafts());
            return drafts;
        });
    }

    /** Every distance along the baseline once, shortest first. */
    static TreeSet<Double> running(SettingOut out) {
        TreeSet<Double> marks = new TreeSet<>();
        for (SettingOut.BedPegs bed : out.beds()) {
            for (double mark : bed.pegs().runningMm()) {
                Double before = marks.floor(mark + SAME_MM);
                if (before == null || mark - before > SAME_MM) {
                    marks.add(mark);
                }
            }
        }
        return marks;
    }

    /** The yard to scale with its baseline, the distances along it, and where each bed begins. */
    private record SettingOutPlan(Garden garden, SettingOut out, BenchSheet sheet, Baseline line, List<Shape> shapes) {
        /** Round the drawing, for the numbers beside the baseline. */
        private static final double RIM = 19;

        private static final double FOOT = 23;
        private static final double NUMBER = 3.4;

        /** How far numbers go past the ends of the baseline: further on their leaders would be one line. */
        private static final double ASIDE = 15;

        /** With more beds than this their offsets stand in the tables alone. */
        private static final int MOST_OFFSETS = 24;

        BenchSheet.Draft draft() {
            Box space = sheet.space();
            Box field = new Box(space.left(), space.low(), space.right(), space.high() - FOOT);
            View view = View.usual(Box.round(garden, List.of(line.from(), line.to())), field, RIM, garden.imperial());
            Scale scale = view.scale();
            Labels labels = new Labels(field);
            garden.ground().outline().forEach(yard -> shapes.add(Shape.Area.outline(view.on(yard), sheet.inks.pen(Inks.MEDIUM))));
            Point a = view.on(line.from());
            Point b = view.on(line.to());
            labels.solid(List.of(a, b, b.moved(a.way(b), 0, RIM), a.moved(a.way(b), 0, RIM)));
            beds(view, labels);
            int left = baseline(view, labels);
            Panel panel = new Panel(110, sheet.inks);
            shapes.addAll(panel.barAndNorth(
                    scale, garden, false, space.right() - 112, space.high() - 20));
            shapes.add(sheet.text(
                    space.left(), space.high() - 11, "Scale " + scale.label(garden.imperial()), 4.2, true));
            shapes.add(sheet.text(
                    space.left(),
                    space.high() - 5,
                    "Peg P1 is the start of wall A; pegs go round the bed counter-clockwise.",
                    3.2,
                    false));
            if (left > 0) shapes.add(sheet.text(space.left(), space.high() - 17, left + " of the distances along the baseline have no room here: the next sheet has all.", 3.2, false));
            String base = sheet.written(line.from().distanceMm(line.to()));
            return new BenchSheet.Draft(
                    "Setting-out", "baseline " + base + " long, " + out.beds().size() + " beds", shapes);
        }

        private void beds(View view, Labels labels) {
            Map<List<Point>, Words> outside = new LinkedHashMap<>();
            for (SettingOut.BedPegs bed : out.beds()) {
                List<Point> ring = view.on(bed.bed().inYard());
                shapes.add(sheet.inks.timber().area(ring, sheet.inks.pen(Inks.THIN)));
                for (Point peg : ring) {
                    shapes.add(Shape.Circle.dot(peg, 0.7, sheet.inks.ink()));
                }
                Words words = Words.of(bed.bed().id(), 4, true);
                labels.solid(ring);
                labels.within(ring, words).ifPresentOrElse(plate -> shapes.addAll(words.on(plate, sheet.inks)), () -> outside.put(ring, words));
            }
            outside.forEach((ring, words) -> labels.anywhere(ring, words)
                    .ifPresent(led -> shapes.addAll(words.led(labels, led, sheet.inks.pen(Inks.THIN), sheet.inks))));
        }

        /** @return how many distances have no room */
        private int baseline(View view, Labels labels) {
            Point a = view.on(line.from());
            Point b = view.on(line.to());
            // On the paper y runs down: left of this on the paper is right of the baseline as one walks it, away from the numbers
            Point way = a.way(b);
            Stroke pen = Stroke.of(sheet.inks.water(), Inks.BROAD);
            shapes.add(Shape.Lines.of(pen, a, b));
            for (Point end : List.of(a, b)) {
                shapes.add(Shape.Lines.of(pen, end.moved(way, 0, -2), end.moved(way, 0, 2)));
            }
            if (out.beds().size() <= MOST_OFFSETS) {
                offsets(view, labels);
            }
            double turn = Math.toDegrees(Math.atan2(-way.x(), -way.y()));
            List<Double> all = marks();
            Spread spread = Spread.of(all, mark -> view.scale().paperMm(mark), Math.min(ASIDE, room(a, b.way(a))), Math.min(a.distanceMm(b) + ASIDE, room(a, way)));
            for (int i = 0; i < spread.marks().size(); i++) {
                double mark = spread.marks().get(i);
                double place = view.scale().paperMm(mark);
                double beside = spread.beside().get(i);
                Point tick = a.moved(way, place, 0);
                Point foot = a.moved(way, beside, 3.5);
                shapes.add(Shape.Lines.of(sheet.inks.pen(Inks.NARROW), tick, foot));
                String words = sheet.written(mark);
                double readable = GroundShapes.readable(turn);
                boolean flipped = Math.abs(readable - turn) > 1 && Math.abs(Math.abs(readable - turn) - 360) > 1;
                double base = NUMBER * Shape.Text.CAPITALS / 2;
                // The base line lies beside the leader by half a capital.
                double side = flipped ? -base : base;
                Point at = foot.moved(way, 0, 0.8).moved(way, side, 0);
                shapes.add(new Shape.Text(
                        at, words, NUMBER, flipped ? Shape.Anchor.END : Shape.Anchor.START, readable, false, sheet.inks.ink()));
            }
            return all.size() - spread.marks().size();
        }

        /** With both ends of the baseline. */
        private List<Double> marks() {
            double whole = line.from().distanceMm(line.to());
            TreeSet<Double> marks = new TreeSet<>(List.of(0.0, whole));
            running(out).stream().filter(mark -> Math.abs(mark) > SAME_MM && Math.abs(mark - whole) > SAME_MM).forEach(marks::add);
            return List.copyOf(marks);
        }

        /** How far numbers may go from a place on the sheet. */
        private double room(Point from, Point way) {
            Box space = sheet.space();
            double x = way.x() == 0 ? Double.MAX_VALUE : ((way.x() > 0 ? space.right() : space.left()) - from.x()) / way.x();
            double y = way.y() == 0 ? Double.MAX_VALUE : ((way.y() > 0 ? space.high() - FOOT : space.low()) - from.y()) / way.y();
            return Math.min(x, y) - Spread.PITCH / 2;
        }

        /** From the baseline square off to each bed's first peg. */
        private void offsets(View view, Labels labels) {
            Point from = line.from();
            Point way = from.way(line.to());
            List<Shape> numbers = new ArrayList<>();
            for (SettingOut.BedPegs bed : out.beds()) {
                Pegs.Peg first = bed.pegs().pegs().get(0);
                if (Math.abs(first.offMm()) < 1) {
                    continue;
                }
                Point foot = view.on(from.moved(way, first.alongMm(), 0));
                Point peg = view.on(bed.bed().inYard().corner(0));
                shapes.add(Shape.Lines.of(sheet.inks.pen(Inks.NARROW).dashed(1.6, 1.1), foot, peg));
                Words words = Words.of(sheet.written(first.offMm()), NUMBER, false);
                labels.firstClear(words.along(foot, peg, 0.5, 0.35, 0.65, 0.2, 0.8, 0.87, 0.92, 0.95))
                        .ifPresent(plate -> numbers.addAll(words.on(plate, sheet.inks.ink(), Optional.of(sheet.inks.paper()))));
            }
            shapes.addAll(numbers);
        }
    }
}
