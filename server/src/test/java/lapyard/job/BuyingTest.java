package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Told;
import lapyard.order.SlipLine;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.junit.jupiter.params.ParameterizedTest;

/** Bed M, an L of 3000 x 2400 less 1200 x 900, and bed N, 1800 x 900: timber for M first is 10 boards of 4800, all opened then. */
class BuyingTest {
    private static final String GARDEN = """
            {"defaults":{"screws":{"length":100},"ties":{"courseTies":false,"crossTies":false}},
             "beds":[{"id":"M","weekend":1,"outline":[[0,0],[3000,0],[3000,1500],[1800,1500],[1800,2400],[0,2400]],"courses":3},
                     {"id":"N","weekend":2,"width":1800,"depth":900,"courses":3,"at":[4200,0]}],
             "catalogue":{"sections":[{"id":"100x200","thickness":100,"height":200,"stock":[{"length":4800,"price":36.00}]}]},
             "crew":{"start":"2027-03-06","leadDays":10}}""";

    private final Buying buying = Buying.of(Gardens.sheet(GARDEN));

    @Test
    void timberIsOrderedTheLeadBeforeTheSaw() {
        Buying.Row timber = buying.rows().stream().filter(row -> row.item().equals("timber 100x200")).findFirst().orElseThrow();
        assertEquals(1, timber.weekend());
        assertEquals(timber.needDay() - 10, timber.orderDay());
        assertEquals(Map.of("4800", 10), timber.boards());
    }

    /** A supplier who names no lead days has those of the crew; one who names some has those. */
    @ParameterizedTest
    @ValueSource(ints = {10, 3})
    void aSuppliersLeadIsTheCrewsUnlessItNamesItsOwn(int lead) {
        String supplier = "{\"suppliers\":[{\"id\":\"mill\"" + (lead == 10 ? "" : ",\"leadDays\":" + lead) + "}],";
        String garden = GARDEN.replace("\"catalogue\":{", "\"catalogue\":" + supplier).replace("\"price\":36.00", "\"price\":36.00,\"supplier\":\"mill\"");
        Buying.Row timber = Buying.of(Gardens.sheet(garden)).rows().stream().filter(row -> row.item().equals("timber 100x200")).findFirst().orElseThrow();
        assertEquals(timber.needDay() - lead, timber.orderDay());
    }

    @Test
    void whatEachBedTakesIsNeededWhenItIsBuilt() {
        JobSheet sheet = Gardens.sheet(GARDEN);
        List<Buying.Row> screws = buying.rows().stream().filter(row -> row.item().equals("screws")).toList();
        assertEquals(List.of(36.0, 24.0), screws.stream().map(Buying.Row::amount).toList());
        assertEquals(List.of(1, 2), screws.stream().map(Buying.Row::weekend).toList());
        assertEquals(sheet.weekends().byId().get("N.course-1").firstDay(), screws.get(1).needDay());
        assertTrue(buying.drops() >= 2);
    }

    /** A path's membrane is needed on the day on which the path is laid: 4 m x 0.9 m. */
    @Test
    void aPathsMembraneIsBoughtForTheWeekendThatLaysIt() {
        JobSheet sheet = Gardens.sheet("{\"beds\":[],\"paths\":[{\"id\":\"P\",\"line\":[[0,0],[4000,0]],\"width\":900,\"membrane\":\"membrane\","
                + "\"layers\":[{\"material\":\"bark\",\"depth\":50}]}]}");
        Buying.Row row = Buying.of(sheet).rows().stream().filter(one -> one.item().equals("membrane")).findFirst().orElseThrow();
        assertEquals(3.6, row.amount(), 1e-9);
        assertEquals("m2", row.unit());
        assertEquals(sheet.weekends().byId().get("path.P").firstDay(), row.needDay());
        assertFalse(row.packs().isEmpty(), "what comes of the slip's roll");
    }

