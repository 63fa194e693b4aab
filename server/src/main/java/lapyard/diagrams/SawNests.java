package lapyard.diagrams;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import lapyard.construction.Nest;
import lapyard.cutting.SawBoard;
import lapyard.drawing.Shape;
import lapyard.geometry.Lengths;
import lapyard.geometry.Point;

/** Lengths that are parted by slanted cuts, seen from above: alike ones share a drawing, with a row of marks for each. */
record SawNests(SawDay.Signs signs, BenchSheet sheet) {
    private static final double LEFT = 34;
    private static final double BAR = 16;
    private static final double ROW = TypeSize.TICK + 0.8;
    private static final double PLACE = 3;
    private static final double LEVEL = 3.8;
    private static final double ABOVE = 3;
    private static final double BELOW = 2;

    /** Nothing where nothing is nested. */
    void on(Flow flow, SawDay.Work work) {
        if (work.nests().isEmpty()) return;
        flow.section("Nested pieces", work.name() + ": cut square to length first, then parted by slanted cuts");
        flow.words(
                List.of("The lower edge is the face of the board, the upper edge its back; places run from the square end on the"
                        + " left. Mark each cut on both edges and join the marks; the kerf lies to the right of them, but to the left"
                        + " where the first cut takes scrap off."
                        + " The thick edge of a piece is its outer face. A cut between two pieces is one pass and makes both ends."
                        + " Try its set on two scraps first; clamp the length, as an angled cut pushes it along the fence."),
                3.2,
                false);
        List<Double> sets = work.nests().stream().flatMap(nest -> nest.cuts().stream()).map(Nest.Cut::setDeg).toList();
        flow.words(List.of(SawAngles.minutes(sets, work.batches().rates())), 4.4, false);
        Map<String, String> boards = new HashMap<>();
        for (SawBoard board : work.boards()) {
            board.cuts().forEach(cut -> boards.put(cut.mark(), work.board(board.number())));
        }
        List<List<Nest>> groups = new ArrayList<>();
        for (Nest nest : work.nests()) {
            groups.stream().filter(group -> group.get(0).alike(nest)).findFirst().orElseGet(() -> {
                List<Nest> group = new ArrayList<>();
                groups.add(group);
                return group;
            }).add(nest);
        }
        groups.forEach(nests -> group(flow, nests, boards));
    }

    private void group(Flow flow, List<Nest> nests, Map<String, String> boards) {
        Nest first = nests.get(0);
        List<Running> face = running(first, first.cuts().stream().map(Nest.Cut::faceMm).toList());
        List<Running> back = running(first, first.cuts().stream().map(Nest.Cut::backMm).toList());
        double above = ABOVE + deep(back);
        double below = BELOW + deep(face);
        double head = above + BAR + below;
        for (int from = 0; from < nests.size(); ) {
            if (!flow.holds(head + ROW)) {
                flow.next();
            }
            int rows = Math.min(nests.size() - from, Math.max(1, (int) ((sheet.space().high() - flow.y() - head) / ROW + 1e-9)));
            flow.down(above);
            places(flow, back, flow.y(), -1);
            places(flow, face, flow.y() + BAR, 1);
            drawing(flow, first, nests.size());
            flow.down(BAR + below);
            for (Nest nest : nests.subList(from, from + rows)) {
                row(flow, nest, boards.getOrDefault(nest.mark(), ""));
                flow.down(ROW);
            }
            flow.down(3);
            from += rows;
        }
    }

    private double scaled(Nest nest, double mm) {
        return sheet.space().left() + LEFT + mm * (sheet.space().width() - LEFT - 4) / nest.lengthMm();
    }

    private void drawing(Flow flow, Nest nest, int count) {
        Inks inks = sheet.inks;
        double top = flow.y();
        double low = top + BAR;
        double left = sheet.space().left();
        String length = sheet.written(nest.lengthMm());
        flow.add(sheet.text(left, top + 6, length, BenchSheet.fitting(length, 5.4, 3, true, LEFT - 3), true));
        flow.add(sheet.text(left, top + 11.5, "× " + count, 4.2, true));
        String sets = nest.cuts().stream().map(Nest.Cut::setDeg).distinct().sorted().map(set -> Lengths.text(set) + "°")
                .collect(Collectors.joining(", "));
        flow.add(sheet.text(left, top + 16, "saw at " + sets, BenchSheet.fitting("saw at " + sets, 3.4, TypeSize.LEAST, false, LEFT - 3), false));
        flow.add(inks.scrap().area(new Box(scaled(nest, 0), top, scaled(nest, nest.lengthMm()), low).corners(),
                inks.pen(Inks.THIN)));
        for (Nest.Part part : nest.parts()) {
            Point faceFrom = new Point(scaled(nest, part.faceFromMm()), low);
            Point faceTo = new Point(scaled(nest, part.faceToMm()), low);
            Point backTo = new Point(scaled(nest, part.backToMm()), top);
            Point backFrom = new Point(scaled(nest, part.backFromMm()), top);
            flow.add(inks.timber().area(List.of(faceFrom, faceTo, backTo, backFrom), inks.pen(Inks.MEDIUM)));
            flow.add(part.outerOnFace()
                    ? Shape.Lines.of(inks.pen(Inks.BROAD), faceFrom, faceTo)
                    : Shape.Lines.of(inks.pen(Inks.BROAD), backFrom, backTo));
            double middle = (faceFrom.x() + faceTo.x() + backFrom.x() + backTo.x()) / 4;
            double room = Math.min(faceTo.x() - faceFrom.x(), backTo.x() - backFrom.x()) - 2;
            String own = sheet.written(part.piece().lengthMm());
            flow.add(sheet.middle(middle, top + BAR / 2, own, 4.4, room));
        }
    }

    private static double deep(List<Running> places) {
        return LEVEL * (1 + places.stream().mapToInt(Running::level).max().orElse(0));
    }

    private List<Running> running(Nest nest, List<Double> places) {
        return Running.of(
                sheet, places.stream().map(Lengths::toTenth).toList(), place -> scaled(nest, place), PLACE, sheet.space().left() + LEFT - 4);
    }

    /** @param sense -1 above the edge, 1 below it */
    private void places(Flow flow, List<Running> places, double edge, int sense) {
        for (Running place : places) {
            double base = sense < 0 ? edge - 1.4 - place.level() * LEVEL : edge + 3.8 + place.level() * LEVEL;
            flow.add(sheet.line(place.x(), edge, place.x(), sense < 0 ? base + 0.4 : base - 2.4, Inks.THIN));
            flow.add(sheet.text(place.from(), base, place.words(), PLACE, true));
        }
    }

    /** The board that gives it, then under each piece a box to tick and its mark. */
    private void row(Flow flow, Nest nest, String board) {
        double base = flow.y() + ROW - 3;
        flow.addAll(sheet.boardNumber(sheet.space().left(), base, board));
        for (Nest.Part part : nest.parts()) {
            double from = scaled(nest, Math.min(part.faceFromMm(), part.backFromMm()));
            double room = scaled(nest, Math.min(part.faceToMm(), part.backToMm())) - from - TypeSize.TICK - 1.4;
            flow.add(sheet.tick(from, base + 2.4, TypeSize.TICK));
            flow.addAll(sheet.mark(from + TypeSize.TICK + 1, base, signs.marked(part.piece().mark()), room));
        }
    }
}
