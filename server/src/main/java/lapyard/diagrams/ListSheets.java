package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import lapyard.diagrams.BenchTable.Column;
import lapyard.drawing.Page;
import lapyard.drawing.PaperPhoto;
import lapyard.drawing.Photo;
import lapyard.drawing.Shape;

/** Sheets of words and tables, one below the other; texts as they shall be read. */
public record ListSheets(String caution, String kind, String about, BenchOptions options, List<Consumer<Flow>> parts) {
    private static final int MOST_NAMES = 12;

    public ListSheets(String caution, String kind, String about, BenchOptions options) {
        this(caution, kind, about, options, new ArrayList<>());
    }

    /** Names with commas between; the twelve first of many. */
    public static String some(List<String> names) {
        int over = names.size() - MOST_NAMES;
        return over <= 0 ? String.join(", ", names) : String.join(", ", names.subList(0, MOST_NAMES)) + " and " + over + " more";
    }

    /** @param size of the letters, mm */
    public ListSheets words(List<String> sentences, double size, boolean bold) {
        return with(flow -> flow.words(sentences, size, bold));
    }

    /** A further heading, on the same sheet where enough of it is free. */
    public ListSheets section(String kind, String about) {
        return section(kind, about, 0.7);
    }

    /** @param mostUsed a sheet of which more than this part is used is left alone */
    public ListSheets section(String kind, String about, double mostUsed) {
        return with(flow -> flow.section(kind, about, mostUsed));
    }

    public ListSheets table(String title, List<Column> columns, List<List<String>> rows) {
        return table(title, columns, rows, 1);
    }

    /** @param side so many columns of the table side by side */
    public ListSheets table(String title, List<Column> columns, List<List<String>> rows, int side) {
        return pictured(title, columns, rows.stream().map(cells -> new Pictured(cells, List.of(), "")).toList(), side);
    }

    /** What may hurt somebody, framed; none for no frame. */
    public ListSheets warned(List<String> sentences) {
        return with(flow -> WarningFrame.of(flow.sheet, sentences).on(flow));
    }

    /** @param words what its photos show, for whoever cannot see them */
    public record Pictured(List<String> cells, List<Photo> photos, String words) {}

    /** A table whose rows have photos below their cells. */
    public ListSheets pictured(String title, List<Column> columns, List<Pictured> rows) {
        return pictured(title, columns, rows, 1);
    }

    private ListSheets pictured(String title, List<Column> columns, List<Pictured> rows, int side) {
        return with(flow -> {
            BenchTable table = new BenchTable(flow.sheet, title, columns.toArray(Column[]::new));
            rows.forEach(row -> table.row(row.cells(), row.photos().stream().map(photo -> new BenchTable.Seen(photo, row.words())).toList()));
            table.on(flow, side);
        });
    }

    /** A photo as {@link #pictured} shows it, grey in mono; empty where it cannot be read. */
    public static Optional<Photo> photo(byte[] kept, boolean mono) {
        return PaperPhoto.of(kept, BenchTable.PHOTO_WIDE, BenchTable.PHOTO_HIGH, mono);
    }

    /** Lines side by side to write on, with what belongs there above each. */
    public ListSheets toFillIn(List<String> asked) {
        return with(flow -> flow.block(toFillIn(flow, asked)));
    }

    static Flow.Block toFillIn(Flow flow, List<String> asked) {
        double wide = flow.columnWidth(asked.size(), 4);
        return new Flow.Block(14, false, (x, y) -> {
            List<Shape> shapes = new ArrayList<>();
            for (int i = 0; i < asked.size(); i++) {
                double left = x + i * (wide + 4);
                shapes.add(flow.sheet.text(left, y + 3.4, asked.get(i), 2.9, false));
                shapes.add(flow.sheet.line(left, y + 11, left + wide, y + 11, Inks.THIN));
            }
            return shapes;
        });
    }

    public List<Page> pages() {
        return pages("");
    }

    /** @param empty what a sheet says where none of its tables has a row */
    public List<Page> pages(String empty) {
        return BenchSheet.pages(caution, options, kind, about, empty, flow -> parts.forEach(part -> part.accept(flow)));
    }

    private ListSheets with(Consumer<Flow> part) {
        parts.add(part);
        return this;
    }
}
