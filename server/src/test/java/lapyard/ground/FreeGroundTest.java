package lapyard.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.LongStream;
import lapyard.geometry.Outline;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.plan.CannotAnswer;
import lapyard.plan.Ground;
import lapyard.plan.Ground.KeepClear;
import lapyard.plan.KeepClearKind;
import lapyard.plan.SurfaceKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.geom.Geometry;

/** Where beds may stand and people come in, by geometry alone; yards are turned, mirrored and moved. */
class FreeGroundTest {
    private static final Outline YARD = Outline.rectangle(12_000, 9000);

    static LongStream seeds() {
        return LongStream.range(0, 40);
    }

    private static FreeGround ground(Outline yard, double marginMm, KeepClear... kept) {
        return FreeGround.of(Beds.garden(new Ground(List.of(yard), List.of(), List.of(kept), List.of(), 0)), marginMm);
    }

    private static KeepClear kept(KeepClearKind kind, double clearanceMm, double leafMm, Point... shape) {
        return new KeepClear(kind, List.of(shape), clearanceMm, leafMm, true, 0);
    }

    private static Geometry point(Point at) {
        return Shapes.FACTORY.createPoint(Shapes.coordinate(at));
    }

    /**
     * People come in through the middle of the leaf: half a leaf from the hinge towards the latch, or, where only the hinge is
     * known, along the yard's edge to where all of the leaf stays in the edge; at the hinge where it hangs off the edge.
     */
    @ParameterizedTest
    @MethodSource("seeds")
    void peopleComeInThroughTheMiddleOfTheGate(long seed) {
        Random random = new Random(seed);
        Placement turned = new Placement(new Point(random.nextInt(9000) - 4500, random.nextInt(9000) - 4500), random.nextInt(360) + 0.25, random.nextBoolean());
        Outline yard = YARD.placed(turned).counterClockwise();
        int side = random.nextInt(4);
        double leaf = 700 + random.nextInt(700);
        double along = List.of(0.0, 300.0, 4500.0, yard.sideMm(side) - 300, yard.sideMm(side)).get(random.nextInt(5));
        Point hinge = yard.at(side, along, 0);
        FreeGround alone = ground(yard, 0, kept(KeepClearKind.GATE, 0, leaf, hinge));
        Point in = alone.entrance().orElseThrow();
        Geometry edge = Shapes.area(yard).getBoundary();
        assertEquals(leaf / 2, in.distanceMm(hinge), 1e-6);
        assertEquals(leaf, alone.leafMm());
        assertTrue(edge.isWithinDistance(point(in), 1) && edge.isWithinDistance(point(new Point(2 * in.x() - hinge.x(), 2 * in.y() - hinge.y())), 1), hinge + " to " + in);
        Point latch = new Point(hinge.x() + random.nextInt(900), hinge.y() - random.nextInt(900));
        Point middle = ground(yard, 0, kept(KeepClearKind.GATE, 0, leaf, hinge, latch)).entrance().orElseThrow();
        assertEquals(hinge.distanceMm(latch) / 2, middle.distanceMm(hinge), 1e-6);
        assertEquals(middle.distanceMm(hinge), middle.distanceMm(latch), 1e-6);
        Point inside = yard.at(side, 3000, 1200);
        assertEquals(Optional.of(inside), ground(yard, 0, kept(KeepClearKind.GATE, 0, leaf, inside)).entrance());
    }

    /** The first gate is the way in, before any door; else the first door, which has no leaf; the hose begins at the first tap. */
    @Test
    void theFirstGateIsTheWayInThenTheFirstDoor() {
        KeepClear door = kept(KeepClearKind.DOOR, 900, 0, new Point(0, 4000), new Point(0, 4900));
        KeepClear other = kept(KeepClearKind.DOOR, 900, 0, new Point(0, 7000));
        KeepClear gate = kept(KeepClearKind.GATE, 0, 1000, new Point(3000, 0), new Point(4000, 0));
        KeepClear second = kept(KeepClearKind.GATE, 0, 1200, new Point(6000, 0), new Point(7200, 0));
        KeepClear tap = kept(KeepClearKind.TAP, 600, 0, new Point(200, 200));
        KeepClear far = kept(KeepClearKind.TAP, 600, 0, new Point(9000, 200));
        FreeGround both = ground(YARD, 0, door, gate, second, tap, far);
        assertEquals(List.of(new Point(3500, 0), new Point(200, 200)), List.of(both.entrance().orElseThrow(), both.tap().orElseThrow()));
        assertEquals(1000, both.leafMm());
        FreeGround doors = ground(YARD, 0, door, other);
        assertEquals(Optional.of(new Point(0, 4000)), doors.entrance());
        assertEquals(0, doors.leafMm());
        FreeGround none = ground(YARD, 0);
        assertEquals(List.of(Optional.empty(), Optional.empty()), List.of(none.entrance(), none.tap()));
        assertThrows(CannotAnswer.class, () -> FreeGround.of(Beds.garden(Beds.yard(null)), 0));
    }

