package lapyard.layout;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import java.util.stream.LongStream;
import lapyard.geometry.Jts;
import lapyard.geometry.Point;
import lapyard.ground.AccessSheet;
import lapyard.ground.SunHours;
import lapyard.job.Gardens;
import lapyard.job.Job;
import lapyard.job.JobSheet;
import lapyard.job.SearchMemory;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.Garden;
import lapyard.plan.GardenPath;
import lapyard.plan.LayoutWishes;
import lapyard.plan.LayoutWishes.Merit;
import lapyard.plan.Wish;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

/** Judged on yards whose best number is known, by what must hold in any yard, and against the samples as a person laid them out. */
class LayOutTest {
    private static final List<Merit> RANKING = LayoutWishes.NONE.ranking();

    private static LaidOut fill(Garden garden, double pathMm, double marginMm) {
        Wish many = new Wish(garden.beds().get(0), 0, Wish.AS_MANY_AS_FIT);
        return LayOut.of(garden, new LayoutWishes(List.of(many), Set.of(), pathMm, marginMm, RANKING), 300, lapyard.working.Progress.UNHEARD, new SearchMemory(20_000_000));
    }

    /**
     * Beds of 2400 x 1200 as boxes with a path: 3300 x 2100 in 12900 x 9900 at a path of 900, 3600 x 2400 in 10800 x 7800
     * with 1200 all round; the numbers are the best by a five-block recursion and by the bound on their area.
     *
     * @see "Martins and Dell, Solving the pallet loading problem, European Journal of Operational Research 184 (2008) 429-440"
     */
    @ParameterizedTest
    @CsvSource({"900, 0, 18", "1200, 1200, 9"})
    void aYardOfTwelveByNineMetresHoldsItsBestNumber(double pathMm, double marginMm, int best) {
        Garden garden = Gardens.garden("""
                {"ground":{"outline":[[0,0],[12000,0],[12000,9000],[0,9000]],"access":{"path":900,"reach":1200,"turning":0}},
                 "beds":[{"width":2400,"depth":1200}]}""");
        LaidOut laid = fill(garden, pathMm, marginMm);
        assertEquals(best, laid.proposals().get(0).figures().beds());
        assertEquals(best, laid.mostBeds());
        assertTrue(laid.proposals().size() >= 3, laid.proposals().size() + " proposals");
        laid.proposals().forEach(one -> stands(one, pathMm));
    }

    /** Where a machine writes digits of its own, codes of beds are in ours: over 26 they are numbers. */
    @Test
    void codesOfManyBedsAreNumbersThatEverybodyReads() {
        Locale before = Locale.getDefault();
        Locale.setDefault(Locale.forLanguageTag("ar-EG"));
        try {
            Garden garden = Gardens.garden("""
                    {"ground":{"outline":[[0,0],[14000,0],[14000,7000],[0,7000]],"access":{"path":600,"reach":1200,"turning":0,"stand":300}},
                     "beds":[{"width":1200,"depth":1000,"courses":1}]}""");
            Wish many = new Wish(garden.beds().get(0), 0, Wish.AS_MANY_AS_FIT);
            List<Bed> beds = LayOut.of(garden, new LayoutWishes(List.of(many), Set.of(), 600, 0, RANKING), 0, lapyard.working.Progress.UNHEARD, new SearchMemory(20_000_000))
                    .proposals().get(0).garden().beds();
            assertTrue(beds.size() > 26, beds.size() + " beds");
            assertTrue(beds.stream().allMatch(bed -> bed.id().matches("[0-9]{2}")), () -> beds.stream().map(Bed::id).toList().toString());
        } finally {
            Locale.setDefault(before);
        }
    }

    /** Sides at 110 and at 75 degrees to the wall, the one at 75 a little shorter: a proposal follows it too. */
    @Test
    void rowsFollowASecondSlantedSide() {
        Garden garden = Gardens.garden("""
                {"ground":{"outline":[[0,0],[15000,0],[10500,12364],[3313,12364]],"access":{"path":900,"reach":1200,"turning":0}},
                 "beds":[{"width":2400,"depth":1200}]}""");
        LaidOut laid = fill(garden, 900, 0);
        Set<Double> turns = new HashSet<>();
        laid.proposals().forEach(one -> {
            stands(one, 900);
            one.garden().beds().forEach(bed -> turns.add(Math.round(((bed.placement().turnDeg() % 90) + 90) % 90) + 0.0));
        });
        assertTrue(turns.contains(75.0), turns + " of " + laid.proposals().stream().map(one -> one.order() + " " + one.figures().beds()).toList());
    }

