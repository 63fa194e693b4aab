package lapyard.diagrams;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lapyard.catalogue.Section;
import lapyard.construction.BedWork;
import lapyard.construction.Nest;
import lapyard.construction.Piece;
import lapyard.cutting.Batches;
import lapyard.cutting.Ledger.Fate;
import lapyard.cutting.Ledger;
import lapyard.cutting.SawBoard;
import lapyard.diagrams.BenchTable.Column;
import lapyard.drawing.Page;
import lapyard.drawing.Shape;
import lapyard.geometry.Lengths;
import lapyard.geometry.Measure;
import lapyard.geometry.Point;
import lapyard.plan.BedNames;
import lapyard.plan.Lifting;
import lapyard.working.SecondThread;

/**
 * The sheets that are taped to the saw bench. Of each section and stage first the batches, one row a setting of the
 * stop, then the boards with the place of every cut, at the end what becomes of the offcuts and what may be saved.
 */
public final class SawDay {
    private SawDay() {}

    /**
     * One section's work at the saw.
     *
     * @param series       letter before the numbers of its boards, so that no two of a garden are alike; may be empty
     * @param name         what it is called on the sheets, such as {@code Timber 100x200}
     * @param before       what is done with the boards before they are cut to length; may be empty
     * @param section      for the mass of boards and pieces; empty where they are strips of it
     * @param kerfMm       the saw's
     * @param keepOffcutMm offcuts shorter than this are scrap
     * @param firstCuts    to be asked of the merchant
     * @param nests        lengths of which more than one piece is sawn, under the marks that the boards have
     */
    public record Work(
            String series,
            String name,
            String before,
            Optional<Section> section,
            double kerfMm,
            double keepOffcutMm,
            List<SawBoard> boards,
            Batches batches,
            Ledger ledger,
            List<SawBoard.FirstCut> firstCuts,
            List<Nest> nests) {
        /** As it is written on a board. */
        String board(int number) {
            return series + number;
        }

        /** As it is written on an offcut. */
        String tag(String ofLedger) {
            return ofLedger.replace("#", "#" + series);
        }
    }

    /**
     * @param lifting     what one person lifts; heavier pieces and boards are marked
     * @param beds        for the signs beside the marks: seen, heavy, notched
     * @param longestMm   the longest part that can be carried in; empty where the merchant is asked for no cuts
     * @return one page or more; where there is nothing to saw it says so
     */
    public static List<Page> pages(
            Lifting lifting, List<BedWork> beds, List<Work> works, OptionalDouble longestMm, BenchOptions options) {
        String caution = "Eyes, ears and lungs covered. Unplug the saw before the stop or blade is touched. Over "
                + Measure.KG.plain(lifting.limitKg(), 1, options.imperial()) + ": two people or more, or wheels. Treated timber: gloves, burn none of it."
                + BedNames.sealed("Seal the cut ends of", beds.stream().map(BedWork::bed));
        return BenchSheet.pages(caution, options, sheet -> {
            Signs signs = new Signs(beds, works, lifting);
            List<BenchSheet.Draft> drafts = SecondThread.each(List.<Supplier<Stream<BenchSheet.Draft>>>of(
                    () -> Flow.drafts(sheet, "First cuts at the merchant", flow -> longestMm.ifPresent(longest -> works.forEach(work -> firstCuts(work, longest, sheet, flow)))),
                    () -> Flow.drafts(sheet, "Saw Day: batches", flow -> works.forEach(work ->
                            work.batches().stages().forEach(stage -> new SawBatches(work, signs, sheet).on(flow, stage)))),
                    () -> Flow.drafts(sheet, "Saw Day: boards", flow -> {
                        SawBars.on(flow, works, signs, sheet);
                        offcuts(flow, works.stream().filter(work -> !work.boards().isEmpty()).toList(), sheet);
                    }),
                    () -> Flow.drafts(sheet, "Slanted cuts", flow -> {
                        works.forEach(work -> new SawNests(signs, sheet).on(flow, work));
                        angles(flow, beds, works, sheet);
                    })), Supplier::get).stream().flatMap(drawn -> drawn).toList();
            return drafts.isEmpty() ? List.of(sheet.nothing("Saw Day", "Nothing to saw in this garden.")) : drafts;
        });
    }

