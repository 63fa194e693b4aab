package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import lapyard.cutting.Batches;
import lapyard.cutting.Batches.Draw;
import lapyard.cutting.Batches.Setting;
import lapyard.drawing.Shape;
import lapyard.drawing.Tag;
import lapyard.drawing.TextMeasure;
import lapyard.geometry.Lengths;
import lapyard.geometry.Measure;
import lapyard.geometry.Point;

/** The batch sheet: one row a setting of the stop, in type that is read at arm's length. */
record SawBatches(SawDay.Work work, SawDay.Signs signs, BenchSheet sheet) {
    private static final double STOP = 10;
    private static final double COUNT = 6;
    private static final double MARK = 4.2;
    private static final double PITCH = TypeSize.TICK + 1;
    private static final double COUNT_AT = 62;
    private static final double DRAWS_AT = 88;
    private static final double PLATE = 11;

    /** Lines of boards that one row may have; a longer one goes on in a row of its own. */
    private static final int MOST_LINES = 9;

    private static final double HEAD = 8;

    /** Stop, how many, and from which boards. */
    private static final int COLUMNS = 3;

    /** A stage begins on a fresh sheet where more than this part of one is used, so that few stages are broken. */
    private static final double STAGE = 0.6;

    /** A board's plate, then its pieces, each with a box to tick; or what is left of them on a further line. */
    private record Chip(int board, boolean plate, String mark, double width) {}

    void on(Flow flow, Batches.Stage stage) {
        flow.section("Saw Day, stage " + stage.stage() + ": batches", about(work, sheet), STAGE);
        if (!work.before().isEmpty() && stage.stage() == work.batches().stages().get(0).stage()) flow.words(List.of(work.before()), 5, true);
        flow.words(List.of(legend()), 3.4, false);
        flow.words(totals(stage), 4, false);
        Tag table = Tag.table();
        flow.head(head(table), head(table));
        List<Flow.Block> rows = new ArrayList<>();
        for (Setting setting : stage.settings()) {
            List<List<Chip>> lines = lines(setting);
            int parts = (lines.size() + MOST_LINES - 1) / MOST_LINES;
            for (int i = 0; i < parts; i++) {
                int part = i;
                List<List<Chip>> some = lines.subList(part * MOST_LINES, Math.min(lines.size(), (part + 1) * MOST_LINES));
                double height = Math.max(13, some.size() * PITCH + 3.4);
                rows.add(new Flow.Block(height, false, (left, top) -> row(setting, some, left, top, height, part + 1, parts, table.row(COLUMNS))));
            }
        }
        flow.rows(rows);
        flow.endHead();
        flow.gap(3);
    }

    static String about(SawDay.Work work, BenchSheet sheet) {
        return work.name() + ", " + Measure.counted(work.boards().size(), work.section().isPresent() ? "board" : "strip") + ", kerf "
                + sheet.fine(work.kerfMm()) + ", first end trimmed " + sheet.written(work.boards().get(0).trimMm());
    }

    private List<String> totals(Batches.Stage stage) {
        Batches.Rates rates = work.batches().rates();
        int settings = stage.settings().size();
        String sum = stage.cuts() + " cuts" + (stage.trims() == 0 ? "" : ", " + stage.trims() + " of them to trim") + " × " + Lengths.text(rates.minutesACut()) + " min + " + settings + " settings × "
                + Lengths.text(rates.minutesASetting()) + " min = " + Lengths.text(stage.minutes(rates)) + " min";
        List<String> words = new ArrayList<>();
        words.add(Measure.counted(settings, "setting") + ", " + Measure.counted(stage.pieces(), "piece") + ", " + times(stage.handlings())
                + " a board goes on the saw: " + sum + ".");
        if (stage.settingsBoardByBoard() > settings || stage.handlings() > stage.boards()) {
            words.add("Board by board instead: " + times(stage.boards()) + " on the saw, " + stage.settingsBoardByBoard()
                    + " settings, " + Lengths.text(stage.minutesBoardByBoard(rates)) + " min. Choose what suits backs and bench.");
        }
        return words;
    }

    private static String times(int count) {
        return count == 1 ? "once" : count + " times";
    }

