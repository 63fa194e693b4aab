package lapyard.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.IntPredicate;
import java.util.function.Predicate;
import java.util.stream.DoubleStream;
import lapyard.geometry.Jts;
import lapyard.geometry.Outline;
import lapyard.geometry.OutlineCheck;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.plan.Fact;
import lapyard.plan.WayKind;
import lapyard.plan.WayOut;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/**
 * Least moves and cuts against whole millimetres tried, the geometry library asked each time. Beds and obstacles are convex, so what
 * is free once stays free further on, and halving finds the first millimetre.
 */
class DirectionTest {
    /** The first corner of each bed. */
    private static final Point FIRST = new Point(437, -215);

    private static Geometry obstacle(Random random) {
        double x = FIRST.x() + random.nextInt(1400) - 200;
        double y = FIRST.y() + random.nextInt(1000) - 200;
        if (random.nextInt(4) == 0) return Shapes.FACTORY.createPoint(Shapes.coordinate(new Point(x, y)));
        return Shapes.area(new Outline(List.of(new Point(x, y), new Point(x + 50 + random.nextInt(500), y + random.nextInt(200) - 100),
                new Point(x + random.nextInt(300), y + 150 + random.nextInt(400)))));
    }

    private static Lot lot(Random random, double turnDeg) {
        return Lot.of(0, Beds.bed("M", Outline.rectangle(700 + random.nextInt(600), 600 + random.nextInt(500)), new Placement(FIRST, turnDeg, false)));
    }

    private static boolean clear(Lot lot, Geometry obstacle) {
        return obstacle.getDimension() == 0 ? !lot.core().intersects(obstacle) : Jts.common(lot.area(), obstacle).getArea() < 0.01;
    }

    /** The first whole millimetre from 1 on that is free; one more than {@code most} where none is. */
    private static int first(int most, IntPredicate free) {
        int low = 1;
        int high = most + 1;
        while (low < high) {
            int middle = (low + high) / 2;
            if (free.test(middle)) high = middle;
            else low = middle + 1;
        }
        return low;
    }

    @Test
    void theLeastMoveIsTheFirstMillimetreThatFrees() {
        Random random = new Random(2109);
        int moved = 0;
        for (int i = 0; i < 40; i++) {
            Lot lot = lot(random, i % 2 == 0 ? 0 : random.nextInt(360));
            Geometry obstacle = obstacle(random);
            if (clear(lot, obstacle)) continue;
            moved++;
            for (Direction direction : Direction.values()) {
                int tried = first(5000, mm -> clear(direction.move(lot, mm), obstacle));
                OptionalDouble found = direction.leastMm(lot.area(), obstacle, mm -> clear(direction.move(lot, mm), obstacle));
                assertEquals(tried, found.orElseThrow(), 1, direction + ", bed " + lot.area() + ", " + obstacle);
                assertEquals(found.getAsDouble(), Math.rint(found.getAsDouble()), "whole millimetres are free here");
            }
        }
        assertTrue(moved > 15, moved + " beds moved");
    }

    /** The first corner and the other two walls keep their places, and a bed stays wide enough for its timber; the cut that loses less is told. */
    @Test
    void theLeastCutIsTheFirstMillimetreThatFrees() {
        Random random = new Random(2110);
        int cut = 0;
        int both = 0;
        for (int i = 0; i < 120; i++) {
            Lot lot = lot(random, i % 2 == 0 ? 0 : random.nextInt(360));
            Geometry obstacle = obstacle(random);
            if (clear(lot, obstacle)) continue;
            Predicate<Lot> free = smaller -> clear(smaller, obstacle);
            List<Point> corners = lot.bed().inYard().corners();
            double width = corners.get(0).distanceMm(corners.get(1));
            double depth = corners.get(0).distanceMm(corners.get(3));
            double least = OutlineCheck.Rules.bed(100).leastWidthMm();
            List<Double> losses = new ArrayList<>();
            for (boolean across : new boolean[] {true, false}) {
                double size = across ? width : depth;
                Point way = corners.get(0).way(corners.get(across ? 1 : 3));
                int most = (int) Math.floor(size - least + 1e-6);
                int loss = first(most, off -> {
                    List<Point> then = new ArrayList<>(corners);
                    for (int k : across ? new int[] {1, 2} : new int[] {2, 3}) then.set(k, corners.get(k).moved(way, -off, 0));
                    return free.test(Lot.of(0, lot.bed(), new Outline(then)));
                });
                losses.add(loss > most ? Double.POSITIVE_INFINITY : loss);
            }
            Optional<WayOut> way = Cut.least(lot, obstacle, free);
            String name = lot.area() + ", " + obstacle + ", by hand " + losses;
            boolean some = losses.stream().anyMatch(Double::isFinite);
            assertEquals(some, way.isPresent(), name);
            if (!some) continue;
            cut++;
            both += losses.stream().allMatch(Double::isFinite) ? 1 : 0;
            boolean across = way.get().kind() == WayKind.CUT_WIDTH;
            double left = ((Fact.Length) way.get().values().get(0)).mm();
            double lost = (across ? width : depth) - left;
            assertEquals(losses.get(across ? 0 : 1), lost, 1, name);
            assertTrue(lost <= losses.get(across ? 1 : 0) + 1, name);
        }
        assertTrue(cut > 30 && both > 5, cut + " cut, " + both + " either way");
        assertEquals(Optional.empty(), Cut.least(Lot.of(0, Beds.bed("L", Beds.L, 0, 0)), obstacle(random), any -> true), "only rectangles are cut");
    }