    /** What is to be written on a piece beside its mark, and what it weighs. */
    static final class Signs {
        static final String HEAVY = "●";
        static final String SEEN = "▲";
        static final String NOTCH = "≈";
        static final String ANGLED = "/";

        private final Map<String, String> byMark = new HashMap<>();
        final Lifting lifting;

        Signs(List<BedWork> beds, List<Work> works, Lifting lifting) {
            this.lifting = lifting;
            for (BedWork work : beds) {
                for (Piece piece : work.pieces()) {
                    byMark.put(piece.mark(), signs(work, piece));
                }
            }
            for (Work work : works) {
                work.nests().forEach(nest -> byMark.put(nest.mark(), signs(work, nest)));
            }
        }

        /** Of the whole length, before it is parted. */
        private String signs(Work work, Nest nest) {
            String parts = nest.pieces().stream().map(piece -> byMark.getOrDefault(piece.mark(), "")).collect(Collectors.joining());
            boolean heavy = work.section().filter(section -> lifting.heavy(section.massKg(nest.lengthMm()))).isPresent();
            return (heavy ? HEAVY : "") + Stream.of(SEEN, NOTCH, ANGLED).filter(parts::contains).collect(Collectors.joining());
        }

        private String signs(BedWork work, Piece piece) {
            boolean heavy = lifting.heavy(work.massKg(piece));
            return (heavy ? HEAVY : "") + (piece.seen() ? SEEN : "") + (notched(work, piece) ? NOTCH : "")
                    + (piece.squareEnds() ? "" : ANGLED);
        }

        private static boolean notched(BedWork work, Piece piece) {
            return piece.course() == 1 && work.frame().notches().stream().anyMatch(notch -> notch.wall().equals(piece.wall())
                    && notch.atMm() >= piece.fromMm() && notch.atMm() <= piece.fromMm() + piece.lengthMm());
        }

        /** Mark and signs as one word. */
        String marked(String mark) {
            String signs = byMark.getOrDefault(mark, "");
            return signs.isEmpty() ? mark : mark + " " + signs;
        }
    }

    private record Ends(double lengthMm, double outerMm, double innerMm, double startDeg, double endDeg) {}

    /** Nothing where all ends are square or sawn in a nest. */
    private static void angles(Flow flow, List<BedWork> beds, List<Work> works, BenchSheet sheet) {
        Set<Piece> nested = works.stream()
                .flatMap(work -> work.nests().stream())
                .flatMap(nest -> nest.pieces().stream())
                .collect(Collectors.toSet());
        Map<Ends, List<String>> alike = new LinkedHashMap<>();
        List<Double> sets = new ArrayList<>();
        for (BedWork work : beds) {
            for (Piece piece : work.pieces()) {
                if (!piece.squareEnds() && !nested.contains(piece)) {
                    Ends ends = new Ends(piece.lengthMm(), piece.outerFaceMm(), piece.innerFaceMm(), piece.start().setDeg(), piece.end().setDeg());
                    alike.computeIfAbsent(ends, same -> new ArrayList<>()).add(piece.mark());
                    sets.addAll(piece.setsDeg());
                }
            }
        }
        if (alike.isEmpty()) {
            return;
        }
        flow.section("Angled ends", "cut square to length first, then saw each end off square by its degrees");
        BenchTable table = new BenchTable(sheet, "Angled ends",
                new Column("Cut to", 0.11, true), new Column("Outer face", 0.11, false),
                        new Column("Inner face", 0.11, false),
                new Column("Start", 0.09, true), new Column("End", 0.09, true), new Column("Pieces", 0.49, false));
        alike.forEach((ends, marks) -> table.row(
                sheet.written(ends.lengthMm()), sheet.written(ends.outerMm()), sheet.written(ends.innerMm()),
                degrees(ends.startDeg()), degrees(ends.endDeg()), String.join(", ", marks)));
        table.on(flow);
        flow.words(
                List.of(minutes(sets, works.isEmpty() ? Batches.Rates.USUAL : works.get(0).batches().rates())), 4.4, false);
        flow.words(
                List.of("The longer face keeps its whole length: the blade leaves its corner and takes the other. Start is where"
                        + " the wall starts, going round from A to B, as on the course card. Try each set on two scraps and put them"
                        + " together before a board is cut. Clamp the piece: an angled cut pushes it along the fence."),
                3.2,
                false);
    }

