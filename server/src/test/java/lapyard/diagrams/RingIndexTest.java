package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import lapyard.geometry.Point;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

/** What is found by cells is what is found by looking at every ring. */
class RingIndexTest {
    @ParameterizedTest
    @ValueSource(longs = {3, 14, 159, 2653})
    void plateAndLeaderAreMetAsByLookingAtAll(long seed) {
        Random random = new Random(seed);
        RingIndex index = new RingIndex();
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

    /** Beds with inside corners, of any size and far beyond the grid, met by plates and by each other. */
    @ParameterizedTest
    @ValueSource(longs = {2, 71, 828, 1828})
    void bedsAreMetAsByLookingAtAll(long seed) {
        Random random = new Random(seed);
        RingIndex index = new RingIndex();
        List<List<Point>> all = new ArrayList<>();
        int met = 0;
        for (int i = 0; i < 600; i++) {
            List<Point> ring = bed(random, Math.exp(random.nextDouble() * 6), 3000);
            boolean none = all.stream().noneMatch(other -> Labels.meet(ring, other));
            assertEquals(none, index.none(ring, other -> Labels.meet(ring, other)), "ring " + i);
            if (!none) met++;
            Box box = new Box(ring.get(0).x(), ring.get(0).y(), ring.get(0).x() + 3, ring.get(0).y() + 4);
            boolean meets = all.stream().anyMatch(other -> Labels.meet(box.corners(), other));
            if (index.fillsSome(box)) assertTrue(meets, "box at the corner of ring " + i);
            List<Point> line = Labels.line(ring.get(0), ring.get(1));
            if (index.fillsSome(ring.get(0), ring.get(1))) assertTrue(all.stream().anyMatch(other -> Labels.meet(line, other)), "side of ring " + i);
            if (i % 4 == 0) {
                all.add(ring);
                index.put(ring);
            }
        }
        assertTrue(met > 30 && met < 570, "some meet and some do not: " + met);
    }

    /** Words of a few millimetres: nearly all places that lie on others, and leaders that run over them, are told without looking at any ring. */
    @ParameterizedTest
    @ValueSource(longs = {5, 8, 13})
    void mostThatIsTakenIsToldQuickly(long seed) {
        Random random = new Random(seed);
        RingIndex index = new RingIndex();
        List<List<Point>> all = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            List<Point> words = new Plate(place(random), 4 + random.nextInt(16), 4, random.nextInt(3) * 45).corners();
            all.add(words);
            index.put(words);
        }
        int[] there = new int[2];
        int[] told = new int[2];
        for (int i = 0; i < 3000; i++) {
            Point at = new Point(random.nextDouble() * 350, random.nextDouble() * 350);
            Box box = new Box(at.x(), at.y(), at.x() + 8, at.y() + 4);
            Point to = new Point(at.x() + 60 * random.nextDouble(), at.y() + 60 * random.nextDouble());
            boolean[] meet = {all.stream().anyMatch(other -> Plate.overlap(box.corners(), other)), all.stream().anyMatch(other -> Plate.overlap(Labels.line(at, to), other))};
            boolean[] quickly = {index.fillsSome(box), index.fillsSome(at, to)};
            for (int k = 0; k < 2; k++) {
                assertTrue(meet[k] || !quickly[k], "place " + i);
                if (meet[k]) there[k]++;
                if (quickly[k]) told[k]++;
            }
        }
        for (int k = 0; k < 2; k++) assertTrue(there[k] > 100 && told[k] > 0.7 * there[k], told[k] + " of " + there[k]);
    }

    /** A square of a quarter of a millimetre is told where JTS has it covered by a ring, unless an edge runs within 0.02 mm of it. */
    @ParameterizedTest
    @ValueSource(longs = {4, 16, 64})
    void squaresAreFilledAsJtsHasThem(long seed) {
        Random random = new Random(seed);
        GeometryFactory jts = new GeometryFactory();
        for (int i = 0; i < 30; i++) {
            List<Point> ring = bed(random, 1 + random.nextInt(12), 60);
            RingIndex index = new RingIndex();
            index.put(ring);
            Coordinate[] shell = IntStream.rangeClosed(0, ring.size()).mapToObj(k -> ring.get(k % ring.size())).map(p -> new Coordinate(p.x(), p.y())).toArray(Coordinate[]::new);
            PreparedGeometry whole = PreparedGeometryFactory.prepare(jts.createPolygon(shell));
            Box round = Box.round(ring).grown(1);
            for (double x = Math.max(0, Math.floor(round.left())); x < round.right(); x += 0.25) {
                for (double y = Math.max(0, Math.floor(round.low())); y < round.high(); y += 0.25) {
                    boolean told = index.fillsSome(new Box(x, y, x + 0.25, y + 0.25));
                    if (told) assertTrue(whole.covers(square(jts, x, y, 0)), "told at " + x + ", " + y + " of ring " + i);
                    else assertFalse(whole.covers(square(jts, x, y, 0.02)), "not told at " + x + ", " + y + " of ring " + i);
                }
            }
        }
    }

    private static Geometry square(GeometryFactory jts, double x, double y, double more) {
        return jts.toGeometry(new Envelope(x - more, x + 0.25 + more, y - more, y + 0.25 + more));
    }

    private static List<Point> bed(Random random, double size, int room) {
        double turn = random.nextInt(4) == 0 ? 0 : random.nextDouble() * 360;
        Plate plate = new Plate(new Point(random.nextInt(room) - room / 4, random.nextInt(room) - room / 4), size, size * (0.02 + random.nextDouble()), turn);
        return random.nextBoolean() ? plate.corners()
                : List.of(plate.own(-0.5, -0.5), plate.own(0.5, -0.5), plate.own(0.5, -0.3), plate.own(-0.3, -0.3), plate.own(-0.3, 0.5), plate.own(-0.5, 0.5));
    }

    private static Point place(Random random) {
        return new Point(random.nextInt(4000) / 10.0 - 50, random.nextInt(4000) / 10.0 - 50);
    }
}
