package lapyard.prints;

import java.util.List;
import java.util.stream.Collectors;
import lapyard.catalogue.Section;
import lapyard.diagrams.ProvenanceSheets;
import lapyard.drawing.Page;
import lapyard.geometry.Length;
import lapyard.job.JobSheet;
import lapyard.job.Provenance;
import lapyard.plan.Bed;
import lapyard.plan.RackBoard;

/** What is known of the timber of a garden, board by board and bed by bed. */
final class ProvenancePrint {
    private ProvenancePrint() {}

    static List<Page> pages(JobSheet sheet, PrintAsk ask) {
        boolean imperial = sheet.garden().imperial();
        List<Provenance> known = sheet.provenance();
        if (known.isEmpty() && sheet.garden().beds().stream().noneMatch(bed -> bed.planting().food())) {
            throw new CannotPrint("no boards are on hand and no bed is marked for food: rack your boards, or mark the beds");
        }
        List<ProvenanceSheets.Board> boards = known.stream().map(one -> board(one, imperial)).toList();
        List<ProvenanceSheets.Bed> beds = sheet.garden().beds().stream()
                .map(bed -> new ProvenanceSheets.Bed(
                        bed.id(), bed.planting().food(),
                        known.stream().filter(one -> one.beds().contains(bed.id()))
                                .map(one -> one.board().id() + (one.board().origin().isEmpty() ? "" : ": " + one.board().origin()))
                                .collect(Collectors.joining("; ")),
                        timber(bed.section())))
                .toList();
        return ProvenanceSheets.pages(sheet.garden().name(), imperial, boards, beds, ask.bench(imperial));
    }

    private static ProvenanceSheets.Board board(Provenance one, boolean imperial) {
        RackBoard board = one.board();
        return new ProvenanceSheets.Board(
                board.id(), (board.count() > 1 ? board.count() + " x " : "") + Length.written(board.lengthMm(), imperial) + " of " + board.section(),
                board.origin().isEmpty() ? "unknown" : board.origin(), board.treatment().words() + (board.coated() ? ", coated" : ""),
                board.checkedBy().isEmpty() ? "nobody" : board.checkedBy(),
                one.allowed() + (one.why().isEmpty() ? "" : ": " + one.why()), String.join(", ", one.beds()));
    }

    private static String timber(Section section) {
        return section.id() + (section.treated() ? ", treated against rot: ask for the treatment in writing" : ", not treated");
    }
}