    /** What slanted cuts take beside the square ones of the batches. */
    private static String minutes(List<Double> sets, Batches.Rates rates) {
        int settings = (int) sets.stream().distinct().count();
        return sets.size() + " slanted cuts × " + Lengths.text(rates.minutesACut()) + " min + " + settings
                + (settings == 1 ? " setting × " : " settings × ") + Lengths.text(rates.minutesASetting()) + " min = "
                + Lengths.text(Lengths.toTenth(rates.minutes(sets.size(), settings))) + " min, beside the square cuts of the batches.";
    }

    private static String degrees(double degrees) {
        return degrees == 0 ? "square" : Lengths.text(degrees) + "°";
    }

    private static void firstCuts(Work work, double longestMm, BenchSheet sheet, Flow flow) {
        if (work.firstCuts().isEmpty()) return;
        flow.section(
                "First cuts at the merchant", work.name() + ", nothing longer than " + sheet.written(longestMm) + " comes in");
        BenchTable table = new BenchTable(sheet, "Ask for these cuts, measured from one end",
                new Column("boards", 0.18, true), new Column("length", 0.12, true), new Column("cut at", 0.2, true),
                new Column("parts then", 0.25, false), new Column("", 0.25, false));
        Map<List<String>, List<Integer>> alike = new LinkedHashMap<>();
        for (SawBoard.FirstCut cut : work.firstCuts()) {
            SawBoard board = work.boards().get(cut.board() - 1);
            List<String> at = new ArrayList<>();
            List<String> parts = new ArrayList<>();
            double from = 0;
            for (double place : cut.atMm()) {
                at.add(sheet.written(place));
                parts.add(sheet.written(place - from));
                from = place + work.kerfMm();
            }
            parts.add(sheet.written(board.lengthMm() - from));
            String caution = cut.tooLongPiece().isEmpty()
                    ? ""
                    : "a piece of " + sheet.written(board.cuts().get(cut.tooLongPiece().getAsInt() - 1).lengthMm()) + " stays too long";
            alike.computeIfAbsent(
                            List.of(sheet.written(board.lengthMm()), at.isEmpty() ? "nowhere" : String.join(", ", at),
                                    String.join(" + ", parts), caution),
                            row -> new ArrayList<>())
                    .add(cut.board());
        }
        alike.forEach((row, boards) -> table.row(runs(boards, work), row.get(0), row.get(1), row.get(2), row.get(3)));
        table.on(flow);
        flow.words(List.of(
                "Each cut lies where a piece ends, so the plan stays as it is: the merchant's saw takes the kerf of "
                        + sheet.fine(work.kerfMm()) + " that ours would have taken. Write the board's number on every part, "
                        + "and an arrow to the first end. A rough cut is mended from the scrap of that board, if it has any."),
                3.4, false);
    }

    /** Of a garden that is sawn at once nothing is carried, and the boards' bars tell all that is kept. */
    private static void offcuts(Flow flow, List<Work> works, BenchSheet sheet) {
        if (works.stream().allMatch(work -> work.ledger().stages().size() < 2)) return;
        flow.section("Saw Day: offcuts", "A tag is the number of the board, then the stage that made the offcut.");
        for (Work work : works) {
            stages(work, sheet, flow);
            ledger(work, sheet, flow);
        }
    }