    private static String legend() {
        return "Trim the first end, cut, tick, write mark and signs on the top face: " + SawDay.Signs.HEAVY
                + " more than one lifts it, " + SawDay.Signs.SEEN + " points to the seen face, " + SawDay.Signs.NOTCH
                + " drain notch under, " + SawDay.Signs.ANGLED
                + " angled end, on a sheet of its own. Ends that run through: see the course cards. Nothing on a face that will be seen.";
    }

    private Flow.Block head(Tag table) {
        return new Flow.Block(HEAD - 2, true, (left, top) -> {
            Tag told = table.head(COLUMNS);
            return List.of(
                    sheet.text(left, top + 4, "stop at", 3, false).as(told.cell(0)),
                    sheet.text(left + COUNT_AT, top + 4, "pieces", 3, false).as(told.cell(1)),
                    sheet.text(left + DRAWS_AT, top + 4, "from board, piece by piece", 3, false).as(told.cell(2)),
                    sheet.line(left, top + HEAD - 2, sheet.space().right(), top + HEAD - 2, Inks.THIN));
        });
    }

    private List<Shape> row(Setting setting, List<List<Chip>> lines, double left, double top, double height, int part, int parts, Tag told) {
        List<Shape> shapes = new ArrayList<>();
        String stop = sheet.written(setting.stopMm());
        double size = BenchSheet.fitting(stop, STOP, 4, true, COUNT_AT - 3);
        shapes.add(sheet.text(left, top + 10, stop, size, true).as(told.cell(0)));
        if (part == 1) {
            shapes.add(sheet.text(left + COUNT_AT, top + 9.4, "× " + setting.pieces(), COUNT, true).as(told.cell(1)));
        } else {
            shapes.add(sheet.text(left + COUNT_AT, top + 9.4, part + " of " + parts, 4, false).as(told.cell(1)));
        }
        for (int i = 0; i < lines.size(); i++) {
            double x = left + DRAWS_AT;
            double y = top + 8 + i * PITCH;
            for (Chip chip : lines.get(i)) {
                if (chip.plate()) {
                    String number = work.board(chip.board());
                    shapes.add(sheet.ring(x + 4.4, y - 1.7, 3.9));
                    shapes.add(Inks.sign(new Point(x + 4.4, y - 1.7), number,
                            BenchSheet.fitting(number, 4.6, TypeSize.LEAST, true, 6.6), sheet.inks.ink()).as(told.cell(2)));
                } else {
                    shapes.add(sheet.tick(x, y + 2.5, TypeSize.TICK));
                    double room = chip.width() - TypeSize.TICK - 2.5;
                    shapes.add(sheet.fitted(x + TypeSize.TICK + 1, y, chip.mark(), MARK, true, room).as(told.cell(2)));
                }
                x += chip.width();
            }
        }
        shapes.add(sheet.line(left, top + height, sheet.space().right(), top + height, Inks.NARROW));
        return shapes;
    }

    private List<List<Chip>> lines(Setting setting) {
        double room = sheet.space().width() - DRAWS_AT;
        List<List<Chip>> lines = new ArrayList<>();
        List<Chip> line = new ArrayList<>();
        double x = 0;
        for (Draw draw : setting.draws()) {
            List<Chip> chips = new ArrayList<>();
            for (String mark : draw.marks()) {
                String words = signs.marked(mark);
                double width = Math.min(room - PLATE, TypeSize.TICK + 3.6 + TextMeasure.widthMm(words, MARK, true));
                chips.add(new Chip(draw.board(), false, words, width));
            }
            double first = PLATE + chips.get(0).width();
            if (!line.isEmpty() && x + first > room) {
                lines.add(line);
                line = new ArrayList<>();
                x = 0;
            }
            line.add(new Chip(draw.board(), true, "", PLATE));
            x += PLATE;
            for (Chip chip : chips) {
                if (x + chip.width() > room + 1e-9) {
                    lines.add(line);
                    line = new ArrayList<>();
                    line.add(new Chip(draw.board(), true, "", PLATE));
                    x = PLATE;
                }
                line.add(chip);
                x += chip.width();
            }
        }
        lines.add(line);
        return lines;
    }
}