    static LongStream seeds() {
        return LongStream.rangeClosed(11, 14);
    }

    /** A yard cut to fit: rows and columns of beds with paths between and room to stand round them fill it to the last millimetre. */
    @ParameterizedTest
    @MethodSource("seeds")
    void rectanglesThatFitExactlyAreAllFound(long seed) {
        Random random = new Random(seed);
        int w = 1500 + 100 * random.nextInt(15);
        int d = 900 + 100 * random.nextInt(4);
        int path = 900 + 100 * random.nextInt(4);
        int across = 2 + random.nextInt(3);
        int deep = 2 + random.nextInt(3);
        int width = across * (w + path) - path;
        int depth = deep * (d + path) - path + 1200;
        Garden garden = Gardens.garden(("{\"ground\":{\"outline\":[[0,0],[%d,0],[%d,%d],[0,%d]],\"access\":{\"path\":%d,\"turning\":0}},"
                + "\"beds\":[{\"width\":%d,\"depth\":%d}]}").formatted(width, width, depth, depth, path, w, d));
        LaidOut laid = fill(garden, path, 0);
        int found = laid.proposals().get(0).figures().beds();
        assertTrue(found >= across * deep, "seed " + seed + ": " + found + " of " + across * deep);
        assertTrue(found <= laid.mostBeds(), "seed " + seed + ": " + found + " over the bound of " + laid.mostBeds());
        laid.proposals().forEach(one -> stands(one, path));
    }

    @ParameterizedTest
    @ValueSource(strings = {"chapel-corner", "lock-keepers-yard", "school-courtyard"})
    void aSampleHoldsNotFewerBedsThanAPersonPutThereNorLessSun(String sample) throws IOException {
        Garden garden = Gardens.garden(Gardens.text(sample));
        LaidOut laid = LayOut.of(garden, LayoutWishes.NONE, 300, lapyard.working.Progress.UNHEARD, new SearchMemory(20_000_000));
        assertTrue(laid.proposals().size() >= 3, laid.proposals().size() + " proposals");
        Proposal best = laid.proposals().get(0);
        assertEquals(garden.beds().size(), best.figures().beds());
        assertEquals(0, laid.shortOf());
        JobSheet person = Job.prepare(garden);
        double sun = SunHours.of(person.garden(), person.ground().fall())
                .map(hours -> hours.beds().stream().mapToDouble(SunHours.BedSun::meanHours).average().orElse(0)).orElse(0.0);
        double most = laid.proposals().stream().filter(one -> one.figures().beds() >= garden.beds().size())
                .mapToDouble(one -> one.figures().sunHours()).max().orElse(0);
        assertTrue(most >= sun - 0.05, sample + ": " + most + " hours, a person had " + sun);
        long beaten = laid.proposals().stream().filter(one -> laid.proposals().stream().anyMatch(other -> nowhereWorse(other, one))).count();
        assertTrue(beaten == 0 || laid.proposals().size() <= 3, beaten + " are beaten, of " + laid.proposals().size());
        for (int i = 0; i < laid.proposals().size(); i++) {
            stands(laid.proposals().get(i), garden.ground().access().walking().pathMm());
            for (int j = 0; j < i; j++) {
                assertTrue(LayOut.CoveredGrid.of(laid.proposals().get(i).garden()).differs(LayOut.CoveredGrid.of(laid.proposals().get(j).garden())) >= 0.25, "they look the same");
            }
        }
    }

    /**
     * By hand: arms of 1200 in a box of 3000; turned by half, the second stands 300 to the right and 2100 behind the first, a path
     * of 900 between all their walls, so both take 3300 x 5100 and with a path round them 5100 x 6900. Box by box they take 6900.
     */
    @Test
    void twoBedsWithInsideCornersTakeUpEachOther() {
        Garden garden = Gardens.garden("""
                {"ground":{"outline":[[0,0],[5100,0],[5100,6900],[0,6900]],"access":{"path":900,"turning":0}},
                 "beds":[{"outline":[[0,0],[3000,0],[3000,1200],[1200,1200],[1200,3000],[0,3000]]}]}""");
        LaidOut laid = fill(garden, 900, 0);
        assertEquals(2, laid.proposals().get(0).figures().beds());
        laid.proposals().forEach(one -> stands(one, 900));
    }

