package lapyard.answers;

import lapyard.json.MerchantList;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import lapyard.job.Gardens;
import lapyard.plan.CannotAnswer;
import lapyard.plan.Finding;
import lapyard.plan.Told;
import lapyard.prints.PrintAsk;
import org.junit.jupiter.api.Test;

/** The real desk on the garden of three suppliers: what is bought, sold, changed and brought. */
class GardenDeskOrderTest {
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final GardenDesk DESK = new GardenDesk();

    private static String chapel() throws IOException {
        return Gardens.text("chapel-corner");
    }

    private static PreparedGarden sheet(String document) {
        return DESK.prepare(GivenDocument.of(document));
    }

    @Test
    void aPinThatNothingFitsStandsOnTheSnagList() {
        List<String> told = sheet("{\"catalogue\":{\"pins\":[{\"item\":\"screws\",\"supplier\":\"zz\"},{\"item\":\"tar\",\"pack\":\"x\"}]},\"beds\":[{\"width\":2000,\"depth\":1000}]}")
                .sheet().snags().stream().filter(one -> one.weight() == Finding.Weight.SNAG).map(Told::text).toList();
        assertEquals(List.of("\"tar\" is pinned but not in the catalogue, so it is chosen freely.", "Nobody sells screws as pinned (from zz), so it is chosen freely."), told);
    }

    @Test
    void theOrdersOfAJobSheetAddUpToItsTotalAndItsShares() throws IOException {
        JsonNode slip = MAPPER.readTree(Forms.jobSheet(sheet(chapel()))).path("slip");
        BigDecimal orders = BigDecimal.ZERO;
        for (JsonNode order : slip.path("orders")) {
            BigDecimal packs = new BigDecimal(order.path("delivery").asText());
            for (JsonNode line : order.path("lines")) {
                for (JsonNode pack : line.path("packs")) {
                    packs = packs.add(new BigDecimal(pack.path("cost").asText()));
                }
            }
            assertEquals(0, packs.compareTo(new BigDecimal(order.path("total").asText())), order.path("name").asText());
            orders = orders.add(packs);
        }
        assertEquals(slip.path("total").asText(), orders.toPlainString());
        BigDecimal shares = BigDecimal.ZERO;
        for (JsonNode share : slip.path("shares")) {
            shares = shares.add(new BigDecimal(share.path("cost").asText()));
        }
        assertEquals(0, orders.compareTo(shares));
        double last = Double.MAX_VALUE;
        BigDecimal saved = BigDecimal.ZERO;
        for (JsonNode saving : slip.path("savings")) {
            assertTrue(saving.path("saved").asDouble() <= last, "largest first");
            last = saving.path("saved").asDouble();
            assertTrue(saving.at("/working/formula").asText().startsWith("bed by bed " + saving.path("bedByBed").asText()));
            saved = saved.add(new BigDecimal(saving.path("saved").asText()));
        }
        assertEquals(slip.path("saved").asText(), saved.toPlainString());
        assertEquals(0, saved.compareTo(new BigDecimal(slip.at("/bedByBed/lowerBound").asText()).subtract(orders)), "no more than is proved");
    }

    @Test
    void oneSuppliersCsvIsAskedForByCodeAndWhoBringsNothingIsRefused() throws IOException {
        String csv = Forms.slipCsv(sheet(chapel()), "yard");
        List<String> rows = csv.lines().skip(1).toList();
        BigDecimal sum = BigDecimal.ZERO;
        for (String row : rows.subList(0, rows.size() - 1)) sum = sum.add(new BigDecimal(row.substring(row.lastIndexOf(',') + 1)));
        assertEquals("total,,GBP,,," + sum, rows.get(rows.size() - 1));
        JsonNode slip = MAPPER.readTree(Forms.jobSheet(sheet(chapel()))).path("slip");
        for (JsonNode order : slip.path("orders")) {
            if (order.path("supplier").asText().equals("yard")) assertEquals(order.path("total").asText(), sum.toPlainString());
        }
        var refused = assertThrows(Refused.class, () -> Forms.slipCsv(sheet(chapel()), "who"));
        assertTrue(Told.ways(refused.findings().get(0)).get(0).contains("sawmill, yard and nursery"));
    }

    /** 46 h at 24.00 and 22 h at 19.50 are 1104.00 and 429.00; at 18 % of the price 1346.34 and 523.17. */
    @Test
    void theQuoteStandsBesideTheOrder() throws IOException {
        JsonNode quote = MAPPER.readTree(Forms.part(sheet(chapel()), "quote"));
        BigDecimal order = new BigDecimal(MAPPER.readTree(Forms.jobSheet(sheet(chapel()))).path("slip").path("total").asText());
        assertEquals(order.add(new BigDecimal("1533.00")).toPlainString(), quote.path("cost").asText());
        JsonNode lines = quote.path("lines");
        assertEquals("1346.34", lines.get(lines.size() - 2).path("price").asText());
        assertEquals("523.17", lines.get(lines.size() - 1).path("price").asText());
        assertEquals(3, quote.path("exclusions").size());
        JsonNode loads = MAPPER.readTree(Forms.part(sheet(chapel()), "loads"));
        assertEquals(3, loads.path("drops").size());
    }

    @Test
    void aVariationAddsUpAndItsSheetIsAPdf() throws IOException {
        String after = chapel().replace("\"courses\": 4, \"at\": [11500", "\"courses\": 3, \"at\": [11500");
        JsonNode variation = MAPPER.readTree(DESK.variation(sheet(chapel()), sheet(after)));
        BigDecimal sum = BigDecimal.ZERO;
        for (JsonNode line : variation.path("lines")) {
            sum = sum.add(new BigDecimal(line.path("difference").asText()));
        }
        assertEquals(0, sum.compareTo(new BigDecimal(variation.path("difference").asText())));
        assertTrue(sum.signum() < 0, "a course less costs less");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        DESK.variationSheet(sheet(chapel()), sheet(after), "revision 1", "revision 2", out);
        byte[] sheet = out.toByteArray();
        assertTrue(new String(sheet, 0, 5, StandardCharsets.ISO_8859_1).equals("%PDF-"));
        assertThrows(Refused.class, () -> DESK.variation(sheet(chapel()), sheet(after.replace("\"GBP\"", "\"EUR\""))));
    }

    @Test
    void sheetsOfTheOrderAreDrawn() throws IOException {
        for (String name : new String[] {"slip", "load-in", "quote"}) {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            sheet(chapel()).print(name, "svg", 1, PrintAsk.usual("revision 1, 2027-05-01", ""), out);
            String svg = out.toString(StandardCharsets.UTF_8);
            assertTrue(svg.contains("Chapel corner"), name);
            assertTrue(!name.equals("slip") || svg.contains("PRICES ENDED ON 2027-01-31"), svg);
        }
    }

    @Test
    void aBadListIsShownAndWhatIsNoListRefused() throws IOException {
        JsonNode preview = MerchantList.preview("{\"list\":\"item,price,content\\nscrews,x,50\\n\"}");
        assertEquals(2, preview.at("/bad/0/line").asInt());
        assertTrue(preview.path("garden").isNull());
        assertThrows(CannotAnswer.class, () -> MerchantList.preview("{\"list\":7}"));
        assertTrue(MAPPER.readTree(MerchantList.examples()).path("sections").size() > 0);
    }
}
