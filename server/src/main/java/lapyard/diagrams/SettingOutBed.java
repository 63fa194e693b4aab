package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import lapyard.diagrams.BenchTable.Column;
import lapyard.drawing.Scale;
import lapyard.drawing.Shape;
import lapyard.drawing.Stroke;
import lapyard.drawing.Tag;
import lapyard.drawing.TextMeasure;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.ground.Pegs;
import lapyard.ground.SettingOut;
import lapyard.plan.Bed;

/** One bed on the setting-out sheet: to scale with its pegs on the left, the numbers to tape on the right. */
record SettingOutBed(SettingOut.BedPegs bed, BenchSheet sheet) {
    private static final double TITLE = 7;
    private static final double HEAD = 5.5;
    private static final double ROW = 5.8;
    private static final double TEXT = TypeSize.ARMS_LENGTH;
    private static final double SMALL = 3;
    private static final double HEADS_SIZE = 2.9;
    private static final double LEAST_DRAWING = 28;
    private static final String STRING_PEGS = "String pegs";
    /** Enough to find any corner that is off; more are not read. */
    private static final int MOST_DIAGONALS = 8;

    private static final double DRAWING_SHARE = 0.34;
    private static final double RIM = 8;
    private static final List<String> HEADS = List.of("peg", "along", "off", "from start", "from end", "level");

    /** Of the table's width; the first columns are printed heavy. */
    private static final double[] SHARES = {0.1, 0.18, 0.18, 0.2, 0.18, 0.16};

    private static final int HEAVY = 3;
    private static final double GAP = 1.5;
    private static final double APART_MM = 2;

    /**
     * As a block of a width; empty where no sheet could hold it whole.
     *
     * @param size of all numbers
     */
    Optional<Flow.Block> block(Flow flow, double wide, double size) {
        Flow.Block words = Flow.Block.of(flow.lines(paragraphs(), SMALL, false, wide));
        double middle = Math.max(LEAST_DRAWING, HEAD + bed.pegs().pegs().size() * ROW);
        double height = TITLE + middle + 1 + words.heightMm() + 1.4;
        if (height > sheet.space().height()) return Optional.empty();
        return Optional.of(new Flow.Block(height, false, (left, top) -> {
            double drawn = wide * DRAWING_SHARE;
            List<Shape> shapes = new ArrayList<>();
            shapes.add(sheet.line(left, top, left + wide, top, Inks.THIN));
            shapes.add(sheet.text(left, top + 5.6, BenchSheet.named(List.of(bed.bed()), 5.4, wide), 5.4, true).as(Tag.subheading()));
            shapes.addAll(drawing(new Box(left, top + TITLE, left + drawn, top + TITLE + middle)));
            Box right = new Box(left + drawn + APART_MM, 0, left + wide, 0);
            double y = top + TITLE;
            Tag table = Tag.table();
            shapes.addAll(row(HEADS, right, y + 4, HEADS_SIZE, false, table.head(HEADS.size())));
            y += HEAD;
            shapes.add(sheet.line(right.left(), y - 0.8, right.right(), y - 0.8, Inks.THIN));
            for (List<String> cells : rows()) {
                shapes.addAll(row(cells, right, y + 4.4, size, true, table.row(HEADS.size())));
                y += ROW;
                shapes.add(sheet.line(right.left(), y - 0.4, right.right(), y - 0.4, Inks.HAIR));
            }
            shapes.addAll(words.drawer().at(left, top + TITLE + middle + 1));
            return shapes;
        }));
    }

    /** With very many corners: rows that run on over sheets. */
    void table(Flow flow) {
        BenchTable table = new BenchTable(
                sheet, BenchSheet.named(List.of(bed.bed()), 4.6, sheet.space().width()), new Column("peg", 0.1, true),
                        new Column("along", 0.18, true),
                new Column("off", 0.18, true), new Column("from start", 0.18, false),
                new Column("from end", 0.18, false), new Column("level", 0.18, false));
        rows().forEach(cells -> table.row(cells.toArray(String[]::new)));
        table.on(flow);
        flow.words(paragraphs(), SMALL, false);
    }

