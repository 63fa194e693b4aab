package lapyard.exchange;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * A sheet of a workbook: a title, a head, rows of cells. Columns and rows count from 0, rows without title and head.
 *
 * @param name on the sheet's tab, at most 31 characters without {@code []:*?/\}
 */
public record Table(String name, String title, List<Column> columns, List<Row> rows) {
    /** What stands in a column; {@code width} in characters. */
    public record Column(String head, Form form, int width) {
        public static Column text(String head, int width) {
            return new Column(head, Form.TEXT, width);
        }
    }

    /** How a column's numbers and dates are shown. */
    public enum Form {
        TEXT("@"),
        WHOLE("0"),
        ONE_DECIMAL("#,##0.0"),
        THREE_DECIMALS("#,##0.000"),
        FOUR_DECIMALS("#,##0.0000"),
        MONEY("#,##0.00"),
        MONEY_WHOLE("#,##0"),
        DATE("yyyy-mm-dd"),
        TIME("hh:mm");

        final String code;

        Form(String code) {
            this.code = code;
        }

        /** Amounts of a currency with so many decimals: 0 for JPY, 2 for GBP, 3 for KWD, 4 for CLF (ISO 4217). */
        public static Form money(int decimals) {
            return switch (decimals) {
                case 0 -> MONEY_WHOLE;
                case 3 -> THREE_DECIMALS;
                case 4 -> FOUR_DECIMALS;
                default -> MONEY;
            };
        }
    }

    /** One cell; a reader of the file can tell number, date and text apart. */
    public sealed interface Cell {
        Cell NOTHING = new Text("");

        static Cell of(String text) {
            return new Text(text);
        }

        static Cell of(long number) {
            return new Amount(BigDecimal.valueOf(number));
        }

        static Cell of(BigDecimal number) {
            return new Amount(number);
        }

        static Cell of(Optional<BigDecimal> number) {
            return number.map(Cell::of).orElse(NOTHING);
        }

        static Cell day(Optional<LocalDate> date) {
            return date.<Cell>map(Day::new).orElse(NOTHING);
        }
    }

    /** Never a formula, whatever it begins with. */
    public record Text(String text) implements Cell {}

    public record Amount(BigDecimal number) implements Cell {}

    public record Day(LocalDate date) implements Cell {}

    public record Clock(LocalTime time) implements Cell {}

    /** The formula of two cells of this row multiplied. */
    public record Product(int column, int by) implements Cell {}

    /** The formula of the sum of this column from one row to another, both counted in. */
    public record Sum(int from, int to) implements Cell {}

    /** The formula of the sum of these rows of this column. */
    public record SumOf(List<Integer> rows) implements Cell {}

    public record Row(List<Cell> cells, boolean bold) {}

    public Table {
        if (!name.matches("[^\\[\\]:*?/\\\\]{1,31}")) throw new IllegalArgumentException("a sheet's name is 1 to 31 characters without []:*?/\\, was " + name);
    }

    public Table(String name, String title, List<Column> columns) {
        this(name, title, columns, new ArrayList<>());
    }

    /** @return the number of the row */
    public int row(Cell... cells) {
        return add(false, cells);
    }

    /** A row of sums. @return its number */
    public int sum(Cell... cells) {
        return add(true, cells);
    }

    /** A row of the sums of some columns over all rows, where there are any. @param words column of its words */
    public void sums(int words, Integer... summed) {
        if (rows.isEmpty()) return;
        Cell sum = new Sum(0, rows.size() - 1);
        sum(IntStream.range(0, columns.size()).mapToObj(i -> i == words ? Cell.of("All") : List.of(summed).contains(i) ? sum : Cell.NOTHING).toArray(Cell[]::new));
    }

    private int add(boolean bold, Cell... cells) {
        if (cells.length != columns.size()) throw new IllegalArgumentException(name + ": a row has " + columns.size() + " cells, was " + cells.length);
        rows.add(new Row(List.of(cells), bold));
        return rows.size() - 1;
    }

    public int size() {
        return rows.size();
    }
}
