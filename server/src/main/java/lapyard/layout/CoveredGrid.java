package lapyard.layout;

import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Garden;

/**
 * Places of a grid that the beds of a garden cover.
 *
 * @param places ascending, each with its column in the upper half and its row in the lower
 */
record CoveredGrid(long[] places) {
    private static final double GRID_MM = 200;

    static CoveredGrid of(Garden garden) {
        TreeSet<Long> places = new TreeSet<>();
        for (Bed bed : garden.beds()) {
            List<Point> ring = bed.inYard().corners();
            for (int x = first(ring, true); x * GRID_MM < Boxes.most(ring, true); x++) {
                for (int y = first(ring, false); y * GRID_MM < Boxes.most(ring, false); y++) {
                    if (new Point(x * GRID_MM, y * GRID_MM).within(ring)) places.add((long) x << 32 | y & 0xffffffffL);
                }
            }
        }
        return new CoveredGrid(places.stream().mapToLong(Long::longValue).toArray());
    }

    private static int first(List<Point> ring, boolean x) {
        return (int) Math.ceil(Boxes.least(ring, x) / GRID_MM);
    }

    /** Part of the beds' ground that is a bed's in one garden only, 0 to 1. */
    double differs(CoveredGrid other) {
        int all = places.length + other.places.length;
        long shared = Arrays.stream(places).filter(place -> Arrays.binarySearch(other.places, place) >= 0).count();
        return all == 0 ? 0 : 1 - 2.0 * shared / all;
    }
}
