package lapyard.construction;

import static lapyard.construction.Beds.input;
import static lapyard.construction.Beds.lengths;
import static lapyard.construction.Beds.quantity;
import static lapyard.construction.Beds.value;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import lapyard.construction.Piece.RunsPast;
import lapyard.geometry.Point;
import lapyard.geometry.Rectangle;
import lapyard.plan.Lap;
import lapyard.working.Quantity;
import org.junit.jupiter.api.Test;

/**
 * A worked L: outer 3000 x 2400, 1200 x 900 missing at the rear right, 100 x 200 timber, three courses, falling 1:80
 * to the rear.
 */
class BedMTest {
    private final BedWork turning = Beds.built(Beds.m(Lap.TURNING));
    private final BedWork longWall = Beds.built(Beds.m(Lap.LONG_WALL));

    /**
     * Turning: outer-outer L - 100 (A 2900, B 1400, E 1700, F 2300); C ends at the inside corner: odd past 0, short 0
     * = 1200, even short -100, past +100 = 1200; D odd +100 - 100, even 0 + 0 = 900. Sum 10400 = 10800 - 400.
     */
    @Test
    void everyTurningCourseHasTheSameSixLengths() {
        List<Double> ring = List.of(2900.0, 1400.0, 1200.0, 900.0, 1700.0, 2300.0);
        for (int course = 1; course <= 3; course++) {
            assertEquals(ring, lengths(turning, course));
        }
        assertEquals(18, turning.pieces().size());
        assertEquals(10400, ring.stream().mapToDouble(Double::doubleValue).sum());
    }

    /**
     * Odd: A, C, E past both ends: 3000, 1200 + 100, 1800; B, D, F short: 1500 - 200, 900 - 100 + 0, 2400 - 200.
     * Even: the other way: A 2800, B 1500, C 1200 - 100, D 900 + 100, E 1600, F 2400.
     */
    @Test
    void longWallCoursesSwapWhichWallsRunPast() {
        List<Double> odd = List.of(3000.0, 1300.0, 1300.0, 800.0, 1800.0, 2200.0);
        List<Double> even = List.of(2800.0, 1500.0, 1100.0, 1000.0, 1600.0, 2400.0);
        assertEquals(odd, lengths(longWall, 1));
        assertEquals(even, lengths(longWall, 2));
        assertEquals(odd, lengths(longWall, 3));
        assertEquals(
                11, longWall.pieces().stream().map(Piece::lengthMm).distinct().count());
        assertEquals(RunsPast.BOTH, longWall.pieces().get(0).runsPast());
        assertEquals(RunsPast.NONE, longWall.pieces().get(1).runsPast());
        assertEquals(RunsPast.NONE, longWall.frame().courses().get(1).pieces().get(0).runsPast());
    }

    /**
     * Course 1: A x 0-2900; B y 0-1400; C x 3000-1800; D y 1400-2300; E x 1800-100; F y 2400-100. Course 2 the
     * reverse.
     */
    @Test
    void piecesLieWhereTheLapPutsThem() {
        assertEquals(
                List.of(
                        new Rectangle(0, 0, 2900, 100),
                        new Rectangle(2900, 0, 100, 1400),
                        new Rectangle(1800, 1400, 1200, 100),
                        new Rectangle(1700, 1400, 100, 900),
                        new Rectangle(100, 2300, 1700, 100),
                        new Rectangle(0, 100, 100, 2300)),
                turning.frame().courses().get(0).pieces().stream().map(BedMTest::lying).toList());
        assertEquals(
                List.of(
                        new Rectangle(100, 0, 2900, 100),
                        new Rectangle(2900, 100, 100, 1400),
                        new Rectangle(1700, 1400, 1200, 100),
                        new Rectangle(1700, 1500, 100, 900),
                        new Rectangle(0, 2300, 1700, 100),
                        new Rectangle(0, 0, 100, 2300)),
                turning.frame().courses().get(1).pieces().stream().map(BedMTest::lying).toList());
        assertEquals(-100, turning.pieces().get(3).fromMm());
    }

    @Test
    void everyPieceHasItsMarkAndItsSeenWalls() {
        assertEquals(
                List.of("M-1A", "M-1B", "M-1C", "M-1D", "M-1E", "M-1F", "M-2A"),
                turning.pieces().stream().map(Piece::mark).limit(7).toList());
        assertEquals(12, turning.pieces().stream().filter(Piece::seen).count());
        assertTrue(turning.frame().courses().get(0).pieces().stream().allMatch(piece -> piece.runsPast() == RunsPast.START));
        assertTrue(turning.frame().courses().get(1).pieces().stream().allMatch(piece -> piece.runsPast() == RunsPast.END));
        assertTrue(turning.frame().seams().isEmpty());
    }

