package lapyard.diagrams;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import lapyard.construction.Nest;
import lapyard.cutting.Ledger;
import lapyard.cutting.Ledger.Fate;
import lapyard.cutting.SawBoard;
import lapyard.drawing.Scale;
import lapyard.drawing.Shape;
import lapyard.drawing.TextMeasure;
import lapyard.geometry.Lengths;
import lapyard.geometry.Measure;
import lapyard.geometry.Point;

/** The boards of each stage as bars to scale; boards that are cut alike share a bar, with a row of marks for each. */
final class SawBars {
    private static final double LABEL = 28;
    private static final double ABOVE = 6.4;
    private static final double THICK = 9;
    private static final double ROW = TypeSize.TICK + 1;
    private static final double BELOW = 2.2;
    private static final double LENGTH = TypeSize.ARMS_LENGTH;
    private static final double FOOT = 11;
    private static final double HEAD = 7;

    /** Beside the bar at least, for the place of its end. */
    private static final double BESIDE = 7;

    /** Of a rest that is too short to hold its words. */
    private static final double SMALL = 2.8;

    private final SawDay.Work work;
    private final SawDay.Signs signs;
    private final BenchSheet sheet;
    private final Map<String, Nest> nests = new HashMap<>();
    private final Map<BoardStage, Ledger.Offcut> rests = new HashMap<>();
    private final Map<BoardStage, Ledger.Offcut> takenUp = new HashMap<>();
    private final Map<Integer, List<Laid>> stages = new LinkedHashMap<>();

    SawBars(SawDay.Work work, SawDay.Signs signs, BenchSheet sheet) {
        this.work = work;
        this.signs = signs;
        this.sheet = sheet;
        work.nests().forEach(nest -> nests.put(nest.mark(), nest));
        for (Ledger.Offcut offcut : work.ledger().offcuts()) {
            rests.putIfAbsent(new BoardStage(offcut.board(), offcut.madeIn()), offcut);
            offcut.usedIn().ifPresent(stage -> takenUp.putIfAbsent(new BoardStage(offcut.board(), stage), offcut));
        }
        work.batches().stages().forEach(stage -> stages.put(stage.stage(), work.boards().stream()
                .filter(board -> !board.cutsIn(stage.stage()).isEmpty()).map(board -> laid(board, stage.stage())).toList()));
    }

    private double bar() {
        return THICK * sheet.close;
    }

    private double below() {
        return BELOW * sheet.close;
    }

    private record BoardStage(int board, int stage) {}

    /**
     * What lies on the saw in this stage: a whole board, or the offcut that an earlier stage left of it.
     *
     * @param startMm where it begins on the whole board
     */
    private record Laid(SawBoard board, double startMm, List<SawBoard.Cut> cuts, Optional<Ledger.Offcut> rest) {
        double lengthMm() {
            return board.lengthMm() - startMm;
        }

        boolean whole() {
            return startMm == 0;
        }

        double onIt(double placeMm) {
            return placeMm - startMm;
        }

        boolean alike(Laid other) {
            return board.stock().equals(other.board.stock())
                    && startMm == other.startMm
                    && cuts.stream().map(SawBoard.Cut::lengthMm).toList()
                            .equals(other.cuts.stream().map(SawBoard.Cut::lengthMm).toList())
                    && rest.map(Ledger.Offcut::fate).equals(other.rest.map(Ledger.Offcut::fate));
        }
    }

    /** Bars of all works on one scale, so that works can share a sheet; side by side where all marks can be read so. */
    static void on(Flow flow, List<SawDay.Work> works, SawDay.Signs signs, BenchSheet sheet) {
        List<SawBars> all = works.stream().map(work -> new SawBars(work, signs, sheet)).toList();
        double half = flow.columnWidth(2, BenchTable.APART);
        Scale halves = scale(all, half);
        boolean beside = all.stream().allMatch(one -> one.readable(halves));
        double wide = beside ? half : sheet.space().width();
        Scale scale = beside ? halves : scale(all, wide);
        flow.foot(FOOT, (left, top) -> foot(sheet, scale));
        all.forEach(one -> one.on(flow, scale, beside ? 2 : 1, wide));
        flow.endFoot();
    }

    /** The largest at which every bar and what stands beside it fit a column. */
    private static Scale scale(List<SawBars> all, double wideMm) {
        Predicate<Scale> fits = scale -> all.stream().allMatch(one -> one.fits(scale, wideMm));
        return Stream.iterate(Scale.ofFives(1), scale -> Scale.ofFives(scale.n() + 1)).filter(fits).findFirst().orElseThrow();
    }

