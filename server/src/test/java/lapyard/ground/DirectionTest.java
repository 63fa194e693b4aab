package lapyard.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.IntPredicate;
import java.util.function.Predicate;
import lapyard.geometry.Jts;
import lapyard.geometry.Outline;
import lapyard.geometry.OutlineCheck;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.plan.Fact;
import lapyard.plan.WayKind;
import lapyard.plan.WayOut;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Geometry;

/**
 * Least moves and cuts against whole millimetres tried, the geometry library asked each time. Beds and obstacles are convex, so what
 * is free once stays free further on, and halving finds the first millimetre.
 */
class DirectionTest {
    private static Geometry obstacle(Random random) {
        double x = random.nextInt(1400) - 200;
        double y = random.nextInt(1000) - 200;
        if (random.nextInt(4) == 0) return Shapes.FACTORY.createPoint(Shapes.coordinate(new Point(x, y)));
        return Shapes.area(new Outline(List.of(new Point(x, y), new Point(x + 50 + random.nextInt(500), y + random.nextInt(200) - 100),
                new Point(x + random.nextInt(300), y + 150 + random.nextInt(400)))));
    }

    private static Lot lot(Random random, double turnDeg) {
        return Lot.of(0, Beds.bed("M", Outline.rectangle(700 + random.nextInt(600), 600 + random.nextInt(500)), new Placement(new Point(0, 0), turnDeg, false)));
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
}