    /** 3 x 10.4 = 31.2 m; x 0.1 x 0.2 = 0.624 m3; x 600 = 374.4 kg; ends 18 x 2 x 0.02 = 0.72 m2. */
    @Test
    void timberAddsUpInLengthVolumeAndWeight() {
        for (BedWork work : List.of(turning, longWall)) {
            assertEquals(31.2, value(work.quantities(), "timber.length"), 1e-9);
            assertEquals(0.624, value(work.quantities(), "timber.volume"), 1e-9);
            assertEquals(374.4, value(work.quantities(), "timber.mass"), 1e-9);
            assertEquals(0.72, value(work.quantities(), "ends.area"), 1e-9);
        }
    }

    /** A 2.9 x 0.02 x 600 = 34.8 kg and F 27.6 kg are over 25; E 20.4 is not: 2 x 3 lifts. */
    @Test
    void sixPiecesNeedTwoPeople() {
        assertEquals(6, value(turning.quantities(), "lifts.two-people"));
        assertEquals(34.8, Beds.input(quantity(turning.quantities(), "lifts.two-people").working(), "heaviest"), 1e-9);
        assertEquals(20.4, turning.massKg(turning.pieces().get(4)), 1e-9);
        assertEquals(List.of(), turning.findings());
    }

    /**
     * 6 corners x 3 courses x 2 = 36; entry 35.4 set to 35; heights 200/4 and 600/4; cover 100 - (70.7 - 35) = 64.3.
     */
    @Test
    void thirtySixScrewsWithTheirEntryAndHeights() {
        Quantity screws = quantity(turning.quantities(), "screws");
        assertEquals(36, screws.value());
        assertEquals(35, input(screws.working(), "entry from the joint"));
        assertEquals(50, input(screws.working(), "height 1"));
        assertEquals(150, input(screws.working(), "height 2"));
        assertEquals(64.3, input(screws.working(), "cover left"));
        assertEquals(36, value(turning.quantities(), "pilots"));
    }

    /** E: clear 1600, ceil(1200/900) + 1 = 3 at 300, 900, 1500; C: clear 1100, ceil(700/900) + 1 = 2 at 300, 1000. */
    @Test
    void fiveNotchesDrainTheTwoRearWalls() {
        assertEquals(
                List.of(
                        new Notch("C", 300),
                        new Notch("C", 1000),
                        new Notch("E", 300),
                        new Notch("E", 900),
                        new Notch("E", 1500)),
                turning.frame().notches());
        assertEquals(5, value(turning.quantities(), "notches"));
        // Faces to seal: 5 x (2 x 50 + 25) x 100 mm2 = 0.0625 m2.
        assertEquals(0.0625, value(turning.quantities(), "notches.area"), 1e-9);
        assertTrue(turning.quantities().stream().noneMatch(one -> one.key().toString().equals("seal.litres")));
    }

    /** Inner 5.08 m2 = 2.8 x 1.3 + 1.6 x 0.9, cut at y = 1400: 9 strips of 2400 against 10 for the cut at x = 1700. */
    @Test
    void theFloorIsCutWhereItTakesTheFewestStrips() {
        assertEquals(5.08, value(turning.quantities(), "inner.area"), 1e-9);
        assertEquals(6.12, Beds.input(Beds.quantity(turning.quantities(), "inner.area").working(), "outer area"), 1e-9);
        assertEquals(
                List.of(new Rectangle(100, 100, 2800, 1300), new Rectangle(100, 1400, 1600, 900)), turning.bottom().floor());
        Quantity bearers = quantity(turning.quantities(), "base.bearers");
        assertEquals(9, input(bearers.working(), "strips"));
        // 8 x 1270 + 5 x 870 + a beam of 1600 = 16110 mm.
        assertEquals(16.11, bearers.value(), 1e-9);
        assertEquals(
                8,
                turning.bottom().strips().stream()
                        .filter(strip -> strip.lengthMm() == 1270)
                        .count());
        assertEquals(
                5,
                turning.bottom().strips().stream()
                        .filter(strip -> strip.lengthMm() == 870)
                        .count());
        assertEquals(
                List.of(1600.0),
                turning.bottom().strips().stream()
                        .filter(strip -> strip.use().equals("beam"))
                        .map(Strip::lengthMm)
                        .toList());
        assertEquals(14, turning.bottom().strips().stream().map(Strip::id).distinct().count());
    }

