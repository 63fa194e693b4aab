package lapyard.diagrams;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import lapyard.geometry.Jts;
import lapyard.geometry.Point;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whether plates share paper, held against the areas of a geometry library (JTS). */
class PlateTest {
    @ParameterizedTest
    @ValueSource(longs = {2, 71, 828})
    void platesOverlapWhereTheyHaveAreaInCommon(long seed) {
        Random random = new Random(seed);
        int overlapping = 0;
        for (int i = 0; i < 2000; i++) {
            List<Point> one = plate(random).corners();
            List<Point> other = plate(random).corners();
            double shared = Jts.common(Jts.area(one), Jts.area(other)).getArea();
            if (shared > 0 && shared < 1e-3) continue; // they touch
            if (shared > 0) overlapping++;
            assertEquals(shared > 0, Plate.overlap(one, other), one + " and " + other);
            assertEquals(shared > 0, Plate.overlap(other, one), other + " and " + one);
        }
        assertTrue(overlapping > 300 && overlapping < 1700, "some overlap and some do not: " + overlapping);
    }

    private static Plate plate(Random random) {
        double turn = random.nextBoolean() ? 0 : random.nextInt(180);
        return new Plate(new Point(random.nextInt(400) / 10.0, random.nextInt(400) / 10.0), 1 + random.nextInt(20), 1 + random.nextInt(20), turn);
    }
}
