package lapyard.construction;

import static lapyard.construction.Beds.value;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import lapyard.catalogue.Section;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.geometry.Rectangle;
import lapyard.plan.Base;
import lapyard.plan.Bed;
import lapyard.plan.Fill;
import lapyard.plan.Finding;
import lapyard.plan.Finish;
import lapyard.plan.Lap;
import lapyard.plan.Liner;
import lapyard.plan.Saw;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;

class BaseAndLinerTest {
    private static final Base BASE = Base.USUAL;

    /**
     * R1 of the worked L, 2800 x 1300: along 24 whole + 12 of 395 at three a board = 28; across 26 rows of 995 + 300:
     * 26 + ceil(26/3) = 35.
     */
    @Test
    void slatsBothWaysAreComparedInBoards() {
        Rectangle floor = new Rectangle(100, 100, 2800, 1300);
        assertEquals(28, FloorBay.laid(floor, Outline.rectangle(floor.widthMm(), floor.depthMm()), true, BASE).slatBoards(BASE, 4));
        FloorBay across = FloorBay.laid(floor, Outline.rectangle(floor.widthMm(), floor.depthMm()), false, BASE);
        assertEquals(26, across.slats().rows());
        assertEquals(List.of(995.0, 300.0), across.slats().piecesMm());
        assertEquals(35, across.slatBoards(BASE, 4));
        assertTrue(FloorBay.of(floor, Outline.rectangle(floor.widthMm(), floor.depthMm()), Optional.empty(), BASE, 4).alongY());
        // Where the ground falls to the side the bearers must follow it, whatever the slats cost.
        assertFalse(FloorBay.of(floor, Outline.rectangle(floor.widthMm(), floor.depthMm()), Optional.of(new Point(0.01, 0)), BASE, 4).alongY());
    }

    /**
     * 350 wide: 3 rows leave gaps of 32.5, 4 rows need 380. Three whole, gaps of 15, the fourth ripped to 350 - 3 x
     * 110 = 20.
     */
    @Test
    void aRowIsRippedWhereNoWholeRowsFit() {
        SlatRows rows = SlatRows.of(350, 1600, BASE);
        assertEquals(4, rows.rows());
        assertEquals(15, rows.gapMm());
        assertEquals(20, rows.rippedMm());
        BedWork work = Beds.built(Beds.bed("K", Outline.rectangle(1800, 550), 2, Lap.TURNING));
        assertTrue(work.findings().stream().anyMatch(one -> Told.text(one).startsWith("The last row of slats in base R") && Told.text(one).contains("is 20 mm wide")));
    }

    /** Whatever the width, the rows fill it and no gap is under 0 or over the greatest. */
    @Test
    void rowsAlwaysFillTheWidthWithinTheGreatestGap() {
        Random random = new Random(9);
        for (int i = 0; i < 2000; i++) {
            double across = 300 + random.nextInt(30000) / 10.0;
            SlatRows rows = SlatRows.of(across, 1000, BASE);
            double filled = (rows.rippedMm() > 0 ? (rows.rows() - 1) * 95 + rows.rippedMm() : rows.rows() * 95)
                    + (rows.rows() - 1) * rows.gapMm();
            assertEquals(across, filled, 0.11, () -> across + ": " + rows);
            assertTrue(rows.gapMm() >= 0 && rows.gapMm() <= 15 + 1e-9, () -> across + ": " + rows);
        }
    }

    /** Strips of 2400 give 2380: bearers of 2970 are laid in two parts of 1485. */
    @Test
    void aBearerLongerThanItsStripIsLaidInParts() {
        BedWork work = Beds.built(Beds.bed("K", Outline.rectangle(1000, 3200), 2, Lap.TURNING));
        assertEquals(6, work.bottom().strips().size());
        assertTrue(work.bottom().strips().stream().allMatch(strip -> strip.lengthMm() == 1485));
        assertEquals("K-R1 bearer 1a", work.bottom().strips().get(0).id());
        BedWork longStrips = Beds.work(work.bed(), Saw.USUAL, 4780, Map.of(), Beds.TO_REAR, 3600, 25);
        assertEquals(
                List.of(2970.0, 2970.0, 2970.0),
                longStrips.bottom().strips().stream().map(Strip::lengthMm).toList());
    }

    @Test
    void anOpenBaseHasNoBearersAndIsLinedOnItsWalls() {
        Bed bed = Beds.filled(
                Beds.bed("K", Outline.rectangle(1800, 900), 3, Lap.TURNING),
                Base.USUAL.slatted(false),
                Liner.USUAL,
                Fill.USUAL,
                Finish.NONE);
        BedWork work = Beds.built(bed);
        assertFalse(Beds.has(work.quantities(), "base.bearers"));
        assertFalse(Beds.has(work.quantities(), "base.slats"));
        assertFalse(Beds.has(work.quantities(), "finish.area"));
        // 600 - 0 - 25 + 50 = 625 of rise and 100 turned in; inner faces 1600 and 700, each 150 round a corner
        assertEquals(List.of("K-LA", "K-LB", "K-LC", "K-LD"), work.liner().stream().map(LinerPiece::id).toList());
        assertEquals(List.of(1750.0, 850.0, 1750.0, 850.0), work.liner().stream().map(LinerPiece::widthMm).toList());
        assertTrue(work.liner().stream().allMatch(piece -> piece.heightMm() == 725));
        assertEquals(2 * (1.75 + 0.85) * 0.725, Beds.value(work.quantities(), "liner.area"), 1e-9);
        assertFalse(Beds.has(work.quantities(), "liner.slits"));
        // 17 + 8 + 17 + 8 along the edge, 6 on the lap at each of 4 corners
        assertEquals(50 + 24, Beds.value(work.quantities(), "staples"));
        assertEquals(1, work.bottom().floor().size());
    }

