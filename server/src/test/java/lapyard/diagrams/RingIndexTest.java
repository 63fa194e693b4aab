package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import lapyard.geometry.Point;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

/** What is found by cells is what is found by looking at every ring. */
class RingIndexTest {
    @ParameterizedTest
    @ValueSource(longs = {3, 14, 159, 2653})
    void plateAndLeaderAreMetAsByLookingAtAll(long seed) {
        Random random = new Random(seed);
        Labels.RingIndex index = new Labels.RingIndex();
        List<List<Point>> all = new ArrayList<>();
        int met = 0;
        for (int i = 0; i < 400; i++) {
            List<Point> ring = random.nextBoolean() ? Labels.line(place(random), place(random))
                    : new Plate(place(random), 1 + random.nextInt(30), 1 + random.nextInt(6), random.nextInt(180)).corners();
            boolean none = all.stream().noneMatch(other -> Plate.overlap(ring, other));
            assertEquals(none, index.none(ring, other -> Plate.overlap(ring, other)), "ring " + i);
            if (!none) met++;
            if (i % 8 == 0) {
                all.add(ring);
                index.put(ring);
            }
        }
        assertTrue(met > 20 && met < 380, "some meet and some do not: " + met);
    }

    private static Point place(Random random) {
        return new Point(random.nextInt(4000) / 10.0 - 50, random.nextInt(4000) / 10.0 - 50);
    }
}
