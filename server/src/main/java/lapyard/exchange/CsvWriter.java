package lapyard.exchange;

import java.math.BigDecimal;
import java.util.stream.IntStream;
import lapyard.working.Csv;

/** A table as CSV (RFC 4180): its head and its rows, formulas as what they come to; no text starts a formula. */
public final class CsvWriter {
    private CsvWriter() {}

    public static String write(Table table) {
        return Csv.text(rows -> {
            rows.printRecord(table.columns().stream().map(column -> Csv.safe(column.head())));
            for (int r = 0; r < table.rows().size(); r++) {
                int row = r;
                rows.printRecord(IntStream.range(0, table.columns().size()).mapToObj(column -> cell(table, row, column)));
            }
        });
    }

    private static String cell(Table table, int row, int column) {
        Table.Cell cell = table.rows().get(row).cells().get(column);
        if (cell instanceof Table.Text text) return Csv.safe(text.text());
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
