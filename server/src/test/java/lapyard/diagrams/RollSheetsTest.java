package lapyard.diagrams;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import lapyard.catalogue.Roll;
import lapyard.drawing.Page;
import lapyard.drawing.Paper;
import lapyard.sheets.RollResult;
import lapyard.sheets.RollResult.Placed;
import lapyard.sheets.RollResult.RollLayout;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

class RollSheetsTest {
    private static final GeometryFactory JTS = new GeometryFactory();

    /**
     * Liner of beds M and N worked by hand, on a roll of 4000: M-R1 3960 x 2460, then M-R2 turned beside N-R1 turned,
     * 1780 + 1860 = 3640 across and 2760 along: 2460 + 2760 = 5220 used, 5500 bought in half metres.
     */
    private static final RollLayout BOTH = new RollLayout("W4", 5220, 5500, List.of(
            new Placed("M-R1", 0, 0, 3960, 2460, false),
            new Placed("M-R2", 0, 2460, 1780, 2760, true),
            new Placed("N-R1", 1780, 2460, 1860, 2760, true)));

    private static RollSheets.Material material(double widthMm, RollLayout... layouts) {
        RollResult result = new RollResult(
                "liner", new BigDecimal("49.50"), new BigDecimal("49.50"), true, 0, List.of(layouts), List.of());
        return new RollSheets.Material(
                "liner", List.of(new Roll("W4", "liner", widthMm, Optional.empty(), 500, OptionalDouble.empty(), "", OptionalDouble.empty(), true)), result, 6.5,
                "GBP 49.50", "GBP 9.00");
    }

    private static List<Page> pages(BenchOptions options, RollSheets.Material... materials) {
        return RollSheets.pages(List.of(materials), options);
    }

    @Test
    void partsComeOffTheRollsEndOneAfterTheOtherAndAreThenCutUp() {
        RollCuts cuts = RollCuts.of(BOTH, 4000).orElseThrow();
        assertEquals(
                List.of(
                        new RollCuts.Cut(true, 2460, 0, 4000),
                        new RollCuts.Cut(false, 3960, 0, 2460),
                        new RollCuts.Cut(true, 5220, 0, 4000),
                        new RollCuts.Cut(false, 1780, 2460, 5220),
                        new RollCuts.Cut(false, 3640, 2460, 5220)),
                cuts.cuts());
        assertEquals(
                List.of(new Box(0, 5220, 4000, 5500), new Box(3640, 2460, 4000, 5220), new Box(3960, 0, 4000, 2460)),
                cuts.remnants());
    }

    /** Five pieces round a square hole in the middle: no straight cut parts them. */
    @Test
    void aPinwheelHasNoStraightCuts() {
        RollLayout wheel = new RollLayout("W4", 3000, 3000, List.of(
                new Placed("a", 0, 0, 2000, 1000, false), new Placed("b", 2000, 0, 1000, 2000, false),
                new Placed("c", 1000, 2000, 2000, 1000, false), new Placed("d", 0, 1000, 1000, 2000, false),
                new Placed("e", 1000, 1000, 1000, 1000, false)));
        assertTrue(RollCuts.of(wheel, 3000).isEmpty());
        assertTrue(pages(BenchOptions.usual("Yard", false), material(3000, wheel)).size() > 0);
    }