    /**
     * By hand: right-angled triangles of 3600 x 2400, the long sides turned to each other. The second, turned by half, stands behind
     * the first's slanted side at a path of 900: along x the slanted side takes 900 / (2400 / 4326.7) = 1623, so both lie in 3600 + 1623
     * = 5223 and, as slabs of 200 have steps of 300, in 5523 x 2400. Box by box they take 3600 + 900 + 3600 = 8100, or 5700 in depth.
     */
    @Test
    void twoBedsWithSlantedSidesTakeUpEachOther() {
        Garden garden = Gardens.garden("""
                {"ground":{"outline":[[0,0],[7600,0],[7600,4300],[0,4300]],"access":{"path":900,"turning":0}},
                 "beds":[{"outline":[[0,0],[3600,0],[0,2400]]}]}""");
        LaidOut laid = fill(garden, 900, 0);
        assertEquals(2, laid.proposals().get(0).figures().beds(), () -> laid.proposals().stream().map(one -> one.order() + " " + one.figures().beds()).toList().toString());
        laid.proposals().forEach(one -> stands(one, 900));
    }

    /** The rectangles of a slanted bed cover it, reach nowhere further than a slab's step beyond it, and touch its box on all sides. */
    @Test
    void rectanglesCoverASlantedOutline() {
        Garden garden = Gardens.garden("{\"beds\":[{\"outline\":[[0,0],[2400,0],[3000,900],[1800,2000],[300,1500]]}]}");
        for (BoxedBed kind : BoxedBed.all(0, garden.beds().get(0))) {
            List<Point> own = kind.bed().outline().corners().stream().map(corner -> corner.turned(90 * kind.quarters())).toList();
            double left = Jts.box(own).getMinX();
            double front = Jts.box(own).getMinY();
            double area = 0;
            for (BoxedBed.Part part : kind.parts()) area += part.w() * part.d();
            for (double x = 5; x < kind.w(); x += 10) {
                for (double y = 5; y < kind.d(); y += 10) {
                    Point at = new Point(x, y);
                    boolean covered = kind.parts().stream().anyMatch(part -> at.x() >= part.x() && at.x() <= part.x() + part.w() && at.y() >= part.y() && at.y() <= part.y() + part.d());
                    assertTrue(covered || !new Point(x + left, y + front).within(own), () -> kind.quarters() + " turns: " + at);
                }
            }
            double bed = kind.bed().outline().areaMm2();
            assertTrue(area >= bed && area <= bed * 1.15, area + " over " + bed);
            assertEquals(kind.w(), kind.parts().stream().mapToDouble(part -> part.x() + part.w()).max().orElse(0), 0.1);
            assertEquals(kind.d(), kind.parts().stream().mapToDouble(part -> part.y() + part.d()).max().orElse(0), 0.1);
        }
    }

    @Test
    void stoppedItTellsWhatWasLaidOutByThen() {
        Garden garden = Gardens.garden("""
                {"ground":{"outline":[[0,0],[12000,0],[12000,9000],[0,9000]]},"beds":[{"width":2400,"depth":1200}]}""");
        LayoutWishes wishes = new LayoutWishes(List.of(new Wish(garden.beds().get(0), 0, Wish.AS_MANY_AS_FIT)), Set.of(), 0, 0, RANKING);
        List<String> heard = new ArrayList<>();
        try {
            LaidOut laid = LayOut.of(garden, wishes, 300, (best, bound) -> {
                heard.add(best + " of " + bound);
                if (heard.size() == 2) Thread.currentThread().interrupt();
            }, new SearchMemory(20_000_000));
            assertEquals(1, laid.proposals().size());
            assertFalse(laid.complete());
        } finally {
            Thread.interrupted();
        }
        assertEquals(2, heard.size());
        assertTrue(heard.get(1).matches("[1-9][0-9]* of [1-9][0-9]*"), heard.get(1));
        LaidOut none = LayOut.of(garden, wishes, 0, lapyard.working.Progress.UNHEARD, new SearchMemory(20_000_000));
        assertEquals(1, none.proposals().size(), "one order is laid out, however short");
    }

    @Test
    void pinnedBedsStayAndTheRestIsLaidRoundThem() {
        Garden garden = Gardens.garden("""
                {"ground":{"outline":[[0,0],[12000,0],[12000,9000],[0,9000]],"keepClear":[{"kind":"gate","hinge":[0,4000],"leaf":1000,"closed":90}]},
                 "beds":[{"id":"X","width":2400,"depth":1200,"at":[5000,4000]},{"id":"B","width":1800,"depth":900,"at":[600,600]}]}""");
        Wish three = new Wish(garden.beds().get(1), 3, 5);
        LaidOut laid = LayOut.of(garden, new LayoutWishes(List.of(three), Set.of("X"), 0, 0, RANKING), 300, lapyard.working.Progress.UNHEARD, new SearchMemory(20_000_000));
        assertTrue(laid.proposals().size() >= 3);
        for (Proposal one : laid.proposals()) {
            assertEquals(garden.beds().get(0).inYard(), one.garden().beds().get(0).inYard());
            assertTrue(one.figures().beds() >= 4 && one.figures().beds() <= 6, one.figures().toString());
            stands(one, 1200);
        }
    }

