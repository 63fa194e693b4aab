package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import lapyard.drawing.Photo;
import lapyard.drawing.Shape;
import lapyard.drawing.Tag;
import lapyard.drawing.TextMeasure;

/**
 * A table on sheets for the bench. A row is never broken across sheets, and the headings stand again on each.
 */
public final class BenchTable {
    private static final double SIZE = 3.6;
    private static final double LINE = 1.3;

    /** Between the cells of a row, and the rows. */
    private static final double PAD = 1.6;

    private static final double HEAD = 13;
    private static final double HEAD_SIZE = 2.9;
    /** Below the title of a table, above heads of one line. */
    private static final double SPARE = 2.2;

    /** A cell stands on one line where this part of the type lets it. */
    private static final double SMALLER = 0.8;

    /** Between its columns side by side, and those of bars. */
    static final double APART = 6;

    /** A cell that is a box to tick. */
    public static final String TICK = "\u2610";

    /** The box that a photo fills one way, mm. */
    static final double PHOTO_WIDE = 56;

    static final double PHOTO_HIGH = 42;

    private final BenchSheet sheet;
    private final String title;
    private final List<Column> columns;
    private final List<Row> rows = new ArrayList<>();
    private final double size;
    private final double pitch;
    private final double pad;
    private final Tag tag = Tag.table();

    /**
     * @param page   that the row leads to, from 0; below 0 for none
     * @param photos shown below the cells
     */
    private record Row(int page, List<String> cells, List<Seen> photos) {}

    /** @param words what it shows, for whoever cannot see it */
    record Seen(Photo photo, String words) {}

    /** @param share of the width of the table */
    public record Column(String head, double share, boolean bold) {}

    BenchTable(BenchSheet sheet, String title, Column... columns) {
        this.sheet = sheet;
        this.title = title;
        this.columns = List.of(columns);
        this.size = sheet.size(SIZE);
        this.pitch = size * LINE;
        this.pad = PAD * sheet.close;
    }

    void row(String... cells) {
        rows.add(new Row(-1, List.of(cells), List.of()));
    }

    /**
     * A row that leads to a page of the same file.
     *
     * @param page from 0
     */
    void leading(int page, String... cells) {
        rows.add(new Row(page, List.of(cells), List.of()));
    }

    void row(List<String> cells, List<Seen> photos) {
        rows.add(new Row(-1, cells, photos));
    }

    boolean isEmpty() {
        return rows.isEmpty();
    }

    /** Lays the table out below what stands on the flow's sheet, on as many more sheets as it needs. */
    void on(Flow flow) {
        on(flow, 1);
    }

    /**
     * As {@link #on(Flow)}, in so many columns side by side, each read to its foot on this sheet before the next.
     *
     * @param columns 1 or more
     */
    void on(Flow flow, int columns) {
        double wide = flow.columnWidth(columns, APART);
        flow.head(head(title, columns, wide), head(title + ", continued", columns, wide));
        List<Flow.Block> blocks = rows(wide);
        if (columns == 1) flow.rows(blocks);
        else flow.columns(columns, APART, blocks);
        flow.endHead();
        flow.gap(3);
    }

    /** The table as blocks of a width, its head first. */
    List<Flow.Block> blocks(double wide) {
        return Stream.concat(Stream.of(head(title, 1, wide)), rows(wide).stream()).toList();
    }

    private List<Flow.Block> rows(double wide) {
        double high = sheet.space().height() - headMm(wide);
        return rows.stream().flatMap(row -> blocks(row, wide, high).stream()).toList();
    }

    /** The cells and, on strips below them, the photos: on one sheet where one holds them below the head, else the cells with the first strip. @param mostMm what it holds */
    private List<Flow.Block> blocks(Row row, double wide, double mostMm) {
        List<Flow.Block> blocks = new ArrayList<>(List.of(block(row, wide, mostMm)));
        int beside = Math.max(1, (int) ((wide + pad) / (PHOTO_WIDE + pad)));
        for (int from = 0; from < row.photos().size(); from += beside) {
            int to = Math.min(row.photos().size(), from + beside);
            blocks.add(strip(row.photos().subList(from, to), wide, to == row.photos().size()));
        }
        double high = Flow.Block.high(blocks);
        return high <= mostMm ? List.of(Flow.Block.of(blocks)) : blocks;
    }

    private Flow.Block strip(List<Seen> photos, double wide, boolean last) {
        double high = photos.stream().mapToDouble(one -> one.photo().heightPx() * scale(one.photo())).max().orElse(0) + pad;
        return new Flow.Block(high, false, (left, top) -> {
            List<Shape> shapes = new ArrayList<>();
            Tag cell = tag.row(columns.size()).cell(0);
            double x = left;
            for (Seen one : photos) {
                double scale = scale(one.photo());
                shapes.add(new Shape.Picture(x, top, one.photo().widthPx() * scale, one.photo().heightPx() * scale, one.photo(), one.words(), cell));
                x += one.photo().widthPx() * scale + pad;
            }
            if (last) shapes.add(sheet.line(left, top + high, left + wide, top + high, Inks.HAIR));
            return shapes;
        });
    }