    private List<List<String>> rows() {
        List<List<String>> rows = new ArrayList<>();
        Optional<Double> lowest = bed.lowestDropMm();
        for (int i = 0; i < bed.pegs().pegs().size(); i++) {
            Pegs.Peg peg = bed.pegs().pegs().get(i);
            SettingOut.Tapes tapes = bed.tapes().get(i);
            String level = lowest.map(low -> "+" + sheet.written(low - peg.dropMm().orElse(low))).orElse("–");
            rows.add(List.of(
                    "P" + peg.number(),
                    sheet.written(peg.alongMm()),
                    sheet.written(peg.offMm()),
                    sheet.written(tapes.firstMm()) + (tapes.flat() ? "*" : ""),
                    sheet.written(tapes.secondMm()) + (tapes.flat() ? "*" : ""),
                    level));
        }
        return rows;
    }

    /** The largest type at which each number has room beside the others in a block of this width; may be too small to print. */
    double size(double wide) {
        double room = wide - wide * DRAWING_SHARE - APART_MM;
        return rows().stream().flatMapToDouble(cells -> IntStream.range(0, cells.size())
                .mapToDouble(i -> TEXT * (room * SHARES[i] - GAP) / TextMeasure.widthMm(cells.get(i), TEXT, i < HEAVY))).reduce(TEXT, Math::min);
    }

    private List<Shape> row(List<String> cells, Box room, double base, double size, boolean numbers, Tag told) {
        List<Shape> shapes = new ArrayList<>();
        double x = room.left();
        for (int i = 0; i < cells.size(); i++) {
            double wide = room.width() * SHARES[i];
            boolean heavy = numbers && i < HEAVY;
            double fitting = numbers ? size : BenchSheet.fitting(cells.get(i), size, TypeSize.LEAST, false, wide - GAP);
            shapes.add((i == 0 ? sheet.text(x, base, cells.get(i), fitting, heavy)
                    : sheet.end(x + wide - 1, base, cells.get(i), fitting, heavy)).as(told.cell(i)));
            x += wide;
        }
        return shapes;
    }

    /** What proves the bed in one paragraph, its string pegs in another. */
    private List<String> paragraphs() {
        Map<Boolean, List<String>> said = sentences().stream().collect(
                Collectors.partitioningBy(one -> one.startsWith(STRING_PEGS)));
        List<String> paragraphs = new ArrayList<>(said.get(true));
        if (!said.get(false).isEmpty()) paragraphs.add(0, String.join(" ", said.get(false)));
        return paragraphs;
    }

    private List<String> sentences() {
        List<String> said = new ArrayList<>();
        String diagonals = String.join(
                ",  ",
                bed.pegs().diagonals().stream()
                        .limit(MOST_DIAGONALS)
                        .map(d -> "P" + d.from() + "–P" + d.to() + " " + sheet.written(d.lengthMm()))
                        .toList());
        if (!diagonals.isEmpty()) {
            said.add("Diagonals: " + diagonals + ".");
        }
        bed.square()
                .ifPresent(square -> said.add("Square at P" + square.peg() + ": "
                        + sheet.written(square.alongMm()) + " on wall " + Bed.wallLetter(square.peg() - 1) + ", "
                        + sheet.written(square.otherMm()) + " on wall "
                        + Bed.wallLetter(Math.floorMod(square.peg() - 2, bed.bed().outline().sides())) + ", "
                        + sheet.written(square.acrossMm()) + " across."));
        bed.pushForTenMm()
                .ifPresent(push -> said.add("Both diagonals are equal. For each " + sheet.written(10)
                        + " between them push wall C along itself by " + sheet.written(push) + "."));
        bed.lowestDropMm()
                .ifPresent(low -> said.add("Levels: above the lowest peg, "
                        + sheet.written(low) + " below the string; the rim is " + sheet.written(bed.bed().heightMm()) + " above that peg."));
        if (!bed.pegs().linePegs().isEmpty()) {
            said.add(STRING_PEGS + " (along, off): "
                    + String.join(
                            ",  ",
                            bed.pegs().linePegs().stream()
                                    .map(peg -> String.format(
                                            Locale.ROOT, "%s past P%d %s, %s", peg.wall(), peg.beyond(),
                                            sheet.written(peg.alongMm()), sheet.written(peg.offMm())))
                                    .toList())
                    + ".");
        }
        if (bed.tapes().stream().anyMatch(SettingOut.Tapes::flat)) {
            said.add("* Tapes cross too flat: peg by along and off, check by a diagonal.");
        }
        return said;
    }

