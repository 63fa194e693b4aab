package lapyard.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class FewestRectanglesTest {
    /** Sources of the formula and of the counts stand in the case file. */
    static List<JsonNode> file() throws Exception {
        try (InputStream in =
                FewestRectanglesTest.class.getResourceAsStream("/cases/geometry/minimal-rectangles.json")) {
            List<JsonNode> cases = new ArrayList<>();
            new ObjectMapper().readTree(in).get("polygons").forEach(cases::add);
            return cases;
        }
    }

    static Stream<Arguments> cases() throws Exception {
        return file().stream()
                .filter(one -> one.get("holes").isEmpty())
                .map(one -> Arguments.of(one.get("name").asText(), one));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void splitsAWorkedOutlineIntoItsKnownLeastNumber(String name, JsonNode one) {
        List<Point> corners = new ArrayList<>();
        one.get("outer")
                .forEach(
                        p -> corners.add(new Point(p.get(0).asDouble(), p.get(1).asDouble())));
        Outline outline = new Outline(corners);
        int least = one.get("minimal_rectangles").asInt();

        assertEquals(least, count(outline));
        assertEquals(one.get("concave_vertices").size(), outline.insideCorners());
        List<FewestRectangles.Split> splits = FewestRectangles.splits(outline);
        for (FewestRectangles.Split split : splits) {
            assertEquals(least, split.rectangles().size());
            assertEquals(least - 1, split.cuts().size());
            assertTiles(outline, split.rectangles(), name);
        }
        if (outline.insideCorners() <= FewestRectangles.ALL_SPLITS_UP_TO) {
            Set<Rectangle> example = new HashSet<>();
            one.get("example_partition")
                    .forEach(r -> example.add(new Rectangle(
                            r.get(0).asDouble(),
                            r.get(1).asDouble(),
                            r.get(2).asDouble() - r.get(0).asDouble(),
                            r.get(3).asDouble() - r.get(1).asDouble())));
            assertTrue(
                    splits.stream().anyMatch(split -> new HashSet<>(split.rectangles()).equals(example)),
                    () -> name + ": the file's own split is not among " + splits.size());
        }
    }

    @Test
    void onlyTheCaseWithAHoleIsSetAsideSinceABedsOutlineHasNone() throws Exception {
        assertEquals(13, file().size());
        assertEquals(
                List.of("frame-with-hole"),
                file().stream()
                        .filter(one -> !one.get("holes").isEmpty())
                        .map(one -> one.get("name").asText())
                        .toList());
    }

    /**
     * Splits of a staircase of n steps into n rectangles are counted by the Catalan numbers (Stanley, Catalan
     * Numbers, 2015).
     */
    @ParameterizedTest(name = "{0} steps")
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7})
    void aStaircaseHasAsManySplitsAsItsCatalanNumber(int steps) {
        long[] catalan = {1, 1, 2, 5, 14, 42, 132, 429};
        List<Point> corners = new ArrayList<>(List.of(new Point(0, 0), new Point(steps, 0)));
        for (int i = 1; i <= steps; i++) {
            corners.add(new Point(steps - i + 1, i));
            corners.add(new Point(steps - i, i));
        }
        assertEquals(
                catalan[steps], FewestRectangles.splits(new Outline(corners)).size());
    }

    @Test
    void everySplitOfARandomOutlineHasTheLeastCountAndNoTwoAreAlike() {
        Random random = new Random(20);
        for (int i = 0; i < 300; i++) {
            Outline outline = RandomOutlines.of(random, 300, 1500);
            List<FewestRectangles.Split> splits = FewestRectangles.splits(outline);
            int least = count(outline);
            Set<Set<Rectangle>> different = new HashSet<>();
            for (FewestRectangles.Split split : splits) {
                assertEquals(least, split.rectangles().size(), () -> "outline " + outline);
                assertTiles(outline, split.rectangles(), "outline " + outline);
                assertTrue(different.add(new HashSet<>(split.rectangles())));
            }
        }
    }

    /** Exhaustive: no tiling of the corner grid has fewer rectangles. */
    @Test
    void noSearchOverAllTilingsFindsFewer() {
        Random random = new Random(21);
        int tried = 0;
        while (tried < 60) {
            Outline outline = RandomOutlines.of(random, 300, 900);
            int least = count(outline);
            if (least > 5 || least == 1) {
                continue;
            }
            tried++;
            assertTrue(!ExhaustiveTiling.exists(outline, least - 1), () -> "fewer than " + least + " for " + outline);
            assertTrue(ExhaustiveTiling.exists(outline, least));
        }
    }

    static void assertTiles(Outline outline, List<Rectangle> rectangles, String name) {
        double sum = rectangles.stream().mapToDouble(Rectangle::areaMm2).sum();
        assertEquals(outline.areaMm2(), sum, 1e-6 * sum, name);
        for (int i = 0; i < rectangles.size(); i++) {
            Rectangle a = rectangles.get(i);
            for (int j = i + 1; j < rectangles.size(); j++) {
                Rectangle b = rectangles.get(j);
                assertTrue(
                        a.right() <= b.x() || b.right() <= a.x() || a.top() <= b.y() || b.top() <= a.y(),
                        () -> name + ": " + a + " lies on " + b);
            }
            assertTrue(ExhaustiveTiling.contains(outline, a.x() + a.widthMm() / 2, a.y() + a.depthMm() / 2), name);
        }
    }

    /** Inside corners, less the most chords between two of them that do not touch each other, and one. */
    private static int count(Outline outline) {
        CutGrid grid = CutGrid.of(outline.counterClockwise());
        return grid.insideCorners().size() - FewestRectangles.largestSet(grid.chords()).size() + 1;
    }
}