    private boolean fits(Scale scale, double wideMm) {
        return stages.values().stream().flatMap(List::stream)
                .allMatch(laid -> LABEL + scale.paperMm(laid.lengthMm()) + besideMm(laid, scale) <= wideMm + 1e-9);
    }

    /** Whether the mark of every piece can be written below it. */
    private boolean readable(Scale scale) {
        return stages.values().stream().flatMap(List::stream).flatMap(laid -> laid.cuts().stream()).allMatch(cut -> {
            if (!nests.containsKey(cut.mark())) return readable(cut.mark(), cut.lengthMm() + work.kerfMm(), scale);
            return nests.get(cut.mark()).parts().stream().allMatch(part -> readable(part.piece().mark(),
                    Math.min(part.faceToMm(), part.backToMm()) - Math.min(part.faceFromMm(), part.backFromMm()), scale));
        });
    }

    private boolean readable(String mark, double roomMm, Scale scale) {
        return TextMeasure.widthMm(signs.marked(mark), TypeSize.LEAST, true) <= scale.paperMm(roomMm) - 1;
    }

    private void on(Flow flow, Scale scale, int columns, double wideMm) {
        stages.forEach((stage, all) -> {
            flow.section("Saw Day, stage " + stage + ": boards", SawBatches.about(work, sheet));
            flow.head(head(), head());
            List<Flow.Block> blocks = new ArrayList<>();
            for (int i = 0; i < all.size(); ) {
                int end = i + 1;
                while (end < all.size() && all.get(end).alike(all.get(i)) && nestedAlike(all.get(end), all.get(i))) end++;
                blocks.addAll(bars(all.subList(i, end), scale, wideMm));
                i = end;
            }
            flow.columns(columns, BenchTable.APART, blocks);
            flow.endHead();
        });
    }

    /** Boards that are cut alike: a bar, and below it a row for each; the bar once more where a column cannot hold all rows. */
    private List<Flow.Block> bars(List<Laid> alike, Scale scale, double wideMm) {
        Laid first = alike.get(0);
        double high = above(first, scale) + bar() + below();
        Flow.Block bar = new Flow.Block(high, false, (left, top) -> {
            List<Shape> shapes = new ArrayList<>();
            bar(shapes, first, scale, left, top);
            return shapes;
        });
        List<Flow.Block> blocks = new ArrayList<>();
        for (Laid laid : alike) {
            Flow.Block row = new Flow.Block(ROW, false, (left, top) -> {
                List<Shape> shapes = new ArrayList<>();
                marks(shapes, laid, scale, left, top + ROW - 3, left + wideMm);
                return shapes;
            });
            blocks.add(blocks.isEmpty() ? Flow.Block.of(List.of(bar, row)) : row.below(bar));
        }
        blocks.set(blocks.size() - 1, blocks.get(blocks.size() - 1).with(below()));
        return blocks;
    }

    /** Nests of one length may be parted in different places. */
    private boolean nestedAlike(Laid one, Laid other) {
        for (int i = 0; i < one.cuts().size(); i++) {
            Nest nest = nests.get(one.cuts().get(i).mark());
            Nest beside = nests.get(other.cuts().get(i).mark());
            if (nest == null ? beside != null : beside == null || !nest.alike(beside)) {
                return false;
            }
        }
        return true;
    }

    private Laid laid(SawBoard board, int stage) {
        List<Integer> stages = board.stages();
        int at = stages.indexOf(stage);
        double start = at == 0 ? 0 : board.lengthMm() - board.leftAfterMm(stages.get(at - 1), work.kerfMm());
        return new Laid(board, start, board.cutsIn(stage), Optional.ofNullable(rests.get(new BoardStage(board.number(), stage))));
    }

    private Flow.Block head() {
        return new Flow.Block(HEAD, true, (left, top) -> List.of(sheet.text(
                left, top + 3.4, "Places of the cuts from the end on the left, in the order of cutting; the saw takes its kerf beyond each.", 3.2, false)));
    }

    private static List<Shape> foot(BenchSheet sheet, Scale scale) {
        Box space = sheet.space();
        List<Shape> shapes = new ArrayList<>(new Panel(90, sheet.inks).bar(scale, sheet.imperial, space.left() + 4, space.high() - 6, 62));
        Inks inks = sheet.inks;
        double y = space.high() - 4;
        String[] words = {"kept for the rack", "carried to a later stage", "trim and scrap"};
        Inks.Filling[] fillings = {inks.of(Inks.KEPT), inks.of(Inks.LATER), inks.of(Inks.SCRAP)};
        double x = space.right();
        for (int i = 0; i < words.length; i++) {
            x -= TextMeasure.widthMm(words[i], 3, false);
            shapes.add(sheet.text(x, y, words[i], 3, false));
            x -= 11;
            shapes.add(fillings[i].area(new Box(x, y - 3, x + 9, y + 0.8), inks.pen(Inks.THIN)));
            x -= 5;
        }
        return shapes;
    }