    private List<Shape> drawing(Box field) {
        List<Shape> shapes = new ArrayList<>();
        Outline outline = bed.bed().inYard();
        Box extent = Box.round(outline.corners());
        Scale scale = Scale.ofFives(SheetLayout.needs(extent, field, RIM));
        View view = View.centred(scale, extent, field);
        List<Point> ring = view.on(outline);
        shapes.add(sheet.inks.yard().area(ring, sheet.inks.pen(Inks.WIDE)));
        bed.pegs().diagonals().stream().limit(2).forEach(diagonal -> shapes.add(Shape.Lines.of(
                sheet.inks.pen(Inks.NARROW).dashed(2, 1.4), ring.get(diagonal.from() - 1), ring.get(diagonal.to() - 1))));
        bed.square().ifPresent(square -> shapes.add(triangle(square, outline, view)));
        double outwards = outline.signedAreaMm2() > 0 ? 1 : -1;
        Labels labels = new Labels(field);
        for (int i = 0; i < ring.size(); i++) labels.take(Labels.line(ring.get(i), ring.get((i + 1) % ring.size())));
        Words scaled = Words.of("1:" + scale.n(), SMALL, false);
        Plate corner = scaled.at(new Point(field.left() + scaled.widthMm() / 2, field.high() - scaled.heightMm() / 2), 0);
        labels.take(corner.corners());
        shapes.addAll(scaled.on(corner, sheet.inks.ink(), Optional.empty()));
        for (int i = 0; i < ring.size(); i++) shapes.addAll(peg(ring, i, outwards, labels));
        for (int i = 0; i < ring.size(); i++) shapes.addAll(wall(ring, outline, i, outwards, labels));
        return shapes;
    }

    private Shape triangle(SettingOut.Triangle square, Outline outline, View view) {
        int i = square.peg() - 1;
        Point at = outline.corner(i);
        Point on = at.towards(outline.corner(i + 1), square.alongMm() / at.distanceMm(outline.corner(i + 1)));
        Point off = at.towards(outline.corner(i - 1), square.otherMm() / at.distanceMm(outline.corner(i - 1)));
        return Shape.Area.outline(view.on(List.of(at, on, off)), Stroke.of(sheet.inks.water(), Inks.WIDE));
    }

    /** The peg with its number outside of its corner, or where else there is room round it. */
    private List<Shape> peg(List<Point> ring, int i, double outwards, Labels labels) {
        int n = ring.size();
        Point at = ring.get(i);
        Point before = ring.get((i + n - 1) % n);
        Point after = ring.get((i + 1) % n);
        Point away = before.way(at).minus(at.way(after));
        // Paper y runs down, so a corner that points outwards turns the other way there.
        double side = at.minus(before).cross(after.minus(at)) * outwards < 0 ? 1 : -1;
        double length = Math.max(1e-9, Math.hypot(away.x(), away.y()));
        double turn = Math.toDegrees(Math.atan2(side * away.y() / length, side * away.x() / length));
        List<Shape> shapes = new ArrayList<>(List.of(Shape.Circle.dot(at, 1, sheet.inks.ink())));
        for (double size : new double[] {3.8, 3.2, TypeSize.LEAST}) {
            Words words = Words.of("P" + (i + 1), size, true);
            List<Plate> places = places(at, turn, words);
            Optional<Plate> free = labels.first(places);
            if (free.isEmpty() && size > TypeSize.LEAST) continue;
            shapes.addAll(words.on(free.orElse(places.get(0)), sheet.inks.ink(), Optional.empty()));
            break;
        }
        return shapes;
    }

    /** Round a peg, the nearest to a direction of the paper first. */
    private static List<Plate> places(Point at, double turn, Words words) {
        List<Plate> places = new ArrayList<>();
        for (double away : new double[] {4.4, 5.2, 6.4}) {
            for (double degrees : new double[] {0, 180, 45, -45, 135, -135, 90, -90}) {
                places.add(words.at(at.away(away, turn + degrees), 0));
            }
        }
        return places;
    }

    private List<Shape> wall(List<Point> ring, Outline outline, int i, double outwards, Labels labels) {
        Point a = ring.get(i);
        Point b = ring.get((i + 1) % ring.size());
        String words = Bed.wallLetter(i) + " " + sheet.written(outline.sideMm(i));
        double length = a.distanceMm(b);
        double size = BenchSheet.fitting(words, 3.4, TypeSize.LEAST, false, length - 4);
        if (TextMeasure.widthMm(words, size, false) > length) {
            return List.of();
        }
        double out = 1.2 + size * 0.5;
        Point middle = a.middle(b).moved(a.way(b), 0, out * outwards);
        Words label = Words.of(words, size, false);
        return label.first(labels, List.of(label.at(middle, GroundShapes.readable(a, b))), sheet.inks.ink());
    }
}
