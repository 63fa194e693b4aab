package lapyard.exchange;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** A table as CSV (RFC 4180): its head and its rows, formulas as what they come to. */
public final class CsvWriter {
    private CsvWriter() {}

    /** @param safe makes of a text one that starts no formula */
    public static String write(Table table, UnaryOperator<String> safe) {
        List<List<String>> rows = new ArrayList<>(List.of(table.columns().stream().map(column -> safe.apply(column.head())).toList()));
        for (int r = 0; r < table.rows().size(); r++) {
            int row = r;
            rows.add(IntStream.range(0, table.columns().size()).mapToObj(column -> cell(table, row, column, safe)).toList());
        }
        return text(rows);
    }

    static String text(List<List<String>> rows) {
        StringBuilder text = new StringBuilder();
        try (CSVPrinter printer = new CSVPrinter(text, CSVFormat.RFC4180)) {
            for (List<String> row : rows) printer.printRecord(row);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return text.toString();
    }

    private static String cell(Table table, int row, int column, UnaryOperator<String> safe) {
        Table.Cell cell = table.rows().get(row).cells().get(column);
        if (cell instanceof Table.Text text) return safe.apply(text.text());
        if (cell instanceof Table.Day day) return day.date().toString();
        if (cell instanceof Table.Clock clock) return clock.time().toString();
        return amount(table, row, column).toPlainString();
    }

    private static BigDecimal amount(Table table, int row, int column) {
        Table.Cell cell = table.rows().get(row).cells().get(column);
        if (cell instanceof Table.Amount amount) return amount.number();
        if (cell instanceof Table.Product product) return amount(table, row, product.column()).multiply(amount(table, row, product.by()));
        if (cell instanceof Table.Sum sum) return IntStream.rangeClosed(sum.from(), sum.to()).mapToObj(r -> amount(table, r, column)).reduce(BigDecimal.ZERO, BigDecimal::add);
        if (cell instanceof Table.SumOf sums) return sums.rows().stream().map(r -> amount(table, r, column)).reduce(BigDecimal.ZERO, BigDecimal::add);
        return BigDecimal.ZERO; // as a workbook counts a cell with no number
    }
}