    /**
     * @param x where its label begins
     * @param y of its upper edge
     */
    private void bar(List<Shape> shapes, Laid laid, Scale scale, double x, double y) {
        double left = x + LABEL;
        double top = y + above(laid, scale);
        label(shapes, laid, x, top);
        pieces(shapes, laid, scale, left, top);
        rest(shapes, laid, scale, left, top);
        running(laid, scale, left).forEach(place -> shapes.addAll(place.above(sheet, top, top + bar(), Inks.MEDIUM)));
    }

    private void label(List<Shape> shapes, Laid laid, double x, double top) {
        String length = sheet.written(laid.lengthMm());
        double size = BenchSheet.fitting(length, 5, 3, true, LABEL - 3);
        shapes.add(sheet.text(x, top + 3.4, length, size, true));
        String kg = work.section().map(section -> {
                    double mass = section.massKg(laid.lengthMm());
                    return Measure.KG.written(mass, 0, sheet.imperial) + (signs.lifting.heavy(mass) ? ", " + signs.lifting.people(mass) + " lift" : "");
                })
                .orElse("");
        shapes.add(sheet.text(x, top + 8, kg, 3.2, false));
        String from = laid.whole() ? plain(laid.board().stock(), laid.board().lengthMm()) : "offcut";
        // the place of the first trim stands over the bar's start and reaches back over the label's column
        double fromWide = LABEL - 6;
        if (TextMeasure.widthMm(from, TypeSize.LEAST, false) > fromWide) from = from.replaceFirst("^rack ", "");
        shapes.add(sheet.fitted(x, top - 1.4, from, 3.2, false, fromWide));
    }

    /** A stock length bought is called by its length, which stands there already. */
    private static String plain(String stock, double lengthMm) {
        return stock.equals(Lengths.text(lengthMm)) ? "" : "rack " + stock;
    }

    private void pieces(List<Shape> shapes, Laid laid, Scale scale, double left, double top) {
        Inks inks = sheet.inks;
        double trim = laid.onIt(laid.cuts().get(0).fromMm());
        if (trim > 0) {
            box(shapes, left, top, scale.paperMm(trim), inks.of(Inks.SCRAP), Inks.THIN);
        }
        for (SawBoard.Cut cut : laid.cuts()) {
            double x = left + scale.paperMm(laid.onIt(cut.fromMm()));
            double wide = scale.paperMm(cut.lengthMm());
            box(shapes, x, top, wide, inks.timber(), Inks.MEDIUM);
            String length = sheet.written(cut.lengthMm());
            if (nests.containsKey(cut.mark())) {
                for (Nest.Cut slant : nests.get(cut.mark()).cuts()) {
                    double back = x + scale.paperMm(slant.backMm());
                    shapes.add(sheet.line(x + scale.paperMm(slant.faceMm()), top + bar(), back, top, Inks.MEDIUM));
                }
                double middle = scale.paperMm(middleOfLongestMm(nests.get(cut.mark())));
                double size = BenchSheet.fitting(length, LENGTH, TypeSize.LEAST, true, 2 * Math.min(middle, wide - middle) - 1);
                shapes.addAll(Words.of(length, size, true).about(new Point(x + middle, top + bar() / 2), inks));
                continue;
            }
            shapes.add(sheet.middle(x + wide / 2, top + bar() / 2, length, LENGTH, wide - 1));
        }
    }

    /** Where words lie on no cut. */
    private static double middleOfLongestMm(Nest nest) {
        Nest.Part longest = nest.parts().stream()
                .max(Comparator.comparingDouble(part -> part.piece().meanMm()))
                .orElseThrow();
        return (longest.faceFromMm() + longest.faceToMm() + longest.backFromMm() + longest.backToMm()) / 4;
    }

    private void box(List<Shape> shapes, double x, double top, double wide, Inks.Filling filling, double edge) {
        shapes.add(filling.area(new Box(x, top, x + wide, top + bar()), sheet.inks.pen(edge)));
    }

