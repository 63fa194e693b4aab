package lapyard.diagrams;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.DoubleStream;
import lapyard.drawing.Scale;
import lapyard.drawing.Shape;
import lapyard.drawing.Stroke;
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
            draw(flow, new Strip(scale, sheet.space().left() + SIDE, flow.y() + ABOVE, from, to));
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

    /**
     * The roll from a running distance to another, on the paper: along the roll is to the right, across it down.
     *
     * @param left of its upper left corner, so {@code top}
     */
    private record Strip(Scale scale, double left, double top, double fromMm, double toMm) {
        double x(double runningMm) {
            return left + scale.paperMm(runningMm - fromMm);
        }

        Box on(Box real) {
            return new Box(x(real.low()), top + scale.paperMm(real.left()), x(real.high()), top + scale.paperMm(real.right()));
        }

        /** What of a box lies on it. */
        Optional<Box> part(Box real) {
            double low = Math.max(real.low(), fromMm);
            double high = Math.min(real.high(), toMm);
            return high - low > 1e-6 ? Optional.of(on(new Box(real.left(), low, real.right(), high))) : Optional.empty();
        }

        Optional<Box> part(RollCuts.Cut cut) {
            if (!cut.across()) return part(new Box(cut.atMm(), cut.fromMm(), cut.atMm(), cut.toMm()));
            boolean here = cut.atMm() > fromMm + 1e-6 && cut.atMm() <= toMm + 1e-6;
            return here ? Optional.of(on(new Box(cut.fromMm(), cut.atMm(), cut.toMm(), cut.atMm()))) : Optional.empty();
        }
    }

    private void draw(Flow flow, Strip strip) {
        Inks inks = sheet.inks;
        List<Shape> shapes = new ArrayList<>();
        List<Box> rings = new ArrayList<>();
        List<Shape> lines = cuts.map(order -> cutLines(order, strip, rings)).orElse(List.of());
        List<Box> remnants = cuts.map(RollCuts::remnants).orElse(List.of());
        remnants.forEach(box -> strip.part(box).ifPresent(on ->
                shapes.add(inks.of(RollSheets.kept(box) ? Inks.KEPT : Inks.SCRAP).areas(List.of(on.corners()), Optional.empty()))));
        Optional<Stroke> edge = cuts.isPresent() ? Optional.empty() : Optional.of(inks.pen(Inks.MEDIUM));
        for (Placed piece : layout.placed()) {
            strip.part(new Box(piece.x(), piece.y(), piece.x() + piece.widthMm(), piece.y() + piece.heightMm())).ifPresent(on -> {
                shapes.add(inks.sheet().areas(List.of(on.corners()), edge));
                shapes.addAll(name(piece, on, rings));
            });
        }
        remnants.stream().filter(RollSheets::kept).forEach(box -> strip.part(box).ifPresent(on ->
                shapes.addAll(plate(List.of("keep", sheet.written(box.width()) + " × " + sheet.written(box.height())), on, rings))));
        Box whole = strip.on(new Box(0, strip.fromMm(), widthMm, strip.toMm()));
        shapes.add(Shape.Area.outline(whole.corners(), inks.pen(Inks.WIDE)));
        shapes.addAll(lines);
        shapes.addAll(running(strip));
        String wide = sheet.written(widthMm);
        double middle = whole.centre().y();
        shapes.add(sheet.text(sheet.space().left(), middle - 1, wide, BenchSheet.fitting(wide, 4, TypeSize.LEAST, true, SIDE - 2), true));
        shapes.add(sheet.text(sheet.space().left(), middle + 3, strip.fromMm() == 0 ? "roll's end" : "goes on", 2.6, false));
        flow.draw(shapes, ABOVE + whole.height() + BELOW);
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
    private List<Shape> cutLines(RollCuts order, Strip strip, List<Box> rings) {
        List<Shape> shapes = new ArrayList<>();
        for (int i = 0; i < order.cuts().size(); i++) {
            RollCuts.Cut cut = order.cuts().get(i);
            String number = String.valueOf(i + 1);
            strip.part(cut).ifPresent(on -> {
                Point begin = new Point(on.left(), on.low());
                Point end = new Point(on.right(), on.high());
                shapes.add(Shape.Lines.of(sheet.inks.pen(Inks.BROAD).dashed(2.4, 1.2), begin, end));
                double in = RING + 0.6;
                double far = begin.distanceMm(end);
                DoubleStream.of(Math.min(in, far / 2), far / 2, Math.max(far - in, far / 2), far / 4, far * 0.75)
                        .mapToObj(along -> Box.about(begin.towards(end, along / far), RING))
                        .filter(ring -> rings.stream().noneMatch(ring::touches)).findFirst().ifPresent(ring -> {
                            rings.add(ring);
                            Point at = ring.centre();
                            shapes.add(new Shape.Circle(at, RING, Optional.of(sheet.inks.paper()), Optional.of(sheet.inks.pen(Inks.MEDIUM))));
                            shapes.add(sheet.middle(at.x(), at.y(), number, 3.4, RING * 1.6));
                        });
            });
        }
        return shapes;
    }

    private List<Shape> running(Strip strip) {
        TreeSet<Double> places = new TreeSet<>();
        layout.placed().forEach(piece -> {
            places.add(Math.rint(piece.y() * 1000) / 1000);
            places.add(Math.rint((piece.y() + piece.heightMm()) * 1000) / 1000);
        });
        places.add(layout.boughtMm());
        List<Double> here = places.stream().filter(place -> (place > strip.fromMm() + 1e-6 || place <= 0) && place <= strip.toMm() + 1e-6).toList();
        // what stands on no line stands in the table of the pieces all the same
        return Running.of(sheet, here, strip::x, Running.SIZE, Double.NEGATIVE_INFINITY).stream()
                .filter(place -> place.level() < LINES)
                .flatMap(place -> place.above(sheet, strip.top(), strip.top(), Inks.THIN).stream()).toList();
    }

    private void foot(Flow flow, Scale scale) {
        Box space = sheet.space();
        double y = flow.y() + 5;
        List<Shape> shapes = new ArrayList<>(new Panel(90, sheet.inks).bar(scale, sheet.imperial, space.left() + 4, y, 62));
        shapes.add(sheet.end(space.right(), y + 2, "Broken lines: cuts, numbered in order. Distances from the roll's end. Sizes across × along.", 3, false));
        flow.draw(shapes, FOOT + 3);
    }
}
