package lapyard.diagrams;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import lapyard.geometry.Point;

/** Rings on the paper, found again by where they lie. */
final class RingIndex {
    private static final double CELL = 12;
    private static final double ROUND = 0.01;
    private static final long ROW = 1_000_003;

    private record Held(List<Point> ring, Box box) {}

    private final Map<Long, List<Held>> cells = new HashMap<>();

    void put(List<Point> ring) {
        Box box = Box.round(ring);
        Held held = new Held(ring, box);
        // in one row or column of cells a ring lies in each
        boolean row = cell(box.left()) == cell(box.right()) || cell(box.low()) == cell(box.high());
        for (long x = cell(box.left()); x <= cell(box.right()); x++) {
            for (long y = cell(box.low()); y <= cell(box.high()); y++) {
                if (row || Plate.overlap(square(x, y), ring)) cells.computeIfAbsent(x * ROW + y, key -> new ArrayList<>()).add(held);
            }
        }
    }

    /** Whether the test holds for none of the rings whose boxes touch that of {@code ring}. */
    boolean none(List<Point> ring, Predicate<List<Point>> test) {
        Box box = Box.round(ring);
        for (long x = cell(box.left()); x <= cell(box.right()); x++) {
            for (long y = cell(box.low()); y <= cell(box.high()); y++) {
                for (Held held : cells.getOrDefault(x * ROW + y, List.of())) {
                    if (held.box.touches(box) && test.test(held.ring)) {
                        return false;
                    }
                }
            }
        }
        return true;
    }

    /** A cell and a little more: a long line askew lies in few of the cells of its box. */
    private static List<Point> square(long x, long y) {
        return new Box(x * CELL - ROUND, y * CELL - ROUND, (x + 1) * CELL + ROUND, (y + 1) * CELL + ROUND).corners();
    }

    private static long cell(double mm) {
        return (long) Math.floor(mm / CELL);
    }
}