    /** Every line of the slip is in some weekend's list, in all of the packs that the slip has; gardens of a seed. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void noLineOfTheSlipIsMissingFromTheWeekends(long seed) {
        Random random = new Random(seed);
        StringBuilder beds = new StringBuilder();
        for (int i = 0; i < 2 + random.nextInt(3); i++) {
            beds.append(i == 0 ? "" : ",").append("{\"id\":\"B").append(i).append("\",\"weekend\":").append(1 + random.nextInt(3))
                    .append(",\"width\":").append(1500 + 100 * random.nextInt(15)).append(",\"depth\":").append(900 + 100 * random.nextInt(8))
                    .append(",\"courses\":").append(1 + random.nextInt(3)).append(",\"seal\":").append(random.nextBoolean())
                    .append(",\"at\":[").append(4000 * i).append(",0]}");
        }
        JobSheet sheet = Gardens.sheet("{\"beds\":[" + beds + "],\"paths\":[{\"id\":\"P\",\"line\":[[0,-2000],[9000,-2000]],\"width\":900,"
                + "\"membrane\":\"membrane\",\"edging\":\"edging.board\",\"layers\":[{\"material\":\"sub-base\",\"depth\":100},{\"material\":\"gravel\",\"depth\":40}]}]}");
        List<Buying.Row> rows = Buying.of(sheet).rows();
        sheet.slip().lines().forEach(line -> {
            long come = rows.stream().filter(row -> row.item().equals(line.item())).flatMap(row -> row.packs().values().stream()).mapToLong(Integer::longValue).sum();
            assertEquals(line.packs().stream().mapToLong(SlipLine.PackCount::count).sum(), come, "seed " + seed + ": " + line.item());
        });
    }

    @Test
    void theTableIsCsvWithDates() {
        List<String> lines = buying.csv(Optional.of(LocalDate.of(2027, 3, 6)), false).lines().collect(Collectors.toList());
        assertEquals("weekend,needed on,order by,item,label,need,unit,boards opened,packs", lines.get(0));
        assertTrue(lines.stream().anyMatch(line -> line.contains("2027-02-24,timber 100x200") && line.endsWith("10 x board of 4800 mm,10 x board of 4800 mm")), lines.toString());
    }

    /** 36 screws for M, 24 for N and a tenth over are 66: a box of 50, one of 20. The 50 are enough for M, the 20 come for N. */
    @Test
    void packsComeBeforeTheWeekendThatNeedsThemAndNoMoreThanAreBought() {
        Buying bought = Buying.of(Gardens.sheet(GARDEN.replace("\"catalogue\":{", "\"catalogue\":{\"packs\":[{\"item\":\"screws\",\"spare\":10,\"packs\":["
                + "{\"name\":\"box of 50\",\"content\":50,\"price\":9.00},{\"name\":\"box of 20\",\"content\":20,\"price\":4.00}]}],")));
        assertEquals(List.of(Map.of("box of 50", 1), Map.of("box of 20", 1)),
                bought.rows().stream().filter(row -> row.item().equals("screws")).map(Buying.Row::packs).toList());
    }

    @Test
    void noPackComesTwiceAndNoneIsForgotten() {
        JobSheet sheet = Gardens.sheet(GARDEN);
        Buying all = Buying.of(sheet);
        sheet.slip().lines().forEach(line -> {
            List<Buying.Row> rows = all.rows().stream().filter(row -> row.item().equals(line.item())).toList();
            if (!rows.isEmpty()) {
                assertEquals(line.packs().stream().mapToLong(pack -> pack.count()).sum(),
                        rows.stream().flatMap(row -> row.packs().values().stream()).mapToLong(Integer::longValue).sum(), line.item());
            }
        });
    }

