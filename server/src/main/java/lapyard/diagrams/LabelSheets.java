package lapyard.diagrams;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import lapyard.construction.BedWork;
import lapyard.construction.Nest;
import lapyard.construction.Piece;
import lapyard.cutting.Ledger;
import lapyard.cutting.SawBoard;
import lapyard.drawing.Page;
import lapyard.drawing.Shape;
import lapyard.drawing.Tag;
import lapyard.drawing.TextMeasure;
import lapyard.geometry.Length;
import lapyard.geometry.Measure;
import lapyard.plan.Lifting;

/** A label for each piece and a tag for each offcut that is kept, in the order in which they come off the saw. */
public final class LabelSheets {
    /** Printers and labels are off by this much. */
    private static final double PAD = 2.5;

    private LabelSheets() {}

    /**
     * @param mark   what is biggest on it, with the length
     * @param length as it shall be read
     */
    private record Label(String mark, String length, List<String> lines) {}

    /** A piece with the bed that it is for. */
    private record Owned(BedWork bed, Piece piece) {}

    /** Sheets of labels; one that says so where nothing is sawn. */
    public static List<Page> pages(
            boolean imperial, Lifting lifting, List<BedWork> beds, List<SawDay.Work> works, LabelGrid grid, boolean mono) {
        Map<String, Owned> pieces = new HashMap<>();
        beds.forEach(bed -> bed.pieces().forEach(piece -> pieces.put(piece.mark(), new Owned(bed, piece))));
        List<Label> labels = new ArrayList<>();
        for (SawDay.Work work : works) {
            for (SawBoard board : work.boards()) {
                for (SawBoard.Cut cut : board.cuts()) {
                    for (String mark : Nest.marks(cut.mark())) labels.add(piece(mark, cut, work.board(board.number()), pieces, imperial, lifting));
                }
                work.ledger().offcuts().stream()
                        .filter(offcut -> offcut.board() == board.number() && offcut.fate() != Ledger.Fate.SCRAP)
                        .forEach(offcut -> labels.add(offcut(offcut, work, imperial)));
            }
        }
        if (labels.isEmpty()) labels.add(new Label("No labels", "", List.of("Nothing is sawn in this garden.")));
        Inks inks = new Inks(mono);
        List<Page> pages = new ArrayList<>();
        int sheets = (labels.size() + grid.onASheet() - 1) / grid.onASheet();
        for (int sheet = 0; sheet < sheets; sheet++) {
            List<Shape> shapes = new ArrayList<>();
            for (int n = 0; n < grid.onASheet() && sheet * grid.onASheet() + n < labels.size(); n++) {
                draw(labels.get(sheet * grid.onASheet() + n), grid.label(n).grown(-PAD), inks, shapes);
            }
            pages.add(new Page(
                    "Labels, sheet " + (sheet + 1) + " of " + sheets, grid.paper().shortMm, grid.paper().longMm, shapes, List.of("Labels")));
        }
        return pages;
    }

    private static Label piece(String mark, SawBoard.Cut cut, String board, Map<String, Owned> pieces, boolean imperial, Lifting lifting) {
        Owned owned = pieces.get(mark);
        if (owned == null) return new Label(mark, Length.whole(cut.lengthMm(), imperial), List.of("board " + board));
        Piece piece = owned.piece();
        double kg = owned.bed().massKg(piece);
        String weight = Measure.KG.written(kg, 0, imperial) + (lifting.heavy(kg) ? ", " + lifting.people(kg) + " lift" : "");
        return new Label(mark, Length.whole(piece.lengthMm(), imperial), List.of(
                "bed " + owned.bed().bed().id() + ", course " + piece.course() + ", wall " + piece.wall() + piece.part(),
                "board " + board + ", " + weight));
    }

    private static Label offcut(Ledger.Offcut offcut, SawDay.Work work, boolean imperial) {
        String then = offcut.fate() == Ledger.Fate.KEPT ? "to the rack"
                : "for stage " + offcut.usedIn().getAsInt() + ": " + String.join(", ", offcut.marks());
        return new Label(work.tag(offcut.tag()), Length.whole(offcut.lengthMm(), imperial), List.of(work.name(), then));
    }

    /** Mark and length beside each other, as large as fits; the lines below. One is read after another. */
    private static void draw(Label label, Box box, Inks inks, List<Shape> shapes) {
        double size = BenchSheet.fitting(label.mark() + "   " + label.length(), Math.min(9, box.height() * 0.45), TypeSize.LEAST, true, box.width());
        String mark = TextMeasure.cut(label.mark(), size, true, box.width() - TextMeasure.widthMm("  " + label.length(), size, true));
        double base = box.low() + size;
        Tag whole = Tag.paragraph();
        shapes.add(inks.text(box.left(), base, mark, size, true).as(whole));
        shapes.add(inks.end(box.right(), base, label.length(), size, true).as(whole));
        double room = (box.high() - base - 1) / label.lines().size();
        for (String line : label.lines()) {
            double small = BenchSheet.fitting(line, Math.min(4, room * 0.75), TypeSize.LEAST, false, box.width());
            base += room;
            shapes.add(inks.text(box.left(), base - room * 0.1, TextMeasure.cut(line, small, false, box.width()), small, false).as(whole));
        }
    }
}
