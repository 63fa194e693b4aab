package lapyard.construction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import lapyard.catalogue.Section;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.geometry.Rectangle;
import lapyard.plan.Base;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Fill;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Finish;
import lapyard.plan.Lap;
import lapyard.plan.Liner;
import lapyard.plan.WayKind;
import lapyard.plan.WayOut;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Liner pieces of floors split anyhow: where they rise, where they lap, and which is laid first (common practice, no source). */
class LinerCutTest {
    private static Bed lined(double width, double depth, int courses, double courseMm, double lapMm, double belowRimMm, Liner.Over over) {
        Section section = new Section("100x" + courseMm, 100, courseMm, 600, List.of(), Optional.empty(), false, 1, false);
        Liner liner = new Liner(true, "liner", new Liner.Edges(lapMm, 50, belowRimMm), 4, new Liner.Staples(100, 6, 8, 10), over, 100);
        return Beds.section(Beds.filled(Beds.bed("K", Outline.rectangle(width, depth), courses, Lap.TURNING), Base.USUAL.slatted(true), liner, Fill.USUAL, Finish.NONE), section);
    }

    /** A floor cut in two again and again: pieces of 100 and more, no two edges in line but by chance. */
    private static void split(Rectangle floor, int times, Random random, List<Rectangle> parts) {
        boolean across = random.nextBoolean();
        double whole = across ? floor.widthMm() : floor.depthMm();
        if (times == 0 || whole < 300) {
            parts.add(floor);
            return;
        }
        double at = 100 + random.nextInt((int) whole - 199);
        split(across ? new Rectangle(floor.x(), floor.y(), at, floor.depthMm()) : new Rectangle(floor.x(), floor.y(), floor.widthMm(), at), times - 1, random, parts);
        split(across ? new Rectangle(floor.x() + at, floor.y(), whole - at, floor.depthMm())
                : new Rectangle(floor.x(), floor.y() + at, floor.widthMm(), whole - at), times - 1, random, parts);
    }

    private static List<Rectangle> floor(Random random) {
        List<Rectangle> parts = new ArrayList<>();
        split(new Rectangle(100, 100, 3000, 2000), 3, random, parts);
        // an inside corner: sides that have floor along a part of them alone
        if (parts.size() > 1) parts.remove(random.nextInt(parts.size()));
        return parts;
    }

    /** Asked point by point just outside each side: floor all along laps by 300, any wall makes it rise by 600 - 45 - 25 + 50. */
    @Test
    void aSideLapsWhereFloorLiesAllAlongItAndElseRises() {
        Bed bed = lined(3200, 2200, 3, 200, 300, 25, Liner.Over.FLOOR);
        Random random = new Random(41);
        int laps = 0;
        for (int i = 0; i < 200; i++) {
            List<Rectangle> floor = floor(random);
            for (Rectangle own : floor) {
                LinerCut.Past past = LinerCut.past(bed, floor, own);
                double[] told = {past.left(), past.right(), past.bottom(), past.top()};
                for (int side = 0; side < 4; side++) {
                    boolean upright = side < 2;
                    double at = side == 0 ? own.x() - 0.5 : side == 1 ? own.right() + 0.5 : side == 2 ? own.y() - 0.5 : own.top() + 0.5;
                    boolean all = IntStream.range(0, (int) (upright ? own.depthMm() : own.widthMm())).allMatch(mm -> floor.stream().anyMatch(other ->
                            upright ? holds(other, at, own.y() + mm + 0.5) : holds(other, own.x() + mm + 0.5, at)));
                    assertEquals(all ? 300 : 580, told[side], "side " + side + " of " + own + " in " + floor);
                    laps += all ? 1 : 0;
                }
            }
        }
        assertTrue(laps > 200, laps + " laps");
    }

    private static boolean holds(Rectangle one, double x, double y) {
        return x > one.x() && x < one.right() && y > one.y() && y < one.top();
    }

