package lapyard.construction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.stream.IntStream;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.geometry.Rectangle;
import lapyard.plan.Base;
import lapyard.plan.Bed;
import lapyard.plan.FindingKind;
import lapyard.plan.Lap;
import lapyard.plan.Liner;
import lapyard.plan.Saw;
import lapyard.working.Quantity;
import org.junit.jupiter.api.Test;

/** Liner cut along other splits and in parts: what a sheet that is parted by laps must be, whatever the bed. */
class LinerWaysTest {
    /** Cut sizes are told to a tenth of a millimetre. */
    private static final double TENTH = 0.05 + 1e-9;

    private static BedWork built(Outline outline, double lapMm, Liner.Over over, Optional<Point> downhill) {
        Liner usual = Liner.USUAL;
        Liner liner = new Liner(true, usual.material(), new Liner.Edges(lapMm, usual.edges().trimMm(), usual.edges().belowRimMm()), usual.slitsPerM2(), usual.staples(), over, usual.turnInMm());
        Bed bed = Beds.bed("X", outline, 3, Lap.TURNING).withInside(new Bed.Inside(Base.USUAL.slatted(true), liner));
        return Beds.work(bed, Saw.USUAL, Beds.LONGEST, Map.of(), downhill, 2400, 25);
    }

    /**
     * By hand: inside 4800 x 1000, rise 600 - 45 - 25 + 50 = 580 (slats and bearers 45, 25 below the rim, 50 to trim). A sheet
     * of 4800 + 2 x 580 = 5960 along takes two parts of at most 4000 with 300 of lap: 6260 in all, so 4000 and 2260 from either end,
     * or 3130 twice.
     */
    @Test
    void aSheetOf5960IsPartedInTwoAsByHand() {
        BedWork work = built(Outline.rectangle(5000, 1200), 300, Liner.Over.FLOOR, Optional.empty());
        assertEquals(List.of(5960.0, 2160.0), List.of(work.liner().get(0).widthMm(), work.liner().get(0).heightMm()));
        List<List<LinerPiece>> ways = LinerWays.divided(work, work.liner(), 0, List.of(4000.0), Optional.empty());
        assertEquals(List.of(List.of(4000.0, 2260.0), List.of(2260.0, 4000.0), List.of(3130.0, 3130.0)),
                ways.stream().map(way -> way.stream().map(LinerPiece::widthMm).toList()).toList());
        assertEquals(List.of("X-R1a", "X-R1b"), ways.get(0).stream().map(LinerPiece::id).toList());
        assertEquals(new Rectangle(100, 100, 3420, 1000), ways.get(0).get(0).floor(), "4000 less the rise at its end, under the next by the lap");
        List<List<LinerPiece>> narrow = LinerWays.divided(work, work.liner(), 0, List.of(1300.0), Optional.empty());
        assertTrue(narrow.stream().anyMatch(way -> way.stream().map(LinerPiece::heightMm).toList().equals(List.of(1230.0, 1230.0))), "across the narrow way too");
    }

    @Test
    void whatNoRollCanLapIsNotDivided() {
        BedWork work = built(Outline.rectangle(5000, 1200), 300, Liner.Over.FLOOR, Optional.empty());
        assertEquals(List.of(), LinerWays.divided(work, work.liner(), 0, List.of(300.0), Optional.empty()), "a roll no wider than the lap");
        assertEquals(List.of(), LinerWays.divided(work, work.liner(), 0, List.of(), Optional.empty()));
        assertEquals(List.of(), LinerWays.divided(work, work.liner(), 0, List.of(6000.0), Optional.empty()), "it is on one roll already");
        // (5960 - 300) / (1007.5 - 300) = 8 exactly, the most that are made; a millimetre less takes nine
        assertFalse(along(LinerWays.divided(work, work.liner(), 0, List.of(1007.5), Optional.empty())).isEmpty());
        assertTrue(along(LinerWays.divided(work, work.liner(), 0, List.of(1006.5), Optional.empty())).isEmpty());
    }

    private static List<List<LinerPiece>> along(List<List<LinerPiece>> ways) {
        return ways.stream().filter(way -> way.get(0).heightMm() > 2000).toList();
    }

    record Case(long seed, BedWork work, int index, List<Double> limits, double lap, Optional<Point> downhill) {}

    private static final List<Case> CASES = IntStream.range(0, 120).mapToObj(LinerWaysTest::given).toList();

    private static Case given(int seed) {

        Random random = new Random(seed);
        Outline outline = switch (random.nextInt(3)) {
            case 0 -> Beds.M;
            case 1 -> Beds.U;
            default -> Outline.rectangle(1500 + random.nextInt(6000), 700 + random.nextInt(2500));
        };
        double lap = 100 + random.nextInt(300);
        Optional<Point> downhill = random.nextInt(3) == 0 ? Optional.empty()
                : Optional.of(new Point(random.nextDouble() - 0.5, random.nextDouble() - 0.5));
        BedWork work = built(outline, lap, Liner.Over.FLOOR, downhill);
        List<Double> limits = random.doubles(1 + random.nextInt(3), 900, 3000).map(Math::rint).boxed().toList();
        return new Case(seed, work, random.nextInt(work.liner().size()), limits, lap, downhill);
    }

