package lapyard.prints;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import lapyard.exchange.XlsxWriter;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import lapyard.job.Payments;
import org.apache.poi.ss.usermodel.FormulaEvaluator;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Payments by day, worked by hand, and as Apache POI reads and adds them. */
class PaymentsTest {
    static {
        System.setProperty("log4j2.StatusLogger.level", "OFF"); // the reader's log has nobody to write to
    }

    private static final ObjectMapper MAPPER = new ObjectMapper();

    private static final String GARDEN = """
            {"beds":[{"id":"A","width":2400,"depth":1200,"courses":3}],"crew":{"start":"2027-04-03"},
             "catalogue":{"suppliers":[{"id":"mill","name":"Hill Mill","leadDays":5,"delivery":35,"deposit":30,"payDays":30}],
              "sections":[{"id":"100x200","thickness":100,"height":200,"stock":[{"length":4800,"price":36.05,"supplier":"mill"}]}]}%s}""";

    /** Five boards at 36.05 and 35.00 to bring are 215.25; 30 % of it is 64.575, which is 64.58, and 150.67 is left. */
    @Test
    void aDepositIsPaidWithTheOrderAndTheRestAfterTheDelivery() throws Exception {
        Payments payments = Payments.of(Gardens.sheet(GARDEN.formatted("")));
        var mill = payments.dues().stream().filter(due -> due.supplier().id().equals("mill")).toList();
        assertEquals(2, mill.size());
        assertEquals(new BigDecimal("64.58"), mill.get(0).amount());
        assertEquals(Optional.of(LocalDate.of(2027, 3, 29)), mill.get(0).date(), "sawn on 3 April, ordered 5 days before");
        assertEquals(new BigDecimal("150.67"), mill.get(1).amount());
        assertEquals(Optional.of(LocalDate.of(2027, 5, 3)), mill.get(1).date(), "30 days after 3 April");
    }