    private static void stages(Work work, BenchSheet sheet, Flow flow) {
        if (work.ledger().stages().size() < 2) {
            return;
        }
        BenchTable table = new BenchTable(sheet, work.name() + ": boards by stage",
                new Column("stage", 0.1, true), new Column("boards opened", 0.3, false), new Column("offcuts taken up", 0.35, false),
                new Column("waiting afterwards", 0.25, false));
        for (Ledger.Stage stage : work.ledger().stages()) {
            table.row(String.valueOf(stage.stage()), stage.opened().isEmpty() ? "none" : runs(stage.opened(), work),
                    stage.taken().isEmpty() ? "none" : ListSheets.some(stage.taken().stream().map(work::tag).toList()),
                    stage.open() == 0 ? "none" : stage.open() + ", longest " + sheet.written(stage.longestMm()));
        }
        table.on(flow);
    }

    private static void ledger(Work work, BenchSheet sheet, Flow flow) {
        BenchTable table = new BenchTable(sheet, work.name() + ": offcuts",
                new Column("tag", 0.16, true), new Column("length", 0.16, true), new Column("of stage", 0.12, false),
                new Column("what becomes of it", 0.56, false));
        int scrap = 0;
        for (Ledger.Offcut offcut : work.ledger().offcuts()) {
            if (offcut.fate() == Fate.SCRAP) {
                scrap++;
                continue;
            }
            String then = offcut.fate() == Fate.KEPT
                    ? "to the rack"
                    : "stage " + offcut.usedIn().getAsInt() + " cuts " + ListSheets.some(offcut.marks()) + " from it";
            table.row(work.tag(offcut.tag()), sheet.written(offcut.lengthMm()), String.valueOf(offcut.madeIn()), then);
        }
        table.on(flow, 2);
        String shorter = "shorter than " + sheet.written(work.keepOffcutMm());
        flow.words(List.of(work.name() + ": " + (scrap == 0
                ? "no scrap."
                : Measure.counted(scrap, "piece") + " of scrap, each " + shorter + ", together "
                        + sheet.written(work.ledger().lengthMm(Fate.SCRAP)) + ".")), 3.6, false);
    }

    private static String runs(List<Integer> numbers, Work work) {
        return BedNames.compact(numbers.stream().map(work::board).toList());
    }

    /** Lengths that are parted by slanted cuts, seen from above: alike ones share a drawing, with a row of marks for each. */
    private record SawNests(Signs signs, BenchSheet sheet) {
        private static final double LEFT = 34;
        private static final double BAR = 16;
        private static final double ROW = TypeSize.TICK + 0.8;
        private static final double PLACE = 3;
        private static final double LEVEL = 3.8;
        private static final double ABOVE = 3;
        private static final double BELOW = 2;