    @Test
    void aWayNamesWhereTheBedGoes() {
        Lot lot = lot(new Random(1), 0);
        Map<Direction, WayKind> kinds = Map.of(
                Direction.LEFT, WayKind.MOVE_LEFT, Direction.RIGHT, WayKind.MOVE_RIGHT, Direction.AWAY, WayKind.MOVE_AWAY, Direction.TOWARDS, WayKind.MOVE_TOWARDS);
        Map<Direction, Point> moves = Map.of(
                Direction.LEFT, new Point(-30, 0), Direction.RIGHT, new Point(30, 0), Direction.AWAY, new Point(0, 30), Direction.TOWARDS, new Point(0, -30));
        for (Direction direction : Direction.values()) {
            assertEquals(WayOut.of(kinds.get(direction), Fact.mm(30)), direction.way(30));
            Point corner = FIRST.plus(moves.get(direction).x(), moves.get(direction).y());
            assertTrue(List.of(direction.move(lot, 30).area().getCoordinates()).contains(Shapes.coordinate(corner)));
        }
    }

    /** Contacts within a hundredth of a whole millimetre are that; a tenth is told where the next whole millimetre is not free. */
    @Test
    void aMoveIsToldInWholeMillimetresOrTenths() {
        assertEquals(OptionalDouble.of(13), Direction.least(DoubleStream.of(20, 12.34, 0.005), mm -> mm < 13.1));
        assertEquals(OptionalDouble.of(12.4), Direction.least(DoubleStream.of(20, 12.34), mm -> mm < 12.6));
        assertEquals(OptionalDouble.of(12.4), Direction.least(DoubleStream.of(12.405), mm -> mm < 12.6));
        for (double contact : new double[] {12.995, 13.005}) assertEquals(OptionalDouble.of(13), Direction.least(DoubleStream.of(contact), mm -> true));
        assertEquals(OptionalDouble.empty(), Direction.least(DoubleStream.of(12, 20), mm -> false));
    }

    /** A wall of a bed that slides 300 to the right meets a fence end to end, whichever end of either is told first. */
    @Test
    void endsOnOneLineMeet() {
        Coordinate[][] walls = {{new Coordinate(0, 0), new Coordinate(0, 800)}, {new Coordinate(0, 800), new Coordinate(0, 0)}};
        Coordinate[][] fences = {{new Coordinate(300, 0), new Coordinate(500, -400)}, {new Coordinate(500, -400), new Coordinate(300, 0)}};
        for (Coordinate[] wall : walls) {
            for (Coordinate[] fence : fences) assertEquals(300, Direction.contacts(wall, fence, 1, 0).min().orElseThrow());
        }
    }

    @Test
    void onlyRightAnglesAreSquare() {
        for (int turn = 0; turn < 360; turn += 17) {
            Outline outline = Beds.bed("M", Outline.rectangle(2400, 900), new Placement(FIRST, turn, false)).inYard();
            assertTrue(Cut.square(outline));
            for (int i = 0; i < 4; i++) {
                List<Point> off = new ArrayList<>(outline.corners());
                off.set(i, off.get(i).plus(4, 3));
                assertFalse(Cut.square(new Outline(off)), "5 mm off");
                off.set(i, outline.corner(i).plus(0.0001, 0));
                assertTrue(Cut.square(new Outline(off)), "a tenth of a micrometre off");
            }
        }
        Lot skewed = Lot.of(0, Beds.bed("S", Beds.outline(0, 0, 1000, 0, 1300, 900, 300, 900), 0, 0));
        assertEquals(Optional.empty(), Cut.least(skewed, Shapes.area(Beds.outline(900, 100, 1300, 100, 1300, 300)), any -> true));
    }
}
