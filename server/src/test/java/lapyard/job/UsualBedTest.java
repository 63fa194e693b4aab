package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import lapyard.order.SlipLine;
import lapyard.plan.Finding;
import lapyard.standing.Verdict;
import lapyard.working.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a bed is when nobody says more than its size. */
class UsualBedTest {
    private static final String THREE_ENTRIES = "{\"beds\":[{\"width\":2400,\"depth\":1200,\"courses\":3}]}";

    private static double value(JobSheet sheet, String key) {
        return sheet.beds().get(0).quantities().stream().filter(one -> one.key().toString().equals(key)).mapToDouble(Quantity::value).sum();
    }

    /** No verdict but that it holds, nothing unpriced, one note that asks for the ground. */
    @Test
    void theBedOfThreeEntriesStands() {
        JobSheet sheet = Gardens.sheet(THREE_ENTRIES);
        assertEquals(List.of(), sheet.beds().get(0).standing().notDesigned());
        assertEquals(List.of(), sheet.beds().get(0).standing().verdicts().stream()
                .filter(one -> one.outcome() != Verdict.Outcome.HOLDS).toList());
        assertEquals(List.of(), sheet.snags().stream().filter(one -> one.weight() != Finding.Weight.NOTE).toList());
        assertFalse(sheet.slip().atLeast());
        assertFalse(sheet.leftOut());
    }

    /** The same on every kind of ground. */
    @ParameterizedTest
    @CsvSource({"grass", "soil", "gravel", "slab", "concrete"})
    void itStandsOnEveryGround(String kind) {
        JobSheet sheet = Gardens.sheet(THREE_ENTRIES.replace("{\"beds\"", "{\"ground\":{\"surfaces\":[{\"kind\":\"" + kind
                + "\",\"outline\":[[-100,-100],[3000,-100],[3000,2000],[-100,2000]]}]},\"beds\""));
        assertTrue(sheet.beds().get(0).standing().verdicts().stream().allMatch(one -> one.outcome() == Verdict.Outcome.HOLDS),
                sheet.beds().get(0).standing().verdicts()::toString);
    }

    /** Timber as it is measured, 1.5 mm apart in thickness and 3 in height: every screw, strap and staple it takes is one that our list prices. */
    @Test
    void timberOfAnyMeasureTakesGoodsThatAreSold() {
        for (int i = 0; i <= 60; i++) {
            double thickness = 38 + 1.5 * i;
            double height = 63 + 3 * i;
            JobSheet sheet = Gardens.sheet("""
                    {"beds":[{"width":2400,"depth":1200,"courses":2,"section":"own"}],
                     "catalogue":{"sections":[{"id":"own","thickness":%s,"height":%s,"stock":[{"length":3000,"price":20}]}]}}""".formatted(thickness, height));
            assertEquals(List.of(), sheet.slip().lines().stream().filter(line -> line.cost().isEmpty()).map(SlipLine::label).toList(), thickness + " x " + height);
        }
    }

    /**
     * Two courses and three of any usual size, of the timber that is sold: no snag of strength, and the order is whole. Sizes made
     * with a fixed seed.
     */
    @Test
    void usualBedsOfAnySizeStand() {
        Random random = new Random(24);
        for (int i = 0; i < 60; i++) {
            int width = 1200 + random.nextInt(56) * 100;
            int depth = 800 + random.nextInt(9) * 100;
            String ground = i % 2 == 0 ? "" : "\"ground\":{\"surfaces\":[{\"kind\":\"grass\",\"outline\":[[-100,-100],[9000,-100],[9000,3000],[-100,3000]]}]},";
            String bed = "{" + ground + "\"beds\":[{\"width\":" + width + ",\"depth\":" + depth + ",\"courses\":" + (2 + i % 2) + "}]}";
            JobSheet sheet = Gardens.sheet(bed);
            assertTrue(sheet.beds().get(0).standing().verdicts().stream().allMatch(one -> one.outcome() != Verdict.Outcome.WEAK),
                    () -> bed + sheet.beds().get(0).standing().verdicts());
            assertFalse(sheet.slip().atLeast(), bed);
        }
    }

