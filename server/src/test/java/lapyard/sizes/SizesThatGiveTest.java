package lapyard.sizes;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import lapyard.geometry.Stretch;
import lapyard.job.Gardens;
import lapyard.job.Job;
import lapyard.job.JobSheet;
import lapyard.job.SearchMemory;
import lapyard.job.SizeCosts;
import lapyard.job.Costing;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.Garden;
import lapyard.plan.Give;
import lapyard.plan.Giving;
import lapyard.working.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Judged by every combination of sizes, each worked out whole, in small gardens, and by what must hold in any. */
class SizesThatGiveTest {
    private static final List<SizeLook> LONG = List.of(new SizeLook(20_000, true, 200, 4));

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 6);
    }

    static Giving all(Garden garden, Give give, boolean inLine) {
        Map<String, Give> byBed = new HashMap<>();
        garden.beds().forEach(bed -> byBed.put(bed.id(), give));
        return new Giving(byBed, List.of(), inLine, inLine);
    }

    private static SizesThatGive look(Garden garden, Give give) {
        return SizesThatGive.of(garden, all(garden, give, false), LONG, Progress.UNHEARD, new SearchMemory(20_000_000));
    }

    /** By hand: 1200 and 1200 with a kerf of 4 and trims of 20 are 2424; 24 less on one side and both fit 2400. */
    @Test
    void twentyFourMillimetresOfOneSideSaveHalfTheBoards() {
        Garden garden = Gardens.garden("""
                {"beds":[{"width":1300,"depth":1300,"courses":2,"base":"open","liner":false,"finish":false}],
                 "catalogue":{"sections":[{"id":"100x200","thickness":100,"height":200,"stock":[{"length":2400,"price":10.00}]}]}}""");
        SizeAnswer half = look(garden, new Give(-24, 0, -24, 0, 1)).front().stream()
                .filter(one -> one.boards() == 4)
                .findFirst()
                .orElseThrow();
        assertEquals(1, half.changes().size());
        assertEquals(24, half.mm());
        assertTrue(half.saved().compareTo(new BigDecimal("40.00")) >= 0, half.saved().toString());
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void noCombinationOfSizesIsCheaperThanTheFront(long seed) {
        Random random = new Random(seed);
        StringBuilder beds = new StringBuilder();
        for (int i = 0; i < 2; i++) {
            beds.append(i == 0 ? "" : ",").append("{\"width\":%d,\"depth\":%d,\"courses\":%d,\"at\":[%d,0]}".formatted(
                    1500 + 10 * random.nextInt(120), 900 + 10 * random.nextInt(40), 2 + random.nextInt(2), i * 5000));
        }
        Garden garden = Gardens.garden("{\"beds\":[" + beds + "]}");
        double step = 10 + 5 * random.nextInt(4);
        int values = 4;
        SizesThatGive given = look(garden, new Give(-step * (values - 1), 0, -step * (values - 1), 0, step));

        SearchMemory memory = new SearchMemory(20_000_000);
        BigDecimal[] cheapest = new BigDecimal[5];
        for (int code = 0; code < values * values * values * values; code++) {
            List<Bed> changed = new ArrayList<>();
            int rest = code;
            int changes = 0;
            for (Bed bed : garden.beds()) {
                Bed one = bed;
                for (boolean acrossX : new boolean[] {true, false}) {
                    int by = rest % values;
                    rest /= values;
                    changes += by > 0 ? 1 : 0;
                    one = by == 0 ? one : one.withOutline(Stretch.of(one.outline()).get(acrossX ? 0 : 1).applied(one.outline(), -step * by));
                }
                changed.add(one);
            }
            BigDecimal total = Costing.of(garden.withBeds(changed), memory).total();
            for (int k = changes; k <= 4; k++) cheapest[k] = cheapest[k] == null ? total : cheapest[k].min(total);
        }
        for (int k = 1; k <= 4; k++) {
            int most = k;
            BigDecimal found = given.front().stream().filter(one -> one.changes().size() <= most).map(SizeAnswer::total)
                    .min(BigDecimal::compareTo).orElse(given.now().slip().total());
            assertEquals(0, found.compareTo(cheapest[k]), "seed " + seed + ", " + k + " changes: found " + found + ", best " + cheapest[k]);
            if (k <= given.bounds().size()) {
                assertTrue(given.bounds().get(k - 1).compareTo(cheapest[k]) <= 0,
                        "seed " + seed + ", " + k + " changes: bound " + given.bounds().get(k - 1) + " over " + cheapest[k]);
            }
        }
        assertTrue(given.bound().compareTo(cheapest[4]) <= 0, "seed " + seed);
        assertTrue(!given.proven() || given.bound().compareTo(cheapest[4]) == 0, "seed " + seed);
    }

    /**
     * Walls that are joined at some of the sizes, at all or at none, with boards on hand that are longer than those on sale, for some of the walls or
     * none: no size of all costs less than the bound says.
     */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 7, 8})
    void noSizeOfJoinedWallsCostsLessThanTheBound(long seed) {
        Random random = new Random(70 + seed);
        int width = 2900 + 10 * random.nextInt(60);
        Garden garden = Gardens.garden("{\"rack\":[{\"id\":\"K\",\"length\":3300,\"count\":%d,\"origin\":\"shed\",\"treatment\":\"none\"}],\"beds\":[{\"width\":%d,\"depth\":%d,\"courses\":%d},{\"width\":%d,\"depth\":900,\"at\":[0,3000]}]}"
                .formatted(1 + seed % 4, width, 900 + 10 * random.nextInt(40), 1 + random.nextInt(3), 1500 + 10 * random.nextInt(200)));
        double step = 20 + 5 * random.nextInt(30);
        List<Side> sides = Sides.of(garden, all(garden, new Give(-2 * step, 0, -step, 0, step), false));
        SearchMemory memory = new SearchMemory(20_000_000);
        BigDecimal now = Costing.of(garden, memory).total();
        SizeBounds bounds = new SizeBounds(garden, sides, new SizeCosts(garden, memory), now);
        for (int code = 0; code < 36; code++) {
            double[] by = {-step * (code % 3), -step * (code / 3 % 2), -step * (code / 6 % 3), -step * (code / 18)};
            List<Resize> changes = new ArrayList<>();
            for (int i = 0; i < 4; i++) if (by[i] < 0) changes.add(new Resize(sides.get(i), by[i]));
            Costing costed = Costing.of(SizesThatGive.changed(garden, changes), memory);
            assertTrue(costed.leftOut() || costed.total().compareTo(bounds.all()) >= 0, costed.total() + " under the bound " + bounds.all() + " at " + changes);
        }
    }

    /**
     * By hand: two long walls of three courses of 3 m to 3280 need six boards of more than 2980, the longest on sale less its trims, where they
     * are not joined; there are two. Where they may be, every size is made, and the bound counts no joint too many.
     */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void sizesThatNeedMoreLongBoardsThanThereAreAreMadeWhereWallsMayBeJoined(boolean seams) {
        Garden garden = Gardens.garden("""
                {"rack":[{"id":"K","length":3300,"count":2,"origin":"shed","treatment":"none"}],"saw":{"endTrim":10},
                 "beds":[{"width":%d,"depth":1200,"courses":3,"seams":%b}]}""".formatted(seams ? 3500 : 2900, seams));
        List<Side> sides = Sides.of(garden, all(garden, new Give(seams ? -600 : -100, seams ? 0 : 350, 0, 0, 50), false));
        SearchMemory memory = new SearchMemory(20_000_000);
        SizeCosts costs = new SizeCosts(garden, memory);
        BigDecimal bound = new SizeBounds(garden, sides, costs, Costing.of(garden, memory).total()).all();
        for (double by : sides.get(0).values()) {
            Garden changed = SizesThatGive.changed(garden, by == 0 ? List.of() : List.of(new Resize(sides.get(0), by)));
            Costing costed = Costing.of(changed, memory);
            assertEquals(!costed.leftOut(), costs.makeable(0, changed.beds().get(0).outline()), by + " wider");
            assertTrue(costed.leftOut() || costed.total().compareTo(bound) >= 0, costed.total() + " under the bound " + bound + ", " + by + " wider");
        }
        assertEquals(!seams, sides.get(0).values().stream().map(by -> sides.get(0).applied(0, garden.beds().get(0).outline(), by)).anyMatch(size -> !costs.makeable(0, size)));
    }

    /** Two boards of 3300 on hand; each bed of 3 m to 3250 has two walls that would take them, so that one bed's are joined: all is made, and estimated so. */
    @Test
    void bedsThatShareTooFewLongBoardsAreEstimatedAsTheyAreMade() {
        Garden garden = Gardens.garden("""
                {"rack":[{"id":"K","length":3300,"count":2,"origin":"shed","treatment":"none"}],"saw":{"endTrim":10},
                 "beds":[{"width":3150,"depth":1200,"courses":1},{"width":3150,"depth":1000,"courses":1,"at":[0,3000]}]}""");
        List<Side> sides = Sides.of(garden, all(garden, new Give(0, 100, 0, 0, 50), false));
        SearchMemory memory = new SearchMemory(20_000_000);
        SizeCosts costs = new SizeCosts(garden, memory);
        for (double by : sides.get(0).values()) {
            Garden changed = SizesThatGive.changed(garden, by == 0 ? List.of() : List.of(new Resize(sides.get(0), by)));
            assertFalse(Costing.of(changed, memory).leftOut());
            BigDecimal likely = costs.likely(changed.beds().stream().map(Bed::outline).toList(), false);
            assertTrue(likely.compareTo(SizeCosts.UNMADE) < 0, by + " wider: " + likely);
        }
    }

    /** 121 sizes of one bed, worked out one by one: none costs less than the bound, which counts bearers and slats too and so lies close. */
    @ParameterizedTest
    @MethodSource("seeds")
    void theBoundOfABedOfManySizesLiesCloseUnderItsCheapest(long seed) {
        Random random = new Random(100 + seed);
        Garden garden = Gardens.garden("{\"beds\":[{\"width\":%d,\"depth\":%d,\"courses\":%d}]}"
                .formatted(1400 + 10 * random.nextInt(140), 800 + 10 * random.nextInt(60), 1 + random.nextInt(3)));
        List<Side> sides = Sides.of(garden, all(garden, new Give(-100, 0, -100, 0, 10), false));
        SearchMemory memory = new SearchMemory(20_000_000);
        BigDecimal now = Costing.of(garden, memory).total();
        BigDecimal bound = new SizeBounds(garden, sides, new SizeCosts(garden, memory), now).all();
        BigDecimal cheapest = now;
        for (int code = 0; code < 121; code++) {
            List<Resize> changes = new ArrayList<>();
            if (code % 11 > 0) changes.add(new Resize(sides.get(0), -10 * (code % 11)));
            if (code / 11 > 0) changes.add(new Resize(sides.get(1), -10 * (code / 11)));
            Costing costed = Costing.of(SizesThatGive.changed(garden, changes), memory);
            if (!costed.leftOut()) cheapest = cheapest.min(costed.total());
        }
        assertTrue(bound.compareTo(cheapest) <= 0, "seed " + seed + ": bound " + bound + " over " + cheapest);
        assertTrue(cheapest.subtract(bound).doubleValue() <= 0.05 * cheapest.doubleValue(), "seed " + seed + ": bound " + bound + " far under " + cheapest);
    }

    /** A look of twice the seconds begins with the shorter one, so that it never finds less. */
    @ParameterizedTest
    @CsvSource({"5, 10", "5, 20", "10, 20", "20, 60", "2, 5"})
    void aLongerLookBeginsWithTheShorter(double shorter, double longer) {
        List<SizeLook> few = SizeLook.ofSeconds(shorter, 7);
        List<SizeLook> more = SizeLook.ofSeconds(longer, 7);
        if (shorter >= 5) assertEquals(few, more.subList(0, few.size()));
        assertEquals(200 * longer, more.stream().mapToInt(SizeLook::estimates).sum());
        assertTrue(SizeLook.ofSeconds(longer, 70).get(0).wholes() <= more.get(0).wholes());
        SizeLook one = new SizeLook(60, false, 5, 2);
        Garden garden = Gardens.garden("{\"beds\":[{\"width\":%d,\"depth\":1100},{\"width\":1900,\"depth\":950,\"at\":[4000,0]},{\"width\":2300,\"depth\":1000,\"at\":[8000,0]}]}"
                .formatted(2000 + (int) (10 * longer)));
        Giving giving = all(garden, new Give(-60, 0, -60, 0, 5), false);
        SizesThatGive was = SizesThatGive.of(garden, giving, List.of(one), Progress.UNHEARD, new SearchMemory(20_000_000));
        SizesThatGive is = SizesThatGive.of(garden, giving, List.of(one, new SizeLook(200, false, 10, 2)), Progress.UNHEARD, new SearchMemory(20_000_000));
        boolean cheaper = best(is).compareTo(best(was)) < 0;
        assertEquals(1, was.longer());
        assertEquals(cheaper ? 1 : 260 / 60.0, is.longer(), 1e-9);
        for (SizeAnswer answer : was.front()) {
            assertTrue(is.front().stream().anyMatch(other -> other.beatsOrEquals(answer)), answer + " is lost in " + is.front());
        }
    }

    private static BigDecimal best(SizesThatGive given) {
        return given.front().stream().map(SizeAnswer::total).min(BigDecimal::compareTo).orElse(given.now().slip().total());
    }

    @ParameterizedTest
    @ValueSource(strings = {"three-entries", "school-courtyard", "chapel-corner"})
    void everyAnswerIsAGardenThatPassesWhatItPassedBefore(String sample) throws IOException {
        Garden garden = Gardens.garden(Gardens.text(sample));
        Give give = new Give(-100, 60, -60, 60, 20);
        SizesThatGive given = SizesThatGive.of(garden, all(garden, give, true), List.of(new SizeLook(300, false, 16, 3)), Progress.UNHEARD, new SearchMemory(20_000_000));
        BigDecimal before = given.now().slip().total();
        for (SizeAnswer one : given.front()) {
            Garden changed = SizesThatGive.changed(garden, one.changes());
            assertEquals(List.of(), Job.stops(changed));
            assertEquals(one.total(), Job.prepare(changed).slip().total());
            assertEquals(before.subtract(one.total()), one.saved());
            assertTrue(one.total().compareTo(given.bound()) >= 0);
            passesAsBefore(given.now(), Job.prepare(changed));
            for (Resize change : one.changes()) {
                assertTrue(change.byMm() >= change.side().leastMm() && change.byMm() <= change.side().mostMm());
            }
            assertFalse(given.front().stream().anyMatch(other -> other != one && other.changes().size() <= one.changes().size()
                    && other.mm() <= one.mm() && other.total().compareTo(one.total()) <= 0), "an answer that another beats");
        }
        for (SizesThatGive.Growth grown : given.growth()) {
            Garden larger = SizesThatGive.changed(garden, List.of(grown.change()));
            passesAsBefore(given.now(), Job.prepare(larger));
            assertTrue(Job.prepare(larger).slip().total().compareTo(before) <= 0, grown.toString());
        }
    }

    /** Counted anew: snags of each place, and what each room is short of its standard. */
    private static void passesAsBefore(JobSheet before, JobSheet after) {
        assertFalse(after.leftOut());
        Map<String, Integer> snags = new HashMap<>();
        before.snags().stream().filter(one -> one.weight() != Finding.Weight.NOTE).forEach(one -> snags.merge(one.where(), 1, Integer::sum));
        after.snags().stream().filter(one -> one.weight() != Finding.Weight.NOTE).forEach(one -> snags.merge(one.where(), -1, Integer::sum));
        assertTrue(snags.values().stream().allMatch(left -> left >= 0), snags::toString);
        before.ground().access().rows().forEach(was -> after.ground().access().rows().stream()
                .filter(is -> is.where().equals(was.where()) && is.what().equals(was.what()))
                .forEach(is -> assertTrue(is.missing() <= was.missing() + 1, was + " " + is)));
    }

    /**
     * By hand, a bed A that grows by 60 in depth out of the same boards and bags where nothing forbids it, as each piece takes a board of
     * 1500. 1000 deep from 1500 on it ends at 2500: B stands 1200 or 1150 behind it, a path of 1200 begins there, a wall stands 50 behind
     * it, or one 100 behind it from which soil keeps 75. 1200 deep its middle is 600 from two sides, 1220 deep 610.
     */
    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', textBlock = """
            nothing forbids it                        | 1000 | 5000 |                                       | 60
            the path is just at the standard          | 1000 | 3700 | "access":{"path":1200,"turning":0}    |  0
            the path is short of the standard already | 1000 | 3650 | "access":{"path":1200,"turning":0}    |  0
            the middle is just in reach               | 1200 | 5000 | "access":{"reach":600,"turning":0}    |  0
            the middle is out of reach already        | 1220 | 5000 | "access":{"reach":600,"turning":0}    |  0
            it may be reached across                  | 1220 | 5000 | "access":{"reach":1200,"turning":0}   | 60
            a wall stands behind it                   | 1000 | 5000 | "keepClear":[{"kind":"wall","line":[[0,2550],[9000,2550]]}] | 40
            a path is drawn just before its wall      | 1000 | 5000 | "surfaces":[]                         |  0
            soil keeps off the wall of the house      | 1000 | 5000 | "keepClear":[{"kind":"wall","line":[[0,2600],[9000,2600]],"dampCourse":300}] | 20
            """)
    void aFreeGrowthThatTheGroundForbidsIsNone(String why, int depth, int next, String ground, int mm) {
        Garden garden = Gardens.garden("""
                {"ground":{"outline":[[0,0],[9000,0],[9000,7000],[0,7000]]%s},"defaults":{"liner":false,"finish":false,"base":"open","ties":{"courseTies":false,"crossTies":false}},
                 "catalogue":{"sections":[{"id":"100x200","thickness":100,"height":200,"stock":[{"length":1500,"price":10.00}]}],"packs":[%s]},%s
                 "beds":[{"id":"A","width":1300,"depth":%d,"at":[1500,1500]},{"id":"B","width":1300,"depth":1000,"at":[1500,%d]}]}"""
                .formatted(ground == null ? "" : "," + ground, bulkBags(),
                        why.contains("drawn") ? "\"paths\":[{\"line\":[[0,3100],[9000,3100]],\"width\":1200}]," : "", depth, next));
        Giving deeper = new Giving(Map.of("A", new Give(0, 0, 0, 60, 20)), List.of(), false, false);
        SizesThatGive given = SizesThatGive.of(garden, deeper, LONG, Progress.UNHEARD, new SearchMemory(20_000_000));
        assertEquals(mm, given.growth().stream().mapToDouble(one -> one.change().byMm()).sum(), given.growth()::toString);
        given.growth().forEach(one -> assertEquals(mm == 60, one.most(), one.toString()));
        assertEquals(List.of(), given.growthOpen());
    }

    private static String bulkBags() {
        return Stream.of("soil.topsoil", "soil.compost", "soil.grit", "mulch").map(item -> Gardens.bulk(item, 1000, "50.00")).collect(Collectors.joining(","));
    }

    @Test
    void bedsOfATypeAndWallsInLineChangeTogether() {
        Garden garden = Gardens.garden("""
                {"types":[{"id":"T","width":2400,"depth":1200}],
                 "beds":[{"id":"A","type":"T","at":[0,0]},{"id":"B","type":"T","at":[4000,0]},
                         {"id":"C","width":1800,"depth":1200,"at":[8000,0]},{"id":"D","width":1800,"depth":900,"at":[12000,0]}]}""");
        List<Side> sides = Sides.of(garden, all(garden, new Give(-50, 0, -50, 0, 5), true));
        assertEquals(List.of(List.of(0, 1), List.of(0, 1), List.of(2), List.of(2), List.of(3), List.of(3)),
                Sides.of(garden, all(garden, new Give(-50, 0, -50, 0, 5), false)).stream().map(SizesThatGiveTest::beds).toList(), "one type, however they lie");
        // widths of A with B, of C, of D; depths of A, B and C in one line, of D
        assertEquals(List.of(2, 1, 1, 3, 1), sides.stream().sorted((a, b) -> a.parts().get(0).acrossX() == b.parts().get(0).acrossX() ? 0
                : a.parts().get(0).acrossX() ? -1 : 1).map(side -> side.parts().size()).toList());
        assertEquals(2, Sides.of(garden, new Giving(Map.of("A", new Give(-50, 0, -50, 0, 5), "D", new Give(0, 0, -50, 0, 5)), List.of(), true, true)).size() + 1,
                "B is A's type and stays, so only D gives");
    }

    /** What changes together gives no more than the one of them that gives least; of steps of 5 and 20 the coarser counts. */
    @Test
    void bedsThatChangeTogetherGiveWhatEachOfThemMay() {
        Garden garden = Gardens.garden("""
                {"beds":[{"id":"A","width":2400,"depth":1200},{"id":"B","width":2000,"depth":1100,"at":[4000,50]}]}""");
        for (List<String> order : List.of(List.of("A", "B"), List.of("B", "A"))) {
            Map<String, Give> byBed = Map.of(order.get(0), new Give(-50, 100, 0, 0, 5), order.get(1), new Give(-90, 70, -40, 40, 20));
            Side width = Sides.of(garden, new Giving(byBed, List.of(List.of("A", "B")), false, false)).get(0);
            assertEquals(List.of(-40.0, 60.0, 20.0), List.of(width.leastMm(), width.mostMm(), width.stepMm()));
            assertEquals(1, Sides.of(garden, new Giving(byBed, List.of(List.of("A", "B")), false, false)).size(), "one depth stays");
        }
    }

    /** By hand: what another beats in changes, millimetres and money is left out, and of two alike the first stays. */
    @Test
    void theFrontLeavesOutWhatAnotherBeats() {
        Side side = new Side(List.of(), -100, 0, 5);
        List<SizeAnswer> all = new ArrayList<>();
        double[][] told = {{1, 50, 10}, {1, 60, 10}, {1, 60, 12}, {2, 50, 9}, {2, 55, 12}, {2, 80, 20}, {3, 80, 20}, {2, 80, 20}, {1, 5, 0}, {1, 5, -3}};
        for (double[] one : told) {
            List<Resize> changes = new ArrayList<>();
            for (int i = 0; i < one[0]; i++) changes.add(new Resize(side, -one[1] / one[0]));
            all.add(new SizeAnswer(changes, one[1], BigDecimal.valueOf(100 - one[2]), BigDecimal.valueOf(one[2]), 0));
        }
        assertEquals(List.of(all.get(0), all.get(2), all.get(4), all.get(5)), SizeAnswer.front(all));
    }

    @Test
    void bedsThatAreNamedAlikeChangeTogether() {
        Garden garden = Gardens.garden("""
                {"beds":[{"id":"A","width":2400,"depth":1200},{"id":"B","width":2000,"depth":1100,"at":[4000,50]},{"id":"C","width":1800,"depth":1000,"at":[8000,100]}]}""");
        Giving each = all(garden, new Give(-50, 0, -50, 0, 5), false);
        Giving pair = new Giving(each.byBed(), List.of(List.of("A", "C")), false, false);
        assertEquals(List.of(List.of(0, 2), List.of(0, 2), List.of(1), List.of(1)), Sides.of(garden, pair).stream().map(SizesThatGiveTest::beds).toList());
        assertEquals(6, Sides.of(garden, each).size());
    }

    private static List<Integer> beds(Side side) {
        return side.parts().stream().map(Side.Part::bed).toList();
    }

    /** By hand: gaps of 1000 between A, B and C stay equal only if A and B change by the same; D stands 1400 further on. */
    @Test
    void equalGapsOfARowStayEqual() {
        Garden garden = Gardens.garden("""
                {"beds":[{"id":"A","width":1500,"depth":900,"at":[0,0]},{"id":"B","width":1600,"depth":1000,"at":[2500,50]},
                         {"id":"C","width":1700,"depth":1100,"at":[5100,100]},{"id":"D","width":1800,"depth":1200,"at":[8200,150]}]}""");
        Give give = new Give(-50, 0, 0, 0, 5);
        assertEquals(List.of(List.of(0, 1), List.of(2), List.of(3)), Sides.of(garden, all(garden, give, true)).stream().map(SizesThatGiveTest::beds).toList());
        assertEquals(4, Sides.of(garden, all(garden, give, false)).size());
        // an L among them would move its gap by either of two parts, so the row is held
        Garden held = Gardens.garden("""
                {"beds":[{"id":"A","outline":[[0,0],[1500,0],[1500,600],[800,600],[800,1200],[0,1200]],"at":[0,0]},{"id":"B","width":1600,"depth":1000,"at":[2500,50]},
                         {"id":"C","width":1700,"depth":1100,"at":[5100,100]}]}""");
        assertEquals(List.of(List.of(2)), Sides.of(held, all(held, give, true)).stream().map(SizesThatGiveTest::beds).toList());
    }

    /** A bed turned by half meets the gap with the wall that its width moves; one that is slanted keeps its line too. */
    @Test
    void slantedAndTurnedBedsStayInLine() {
        Garden garden = Gardens.garden("""
                {"beds":[{"id":"A","outline":[[0,0],[2400,0],[2400,900],[2100,1200],[0,1200]],"at":[0,0]},
                         {"id":"B","width":1800,"depth":1200,"at":[6800,1200],"turn":180}]}""");
        List<Side> sides = Sides.of(garden, all(garden, new Give(0, 0, -50, 0, 5), true));
        // A's far side lies in line with B's near one, which no depth moves; B's far one in line with A's near one
        assertEquals(List.of(), sides, sides::toString);
        assertEquals(2, Sides.of(garden, all(garden, new Give(0, 0, -50, 0, 5), false)).size());
    }

    @Test
    void aBedWithSlantedWallsGivesAndCloses() {
        Garden garden = Gardens.garden("""
                {"beds":[{"outline":[[0,0],[2500,0],[2500,900],[2200,1200],[0,1200]],"courses":2,"base":"open","liner":false,"finish":false}],
                 "catalogue":{"sections":[{"id":"100x200","thickness":100,"height":200,"stock":[{"length":2400,"price":10.00},{"length":3600,"price":16.00}]}]}}""");
        SizesThatGive given = look(garden, new Give(-150, 0, -50, 0, 25));
        assertEquals(2, given.sides().size());
        BigDecimal best = given.now().slip().total();
        for (int width = 0; width <= 6; width++) {
            for (int depth = 0; depth <= 2; depth++) {
                List<Resize> changes = new ArrayList<>();
                if (width > 0) changes.add(new Resize(given.sides().get(0), -25 * width));
                if (depth > 0) changes.add(new Resize(given.sides().get(1), -25 * depth));
                best = best.min(Job.prepare(SizesThatGive.changed(garden, changes)).slip().total());
            }
        }
        SizeAnswer last = given.front().get(given.front().size() - 1);
        assertEquals(best, last.total());
        assertTrue(given.bound().compareTo(best) <= 0, given.bound() + " over " + best);
        assertTrue(best.compareTo(given.now().slip().total()) < 0);
    }

    @Test
    void aGardenThatGivesNothingIsToldSo() {
        Garden garden = Gardens.garden("{\"beds\":[{\"width\":2400,\"depth\":1200}]}");
        assertThrows(IllegalArgumentException.class, () -> SizesThatGive.of(garden, Giving.NONE, LONG, Progress.UNHEARD, new SearchMemory(20_000_000)));
    }
}
