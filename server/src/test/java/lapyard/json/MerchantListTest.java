package lapyard.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import lapyard.job.Job;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MerchantListTest {
    private static final String LIST = """
            Code,Description,Length (mm),Pack name,Content,Width,Price each,Min. qty,Sold in,Shelf\r
            100x200,"Timber, green",4800,,,,"\u00a334.50",,,7\r
            100x200,,2400,,,,17,5,,7\r
            screws,Angled screws 100,,box of 200,200,,36.00,,2,\r
            liner,,,,,3000,5.90,,,\r
            finish,,,,2.5,,,,,\r
            """;

    private static ObjectNode garden(String text) throws Exception {
        return (ObjectNode) DocumentText.parse(text);
    }

    @Test
    void columnsAreMatchedByWhatMerchantsCallThemAndTheRestIsNamed() {
        MerchantList list = MerchantList.read(LIST, "mill", Map.of(), DocumentText.MAPPER.createObjectNode());
        assertEquals(
                Map.of("Code", "item", "Description", "label", "Length (mm)", "length", "Pack name", "pack", "Content", "content", "Width", "width",
                        "Price each", "price", "Min. qty", "least", "Sold in", "bundle"),
                list.columns());
        assertEquals(List.of("Shelf"), list.ignored());
        assertEquals(List.of(), list.bad());
        assertEquals(List.of("section", "section", "goods", "roll"), list.lines().stream().map(MerchantList.Line::kind).toList());
        assertEquals(List.of(2L, 3L, 4L, 5L), list.lines().stream().map(MerchantList.Line::line).toList());
        assertEquals("34.50", list.lines().get(0).fields().get("price"));
    }

    @Test
    void aGoodListStandsInTheCatalogueAndTheGardenIsReadWithIt() throws Exception {
        ObjectNode before = garden("{\"beds\":[{\"width\":2400,\"depth\":1200}],\"catalogue\":{\"suppliers\":[{\"id\":\"mill\"}],"
                + "\"sections\":[{\"id\":\"100x200\",\"thickness\":100,\"height\":200,\"stock\":[{\"length\":4800,\"price\":99,\"supplier\":\"mill\"},"
                + "{\"length\":3600,\"price\":26.40}]}]}}");
        ObjectNode preview = MerchantList.preview(LIST, "mill", Map.of(), before);
        assertEquals(0, preview.get("findings").size(), preview.get("findings").toString());
        ObjectNode after = (ObjectNode) preview.get("garden");
        assertEquals(99, before.at("/catalogue/sections/0/stock/0/price").asInt(), "the garden that was given is not touched");
        assertEquals(3, after.at("/catalogue/sections/0/stock").size(), "3600 stays, 4800 is replaced, 2400 is new");
        assertEquals("34.50", after.at("/catalogue/sections/0/stock/0/price").decimalValue().toPlainString());
        assertEquals(5, after.at("/catalogue/sections/0/stock/2/least").asInt());
        var read = assertInstanceOf(Reading.Read.class, GardenReader.read(after.toString()));
        assertEquals(3000, read.garden().goods().catalogue().rolls("liner").stream().filter(roll -> roll.supplier().equals("mill")).findFirst().orElseThrow().widthMm());
        assertEquals(0.10, read.garden().goods().catalogue().packs("screws").orElseThrow().spare(), "as our example has it");
        assertFalse(Job.prepare(read.garden()).slip().atLeast(), "oil has no price on the list, so it stays at that of our example");
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
            item,price,content;screws,ten,50        | 2 | price "ten" is no number
            item,price,content;screws,-3,50         | 2 | price -3 of "screws" makes no sense
            item,price,content;screws,3,0           | 2 | content 0 of "screws" makes no sense
            item,price,content;screws,3,50;,4,50    | 3 | names no item
            item,price,content;screws,3,            | 2 | "screws" has no length, width or content
            item,price,length;oak,3,2400            | 2 | "oak" has a length but no thickness and height
            item,amount;screws,3                    | 1 | no column for the price
            item/price;screws/3                     | 1 | no line has two cells
            item,price;,                            | 1 | the list is empty
            item,price,content;screws,3,50;"oil,4,1 | 3 | a quoted cell
            """)
    void aBadLineIsNamedByItsNumberAndNothingIsTaken(String text, long number, String words) {
        MerchantList list = MerchantList.read(text.strip().replace(";", "\n"), "", Map.of(), DocumentText.MAPPER.createObjectNode());
        assertEquals(number, list.bad().get(0).line(), list.bad().toString());
        assertTrue(list.bad().get(0).text().startsWith(words.strip()), list.bad().toString());
        assertTrue(MerchantList.preview(text.strip().replace(";", "\n"), "", Map.of(), DocumentText.MAPPER.createObjectNode()).get("garden").isNull());
    }

    /** NIST SP 811: a foot is 0.3048 m, so 3.20 a foot is 10.4987 a metre. */
    @Test
    void aRollPricedByTheFootIsTakenByTheMetre() {
        String list = "Item,Width mm,Price is for,Price\nliner,3657.6,a foot,3.20\nmembrane,1000,a metre,1.10\n";
        ObjectNode preview = MerchantList.preview(list, "", Map.of(), DocumentText.MAPPER.createObjectNode());
        assertEquals(List.of("10.4987", "1.10"), preview.at("/garden/catalogue/rolls").findValues("price").stream().map(price -> price.decimalValue().toPlainString()).toList());
    }

    /** ISO 4217 writes the code before or after the amount; 1 ft = 304.8 mm by the international yard of 1959. */
    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
            item;Length, ft;Price        | 8      | 46.00 USD   | 2438.4 | 46.00
            item;Length (ft);Price (USD) | 8      | 46.00       | 2438.4 | 46.00
            item;Length in feet;price    | 10     | usd 46.00   | 3048   | 46.00
            item;Length [mm];Net, USD    | 2400   | USD1,046.50 | 2400   | 1046.50
            item;length_mm;price         | 2400   | 46.00USD    | 2400   | 46.00
            item;Length, ft;price        | 2400mm | $46         | 2400   | 46
            item;Length, in;price        | 96     |             | 2438.4 |
            """)
    void aHeadingSaysTheUnitAndAPriceItsCurrency(String head, String length, String price, String mm, String plain) {
        ObjectNode dollars = DocumentText.MAPPER.createObjectNode().put("currency", "USD");
        MerchantList list = MerchantList.read(head + "\n100x200;" + length + ";" + (price == null ? "" : price) + "\n", "", Map.of(), dollars);
        assertEquals(List.of(), list.bad());
        assertEquals(mm, list.lines().get(0).fields().get("length"));
        assertEquals(plain, list.lines().get(0).fields().get("price"));
    }

    @ParameterizedTest
    @CsvSource({"Price all", "price top", "Net try"})
    void wordsThatAreCodesOfACurrencyTooAreNone(String head) {
        MerchantList list = MerchantList.read("item,content," + head + "\nscrews,50,2\n", "", Map.of(), DocumentText.MAPPER.createObjectNode());
        assertEquals(List.of(new MerchantList.Bad(1, "no column for the price", "head one column \"price\"")), list.bad());
        assertEquals(List.of(head), list.ignored());
    }

    @ParameterizedTest
    @CsvSource({"price,46.00 USD,3", "price (usd),46.00,1", "price (USD),46.00,1", "price,usd46,3"})
    void pricesInAnotherCurrencyThanTheGardensAreRefusedOnce(String head, String price, long line) {
        MerchantList list = MerchantList.read("item,content," + head + "\nscrews,50,\nscrews,50," + price + "\nscrews,200," + price + "\n", "", Map.of(), DocumentText.MAPPER.createObjectNode());
        assertEquals(List.of(new MerchantList.Bad(line, "prices are in USD, the garden is in GBP", "set the currency of the garden to USD, or give prices in GBP")), list.bad());
        assertEquals(List.of(), list.lines());
    }

    /** ISO 80000-1, 7.3: the decimal sign is a comma or a point, and digits are parted in threes by blanks. 1.250 with neither before it is a guess. */
    @ParameterizedTest(name = "{0} under {1}")
    @CsvSource(delimiter = '|', quoteCharacter = '~', nullValues = "-", textBlock = """
            12 6      | price      | -        | price "12 6" is no number
            -5 $ 3    | price      | -        | price "-5 $ 3" is no number
            GBP 12.50 each | price | -        | price "12.50 each" is no number
            1.250     | price      | -        | price "1.250" of "100x200" can mean 1.25 or 1250
            1,250     | price      | -        | price "1,250" of "100x200" can mean 1.25 or 1250
            1.125     | price      | -        | price "1.125" of "100x200" can mean 1.1250 or 1125
            1.1250    | price      | 1.1250   | -
            1 250     | price      | 1250     | -
            0.750     | price      | 0.750    | -
            1250.000  | price      | 1250.000 | -
            1,250.00  | price      | 1250.00  | -
            1.250,00  | price      | 1250.00  | -
            1 250,5   | price      | 1250.5   | -
            1.250.000 | price      | 1250000  | -
            1,250,00  | price      | -        | price "1,250,00" is no number
            £ 3.5   | price      | 3.5      | -
            12 6      | length, ft | -        | length "12 6" is no length
            2.400     | length, m  | 2400     | -
            2,400     | length     | 2400     | -
            2.4       | length, m  | 2400     | -
            16.000    | length, ft | 4876.8   | -
            1.000     | length, in | 25400    | -
            1,000,000,000,000 | price | -     | price "1,000,000,000,000" is no number
            """)
    void aNumberWithTwoReadingsIsTakenWhereOneCanBeMeantAndElseRefused(String written, String head, String read, String refused) {
        boolean length = head.startsWith("length");
        MerchantList list = MerchantList.read("item;" + head + (length ? ";price\n" : ";length\n") + "100x200;" + written + (length ? ";3\n" : ";2400\n"), "", Map.of(), DocumentText.MAPPER.createObjectNode());
        assertEquals(refused == null ? List.of() : List.of(refused), list.bad().stream().map(MerchantList.Bad::text).toList());
        assertEquals(read == null ? List.of() : List.of(read), list.lines().stream().map(line -> line.fields().get(length ? "length" : "price")).toList());
    }

    /** Bundles are whole, and soil weighs more than air. */
    @Test
    void whatACatalogueCannotHoldIsNotMeant() {
        MerchantList list = MerchantList.read("item;content;price;bundle;least;density\nsoil;1;40;1.250;1,250;1,200\n", "", Map.of(), DocumentText.MAPPER.createObjectNode());
        assertEquals(List.of(), list.bad());
        assertEquals(List.of("1250", "1250", "1200"), Stream.of("bundle", "least", "density").map(list.lines().get(0).fields()::get).toList());
    }

    /** The bounds are those of the schema, each of its own field: a box of screws may weigh 1.25 kg, a bulk bag 1250 kg, and no pack 1250 t. */
    @Test
    void aMassCanMeanTwoAndTonnesOne() {
        MerchantList mass = MerchantList.read("item;content;price;mass\nscrews;50;4;1.250\n", "", Map.of(), DocumentText.MAPPER.createObjectNode());
        assertEquals(List.of("mass \"1.250\" of \"screws\" can mean 1.25 or 1250"), mass.bad().stream().map(MerchantList.Bad::text).toList());
        MerchantList tonnes = MerchantList.read("item;tonnes;price\ngravel;1.250;40\n", "", Map.of(), DocumentText.MAPPER.createObjectNode());
        assertEquals(List.of("1.250"), tonnes.lines().stream().map(line -> line.fields().get("tonnes")).toList());
    }

    /** Trying each sign as the beginning of the rest would take hours. */
    @Test
    void longHeadingsAndPricesThatSayNothingArePassedOverSignBySign() {
        String blanks = " ".repeat(200_000);
        assertEquals("is no number", MerchantList.read("item,content,price\nscrews,50,\"1" + ",000".repeat(500_000) + "\"\n", "", Map.of(), DocumentText.MAPPER.createObjectNode())
                .bad().get(0).text().replaceFirst(".*\" ", ""));
        MerchantList list = MerchantList.read("item,content,price,Length" + blanks + "?x,Price" + blanks + "(USD)\nscrews,50,\"" + "1".repeat(200_000) + "\n\",9,9\n",
                "", Map.of(), DocumentText.MAPPER.createObjectNode());
        assertEquals(List.of("item", "content", "price"), List.copyOf(list.columns().values()));
        assertEquals(2, list.ignored().size());
        assertTrue(list.bad().get(0).text().endsWith("is no number"), list.bad().toString());
    }

    @Test
    void semicolonsAndDecimalCommasAreUnderstood() {
        MerchantList list = MerchantList.read("\uFEFFitem;price;content\nscrews;12,50;50\n\nslats;1,234.00;1\n", "", Map.of(), DocumentText.MAPPER.createObjectNode());
        assertEquals(List.of(), list.bad());
        assertEquals(List.of("12.50", "1234.00"), list.lines().stream().map(line -> line.fields().get("price")).toList());
    }

    /** 1 ft = 304.8 mm and 1 in = 25.4 mm exactly, by the international yard of 1959. */
    @Test
    void sizesAndLengthsAreReadAsMerchantsWriteThem() {
        MerchantList list = MerchantList.read("item;length;price\n100 x 200;2.4 m;17\n100\u00D7200 mm;3,0 m;21\n100X200;480 cm;35\n100x200;8 ft;19\n100x200;96\";19\n100x200;3600;26\n", "", Map.of(), DocumentText.MAPPER.createObjectNode());
        assertEquals(List.of(), list.bad());
        assertEquals(List.of("2400", "3000", "4800", "2438.4", "2438.4", "3600"), list.lines().stream().map(line -> line.fields().get("length")).toList());
        assertEquals(List.of("100x200"), list.lines().stream().map(line -> line.fields().get("item")).distinct().toList());
        assertEquals(List.of("length \"long\" is no length"), MerchantList.read("item,length,price\n100x200,long,3\n", "", Map.of(), DocumentText.MAPPER.createObjectNode()).bad().stream().map(MerchantList.Bad::text).toList());
    }

    /** A newer list in its shortest form: what the garden measured stays, and 2 x 3 in is the example's 50x75. Nominal sizes are common practice, no source. */
    @Test
    void sectionsThatTheGardenKnowsNeedNoSizeAndKeepTheirOwn() throws IOException {
        ObjectNode garden = (ObjectNode) DocumentText.MAPPER.readTree("""
                {"beds":[],"catalogue":{"sections":[
                  {"id":"100x200","thickness":95,"height":195,"stock":[{"length":2400,"price":17}]},
                  {"id":"own","thickness":89,"height":140,"stock":[{"length":2400,"price":17}]}]}}""");
        JsonNode sections = MerchantList.preview("item,length,price\n100 x 200,2.4 m,18\nown,8 ft,9\n2x3,8 ft,5\n", "", Map.of(), garden).at("/garden/catalogue/sections");
        assertEquals(List.of("95", "89", "50"), sections.findValuesAsText("thickness"));
        assertEquals(List.of("195", "140", "75"), sections.findValuesAsText("height"));
        assertEquals(List.of("18", "17", "9", "5"), sections.findValuesAsText("price"));
        MerchantList nominal = MerchantList.read("item,length,price\n6x6,8 ft,31\n", "", Map.of(), garden);
        assertEquals(List.of("\"6x6\" has a length but no thickness and height as measured"), nominal.bad().stream().map(MerchantList.Bad::text).toList());
    }

    /** A newer list in its shortest form changes prices; bundles, smallest numbers, masses and steps stand as they stood, and so does a price that is left empty. */
    @Test
    void whatAListDoesNotSayStandsAsItStood() throws Exception {
        ObjectNode before = garden("""
                {"beds":[],"catalogue":{"suppliers":[{"id":"mill"},{"id":"yard"}],
                 "sections":[{"id":"100x200","thickness":100,"height":200,"stock":[{"length":2400,"price":17,"supplier":"mill","bundle":4,"least":8},{"length":3000,"price":21,"supplier":"mill"}]}],
                 "rolls":[{"id":"ours","material":"liner","width":3000,"price":4,"supplier":"mill","step":250},{"id":"theirs","material":"liner","width":3000,"price":5,"supplier":"yard"}],
                 "packs":[{"item":"screws","unit":"screws","packs":[{"name":"box of 50","content":50,"price":14,"supplier":"mill","mass":0.9,"bundle":2}]}]}}""");
        String list = "item,length,width,pack,content,price\n100x200,2400,,,,18\n100x200,3000,,,,\nliner,,3000,,,6\nscrews,,,box of 50,50,15\nscrews,,,box of 100,100,24\n";
        ObjectNode expected = before.deepCopy();
        ((ObjectNode) expected.at("/catalogue/sections/0/stock/0")).put("price", 18);
        ((ObjectNode) expected.at("/catalogue/rolls/0")).put("price", 6);
        ((ObjectNode) expected.at("/catalogue/packs/0/packs/0")).put("price", 15);
        // as our example has such a box, but for its price
        ((ArrayNode) expected.at("/catalogue/packs/0/packs")).addObject().put("name", "box of 100").put("content", 100).put("mass", 1.7).put("supplier", "mill").put("price", 24);
        JsonNode after = MerchantList.preview(list, "mill", Map.of(), before).get("garden");
        assertEquals(DocumentText.parse(expected.toString()), DocumentText.parse(after.toString()));
    }

    /** A request for prices that comes back in part: what a merchant leaves open is not sold there. The one merchant's list may have sizes that are not priced yet. */
    @ParameterizedTest(name = "{0} from {1}")
    @CsvSource({"'100x200,3000,,,,', mill, 1", "'liner,,3000,,,', mill, 1", "'screws,,,box of 100,100,', mill, 1", "'100x200,3000,,,,', '', 2"})
    void aLineLeftOpenIsNotSold(String open, String supplier, int lines) throws Exception {
        ObjectNode garden = garden("{\"beds\":[],\"catalogue\":{\"suppliers\":[{\"id\":\"mill\"}]}}");
        JsonNode preview = MerchantList.preview("item,length,width,pack,content,price\n100x200,2400,,,,18\n" + open + "\n", supplier, Map.of(), garden);
        assertEquals(lines, preview.path("lines").size());
        assertEquals(lines, preview.at("/garden/catalogue/sections/0/stock").size() + preview.at("/garden/catalogue/rolls").size() + preview.at("/garden/catalogue/packs").size());
        JsonNode none = MerchantList.preview("item,length,width,pack,content,price\n" + open + "\n", "mill", Map.of(), garden);
        assertEquals("no line has a price", none.at("/bad/0/text").asText());
    }

    /** A load that was sold by the tonne is sold by volume from now on, and the other way round: a pack says one of the two. */
    @Test
    void aPackThatIsSoldOtherwiseSaysOneSizeOnly() throws Exception {
        ObjectNode garden = garden("{\"beds\":[],\"catalogue\":{\"packs\":[{\"item\":\"gravel\",\"unit\":\"m3\",\"density\":1650,\"packs\":[{\"name\":\"load\",\"tonnes\":2,\"price\":90},{\"name\":\"bag\",\"content\":0.5,\"price\":40}]}]}}");
        JsonNode after = MerchantList.preview("item,pack,content,tonnes,price\ngravel,load,1.2,,95\ngravel,bag,,0.8,41\n", "", Map.of(), garden);
        assertEquals("[]", after.get("findings").toString());
        assertEquals(DocumentText.parse("[{\"name\":\"load\",\"price\":95,\"content\":1.2},{\"name\":\"bag\",\"price\":41,\"tonnes\":0.8}]"), DocumentText.parse(after.at("/garden/catalogue/packs/0/packs").toString()));
    }

    @Test
    void whatIsNewHasAllButThePriceOfOurExample() {
        JsonNode catalogue = MerchantList.preview("item,length,width,price\n50x75,2400,,5\nliner,,4000,8\n", "", Map.of(), DocumentText.MAPPER.createObjectNode()).at("/garden/catalogue");
        JsonNode examples = DocumentText.parse(MerchantList.examples());
        assertEquals(examples.at("/sections/1/density"), catalogue.at("/sections/0/density"));
        assertEquals(((ObjectNode) examples.at("/rolls/0")).put("price", 8), DocumentText.parse(catalogue.at("/rolls/0").toString()));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', textBlock = """
            100x200,2400,17;100 x 200,2.4 m,18 | "100x200" stands in line 2 with another price
            100x200,2400,17;100x200,2400,17.00 | ''
            100x200,2400,;100x200,2400,17      | ''
            100x200,2400,17;100x200,2700,18    | ''
            """)
    void aListHasOnePriceForOneThing(String lines, String words) {
        JsonNode preview = MerchantList.preview("item,length,price\n" + lines.replace(';', '\n'), "", Map.of(), DocumentText.MAPPER.createObjectNode());
        assertEquals(words, preview.at("/bad/0/text").asText());
        assertEquals(words.isEmpty(), preview.get("garden").isObject());
    }

    @Test
    void aSupplierThatTheGardenDoesNotKnowStopsIt() {
        ObjectNode preview = MerchantList.preview("item,price,content\nscrews,3,50\n", "mill", Map.of(), DocumentText.MAPPER.createObjectNode());
        assertTrue(preview.get("garden").isNull());
        assertTrue(preview.get("findings").toString().contains("There is no supplier"));
    }
}
