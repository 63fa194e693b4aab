package lapyard.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Elementary geometry: an outline whose sides keep their directions closes when its corners move as one says. */
class StretchTest {
    private static Outline outline(String corners) {
        List<Point> points = new ArrayList<>();
        for (String corner : corners.trim().split(" +")) points.add(new Point(Double.parseDouble(corner.split(",")[0]), Double.parseDouble(corner.split(",")[1])));
        return new Outline(points);
    }

    /** Counted by hand: which cuts cross sides of one direction only, and which way has none and moves a side. */
    @ParameterizedTest(name = "{0}: {1} along x, {2} along y, {3} of them moves a side")
    @CsvSource(delimiter = '|', textBlock = """
        rectangle           | 1 | 1 | 0 | 0,0 2400,0 2400,1200 0,1200
        L                   | 2 | 2 | 0 | 0,0 3000,0 3000,1500 1800,1500 1800,2400 0,2400
        rectangle, cut off  | 1 | 1 | 0 | 300,0 2400,0 2400,1200 0,1200 0,300
        upright trapezoid   | 1 | 1 | 1 | 0,0 3000,0 2400,1200 600,1200
        triangle            | 1 | 0 | 1 | 0,0 2000,0 1000,1800
        six-sided           | 1 | 2 | 0 | 500,0 1500,0 2000,866 1500,1732 500,1732 0,866
        """)
    void eachWayToChangeIsFound(String name, int acrossX, int along, int shifts, String corners) {
        List<Stretch> all = Stretch.of(outline(corners));
        assertEquals(acrossX, all.stream().filter(Stretch::acrossX).count(), name + ": " + all);
        assertEquals(along, all.stream().filter(stretch -> !stretch.acrossX()).count(), name + ": " + all);
        assertEquals(shifts, all.stream().filter(stretch -> !stretch.growing()).count(), name);
    }

    /** Two of its spans lie across and two deep; what lies beyond one moves, so that the L stays square. */
    @Test
    void anLGrowsByOneSpanAtATime() {
        Outline l = outline("0,0 2700,0 2700,1200 1200,1200 1200,2400 0,2400");
        List<Stretch> spans = Stretch.of(l);
        assertEquals(List.of(List.of(0, 4), List.of(0, 2), List.of(1, 5), List.of(3, 5)), spans.stream().map(Stretch::sides).toList());
        assertEquals(outline("0,0 2800,0 2800,1200 1300,1200 1300,2400 0,2400"), spans.get(0).applied(l, 100));
        assertEquals(l.areaMm2() - 25 * 1200, spans.get(3).applied(l, -25).areaMm2());
    }

    /** By hand: a trapezoid of 3000 and 1800, 1200 deep, its sides leaning 600 each; 100 deeper its far side is 1800 - 2 * 50. */
    @Test
    void aTrapezoidGrowsDeeperAlongItsLeaningSides() {
        Stretch deeper = Stretch.of(outline("0,0 3000,0 2400,1200 600,1200")).get(1);
        assertEquals(outline("0,0 3000,0 2350,1300 650,1300"), deeper.applied(outline("0,0 3000,0 2400,1200 600,1200"), 100));
        assertEquals(List.of(1, 2, 3), deeper.sides());
    }

    @Test
    void everyOutlineClosesAndKeepsItsAnglesAndOnlyItsSidesChange() {
        Random random = new Random(20261);
        for (int n = 0; n < 300; n++) {
            int w = 1500 + random.nextInt(2000);
            int d = 1200 + random.nextInt(1500);
            int a = 100 + random.nextInt(500);
            int b = 100 + random.nextInt(500);
            Outline outline = outline(switch (n % 4) {
                case 0 -> "%d,0 %d,0 %d,%d 0,%d 0,%d".formatted(a, w, w, d, d, b);
                case 1 -> "0,0 %d,0 %d,%d %d,%d".formatted(w, w - a, d, b, d);
                case 2 -> "0,0 %d,0 %d,%d".formatted(w, w / 2 + a, d);
                default -> "0,0 %d,%d %d,%d %d,%d".formatted(w, a, w + b, d + a, b, d);
            });
            for (Stretch stretch : Stretch.of(outline)) {
                double by = -80 + 10 * random.nextInt(17);
                Outline changed = stretch.applied(outline, by);
                double moved = 0;
                for (int i = 0; i < outline.sides(); i++) {
                    Point was = outline.direction(i);
                    Point is = changed.direction(i);
                    assertTrue(Math.abs(was.x() * is.y() - was.y() * is.x()) < 3e-4 && was.x() * is.x() + was.y() * is.y() > 0, outline + " " + changed);
                    if (!stretch.sides().contains(i)) assertEquals(outline.sideMm(i), changed.sideMm(i), 0.15, outline + " " + changed);
                    if (stretch.growing() && by < 0) assertTrue(changed.sideMm(i) <= outline.sideMm(i) + 0.15, outline + " " + changed);
                    moved = Math.max(moved, outline.corner(i).distanceMm(changed.corner(i)));
                }
                assertTrue(by == 0 || moved >= Math.abs(by) - 0.1, "nothing moved");
            }
        }
    }
}
