package lapyard.loadin;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.LongStream;
import lapyard.catalogue.Vehicle;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import lapyard.job.Loads;
import lapyard.plan.Finding;
import lapyard.plan.Garden;
import lapyard.plan.Told;
import lapyard.plan.WayKind;
import lapyard.plan.WayOut;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class LoadInTest {
    static LongStream seeds() {
        return LongStream.range(0, 200);
    }

    private static Load load(String name, long count, double kg, double m3) {
        return new Load(name, name, name, count, OptionalDouble.of(kg), m3, 0, 0);
    }

    private static JobSheet sheet(String more) {
        return Gardens.sheet("{\"ground\":{\"outline\":[[0,0],[9000,0],[9000,6000],[0,6000]]},"
                + "\"beds\":[{\"id\":\"A\",\"width\":2400,\"depth\":1200,\"courses\":3,\"at\":[3000,2000]}]" + more + "}");
    }

    /** Worked by hand: ten boards of 100 x 200 x 4800 at 600 kg/m3 are 57.6 kg each, 576 kg; 500 take 8, so 8 + 2. */
    @Test
    void tenBoardsOnAVanOfFiveHundredAreEightAndTwo() {
        Load boards = new Load("timber 100x200", "Timber", "board of 4800", 10, OptionalDouble.of(57.6), 0.096, 4800, 100);
        Trips trips = Trips.of(List.of(boards), new Vehicle("van", 500, 5000, 3));
        assertEquals(List.of(Map.of(boards, 8L), Map.of(boards, 2L)), trips.trips().stream().map(Trips.Trip::counts).toList());
        assertTrue(trips.proved());
        assertEquals(460.8, trips.trips().get(0).massKg(), 1e-9);
        Trips shortBed = Trips.of(List.of(boards), new Vehicle("car", 500, 4500, 3));
        assertEquals(List.of(boards), shortBed.tooMuch());
        assertEquals(List.of(), shortBed.trips());
    }

    /** A heap of 3 m3 stands on three places of a bag. */
    @Test
    void aHeapTakesTheRoomOfItsBags() {
        assertEquals(6, load("loose load of 3 m3", 2, 3600, 3).places());
        assertEquals(4, load("bulk bag 0.75 m3", 4, 900, 0.75).places());
    }

    /** 100,000 packs of 2 kg and as many of 1 kg by 500 kg are 600 trips, however many they are. */
    @Test
    void manySmallPacksAreSharedOut() {
        Load twos = new Load("grit", "grit", "two", 100_000, OptionalDouble.of(2), 0.001, 0, 0);
        Load ones = new Load("soil", "soil", "one", 100_000, OptionalDouble.of(1), 0.001, 0, 0);
        Trips trips = Trips.of(List.of(ones, twos), new Vehicle("van", 500, 5000, 3));
        assertEquals(600, trips.trips().size());
        assertTrue(trips.proved());
        assertEquals(Map.of(twos, 250L), trips.trips().get(399).counts());
        assertEquals(Map.of(ones, 500L), trips.trips().get(400).counts());
    }

    /** Seventy bags of 1.6 m3 on 3 m3: no two go together, however little they weigh. */
    @Test
    void whatFillsOverHalfTheRoomGoesAlone() {
        Trips trips = Trips.of(List.of(load("bag", 70, 100, 1.6)), new Vehicle("van", 500, 5000, 3));
        assertEquals(70, trips.trips().size());
        assertTrue(trips.proved(), trips.atLeast() + " at least");
    }

    /** Every way to share a few things out, by brute force. */
    @ParameterizedTest
    @MethodSource("seeds")
    void noFewerTripsHoldAFewThings(long seed) {
        Random random = new Random(seed);
        List<Load> loads = new ArrayList<>();
        for (int i = 0, n = 1 + random.nextInt(8); i < n; i++) {
            loads.add(load("x" + i, 1, 1 + random.nextInt(10), (1 + random.nextInt(10)) / 10.0));
        }
        Trips trips = Trips.of(loads, new Vehicle("v", 12, 1000, 1.2));
        assertEquals(fewest(loads, 0, new ArrayList<>()), trips.trips().size(), "seed " + seed);
        assertTrue(trips.proved(), "seed " + seed);
        assertEquals(loads.size(), trips.trips().stream().mapToInt(trip -> trip.counts().size()).sum());
        for (Trips.Trip trip : trips.trips()) {
            assertTrue(trip.massKg() <= 12 + 1e-9 && trip.volumeM3() <= 1.2 + 1e-9, "seed " + seed);
        }
    }

    private static int fewest(List<Load> loads, int next, List<double[]> trips) {
        if (next == loads.size()) {
            return trips.size();
        }
        Load load = loads.get(next);
        int best = Integer.MAX_VALUE;
        for (int i = 0; i <= trips.size(); i++) {
            List<double[]> more = new ArrayList<>();
            trips.forEach(trip -> more.add(trip.clone()));
            if (i == trips.size()) {
                more.add(new double[2]);
            }
            more.get(i)[0] += load.massKg().getAsDouble();
            more.get(i)[1] += load.volumeM3();
            if (more.get(i)[0] <= 12 + 1e-9 && more.get(i)[1] <= 1.2 + 1e-9) {
                best = Math.min(best, fewest(loads, next + 1, more));
            }
        }
        return best;
    }

    /**
     * The ladder problem of calculus textbooks, from memory: (a^(2/3) + b^(2/3))^(3/2); 8 and 27 feet give 13^1.5 =
     * 46.87, equal passages 2 x sqrt 2. A thing of width w through equal passages a: 2 (a sqrt 2 - w), at 45 degrees.
     */
    @ParameterizedTest(name = "{0} into {1}, {2} across: {3}")
    @CsvSource({"1000,1000,0,2828", "8000,27000,0,46872", "900,900,100,2345", "1000,1000,1000,0", "2000,900,1000,0"})
    void theLongestThingRoundATurnIsThatOfTheLadderProblem(double before, double after, double across, double longest) {
        assertEquals(longest, Passage.longestMm(before, after, across));
    }

    /** 2900 of 100 x 200 at 600 kg/m3 is 34.8 kg: two people at 25; 4800 is 57.6: three; 1700 is 20.4: one. */
    @Test
    void liftsOverTheLimitSayHowManyPeople() {
        JobSheet sheet = sheet(",\"catalogue\":{\"sections\":[{\"id\":\"100x200\",\"thickness\":100,\"height\":200,\"stock\":["
                + "{\"length\":4800,\"price\":36.00}]}]}");
        LoadIn loads = Loads.of(sheet);
        LoadIn.Lift heaviest = loads.lifts().get(0);
        assertEquals(57.6, heaviest.massKg(), 1e-9);
        assertEquals(3, heaviest.people());
        assertEquals(4800, loads.longest().orElseThrow().lengthMm());
        assertTrue(loads.lifts().stream().noneMatch(lift -> lift.load().bulk()));
        double mass = loads.drops().get(0).massKg();
        double boards = sheet.slip().lines().stream().filter(line -> line.item().equals("timber 100x200")).findFirst().orElseThrow()
                .packs().get(0).count() * 57.6;
        assertTrue(mass > boards);
        assertFalse(loads.drops().get(0).massAtLeast(), "every example good has a weight");
    }

    /** Inside 2200 x 1000; soil 600 - 45 - 50 - 50 = 455 deep: 1.001 settled, 1.1776 loose; 60 % is 0.7066: 12 barrows of 60 l. */
    @Test
    void barrowRunsFollowFromTheLooseVolume() {
        LoadIn loads = Loads.of(sheet(""));
        LoadIn.Barrows topsoil = loads.barrows().stream().filter(one -> one.item().equals("soil.topsoil")).findFirst().orElseThrow();
        // 5 % spare more than the 12 barrows that lie in the bed in the end
        assertEquals(13, topsoil.runs());
        assertEquals(13 * 8 / 60.0, topsoil.hours(), 1e-9);
    }

    @Test
    void bagsStandInTheYardClearOfBedsAndOfEachOther() {
        JobSheet sheet = sheet(",\"loadIn\":{\"dropSpot\":[0,0]},\"catalogue\":{" + Gardens.WORKED_BOARDS + "}");
        LoadIn loads = Loads.of(sheet);
        List<Point> places = loads.bagPlaces().orElseThrow();
        assertEquals(loads.bags(), places.size());
        assertTrue(loads.bags() >= 3);
        for (int i = 0; i < places.size(); i++) {
            Point place = places.get(i);
            assertTrue(place.x() >= 500 && place.x() <= 8500 && place.y() >= 500 && place.y() <= 5500, place.toString());
            boolean nearBed = place.x() > 3000 - 1000 && place.x() < 5400 + 1000 && place.y() > 2000 - 1000 && place.y() < 3200 + 1000;
            assertFalse(nearBed, place + " is within 500 of the bed");
            for (int k = 0; k < i; k++) {
                assertTrue(Math.max(Math.abs(place.x() - places.get(k).x()), Math.abs(place.y() - places.get(k).y())) >= 1100);
            }
        }
        assertEquals(new Point(500, 500), places.get(0), "nearest to the drop spot");
        assertTrue(new Outline(List.of(new Point(0, 0), new Point(1, 0), new Point(0, 1))).areaMm2() > 0);
    }

    /** A path of 1200 across the yard, a cover to be kept 300 clear in the corner where goods are dropped, a gate whose leaf of 1500 swings in. */
    @Test
    void bagsStandOffPathsCoversAndTheSweepOfAGate() {
        Garden garden = Gardens.garden("""
                {"ground":{"outline":[[0,0],[6000,0],[6000,6000],[0,6000]],
                 "keepClear":[{"kind":"cover","at":[500,500]},{"kind":"other","at":[500,5500],"clearance":0},{"kind":"gate","hinge":[6000,6000],"leaf":1500}]},
                 "paths":[{"line":[[0,3000],[6000,3000]],"width":1200}],"beds":[]}""");
        List<Point> places = BagPlaces.of(garden, 1000, Optional.of(new Point(0, 0)), 40).orElseThrow();
        assertTrue(places.size() > 8, places.toString());
        for (Point place : places) {
            assertTrue(Math.abs(place.y() - 3000) >= 600 + 500, place + " is on the path");
            assertTrue(past(place, 500, 500) >= 300 - 1, place + " is by the cover");
            assertTrue(past(place, 500, 5500) >= 100 - 1, place + " is by what is kept off by nothing");
            assertTrue(past(place, 6000, 6000) >= 1500 - 1, place + " is in the gate's way");
        }
    }

    /** From a bag of 1000 round this middle to a place. */
    private static double past(Point middle, double x, double y) {
        return Math.hypot(Math.max(0, Math.abs(middle.x() - x) - 500), Math.max(0, Math.abs(middle.y() - y) - 500));
    }

    @Test
    void whatDoesNotGoInIsASnagOfAGardenThatNamesItsWayIn() {
        String way = ",\"loadIn\":{\"vehicle\":{\"name\":\"van\",\"payload\":500,\"bedLength\":2000,\"volume\":3},\"passage\":{\"width\":900,\"turn\":900}}";
        JobSheet sheet = sheet(way);
        List<Finding> snags = sheet.snags().stream().filter(finding -> finding.where().startsWith("delivery")).toList();
        assertTrue(snags.stream().anyMatch(finding -> Told.text(finding).contains("longer than the load bed of the van, which is 2000 mm")), snags.toString());
        assertTrue(snags.stream().anyMatch(finding -> finding.where().equals("delivery, passage") && Told.text(finding).contains("2345 mm goes round")), snags.toString());
        assertTrue(sheet("").snags().stream().noneMatch(finding -> finding.where().startsWith("delivery")));
        // however short, a timber of 100 goes round no turn of 100
        Finding none = sheet(way.replace(":900", ":100")).snags().stream().filter(finding -> finding.where().equals("delivery, passage")).findFirst().orElseThrow();
        assertEquals(List.of(WayKind.OVER_FENCE), none.ways().stream().map(WayOut::kind).toList());
    }
}
