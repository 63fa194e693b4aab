package lapyard.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import lapyard.geometry.Point;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/** Checked against the polygons of JTS, which took no part in hatching. */
class HatchTest {
    private static final GeometryFactory JTS = new GeometryFactory();

    private static Geometry area(List<List<Point>> rings) {
        Geometry area = JTS.createPolygon();
        for (List<Point> ring : rings) {
            List<Coordinate> closed = new ArrayList<>(ring.stream().map(p -> new Coordinate(p.x(), p.y())).toList());
            closed.add(closed.get(0));
            area = area.symDifference(JTS.createPolygon(closed.toArray(Coordinate[]::new)));
        }
        return area;
    }

    private static Geometry line(List<Point> stroke) {
        return JTS.createLineString(stroke.stream().map(p -> new Coordinate(p.x(), p.y())).toArray(Coordinate[]::new));
    }

    @ParameterizedTest
    @EnumSource(Hatch.Mark.class)
    void everyMarkLiesInItsAreaAndOutOfItsHoles(Hatch.Mark mark) {
        Geometry area = area(TestPages.hatched().rings()).buffer(1e-6);
        List<List<Point>> marks = new Hatch(mark, 30, 1.7, TestPages.PEN).within(TestPages.hatched().rings());
        assertTrue(marks.size() > 20, "only " + marks.size());
        marks.forEach(stroke -> assertTrue(area.covers(line(stroke)), stroke::toString));
    }

    /** Rows a distance d apart run, in sum, the area divided by d. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void rowsCoverAnyAreaEvenly(long seed) {
        Random random = new Random(seed);
        List<Point> ring = new ArrayList<>();
        int corners = 3 + random.nextInt(9);
        for (int i = 0; i < corners; i++) {
            double angle = 2 * Math.PI * i / corners;
            double r = 30 + random.nextDouble() * 60;
            ring.add(new Point(100 + r * Math.cos(angle), 100 + r * Math.sin(angle)));
        }
        double spacing = 0.5 + random.nextDouble();
        Hatch hatch = new Hatch(Hatch.Mark.LINES, random.nextInt(180), spacing, TestPages.PEN);
        double sum = hatch.within(List.of(ring)).stream().mapToDouble(s -> s.get(0).distanceMm(s.get(1))).sum();
        double expected = area(List.of(ring)).getArea() / spacing;
        assertEquals(expected, sum, expected * 0.02, "seed " + seed);
    }
}