    @ParameterizedTest
    @MethodSource("lapyard.job.Gardens#samples")
    void allPaymentsTogetherAreTheSlipWhateverTheTerms(String sample) throws Exception {
        ObjectNode garden = (ObjectNode) MAPPER.readTree(Gardens.text(sample));
        Random random = new Random(sample.hashCode());
        garden.at("/catalogue/suppliers").forEach(one -> ((ObjectNode) one).put("deposit", random.nextInt(101)).put("payDays", random.nextInt(60)));
        JobSheet sheet = Gardens.sheet(garden.toString());
        Payments payments = Payments.of(sheet);
        assertEquals(0, sheet.slip().total().compareTo(payments.total()));
        for (int i = 1; i < payments.dues().size(); i++)
            assertTrue(payments.dues().get(i - 1).day().orElse(-9999) <= payments.dues().get(i).day().orElse(-9999), "by day");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        XlsxWriter.write(BuyingTables.of("payments", sheet), out);
        try (XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(out.toByteArray()))) {
            FormulaEvaluator reckon = book.getCreationHelper().createFormulaEvaluator();
            Sheet dues = book.getSheet("Payments");
            assertEquals(sheet.slip().total().doubleValue(), reckon.evaluate(dues.getRow(dues.getLastRowNum()).getCell(4)).getNumberValue(), 1e-6);
            Sheet bought = book.getSheet("Bought");
            assertEquals(sheet.slip().goods().doubleValue(), reckon.evaluate(bought.getRow(bought.getLastRowNum()).getCell(2)).getNumberValue(), 1e-6);
        }
    }

    @Test
    void whatWasBoughtStandsAgainstWhatWasPlanned() throws Exception {
        JobSheet sheet = Gardens.sheet(GARDEN.formatted(",\"tally\":{\"bought\":[{\"item\":\"timber 100x200\",\"pack\":\"board of 4800\",\"count\":2,\"paid\":80.00},"
                + "{\"item\":\"staples\",\"pack\":\"box of 1000\",\"count\":1},{\"item\":\"spade\",\"pack\":\"one\",\"paid\":24.50}]}"));
        Payments payments = Payments.of(sheet);
        Payments.BoughtLine timber = payments.bought().stream().filter(line -> line.item().equals("timber 100x200")).findFirst().orElseThrow();
        assertEquals(Optional.of(new BigDecimal("80.00")), timber.paid());
        assertEquals(Optional.of(new BigDecimal("108.15")), timber.open(), "three boards of 36.05 are left");
        assertEquals(Optional.of(new BigDecimal("7.90")), timber.over(), "80.00 and 108.15 are 7.90 over 180.25");
        Payments.BoughtLine staples = payments.bought().stream().filter(line -> line.item().equals("staples")).findFirst().orElseThrow();
        assertEquals(staples.planned(), staples.paid(), "at the price of the list where nothing was tallied");
        assertTrue(!staples.told() && timber.told());
        assertEquals(Optional.of(new BigDecimal("24.50")), payments.bought().get(payments.bought().size() - 1).paid(), "what was not planned counts too");
        assertEquals(1, OfficePrint.payments(sheet, PrintAsk.usual("", "")).size());
        // 7.90 more for the boards and a spade for 24.50 come to what the slip lists; the dues add up to the same
        assertEquals(sheet.slip().total().add(new BigDecimal("32.40")), payments.total());
        assertEquals(payments.total(), payments.paid().add(payments.open()).add(payments.delivery()));
        assertEquals(payments.total(), payments.dues().stream().map(Payments.Due::amount).reduce(BigDecimal.ZERO, BigDecimal::add));
        // the mill: five boards at 36.05, 35.00 to bring and 7.90 more for the two bought
        assertEquals(new BigDecimal("223.15"), payments.dues().stream().filter(due -> due.supplier().id().equals("mill")).map(Payments.Due::amount).reduce(BigDecimal.ZERO, BigDecimal::add));
    }

    private static void addsUp(Payments payments) {
        assertEquals(0, payments.total().compareTo(payments.paid().add(payments.open()).add(payments.delivery())), payments.toString());
        assertEquals(payments.total(), payments.dues().stream().map(Payments.Due::amount).reduce(BigDecimal.ZERO, BigDecimal::add));
    }

    /** One pack has a price and one has none: the first is paid, and more than that. */
    @Test
    void whatWasBoughtWithoutAKnownPriceMakesItAtLeast() throws Exception {
        JobSheet sheet = Gardens.sheet(GARDEN.formatted(",\"tally\":{\"bought\":[{\"item\":\"staples\",\"pack\":\"box of 1000\",\"count\":1},{\"item\":\"staples\",\"pack\":\"tub\",\"count\":1}]}"));
        Payments payments = Payments.of(sheet);
        Payments.BoughtLine staples = payments.bought().stream().filter(line -> line.item().equals("staples")).findFirst().orElseThrow();
        assertEquals(staples.planned(), staples.paid());
        assertEquals(Optional.empty(), staples.over());
        assertTrue(staples.atLeast() && payments.atLeast() && !sheet.slip().atLeast());
        assertEquals(sheet.slip().total(), payments.total());
        addsUp(payments);
        assertTrue(OfficePrint.total(payments).startsWith("To pay at least GBP " + payments.total() + ": bought for " + payments.paid() + ", goods"), OfficePrint.total(payments));
        Payments nothing = Payments.of(Gardens.sheet(GARDEN.formatted("")));
        assertTrue(OfficePrint.total(nothing).startsWith("To pay GBP " + nothing.total() + ": goods still to buy for "), OfficePrint.total(nothing));
    }

    /** A line that two sell, bought for far less than listed: the one's order is below what the line saved. */
    @Test
    void aLineOfTwoSellersAddsUpHoweverCheapItWasBought() throws Exception {
        JobSheet sheet = Gardens.sheet("""
                {"beds":[{"id":"A","width":2400,"depth":1200,"courses":3}],
                 "catalogue":{"suppliers":[{"id":"a","deposit":30},{"id":"b"}],"packs":[{"item":"soil.topsoil","unit":"m3","packs":[
                   {"name":"small","content":0.06,"price":6,"supplier":"a"},{"name":"bulk","content":0.7,"price":30,"supplier":"b"}]}]},
                 "tally":{"bought":[{"item":"soil.topsoil","pack":"bulk","count":1,"supplier":"b","paid":1},{"item":"soil.topsoil","pack":"small","count":1,"supplier":"a","paid":2}]}}""");
        assertEquals(2, sheet.slip().lines().stream().filter(line -> line.item().equals("soil.topsoil")).findFirst().orElseThrow().packs().size());
        addsUp(Payments.of(sheet));
    }

    /** Three boxes of a's at 5 and two of b's at 6: each is taken off those of who sold it, and only what is more than those off the other's. */
    @Test
    void packsOfOneNameFromTwoSellersAreToldApart() throws Exception {
        String garden = """
                {"beds":[{"id":"A","width":2400,"depth":1200,"courses":3}],
                 "catalogue":{"suppliers":[{"id":"a"},{"id":"b"}],"packs":[{"item":"staples","unit":"staples","packs":[
                   {"name":"box","content":%d,"price":5,"supplier":"a","bundle":3},{"name":"box","content":%1$d,"price":6,"supplier":"b"}]}]}%s}""";
        double need = Gardens.sheet(garden.formatted(1, "")).slip().lines().stream().filter(line -> line.item().equals("staples")).findFirst().orElseThrow().need();
        int content = (int) Math.ceil(need / 5);
        JobSheet none = Gardens.sheet(garden.formatted(content, ""));
        assertEquals(Optional.of(new BigDecimal("27.00")), none.slip().lines().stream().filter(line -> line.item().equals("staples")).findFirst().orElseThrow().cost(), "3 x 5 and 2 x 6");
        String box = "{\"item\":\"staples\",\"pack\":\"box\",\"supplier\":\"%s\",\"count\":%d}";
        addsUp(open(garden.formatted(content, ",\"tally\":{\"bought\":[" + box.formatted("a", 3) + "," + box.formatted("b", 1) + "]}"), "21.00", "6.00"));
        addsUp(open(garden.formatted(content, ",\"tally\":{\"bought\":[" + box.formatted("b", 1) + "," + box.formatted("a", 4) + "]}"), "26.00", "0.00"));
        addsUp(open(garden.formatted(content, ",\"tally\":{\"bought\":[" + box.formatted("", 4) + "]}"), "20.00", "6.00"));
    }

    private static Payments open(String garden, String paid, String open) throws Exception {
        Payments payments = Payments.of(Gardens.sheet(garden));
        Payments.BoughtLine staples = payments.bought().stream().filter(line -> line.item().equals("staples")).findFirst().orElseThrow();
        assertEquals(List.of(new BigDecimal(paid), new BigDecimal(open)), List.of(staples.paid().orElseThrow(), staples.open().orElseThrow().setScale(2)), staples.toString());
        return payments;
    }
}