    /** Parts tile the floor of the whole, none between others is over every limit, and lengths are the whole and one lap a seam. */
    @Test
    void partsOfASheetAreTheSheetWithALapASeam() {
        CASES.forEach(LinerWaysTest::partsAreTheSheet);
    }

    private static void partsAreTheSheet(Case given) {
        LinerPiece whole = given.work().liner().get(given.index());
        double widest = given.limits().stream().mapToDouble(mm -> mm).max().orElseThrow();
        List<List<LinerPiece>> ways = LinerWays.divided(given.work(), given.work().liner(), given.index(), given.limits(), given.downhill());
        assertEquals(ways.size(), new HashSet<>(ways).size(), "each way once");
        for (List<LinerPiece> way : ways) {
            int count = way.size() - given.work().liner().size() + 1;
            List<LinerPiece> parts = way.subList(given.index(), given.index() + count);
            boolean across = parts.get(0).heightMm() == whole.heightMm() && parts.get(0).floor().depthMm() == whole.floor().depthMm();
            double size = across ? whole.widthMm() : whole.heightMm();
            double sum = 0;
            double at = across ? whole.floor().x() : whole.floor().y();
            for (LinerPiece part : parts) {
                double cut = across ? part.widthMm() : part.heightMm();
                boolean end = part == parts.get(0) || part == parts.get(count - 1); // an end may run along a roll
                assertTrue(end || cut <= widest + TENTH, () -> cut + " of " + way);
                sum += cut;
                assertEquals(across ? whole.heightMm() : whole.widthMm(), across ? part.heightMm() : part.widthMm(), "the other way it is as it was");
                Rectangle floor = part.floor();
                assertEquals(at, across ? floor.x() : floor.y(), 1e-6, "each begins where the one before ends");
                at = across ? floor.right() : floor.top();
                assertTrue((across ? floor.widthMm() : floor.depthMm()) >= given.lap() - 1e-5, "its floor carries the lap");
                assertEquals(across ? whole.floor().y() : whole.floor().x(), across ? floor.y() : floor.x());
            }
            assertEquals(across ? whole.floor().right() : whole.floor().top(), at, 1e-6, "the last ends where the whole does");
            assertEquals(size + (count - 1) * given.lap(), sum, count * TENTH, () -> "seed " + given.seed() + ": " + way);
            assertTrue((count - 1) * (widest - given.lap()) + given.lap() < size + 1e-6, "one part fewer would not do");
            List<LinerPiece> rest = new ArrayList<>(way);
            rest.removeAll(parts);
            assertEquals(given.work().liner().stream().filter(piece -> !piece.id().equals(whole.id())).map(LinerPiece::floor).toList(), rest.stream().map(LinerPiece::floor).toList());
            layingRunsUphill(way, given.downhill());
        }
    }

    /** Water runs off the upper sheet onto the lower one: the lower is laid first. */
    private static void layingRunsUphill(List<LinerPiece> way, Optional<Point> downhill) {
        List<LinerPiece> laid = way.stream().sorted(Comparator.comparingInt(LinerPiece::layingOrder)).toList();
        assertEquals(IntStream.rangeClosed(1, way.size()).boxed().toList(), laid.stream().map(LinerPiece::layingOrder).toList());
        if (downhill.isEmpty()) return;
        double[] down = laid.stream().mapToDouble(piece -> lowest(piece.floor(), downhill.get())).toArray();
        for (int i = 1; i < down.length; i++) assertTrue(down[i] <= down[i - 1] + 1e-6, () -> "laid uphill: " + laid);
    }

    private static double lowest(Rectangle floor, Point downhill) {
        return downhill.x() * (floor.x() + floor.widthMm() / 2) + downhill.y() * (floor.y() + floor.depthMm() / 2);
    }

    /** The seam that sheds water stands first: across the fall. */
    @Test
    void aSeamAcrossTheFallStandsFirst() {
        CASES.forEach(LinerWaysTest::seamAcrossTheFallStandsFirst);
    }

    private static void seamAcrossTheFallStandsFirst(Case given) {
        List<List<LinerPiece>> ways = LinerWays.divided(given.work(), given.work().liner(), given.index(), given.limits(), given.downhill());
        LinerPiece whole = given.work().liner().get(given.index());
        boolean alongX = given.downhill().map(toward -> Math.abs(toward.x()) >= Math.abs(toward.y())).orElse(true);
        OptionalInt firstOther = IntStream.range(0, ways.size()).filter(i -> dividedAlongX(ways.get(i).get(given.index()), whole) != alongX).findFirst();
        OptionalInt lastSame = IntStream.range(0, ways.size()).filter(i -> dividedAlongX(ways.get(i).get(given.index()), whole) == alongX).reduce((a, b) -> b);
        if (firstOther.isPresent() && lastSame.isPresent()) assertTrue(lastSame.getAsInt() < firstOther.getAsInt());
    }

    private static boolean dividedAlongX(LinerPiece part, LinerPiece whole) {
        return part.floor().widthMm() < whole.floor().widthMm();
    }

