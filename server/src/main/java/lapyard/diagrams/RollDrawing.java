package lapyard.diagrams;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import lapyard.drawing.Scale;
import lapyard.drawing.Shape;
import lapyard.geometry.Point;
import lapyard.sheets.RollResult.Placed;
import lapyard.sheets.RollResult.RollLayout;

/** A roll seen from above, its end on the left, rolled out in one strip or in several below each other. */
record RollDrawing(RollLayout layout, double widthMm, Optional<RollCuts> cuts, BenchSheet sheet) {
    private static final double SIDE = 16;
    private static final double ABOVE = 10;
    private static final double BELOW = 3;
    private static final double FOOT = 12;
    /** Part of a sheet that a roll takes where it can, with type of the usual size; its cuts and pieces stand below. */
    private static final double MOST_HIGH = 0.6;
    private static final int LINES = 2;
    private static final double RING = 2.6;

    /** Smaller than this a piece's name would not be read; a long roll goes on below and on further sheets instead. */
    private static final int MOST = 80;

    void on(Flow flow) {
        Scale scale = scale(flow);
        double from = 0;
        for (double to : ends(scale.realMm(wide()))) {
            double height = ABOVE + scale.paperMm(widthMm) + BELOW;
            if (!flow.holds(height + FOOT)) {
                foot(flow, scale);
                flow.next();
            }
            strip(flow, scale, from, to);
            from = to;
        }
        foot(flow, scale);
    }

    /** How wide it would be drawn where the flow stands now; more than a sheet is wide where it takes several strips. */
    double wideMm(Flow flow) {
        Scale scale = scale(flow);
        return ends(scale.realMm(wide())).size() == 1 ? SIDE + scale.paperMm(layout.boughtMm()) : Double.POSITIVE_INFINITY;
    }

    private double wide() {
        return sheet.space().width() - SIDE;
    }

    private Scale scale(Flow flow) {
        return scale(wide(), Math.min(sheet.space().high() - flow.y(), sheet.space().height() * MOST_HIGH * sheet.close) - FOOT);
    }

    /** The largest at which the whole roll stands on this sheet, unless it would be too small to read. */
    private Scale scale(double wide, double high) {
        Scale scale = Scale.ofFives(widthMm / Math.max(1, high - ABOVE - BELOW));
        while (scale.n() < MOST && ends(scale.realMm(wide)).size() * (ABOVE + scale.paperMm(widthMm) + BELOW) > high) scale = Scale.ofFives(scale.n() + 1);
        return scale;
    }

    /** Where strips of at most so much end: between pieces where that is not too early, else wherever it must be. */
    private List<Double> ends(double mostMm) {
        List<Double> ends = new ArrayList<>();
        double from = 0;
        while (layout.boughtMm() - from > mostMm + 1e-6) {
            double start = from;
            double to = layout.placed().stream()
                    .map(piece -> piece.y() + piece.heightMm())
                    .filter(at -> at > start + mostMm / 2 && at <= start + mostMm)
                    .filter(at -> layout.placed().stream()
                            .noneMatch(p -> p.y() < at - 1e-6 && p.y() + p.heightMm() > at + 1e-6))
                    .max(Comparator.naturalOrder())
                    .orElse(start + mostMm);
            ends.add(to);
            from = to;
        }
        ends.add(layout.boughtMm());
        return ends;
    }