    private static boolean nowhereWorse(Proposal other, Proposal one) {
        return other != one && Arrays.stream(Merit.values()).allMatch(what -> other.figures().worth(what) >= one.figures().worth(what))
                && Arrays.stream(Merit.values()).anyMatch(what -> other.figures().worth(what) > one.figures().worth(what) + 0.1);
    }

    @Test
    void whatDoesNotFitIsCounted() {
        Garden garden = Gardens.garden("""
                {"ground":{"outline":[[0,0],[6000,0],[6000,4000],[0,4000]]},"beds":[{"width":2400,"depth":1200}]}""");
        LaidOut laid = LayOut.of(garden, new LayoutWishes(List.of(new Wish(garden.beds().get(0), 9, 9)), Set.of(), 0, 0, RANKING),
                300, lapyard.working.Progress.UNHEARD, new SearchMemory(20_000_000));
        assertTrue(laid.shortOf() >= 9 - laid.mostBeds());
        assertTrue(laid.mostBeds() < 9);
        Garden stays = Gardens.garden("""
                {"ground":{"outline":[[0,0],[9000,0],[9000,6000],[0,6000]]},"beds":[{"id":"X","width":2400,"depth":1200,"at":[3000,2400]}]}""");
        LaidOut pinned = LayOut.of(stays, new LayoutWishes(List.of(new Wish(stays.beds().get(0), 20, 20)), Set.of("X"), 0, 0, RANKING),
                300, lapyard.working.Progress.UNHEARD, new SearchMemory(20_000_000));
        assertEquals(20 - (pinned.proposals().stream().mapToInt(one -> one.figures().beds()).max().orElseThrow() - 1), pinned.shortOf(), "the pinned bed is none of the nine");
        assertThrows(IllegalArgumentException.class, () -> LayOut.of(
                Gardens.garden("{\"beds\":[{\"width\":2400,\"depth\":1200}]}"), LayoutWishes.NONE, 300, lapyard.working.Progress.UNHEARD, new SearchMemory(1_000_000)), "no yard");
    }

    /**
     * In a strip of 3000 x 14000 with the gate at its foot the way to a bed is nearly straight: there and back for each barrow, from the
     * tap to the furthest bed. Timber of 100 leaves the inside 200 less each way.
     */
    @Test
    void figuresOfAProposalAreThoseOfItsBeds() {
        Garden garden = Gardens.garden("""
                {"ground":{"outline":[[0,0],[3000,0],[3000,14000],[0,14000]],"access":{"path":900,"reach":1200,"turning":0},
                  "keepClear":[{"kind":"gate","hinge":[1000,0],"leaf":1000,"closed":0},{"kind":"tap","at":[1500,300]}]},
                 "beds":[{"width":2000,"depth":1100}]}""");
        Wish several = new Wish(garden.beds().get(0), 2, 4);
        LaidOut laid = LayOut.of(garden, new LayoutWishes(List.of(several), Set.of(), 900, 0, RANKING), 300, lapyard.working.Progress.UNHEARD,
                new SearchMemory(20_000_000));
        assertTrue(laid.proposals().size() > 1, laid.orders()::toString);
        for (Proposal one : laid.proposals()) {
            double barrow = 0;
            double furthest = 0;
            double loads = 0;
            for (int i = 0; i < one.garden().beds().size(); i++) {
                double fromGate = one.garden().beds().get(i).inYard().corners().stream().mapToDouble(Point::y).min().orElseThrow() / 1000;
                double own = lapyard.working.Quantity.sum(one.sheet().beds().get(i).quantities(), lapyard.working.QuantityKind.BARROWS);
                barrow += 2 * own * fromGate;
                loads += own;
                furthest = Math.max(furthest, fromGate);
            }
            assertEquals(one.garden().beds().size() * 1.8 * 0.9, one.figures().plantingM2(), 0.01);
            assertEquals(barrow, one.figures().barrowM(), 2 * loads * 2.0, one.order());
            assertEquals(furthest, one.figures().hoseM(), 2.0, one.order());
            assertTrue(furthest > 4.5, "the furthest bed is far enough to tell one way from two");
        }
    }

