package lapyard.construction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.Supplier;
import lapyard.catalogue.Section;
import lapyard.geometry.Inset;
import lapyard.geometry.Outline;
import lapyard.geometry.OutlineCheck;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.geometry.RandomOutlines;
import lapyard.plan.Bed;
import lapyard.plan.Joint;
import lapyard.plan.Lap;
import lapyard.plan.Saw;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.union.CascadedPolygonUnion;

/** Laws of a lapped course, on random right-angled outlines from a seed. */
class CoursesPropertyTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private static Bed randomBed(Random random, Lap lap) {
        double t = 20 + random.nextInt(1300) / 10.0;
        Outline outline = RandomOutlines.of(random, (int) Math.ceil(4 * t) + 300, 3000);
        assertEquals(List.of(), OutlineCheck.faults(outline, OutlineCheck.Rules.bed(t)));
        return Beds.section(
                Beds.bed("Q", outline, 1 + random.nextInt(4), lap), new Section("s", t, 150, 600, List.of(), Optional.empty(), false, 1, false));
    }

    @ParameterizedTest(name = "{0}")
    @EnumSource(Lap.class)
    void everyCourseOfAThousandOutlinesSumsToPLess4t(Lap lap) {
        Random random = new Random(1000);
        for (int i = 0; i < 1000; i++) {
            Bed bed = randomBed(random, lap);
            double wanted = bed.outline().perimeterMm() - 4 * bed.section().thicknessMm();
            for (Course course : Courses.of(bed, Saw.USUAL, 1e6, Map.of()).courses()) {
                double sum =
                        course.pieces().stream().mapToDouble(Piece::lengthMm).sum();
                assertEquals(wanted, sum, 1e-6, () -> "course " + course.number() + " of " + bed);
            }
        }
    }

    /** Judge: the JTS Topology Suite. No overlap: the areas add to the ring. No gap: their union is the ring. */
    @ParameterizedTest(name = "{0}")
    @EnumSource(Lap.class)
    void thePiecesOfEveryCourseTileTheWallRing(Lap lap) {
        Random random = new Random(1001);
        for (int i = 0; i < 300; i++) {
            Bed bed = randomBed(random, lap);
            // Every third bed has boards so short that long walls are joined.
            double longest = i % 3 == 0 ? 1900 : 1e6;
            Geometry ring = ring(bed);
            List<Course> courses = Courses.of(bed, Saw.USUAL, longest, Map.of()).courses();
            for (Course course : courses.subList(0, Math.min(2, courses.size()))) {
                List<Geometry> laid = new ArrayList<>();
                course.pieces().forEach(piece -> laid.add(polygon(piece.lies())));
                assertTiles(ring, laid, () -> "course " + course.number() + " of " + bed);
            }
        }
    }

    @Test
    void jointsOfNeighbouringCoursesNeverLieOverEachOther() {
        Random random = new Random(1002);
        for (int i = 0; i < 300; i++) {
            Bed bed = Beds.bed("Q", RandomOutlines.of(random, 700, 2000), 2, i % 2 == 0 ? Lap.TURNING : Lap.LONG_WALL);
            List<Course> courses = Courses.of(bed, Saw.USUAL, 1e6, Map.of()).courses();
            for (Piece lower : courses.get(0).pieces()) {
                Piece upper = courses.get(1).pieces().stream()
                        .filter(piece -> piece.wall().equals(lower.wall()))
                        .findFirst()
                        .orElseThrow();
                assertTrue(lower.fromMm() != upper.fromMm(), () -> lower + " under " + upper);
                assertTrue(
                        Math.abs(lower.fromMm() + lower.lengthMm() - upper.fromMm() - upper.lengthMm()) > 1,
                        () -> lower + " under " + upper);
            }
        }
    }

    /**
     * A bed mirrored, turned and moved is the same list of pieces, and still tiles its ring where it lies in the
     * yard.
     */
    @Test
    void mirroredAndTurnedBedsKeepTheirPiecesAndTileInTheYard() {
        Random random = new Random(1003);
        for (int i = 0; i < 60; i++) {
            Bed own = Beds.bed("Q", RandomOutlines.of(random, 700, 2000), 2, Lap.TURNING);
            Placement placement = new Placement(new Point(4000, 2500), 90 * (i % 4), i % 2 == 0);
            Bed placed = Beds.placed(own, placement);
            List<Piece> pieces =
                    Courses.of(placed, Saw.USUAL, 1e6, Map.of()).courses().get(1).pieces();
            assertEquals(Courses.of(own, Saw.USUAL, 1e6, Map.of()).courses().get(1).pieces(), pieces);
            Outline inner = Inset.of(own.outline(), 100);
            Geometry ring = polygon(placed.inYard()).difference(polygon(inner.placed(placement)));
            List<Geometry> laid = new ArrayList<>();
            for (Piece piece : pieces) {
                laid.add(polygon(piece.lies().placed(placement)));
            }
            assertTiles(ring, laid, () -> "bed " + placed);
        }
    }

    /** Corners of right-angled outlines cut off, joints drawn by lot: the timbers of both courses fill the wall ring. */
    @ParameterizedTest(name = "{0}")
    @EnumSource(Lap.class)
    void angledCornersLappedOrMitredTileTheWallRing(Lap lap) {
        Random random = new Random(1004);
        int angled = 0;
        for (int i = 0; i < 400; i++) {
            Outline outline = cornersCut(RandomOutlines.of(random, 900, 2000), random);
            if (!OutlineCheck.faults(outline, OutlineCheck.Rules.bed(100)).isEmpty()) {
                continue;
            }
            angled++;
            Map<Integer, Joint> joints = new HashMap<>();
            for (int corner = 0; corner < outline.sides(); corner++) {
                if (random.nextInt(3) == 0) {
                    joints.put(corner, random.nextBoolean() ? Joint.MITRE : Joint.LAP);
                }
            }
            Bed bed = Beds.joined(Beds.bed("Q", outline, 2, lap), joints);
            Geometry ring = ring(bed);
            for (Course course : Courses.of(bed, Saw.USUAL, i % 3 == 0 ? 1900 : 1e6, Map.of()).courses()) {
                List<Geometry> laid = new ArrayList<>();
                course.pieces().forEach(piece -> laid.add(polygon(piece.lies())));
                assertTiles(ring, laid, () -> "course " + course.number() + " of " + bed);
            }
        }
        assertTrue(angled > 200, "only " + angled + " outlines were sound");
    }

    /** Each corner, inside ones too, is cut off with luck, by 400 to 600 both ways. */
    private static Outline cornersCut(Outline outline, Random random) {
        List<Point> corners = new ArrayList<>();
        for (int i = 0; i < outline.sides(); i++) {
            Point here = outline.corner(i);
            if (random.nextInt(3) > 0) {
                corners.add(here);
                continue;
            }
            double before = 400 + random.nextInt(200);
            double after = 400 + random.nextInt(200);
            Point from = outline.direction(i - 1);
            Point to = outline.direction(i);
            corners.add(new Point(here.x() - from.x() * before, here.y() - from.y() * before));
            corners.add(new Point(here.x() + to.x() * after, here.y() + to.y() * after));
        }
        return new Outline(corners).fromFrontLeft();
    }

    @Test
    void wallsFollowTheirLettersPastZ() {
        List<Double> xy = new ArrayList<>(List.of(0.0, 0.0, 14000.0, 0.0));
        for (int step = 0; step < 13; step++) {
            xy.addAll(List.of(14000.0 - 1000 * step, 1000.0 * (step + 1), 13000.0 - 1000 * step, 1000.0 * (step + 1)));
        }
        xy.addAll(List.of(1000.0, 14000.0, 0.0, 14000.0));
        Outline stairs =
                Beds.outline(xy.stream().mapToDouble(Double::doubleValue).toArray());
        List<Piece> pieces = Courses.of(Beds.bed("S", stairs, 1, Lap.TURNING), Saw.USUAL, 1e6, Map.of())
                .courses()
                .get(0)
                .pieces();
        assertEquals(30, pieces.size());
        assertEquals("S-1Z", pieces.get(25).mark());
        assertEquals("S-1AD", pieces.get(29).mark());
        assertEquals(30, Set.copyOf(pieces.stream().map(Piece::mark).toList()).size());
    }

    private static void assertTiles(Geometry ring, List<Geometry> laid, Supplier<String> name) {
        double sum = laid.stream().mapToDouble(Geometry::getArea).sum();
        assertEquals(ring.getArea(), sum, 1, name);
        assertTrue(CascadedPolygonUnion.union(laid).symDifference(ring).getArea() < 1, name);
    }

    private static Geometry ring(Bed bed) {
        Outline inner = Inset.of(bed.outline(), bed.section().thicknessMm());
        return FACTORY.createPolygon(
                FACTORY.createLinearRing(coordinates(bed.outline())),
                new LinearRing[] {FACTORY.createLinearRing(coordinates(inner))});
    }

    private static Polygon polygon(Outline outline) {
        return FACTORY.createPolygon(coordinates(outline));
    }

    private static Coordinate[] coordinates(Outline outline) {
        Coordinate[] ring = new Coordinate[outline.sides() + 1];
        for (int i = 0; i <= outline.sides(); i++) {
            ring[i] = new Coordinate(outline.corner(i).x(), outline.corner(i).y());
        }
        return ring;
    }
}
