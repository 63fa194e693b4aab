package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.diagrams.BenchTable.Column;
import lapyard.drawing.Page;
import lapyard.drawing.PaperPhoto;
import lapyard.drawing.Photo;
import lapyard.drawing.Shape;

/** Sheets of words and tables, one below the other; texts as they shall be read. */
public final class ListSheets {
    private final String garden;
    private final boolean imperial;
    private final String caution;
    private final String kind;
    private final String about;
    private final BenchOptions options;
    private final List<Part> parts = new ArrayList<>();

    private interface Part {
        void on(BenchSheet sheet, Flow flow);
    }

    /**
     * @param kind  the heading
     * @param about what is said below it
     */
    public ListSheets(String garden, boolean imperial, String caution, String kind, String about, BenchOptions options) {
        this.garden = garden;
        this.imperial = imperial;
        this.caution = caution;
        this.kind = kind;
        this.about = about;
        this.options = options;
    }

    /** @param size of the letters, mm */
    public ListSheets words(List<String> sentences, double size, boolean bold) {
        return with((sheet, flow) -> flow.words(sentences, size, bold));
    }

    /** A further heading, on the same sheet where enough of it is free. */
    public ListSheets section(String kind, String about) {
        return with((sheet, flow) -> flow.section(kind, about, 0.7));
    }

    public ListSheets table(String title, List<Column> columns, List<List<String>> rows) {
        return pictured(title, columns, rows.stream().map(cells -> new Pictured(cells, List.of(), "")).toList());
    }

    /** @param words what its photos show, for whoever cannot see them */
    public record Pictured(List<String> cells, List<Photo> photos, String words) {}

    /** A table whose rows have photos below their cells. */
    public ListSheets pictured(String title, List<Column> columns, List<Pictured> rows) {
        return with((sheet, flow) -> {
            BenchTable table = new BenchTable(sheet, title, columns.toArray(Column[]::new));
            rows.forEach(row -> table.row(row.cells(), row.photos().stream().map(photo -> new BenchTable.Seen(photo, row.words())).toList()));
            table.on(flow);
        });
    }

    /** A photo as {@link #pictured} shows it, grey in mono; empty where it cannot be read. */
    public static Optional<Photo> photo(byte[] kept, boolean mono) {
        return PaperPhoto.of(kept, BenchTable.PHOTO_WIDE, BenchTable.PHOTO_HIGH, mono);
    }

    /** Lines side by side to write on, with what belongs there above each. */
    public ListSheets toFillIn(List<String> asked) {
        return with((sheet, flow) -> {
            double wide = flow.columnWidth(asked.size(), 4);
            flow.block(new Flow.Block(14, false, (x, y) -> {
                List<Shape> shapes = new ArrayList<>();
                for (int i = 0; i < asked.size(); i++) {
                    double left = x + i * (wide + 4);
                    shapes.add(sheet.text(left, y + 3.4, asked.get(i), 2.9, false));
                    shapes.add(sheet.line(left, y + 11, left + wide, y + 11, Inks.THIN));
                }
                return shapes;
            }));
        });
    }

    public List<Page> pages() {
        return BenchSheet.pages(garden, caution, imperial, options, sheet -> {
            Flow flow = new Flow(sheet, kind, about);
            parts.forEach(part -> part.on(sheet, flow));
            return flow.drafts();
        });
    }

    private ListSheets with(Part part) {
        parts.add(part);
        return this;
    }
}