    /** One strip: the roll from a running distance to another. */
    private void strip(Flow flow, Scale scale, double fromMm, double toMm) {
        double left = sheet.space().left() + SIDE;
        double top = flow.y() + ABOVE;
        double high = scale.paperMm(widthMm);
        Inks inks = sheet.inks;
        List<Shape> shapes = new ArrayList<>();
        List<Shape> lines = new ArrayList<>();
        List<Box> rings = new ArrayList<>();
        cuts.ifPresent(order -> lines.addAll(cutLines(order, scale, left, top, fromMm, toMm, rings)));
        cuts.ifPresent(order -> order.remnants().forEach(box -> within(box, fromMm, toMm).ifPresent(in -> {
            Box on = paper(in, scale, left, top, fromMm);
            shapes.add((RollSheets.kept(box) ? inks.of(Inks.KEPT) : inks.of(Inks.SCRAP)).areas(List.of(on.corners()), Optional.empty()));
        })));
        for (Placed piece : layout.placed()) {
            Box box = new Box(piece.x(), piece.y(), piece.x() + piece.widthMm(), piece.y() + piece.heightMm());
            within(box, fromMm, toMm).ifPresent(in -> {
                Box on = paper(in, scale, left, top, fromMm);
                shapes.add(inks.sheet().areas(List.of(on.corners()), cuts.isPresent() ? Optional.empty()
                        : Optional.of(inks.pen(Inks.MEDIUM))));
                shapes.addAll(name(piece, on, rings));
            });
        }
        cuts.ifPresent(order -> order.remnants().stream().filter(RollSheets::kept).forEach(box ->
                within(box, fromMm, toMm).ifPresent(in -> shapes.addAll(plate(
                        List.of("keep", sheet.written(box.width()) + " × " + sheet.written(box.height())),
                        paper(in, scale, left, top, fromMm), rings)))));
        shapes.add(Shape.Area.outline(new Box(left, top, left + scale.paperMm(toMm - fromMm), top + high).corners(), inks.pen(Inks.WIDE)));
        shapes.addAll(lines);
        shapes.addAll(running(scale, left, top, fromMm, toMm));
        flow.addAll(shapes);
        flow.add(sheet.text(sheet.space().left(), top + high / 2 - 1, sheet.written(widthMm),
                BenchSheet.fitting(sheet.written(widthMm), 4, TypeSize.LEAST, true, SIDE - 2), true));
        flow.add(sheet.text(sheet.space().left(), top + high / 2 + 3, fromMm == 0 ? "roll's end" : "goes on", 2.6, false));
        flow.down(ABOVE + high + BELOW);
    }

    private static Optional<Box> within(Box box, double fromMm, double toMm) {
        double low = Math.max(box.low(), fromMm);
        double high = Math.min(box.high(), toMm);
        return high - low > 1e-6 ? Optional.of(new Box(box.left(), low, box.right(), high)) : Optional.empty();
    }

    /** Along the roll is to the right, across it down. */
    private static Box paper(Box real, Scale scale, double left, double top, double fromMm) {
        return new Box(
                left + scale.paperMm(real.low() - fromMm),
                top + scale.paperMm(real.left()),
                left + scale.paperMm(real.high() - fromMm),
                top + scale.paperMm(real.right()));
    }

    /** Name, size and whether it was turned, as large as they fit, else the name alone, upright where it must be. */
    private List<Shape> name(Placed piece, Box on, List<Box> rings) {
        List<String> lines = new ArrayList<>(
                List.of(piece.id(), sheet.written(piece.widthMm()) + " × " + sheet.written(piece.heightMm())));
        if (piece.turned()) {
            lines.add("turned");
        }
        List<List<String>> choices = new ArrayList<>();
        choices.add(lines);
        choices.add(List.of(String.join(", ", lines)));
        choices.add(List.of(piece.id() + (piece.turned() ? ", turned" : "")));
        for (List<String> words : choices) {
            for (double[] sizes : new double[][] {{5, 4.2, 3.6, 3}, {2.8, TypeSize.LEAST}}) {
                for (double turn : new double[] {0, 90}) {
                    for (double size : sizes) {
                        List<Words.Line> all = new ArrayList<>();
                        words.forEach(line -> all.add(new Words.Line(line, all.isEmpty() ? size : Math.max(TypeSize.LEAST, size * 0.8), all.isEmpty())));
                        Words block = new Words(all);
                        Optional<Plate> place = place(block, on, turn, rings);
                        if (place.isPresent()) {
                            return block.on(place.get(), sheet.inks.ink(), Optional.empty());
                        }
                    }
                }
            }
        }
        return List.of();
    }

    /** In the middle of a part, or as near to it as the rings of the cuts let it stand. */
    private static Optional<Plate> place(Words block, Box on, double turn, List<Box> rings) {
        double wide = turn == 0 ? block.widthMm() : block.heightMm();
        double high = turn == 0 ? block.heightMm() : block.widthMm();
        double freeX = (on.width() - wide - 1) / 2;
        double freeY = (on.height() - high - 1) / 2;
        if (freeX < 0 || freeY < 0) {
            return Optional.empty();
        }
        for (double x : new double[] {0, 0.5, -0.5, 1, -1}) {
            for (double y : new double[] {0, 0.5, -0.5, 1, -1}) {
                Point centre = on.centre().plus(x * freeX, y * freeY);
                Box taken = new Box(centre.x() - wide / 2, centre.y() - high / 2, centre.x() + wide / 2, centre.y() + high / 2);
                if (rings.stream().noneMatch(taken::touches)) {
                    return Optional.of(block.at(centre, turn));
                }
            }
        }
        return Optional.empty();
    }