    /**
     * Bearers ripped to 23 for one bed and to 30 for another are bought as one line from one merchant, at 5.00 from who brings them for nothing, not
     * at 4.00 from who asks 20.00 for it; and no board of it is forgotten.
     */
    @ParameterizedTest(name = "the second bed in weekend {0}")
    @ValueSource(ints = {1, 2})
    void bearersOfTwoThicknessesAreOneLine(int weekend) {
        String garden = """
                {"beds":[{"id":"A","width":2400,"depth":1200,"courses":2,"weekend":1,"base":"slatted"},
                         {"id":"B","width":2400,"depth":1200,"courses":2,"weekend":%d,"at":[4000,0],"base":{"kind":"slatted","bearerLift":30}}],
                 "catalogue":{"suppliers":[{"id":"mill","delivery":20},{"id":"yard"}],"sections":[{"id":"50x75","thickness":50,"height":75,"stock":[
                  {"length":2400,"price":4,"supplier":"mill"},{"length":2400,"price":5,"supplier":"yard"}]}]},"crew":{"start":"2027-03-06"}}""".formatted(weekend);
        JobSheet sheet = Gardens.sheet(garden);
        List<SlipLine> lines = sheet.slip().lines().stream().filter(line -> line.item().equals("bearers 50x75")).toList();
        assertEquals(1, lines.size());
        long boards = sheet.strips().stream().mapToLong(cutting -> cutting.saw().ripping().orElseThrow().boards()).sum();
        assertEquals(2, sheet.strips().size());
        assertEquals(List.of("yard"), lines.get(0).packs().stream().map(SlipLine.PackCount::supplier).toList());
        assertEquals(boards, lines.get(0).packs().get(0).count());
        assertEquals(5 * boards, lines.get(0).cost().orElseThrow().doubleValue());
        assertEquals(List.of("bed A", "bed B"), lines.get(0).uses().stream().map(SlipLine.Use::owner).toList());
        List<Buying.Row> rows = Buying.of(sheet).rows().stream().filter(row -> row.item().equals("bearers 50x75")).toList();
        assertEquals(weekend, rows.size());
        assertEquals(boards, rows.stream().flatMap(row -> row.packs().values().stream()).mapToLong(Integer::longValue).sum());
    }

    /** Ten boards, all for weekend 1; screws in a box of 50 for weekend 1 and one of 20 for the second. A part of them leaves the line to be ordered, another size does not. */
    @ParameterizedTest(name = "{1} x {0} bought: {2} lines fewer are late")
    @CsvSource({"board of 4800, 1, 0", "board of 4800, 9, 0", "board of 4800, 10, 1", "board of 3000, 1, 1", "box of 50, 1, 0", "box of 20, 1, 0"})
    void whatIsBoughtInPartIsStillToOrder(String pack, int count, int fewer) {
        String garden = GARDEN.replace("\"catalogue\":{", "\"catalogue\":{\"packs\":[{\"item\":\"screws\",\"spare\":10,\"packs\":["
                + "{\"name\":\"box of 50\",\"content\":50,\"price\":9.00},{\"name\":\"box of 20\",\"content\":20,\"price\":4.00}]}],");
        String item = pack.startsWith("board") ? "timber 100x200" : "screws";
        String tally = "{\"item\":\"" + item + "\",\"pack\":\"" + pack + "\",\"count\":" + count + "}";
        assertEquals(late(garden) - fewer, late(garden.replaceFirst("\\{", "{\"tally\":{\"bought\":[" + tally + "]},")));
        if (item.equals("screws")) {
            String both = "{\"item\":\"screws\",\"pack\":\"box of 50\",\"count\":1},{\"item\":\"screws\",\"pack\":\"box of 20\",\"count\":1}";
            assertEquals(late(garden) - 1, late(garden.replaceFirst("\\{", "{\"tally\":{\"bought\":[" + both + "]},")));
        }
    }

    /** Lines that must be ordered before the plan begins. */
    private static int late(String garden) {
        JobSheet sheet = Gardens.sheet(garden);
        String told = Told.text(Buying.of(sheet).findings(sheet.garden()).get(0));
        return told.contains(" and ") ? 1 + Integer.parseInt(told.replaceFirst(".* and (\\d+) other.*", "$1")) : 1;
    }

    /** Work begins on Saturday 6 March with the saw; ten days before is 24 February. */
    @Test
    void whatMustBeOrderedBeforeTheFirstDayIsASnagUntilItIsBought() {
        Finding early = Gardens.sheet(GARDEN).snags().stream().filter(one -> one.kind() == FindingKind.ORDER_LATE).findFirst().orElseThrow();
        assertEquals(Finding.Weight.SNAG, early.weight());
        assertEquals(10, early.amount().orElseThrow().value());
        assertTrue(Told.text(early).endsWith("must be ordered by Wednesday 24 February 2027, 10 days before the plan begins."), Told.text(early));
        assertTrue(Told.ways(early).contains("Order now and tally it as bought"), Told.ways(early).toString());
        for (String quiet : List.of(GARDEN.replace("\"leadDays\":10", "\"leadDays\":0"), GARDEN.replace("\"start\":\"2027-03-06\",", ""))) {
            assertTrue(Gardens.sheet(quiet).snags().stream().noneMatch(one -> one.kind() == FindingKind.ORDER_LATE), quiet);
        }
    }
}
