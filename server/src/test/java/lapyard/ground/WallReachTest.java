package lapyard.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import lapyard.geometry.Inset;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import org.junit.jupiter.api.Test;

/** How far somebody reaches, against a grid of places each measured to every stretch of wall. */
class WallReachTest {
    private static Outline outline(Random random, int i) {
        int w = 800 + random.nextInt(2000);
        int d = 800 + random.nextInt(1500);
        return switch (i % 3) {
            case 0 -> Outline.rectangle(w, d);
            case 1 -> Beds.outline(0, 0, 2 * w, 0, 2 * w, d, w, d, w, 2 * d, 0, 2 * d);
            default -> Beds.outline(0, 0, w, random.nextInt(300), w - random.nextInt(200), d, random.nextInt(200), d + 200);
        };
    }

    @Test
    void noPlaceInsideIsFurtherFromAWallThanItSays() {
        Random random = new Random(2103);
        for (int i = 0; i < 60; i++) {
            Outline outline = outline(random, i);
            double t = 40 + random.nextInt(60);
            List<WallReach.Stretch> stretches = new ArrayList<>();
            for (int wall = 0; wall < outline.sides(); wall++) {
                double side = Math.rint(outline.sideMm(wall));
                double from = random.nextBoolean() ? 0 : random.nextInt((int) side / 2);
                if (i % 6 == 0) stretches.add(new WallReach.Stretch(wall, 0, side));
                else if (random.nextInt(3) > 0 || wall == 0) stretches.add(new WallReach.Stretch(wall, from, random.nextBoolean() ? side : from + random.nextInt((int) (side - from))));
            }
            WallReach.Worst worst = new WallReach(outline, t, stretches).worst();
            Outline inner = Inset.of(outline.counterClockwise(), t);
            double most = 0;
            Outline box = inner.box();
            for (double x = box.corner(0).x(); x <= box.corner(1).x(); x += 7) {
                for (double y = box.corner(0).y(); y <= box.corner(2).y(); y += 7) {
                    Point place = new Point(x, y);
                    if (place.within(inner.corners())) most = Math.max(most, away(place, outline, stretches));
                }
            }
            String name = outline + ", " + t + ", " + stretches;
            assertTrue(worst.mm() >= most - 1 - 1e-6 && worst.mm() <= most + 10, name + ": " + worst.mm() + " where the grid has " + most);
            assertEquals(away(worst.at(), outline, stretches), worst.mm(), i % 6 == 0 ? 0.5 : 1e-6, name);
            assertTrue(worst.at().within(inner.corners()) || inner.corners().stream().anyMatch(corner -> corner.distanceMm(worst.at()) < 1e-3), name + ": " + worst);
        }
        assertEquals(new WallReach.Worst(0, new Point(0, 0)), new WallReach(Beds.outline(0, 0, 100, 0, 90, 150, 0, 160), 80, List.of(new WallReach.Stretch(0, 0, 100))).worst());
    }

    private static double away(Point place, Outline outline, List<WallReach.Stretch> stretches) {
        return stretches.stream().mapToDouble(one -> {
            Point from = outline.at(one.wall(), one.fromMm(), 0);
            return place.distanceMm(place.nearestOn(from, outline.at(one.wall(), Math.min(one.toMm(), outline.sideMm(one.wall())), 0)));
        }).min().orElseThrow();
    }
}