    private List<Shape> plate(List<String> words, Box on, List<Box> rings) {
        for (double size : new double[] {3.6, 3, TypeSize.LEAST}) {
            for (double turn : new double[] {0, 90}) {
                Words block = new Words(words.stream().map(line -> new Words.Line(line, size, true)).toList());
                Optional<Plate> place = place(block, on, turn, rings);
                if (place.isPresent()) {
                    return block.on(place.get(), sheet.inks);
                }
            }
        }
        return List.of();
    }

    /** Broken lines, each with its number in a ring near where it begins; where no ring fits the table tells the order. */
    private List<Shape> cutLines(
            RollCuts order, Scale scale, double left, double top, double fromMm, double toMm, List<Box> rings) {
        List<Shape> shapes = new ArrayList<>();
        int number = 0;
        for (RollCuts.Cut cut : order.cuts()) {
            number++;
            Box real = cut.across()
                    ? new Box(cut.fromMm(), cut.atMm(), cut.toMm(), cut.atMm())
                    : new Box(cut.atMm(), cut.fromMm(), cut.atMm(), cut.toMm());
            boolean here = cut.across()
                    ? cut.atMm() > fromMm + 1e-6 && cut.atMm() <= toMm + 1e-6
                    : cut.fromMm() < toMm - 1e-6 && cut.toMm() > fromMm + 1e-6;
            if (!here) {
                continue;
            }
            Box clipped = new Box(real.left(), Math.max(real.low(), fromMm), real.right(), Math.min(real.high(), toMm));
            Box on = paper(clipped, scale, left, top, fromMm);
            shapes.add(Shape.Lines.of(
                    sheet.inks.pen(Inks.BROAD).dashed(2.4, 1.2), new Point(on.left(), on.low()), new Point(on.right(), on.high())));
            double in = RING + 0.6;
            double far = cut.across() ? on.height() : on.width();
            for (double along : new double[] {Math.min(in, far / 2), far / 2, Math.max(far - in, far / 2), far / 4, far * 0.75}) {
                Point at = cut.across() ? new Point(on.left(), on.low() + along) : new Point(on.left() + along, on.low());
                Box ring = Box.about(at, RING);
                if (rings.stream().noneMatch(ring::touches)) {
                    rings.add(ring);
                    shapes.add(new Shape.Circle(at, RING, Optional.of(sheet.inks.paper()), Optional.of(sheet.inks.pen(Inks.MEDIUM))));
                    shapes.add(sheet.middle(at.x(), at.y(), String.valueOf(number), 3.4, RING * 1.6));
                    break;
                }
            }
        }
        return shapes;
    }

    private List<Shape> running(Scale scale, double left, double top, double fromMm, double toMm) {
        TreeSet<Double> places = new TreeSet<>();
        layout.placed().forEach(piece -> {
            places.add(Math.rint(piece.y() * 1000) / 1000);
            places.add(Math.rint((piece.y() + piece.heightMm()) * 1000) / 1000);
        });
        places.add(layout.boughtMm());
        List<Double> here = places.stream().filter(place -> (place > fromMm + 1e-6 || place <= 0) && place <= toMm + 1e-6).toList();
        // what stands on no line stands in the table of the pieces all the same
        return Running.of(sheet, here, place -> left + scale.paperMm(place - fromMm), Running.SIZE, Double.NEGATIVE_INFINITY).stream()
                .filter(place -> place.level() < LINES)
                .flatMap(place -> place.above(sheet, top, top, Inks.THIN).stream()).toList();
    }

    private void foot(Flow flow, Scale scale) {
        Box space = sheet.space();
        double y = flow.y() + 5;
        flow.addAll(new Panel(90, sheet.inks).bar(scale, sheet.imperial, space.left() + 4, y, 62));
        flow.add(sheet.end(
                space.right(), y + 2,
                "Broken lines: cuts, numbered in order. Distances from the roll's end. Sizes across × along.", 3, false));
        flow.down(FOOT + 3);
    }
}