    private void rest(List<Shape> shapes, Laid laid, Scale scale, double left, double top) {
        if (laid.rest().isEmpty()) {
            return;
        }
        Ledger.Offcut rest = laid.rest().get();
        Inks inks = sheet.inks;
        double wide = scale.paperMm(rest.lengthMm());
        double x = left + scale.paperMm(laid.lengthMm()) - wide;
        box(shapes, x, top, wide, rest.fate() == Fate.SCRAP ? inks.of(Inks.SCRAP) : rest.fate() == Fate.KEPT ? inks.of(Inks.KEPT) : inks.of(Inks.LATER), Inks.THIN);
        String words = words(rest);
        double size = restSize(words, wide);
        if (size > 0) {
            shapes.addAll(Words.of(words, size, true).about(new Point(x + wide / 2, top + bar() / 2), inks));
        } else {
            shapes.add(sheet.text(x + wide + 1.2, top + bar() / 2 + 1, words, SMALL, false));
        }
    }

    private String words(Ledger.Offcut rest) {
        return sheet.written(rest.lengthMm()) + " "
                + switch (rest.fate()) {
                    case SCRAP -> "scrap";
                    case KEPT -> "rack it";
                    case CARRIED -> "for stage " + rest.usedIn().getAsInt();
                };
    }

    /** At which the words stand within the rest, 0 where they do not. */
    private static double restSize(String words, double wide) {
        double size = BenchSheet.fitting(words, 3.6, 2.6, true, wide - 3);
        return TextMeasure.widthMm(words, size, true) <= wide - 2 ? size : 0;
    }

    private double besideMm(Laid laid, Scale scale) {
        return laid.rest()
                .filter(rest -> restSize(words(rest), scale.paperMm(rest.lengthMm())) == 0)
                .map(rest -> Math.max(BESIDE, TextMeasure.widthMm(words(rest), SMALL, false) + 1.2))
                .orElse(BESIDE);
    }

    private List<Running> running(Laid laid, Scale scale, double left) {
        List<Double> places = new ArrayList<>();
        if (laid.whole() && laid.board().trimMm() > 0) {
            places.add(laid.board().trimMm());
        }
        laid.cuts().forEach(cut -> places.add(laid.onIt(cut.toMm())));
        return Running.of(sheet, places, place -> left + scale.paperMm(place), Running.SIZE, left - 4);
    }

    private double above(Laid laid, Scale scale) {
        return ABOVE * sheet.close + Running.LEVEL * running(laid, scale, sheet.space().left() + LABEL).stream().mapToInt(Running::level).max().orElse(0);
    }

    /** One board's row: a box to tick, its number, then the mark of each piece below it. */
    private void marks(List<Shape> shapes, Laid laid, Scale scale, double x, double base, double right) {
        double left = x + LABEL;
        shapes.add(sheet.line(x, base - ROW + 2.6, right, base - ROW + 2.6, Inks.HAIR));
        shapes.add(sheet.tick(x, base + 2.1, TypeSize.TICK));
        shapes.addAll(sheet.boardNumber(x + TypeSize.TICK, base, work.board(laid.board().number())));
        taken(laid).ifPresent(tag -> shapes.addAll(sheet.mark(x + TypeSize.TICK + 8, base, tag, LABEL - TypeSize.TICK - 9)));
        for (SawBoard.Cut cut : laid.cuts()) {
            double from = left + scale.paperMm(laid.onIt(cut.fromMm()));
            if (nests.containsKey(cut.mark())) {
                parts(shapes, nests.get(cut.mark()), scale, from, base);
                continue;
            }
            shapes.addAll(sheet.mark(from + 0.5, base, signs.marked(cut.mark()), scale.paperMm(cut.lengthMm() + work.kerfMm()) - 1));
        }
        laid.rest().filter(rest -> rest.fate() != Fate.SCRAP).ifPresent(rest -> {
            double from = left + scale.paperMm(laid.lengthMm() - rest.lengthMm());
            shapes.addAll(sheet.mark(from + 0.5, base, work.tag(rest.tag()), Math.max(scale.paperMm(rest.lengthMm()), right - from) - 1));
        });
    }

    /** Each piece of a nest by its own mark, below its part of the length. */
    private void parts(List<Shape> shapes, Nest nest, Scale scale, double from, double base) {
        for (Nest.Part part : nest.parts()) {
            double x = from + scale.paperMm(Math.min(part.faceFromMm(), part.backFromMm()));
            double room = from + scale.paperMm(Math.min(part.faceToMm(), part.backToMm())) - x - 1;
            shapes.addAll(sheet.mark(x + 0.5, base, signs.marked(part.piece().mark()), room));
        }
    }

    /** The tag of the offcut that is taken up. */
    private Optional<String> taken(Laid laid) {
        BoardStage at = new BoardStage(laid.board().number(), laid.cuts().get(0).stage());
        return Optional.ofNullable(takenUp.get(at)).map(offcut -> work.tag(offcut.tag()));
    }
}
