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

    private final BenchSheet sheet;
    private final String title;
    private final List<Column> columns;
    private final List<List<String>> rows = new ArrayList<>();

    /** @param share of the width of the table */
    record Column(String head, double share, boolean bold) {}

    BenchTable(BenchSheet sheet, String title, Column... columns) {
        this.sheet = sheet;
        this.title = title;
        this.columns = List.of(columns);
    }

    void row(String... cells) {
        rows.add(List.of(cells));
    }

    boolean isEmpty() {
        return rows.isEmpty();
    }

    private double headHeight() {
        return 14;
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
        boolean open = false;
        int most = (int) ((space.height() - headHeight() - PAD) / PITCH);
        for (List<String> row : rows) {
            List<List<String>> cells = wrapped(row, space.width());
            int lines = Math.min(most, cells.stream().mapToInt(List::size).max().orElse(1));
            double height = lines * PITCH + PAD;
            if (!open || !flow.holds(height)) {
                if (!flow.holds(headHeight() + height)) {
                    flow.next();
                }
                head(flow, open);
                open = true;
            }
            double y = flow.y();
            double x = space.left();
            for (int i = 0; i < columns.size(); i++) {
                for (int k = 0; k < Math.min(lines, cells.get(i).size()); k++) {
                    flow.add(sheet.text(x, y + (k + 0.95) * PITCH, cells.get(i).get(k), SIZE, columns.get(i).bold()));
                }
                x += space.width() * columns.get(i).share();
            }
            flow.down(height);
            flow.add(sheet.line(space.left(), flow.y(), space.right(), flow.y(), Inks.HAIR));
        }
        flow.down(3);
    }

    private void head(Flow flow, boolean again) {
        Box space = sheet.space();
        flow.add(sheet.text(space.left(), flow.y() + 5, title + (again ? ", continued" : ""), 4.6, true));
        double x = space.left();
        for (Column column : columns) {
            flow.add(sheet.text(x, flow.y() + 11.5, column.head(), 2.9, false));
            x += space.width() * column.share();
        }
        flow.down(headHeight() - 1);
        flow.add(sheet.line(space.left(), flow.y(), space.right(), flow.y(), Inks.THIN));
        flow.down(1);
    }

    /** Sheets that fill from top to bottom. */
    static final class Flow {
        private final BenchSheet sheet;
        private final String kind;
        private final String about;
        private final List<BenchSheet.Draft> done = new ArrayList<>();
        private List<Shape> shapes = new ArrayList<>();
        private double y;

        Flow(BenchSheet sheet, String kind, String about) {
            this.sheet = sheet;
            this.kind = kind;
            this.about = about;
            this.y = sheet.space().low();
        }

        double y() {
            return y;
        }

        boolean holds(double height) {
            return y + height <= sheet.space().high() + 1e-9;
        }

        void add(Shape shape) {
            shapes.add(shape);
        }

        void addAll(List<? extends Shape> more) {
            shapes.addAll(more);
        }

        void down(double height) {
            y += height;
        }

        /** On to a fresh sheet, unless this one is still empty. */
        void next() {
            if (!shapes.isEmpty()) {
                done.add(new BenchSheet.Draft(kind, about, shapes));
                shapes = new ArrayList<>();
            }
            y = sheet.space().low();
        }

        /** Sentences across the whole width, kept together where a sheet is high enough. */
        void words(List<String> sentences, double size, boolean bold) {
            List<String> lines = new ArrayList<>();
            sentences.forEach(words -> lines.addAll(TextMeasure.wrap(words, size, bold, sheet.space().width())));
            if (!holds(lines.size() * size * 1.35 + 2)) {
                next();
            }
            for (String line : lines) {
                if (!holds(size * 1.35)) {
                    next();
                }
                shapes.add(sheet.text(sheet.space().left(), y + size, line, size, bold));
                y += size * 1.35;
            }
            y += 2;
        }

        List<BenchSheet.Draft> drafts() {
            next();
            return done;
        }
    }
}