    /** Whatever was cut apart by random straight cuts is cut again: the same pieces, no cut through any, all area told. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void randomStraightCutsAreFoundAgain(long seed) {
        Random random = new Random(seed);
        List<Placed> placed = new ArrayList<>();
        split(new Box(0, 0, 3000 + random.nextInt(2000), 4000 + random.nextInt(9000)), 5, random, placed);
        double width = placed.stream().mapToDouble(p -> p.x() + p.widthMm()).max().orElseThrow();
        double length = placed.stream().mapToDouble(p -> p.y() + p.heightMm()).max().orElseThrow();
        placed.removeIf(p -> random.nextInt(5) == 0);
        RollLayout layout = new RollLayout("W4", length, length + 400, placed);
        RollCuts cuts = RollCuts.of(layout, width).orElseThrow();
        for (RollCuts.Cut cut : cuts.cuts()) {
            Box line = cut.across()
                    ? new Box(cut.fromMm(), cut.atMm(), cut.toMm(), cut.atMm())
                    : new Box(cut.atMm(), cut.fromMm(), cut.atMm(), cut.toMm());
            for (Placed p : placed) {
                assertTrue(!geometry(inner(p)).intersects(geometry(line)), "seed " + seed + ": " + cut + " through " + p);
            }
        }
        double pieces = placed.stream().mapToDouble(p -> p.widthMm() * p.heightMm()).sum();
        double left = cuts.remnants().stream().mapToDouble(b -> b.width() * b.height()).sum();
        assertEquals(width * layout.boughtMm(), pieces + left, 1);
    }

    private static Box inner(Placed p) {
        return new Box(p.x() + 0.1, p.y() + 0.1, p.x() + p.widthMm() - 0.1, p.y() + p.heightMm() - 0.1);
    }

    private static Geometry geometry(Box box) {
        return JTS.toGeometry(new Envelope(box.left(), box.right(), box.low(), box.high()));
    }

    private static void split(Box box, int depth, Random random, List<Placed> placed) {
        boolean across = random.nextBoolean();
        double size = across ? box.height() : box.width();
        if (depth == 0 || size < 800) {
            placed.add(new Placed("p" + placed.size(), box.left(), box.low(), box.width(), box.height(), false));
            return;
        }
        double at = (across ? box.low() : box.left()) + 300 + random.nextInt((int) size - 600);
        split(across ? new Box(box.left(), box.low(), box.right(), at) : new Box(box.left(), box.low(), at, box.high()), depth - 1, random, placed);
        split(across ? new Box(box.left(), at, box.right(), box.high()) : new Box(at, box.low(), box.right(), box.high()), depth - 1, random, placed);
    }

    @Test
    void theSheetTellsDistancesCutsTurnedPiecesRemnantsAndSaving() throws Exception {
        List<String> texts = new ArrayList<>();
        for (Page page : pages(BenchOptions.usual("Yard", false), material(4000, BOTH))) {
            texts.addAll(Drawn.of(page).texts());
        }
        assertTrue(texts.containsAll(List.of(
                "roll 4000 wide: buy 5500, used 5220", "M-R1", "3960 × 2460", "1780 × 2760", "2460", "5220",
                "2460, end", "1780, edge", "along, 2460 – 5220")), texts::toString);
        assertEquals(2, texts.stream().filter("turned"::equals).count(), "two pieces drawn");
        assertEquals(2, texts.stream().filter("yes"::equals).count(), "and listed");
        assertTrue(texts.contains("Buy 5.5 m for GBP 49.50. Bed by bed it would be 6.5 m: 1 m less, GBP 9.00 saved."), texts::toString);
        assertTrue(texts.stream().anyMatch(t -> t.startsWith("Keep for patches and corners: 360 × 2760 (")), texts::toString);
    }

    /** Drawn to one scale both ways: 2460 x 3960 and 2760 x 1780. */
    @Test
    void piecesAreToScale() {
        Page page = pages(BenchOptions.usual("Yard", false), material(4000, BOTH)).get(0);
        List<Box> boxes = page.shapes().stream()
                .filter(shape -> shape instanceof lapyard.drawing.Shape.Area area && area.stroke().isEmpty() && area.hatch().isEmpty())
                .map(shape -> Box.round(((lapyard.drawing.Shape.Area) shape).rings().get(0)))
                .toList();
        for (double[] size : new double[][] {{2460, 3960}, {2760, 1780}, {2760, 1860}}) {
            assertTrue(boxes.stream().anyMatch(b -> Math.abs(b.width() / b.height() - size[0] / size[1]) < 1e-6), boxes::toString);
        }
        double scale = 2460 / boxes.get(0).width();
        assertEquals(Math.rint(scale), scale, 1e-6);
    }

    /** A membrane of 60 m is rolled out in strips below each other, and every piece is named. */
    @ParameterizedTest(name = "imperial {0}")
    @ValueSource(booleans = {false, true})
    void aLongRollGoesOnBelowAndNothingRunsIntoAnythingElse(boolean imperial) throws Exception {
        List<Placed> placed = new ArrayList<>();
        double y = 0;
        for (int i = 0; i < 30; i++) {
            double length = 500 + 137.3 * (i % 17);
            placed.add(new Placed((i % 7 == 0 ? "W".repeat(40) : "P") + i, 0, y, 900, length, i % 2 == 0));
            placed.add(new Placed("Q" + i, 900, y, 700, length - 60, false));
            y += length;
        }
        RollLayout layout = new RollLayout("W4", y, Math.ceil(y / 500) * 500, placed);
        BenchOptions options = TestOptions.stamped(BenchOptions.usual("Yard", imperial).on(imperial ? Paper.LETTER : Paper.A4), "revision 3", "");
        List<Page> pages = pages(options, material(2000, layout));
        List<String> texts = new ArrayList<>();
        for (Page page : pages) {
            assertEquals(List.of(), Drawn.of(page).collisions(), page.title());
            texts.addAll(Drawn.of(page).texts());
        }
        for (int i = 0; i < 30; i++) {
            assertTrue(texts.contains("Q" + i), "Q" + i);
        }
        assertTrue(texts.contains("goes on"));
    }

    @Test
    void aGardenWithoutRollsHasOneSheetThatSaysSo() throws Exception {
        List<Page> pages = pages(TestOptions.stale(BenchOptions.usual("Yard", false), "older"));
        assertEquals(1, pages.size());
        assertTrue(Drawn.of(pages.get(0)).says("Nothing to cut from a roll in this garden."));
        assertTrue(Drawn.of(pages.get(0)).says("STALE: older"));
    }
}
