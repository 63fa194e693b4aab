package lapyard.prints;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.StringReader;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import lapyard.exchange.CsvWriter;
import lapyard.exchange.XlsxReader;
import lapyard.exchange.XlsxWriter;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import lapyard.job.MerchantOffers;
import lapyard.json.DocumentText;
import lapyard.json.MerchantList;
import lapyard.plan.Told;
import org.apache.commons.csv.CSVFormat;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A request goes out, Apache POI fills it in as merchants do, and the answers are weighed against every possible split. */
class MerchantAnswersTest {
    static {
        System.setProperty("log4j2.StatusLogger.level", "OFF"); // the reader's log has nobody to write to
    }

    private static final String GARDEN = """
            {"name":"Orchard wall","beds":[{"id":"A","width":2400,"depth":1200,"courses":2},{"id":"B","width":1800,"depth":900,"courses":3,"at":[4000,0],"stage":2}],
             "crew":{"start":"2027-04-03"},
             "catalogue":{"suppliers":[{"id":"mill","name":"Hill Mill","delivery":35},{"id":"yard","name":"Canal Yard","delivery":20,"leadDays":3},
              {"id":"depot","name":"North Depot","delivery":48}]}}""";

    private static JobSheet sheet(JsonNode garden) throws Exception {
        return Gardens.sheet(garden.toString());
    }

    private static JsonNode garden() throws Exception {
        return DocumentText.parse(GARDEN);
    }