    /**
     * R1: ceil(1315/110) = 12 rows, gap 160/11 = 14.5, of 1200 + 1200 + 395; R2: ceil(915/110) = 9 rows, gap 45/8 =
     * 5.6,
     * of 1200 + 395. 24 + 9 whole, 21 of 395 at three a board = 7: 40.
     */
    @Test
    void fortySlatBoardsCoverTheFloor() {
        assertEquals(List.of(new SlatCut(1200, 33), new SlatCut(395, 21)), turning.bottom().slats());
        Quantity slats = quantity(turning.quantities(), "base.slats");
        assertEquals(40, slats.value());
        assertEquals(12, input(slats.working(), "R1 rows"));
        assertEquals(14.5, input(slats.working(), "R1 gap"));
        assertEquals(9, input(slats.working(), "R2 rows"));
        assertEquals(5.6, input(slats.working(), "R2 gap"));
    }

    /** u = 600 - 45 - 25 + 50 = 580. R1 (2800 + 1160) x (1300 + 1160); R2 (1600 + 1160) x (900 + 580 + 300). */
    @Test
    void twoLinerPiecesTheDownhillOneFirst() {
        LinerPiece r1 = turning.liner().get(0);
        LinerPiece r2 = turning.liner().get(1);
        assertEquals("M-R1", r1.id());
        assertEquals(List.of(3960.0, 2460.0, 2.0), List.of(r1.widthMm(), r1.heightMm(), (double) r1.layingOrder()));
        assertEquals(List.of(2760.0, 1780.0, 1.0), List.of(r2.widthMm(), r2.heightMm(), (double) r2.layingOrder()));
        // 9.7416 + 4.9128 m2; slits ceil(4 x 5.08 = 20.32).
        assertEquals(14.6544, value(turning.quantities(), "liner.area"), 1e-9);
        assertEquals(21, value(turning.quantities(), "liner.slits"));
        List<Quantity> pieces = turning.quantities().stream()
                .filter(q -> q.key().toString().equals("liner"))
                .toList();
        assertEquals(2, pieces.size());
        assertEquals(9.7416, pieces.get(0).value(), 1e-9);
        assertEquals(3960, input(pieces.get(0).working(), "width"));
        assertEquals(2460, input(pieces.get(0).working(), "height"));
    }

    /** 29 + 14 + 13 + 10 + 17 + 23 = 106 along the edge, 5 folds x 6, 1 patch x 8. */
    @Test
    void aHundredAndFortyFourStaples() {
        Quantity staples = quantity(turning.quantities(), "staples");
        assertEquals(144, staples.value());
        assertEquals(106, input(staples.working(), "along the edge"));
        assertEquals(5, input(staples.working(), "folds"));
        assertEquals(1, input(staples.working(), "patches"));
    }

    /** 10.8 x 0.6 + 10.0 x 0.6 + 0.1 x 10.4 = 6.48 + 6.00 + 1.04 = 13.52 m2; x 2 / 12 = 2.2533 l. */
    @Test
    void finishCoversOutsideInsideAndTop() {
        assertEquals(13.52, value(turning.quantities(), "finish.area"), 1e-9);
        assertEquals(2.2533, value(turning.quantities(), "finish.litres"), 5e-5);
    }

    @Test
    void everyQuantityShowsItsWorking() {
        for (Quantity quantity : turning.quantities()) {
            assertTrue(!quantity.working().inputs().isEmpty(), quantity.key().toString());
            assertTrue(
                    !quantity.working().formula().isBlank()
                            && !quantity.working().source().isBlank(),
                    quantity.key().toString());
        }
    }

    /** The box of a square-ended timber. */
    private static Rectangle lying(Piece piece) {
        assertTrue(piece.squareEnds());
        List<Point> corners = piece.lies().corners();
        double left = corners.stream().mapToDouble(Point::x).min().orElseThrow();
        double low = corners.stream().mapToDouble(Point::y).min().orElseThrow();
        return new Rectangle(
                left,
                low,
                corners.stream().mapToDouble(Point::x).max().orElseThrow() - left,
                corners.stream().mapToDouble(Point::y).max().orElseThrow() - low);
    }
}