    /** A cover keeps its 300 all round; a bare point keeps a spot, a bare line is not lain across, and what stands is walked round. */
    @Test
    void bedsKeepOffPlacesAndLinesAndWhatStands() {
        Point at = new Point(5000, 4000);
        FreeGround cover = ground(YARD, 0, kept(KeepClearKind.COVER, 300, 0, at));
        assertEquals(1, cover.kept().size());
        assertEquals(Math.PI * 300 * 300, cover.kept().get(0).areaMm2(), 300);
        assertTrue(Shapes.area(ground(YARD, 0, kept(KeepClearKind.OTHER, 0, 0, at)).kept().get(0)).intersects(point(at)));
        Point[] fence = {new Point(1000, 1000), new Point(4000, 1000)};
        FreeGround line = ground(YARD, 0, kept(KeepClearKind.WALL, 0, 0, fence));
        assertEquals(List.of(List.of(fence)), line.lines());
        assertEquals(List.of(), line.kept());
        FreeGround wide = ground(YARD, 0, kept(KeepClearKind.WALL, 200, 0, fence));
        assertEquals(List.of(), wide.lines());
        assertEquals(3000 * 400 + Math.PI * 200 * 200, wide.kept().get(0).areaMm2(), 300);
        Point[] area = Outline.rectangle(2000, 1000).corners().toArray(Point[]::new);
        FreeGround shed = ground(YARD, 0, kept(KeepClearKind.OTHER, 300, 0, area), kept(KeepClearKind.DRAIN, 0, 0, Outline.rectangle(3000, 200).corners().toArray(Point[]::new)));
        assertEquals(2, shed.kept().size());
        assertEquals(List.of(2e6), shed.standing().stream().map(Outline::areaMm2).toList());
    }

    /** A patio's edge is a closed line that no bed lies across. */
    @Test
    void noBedLiesAcrossTheEdgeOfASurface() {
        Outline patio = Outline.rectangle(3000, 2000);
        List<Point> ring = FreeGround.of(Beds.garden(new Ground(List.of(YARD), List.of(new Ground.Surface(SurfaceKind.SLAB, patio)), List.of(), List.of(), 0)), 0)
                .lines().get(0);
        assertEquals(patio.corners(), ring.subList(0, 4));
        assertEquals(ring.get(0), ring.get(4));
    }

    /**
     * 500 along the edge leave 11000 x 8000. With borders of 450 half a path round each bed reaches over it to 11900 x 8900, and into
     * 2000 x 2000 that is kept clear as far as 1100 x 1100; into 800 x 800 it reaches through and through.
     */
    @Test
    void bordersReachOverTheEdgeAndIntoWhatIsKeptClear() {
        assertEquals(11_000 * 8000, ground(YARD, 500).beds().get(0).areaMm2(), 1e-3);
        assertEquals(11_900 * 8900, ground(YARD, 500).coverableMm2(450, 450), 1e-3);
        Placement inside = new Placement(new Point(4000, 3000), 0, false);
        KeepClear[] sheds = {
            kept(KeepClearKind.OTHER, 0, 0, Outline.rectangle(2000, 2000).placed(inside).corners().toArray(Point[]::new)),
            kept(KeepClearKind.OTHER, 0, 0, Outline.rectangle(800, 800).placed(new Placement(new Point(8000, 3000), 0, false)).corners().toArray(Point[]::new))
        };
        assertEquals(11_900 * 8900 - 1100 * 1100, ground(YARD, 500, sheds).coverableMm2(450, 450), 1e-3);
        assertEquals(11_900 * 8900, ground(YARD, 500, sheds[1]).coverableMm2(450, 450), 1e-3);
    }
}
