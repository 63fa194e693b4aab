package lapyard.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.Charset;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.CannotAnswer;
import lapyard.plan.Finding;
import lapyard.plan.Finding.Weight;
import lapyard.plan.Garden;
import lapyard.plan.Lap;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class GardenReaderTest {
    static Garden read(String text) {
        Reading reading = GardenReader.read(text);
        return assertInstanceOf(Reading.Read.class, reading, () -> reading.findings().toString()).garden();
    }

    private static List<Finding> refused(String text) {
        return assertInstanceOf(Reading.Refused.class, GardenReader.read(text)).findings();
    }

    private static Finding stop(String text) {
        Finding finding = refused(text).get(0);
        assertEquals(Weight.STOP, finding.weight());
        assertFalse(Told.ways(finding).isEmpty(), "a way out is named: " + finding);
        return finding;
    }

    @Test
    void aBedInThreeEntriesIsAWholeGarden() {
        Garden garden = read("{\"beds\":[{\"width\":2400,\"depth\":1200,\"courses\":3}]}");
        Bed bed = garden.beds().get(0);
        assertEquals("A", bed.id());
        assertEquals(3, bed.courses());
        assertEquals(600, bed.heightMm());
        assertEquals(Lap.TURNING, bed.walls().lap());
        assertEquals(2 * (2400 + 1200), bed.outline().perimeterMm());
        assertEquals("GBP", garden.terms().currency());
        assertTrue(garden.goods().catalogue().examplePrices());
    }

    /** A day begins by ten in the evening at the latest. */
    @Test
    void workBeginsUpToTenInTheEvening() throws IOException {
        assertEquals("22:00", read("{\"crew\":{\"from\":\"22:00\"}}").people().crew().dates().from().toString());
        assertTrue(Told.text(stop("{\"crew\":{\"from\":\"22:01\"}}")).contains("a time up to 22:00"));
        String page = new String(GardenReaderTest.class.getResourceAsStream("/META-INF/resources/state/crew-forms.js").readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(page.contains("const LATEST = '" + CrewReader.LATEST + "';"), "the page takes other times");
        assertTrue(Told.text(stop("{\"crew\":{\"from\":\"25:00\"}}")).contains("a time of day"));
    }

    @Test
    void everyDefaultIsWrittenDown() {
        Set<String> defaulted = Set.copyOf(read("{\"beds\":[{\"width\":2400,\"depth\":1200,\"courses\":3}]}").defaulted());
        for (String pointer : List.of("/currency", "/units", "/saw/kerf", "/beds/0/section", "/beds/0/liner/lap", "/beds/0/fill/settlement")) {
            assertTrue(defaulted.contains(pointer), pointer);
        }
        assertFalse(defaulted.contains("/beds/0/courses"));
    }

    @Test
    void threeFormsOfOneOutlineAreOneBed() {
        Garden garden = read("""
                {"beds":[
                 {"id":"X","width":3000,"depth":2000},
                 {"id":"Y","walls":[{"length":3000},{"length":2000},{"length":3000},{"length":2000}]},
                 {"id":"Z","outline":[[0,2000],[0,0],[3000,0],[3000,2000]]}]}""");
        assertEquals(1, garden.beds().stream().map(Bed::outline).collect(Collectors.toSet()).size());
    }

    @Test
    void wallsTurnLeftAndRightRoundAnL() {
        Bed bed = read("""
                {"beds":[{"walls":[{"length":3000},{"length":1500},{"length":1200,"turn":"right"},
                 {"length":900},{"length":1800},{"length":2400}]}]}""").beds().get(0);
        assertEquals(
                List.of(new Point(0, 0), new Point(3000, 0), new Point(3000, 1500), new Point(1800, 1500), new Point(1800, 2400), new Point(0, 2400)),
                bed.outline().corners());
        assertEquals(6.12e6, bed.outline().areaMm2());
    }

    @Test
    void wallsStartAtTheFrontLeftCornerWhicheverCornerWasGivenFirst() {
        Bed bed = read("{\"beds\":[{\"outline\":[[2000,1000],[0,1000],[0,0],[1000,0],[2000,0]]}]}").beds().get(0);
        assertEquals(List.of(new Point(0, 0), new Point(2000, 0), new Point(2000, 1000), new Point(0, 1000)), bed.outline().corners());
    }

    @Test
    void aTypeIsPlacedManyTimesAndOnePlacementMayDiffer() {
        Garden garden = read("""
                {"types":[{"id":"T","width":2400,"depth":1200,"courses":3,"lap":"long-wall"}],
                 "beds":[{"id":"1","type":"T"},{"id":"2","type":"T","at":[3000,0],"turn":90,"mirror":true,"stage":2},
                         {"id":"3","type":"T","at":[9000,0],"courses":2}]}""");
        assertEquals(List.of("1", "2", "3"), garden.beds().stream().map(Bed::id).toList());
        assertEquals(List.of(3, 3, 2), garden.beds().stream().map(Bed::courses).toList());
        assertTrue(garden.beds().stream().allMatch(bed -> bed.walls().lap() == Lap.LONG_WALL && bed.type().equals("T")));
        assertEquals(2, garden.beds().get(1).stage());
        assertTrue(garden.beds().get(1).placement().mirror());
    }

    @ParameterizedTest(name = "{0} and {1} is stage {2}")
    @CsvSource(delimiter = '|', textBlock = """
            "stage":4   |               | 4
                        | "weekend":2   | 2
            "weekend":4 |               | 4
            "weekend":4 | "stage":2     | 2
                        |               | 1
        """)
    void aStageIsStillReadUnderItsOldName(String ofType, String ofBed, int stage) {
        String type = ofType == null ? "" : "," + ofType;
        String bed = ofBed == null ? "" : "," + ofBed;
        Garden garden = read("{\"types\":[{\"id\":\"T\",\"width\":2400,\"depth\":1200" + type
                + "}],\"beds\":[{\"type\":\"T\"" + bed + "}]}");
        assertEquals(stage, garden.beds().get(0).stage());
    }

    @Test
    void aGardenOverridesTheCatalogueByLine() {
        Garden garden = read("""
                {"beds":[],"catalogue":{"sections":[{"id":"100x200","thickness":95,"height":195,"stock":[{"length":4800,"price":40}]}]}}""");
        assertEquals(95, garden.goods().catalogue().section("100x200").orElseThrow().thicknessMm());
        assertTrue(garden.goods().catalogue().section("50x75").isPresent());
        assertTrue(garden.goods().catalogue().examplePrices());
        assertFalse(read("{\"beds\":[],\"catalogue\":{\"examples\":false}}").goods().catalogue().section("50x75").isPresent());
    }

    /** 2010 ADA Standards 403.5.1: 36 in (915 mm). A garden in feet is held against the inches. */
    @ParameterizedTest
    @CsvSource({"imperial, 914.4", "metric, 915"})
    void aStandardInInchesIsKeptInInchesWhereTheGardenIs(String units, double pathMm) {
        assertEquals(pathMm, read("{\"units\":\"" + units + "\",\"ground\":{\"access\":{\"standard\":\"ada-2010\"}},\"beds\":[]}").ground().access().walking().pathMm());
    }

    /** Corners told to a hundredth are no reason to call two corners the same, and the step is in millimetres in feet too. */
    @Test
    void whatIsTooFineIsToldByItself() {
        List<Finding> told = refused("{\"units\":\"imperial\",\"ground\":{\"outline\":[[0,0],[9000,0],[9000,8778.24],[0,8778.24]]},\"beds\":[]}");
        assertEquals(List.of("ground, outline, corner 3, y", "ground, outline, corner 4, y"), told.stream().map(Finding::where).toList());
        assertEquals("\"outline, corner 3, y\" is 8778.24 mm, which is finer than 0.1 mm. Write 8778.2.", lapyard.words.Wording.IMPERIAL.paragraph(told.get(0)));
    }

    /** IEEE 754: 78 in of 25.4 mm, added one by one, come to 1981.2000000000007. */
    @Test
    void aNumberWithBinaryNoiseIsWhatWasMeant() {
        double added = 0;
        for (int i = 0; i < 78; i++) added += 25.4;
        assertNotEquals(1981.2, added);
        Garden garden = read("{\"beds\":[{\"width\":" + added + ",\"depth\":1200,\"at\":[0.30000000000000004,0]}],\"catalogue\":{\"sections\":[{\"id\":\"100x200\",\"thickness\":100,\"height\":200,"
                + "\"stock\":[{\"length\":2400,\"price\":16.900000000000002}]}]}}");
        assertEquals(List.of(1981.2, 0.3), List.of(garden.beds().get(0).outline().corner(1).x(), garden.beds().get(0).placement().at().x()));
        assertEquals("16.9", garden.goods().catalogue().section("100x200").orElseThrow().stock().get(0).price().orElseThrow().toString());
    }

    /** Where noise is finer than a binary number can tell, at a bound of its field (prices of 0 to 1000000, widths up to 100000), or too fine to be written out. */
    @ParameterizedTest
    @CsvSource({"8.9000000000000000001,100000,8.9", "-1e-10,100000.00000000001,0.0", "1e-999999999,99999.99999999999,0.0", "8.90,2400,8.90"})
    void noiseIsNothingWhereverItStands(String price, String width, String taken) {
        Garden garden = read("{\"beds\":[{\"width\":" + width + ",\"depth\":1200,\"at\":[1e-999999999,0]}],\"catalogue\":{\"sections\":[{\"id\":\"100x200\",\"thickness\":100,\"height\":200,"
                + "\"stock\":[{\"length\":2400,\"price\":" + price + "}]}]}}");
        assertEquals(width.equals("2400") ? 2400 : 100_000, garden.beds().get(0).outline().corner(1).x());
        assertEquals(taken, garden.goods().catalogue().section("100x200").orElseThrow().stock().get(0).price().orElseThrow().toString());
    }

    @ParameterizedTest(name = "{1}: {2}")
    @CsvSource(delimiter = '|', textBlock = """
            {"beds":[{"width":0,"depth":1200}]}                        | bed A, width          | "width" is 0 mm; at least 1 mm is needed.
            {"beds":[{"width":-5,"depth":1200}]}                       | bed A, width          | "width" is -5 mm; at least 1 mm
            {"beds":[{"width":1e9,"depth":1200}]}                      | bed A, width          | 1000000000 mm; at most 100000 mm
            {"beds":[{"width":1e999999,"depth":1200}]}                 | bed A, width          | at most 100000 mm
            {"beds":[{"width":1e-999999999,"depth":1200}]}             | bed A, width          | at least 1 mm
            {"beds":[{"width":1e999999999,"depth":1200}]}              | bed A, width          | at most 100000 mm
            {"beds":[{"width":"2.4 m","depth":1200}]}                  | bed A, width          | must be a number of mm, not the text "2.4 m"
            {"beds":[{"width":2400.25,"depth":1200}]}                  | bed A, width          | finer than 0.1 mm
            {"beds":[{"width":2400,"depth":1200,"stage":1,"weekend":2}]} | bed 1, stage        | "stage" is the number 1, but under its old name "weekend" it is the number 2.
            {"currency":"ZZZ"}                                         | currency              | must be the ISO 4217 code of money that goods are paid in, not the text "ZZZ"
            {"currency":"XAU"}                                         | currency              | must be the ISO 4217 code of money that goods are paid in, not the text "X
            {"currency":"XXX"}                                         | currency              | must be the ISO 4217 code of money that goods are paid in, not the text "X
            {"beds":[{"width":2400}]}                                  | bed A, depth          | is missing
            {"beds":[{}]}                                              | bed A, outline        | is missing
            {"beds":[{"width":2400,"depth":1200,"walls":[]}]}          | bed A, outline        | more than one way
            {"beds":[{"width":2400,"depth":1200,"courses":0}]}         | bed A, courses        | "courses" is 0; at least 1 is needed.
            {"beds":[{"width":2400,"depth":1200,"courses":2.5}]}       | bed A, courses        | finer than 1
            {"beds":[{"width":2400,"depth":1200,"colour":"red"}]}      | bed A, colour         | Unknown field
            {"beds":[{"width":2400,"depth":1200,"section":"9x9"}]}     | bed A, section        | There is no section "9x9".
            {"beds":[{"width":2400,"depth":1200,"type":"Q"}]}          | bed A, type           | There is no type "Q".
            {"beds":[{"width":2400,"depth":1200,"seen":["E"]}]}        | bed A, seen           | There is no wall "E".
            {"beds":[{"id":"B","width":2400,"depth":1200},{"id":"B","width":2400,"depth":1200}]} | bed 2, id | Bed code B is listed twice.
            {"beds":[{"id":"<b>","width":2400,"depth":1200}]}          | bed 1, id             | cannot be written on a timber
            {"beds":{}}                                                | beds                  | must be a list
            {"beds":[7]}                                               | bed 1                 | must be an object
            {"bed":[]}                                                 | bed                   | Unknown field
            {"format":2,"beds":[]}                                     | format                | The document has format 2; this program reads format 1.
            {"currency":"XQZ","beds":[]}                               | currency              | not the text "XQZ"
            {"beds":[{"walls":[{"length":3000},{"length":1500},{"length":2916},{"length":1500}]}]} | bed A, walls | The walls end 84 mm to the right of where they begin.
            {"beds":[{"width":2400,"depth":1200,"fill":{"layers":[{"material":"soil.topsoil","share":70}]}}]} | bed A, fill, layers | The shares of the layers add up to 70 % instead of 100 %.
            {"beds":[{"width":2400,"depth":1200,"fill":{"settlement":100}}]} | bed A, fill, settlement | 100 percent; at most 90 percent
            {"beds":[{"width":2400,"depth":1200,"finish":{"cover":0}}]} | bed A, finish, cover | at least 0.1
            {"beds":[],"catalogue":{"sections":[{"id":"S","thickness":50,"height":150,"stock":[{"length":2400,"price":5},{"length":2400,"price":6}]}]}} | section S, stock length 2, length | Stock length 2400 mm is listed twice.
            {"beds":[],"catalogue":{"sections":[{"id":"S","thickness":50,"height":150,"stock":[{"length":2400,"price":-5}]}]}} | section S, stock length 1, price | -5; at least 0
            {"beds":[],"catalogue":{"sections":[{"id":"S","thickness":50,"height":150,"density":100}]}} | section S, density | 100 kg/m3; at least 200 kg/m3
            {"beds":[],"rack":[{"length":2750,"bad":[[2700,2800]]}]}   | board R1, bad         | The bad part from 2700 mm to 2800 mm is not on a board of 2750 mm.
            {"beds":[],"paths":[{"line":[[0,0]]}]}                     | path P1, line         | "line" has 1 point; at least 2 points are needed.
            {"beds":[],"ground":{"outline":[[0,0],[1,1]]}}             | ground, outline       | "outline" has 2 corners; at least 3 corners are needed.
            """)
    void badInputIsNamedWithPlaceAmountAndWayOut(String text, String where, String says) {
        Finding finding = stop(text);
        assertEquals(where, finding.where());
        assertTrue(Told.text(finding).contains(says), Told.text(finding));
    }

    @Test
    void everyFaultIsNamedAtOnce() {
        assertEquals(3, refused("{\"beds\":[{\"width\":0,\"depth\":-1,\"hue\":1}]}").size());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "   ", "{", "beds", "{\"beds\":[}", "{\"beds\":[],\"beds\":[]}", "{\"beds\":[]} x", "{\"width\":NaN}", "\u0000"})
    void whatIsNotJsonIsSaidSo(String text) {
        String message = Told.refusal(assertThrows(CannotAnswer.class, () -> GardenReader.read(text)));
        assertTrue(message.endsWith("."), message);
        assertFalse(message.contains("com.fasterxml"), message);
    }

    @Test
    void nestingWithoutEndIsRefused() {
        assertThrows(CannotAnswer.class, () -> GardenReader.read("[".repeat(100_000)));
    }

    @Test
    void aHundredMegabytesAreRefusedBeforeTheyAreRead() {
        String message = Told.refusal(assertThrows(CannotAnswer.class, () -> DocumentText.refuseTooLarge(100_000_000)));
        assertTrue(message.startsWith("document: The document has 100 MB; at most 5 MB are possible."), message);
    }

    @Test
    void aByteOrderMarkIsAccepted() {
        byte[] marked = "\uFEFF{\"beds\":[]}".getBytes(StandardCharsets.UTF_8);
        assertEquals("{\"beds\":[]}", DocumentText.decode(marked));
    }

    @ParameterizedTest
    @CsvSource({"UTF-16, in UTF-16", "ISO-8859-1, not in UTF-8", "windows-1252, not in UTF-8"})
    void otherEncodingsAreRefusedByName(String encoding, String says) {
        byte[] bytes = "{\"name\":\"Grüne Beete\",\"beds\":[]}".getBytes(Charset.forName(encoding));
        String message = Told.refusal(assertThrows(CannotAnswer.class, () -> DocumentText.decode(bytes)));
        assertTrue(message.contains(says), message);
    }
}
