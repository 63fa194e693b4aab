package lapyard.prints;

import java.util.List;
import java.util.stream.Collectors;
import lapyard.catalogue.Section;
import lapyard.catalogue.TradeName;
import lapyard.diagrams.BenchTable.Column;
import lapyard.diagrams.ListSheets;
import lapyard.drawing.Page;
import lapyard.geometry.Length;
import lapyard.job.JobSheet;
import lapyard.job.Provenance;
import lapyard.plan.Bed;
import lapyard.plan.FindingKind;
import lapyard.plan.RackBoard;

/** What is known of the timber of a garden, board by board and bed by bed. */
final class ProvenancePrint {
    private static final String CAUTION =
            "Unknown is not safe: nothing of unknown origin, coating or treatment goes near food. Timber with creosote or CCA: licensed tip, never burn, saw or sand it.";

    private ProvenancePrint() {}

    static List<Page> pages(JobSheet sheet, PrintAsk ask) {
        boolean imperial = sheet.garden().imperial();
        List<Provenance> known = sheet.provenance();
        if (known.isEmpty() && sheet.garden().beds().stream().noneMatch(bed -> bed.planting().food())) {
            throw CannotPrint.of(FindingKind.BOARDS_NONE_TRACED);
        }
        ListSheets sheets = ask.list(sheet, CAUTION, "Where boards come from", "to be kept with the beds, for whoever eats from them or takes them down");
        if (!known.isEmpty())
            sheets.table("Boards on hand", List.of(new Column("Board", 0.08, true), new Column("What", 0.2, false), new Column("Comes from", 0.22, false), new Column("Treatment", 0.16, false),
                    new Column("Looked at by", 0.12, false), new Column("May go", 0.12, true), new Column("In beds", 0.1, false)), known.stream().map(one -> board(one, imperial)).toList());
        return sheets.table("Bed by bed", List.of(new Column("Bed", 0.14, true), new Column("Food", 0.1, true), new Column("Boards on hand", 0.4, false), new Column("Bought timber", 0.36, false)),
                sheet.garden().beds().stream().map(bed -> List.of(bed.id(), bed.planting().food() ? "food" : "", onHand(known, bed), timber(bed.section(), imperial))).toList()).pages();
    }

    private static String onHand(List<Provenance> known, Bed bed) {
        String boards = known.stream().filter(one -> one.beds().contains(bed.id()))
                .map(one -> one.board().id() + (one.board().origin().isEmpty() ? "" : ": " + one.board().origin()))
                .collect(Collectors.joining("; "));
        return boards.isEmpty() ? "none" : boards;
    }

    private static List<String> board(Provenance one, boolean imperial) {
        RackBoard board = one.board();
        return List.of(
                board.id(), (board.count() > 1 ? board.count() + " x " : "") + Length.written(board.lengthMm(), imperial) + " of " + TradeName.section(board.section(), imperial),
                board.origin().isEmpty() ? "unknown" : board.origin(), board.treatment().words + (board.coated() ? ", coated" : ""),
                board.checkedBy().isEmpty() ? "nobody" : board.checkedBy(),
                one.allowed() + (one.why().isEmpty() ? "" : ": " + one.why()), String.join(", ", one.beds()));
    }

    private static String timber(Section section, boolean imperial) {
        return TradeName.section(section.id(), imperial) + (section.treated() ? ", treated against rot: ask for the treatment in writing" : ", not treated");
    }
}
