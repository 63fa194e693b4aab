package lapyard.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.AccessStandard;
import lapyard.plan.Bed;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.Ground;
import lapyard.plan.KeepClearKind;
import lapyard.plan.Preparation;
import lapyard.plan.SurfaceKind;
import lapyard.plan.Told;
import lapyard.working.Working;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class BedGroundTest {
    static GroundSheet sheet(Garden garden) {
        return GroundSheet.of(garden, WallReach::worst);
    }

    private static final Outline YARD = Outline.rectangle(12000, 9000);
    /** 1:80 to the rear, no fall along the house. */
    private static final List<Ground.Level> REARWARDS = List.of(
            new Ground.Level(new Point(0, 0), 412),
            new Ground.Level(new Point(3000, 0), 412),
            new Ground.Level(new Point(0, 2400), 442));

    private static Ground ground(List<Ground.Surface> surfaces, List<Ground.KeepClear> kept, Preparation.Soft soft) {
        Preparation usual = Preparation.USUAL;
        return new Ground(
                List.of(YARD), surfaces, kept, REARWARDS, 0, Optional.empty(), Optional.empty(),
                new Preparation(
                        soft, usual.stripMm(), usual.depthMm(), usual.subBaseMm(), usual.padMm(), usual.padEveryMm(),
                        usual.bulkingPercent()),
                List.of(), AccessStandard.USUAL, List.of(), Optional.empty());
    }

    private static BedGround on(SurfaceKind surface, Preparation.Soft soft, Bed bed) {
        return sheet(Beds.garden(ground(List.of(new Ground.Surface(surface, YARD)), List.of(), soft), bed))
                .beds()
                .get(0);
    }

    private static double value(BedGround ground, String key) {
        return ground.quantities().stream().filter(q -> q.key().toString().equals(key)).findFirst().orElseThrow().value();
    }

    /** Worked by hand for the L bed: walls in the order A to F, at their starts and ends. */
    @Test
    void onSlabsTheBottomCourseIsScribed() {
        BedGround m = on(SurfaceKind.SLAB, Preparation.Soft.STRIP, Beds.bed("M", Beds.L, 0, 0));
        assertEquals("scribe", m.way());
        double[][] byHand = {{30, 30}, {30, 11.25}, {11.25, 11.25}, {11.25, 0}, {0, 0}, {0, 30}};
        for (int i = 0; i < 6; i++) {
            assertEquals(byHand[i][0], m.scribes().get(i).startMm(), 1e-9);
            assertEquals(byHand[i][1], m.scribes().get(i).endMm(), 1e-9);
        }
        assertEquals(15, m.scribes().get(5).atMm(0.5), 1e-9);
        assertEquals(6.12, value(m, "ground.slab"), 1e-9);
    }

    /**
     * Worked by hand: 200 x 100 x (10800 - 4 x 100) is 0.208 m3; with 100 of stone 0.416. Under the walls the ground stands over its
     * lowest corner by 30 along A (3000), 20.6 along B (1500), 11.25 along C (1200), 5.6 along D (900), 15 along F (2400): 175500 mm2
     * of face over 10800 is 16.25, and 2.08 m2 x 16.25 is another 0.0338 to dig; loose by a quarter more.
     */
    @Test
    void onGrassAStripOfConcreteCarriesIt() {
        BedGround m = on(SurfaceKind.GRASS, Preparation.Soft.STRIP, Beds.bed("M", Beds.L, 800, 1500));
        assertEquals("strip", m.way());
        assertEquals(10.4, value(m, "strip.length"), 1e-9);
        assertEquals(0.208, value(m, "concrete"), 1e-12);
        assertEquals(0.208, value(m, "sub-base"), 1e-12);
        assertEquals(0.416 + 0.0338, value(m, "dig"), 1e-9);
        assertEquals(1.25 * 0.4498, value(m, "spoil.loose"), 1e-9);
        assertEquals(List.of(), m.scribes(), "a strip is poured level");
    }

    @Test
    void padsStandUnderCornersAndNotTooFarApart() {
        BedGround box = on(SurfaceKind.SOIL, Preparation.Soft.PADS, Beds.box("N", 1000, 1000, 2400, 1200));
        assertEquals(2 + 1 + 2 + 1, value(box, "pads"));
        assertEquals(6 * 0.3 * 0.3 * 0.1, value(box, "concrete"), 1e-12);
    }

    @Test
    void levellingDigsDownToTheLowestCorner() {
        // 2400 along, 1200 down at 1:80: 15 at the front, a wedge on both sides
        BedGround box = on(SurfaceKind.SOIL, Preparation.Soft.LEVEL, Beds.box("N", 1000, 1000, 2400, 1200));
        assertEquals((2400 * 15 + 2 * 1200 * 7.5) * 200 / 1e9, value(box, "dig"), 1e-12);
    }

    /** Worked by hand: 455 of soil at 1600 kg a cubic metre is 728 kg on each square metre. */
    @Test
    void onADeckNothingIsDesignedAndTheLoadIsTold() {
        Garden garden = Beds.garden(
                ground(List.of(new Ground.Surface(SurfaceKind.DECK, YARD)), List.of(), Preparation.Soft.STRIP),
                Beds.bed("M", Beds.L, 800, 1500));
        GroundSheet sheet = sheet(garden);
        assertEquals("none", sheet.beds().get(0).way());
        assertEquals(728, value(sheet.beds().get(0), "deck.load"), 1e-9);
        assertFalse(sheet.beds().get(0).quantities().stream().anyMatch(q -> q.key().toString().equals("concrete")));
    }

    /** Worked by hand: 106.0 m2 of yard with 48.0 of slab and 40.001 of grass leave 17.999. */
    @Test
    void groundWithoutASurfaceIsCounted() {
        Outline yard = Beds.outline(0, 0, 12000, 0, 12000, 7000, 7000, 9500, 0, 9000);
        Ground ground = new Ground(
                List.of(yard),
                List.of(
                        new Ground.Surface(SurfaceKind.SLAB, Outline.rectangle(12000, 4000)),
                        new Ground.Surface(SurfaceKind.GRASS, Beds.outline(0, 4000, 10000, 4000, 10000, 6500, 0, 6500)),
                        new Ground.Surface(SurfaceKind.GRASS, Beds.outline(0, 6500, 10000, 6500, 10000, 7000, 0, 7000)),
                        new Ground.Surface(SurfaceKind.GRASS, Beds.outline(0, 7000, 10000, 7000, 10000, 8000, 0, 8000)),
                        new Ground.Surface(SurfaceKind.GRASS, Beds.outline(0, 8000, 10000, 8000, 10000, 8000.1, 0, 8000.1))),
                List.of(), List.of(), 0);
        GroundSheet sheet = sheet(Beds.garden(ground, List.of(), List.of()));
        assertEquals(48.0, sheet.quantities().get(0).value(), 1e-9);
        assertEquals("surface.rest", sheet.quantities().get(2).key().toString());
        assertEquals(106.0 - 48.0 - sheet.quantities().get(1).value(), sheet.quantities().get(2).value(), 1e-9);
        assertEquals(17.999, sheet.quantities().get(2).value(), 1e-6);
        assertEquals(List.of(106.0, 88.0), sheet.quantities().get(2).working().inputs().stream().map(input -> (double) Math.round(input.value())).toList());
    }

    /** Slab of 6 x 4 m, a third of it out of the yard's side at x = 4 m: 16 m2 count. Without a yard all 24 do, and there is no rest. */
    @Test
    void aSurfaceCountsWithinTheYard() {
        for (boolean yard : new boolean[] {true, false}) {
            Ground ground = new Ground(yard ? List.of(Outline.rectangle(4000, 4000)) : List.of(),
                    List.of(new Ground.Surface(SurfaceKind.SLAB, Outline.rectangle(6000, 4000))), List.of(), List.of(), 0);
            var quantities = sheet(Beds.garden(ground, List.of(), List.of())).quantities();
            assertEquals(yard ? 16 : 24, quantities.get(0).value(), 1e-9);
            assertEquals(yard, quantities.stream().anyMatch(quantity -> quantity.key().toString().equals("surface.rest")));
        }
    }

    /** The bed's 2.4 x 1.2 m, 0.6 m of its length on grass: 0.72 m2 lie on the lesser ground. */
    @Test
    void aBedOnTwoSurfacesIsToldByItsLesserPart() {
        Ground ground = ground(List.of(new Ground.Surface(SurfaceKind.SLAB, Outline.rectangle(6000, 9000)),
                new Ground.Surface(SurfaceKind.GRASS, Beds.outline(6000, 0, 12000, 0, 12000, 9000, 6000, 9000))), List.of(), Preparation.Soft.STRIP);
        var two = Beds.about(Clashes.of(Beds.garden(ground, Beds.box("A", 4200, 2000, 2400, 1200))), "bed A", FindingKind.BED_ON_TWO_SURFACES).orElseThrow();
        assertEquals(0.72, two.amount().orElseThrow().value(), 1e-9);
    }

    /** Soil at least 150 below the damp-proof course: common practice, no source. */
    @Test
    void soilStaysBelowTheDampProofCourse() {
        Ground.KeepClear wall = new Ground.KeepClear(KeepClearKind.WALL, Beds.points(0, 0, 12000, 0), 0, 0, true, 320);
        Ground ground = ground(List.of(), List.of(wall), Preparation.Soft.SCRIBE);
        Bed against = Beds.box("A", 1000, 10, 2400, 1200);
        var snag = Beds.about(sheet(Beds.garden(ground, against)).findings(), "bed A", FindingKind.SOIL_OVER_DAMP_COURSE)
                .orElseThrow();
        // soil 550 above the lowest corner, which lies 1200 / 80 = 15 below the wall's ground; 320 - 150 = 170
        assertEquals(550 - 15 - 170, snag.amount().orElseThrow().value(), 0.2);
        assertEquals(List.of("Move it 75 mm off the wall", "Take off 2 courses"), Told.ways(snag));
        Bed off = Beds.box("A", 1000, 80, 2400, 1200);
        assertTrue(Beds.about(sheet(Beds.garden(ground, off)).findings(), "bed A", FindingKind.SOIL_OVER_DAMP_COURSE).isEmpty());
    }

    private static Map<String, Double> inputs(BedGround ground, String key) {
        return ground.quantities().stream().filter(q -> q.key().toString().equals(key)).findFirst().orElseThrow().working().inputs().stream()
                .collect(Collectors.toMap(Working.Input::name, Working.Input::value));
    }

    /** However the ground is made ready the levels of the corners are told, and what comes off the bottom course only where it is cut. */
    @ParameterizedTest
    @EnumSource(Preparation.Soft.class)
    void theLevelsOfTheCornersAreToldHoweverTheGroundIsMadeReady(Preparation.Soft soft) {
        BedGround m = on(SurfaceKind.GRASS, soft, Beds.bed("M", Beds.L, 800, 1500));
        double[] rearwards = {0, 0, 1500, 1500, 2400, 2400};
        for (int i = 0; i < 6; i++) assertEquals(412 + (1500 + rearwards[i]) / 80, value(m, "level." + (i + 1)), 1e-9);
        assertEquals(soft == Preparation.Soft.SCRIBE, m.quantities().stream().anyMatch(q -> q.key().toString().startsWith("scribe.")));
        assertEquals(6.12, inputs(m, "ground.grass").get("outside faces"), 1e-9, "3.0 x 2.4 less 1.2 x 0.9");
    }

    /** Whoever follows the working of a dig comes to its number: a face of 0.1755 m2, by hand above, x 200 wide. */
    @Test
    void theWorkingOfALevelledTrenchGivesItsDig() {
        BedGround m = on(SurfaceKind.GRASS, Preparation.Soft.LEVEL, Beds.bed("M", Beds.L, 800, 1500));
        assertEquals(0.1755, inputs(m, "dig").get("face"), 1e-9);
        assertEquals(0.1755 * 0.2, value(m, "dig"), 1e-12);
        assertEquals(1.25 * 0.1755 * 0.2, value(m, "spoil.loose"), 1e-12);
    }

    /** Six pads of 300 x 300 under a box 2400 x 1200 at 1:80: 100 of concrete, 100 of stone and 36000 + 2 x 9000 mm2 of face over 7200 is 7.5 more. */
    @Test
    void padsAreDugDeeperOnASlope() {
        BedGround box = on(SurfaceKind.SOIL, Preparation.Soft.PADS, Beds.box("N", 1000, 1000, 2400, 1200));
        double mean = (2400 * 15 + 2 * 1200 * 7.5) / 7200;
        assertEquals(6 * 0.09 * (0.2 + mean / 1000), value(box, "dig"), 1e-12);
    }

    @Test
    void nothingIsSaidOfGroundThatNobodyDrewOrRead() {
        BedGround bare = sheet(Beds.garden(Beds.yard(YARD), Beds.box("N", 1000, 1000, 2400, 1200))).beds().get(0);
        assertEquals("", bare.way());
        assertEquals(List.of(), bare.quantities());
        BedGround drawn = sheet(Beds.garden(new Ground(List.of(YARD), List.of(new Ground.Surface(SurfaceKind.SLAB, YARD)), List.of(), List.of(), 0),
                Beds.box("N", 1000, 1000, 2400, 1200))).beds().get(0);
        assertEquals("scribe", drawn.way());
        assertEquals(List.of(), drawn.scribes(), "without levels nobody knows how much");
        BedGround read = sheet(Beds.garden(ground(List.of(), List.of(), Preparation.Soft.STRIP), Beds.box("N", 1000, 1000, 2400, 1200))).beds().get(0);
        assertEquals("scribe", read.way());
        assertEquals(4, read.scribes().size());
    }
}
