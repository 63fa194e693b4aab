package lapyard.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.LongStream;
import lapyard.geometry.Outline;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.Ground;
import lapyard.plan.Ground.KeepClear;
import lapyard.plan.KeepClearKind;
import lapyard.plan.SurfaceKind;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.geom.Geometry;

/** Ground that is kept clear, against what a leaf sweeps by its angle and its length (geometry). */
class ZoneTest {
    static LongStream seeds() {
        return LongStream.range(0, 40);
    }

    private static Zone zone(KeepClearKind kind, double clearance, double leaf, boolean in, Optional<Geometry> yard, List<Point> shape) {
        return Zone.of(0, new KeepClear(kind, shape, clearance, leaf, in, 0), yard);
    }

    /**
     * A gate in the side of a yard 12000 by 9000 that is turned, mirrored and moved: a place is swept if it is nearer to the
     * hinge than the leaf is long, on the side to which the gate opens, and, where the latch is known, not behind the hinge.
     */
    @ParameterizedTest
    @MethodSource("seeds")
    void aLeafSweepsWhatItReaches(long seed) {
        Random random = new Random(seed);
        Placement turned = new Placement(new Point(random.nextInt(9000) - 4500, random.nextInt(9000) - 4500), random.nextInt(360) + 0.25, random.nextBoolean());
        Geometry yard = Shapes.area(new Outline(Beds.points(0, 0, 12_000, 0, 12_000, 9000, 0, 9000).stream().map(turned::toYard).toList()).counterClockwise());
        double leaf = 700 + random.nextInt(700);
        double hinge = 2000 + random.nextInt(8000);
        int towards = random.nextBoolean() ? 1 : -1;
        boolean in = random.nextBoolean();
        Point at = turned.toYard(new Point(hinge, 0));
        Point latch = turned.toYard(new Point(hinge + towards * leaf, 0));
        Zone gate = zone(KeepClearKind.GATE, 0, leaf, in, Optional.of(yard), List.of(at, latch));
        Zone bare = zone(KeepClearKind.GATE, 0, leaf, in, Optional.empty(), List.of(at, latch));
        Zone eitherWay = zone(KeepClearKind.GATE, 0, leaf, in, Optional.of(yard), List.of(at));
        for (int i = 0; i < 200; i++) {
            double x = random.nextInt(3200) - 1600;
            double y = random.nextInt(3200) - 1600;
            // the drawn arc runs a little inside the true one; what touches a side is not asked
            if (Math.abs(Math.hypot(x, y) - leaf) < 1 || Math.abs(x) < 1 || Math.abs(y) < 1) continue;
            var place = Shapes.FACTORY.createPoint(Shapes.coordinate(turned.toYard(new Point(hinge + x, y))));
            boolean reached = Math.hypot(x, y) < leaf;
            boolean opens = y > 0 == in;
            assertEquals(reached && opens && x * towards > 0, gate.keptClear().intersects(place), "latch known: " + x + ", " + y);
            assertEquals(reached && x * towards > 0, bare.keptClear().intersects(place), "no yard: " + x + ", " + y);
            assertEquals(reached && opens, eitherWay.keptClear().intersects(place), "hinge alone: " + x + ", " + y);
        }
        assertEquals(Math.PI * leaf * leaf / 4, gate.shape().getArea(), 1e-4 * leaf * leaf);
    }

    /** A bed 300 off the hinge of a leaf of 900 with 50 to spare stands 650 in its way. */
    @Test
    void aBedInASwingIsToldByHowMuch() {
        Ground ground = new Ground(List.of(Outline.rectangle(12_000, 9000)), List.of(),
                List.of(new KeepClear(KeepClearKind.GATE, Beds.points(4000, 0, 4900, 0), 50, 900, true, 0)), List.of(), 0);
        Finding swing = Beds.about(BedGroundTest.sheet(Beds.garden(ground, Beds.box("A", 4000, 300, 2400, 1200))).findings(), "bed A", FindingKind.BED_IN_SWING).orElseThrow();
        assertEquals(650, swing.amount().orElseThrow().value(), 0.5);
    }

    @Test
    void onlyWhatStandsUpOverAnAreaIsSolid() {
        List<Point> square = Beds.points(4000, 4000, 5000, 4000, 5000, 5000, 4000, 5000);
        assertTrue(zone(KeepClearKind.OTHER, 0, 0, true, Optional.empty(), square).solid());
        assertTrue(!zone(KeepClearKind.COVER, 0, 0, true, Optional.empty(), square).solid(), "a cover is walked over");
        assertTrue(!zone(KeepClearKind.TREE, 300, 0, true, Optional.empty(), square.subList(0, 1)).solid(), "a point takes no ground");
        assertTrue(!zone(KeepClearKind.WALL, 0, 0, true, Optional.empty(), square.subList(0, 2)).solid(), "nor does a line");
        assertTrue(!zone(KeepClearKind.GATE, 0, 900, true, Optional.empty(), square.subList(0, 2)).solid(), "a gate stands open");
    }

    /** By hand: y = x from corner 1 and y = 1000 - x / 4 into corner 4 cross at (800, 800), 825 from corner 4 and 1131 from corner 1. */
    @ParameterizedTest(name = "told from corner {0}: corner {1}")
    @CsvSource({"0,4", "1,3", "2,2", "3,1"})
    void anOutlineThatCrossesItselfNamesItsNearestCorner(int first, int nearest) {
        List<Point> corners = new ArrayList<>(Beds.points(0, 0, 4000, 4000, 4000, 0, 0, 1000));
        Collections.rotate(corners, -first);
        var crossed = new Outline(corners);
        var yard = Outline.rectangle(12_000, 9000);
        List<Garden> gardens = List.of(
                Beds.garden(new Ground(List.of(crossed), List.of(), List.of(), List.of(), 0)),
                Beds.garden(new Ground(List.of(yard), List.of(new Ground.Surface(SurfaceKind.GRASS, crossed)), List.of(), List.of(), 0)),
                Beds.garden(new Ground(List.of(yard), List.of(), List.of(new KeepClear(KeepClearKind.OTHER, corners, 0, 0, true, 0)), List.of(), 0)),
                Beds.garden(Beds.yard(yard), Beds.bed("M", crossed, 0, 0)));
        for (var garden : gardens) {
            List<Finding> found = Clashes.stops(garden);
            assertEquals(List.of(FindingKind.OUTLINE_CROSSES), found.stream().map(Finding::kind).toList());
            assertTrue(Spoken.of(found.get(0)).contains("corner " + nearest), Spoken.of(found.get(0)));
            assertTrue(Told.text(found.get(0)).contains("800"), Told.text(found.get(0)));
        }
        KeepClear gate = new KeepClear(KeepClearKind.GATE, Beds.points(4000, 0, 4900, 0), 0, 900, true, 0);
        assertEquals(List.of(), Clashes.stops(Beds.garden(new Ground(List.of(yard), List.of(), List.of(gate), List.of(), 0))));
    }
}