    /** Other splits cover the same floor in as many rectangles, the least liner first. */
    @Test
    void otherSplitsCoverTheSameFloorWithTheLeastLinerFirst() {
        for (Outline outline : List.of(Beds.M, Beds.U)) {
            BedWork work = built(outline, 300, Liner.Over.FLOOR, Beds.TO_REAR);
            List<List<LinerPiece>> others = LinerWays.otherSplits(work, Beds.TO_REAR);
            assertFalse(others.isEmpty());
            double last = 0;
            for (List<LinerPiece> other : others) {
                assertEquals(work.liner().size(), other.size());
                assertNotEquals(work.bottom().floor(), other.stream().map(LinerPiece::floor).toList());
                assertEquals(work.frame().inner().areaMm2(), other.stream().mapToDouble(piece -> piece.floor().areaMm2()).sum(), 1);
                double area = other.stream().mapToDouble(piece -> piece.widthMm() * piece.heightMm()).sum();
                assertTrue(area >= last - 1000, () -> area + " after more");
                last = area;
                assertTrue(other.get(0).id().endsWith("-L1"), other::toString);
                layingRunsUphill(other, Beds.TO_REAR);
            }
        }
        assertEquals(List.of(), LinerWays.otherSplits(built(Beds.N, 300, Liner.Over.FLOOR, Optional.empty()), Optional.empty()), "one rectangle has one split");
        assertEquals(List.of(), LinerWays.otherSplits(built(Beds.M, 300, Liner.Over.WALLS, Optional.empty()), Optional.empty()), "walls have none");
    }

    /** 4800 on the longest wall in strips of at most 2000 with 300 of lap: three of (4800 + 600) / 3 = 1800. */
    @Test
    void aStripOnAWallIsPartedEquallyAndOnlyAlong() {
        BedWork work = built(Outline.rectangle(5000, 1200), 300, Liner.Over.WALLS, Optional.empty());
        LinerPiece strip = work.liner().get(0);
        assertEquals(4800, strip.widthMm() - (strip.widthMm() - strip.floor().widthMm()));
        double each = Math.round((strip.widthMm() + 600) / 3 * 10) / 10.0;
        List<List<LinerPiece>> ways = LinerWays.divided(work, work.liner(), 0, List.of(2100.0, 900.0), Optional.empty());
        assertEquals(1, ways.size());
        List<LinerPiece> parts = ways.get(0).subList(0, 3);
        parts.forEach(part -> assertEquals(List.of(each, strip.heightMm(), strip.wall()), List.of(part.widthMm(), part.heightMm(), part.wall())));
        parts.forEach(part -> assertEquals(new Rectangle(0, 0, each - 300, strip.floor().depthMm()), part.floor()));
        assertEquals(List.of(strip.id() + "a", strip.id() + "b", strip.id() + "c"), parts.stream().map(LinerPiece::id).toList());
        assertEquals(List.of(), LinerWays.divided(work, work.liner(), 0, List.of(strip.widthMm()), Optional.empty()));
        assertEquals(List.of(), LinerWays.divided(work, work.liner(), 0, List.of(300.0), Optional.empty()));
        assertEquals(List.of(), LinerWays.divided(work, work.liner(), 0, List.of(850.0), Optional.empty()), "nine parts are too many");
    }

    /** A bed lined another way takes that liner's quantities in the old one's place, and all others as they were. */
    @Test
    void aBedLinedAnotherWayHasThatLinersQuantitiesAlone() {
        BedWork work = built(Outline.rectangle(5000, 1200), 120, Liner.Over.FLOOR, Optional.empty());
        List<LinerPiece> parts = LinerWays.divided(work, work.liner(), 0, List.of(4000.0), Optional.empty()).get(0);
        BedWork lined = LinerWays.lined(work, parts);
        assertEquals(parts, lined.liner());
        double area = parts.stream().mapToDouble(part -> part.widthMm() * part.heightMm()).sum() / 1e6;
        assertEquals(area, Beds.value(lined.quantities(), "liner.area"), 1e-9);
        List<Quantity> before = work.quantities().stream().filter(quantity -> !quantity.key().toString().startsWith("liner")).toList();
        assertEquals(before, lined.quantities().stream().filter(quantity -> !quantity.key().toString().startsWith("liner")).toList());
        assertEquals(place(work), place(lined), "they stand where they stood");
        assertEquals(work.quantities().size() + 1, lined.quantities().size(), "one piece more, and nothing twice");
        assertTrue(work.findings().stream().noneMatch(finding -> finding.kind() == FindingKind.LINER_LAP), "one sheet has no lap");
        assertEquals(1, lined.findings().stream().filter(finding -> finding.kind() == FindingKind.LINER_LAP).count(), "a lap of 120 is under 150");
        assertEquals(work.findings(), LinerWays.lined(work, work.liner()).findings());
    }

    private static int place(BedWork work) {
        return IntStream.range(0, work.quantities().size()).filter(i -> work.quantities().get(i).key().toString().startsWith("liner")).findFirst().orElseThrow();
    }
}
