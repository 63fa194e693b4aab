package lapyard.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

class PlacementTest {
    @Test
    void mirrorsFirstThenTurnsThenMoves() {
        Placement placement = new Placement(new Point(1000, 500), 90, true);
        // (300, 200) mirrored is (-300, 200), turned a quarter is (-200, -300), moved is (800, 200).
        assertEquals(new Point(800, 200), placement.toYard(new Point(300, 200)));
    }

    @Test
    void aDirectionOfTheYardComesBackAsTheSameDirectionInTheBed() {
        Random random = new Random(8);
        for (int i = 0; i < 200; i++) {
            double turn = i % 2 == 0 ? 90 * random.nextInt(4) : random.nextDouble() * 360;
            Placement placement = new Placement(new Point(random.nextInt(9000), 40), turn, random.nextBoolean());
            Point own = placement.directionToOwn(0.6, -0.8);
            Point from = placement.toYard(new Point(0, 0));
            Point to = placement.toYard(own);
            assertEquals(0.6, to.x() - from.x(), 1e-9);
            assertEquals(-0.8, to.y() - from.y(), 1e-9);
        }
    }

    @Test
    void quarterTurnsKeepWholeNumbersAndMirroringKeepsArea() {
        Outline outline = OutlineCheckTest.outline(0, 0, 3000, 0, 3000, 1500, 1800, 1500, 1800, 2400, 0, 2400);
        for (double turn : new double[] {-90, 90, 180, 270, 450}) {
            Outline placed = outline.placed(new Placement(new Point(7, 11), turn, true));
            assertEquals(outline.areaMm2(), placed.areaMm2());
            assertTrue(placed.signedAreaMm2() < 0);
            assertTrue(placed.corners().stream().allMatch(p -> p.x() == Math.rint(p.x()) && p.y() == Math.rint(p.y())));
        }
    }

    /** Setting-out of the worked bed: an 1800-2400-3000 triangle, the 3-4-5 of FAO R7021E chapter 4.1. */
    @Test
    void diagonalsFollowPythagoras() {
        assertEquals(3000.0, new Point(0, 0).distanceMm(new Point(1800, 2400)));
        assertEquals(3841.9, new Point(3000, 0).distanceMm(new Point(0, 2400)), 0.05);
        assertEquals(3354.1, new Point(0, 0).distanceMm(new Point(3000, 1500)), 0.05);
        assertEquals(2343.1, new Point(0, 0).distanceMm(new Point(1800, 1500)), 0.05);
        // Equal-diagonal test, Noble Research raised-bed layout note: 2.4 x 1.2 m gives 2.6833 m, 4 x 8 ft gives 8.9443
        // ft.
        assertEquals(2683.3, new Point(0, 0).distanceMm(new Point(2400, 1200)), 0.05);
        assertEquals(8.9443, new Point(0, 0).distanceMm(new Point(4, 8)), 1e-4);
    }

    @Test
    void lengthsReadAsPeopleWriteThem() {
        assertEquals("2900", Lengths.text(2900));
        assertEquals("884.5", Lengths.text(884.53));
        assertEquals("-12.1", Lengths.text(-12.1));
        assertEquals("0", Lengths.text(-0.04));
        assertEquals(0.3, Lengths.toTenth(0.25));
        assertEquals(1219.2, Lengths.toTenth(4 * 304.8));
    }
}
