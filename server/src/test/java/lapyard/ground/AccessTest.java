package lapyard.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import lapyard.geometry.Outline;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Told;
import lapyard.plan.WayKind;
import lapyard.plan.WayOut;
import lapyard.plan.KeepClearKind;
import lapyard.plan.Ground.KeepClear;
import lapyard.plan.Ground;
import lapyard.plan.Garden;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.algorithm.construct.LargestEmptyCircle;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineSegment;

class AccessTest {
    private static List<Finding> notes(Bed... beds) {
        return Clashes.of(Beds.garden(Beds.yard(null), beds));
    }

    private static double reach(List<Finding> found, String bed) {
        return Beds.about(found, bed, FindingKind.REACH_FAR).map(one -> ((Fact.Length) one.facts().get("reach")).mm()).orElse(0.0);
    }

    /** Worked by hand for the L bed: the largest circle touches walls A and F and the inside corner. */
    @Test
    void theLReachedAllRoundNeeds976() {
        List<Finding> found = notes(Beds.bed("M", Beds.L, 0, 0));
        assertEquals(976, reach(found, "bed M"), 1);
        Finding note = Beds.about(found, "bed M", FindingKind.REACH_FAR).orElseThrow();
        assertEquals(Finding.Weight.NOTE, note.weight());
        assertEquals(376, note.amount().orElseThrow().value(), 1);
    }

    /** Worked by hand: with E and F against fences the corner between them is 1800 less the wall from D. */
    @Test
    void theLAgainstTwoFencesNeeds1700() {
        assertEquals(1700, reach(notes(Beds.bed("M", Beds.L, 0, 0, "E", "F")), "bed M"), 1);
        Bed turned = Beds.bed("M", Beds.L, new Placement(new Point(5000, 800), 37, true), "E", "F");
        assertEquals(1700, reach(notes(turned), "bed M"), 1);
        assertEquals(1700, reachRow(Beds.bed("M", Beds.L, 0, 0, "E", "F")).measured(), 1e-9, "exactly in its corner");
    }

    /** Half the width all round, the width less the far wall from one side; common practice is 600 from a side. */
    @ParameterizedTest(name = "{0} x {1} hiding {2} needs {3}")
    @CsvSource({
        "2400,1200,'',0",
        "2400,1300,'',650",
        "2400,1200,C,1100",
        "2400,700,ABD,0",
        "2400,900,ABD,800",
        "900,2400,B,800"
    })
    void aBoxNeedsHalfItsWidthOrAllOfIt(double width, double depth, String hidden, double needed) {
        List<Finding> found = notes(Beds.bed(
                "M", Outline.rectangle(width, depth), 0, 0, hidden.isEmpty() ? new String[0] : hidden.split("")));
        assertEquals(needed, reach(found, "bed M"), 1);
        assertEquals(!hidden.isEmpty() && needed > 0, found.stream().flatMap(one -> one.ways().stream()).anyMatch(way -> way.kind() == WayKind.FREE_WALL));
    }

