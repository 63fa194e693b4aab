package lapyard.diagrams;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapyard.cutting.Ledger;
import lapyard.cutting.Ledger.Fate;
import lapyard.cutting.SawBoard;
import lapyard.diagrams.BenchTable.Column;
import lapyard.geometry.Measure;
import lapyard.plan.BedNames;

/** First cuts at the merchant and the ledger of offcuts, as tables. */
final class SawOffcuts {
    private SawOffcuts() {}

    static void firstCuts(SawDay.Work work, double longestMm, BenchSheet sheet, Flow flow) {
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
    static void on(Flow flow, List<SawDay.Work> works, BenchSheet sheet) {
        if (works.stream().allMatch(work -> work.ledger().stages().size() < 2)) return;
        flow.section("Saw Day: offcuts", "A tag is the number of the board, then the stage that made the offcut.");
        for (SawDay.Work work : works) {
            stages(work, sheet, flow);
            ledger(work, sheet, flow);
        }
    }

    private static void stages(SawDay.Work work, BenchSheet sheet, Flow flow) {
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

    private static void ledger(SawDay.Work work, BenchSheet sheet, Flow flow) {
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

    private static String runs(List<Integer> numbers, SawDay.Work work) {
        return BedNames.compact(numbers.stream().map(work::board).toList());
    }
}