    /** What the person says matters most stands first, whatever that is. */
    @ParameterizedTest
    @EnumSource(value = Merit.class, names = {"BARROW", "PATHS", "BEDS"})
    void proposalsAreRankedByWhatCounts(Merit what) {
        Garden garden = Gardens.garden("""
                {"ground":{"outline":[[0,0],[9000,0],[9000,7000],[0,7000]],"keepClear":[{"kind":"gate","hinge":[9000,5000],"leaf":1000,"closed":90}]},
                 "beds":[{"width":2000,"depth":1100}]}""");
        List<Double> worth = LayOut.of(garden, new LayoutWishes(List.of(new Wish(garden.beds().get(0), 0, Wish.AS_MANY_AS_FIT)), Set.of(), 0, 0, List.of(what)), 300,
                lapyard.working.Progress.UNHEARD, new SearchMemory(20_000_000)).proposals().stream().map(one -> one.figures().worth(what)).toList();
        assertTrue(worth.size() > 2, worth::toString);
        for (int i = 1; i < worth.size(); i++) assertTrue(worth.get(i - 1) >= worth.get(i) - 0.01, worth::toString);
    }

    /** Clashes, clearances, standard and reach; every bed beside a path of its width, all paths one network from the gate on. */
    private static void stands(Proposal one, double pathMm) {
        Garden garden = one.garden();
        assertEquals(List.of(), Job.stops(garden));
        JobSheet sheet = Job.prepare(garden);
        for (Finding finding : sheet.ground().findings()) {
            assertFalse(finding.weight() != Finding.Weight.NOTE && finding.where().startsWith("bed")
                    && !sheet.ground().access().findings().contains(finding), finding::toString);
        }
        for (AccessSheet.Row row : sheet.ground().access().rows()) {
            assertFalse(row.missing() > 0 && Set.of("gap", "width", "narrowest", "turning").contains(row.what().words), () -> one.order() + ": " + row);
        }
        List<List<Point>> strips = garden.paths().stream().map(LayOutTest::strip).toList();
        assertTrue(garden.paths().stream().allMatch(path -> path.widthMm() >= pathMm));
        Set<Integer> connected = new HashSet<>(Set.of(0));
        for (boolean more = true; more; ) {
            more = false;
            for (int i = 0; i < strips.size(); i++) {
                for (int j : List.copyOf(connected)) {
                    if (!connected.contains(i) && touch(strips.get(i), strips.get(j))) more |= connected.add(i);
                }
            }
        }
        assertEquals(strips.size(), connected.size(), () -> one.order() + ": paths in parts");
        for (Bed bed : garden.beds()) {
            assertTrue(strips.stream().anyMatch(strip -> touch(bed.inYard().corners(), strip)), () -> one.order() + ": no path to bed " + bed.id());
        }
    }

    private static List<Point> strip(GardenPath path) {
        Point a = path.line().get(0);
        Point b = path.line().get(1);
        double length = a.distanceMm(b);
        double x = (b.x() - a.x()) / length * path.widthMm() / 2;
        double y = (b.y() - a.y()) / length * path.widthMm() / 2;
        return List.of(new Point(a.x() + y, a.y() - x), new Point(b.x() + y, b.y() - x), new Point(b.x() - y, b.y() + x), new Point(a.x() - y, a.y() + x));
    }

    /** Whether two outlines come within 2 mm, by walking round both. */
    private static boolean touch(List<Point> one, List<Point> other) {
        return near(one, other) || near(other, one);
    }

    private static boolean near(List<Point> one, List<Point> other) {
        for (int i = 0; i < one.size(); i++) {
            Point a = one.get(i);
            Point b = one.get((i + 1) % one.size());
            int steps = (int) Math.ceil(a.distanceMm(b) / 20) + 1;
            for (int s = 0; s <= steps; s++) {
                Point at = new Point(a.x() + (b.x() - a.x()) * s / steps, a.y() + (b.y() - a.y()) * s / steps);
                if (at.within(other)) return true;
                for (int j = 0; j < other.size(); j++) {
                    Point c = other.get(j);
                    Point d = other.get((j + 1) % other.size());
                    double length = c.distanceMm(d);
                    double t = Math.max(0, Math.min(1, ((at.x() - c.x()) * (d.x() - c.x()) + (at.y() - c.y()) * (d.y() - c.y())) / (length * length)));
                    if (at.distanceMm(new Point(c.x() + t * (d.x() - c.x()), c.y() + t * (d.y() - c.y()))) <= 2) return true;
                }
            }
        }
        return false;
    }
}
