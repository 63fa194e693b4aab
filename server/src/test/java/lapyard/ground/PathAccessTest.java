package lapyard.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.AccessStandard;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.GardenPath;
import lapyard.plan.Ground;
import lapyard.plan.KeepClearKind;
import lapyard.plan.Preparation;
import lapyard.plan.Told;
import lapyard.plan.WayKind;
import lapyard.plan.WayOut;
import org.locationtech.jts.geom.Geometry;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PathAccessTest {
    private static GroundSheet sheet(
            AccessStandard standard, Outline yard, List<Ground.Level> levels, List<Bed> beds, GardenPath... paths) {
        Ground ground = new Ground(
                List.of(yard), List.of(), List.of(), levels, 0, Optional.empty(), Optional.empty(), Preparation.USUAL,
                List.of(), standard, List.of(), Optional.empty());
        return BedGroundTest.sheet(Beds.garden(ground, beds, List.of(paths)));
    }

    private static AccessSheet.Row row(GroundSheet sheet, String where, String what) {
        return sheet.access().rows().stream()
                .filter(row -> row.where().equals(where) && row.what().words.equals(what))
                .findFirst()
                .orElseThrow(() -> new AssertionError(what + " not in " + sheet.access().rows()));
    }

    private static final Outline FIELD = Outline.rectangle(200_000, 20_000);

    /** A bed 300 into a path of 1200 leaves 900; where it ends and another begins across, one walks aslant. */
    @Test
    void theNarrowestPlaceIsFoundWithWhereItIs() {
        GardenPath path = Beds.path("P", 1200, 0, 5000, 10000, 5000);
        PathRoom one = PathRoom.of(path, List.of(Shapes.area(Beds.outline(2000, 5300, 4000, 5300, 4000, 7000, 2000, 7000))));
        assertEquals(900, one.widthMm(), 0.1);
        assertEquals(4850, one.at().y(), 0.1);
        assertEquals(2000, one.narrowMm(), 0.1);
        PathRoom aslant = PathRoom.of(path, List.of(
                Shapes.area(Beds.outline(2000, 4900, 4000, 4900, 4000, 7000, 2000, 7000)),
                Shapes.area(Beds.outline(4300, 3000, 6000, 3000, 6000, 5100, 4300, 5100))));
        // 500 free beside either; from (4000, 4900) to (4300, 5100) it is sqrt(300^2 + 0^2) across, as both overlap in y
        assertEquals(300, aslant.widthMm(), 0.1);
        assertEquals(1200, PathRoom.of(path, List.of()).widthMm());
        PathRoom post = PathRoom.of(path, List.of(Shapes.area(Beds.outline(2000, 4700, 2400, 4700, 2400, 5100, 2000, 5100))));
        assertEquals(500, post.widthMm(), 0.1, "one passes a post on its wider side");
        assertEquals(5350, post.at().y(), 0.1);
    }

    /** The same on the second leg, which runs 4 to the right and 3 away after 5000 along the house: places by hand in that leg's own frame. */
    @Test
    void theNarrowestPlaceOfALegAtAnAngleIsToldAlongTheWholePath() {
        GardenPath path = Beds.path("P", 1200, -2000, 1000, 3000, 1000, 11_000, 7000);
        PathRoom one = PathRoom.of(path, List.of(slanted(2000, 300, 4000, 2000)));
        assertEquals(900, one.widthMm(), 0.1);
        assertEquals(2000, one.narrowMm(), 0.1);
        assertEquals(7000, one.alongMm(), 0.1);
        assertTrue(one.at().distanceMm(new Point(3000 + 0.8 * 2000 + 0.6 * 150, 1000 + 0.6 * 2000 - 0.8 * 150)) < 0.1, one.toString());
        PathRoom aslant = PathRoom.of(path, List.of(slanted(2000, -100, 4000, 2000), slanted(4300, -2000, 6000, 100)));
        assertEquals(300, aslant.widthMm(), 0.1);
        assertEquals(5000 + 4150, aslant.alongMm(), 0.1);
    }

    private static Geometry slanted(double along, double across, double alongTo, double acrossTo) {
        double[] corners = {along, across, alongTo, across, alongTo, acrossTo, along, acrossTo};
        double[] xy = new double[8];
        for (int i = 0; i < 8; i += 2) {
            xy[i] = 3000 + 0.8 * corners[i] - 0.6 * corners[i + 1];
            xy[i + 1] = 1000 + 0.6 * corners[i] + 0.8 * corners[i + 1];
        }
        return Shapes.area(Beds.outline(xy));
    }

    @Test
    void aPathThatABedClosesIsBlocked() {
        GroundSheet sheet = sheet(AccessStandard.USUAL, FIELD, List.of(), List.of(Beds.box("A", 3000, 4000, 700, 2000)), Beds.path("P", 1200, 0, 5000, 10000, 5000));
        Finding blocked = Beds.about(sheet.findings(), "path P", FindingKind.PATH_PINCHED).orElseThrow();
        assertEquals("Path P is blocked at 3000 mm along it; 1200 mm is usual.", Told.text(blocked));
        GroundSheet pinched = sheet(AccessStandard.USUAL, FIELD, List.of(), List.of(Beds.box("A", 3000, 4700, 700, 2000)), Beds.path("P", 1200, 0, 5000, 10000, 5000));
        assertTrue(Told.text(Beds.about(pinched.findings(), "path P", FindingKind.PATH_PINCHED).orElseThrow()).startsWith("Path P is 300 mm wide"));
    }

    /** 36 in for a path, 32 in for at most 24 in of its length: 2010 ADA Standards 403.5.1 (seen). */
    @ParameterizedTest(name = "{0} into the path over {1} long")
    @CsvSource({"385,600,815,0", "385,700,915,100", "400,600,815,15"})
    void aShortPinchMayBeNarrowerThanThePath(double into, double length, double limit, double missing) {
        Bed bed = Beds.box("A", 3000, 5600 - into, length, 2000);
        GroundSheet sheet = sheet(AccessStandard.ADA_2010, FIELD, List.of(), List.of(bed), Beds.path("P", 1200, 0, 5000, 10000, 5000));
        AccessSheet.Row row = row(sheet, "path P", "narrowest");
        assertEquals(limit, row.limit());
        assertEquals(missing, row.missing(), 0.1);
        assertEquals(
                missing > 0,
                sheet.findings().stream().anyMatch(f -> f.weight() == Finding.Weight.SNAG && f.kind() == FindingKind.PATH_PINCHED));
    }

    /** A path of 900 that a bed narrows to 850 is held against the 915 of the standard, not against itself; without the bed it is narrow, not pinched. */
    @Test
    void aPinchOfANarrowPathIsToldByTheStandard() {
        GardenPath path = Beds.path("P", 900, 0, 5000, 10000, 5000);
        AccessSheet.Row row = row(sheet(AccessStandard.ADA_2010, FIELD, List.of(), List.of(Beds.box("A", 3000, 5400, 2000, 2000)), path), "path P", "narrowest");
        assertEquals(915, row.limit());
        assertEquals(65, row.missing(), 0.1);
        assertTrue(Beds.about(sheet(AccessStandard.ADA_2010, FIELD, List.of(), List.of(), path).findings(), "path P", FindingKind.PATH_PINCHED).isEmpty());
    }

    /** 150 m with no gap over 61 m needs 2 passing spaces: 2010 ADA Standards 403.5.3 (200 ft, from memory). */
    @Test
    void aLongNarrowPathNeedsPlacesToPass() {
        GroundSheet sheet = sheet(AccessStandard.ADA_2010, FIELD, List.of(), List.of(), Beds.path("P", 915, 2000, 5000, 152_000, 5000));
        Finding snag = Beds.about(sheet.findings(), "path P", FindingKind.PATH_PASSING).orElseThrow();
        assertTrue(Told.ways(snag).get(0).equals("Add 2 places of 1525 mm square along it"), Told.ways(snag).toString());
        assertEquals(150_000 - 61_000, row(sheet, "path P", "passing").missing(), 1);
        GroundSheet met = sheet(AccessStandard.ADA_2010, FIELD, List.of(), List.of(),
                Beds.path("P", 915, 2000, 5000, 102_000, 5000), Beds.path("Q", 1525, 52_000, 1000, 52_000, 9000));
        assertEquals(0, row(met, "path P", "passing").missing());
    }

    /** 1:20 along and 1:48 across: 2010 ADA Standards 403.3 (seen). */
    @Test
    void steepPathsFailByMillimetresAMetre() {
        List<Ground.Level> levels = List.of(
                new Ground.Level(new Point(0, 0), 0), new Ground.Level(new Point(1500, 0), 100), new Ground.Level(new Point(0, 1000), 0));
        GroundSheet sheet = sheet(AccessStandard.ADA_2010, FIELD, levels, List.of(),
                Beds.path("P", 1200, 2000, 5000, 12000, 5000), Beds.path("Q", 1200, 5000, 2000, 5000, 12000));
        assertEquals(15, row(sheet, "path P", "gradient").measured(), 1e-6);
        assertEquals(1000 / 15.0 - 50, row(sheet, "path P", "gradient").missing(), 1e-6);
        assertEquals(0, row(sheet, "path Q", "gradient").missing());
        assertFalse(row(sheet, "path Q", "cross fall").pass());
        // 5 in 100 to the right and 3 in 100 away: along (0.6, 0.8) it climbs 0.054, across that |0.03 x 0.6 - 0.05 x 0.8| = 0.022
        List<Ground.Level> aslant = List.of(
                new Ground.Level(new Point(0, 0), 0), new Ground.Level(new Point(1000, 0), 50), new Ground.Level(new Point(0, 1000), 30));
        GroundSheet both = sheet(AccessStandard.ADA_2010, FIELD, aslant, List.of(), Beds.path("P", 1200, 2000, 2000, 2000, 5000, 8000, 13_000));
        assertEquals(1 / 0.054, row(both, "path P", "gradient").measured(), 1e-6);
        Finding steep = Beds.about(both.findings(), "path P", FindingKind.PATH_STEEP).orElseThrow();
        assertEquals("Path P climbs 1:18.5 on leg 2; 1:20 is the most.", Told.text(steep));
        assertEquals(4, steep.amount().orElseThrow().value(), 1e-9);
        GroundSheet leg = sheet(AccessStandard.ADA_2010, FIELD, aslant, List.of(), Beds.path("Q", 1200, 2000, 5000, 8000, 13_000));
        assertEquals(1 / 0.022, row(leg, "path Q", "cross fall").measured(), 1e-6);
    }

    /** A free circle of 60 in: 2010 ADA Standards 304.3 (from memory). */
    @Test
    void aDeadEndNeedsRoomToTurn() {
        Outline alley = Beds.outline(0, 0, 10000, 0, 10000, 1300, 0, 1300);
        GroundSheet tight = sheet(AccessStandard.ADA_2010, alley, List.of(), List.of(), Beds.path("P", 1200, 0, 650, 10000, 650));
        assertEquals(1300, row(tight, "path P", "turning").measured(), 10);
        assertEquals(225, row(tight, "path P", "turning").missing(), 10);
        GroundSheet wide = sheet(AccessStandard.ADA_2010, FIELD, List.of(), List.of(), Beds.path("P", 1200, 0, 5000, 10000, 5000));
        assertTrue(row(wide, "path P", "turning").pass());
    }

    @Test
    void rimsAreHeldAgainstWhoGardens() {
        GroundSheet sheet = sheet(rims(750, 850), FIELD, List.of(), List.of(Beds.box("A", 3000, 3000, 2400, 1200)));
        Finding snag = Beds.about(sheet.findings(), "bed A", FindingKind.RIM_HEIGHT).orElseThrow();
        assertEquals("The rim of bed A is 600 mm high; 750 mm is the least.", Told.text(snag));
        assertEquals("Add 1 course", Told.ways(snag).get(0));
        assertEquals(150, snag.amount().orElseThrow().value());
        assertEquals(List.of(150.0, 750.0), List.of(row(sheet, "bed A", "rim").missing(), row(sheet, "bed A", "rim").limit()));
        assertTrue(row(sheet(rims(550, 650), FIELD, List.of(), List.of(Beds.box("A", 3000, 3000, 2400, 1200))), "bed A", "rim").pass());
        GroundSheet low = sheet(rims(200, 300), FIELD, List.of(), List.of(Beds.box("A", 3000, 3000, 2400, 1200)));
        Finding over = Beds.about(low.findings(), "bed A", FindingKind.RIM_HEIGHT).orElseThrow();
        assertEquals("The rim of bed A is 600 mm high; 300 mm is the most.", Told.text(over));
        assertEquals("Take off 2 courses", Told.ways(over).get(0));
        assertEquals(List.of(300.0, 300.0), List.of(row(low, "bed A", "rim").missing(), row(low, "bed A", "rim").limit()));
    }

    private static AccessStandard rims(double leastMm, double mostMm) {
        AccessStandard usual = AccessStandard.USUAL;
        AccessStandard.Walking walking = usual.walking();
        return new AccessStandard(usual.id(), usual.name(), true, new AccessStandard.Walking(walking.pathMm(), walking.pinchMm(), walking.pinchLengthMm(),
                walking.turningMm(), 0, 0, walking.gradient(), walking.crossGradient()), usual.reaching(), new AccessStandard.RimHeight(leastMm, mostMm), "");
    }

    @Test
    void withoutAStandardAShortfallIsOnlyNoted() {
        GroundSheet sheet = sheet(AccessStandard.USUAL, FIELD, List.of(), List.of(), Beds.path("P", 900, 2000, 5000, 9000, 5000));
        Finding note = Beds.about(sheet.findings(), "path P", "is 900 mm wide; 1200 mm is usual").orElseThrow();
        assertEquals(Finding.Weight.NOTE, note.weight());
    }

    @Test
    void aHouseWallTakesNoEdgingAndAPondTakesGround() {
        GardenPath path = Beds.path("P", 1000, 0, 500, 10000, 500);
        Ground.KeepClear wall = new Ground.KeepClear(KeepClearKind.WALL, Beds.points(0, 0, 10000, 0), 0, 0, true, 0);
        Ground.KeepClear pond = new Ground.KeepClear(KeepClearKind.OTHER, Beds.points(4000, 500, 5000, 500, 5000, 2000, 4000, 2000), 0, 0, true, 0);
        Ground.KeepClear cover = new Ground.KeepClear(KeepClearKind.COVER, Beds.points(7000, 500, 7600, 500, 7600, 900, 7000, 900), 300, 0, true, 0);
        PathWork work = PathWork.of(List.of(path), List.of(), List.of(wall, pond, cover)).get(0);
        assertEquals(10 - 0.5, work.quantities().get(0).value(), 1e-9, "a cover is walked over");
        double edging = work.quantities().stream().filter(q -> q.key().toString().equals("edging.length")).findFirst().orElseThrow().value();
        assertEquals(9.0, edging, 1e-6, "the far side less the pond, nothing along the wall");
    }

    /** Worked by hand for the L bed, reached all round: 976 at (976, 976). */
    @Test
    void theWorstReachIsToldWithItsPlace() {
        GroundSheet sheet = sheet(AccessStandard.USUAL, FIELD, List.of(), List.of(Beds.bed("M", Beds.L, 5000, 5000)));
        AccessSheet.Row reach = row(sheet, "bed M", "reach");
        assertEquals(976, reach.measured(), 1.5);
        assertEquals(5976, reach.at().orElseThrow().x(), 5);
        assertEquals(5976, reach.at().orElseThrow().y(), 5);
    }

    private static List<String> asked(GroundSheet sheet, String what) {
        return sheet.access().rows().stream().filter(row -> row.what().words.equals(what)).map(AccessSheet.Row::where).toList();
    }

    /** 2010 ADA Standards 403.5.1 (seen): 36 in, which the standard rounds to 915 mm; 800 lacks 115. */
    @Test
    void aNarrowPathLacksWhatTheStandardAsks() {
        assertEquals(115, row(sheet(AccessStandard.ADA_2010, FIELD, List.of(), List.of(), Beds.path("P", 800, 0, 5000, 9000, 5000)), "path P", "width").missing(), 1e-9);
        GroundSheet met = sheet(AccessStandard.ADA_2010, FIELD, List.of(), List.of(), Beds.path("P", 915, 0, 5000, 9000, 5000));
        assertEquals(0, row(met, "path P", "width").missing());
        assertEquals(List.of(), asked(met, "narrowest"), "nothing stands in it");
    }

    /**
     * 403.5.3 (from memory): places to pass every 61 m. Two stretches of exactly that need one place; 10 more need another; who
     * walks 1525 wide passes everywhere.
     */
    @Test
    void placesToPassAreCountedBetweenTheirGreatestDistance() {
        for (double[] length : new double[][] {{122_000, 1}, {132_000, 2}}) {
            GroundSheet sheet = sheet(AccessStandard.ADA_2010, FIELD, List.of(), List.of(), Beds.path("P", 915, 2000, 5000, 2000 + length[0], 5000));
            Finding snag = Beds.about(sheet.findings(), "path P", FindingKind.PATH_PASSING).orElseThrow();
            assertTrue(Told.ways(snag).get(0).startsWith("Add " + (int) length[1] + " place"), Told.ways(snag).toString());
        }
        assertEquals(List.of(), asked(sheet(AccessStandard.ADA_2010, FIELD, List.of(), List.of(), Beds.path("P", 1525, 2000, 5000, 132_000, 5000)), "passing"));
    }

    /** 304.3 (from memory): only an end that meets no other path needs room to turn; a path that closes has none. */
    @Test
    void roomToTurnIsAskedAtFreeEndsAlone() {
        GroundSheet tee = sheet(AccessStandard.ADA_2010, FIELD, List.of(), List.of(),
                Beds.path("P", 1200, 5000, 5000, 15_000, 5000), Beds.path("Q", 1200, 10_000, 5000, 10_000, 12_000));
        assertEquals(List.of("path P", "path P", "path Q"), asked(tee, "turning"));
        assertTrue(tee.access().rows().stream().filter(row -> row.what() == AccessSheet.AccessCheck.TURNING).allMatch(row -> row.missing() == 0));
        assertEquals(List.of(), asked(sheet(AccessStandard.ADA_2010, FIELD, List.of(), List.of(),
                Beds.path("P", 1200, 5000, 5000, 9000, 5000, 9000, 9000, 5000, 5000)), "turning"));
    }

    /** By hand: between a bed and a pond 1400 apart, with a bed across the end, the largest free circle is 1400 wide. */
    @Test
    void bedsAndPondsTakeRoomToTurnAndToWalk() {
        Ground.KeepClear pond = new Ground.KeepClear(KeepClearKind.OTHER, Beds.points(2000, 1000, 12_000, 1000, 12_000, 4300, 2000, 4300), 0, 0, true, 0);
        Ground ground = new Ground(
                List.of(FIELD), List.of(), List.of(pond), List.of(), 0, Optional.empty(), Optional.empty(), Preparation.USUAL, List.of(),
                AccessStandard.ADA_2010, List.of(), Optional.empty());
        List<Bed> beds = List.of(Beds.box("A", 2000, 5700, 10_000, 3000), Beds.box("B", 9000, 4300, 1000, 1400));
        GroundSheet sheet = BedGroundTest.sheet(Beds.garden(ground, beds, List.of(Beds.path("P", 1600, 1000, 5000, 8990, 5000))));
        assertEquals(1400, sheet.access().rows().stream().filter(row -> row.what() == AccessSheet.AccessCheck.TURNING).toList().get(1).measured(), 11);
        AccessSheet.Row narrow = row(sheet, "path P", "narrowest");
        assertEquals(1400, narrow.measured(), 0.1, "of 1600 the pond takes 100 and bed A 100");
        assertEquals(0, narrow.missing());
    }

    /** Across a path one cuts into the upper side; along it one goes across the fall. */
    @Test
    void aSteepPathAndACrossFallHaveTheirOwnWaysOut() {
        List<Ground.Level> levels = List.of(
                new Ground.Level(new Point(0, 0), 0), new Ground.Level(new Point(1500, 0), 100), new Ground.Level(new Point(0, 1000), 0));
        GroundSheet sheet = sheet(AccessStandard.ADA_2010, FIELD, levels, List.of(),
                Beds.path("P", 1200, 2000, 5000, 12000, 5000), Beds.path("Q", 1200, 5000, 2000, 5000, 12000));
        assertEquals(List.of(WayKind.ACROSS_FALL, WayKind.STEPS_AND_RAMPS),
                Beds.about(sheet.findings(), "path P", FindingKind.PATH_STEEP).orElseThrow().ways().stream().map(WayOut::kind).toList());
        assertEquals(List.of(WayKind.CUT_UPPER_SIDE),
                Beds.about(sheet.findings(), "path Q", FindingKind.PATH_CROSS_FALL).orElseThrow().ways().stream().map(WayOut::kind).toList());
        assertEquals(Double.POSITIVE_INFINITY, row(sheet, "path P", "cross fall").measured(), "level across");
    }
}
