package lapyard.prints;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import lapyard.drawing.Page;
import lapyard.drawing.Shape;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import lapyard.order.Slip;
import lapyard.order.SlipCsv;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;

/** A garden of six beds and three suppliers: its order was read line by line, and adds up on the slip, in the files and on paper. */
class SlipAddsUpTest {
    private static final JobSheet SHEET = sheet();

    private static JobSheet sheet() {
        try {
            return Gardens.sheet(Files.readString(Path.of("../samples/chapel-corner.json")));
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    /**
     * Read by eye: 116.6 m of timber are 3 x 2 x 6.8 + 3 x 8.8 + 3 x 9.8 + 4 x 5.0; the sawmill's 6 x 19.20 + 23.90 + 29 x
     * 28.60 are 968.50 and 130 slats 52.00, over 750 and free; the yard's 374.58 are over 300 x 1.20 and free, and hold
     * 374.58 / 6 of tax; five tonnes over 1200 kg/m3 hold 4.165 of 3.582 m3; the nursery brings 495.10 for 30.00.
     */
    @Test
    void theOrderIsAsReadByEye() {
        Slip slip = SHEET.slip();
        assertEquals(List.of("1020.50", "374.58", "525.10"), slip.orders().stream().map(order -> order.total().toPlainString()).toList());
        assertEquals("62.43", slip.orders().get(1).tax().toPlainString());
        assertEquals("30.00", slip.orders().get(2).charge().toPlainString());
        assertEquals("1920.18", slip.total().toPlainString());
        assertTrue(slip.proven());
    }

    @Test
    void theFilesAddUpRowByRow() throws IOException {
        assertEquals(0, SHEET.slip().total().compareTo(rows(SlipCsv.write(SHEET.slip()), "item")));
        for (Slip.Order order : SHEET.slip().orders()) {
            assertEquals(0, order.total().compareTo(rows(SlipCsv.write(order, "GBP"), "item")), order.supplier().id());
        }
    }

    private static BigDecimal rows(String csv, String first) throws IOException {
        BigDecimal sum = BigDecimal.ZERO;
        BigDecimal total = null;
        CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
        for (CSVRecord row : format.parse(new StringReader(csv)).getRecords()) {
            if (row.get(first).equals("total")) {
                total = new BigDecimal(row.get("cost"));
            } else {
                sum = sum.add(new BigDecimal(row.get("cost")));
            }
        }
        assertEquals(0, sum.compareTo(total), csv);
        return sum;
    }

    /** The last column of each order's table, then of the sum of all suppliers. */
    @Test
    void thePaperAddsUpRowByRow() {
        List<Page> pages = Prints.pages("slip", SHEET, PrintAsk.usual("", ""));
        for (Slip.Order order : SHEET.slip().orders()) {
            List<Page> own = pages.stream().filter(page -> page.title().startsWith("Slip: " + order.supplier().name())).toList();
            BigDecimal sum = own.stream().flatMap(page -> column(page, "all").stream()).reduce(BigDecimal.ZERO, BigDecimal::add);
            assertEquals(0, order.goods().compareTo(sum), order.supplier().name() + ": " + sum);
            assertTrue(own.stream().flatMap(page -> texts(page).stream()).anyMatch(text -> text.text().contains("GBP " + order.total())));
        }
        Page all = pages.stream().filter(page -> page.title().startsWith("Slip: the sum")).findFirst().orElseThrow();
        List<BigDecimal> totals = column(all, "total");
        BigDecimal last = totals.get(totals.size() - 1);
        assertEquals(0, SHEET.slip().total().compareTo(last));
        assertEquals(0, last.compareTo(totals.subList(0, totals.size() - 1).stream().reduce(BigDecimal.ZERO, BigDecimal::add)));
    }

    /** Amounts under a heading, down to the next table. */
    private static List<BigDecimal> column(Page page, String heading) {
        List<Shape.Text> texts = texts(page);
        Shape.Text head = texts.stream().filter(text -> text.text().equals(heading)).findFirst().orElseThrow();
        double end = texts.stream()
                .filter(text -> text.at().y() > head.at().y() && text.text().startsWith("Bought as one"))
                .mapToDouble(text -> text.at().y())
                .findFirst()
                .orElse(Double.POSITIVE_INFINITY);
        return texts.stream()
                .filter(text -> text.at().y() > head.at().y() && text.at().y() < end && Math.abs(text.at().x() - head.at().x()) < 0.01)
                .filter(text -> text.text().matches("[0-9]+\\.[0-9]{2}"))
                .map(text -> new BigDecimal(text.text()))
                .toList();
    }

    private static List<Shape.Text> texts(Page page) {
        List<Shape.Text> texts = new ArrayList<>();
        page.shapes().stream().filter(shape -> shape instanceof Shape.Text).forEach(shape -> texts.add((Shape.Text) shape));
        return texts;
    }
}
