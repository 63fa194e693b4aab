package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import lapyard.drawing.Shape;
import lapyard.drawing.TextMeasure;

/**
 * A table on sheets for the bench. A row is never broken across sheets, and the headings stand again on each.
 */
final class BenchTable {
    private static final double SIZE = 3.6;
    private static final double PITCH = SIZE * 1.3;
    private static final double PAD = 1.6;
    private static final double HEAD = 14;

    private final BenchSheet sheet;
    private final String title;
    private final List<Column> columns;
    private final List<Row> rows = new ArrayList<>();

    /** @param page that the row leads to, from 0; below 0 for none */
    private record Row(int page, List<String> cells) {}

    /** @param share of the width of the table */
    record Column(String head, double share, boolean bold) {}

    BenchTable(BenchSheet sheet, String title, Column... columns) {
        this.sheet = sheet;
        this.title = title;
        this.columns = List.of(columns);
    }

    void row(String... cells) {
        rows.add(new Row(-1, List.of(cells)));
    }

    /**
     * A row that leads to a page of the same file.
     *
     * @param page from 0
     */
    void leading(int page, String... cells) {
        rows.add(new Row(page, List.of(cells)));
    }

    boolean isEmpty() {
        return rows.isEmpty();
    }

    private List<List<String>> wrapped(List<String> row, double width) {
        List<List<String>> cells = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            Column column = columns.get(i);
            cells.add(TextMeasure.wrap(row.get(i), SIZE, column.bold(), width * column.share() - PAD));
        }
        return cells;
    }

    /** Lays the table out below what stands on the flow's sheet, on as many more sheets as it needs. */
    void on(Flow flow) {
        Box space = sheet.space();
        flow.head(head(title), head(title + ", continued"));
        int most = (int) ((space.height() - HEAD - PAD) / PITCH);
        for (Row row : rows) {
            List<List<String>> cells = wrapped(row.cells(), space.width());
            int lines = Math.min(most, cells.stream().mapToInt(List::size).max().orElse(1));
            double height = lines * PITCH + PAD;
            flow.block(new Flow.Block(height, false, (x, y) -> row(row, cells, lines, x, y, height)));
        }
        flow.endHead();
        flow.gap(3);
    }

    private List<Shape> row(Row row, List<List<String>> cells, int lines, double left, double top, double height) {
        Box space = sheet.space();
        List<Shape> shapes = new ArrayList<>();
        double x = left;
        for (int i = 0; i < columns.size(); i++) {
            for (int k = 0; k < Math.min(lines, cells.get(i).size()); k++) {
                shapes.add(sheet.text(x, top + (k + 0.95) * PITCH, cells.get(i).get(k), SIZE, columns.get(i).bold()));
            }
            x += space.width() * columns.get(i).share();
        }
        shapes.add(sheet.line(left, top + height, left + space.width(), top + height, Inks.HAIR));
        if (row.page() >= 0) shapes.add(new Shape.Link(left, top, space.width(), height, row.page(), row.cells().get(0)));
        return shapes;
    }

    private Flow.Block head(String words) {
        Box space = sheet.space();
        return new Flow.Block(HEAD, true, (left, top) -> {
            List<Shape> shapes = new ArrayList<>();
            shapes.add(sheet.text(left, top + 5, words, 4.6, true));
            double x = left;
            for (Column column : columns) {
                shapes.add(sheet.text(x, top + 11.5, column.head(), 2.9, false));
                x += space.width() * column.share();
            }
            shapes.add(sheet.line(left, top + HEAD - 1, left + space.width(), top + HEAD - 1, Inks.THIN));
            return shapes;
        });
    }
}
