package lapyard.construction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Joint;
import lapyard.plan.Lap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

/** Nests worked by hand, and laid out again as polygons by the JTS Topology Suite. */
class NestTest {
    private static final double T = 100;
    private static final double KERF = 4;
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private static Bed mitred(Outline outline, int courses) {
        Map<Integer, Joint> joints = new HashMap<>();
        for (int corner = 0; corner < outline.sides(); corner++) {
            if (!outline.square(corner)) joints.put(corner, Joint.MITRE);
        }
        return Beds.joined(Beds.bed("X", outline, courses, Lap.TURNING), joints);
    }

    private static Outline sixSided(double sideMm) {
        List<Point> corners = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            double angle = Math.toRadians(60 * i);
            corners.add(new Point(sideMm * Math.cos(angle), sideMm * Math.sin(angle)));
        }
        return new Outline(corners);
    }

    /** A rectangle of 2400 x 1200 with its front right corner cut off by 300 both ways. */
    private static final Outline CHAMFERED = Beds.outline(0, 0, 2100, 0, 2400, 300, 2400, 1200, 0, 1200);

    private static List<Piece> pieces(Bed bed) {
        return Beds.built(bed).pieces();
    }

    /**
     * Side 1000, 100 thick, set 30: short 1000 - 2 x 57.735 = 884.53, mean 942.265. Head to tail six take 6 x 942.265 +
     * 57.735 + 5 x 4 / cos 30 = 5653.59 + 57.74 + 23.09 = 5734.42, by their long points 6000 + 20 = 6020.
     */
    @Test
    void sixOfAHexagonTake5734() {
        Nest nest = Nest.of(pieces(mitred(sixSided(1000), 1)), KERF).orElseThrow();
        assertEquals(5735, nest.lengthMm(), "to whole millimetres");
        assertEquals(6020 - nest.lengthMm(), nest.savedMm(KERF), 1e-6);
        assertEquals(7, nest.cuts().size());
        nest.cuts().forEach(cut -> {
            assertEquals(30, cut.setDeg());
            assertEquals(57.735, Math.abs(cut.faceMm() - cut.backMm()), 0.1);
        });
        // slants alternate, so outer faces do
        for (int i = 0; i < 6; i++) assertEquals(i % 2 == 0, nest.parts().get(i).outerOnFace());
        assertEquals(2, nest.goodFaces());
        assertEquals("X-1A+X-1B+X-1C+X-1D+X-1E+X-1F", nest.mark());
        assertEquals(List.of("X-1A", "X-1B"), Nest.marks("X-1A+X-1B"));
        assertEquals(List.of("X-1A"), Nest.marks("X-1A"));
    }

    /** Two take 942.265 x 2 + 57.735 + 4.619 = 1946.88; one joint saves 57.735 + 4 - 4.619 = 57.116 of 2004. */
    @Test
    void oneJointSavesTheSlantLessTheLongerKerf() {
        List<Piece> two = pieces(mitred(sixSided(1000), 1)).subList(0, 2);
        assertEquals(57.116, Nest.savedMm(two.get(0).end(), KERF), 0.01);
        assertEquals(1947, Nest.of(two, KERF).orElseThrow().lengthMm());
    }

    /** With a kerf of a chainsaw's 60 mm (made up) the slanted cut costs 60 / cos 30 - 60 = 9.28 more: 57.735 - 9.28. */
    @Test
    void aWideKerfSavesLess() {
        Piece piece = pieces(mitred(sixSided(1000), 1)).get(0);
        assertEquals(48.45, Nest.savedMm(piece.end(), 60), 0.02);
    }

    /**
     * Chamfer 300: wall B is 424.3 with 22.5 degrees at both ends, A and C have one such end, D and E none. Hidden C between seen
     * ones shows no second face: its outer face may lie on the back.
     */
    @Test
    void onlyEndsOfTheSameSetMeet() {
        List<Piece> pieces = pieces(mitred(CHAMFERED, 1));
        Piece a = pieces.get(0);
        Piece b = pieces.get(1);
        Piece c = pieces.get(2);
        Piece d = pieces.get(3);
        assertEquals(0, a.start().setDeg());
        assertEquals(22.5, a.end().setDeg());
        assertTrue(Nest.of(List.of(a, d), KERF).isEmpty(), "a square end meets nothing");
        assertTrue(Nest.of(List.of(d, a, c), KERF).isEmpty());
        assertTrue(Nest.of(List.of(a), KERF).isEmpty());
        Nest all = Nest.of(List.of(a, b, c), KERF).orElseThrow();
        assertEquals(2, all.cuts().size(), "both its own ends are square");
        // every joint saves t x tan 22.5 + 4 - 4 / cos 22.5 = 41.42 - 0.33
        assertEquals(2 * 41.09, all.savedMm(KERF), 0.15);
        assertEquals(2, all.goodFaces());
        assertEquals(List.of(a, b, c), all.pieces());
        assertEquals(0, Nest.savedMm(a.start(), KERF), "a square end");
        assertEquals(all.lengthMm(), Nest.of(List.of(c, b, a), KERF).orElseThrow().lengthMm(), 0.11);
        Piece hidden = new Piece(c.mark(), c.course(), c.wall(), c.part(), c.lengthMm(), c.fromMm(), c.lies(), false, c.start(), c.end());
        assertEquals(1, Nest.of(List.of(a, hidden), KERF).orElseThrow().goodFaces());
        Nest first = Nest.of(List.of(hidden, a), KERF).orElseThrow();
        assertEquals(1, first.goodFaces());
        assertTrue(first.parts().get(1).outerOnFace(), "what is seen lies on the face");
        assertFalse(first.parts().get(0).outerOnFace());
    }

    /**
     * Every piece of a nest has the shape that it has in its bed, none lies on another, and what is left of the board between
     * two is a kerf of 4 mm measured square to the cut.
     */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void piecesKeepTheirShapesAndTheirKerfs(long seed) {
        Random random = new Random(seed);
        Bed bed = mitred(seed % 3 == 0 ? sixSided(600 + random.nextInt(900)) : seed % 3 == 1 ? manySided(random, 5 + random.nextInt(4)) : bent(random), 2);
        List<Piece> pieces = new ArrayList<>(pieces(bed));
        int nests = 0;
        for (int turn = 0; turn < 60; turn++) {
            Collections.shuffle(pieces, random);
            Optional<Nest> nest = Nest.of(pieces.subList(0, 2 + random.nextInt(3)), KERF);
            if (nest.isEmpty()) continue;
            nests++;
            check(nest.get());
        }
        assertTrue(nests > 0, "some must nest");
    }

    /** A regular outline, so that all its ends have the same set. */
    private static Outline manySided(Random random, int sides) {
        double radius = 1200 + random.nextInt(900);
        List<Point> corners = new ArrayList<>();
        for (int i = 0; i < sides; i++) {
            double angle = 2 * Math.PI * i / sides;
            corners.add(new Point(radius * Math.cos(angle), radius * Math.sin(angle)));
        }
        return new Outline(corners);
    }

    /** With an inside corner of 45 degrees, at which the inner face is the longer one. */
    private static Outline bent(Random random) {
        double out = 3500 + random.nextInt(900);
        return Beds.outline(0, 0, out, 0, out, 1500, 3000, 1500, 2000, 2500, 0, 2500);
    }

    /** A square of 2400 in mitres of 45 degrees, no kerf: 2400 and 2200, back 100 to 2300, so the second ends at 2300 + 2400 to the millimetre. */
    @Test
    void aWholeLengthIsNotRoundedUp() {
        Outline square = Outline.rectangle(2400, 2400);
        Map<Integer, Joint> joints = new HashMap<>();
        for (int corner = 0; corner < 4; corner++) joints.put(corner, Joint.MITRE);
        List<Piece> pieces = pieces(Beds.joined(Beds.bed("X", square, 1, Lap.TURNING), joints));
        assertEquals(4700, Nest.of(pieces.subList(0, 2), 0).orElseThrow().lengthMm());
    }

    private static void check(Nest nest) {
        Geometry board = polygon(0, nest.lengthMm(), 0, nest.lengthMm());
        Polygon before = null;
        for (Nest.Part part : nest.parts()) {
            Polygon lies = polygon(part.faceFromMm(), part.faceToMm(), part.backFromMm(), part.backToMm());
            assertTrue(board.buffer(0.01).contains(lies), nest.mark());
            assertEquals(area(part.piece().lies()), lies.getArea(), 1, part.piece().mark());
            assertEquals(perimeter(part.piece().lies()), lies.getLength(), 0.01, part.piece().mark());
            if (before != null) assertEquals(KERF, before.distance(lies), 0.1, "the saw's kerf between " + nest.mark());
            before = lies;
        }
    }

    private static Polygon polygon(double faceFrom, double faceTo, double backFrom, double backTo) {
        return FACTORY.createPolygon(new Coordinate[] {
            new Coordinate(faceFrom, 0), new Coordinate(faceTo, 0), new Coordinate(backTo, T), new Coordinate(backFrom, T),
            new Coordinate(faceFrom, 0)
        });
    }

    private static double area(Outline outline) {
        return outline.areaMm2();
    }

    private static double perimeter(Outline outline) {
        double sum = 0;
        for (int side = 0; side < outline.sides(); side++) sum += outline.sideMm(side);
        return sum;
    }

    /** Corners are told to a tenth, which moves a cut by up to 0.2: less than a pencil line, so one drawing serves both; the saw's angle is told exactly. */
    @ParameterizedTest(name = "face {0}, back {1}, length {2}, set {3}, second outer face on the face {4}: {5}")
    @CsvSource({
        "0, 0, 0, 30, false, true", "0.2, -0.2, 0.2, 30, false, true", "0.3, 0, 0, 30, false, false", "-0.3, 0, 0, 30, false, false",
        "0, 0.3, 0, 30, false, false", "0, 0, 0.3, 30, false, false", "0, 0, 0, 30.1, false, false", "0, 0, 0, 30, true, false"
    })
    void oneDrawingServesNestsWithinAPencilLine(double face, double back, double length, double set, boolean onFace, boolean alike) {
        assertEquals(alike, nest(0, 0, 0, 0, 30, false).alike(nest(0, face, back, length, set, onFace)));
        assertEquals(alike, nest(0, face, back, length, set, onFace).alike(nest(0, 0, 0, 0, 30, false)));
        assertEquals(alike, nest(30, 0, 0, 0, 30, false).alike(nest(30, face, back, length, set, onFace)), "every cut counts");
        assertFalse(nest(0, 0, 0, 0, 30, false).alike(nest(30, face, back, length, set, onFace)), "one with a slanted first end has one cut more");
        assertFalse(nest(30, face, back, length, set, onFace).alike(nest(0, 0, 0, 0, 30, false)));
    }

    private static Nest nest(double first, double face, double back, double length, double set, boolean onFace) {
        Piece piece = pieces(Beds.bed("K", Outline.rectangle(2400, 1200), 1, Lap.TURNING)).get(0);
        return new Nest(List.of(
                new Nest.Part(piece, true, first, set, 0, 1000 + face, 0, 942.3 + back),
                new Nest.Part(piece, onFace, set, 0, 1004.6 + face, 2000, 946.9 + back, 2000)), 2000 + length);
    }
}
