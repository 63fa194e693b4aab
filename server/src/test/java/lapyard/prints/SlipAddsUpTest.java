package lapyard.prints;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import lapyard.drawing.Page;
import lapyard.drawing.Shape;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import lapyard.json.JobSheetJson;
import lapyard.order.Slip;
import lapyard.order.SlipCsv;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;

/** A garden of six beds and three suppliers: its order was read line by line, and adds up on the slip, in the files and on paper. */
class SlipAddsUpTest {
    private static final JobSheet SHEET = Gardens.sample("chapel-corner");

    /**
     * Worked by hand. 116.6 m of timber are 3 x 2 x 6.8 + 3 x 8.8 + 3 x 9.8 + 4 x 5.0; the sawmill's 6 x 19.20 + 23.90 + 29 x
     * 28.60 are 968.50, over 750 and free. On grass the beds are open, so no slats.
     *
     * <p>The yard, with its tax of a fifth: 3 x 16 + 24 + 36 + 32 = 140 corner screws and a tenth, a box of 36.00; long screws 3 x 16 +
     * 40 + 50 + 42 = 180 and 5 %: 189 in 3 x 34.00 + 4 x 8.20; finish 3 x 6.12 + 11.44 + 12.74 + 8.50 = 51.04 m2, twice over 5 is
     * 20.416 l: 4 x 42.90 here and one litre of the nursery; 598 staples 4.20; cross ties in D (3400 clear) and E (2500): 2 x 14.50.
     * compost 3 x 48.00. 519.60 x 1.2 = 623.52, over 300 x 1.20 and free, and holds 103.92 of tax.
     *
     * <p>The nursery: 3 x 2.2 x 0.3 + 2.72 x 0.5 + 3.12 x 0.5 + 1.12 x 0.7 = 5.684 of soil, / 0.85 and 5 % spare = 7.021 loose; 0.6 of it
     * 4.213, where five tonnes over 1200 kg/m3 hold only 4.167: 6 x 34.00; 0.1 of it 0.702 of grit: 52 + 7 x 4.10; 0.3 of it 2.106 of
     * compost would be 2 x 59 + 11 x 5.20 = 175.20 here, over the yard's 172.80. Liner 8 x 9.40, mulch 58, oil 15.50, bark 76.30,
     * membrane 20.80: 530.50 and 30.00 to bring.
     */
    @Test
    void theOrderIsAsReadByEye() {
        Slip slip = SHEET.slip();
        assertEquals(List.of("968.50", "623.52", "560.50"), slip.orders().stream().map(order -> order.total().toPlainString()).toList());
        assertEquals("103.92", slip.orders().get(1).tax().toPlainString());
        assertEquals("30.00", slip.orders().get(2).charge().toPlainString());
        assertEquals("2152.52", slip.total().toPlainString());
        assertTrue(slip.proven());
    }

    @Test
    void theFilesAddUpRowByRow() throws IOException {
        assertEquals(0, SHEET.slip().total().compareTo(rows(SlipCsv.write(SHEET.slip(), false), "item")));
        for (Slip.Order order : SHEET.slip().orders()) {
            assertEquals(0, order.total().compareTo(rows(SlipCsv.write(order, "GBP", false), "item")), order.supplier().id());
        }
    }

    /** The page tells free delivery by what the answer says: the mill's and the yard's goods are over their limits. */
    @Test
    void theAnswerSaysWhoseGoodsAreOverTheLimit() {
        assertEquals(List.of("true", "true", "false"), JobSheetJson.part("slip", SHEET).path("orders").findValuesAsText("overLimit"));
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
        Page all = Prints.pages("office", SHEET, PrintAsk.usual("", "")).get(0);
        List<BigDecimal> totals = column(all, "total");
        BigDecimal last = totals.get(totals.size() - 1);
        assertEquals(0, SHEET.slip().total().compareTo(last));
        assertEquals(0, last.compareTo(totals.subList(0, totals.size() - 1).stream().reduce(BigDecimal.ZERO, BigDecimal::add)));
    }

    /** Five boards at 36.05 are 180.25, the very limit: a penny more comes free. A box without a price is over no limit. */
    @Test
    void deliveryIsCalledFreeWhereItIs() {
        JobSheet sheet = Gardens.sheet("""
                {"beds":[{"id":"A","width":2400,"depth":1200,"courses":3}],"catalogue":{"suppliers":[{"id":"mill","delivery":35,"freeOver":180.25},{"id":"yard","delivery":20,"freeOver":50}],
                 "sections":[{"id":"100x200","thickness":100,"height":200,"stock":[{"length":4800,"price":36.05,"supplier":"mill"}]}],
                 "packs":[{"item":"staples","unit":"staples","packs":[{"name":"box","content":500,"supplier":"yard"}]}]}}""");
        List<String> words = Prints.pages("slip", sheet, PrintAsk.usual("", "")).stream().flatMap(page -> texts(page).stream()).map(Shape.Text::text)
                .filter(text -> text.startsWith("Delivery is free")).toList();
        assertEquals(List.of("Delivery is free on goods over 180.25: 0.01 short."), words);
        assertTrue(Prints.pages("slip", SHEET, PrintAsk.usual("", "")).stream().flatMap(page -> texts(page).stream()).anyMatch(text -> text.text().startsWith("Delivery is free: goods are over 750")));
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
