package lapyard.order;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** The slip as RFC 4180 text; a cell never starts a formula. */
public final class SlipCsv {
    private static final CSVFormat FORMAT = CSVFormat.RFC4180
            .builder()
            .setHeader("item", "label", "need", "unit", "packs", "cost", "bed by bed", "saved")
            .get();

    private static final int NEED_DECIMALS = 6;

    /** Spreadsheets read a cell that begins with one of these as a formula; the last four are the full-width forms. */
    private static final String FORMULA_STARTS = "=+-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20";

    private SlipCsv() {}

    /**
     * A header, one row a line, and a last row with the total, its currency as the unit and "at least" where so. Rows
     * end in CR LF. Amounts are plain numbers; text that would start a formula begins with an apostrophe.
     */
    public static String write(Slip slip) {
        StringBuilder text = new StringBuilder();
        BigDecimal alone = BigDecimal.ZERO;
        BigDecimal saved = BigDecimal.ZERO;
        try (CSVPrinter rows = new CSVPrinter(text, FORMAT)) {
            for (SlipLine line : slip.lines()) {
                alone = alone.add(line.bedByBed().orElse(BigDecimal.ZERO));
                saved = saved.add(line.saved().orElse(BigDecimal.ZERO));
                rows.printRecord(
                        safe(line.item()),
                        safe(line.label()),
                        amount(line.need()),
                        safe(line.unit()),
                        safe(line.packs().stream()
                                .map(pack -> pack.count() + " x " + pack.pack())
                                .collect(Collectors.joining(" + "))),
                        line.cost().map(BigDecimal::toPlainString).orElse(""),
                        line.bedByBed().map(BigDecimal::toPlainString).orElse(""),
                        line.saved().map(BigDecimal::toPlainString).orElse(""));
            }
            rows.printRecord(
                    "total",
                    slip.atLeast() ? "at least" : "",
                    "",
                    slip.currency().getCode(),
                    "",
                    slip.total().toPlainString(),
                    Ordering.rounded(alone, slip.currency()).toPlainString(),
                    Ordering.rounded(saved, slip.currency()).toPlainString());
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return text.toString();
    }

    /** Text that would start a formula begins with an apostrophe. */
    public static String safe(String text) {
        return !text.isEmpty() && FORMULA_STARTS.indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
    }

    private static String amount(double value) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(NEED_DECIMALS, RoundingMode.HALF_UP);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }
}