        /** Nothing where nothing is nested. */
        void on(Flow flow, Work work) {
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
            flow.words(List.of(minutes(sets, work.batches().rates())), 4.4, false);
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

        /** The drawing once more at the top of each sheet on which its rows go on. */
        private void group(Flow flow, List<Nest> nests, Map<String, String> boards) {
            Nest first = nests.get(0);
            List<Running> face = running(first, first.cuts().stream().map(Nest.Cut::faceMm).toList());
            List<Running> back = running(first, first.cuts().stream().map(Nest.Cut::backMm).toList());
            double above = ABOVE + deep(back);
            Flow.Block drawn = new Flow.Block(above + BAR + BELOW + deep(face), true, (left, top) -> {
                List<Shape> shapes = new ArrayList<>();
                places(shapes, back, top + above, -1);
                places(shapes, face, top + above + BAR, 1);
                drawing(shapes, first, nests.size(), top + above);
                return shapes;
            });
            flow.head(drawn, drawn);
            nests.forEach(nest -> flow.block(new Flow.Block(ROW, false, (left, top) -> row(nest, boards.getOrDefault(nest.mark(), ""), top))));
            flow.endHead();
            flow.draw(List.of(), 3);
        }

        private double scaled(Nest nest, double mm) {
            return sheet.space().left() + LEFT + mm * (sheet.space().width() - LEFT - 4) / nest.lengthMm();
        }

        private void drawing(List<Shape> shapes, Nest nest, int count, double top) {
            Inks inks = sheet.inks;
            double low = top + BAR;
            double left = sheet.space().left();
            String length = sheet.written(nest.lengthMm());
            shapes.add(sheet.text(left, top + 6, length, BenchSheet.fitting(length, 5.4, 3, true, LEFT - 3), true));
            shapes.add(sheet.text(left, top + 11.5, "× " + count, 4.2, true));
            String sets = nest.cuts().stream().map(Nest.Cut::setDeg).distinct().sorted().map(set -> Lengths.text(set) + "°")
                    .collect(Collectors.joining(", "));
            shapes.add(sheet.text(left, top + 16, "saw at " + sets, BenchSheet.fitting("saw at " + sets, 3.4, TypeSize.LEAST, false, LEFT - 3), false));
            shapes.add(inks.of(Inks.SCRAP).area(new Box(scaled(nest, 0), top, scaled(nest, nest.lengthMm()), low).corners(),
                    inks.pen(Inks.THIN)));
            for (Nest.Part part : nest.parts()) {
                Point faceFrom = new Point(scaled(nest, part.faceFromMm()), low);
                Point faceTo = new Point(scaled(nest, part.faceToMm()), low);
                Point backTo = new Point(scaled(nest, part.backToMm()), top);
                Point backFrom = new Point(scaled(nest, part.backFromMm()), top);
                shapes.add(inks.timber().area(List.of(faceFrom, faceTo, backTo, backFrom), inks.pen(Inks.MEDIUM)));
                shapes.add(part.outerOnFace()
                        ? Shape.Lines.of(inks.pen(Inks.BROAD), faceFrom, faceTo)
                        : Shape.Lines.of(inks.pen(Inks.BROAD), backFrom, backTo));
                double middle = (faceFrom.x() + faceTo.x() + backFrom.x() + backTo.x()) / 4;
                double room = Math.min(faceTo.x() - faceFrom.x(), backTo.x() - backFrom.x()) - 2;
                String own = sheet.written(part.piece().lengthMm());
                shapes.add(sheet.middle(middle, top + BAR / 2, own, 4.4, room));
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
        private void places(List<Shape> shapes, List<Running> places, double edge, int sense) {
            for (Running place : places) {
                double base = sense < 0 ? edge - 1.4 - place.level() * LEVEL : edge + 3.8 + place.level() * LEVEL;
                shapes.add(sheet.line(place.x(), edge, place.x(), sense < 0 ? base + 0.4 : base - 2.4, Inks.THIN));
                shapes.add(sheet.text(place.from(), base, place.words(), PLACE, true));
            }
        }

        /** The board that gives it, then under each piece a box to tick and its mark. */
        private List<Shape> row(Nest nest, String board, double top) {
            double base = top + ROW - 3;
            List<Shape> shapes = new ArrayList<>(sheet.boardNumber(sheet.space().left(), base, board));
            for (Nest.Part part : nest.parts()) {
                double from = scaled(nest, Math.min(part.faceFromMm(), part.backFromMm()));
                double room = scaled(nest, Math.min(part.faceToMm(), part.backToMm())) - from - TypeSize.TICK - 1.4;
                shapes.add(sheet.tick(from, base + 2.4, TypeSize.TICK));
                shapes.addAll(sheet.mark(from + TypeSize.TICK + 1, base, signs.marked(part.piece().mark()), room));
            }
            return shapes;
        }
    }
}