    /** General-purpose reference: the largest empty circle of JTS 1.20, which answers the same question more slowly. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void theWorstReachIsTheLargestCircleThatMeetsNoFace(long seed) {
        Random random = new Random(seed);
        Outline outline =
                seed % 2 == 0 ? Beds.L : Outline.rectangle(1000 + random.nextInt(3000), 1000 + random.nextInt(2000));
        Geometry inside = Shapes.offset(Shapes.area(outline), -100);
        List<LineSegment> faces = new ArrayList<>();
        for (int i = 0; i < outline.sides(); i++) {
            if (i == 0 || random.nextBoolean()) {
                faces.add(new LineSegment(
                        Shapes.coordinate(outline.corner(i)), Shapes.coordinate(outline.corner(i + 1))));
            }
        }
        Geometry lines = Shapes.FACTORY.buildGeometry(
                faces.stream().map(f -> f.toGeometry(Shapes.FACTORY)).toList());
        double reference = LargestEmptyCircle.getRadiusLine(lines, inside, 1).getLength();
        assertEquals(reference, Reach.worst(inside, faces, 0.5).mm(), 2, "seed " + seed);
    }

    @Test
    void aWallWithAnotherBedBeforeItCannotBeReachedThere() {
        assertEquals(0, reach(notes(Beds.box("M", 0, 0, 2400, 1200)), "bed M"));
        List<Finding> found = notes(Beds.box("M", 0, 0, 2400, 1200), Beds.box("N", 0, 1500, 2400, 1200));
        assertEquals(1100, reach(found, "bed M"), 15, "the far wall is 300 from its neighbour; the ends help a little");
        assertEquals(0, reach(notes(Beds.box("M", 0, 0, 2400, 1200), Beds.box("N", 0, 1800, 2400, 1200)), "bed M"));
    }

    @Test
    void theEdgeOfTheYardIsNoPlaceToStand() {
        Outline yard = Outline.rectangle(2400, 1500);
        List<Finding> found = Clashes.of(Beds.garden(Beds.yard(yard), Beds.box("M", 0, 0, 2400, 1200)));
        assertTrue(Beds.about(found, "bed M", FindingKind.REACH_NONE).isPresent());
    }

    @Test
    void gapsUnderTheUsualPathAreNotedWithTheMissingAmount() {
        List<Finding> found = notes(
                Beds.box("M", 0, 0, 2400, 1200),
                Beds.box("N", 0, 1840, 2400, 1200),
                Beds.box("O", 0, 4240, 2400, 1200));
        Finding note = Beds.about(found, "bed M, bed N", FindingKind.GAP_NARROW).orElseThrow();
        assertEquals("Beds M and N are 640 mm apart; 1200 mm is usual. Move bed N 560 mm further from bed M.", Spoken.of(note));
        assertEquals(560, note.amount().orElseThrow().value());
        assertFalse(Beds.about(found, "bed N, bed O", FindingKind.GAP_NARROW).isPresent(), "exactly 1200");
    }

    /**
     * Two beds 640 apart in a yard as wide as they are: what has 560 of room behind it moves; else the one is cut that keeps 500, which are
     * 300 inside and two walls of 100.
     */
    @ParameterizedTest(name = "{0} before M of {1}, N of {2}, {3} behind it: {4}")
    @CsvSource({
        "0, 1200, 1200, 560, Move bed N 560 mm further from bed M",
        "560, 1200, 1200, 550, Move bed M 560 mm further from bed N",
        "550, 1200, 1200, 550, Make bed N 560 mm narrower",
        "0, 1060, 1050, 0, Make bed M 560 mm narrower",
        "0, 1050, 1050, 0, Leave one of the two beds out"
    })
    void aGapIsWidenedWhereThereIsRoom(double before, double m, double n, double behind, String way) {
        double after = before + m + 640;
        double x = 3000; // away from the origin
        double end = after + n + behind;
        Garden garden = Beds.garden(Beds.yard(Beds.outline(x, 0, x + 2400, 0, x + 2400, end, x, end)), Beds.box("M", x, before, 2400, m), Beds.box("N", x, after, 2400, n));
        Garden beside = Beds.garden(Beds.yard(Beds.outline(0, x, end, x, end, x + 2400, 0, x + 2400)), Beds.box("M", before, x, m, 2400), Beds.box("N", after, x, n, 2400));
        for (Garden one : List.of(garden, beside)) {
            GroundSheet sheet = BedGroundTest.sheet(one);
            Finding gap = Beds.about(sheet.findings(), "bed M, bed N", FindingKind.GAP_NARROW).orElseThrow();
            assertEquals(way, Told.ways(gap).get(0));
            if (gap.ways().get(0).kind() == WayKind.MOVE_APART) {
                double move = way.startsWith("Move bed N") ? 560 : -560;
                assertEquals(Fact.spot(one == beside ? move : 0, one == beside ? 0 : move), gap.ways().get(0).values().get(2));
            }
            AccessSheet.Row row = sheet.access().rows().stream().filter(each -> each.what() == AccessSheet.AccessCheck.GAP).findFirst().orElseThrow();
            assertEquals(List.of("bed M, bed N", 640.0, 560.0), List.of(row.where(), row.measured(), row.missing()));
        }
    }