    /** Millimetres of a pixel that let a photo fill its box one way. */
    private static double scale(Photo photo) {
        return Math.min(PHOTO_WIDE / photo.widthPx(), PHOTO_HIGH / photo.heightPx());
    }

    private Flow.Block block(Row row, double wide, double mostMm) {
        List<List<String>> cells = new ArrayList<>();
        List<Double> sizes = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            Column column = columns.get(i);
            double room = wide * column.share() - pad;
            sizes.add(size(row.cells().get(i), column, room));
            cells.add(TextMeasure.wrap(row.cells().get(i), sizes.get(i), column.bold(), room));
        }
        int most = (int) ((mostMm - pad - (row.photos().isEmpty() ? 0 : PHOTO_HIGH + pad)) / pitch);
        int lines = Math.min(most, cells.stream().mapToInt(List::size).max().orElse(1));
        boolean ticked = row.cells().contains(TICK);
        double height = Math.max(lines * pitch, ticked ? TypeSize.TICK : 0) + pad;
        return new Flow.Block(height, !row.photos().isEmpty(), (x, y) -> row(row, cells, sizes, lines, x, y, wide, height));
    }

    /** A figure is never cut: the type shrinks to the longest word of a cell. */
    private double size(String cell, Column column, double room) {
        double least = Math.max(TypeSize.LEAST, size * SMALLER);
        double whole = BenchSheet.fitting(cell, size, least, column.bold(), room);
        if (TextMeasure.widthMm(cell, whole, column.bold()) <= room) return whole;
        double fits = size;
        for (String word : TextMeasure.words(cell)) fits = Math.min(fits, BenchSheet.fitting(word, size, TypeSize.LEAST, column.bold(), room));
        return fits;
    }

    private List<Shape> row(Row row, List<List<String>> cells, List<Double> sizes, int lines, double left, double top, double wide, double height) {
        List<Shape> shapes = new ArrayList<>();
        Tag told = tag.row(columns.size());
        Tag link = told.cell(0).link();
        double x = left;
        for (int i = 0; i < columns.size(); i++) {
            Tag cell = i == 0 && row.page() >= 0 ? link : told.cell(i);
            if (row.cells().get(i).equals(TICK)) {
                shapes.add(sheet.tick(x, top + TypeSize.TICK + 0.8, TypeSize.TICK));
            } else {
                List<String> held = cells.get(i).subList(0, Math.min(lines, cells.get(i).size()));
                shapes.addAll(sheet.inks.lines(x, top + 0.95 * pitch, pitch, held, sizes.get(i), columns.get(i).bold(), cell));
            }
            x += wide * columns.get(i).share();
        }
        if (row.photos().isEmpty()) shapes.add(sheet.line(left, top + height, left + wide, top + height, Inks.HAIR));
        if (row.page() >= 0) shapes.add(new Shape.Link(left, top, wide, height, row.page(), row.cells().get(0), link));
        return shapes;
    }

    /** A column's head in lines that have room. */
    private List<String> headed(Column column, double wide) {
        double room = wide * column.share() - 0.8;
        return TextMeasure.wrap(column.head(), headSize(column, wide), false, room);
    }

    private static double headSize(Column column, double wide) {
        return BenchSheet.fitting(column.head(), HEAD_SIZE, TypeSize.LEAST, false, wide * column.share() - 0.8);
    }

    /** Higher where a head of several lines would reach the title. */
    private double headMm(double wide) {
        int lines = columns.stream().mapToInt(column -> headed(column, wide).size()).max().orElse(1);
        return HEAD + Math.max(0, (lines - 1) * HEAD_SIZE - SPARE);
    }

    private Flow.Block head(String words, int beside, double wide) {
        double high = headMm(wide);
        return new Flow.Block(high, true, (left, top) -> {
            List<Shape> shapes = new ArrayList<>();
            shapes.add(sheet.text(left, top + 5, words, 4.6, true).as(Tag.subheading()));
            Tag told = tag.head(columns.size());
            for (int k = 0; k < Math.min(beside, rows.size()); k++) {
                double from = left + k * (wide + APART);
                double x = from;
                for (int c = 0; c < columns.size(); c++) {
                    Column column = columns.get(c);
                    Tag cell = k == 0 ? told.cell(c) : Tag.REPEATED;
                    List<String> lines = headed(column, wide);
                    shapes.addAll(sheet.inks.lines(x, top + high - 2.3 - (lines.size() - 1) * HEAD_SIZE, HEAD_SIZE, lines, headSize(column, wide), false, cell));
                    x += wide * column.share();
                }
                shapes.add(sheet.line(from, top + high - 1, from + wide, top + high - 1, Inks.THIN));
            }
            return shapes;
        });
    }
}