    /** Whatever the outline, wall pieces cover every inner face with a lap, and inside corners take laps like the others. */
    @Test
    void wallPiecesGoRoundEveryOutline() {
        Random random = new Random(31);
        for (int i = 0; i < 200; i++) {
            double width = 1500 + random.nextInt(4000);
            double depth = 1200 + random.nextInt(2500);
            Outline outline = i % 2 == 0 ? Outline.rectangle(width, depth)
                    : Beds.outline(0, 0, width, 0, width, depth, width - 600, depth, width - 600, depth + 700, 0, depth + 700);
            Bed bed = Beds.filled(Beds.bed("K", outline, 1 + random.nextInt(4), Lap.TURNING), Base.USUAL.slatted(false), Liner.USUAL, Fill.USUAL, Finish.NONE);
            BedWork work = Beds.built(bed);
            double round = work.liner().stream().mapToDouble(LinerPiece::widthMm).sum();
            assertEquals(work.frame().inner().perimeterMm() + 150 * outline.sides(), round, 0.1 * outline.sides());
            Bed boxed = Beds.filled(bed, Base.USUAL.slatted(false), new Liner(true, "liner", new Liner.Edges(300, 50, 25), 4, new Liner.Staples(100, 6, 8, 10), Liner.Over.FLOOR, 100), Fill.USUAL, Finish.NONE);
            assertTrue(Beds.built(boxed).liner().stream().allMatch(piece -> piece.wall().isEmpty()));
        }
    }

    @Test
    void withoutALinerThereAreNoPiecesAndNoStaples() {
        Bed bed = Beds.filled(Beds.m(Lap.TURNING), Base.USUAL, Liner.NONE, Fill.USUAL, Finish.USUAL);
        BedWork work = Beds.built(bed);
        assertEquals(List.of(), work.liner());
        for (String key : List.of("liner", "liner.area", "liner.slits", "staples")) {
            assertFalse(Beds.has(work.quantities(), key), key);
        }
    }

    /** Falling to the front the front piece R1 is laid first. */
    @Test
    void linerIsLaidDownhillFirst() {
        BedWork front = Beds.work(Beds.m(Lap.TURNING), Saw.USUAL, 4780, Map.of(), Optional.of(new Point(0, -0.01)), 2400, 25);
        assertEquals(
                List.of(1, 2),
                front.liner().stream().map(LinerPiece::layingOrder).toList());
        assertEquals(
                List.of(2, 1),
                Beds.built(Beds.m(Lap.TURNING)).liner().stream()
                        .map(LinerPiece::layingOrder)
                        .toList());
    }

    @Test
    void aLapUnder150AndAMissingDrainGapAreSnags() {
        Liner tight = new Liner(true, "liner", new Liner.Edges(100, 50, 25), 4, new Liner.Staples(100, 6, 8, 10), Liner.Over.BY_BASE, 100);
        Base dam = new Base(true, new Base.Bearers("50x75", 23, 400, 0), new Base.Slats(95, 22, 1200, 15, 5, 300), 0, false);
        BedWork work = Beds.built(Beds.filled(Beds.m(Lap.TURNING), dam, tight, Fill.USUAL, Finish.USUAL));
        List<Finding> snags = Beds.of(Finding.Weight.SNAG, work.findings());
        assertEquals(2, snags.size());
        assertTrue(Told.text(snags.get(0)).contains("dam the water"), snags.toString());
        assertTrue(Told.text(snags.get(1)).endsWith("lap by 100 mm; 150 mm is the least."), snags.toString());
        assertEquals(50, snags.get(1).amount().orElseThrow().value());
        // What can be made stays in: R2 is 900 + 580 + 100 high.
        assertEquals(1580, work.liner().get(1).heightMm());
    }

    /** U, three rectangles: folds 6 x 6, patches 2 x 8, the rest along the edge. */
    @Test
    void foldsAndPatchesFollowTheCorners() {
        BedWork work = Beds.built(Beds.bed("U", Beds.U, 3, Lap.TURNING));
        // Inner sides 3400, 2200, 1000, 1500, 1400, 1500, 1000, 2200.
        int edge = 35 + 23 + 11 + 16 + 15 + 16 + 11 + 23;
        assertEquals(edge + 36 + 16, value(work.quantities(), "staples"));
        assertEquals(3, work.liner().size());
    }

    @Test
    void aWallTooLowForItsLinerLeavesItOut() {
        Bed bed = Beds.section(
                Beds.bed("K", Outline.rectangle(1800, 900), 1, Lap.TURNING),
                new Section("100x60", 100, 60, 600, List.of(), Optional.empty(), false, 1, false));
        BedWork work = Beds.built(bed);
        assertEquals(List.of(), work.liner());
        // 60 - 45 - 25 = -10.
        assertTrue(work.findings().stream()
                .anyMatch(
                        one -> one.weight() == Finding.Weight.SNAG && Told.text(one).contains("10 mm too low for a liner")));
    }
}