    /** However little the ground falls and whichever way, pieces are numbered as their middles lie down the fall. */
    @Test
    void thePieceWhoseMiddleLiesFurthestDownhillIsLaidFirst() {
        Bed bed = lined(3200, 2200, 3, 200, 300, 25, Liner.Over.FLOOR);
        Random random = new Random(42);
        for (int i = 0; i < 200; i++) {
            double turn = Math.toRadians(random.nextInt(360) + 0.3);
            double slope = Math.pow(10, -1 - random.nextInt(5));
            LowSide low = new LowSide(Optional.of(new Point(slope * Math.cos(turn), slope * Math.sin(turn))), List.of());
            List<Integer> down = LinerCut.pieces(bed, floor(random), "R", low).stream()
                    .sorted(Comparator.comparingDouble(piece -> -(piece.floor().x() + piece.floor().right()) * Math.cos(turn) - (piece.floor().y() + piece.floor().top()) * Math.sin(turn)))
                    .map(LinerPiece::layingOrder).toList();
            assertEquals(IntStream.rangeClosed(1, down.size()).boxed().toList(), down, "falls towards " + Math.toDegrees(turn) + " by " + slope);
        }
    }

    /** Slats and bearers take 45; what is left under the rim is 0 at the least where no liner fits, and missing courses are whole ones. */
    @ParameterizedTest(name = "{0} courses of {1}, {2} below the rim: {3} mm too low")
    @CsvSource({"1, 60, 25, 10, 1", "1, 70, 25, 0, 1", "1, 71, 25, -1, 0", "2, 100, 400, 245, 3", "2, 100, 355, 200, 3"})
    void aWallTooLowIsToldWithTheCoursesThatItLacks(int courses, double courseMm, double belowRimMm, double lowMm, int more) {
        BedWork work = Beds.built(lined(2200, 1200, courses, courseMm, 300, belowRimMm, Liner.Over.FLOOR));
        Optional<Finding> low = work.findings().stream().filter(one -> one.kind() == FindingKind.LINER_NO_ROOM).findFirst();
        assertEquals(lowMm < 0, low.isEmpty());
        assertEquals(lowMm < 0 ? 1 : 0, work.liner().size());
        if (low.isEmpty()) return;
        assertEquals(lowMm, low.get().amount().orElseThrow().value(), 1e-9);
        assertEquals(WayOut.of(WayKind.ADD_COURSES, Fact.count(more, "courses")), low.get().ways().get(0));
        assertEquals(1, Beds.built(lined(2200, 1200, courses + more, courseMm, 300, belowRimMm, Liner.Over.FLOOR)).liner().size());
        assertEquals(0, Beds.built(lined(2200, 1200, courses + more - 1, courseMm, 300, belowRimMm, Liner.Over.FLOOR)).liner().size());
    }

    /** A sheet in one piece has no lap to be short; an L has. */
    @Test
    void onlyPiecesThatLapCanLapTooLittle() {
        assertFalse(shortLap(Beds.built(lined(2200, 1200, 3, 200, 100, 25, Liner.Over.FLOOR))));
        Bed bed = lined(2200, 1200, 3, 200, 100, 25, Liner.Over.FLOOR);
        assertTrue(shortLap(Beds.built(Beds.m(Lap.TURNING).withInside(bed.inside()))));
        assertFalse(shortLap(Beds.built(Beds.m(Lap.TURNING).withInside(lined(2200, 1200, 3, 200, 150, 25, Liner.Over.FLOOR).inside()))));
    }

    private static boolean shortLap(BedWork work) {
        return work.findings().stream().anyMatch(one -> one.kind() == FindingKind.LINER_LAP);
    }

    /** Two square metres at four slits each take eight, not nine; on walls pieces are numbered round and tell what is turned in. */
    @Test
    void slitsAreCountedByTheFloorAndWallPiecesTellTheirFoot() {
        BedWork floor = Beds.built(lined(2200, 1200, 3, 200, 300, 25, Liner.Over.FLOOR));
        assertEquals(8, Beds.value(floor.quantities(), "liner.slits"));
        assertEquals(300, Beds.input(Beds.quantity(floor.quantities(), "liner").working(), "lap"));
        BedWork walls = Beds.built(lined(2200, 1200, 3, 200, 300, 25, Liner.Over.WALLS));
        assertEquals(List.of(1, 2, 3, 4), walls.liner().stream().map(LinerPiece::layingOrder).toList());
        assertEquals(100, Beds.input(Beds.quantity(walls.quantities(), "liner").working(), "turned in"));
    }
}
