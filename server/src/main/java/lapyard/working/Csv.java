package lapyard.working;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.OptionalLong;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;

/** Tables as text (RFC 4180). Rows that are written end in CR LF; tables that are read may have another sign between their cells. */
public final class Csv {
    /** Spreadsheets read a cell that begins with one of these as a formula; the last four are the full-width forms. */
    private static final String FORMULA_STARTS = "=+-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20";

    private Csv() {}

    /** Writes rows. */
    public interface Writing {
        void to(CSVPrinter rows) throws IOException;
    }

    /** Takes a row that ends in this line of the text; false where it wants no more of them. */
    public interface Reading {
        boolean take(CSVRecord row, long line);
    }

    /** Rows under a header, if there is one. */
    public static String text(Writing writing, String... header) {
        StringBuilder text = new StringBuilder();
        try (CSVPrinter rows = new CSVPrinter(text, CSVFormat.RFC4180)) {
            if (header.length > 0) rows.printRecord((Object[]) header);
            writing.to(rows);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return text.toString();
    }

    /** Text that would start a formula begins with an apostrophe. */
    public static String safe(String text) {
        return !text.isEmpty() && FORMULA_STARTS.indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
    }

    /**
     * Hands over the rows that are not empty, one after the other.
     *
     * @return the last line of a text in which a quoted cell is not closed or goes on after its quotes; else empty
     */
    public static OptionalLong read(String text, Reading reading) {
        CSVFormat format = CSVFormat.RFC4180.builder().setDelimiter(between(text)).setIgnoreEmptyLines(true).get();
        try (CSVParser rows = format.parse(new StringReader(text))) {
            // a cell may hold a line break, so the line where the row ends is what the parser counts
            for (CSVRecord row : rows) if (!reading.take(row, rows.getCurrentLineNumber())) break;
            return OptionalLong.empty();
        } catch (IOException | UncheckedIOException | IllegalStateException unclosed) {
            return OptionalLong.of(1 + count(text, '\n'));
        }
    }

    /**
     * What stands between cells: the tab, semicolon or comma that is most often in the first line with any. Of two as often the one that
     * is named first here; and each of the cells between semicolons or tabs may hold a comma ({@code Length, ft}), of which there is
     * then one more. Where there are as many commas, half of the lines below have the semicolon or tab, too.
     */
    static char between(String text) {
        List<String> lines = text.lines().filter(line -> line.matches(".*[,;\t].*")).toList();
        if (lines.isEmpty()) return ',';
        String head = lines.get(0);
        List<String> rest = lines.subList(lines.size() > 1 ? 1 : 0, lines.size());
        char best = ',';
        long most = isInHalf(rest, ',') ? count(head, ',') - 1 : 0;
        for (char one : new char[] {';', '\t'}) {
            if (head.indexOf(one) < 0 || count(head, one) <= count(head, ',') && !isInHalf(rest, one) || count(head, one) < most) continue;
            best = one;
            most = count(head, one);
        }
        return best;
    }

    private static boolean isInHalf(List<String> lines, char sign) {
        return 2 * lines.stream().filter(line -> line.indexOf(sign) >= 0).count() >= lines.size();
    }

    private static long count(String text, char sign) {
        return text.chars().filter(one -> one == sign).count();
    }
}