    /** With nobody before wall A the furthest place stands as far from F as from the inside corner: x^2 = (1800 - x)^2 + 1400^2, 1444; mirrored too. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void aHiddenWallIsThatOfTheBedsOwnFrame(boolean mirrored) {
        Bed bed = Beds.bed("M", Beds.L, new Placement(new Point(5000, 800), 0, mirrored), "A");
        AccessSheet.Row row = reachRow(bed);
        assertEquals(1444, row.measured(), 1.5);
        assertEquals(5000 + (mirrored ? -1444 : 1444), row.at().orElseThrow().x(), 5);
    }

    private static AccessSheet.Row reachRow(Bed... beds) {
        return BedGroundTest.sheet(Beds.garden(Beds.yard(null), beds)).access().rows().stream()
                .filter(each -> each.what() == AccessSheet.AccessCheck.REACH && each.where().equals("bed M")).findFirst().orElseThrow();
    }

    /** Where a bed stands before half of the one wall that is left, the far corner of that half is reached last; nobody reaches a bed without a wall. */
    @Test
    void aBedBeforeHalfAWallLeavesTheOtherHalf() {
        for (boolean mirrored : new boolean[] {false, true}) {
            Bed bed = Beds.bed("M", Outline.rectangle(2400, 1200), new Placement(new Point(mirrored ? 5000 : 2600, 0), 0, mirrored), "A", "B", "D");
            for (boolean left : new boolean[] {false, true}) {
                AccessSheet.Row row = reachRow(bed, Beds.box("N", left ? 2600 : 3800, 1400, 1200, 1200));
                assertEquals(left ? 2700 : 4900, row.at().orElseThrow().x(), 5);
                assertEquals(Math.hypot(1100, 1100), row.measured(), 2);
                assertEquals(Math.hypot(1100, 1100) - 600, row.missing(), 2);
            }
        }
        // all four walls are free in part: as far from A as from D and from where the free half of C begins, x = sqrt(2) (1200 - x)
        for (double before : new double[] {-1000, 1200}) {
            Bed[] two = {Beds.box("M", 0, 0, 2400, 1200), Beds.box("N", before, 1400, 2200, 1200)};
            assertEquals(1200 * Math.sqrt(2) / (1 + Math.sqrt(2)), reachRow(two).measured(), 1.5);
            List<WayOut> ways = Beds.about(notes(two), "bed M", FindingKind.REACH_FAR).orElseThrow().ways();
            assertEquals(List.of(WayKind.STEPPING_BOARD, WayKind.FREE_WALL), ways.stream().map(WayOut::kind).toList(), "a wall is blocked");
        }
        assertEquals(650, reachRow(Beds.box("M", 0, 0, 2400, 1300)).measured(), 1e-9, "free all round it is half the width");
        assertEquals(Double.POSITIVE_INFINITY, reachRow(Beds.bed("M", Outline.rectangle(2400, 1200), 0, 0, "A", "B", "C", "D")).measured());
    }

    /** What stands up takes the place to stand as a bed does, what lies flush does not; 250 along a wall is too short to stand at, 350 is not. */
    @Test
    void roomToStandIsFreeGroundOfSomeLength() {
        for (KeepClearKind kind : List.of(KeepClearKind.OTHER, KeepClearKind.COVER)) {
            KeepClear kept = new KeepClear(kind, Beds.points(0, 1500, 2400, 1500, 2400, 2700, 0, 2700), 0, 0, true, 0);
            Garden garden = Beds.garden(new Ground(List.of(), List.of(), List.of(kept), List.of(), 0), Beds.box("M", 0, 0, 2400, 1200));
            assertEquals(kind == KeepClearKind.OTHER ? 1100 : 0, reach(Clashes.of(garden), "bed M"), 15);
        }
        for (int free = 250; free <= 350; free += 100) {
            List<Finding> found = notes(Beds.bed("M", Outline.rectangle(2400, 1200), 0, 0, "A", "B", "D"),
                    Beds.box("N", 0, 1400, 1000, 1200), Beds.box("O", 1000 + free, 1400, 1000, 1200));
            assertEquals(free == 250, Beds.about(found, "bed M", FindingKind.REACH_NONE).isPresent(), free + " free");
        }
    }

    @Test
    void aThirdBedInBetweenIsNoGap() {
        List<Finding> found = notes(
                Beds.box("M", 0, 0, 2400, 500), Beds.box("N", 0, 600, 2400, 400), Beds.box("O", 0, 1100, 2400, 500));
        assertFalse(Beds.about(found, "bed M, bed O", FindingKind.GAP_NARROW).isPresent());
        assertTrue(Beds.about(found, "bed M, bed N", "are 100 mm apart").isPresent());
    }

    @Test
    void aNarrowPathIsNoted() {
        List<Finding> found =
                Clashes.of(Beds.garden(Beds.yard(null), List.of(), List.of(Beds.path("P", 900, 0, 0, 0, 5000))));
        assertEquals(
                "Path P is 900 mm wide; 1200 mm is usual. Make it 1200 mm wide.",
                Spoken.of(found.get(0)));
    }

    /** The way out is tried: the bed in the width that it names is reached all over, and one wider by 10 mm is not. */
    @Test
    void theWidthThatIsOfferedIsReached() {
        Finding far = Beds.about(notes(Beds.box("M", 0, 0, 3000, 1800)), "bed M", FindingKind.REACH_FAR).orElseThrow();
        double width = far.ways().stream().filter(way -> way.kind() == WayKind.MAKE_NARROWER)
                .map(way -> ((Fact.Length) way.values().get(0)).mm()).findFirst().orElseThrow();
        assertEquals(0, reach(notes(Beds.box("M", 0, 0, 3000, width)), "bed M"), "a bed " + width + " mm wide");
        assertTrue(reach(notes(Beds.box("M", 0, 0, 3000, width + 10)), "bed M") > 0, "a bed " + (width + 10) + " mm wide");
    }
}
