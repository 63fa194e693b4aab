package lapyard.exchange;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.List;
import java.util.stream.Collectors;
import java.util.zip.Inflater;
import java.util.zip.InflaterInputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.dhatim.fastexcel.PaperSize;
import org.dhatim.fastexcel.Position;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/** Tables as a workbook (ISO/IEC 29500-1, SpreadsheetML), ready to be printed on A4. The same tables give the same bytes. */
public final class XlsxWriter {
    /** Rows above the table's own: its title and its head. */
    static final int ABOVE = 2;

    private static final double MINUTES_A_DAY = 1440;
    /** Files in a zip carry a time; none of ours means anything. */
    private static final LocalDateTime NO_TIME = LocalDateTime.of(2000, 1, 1, 0, 0);

    /** Fixed parts of a zip's records: end of the directory, entry of the directory, head of a file. */
    private static final int END_BYTES = 22;
    private static final int ENTRY_BYTES = 46;
    private static final int LOCAL_BYTES = 30;

    private XlsxWriter() {}

    public static void write(List<Table> tables, OutputStream out) throws IOException {
        ByteArrayOutputStream made = new ByteArrayOutputStream();
        try (Workbook book = new Workbook(made, "Lapyard", "1.0")) {
            for (Table table : tables) sheet(table, book.newWorksheet(table.name()));
        }
        repacked(made.toByteArray(), out);
    }

    private static void sheet(Table table, Worksheet sheet) {
        sheet.value(0, 0, table.title());
        sheet.style(0, 0).bold().fontSize(14).set();
        List<Table.Column> columns = table.columns();
        for (int c = 0; c < columns.size(); c++) {
            sheet.width(c, columns.get(c).width());
            sheet.value(1, c, columns.get(c).head());
        }
        sheet.range(1, 0, 1, columns.size() - 1).style().bold().wrapText(true).borderStyle("thin").set();
        for (int r = 0; r < table.rows().size(); r++) {
            Table.Row row = table.rows().get(r);
            for (int c = 0; c < columns.size(); c++) {
                if (!cell(sheet, r + ABOVE, c, row.cells().get(c))) continue;
                var style = sheet.style(r + ABOVE, c).format(columns.get(c).form().code);
                if (row.bold()) style.bold();
                style.set();
            }
        }
        sheet.freezePane(0, ABOVE);
        sheet.paperSize(PaperSize.A4_PAPER);
        sheet.pageOrientation("landscape");
        sheet.setFitToPage(true);
        sheet.fitToWidth((short) 1);
        sheet.fitToHeight((short) 0);
        sheet.repeatRows(1, 1);
        sheet.footer("&A, page &P of &N", Position.RIGHT);
    }

    private static boolean cell(Worksheet sheet, int row, int column, Table.Cell cell) {
        if (cell instanceof Table.Text text) {
            if (text.text().isEmpty()) return false;
            sheet.value(row, column, text.text());
        } else if (cell instanceof Table.Amount amount) {
            sheet.value(row, column, amount.number());
        } else if (cell instanceof Table.Day day) {
            sheet.value(row, column, day.date());
        } else if (cell instanceof Table.Clock clock) {
            sheet.value(row, column, clock.time().toSecondOfDay() / 60 / MINUTES_A_DAY);
        } else {
            sheet.formula(row, column, formula(row, column, cell));
        }
        return true;
    }

    private static String formula(int row, int column, Table.Cell cell) {
        if (cell instanceof Table.Product product) return address(row, product.column()) + "*" + address(row, product.by());
        if (cell instanceof Table.Sum sum) return "SUM(" + address(sum.from() + ABOVE, column) + ":" + address(sum.to() + ABOVE, column) + ")";
        if (cell instanceof Table.SumOf sums)
            return sums.rows().isEmpty() ? "0" : sums.rows().stream().map(each -> address(each + ABOVE, column)).collect(Collectors.joining("+"));
        throw new IllegalStateException("no formula for " + cell);
    }

    /** Columns go to Z: no table of ours is wider. */
    private static String address(int row, int column) {
        return (char) ('A' + column) + String.valueOf(row + 1);
    }

    /**
     * Packed anew: without the times that the library writes, and with the sizes where a reader that goes from front to back
     * looks for them, which the library's packer leaves to the end.
     */
    private static void repacked(byte[] book, OutputStream out) throws IOException {
        ZipOutputStream packed = new ZipOutputStream(out);
        ByteBuffer file = ByteBuffer.wrap(book).order(ByteOrder.LITTLE_ENDIAN);
        int end = book.length - END_BYTES; // it has no comment
        int entry = file.getInt(end + 16);
        for (int i = file.getShort(end + 10); i > 0; i--) {
            int nameBytes = file.getShort(entry + 28);
            String name = new String(book, entry + ENTRY_BYTES, nameBytes, StandardCharsets.UTF_8);
            int local = file.getInt(entry + 42);
            int begins = local + LOCAL_BYTES + file.getShort(local + 26) + file.getShort(local + 28);
            byte[] bytes = new InflaterInputStream(new ByteArrayInputStream(book, begins, file.getInt(entry + 20)), new Inflater(true)).readAllBytes();
            if (name.equals("docProps/core.xml"))
                bytes = new String(bytes, StandardCharsets.UTF_8).replaceAll("<dcterms:created.*?</dcterms:created>", "").getBytes(StandardCharsets.UTF_8);
            ZipEntry kept = new ZipEntry(name);
            kept.setTimeLocal(NO_TIME);
            packed.putNextEntry(kept);
            packed.write(bytes);
            packed.closeEntry();
            entry += ENTRY_BYTES + nameBytes + file.getShort(entry + 30) + file.getShort(entry + 32);
        }
        packed.finish();
    }
}