    /** 50, and a quarter of the height where that is less: 160 high 40, 139.7 high 34.9. Common practice, no source. */
    @ParameterizedTest(name = "{0} high: {1}")
    @CsvSource({"200, 50", "250, 50", "160, 40", "139.7, 34.9", "95, 23.7"})
    void aNotchIsAQuarterDeepAtMost(double height, double depth) {
        JobSheet sheet = timber("\"thickness\":100,\"height\":" + height);
        assertEquals(depth, sheet.garden().beds().get(0).making().notches().depthMm(), 1e-9);
        assertTrue(sheet.snags().stream().noneMatch(one -> one.kind().code.equals("notch.deep")));
    }

    /**
     * 45 degrees: a screw lies its length x 0.707 deep, and 10 are left: thickness 75 takes 91.9 at most, 47 takes 52.3, 63 takes
     * 74.9, 38 takes 39.6 (derived from the geometry of EN 1995-1-1, 8.7.2).
     */
    @ParameterizedTest(name = "{0} thick: {1}")
    @CsvSource({"100, 120", "125, 120", "75, 90", "63, 70", "47, 50", "38, 30"})
    void theScrewIsTheLongestThatKeepsItsCover(double thickness, double length) {
        JobSheet sheet = timber("\"thickness\":" + thickness + ",\"height\":200");
        assertEquals(length, sheet.garden().beds().get(0).making().screws().lengthMm());
    }

    /** USDA Wood Handbook, ch. 16: 2.4 to 4.9 m2 a litre on saw-textured wood, 4.9 to 9.8 on smooth. 8.84 m2, two coats. */
    @Test
    void finishGoesFurtherOnPlanedTimber() {
        JobSheet sawn = timber("\"thickness\":100,\"height\":200");
        JobSheet planed = timber("\"thickness\":100,\"height\":200,\"planed\":true");
        // outside 7.2 x 0.6, inside 6.4 x 0.6, top 0.1 x 6.8
        double area = 4.32 + 3.84 + 0.68;
        assertEquals(area * 2 / 5, value(sawn, "finish.litres"), 1e-9);
        assertEquals(area * 2 / 9, value(planed, "finish.litres"), 1e-9);
    }

    private static JobSheet timber(String size) {
        return Gardens.sheet("{\"catalogue\":{\"sections\":[{\"id\":\"own\"," + size + ",\"stock\":[{\"length\":2400,\"price\":20},"
                + "{\"length\":3000,\"price\":25}]}]},\"beds\":[{\"width\":2400,\"depth\":1200,\"courses\":3,\"section\":\"own\"}]}");
    }

    /** Pegs 1000 apart along two runs of 8000: (8 + 1) x 2. Common practice, no source. */
    @Test
    void pegsOfEdgingsAreBought() {
        JobSheet sheet = Gardens.sheet("{\"beds\":[],\"paths\":[{\"line\":[[0,0],[8000,0]],\"width\":900,\"edging\":\"edging.board\"}]}");
        SlipLine pegs = sheet.slip().lines().stream().filter(line -> line.item().equals("edging.pegs")).findFirst().orElseThrow();
        assertEquals(18, pegs.need());
        assertTrue(pegs.cost().isPresent());
    }

    /**
     * Soil 455 deep settles from 535.3; with 50 of mulch and 45 of base that would stand 30.3 over a rim of 600. 2.2 m2 x 30.3 are
     * kept back.
     */
    @Test
    void onTheDayOfFillingNothingStandsOverTheRim() {
        JobSheet sheet = Gardens.sheet(THREE_ENTRIES);
        assertEquals(2.2 * (455 / 0.85 + 50 + 45 - 600) / 1000, value(sheet, "soil.top-up"), 1e-9);
        assertEquals(2, value(sheet, "barrows.top-up"));
        assertEquals(2.2 * 0.455 / 0.85, value(sheet, "soil.loose"), 1e-9);
    }
}