    private static byte[] request(JobSheet sheet) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        XlsxWriter.write(BuyingTables.of("price-request", sheet), out);
        return out.toByteArray();
    }

    private static int column(Sheet table, String head) {
        for (var cell : table.getRow(1)) if (cell.getStringCellValue().equals(head)) return cell.getColumnIndex();
        throw new AssertionError("no column " + head);
    }

    private static String text(Row row, int column) {
        return row.getCell(column) == null ? "" : row.getCell(column).toString();
    }

    /** One size of each goods priced, as whoever sells one size only does; every goods at least by one of three. */
    private static byte[] filledIn(byte[] request, int merchant, Random random) throws Exception {
        try (XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(request))) {
            Sheet table = book.getSheetAt(0);
            Set<String> priced = new HashSet<>();
            int items = 0;
            for (int r = 2; r <= table.getLastRowNum(); r++) {
                Row row = table.getRow(r);
                boolean board = text(row, column(table, "Price is for")).equals("a board");
                boolean first = priced.add(text(row, 0));
                if (first) items++;
                // boards: the longest lengths, so that no piece is too long for anybody
                if (board ? row.getCell(column(table, "Length mm")).getNumericCellValue() < 2400 : !first) continue;
                if (items % 3 != merchant && random.nextInt(4) == 0) continue;
                row.getCell(column(table, "Price"), Row.MissingCellPolicy.CREATE_NULL_AS_BLANK).setCellValue((5 + random.nextInt(4000) / 100.0));
            }
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            book.write(out);
            return out.toByteArray();
        }
    }

    private static ObjectNode taken(byte[] answer, String supplier, JsonNode garden) throws Exception {
        ObjectNode ask = JsonNodeFactory.instance.objectNode();
        ask.put("workbook", Base64.getEncoder().encodeToString(answer)).put("supplier", supplier).set("garden", garden);
        ObjectNode preview = MerchantList.preview(ask.toString());
        assertEquals("[]", preview.get("bad").toString());
        assertTrue(preview.get("garden").isObject(), () -> preview.get("findings").toString());
        return (ObjectNode) preview.get("garden");
    }

    @Test
    void theRequestSaysWhatHowMuchAndByWhenAndNoPrice() throws Exception {
        JobSheet sheet = sheet(garden());
        try (XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(request(sheet)))) {
            Sheet table = book.getSheetAt(0);
            Map<String, Double> counts = new HashMap<>();
            for (int r = 2; r <= table.getLastRowNum(); r++) {
                Row row = table.getRow(r);
                assertEquals("", text(row, column(table, "Price")), "no price goes out");
                String needed = text(row, column(table, "Needed by"));
                assertTrue(needed.matches("2027-0[4-6]-[0-9]{2}"), needed);
                if (row.getCell(column(table, "Count")) != null && row.getCell(column(table, "Length mm")) != null)
                    counts.put(text(row, 0) + " board of " + (int) row.getCell(column(table, "Length mm")).getNumericCellValue(), row.getCell(column(table, "Count")).getNumericCellValue());
            }
            Map<String, Double> slip = new HashMap<>();
            sheet.slip().lines().stream().filter(line -> line.item().matches("(timber|bearers) .*"))
                    .forEach(line -> line.packs().forEach(pack -> slip.put(line.item().replaceFirst("^\\S+ ", "") + " " + pack.pack(), (double) pack.count())));
            assertEquals(slip, counts);
        }
        assertTrue(MerchantPrint.request(sheet, PrintAsk.usual("", "")).size() >= 1);
    }

    /** The engine chooses by bound and search; here every split of the lines over the merchants is tried. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void theBestSplitIsTheCheapestOfAllSplits(long seed) throws Exception {
        Random random = new Random(seed);
        byte[] request = request(sheet(garden()));
        List<String> merchants = List.of("mill", "yard", "depot");
        JsonNode all = garden();
        List<Map<String, BigDecimal>> alone = new ArrayList<>();
        List<BigDecimal> charges = List.of(new BigDecimal(35), new BigDecimal(20), new BigDecimal(48));
        for (int m = 0; m < 3; m++) {
            byte[] answer = filledIn(request, m, random);
            all = taken(answer, merchants.get(m), all);
            ObjectNode only = taken(answer, merchants.get(m), garden());
            ((ObjectNode) only.get("catalogue")).put("examples", false);
            Map<String, BigDecimal> own = new HashMap<>();
            sheet(only).slip().lines().forEach(line -> line.cost().ifPresent(cost -> own.put(line.item(), cost)));
            alone.add(own);
        }
        ((ObjectNode) all.get("catalogue")).put("examples", false);
        JobSheet sheet = sheet(all);
        MerchantOffers offers = MerchantOffers.of(sheet);
        assertEquals(List.of("mill", "yard", "depot"), offers.merchants().stream().map(one -> one.supplier().id()).toList());
        for (int m = 0; m < 3; m++) {
            Map<String, BigDecimal> seen = new HashMap<>();
            int id = m;
            offers.lines().forEach(line -> { if (line.costs().containsKey(merchants.get(id))) seen.put(line.item(), line.costs().get(merchants.get(id))); });
            assertEquals(alone.get(m), seen, merchants.get(m) + " alone");
            BigDecimal goods = seen.values().stream().reduce(BigDecimal.ZERO, BigDecimal::add);
            assertEquals(0, goods.add(charges.get(m)).compareTo(offers.merchants().get(m).total()), "goods and delivery");
        }
        List<String> items = offers.lines().stream().map(MerchantOffers.Line::item).toList();
        BigDecimal best = null;
        for (int used = 1; used < 8; used++) {
            BigDecimal sum = BigDecimal.ZERO;
            for (int m = 0; m < 3; m++) if ((used >> m & 1) == 1) sum = sum.add(charges.get(m));
            boolean whole = true;
            for (String item : items) {
                BigDecimal least = null;
                for (int m = 0; m < 3; m++) {
                    BigDecimal cost = (used >> m & 1) == 1 ? alone.get(m).get(item) : null;
                    if (cost != null && (least == null || cost.compareTo(least) < 0)) least = cost;
                }
                whole &= least != null;
                if (least != null) sum = sum.add(least);
            }
            if (whole && (best == null || sum.compareTo(best) < 0)) best = sum;
        }
        assertTrue(offers.proven());
        assertEquals(0, best.compareTo(sheet.slip().total()), () -> sheet.slip().total() + " for " + offers.lines());
        assertTrue(MerchantPrint.offers(sheet, PrintAsk.usual("", "")).size() >= 1);
    }

    @Test
    void theTableOfOffersIsReadByAnotherLibraryWithTheSameTotals() throws Exception {
        JsonNode all = garden();
        byte[] request = request(sheet(garden()));
        for (int m = 0; m < 3; m++) all = taken(filledIn(request, m, new Random(m)), List.of("mill", "yard", "depot").get(m), all);
        JobSheet sheet = sheet(all);
        String csv = CsvWriter.write(BuyingTables.of("offers", sheet).get(0));
        try (var rows = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get().parse(new StringReader(csv))) {
            var total = rows.getRecords().stream().filter(row -> row.get("Goods").equals("Total of what is priced")).findFirst().orElseThrow();
            assertEquals(sheet.slip().total().toPlainString(), total.get("Best split"));
            MerchantOffers offers = MerchantOffers.of(sheet);
            for (MerchantOffers.Merchant one : offers.merchants()) assertEquals(one.total().toPlainString(), total.get(one.supplier().name()));
        }
    }

    @Test
    void whoSellsNothingLongEnoughIsNotWhole() throws Exception {
        ObjectNode all = (ObjectNode) DocumentText.parse("""
                {"beds":[{"id":"A","width":2400,"depth":1200,"courses":2,"seams":false}],"catalogue":{"suppliers":[{"id":"mill"},{"id":"yard"}],"sections":[
                 {"id":"100x200","thickness":100,"height":200,"stock":[{"length":4800,"price":36,"supplier":"mill"},{"length":1200,"price":1,"supplier":"yard"}]}]}}""");
        MerchantOffers offers = MerchantOffers.of(sheet(all));
        assertTrue(offers.merchants().stream().anyMatch(one -> one.supplier().id().equals("yard") && one.leavesOut() && !one.whole()), () -> offers.merchants().toString());
        assertFalse(offers.merchants().stream().anyMatch(one -> one.supplier().id().equals("mill") && one.leavesOut()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"bomb", "cut", "text", "astray", "exponent"})
    void aBadWorkbookIsRefusedInWords(String what) throws Exception {
        byte[] good = request(sheet(garden()));
        byte[] bad = switch (what) {
            case "bomb" -> zipped("xl/worksheets/sheet1.xml", new byte[30_000_000]);
            case "cut" -> java.util.Arrays.copyOf(good, good.length / 3);
            case "astray" -> zipped(Map.of("xl/workbook.xml", "<workbook xmlns:r='r'><sheet r:id='a'/></workbook>".getBytes(StandardCharsets.UTF_8),
                    "xl/_rels/workbook.xml.rels", "<Relationships><Relationship Id='a'/></Relationships>".getBytes(StandardCharsets.UTF_8)));
            case "exponent" -> zipped("xl/worksheets/sheet1.xml",
                    "<worksheet><sheetData><row r='1'><c r='A1'><v>item</v></c></row><row r='2'><c><v>1e999999999</v></c></row></sheetData></worksheet>".getBytes(StandardCharsets.UTF_8));
            default -> "PK\u0003\u0004 no zip".getBytes(StandardCharsets.UTF_8);
        };
        if (what.equals("exponent")) assertTrue(XlsxReader.firstSheetAsCsv(bad).length() < 100);
        else assertTrue(Told.refusal(assertThrows(IllegalArgumentException.class, () -> XlsxReader.firstSheetAsCsv(bad))).contains(" workbook"));
    }

    private static byte[] zipped(String name, byte[] part) throws Exception {
        return zipped(Map.of(name, part));
    }

    private static byte[] zipped(Map<String, byte[]> parts) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            for (Map.Entry<String, byte[]> part : parts.entrySet()) {
                zip.putNextEntry(new ZipEntry(part.getKey()));
                zip.write(part.getValue());
            }
        }
        return out.toByteArray();
    }

    /** Apache POI writes texts into a list of their own and numbers as doubles, unlike our writer. */
    @Test
    void aListThatSomebodyElseWroteIsReadWithItsTitleAbove() throws Exception {
        try (XSSFWorkbook book = new XSSFWorkbook()) {
            Sheet sheet = book.createSheet("Prijzen, mei");
            sheet.createRow(0).createCell(0).setCellValue("Prices, May");
            Row head = sheet.createRow(3);
            List.of("Artikel", "Inhoud", "Prijs").forEach(text -> head.createCell(Math.max(0, head.getLastCellNum())).setCellValue(text));
            Row row = sheet.createRow(4);
            row.createCell(0).setCellValue("screws");
            row.createCell(1).setCellValue(200);
            row.createCell(2).setCellValue(17.1 + 17.1 + 1.7);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            book.write(out);
            String csv = XlsxReader.firstSheetAsCsv(out.toByteArray());
            ObjectNode preview = MerchantList.preview(csv, "", Map.of("Artikel", "item", "Inhoud", "content", "Prijs", "price"), JsonNodeFactory.instance.objectNode());
            assertEquals("[{\"line\":5,\"kind\":\"goods\",\"fields\":{\"item\":\"screws\",\"content\":\"200\",\"price\":\"35.9\"}}]", preview.get("lines").toString());
        }
    }

    @Test
    void everySampleCanBeAskedFor() throws Exception {
        for (String sample : Gardens.samples().toList()) {
            JobSheet sheet = Gardens.sample(sample);
            assertTrue(BuyingTables.of("price-request", sheet).get(0).size() >= sheet.slip().lines().stream().filter(line -> !line.packs().isEmpty()).count(), sample);
        }
    }
}
