package lapyard.diagrams;

import lapyard.plan.CannotAnswer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import lapyard.construction.CrossTies;
import lapyard.drawing.Page;
import lapyard.drawing.Paper;
import lapyard.drawing.Scale;
import lapyard.drawing.Shape;
import lapyard.drawing.TextBox;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Garden;
import lapyard.plan.Ground;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

/** How a plan fills its sheet, and what a draughtsman looks for on it. */
class PlanFrameTest {
    private static final PlanOptions A3 = TestOptions.plan(false);

    private static Garden yard(double width, double depth, Bed... beds) {
        Ground ground = new Ground(List.of(Outline.rectangle(width, depth)), List.of(), List.of(), List.of(), 0);
        return TestGardens.garden("Yard", false, ground, List.of(beds), List.of());
    }

    private static Page draw(Garden garden, PlanOptions options) {
        return TestGardens.draw(garden, garden.beds().stream().map(TestGardens::work).toList(), List.of(), List.of(), options);
    }

    private static Stream<Shape> all(List<Shape> shapes) {
        return shapes.stream().flatMap(shape -> shape instanceof Shape.Group group ? Stream.concat(Stream.of(shape), all(group.shapes())) : Stream.of(shape));
    }

    private static Optional<Shape.Group> group(Page page, String id) {
        return all(page.shapes()).filter(Shape.Group.class::isInstance).map(Shape.Group.class::cast).filter(one -> one.id().equals(id)).findFirst();
    }

    private static List<String> texts(Page page, String id) {
        return group(page, id).stream().flatMap(one -> all(one.shapes())).filter(Shape.Text.class::isInstance).map(one -> ((Shape.Text) one).text()).toList();
    }

    /** The next larger scale of the table would hold it on no layout, upright or turned; so it fills more than half of its field. */
    @Test
    void noLargerScaleOfTheTableWouldFit() {
        for (long seed = 1; seed <= 200; seed++) {
            Random random = new Random(seed);
            Garden garden = yard(3000 + random.nextInt(60_000), 3000 + random.nextInt(60_000));
            PlanOptions options = TestOptions.on(A3, Paper.values()[random.nextInt(3)]);
            Box extent = Box.round(garden.ground().outline().get(0).corners());
            SheetLayout.Chosen chosen = SheetLayout.choose(options.sheet().paper(), Optional.empty(), false, extent, 60);
            int larger = chosen.scale().n() - 1;
            while (!Scale.usual(larger, false).equals(new Scale(larger))) larger--;
            Optional<Scale> next = Optional.of(new Scale(larger));
            assertThrows(CannotAnswer.class, () -> SheetLayout.choose(options.sheet().paper(), next, false, extent, 60), "seed " + seed);
            Box field = chosen.layout().field();
            double wide = chosen.scale().paperMm(chosen.turned() ? extent.height() : extent.width());
            double high = chosen.scale().paperMm(chosen.turned() ? extent.width() : extent.height());
            assertTrue(wide <= field.width() && high <= field.height(), "seed " + seed);
            assertTrue(Math.max(wide / (field.width() - 18), high / (field.height() - 18)) > 0.5, "seed " + seed);
        }
    }

    /** A yard that is turned has its front on the right, the house wall's band with it, and says so; north turns with it. */
    @Test
    void aYardIsTurnedWhereThatGivesALargerScale() throws Exception {
        int turned = 0;
        for (int depth = 4000; depth <= 40_000; depth += 500) {
            for (int width = 4000; width <= 20_000; width += 1000) {
                Box extent = new Box(0, 0, width, depth);
                if (!SheetLayout.choose(Paper.A3, Optional.empty(), false, extent, 60).turned()) continue;
                turned++;
                if (turned > 1) continue;
                Bed bed = TestGardens.bed("W", "", Outline.rectangle(2000, 1000), 500, 1500, 0, 2);
                Page page = draw(yard(width, depth, bed), A3);
                Drawn drawn = Drawn.of(page);
                double[] ground = drawn.polygons("ground");
                double[] own = drawn.polygons("bed-W");
                double scale = width / (ground[3] - ground[1]);
                assertEquals(depth, (ground[2] - ground[0]) * scale, 0.1);
                assertEquals(1500 + 100, (ground[2] - own[2]) * scale, 0.1, "inner face from the house wall, which is on the right");
                assertEquals(500 + 100, (ground[3] - own[3]) * scale, 0.1, "its left is below");
                assertTrue(drawn.polygons("yard")[2] > ground[2] + 1, "the band of the house wall lies to the right of the yard");
                assertTrue(drawn.texts().stream().anyMatch(text -> text.startsWith("Turned: ")), drawn.texts()::toString);
                assertEquals(List.of(), drawn.collisions());
            }
        }
        assertTrue(turned > 20, "yards that are turned: " + turned);
    }

    /**
     * Yard 12000 x 9000, beds 2400 x 1200 at 800, 1500 and 1800 x 900 at 5000, 1500: along the front 800, 2400, 1800, 1800 and 5200,
     * which make 12000. Each figure stands once on the plan (ISO 129-1: no dimension is told twice).
     */
    @Test
    void chainsOutsideTheYardTellWhereBedsStand() {
        Page page = draw(yard(12_000, 9_000,
                TestGardens.bed("R", "", Outline.rectangle(2400, 1200), 800, 1500, 0, 3),
                TestGardens.bed("S", "", Outline.rectangle(1800, 900), 5000, 1500, 0, 3)), A3);
        List<String> figures = texts(page, "chains");
        assertEquals(List.of("800", "2400", "1800", "1800", "5200"), figures.subList(0, 5));
        assertEquals(List.of("1500", "1200", "6300"), figures.subList(5, 8), "up the left side");
        assertEquals(List.of("1500", "900", "6600"), figures.subList(8, figures.size()), "up the right side");
        assertEquals(List.of(), texts(page, "distances"));
        assertEquals(List.of(), texts(page, "dimensions"));
        Box yard = Box.round(group(page, "ground").orElseThrow().shapes().stream()
                .flatMap(shape -> ((Shape.Area) (shape instanceof Shape.Group one ? one.shapes().get(0) : shape)).rings().get(0).stream()).toList());
        all(group(page, "chains").orElseThrow().shapes()).filter(Shape.Text.class::isInstance).map(Shape.Text.class::cast).forEach(figure ->
                assertFalse(Box.round(TextBox.of(figure)).touches(yard), figure.text() + " stands in the yard"));
    }

    /** A bed behind another is told by no chain, so its distances are drawn between the beds. */
    @Test
    void aHiddenBedHasItsDistancesBetweenTheBeds() {
        Page page = draw(yard(12_000, 9_000,
                TestGardens.bed("R", "", Outline.rectangle(2400, 1200), 800, 1500, 0, 3),
                TestGardens.bed("M", "", Outline.rectangle(1000, 1000), 1100, 4100, 0, 3),
                TestGardens.bed("S", "", Outline.rectangle(2400, 1200), 800, 6500, 0, 3)), A3);
        assertTrue(texts(page, "chains").contains("800"), () -> texts(page, "chains").toString());
        assertTrue(texts(page, "distances").contains("1100"), () -> texts(page, "distances").toString());
    }

    /** ISO 128-23:1999, line group 0.35: narrow 0.18, signs 0.25, wide 0.35, extra wide 0.7 (from memory). */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void aPlanHasTheLinesOfOneLineGroup(boolean mono) {
        Garden garden = TestGardens.chapelYard();
        Page page = TestGardens.draw(garden, garden.beds().stream().map(TestGardens::work).toList(), TestGardens.chapelPaths(), List.of(), mono ? TestOptions.plan(TestOptions.mono(A3.sheet())) : A3);
        Set<Double> widths = new TreeSet<>();
        all(page.shapes()).forEach(shape -> {
            if (shape instanceof Shape.Lines lines) widths.add(lines.stroke().widthMm());
            if (shape instanceof Shape.Circle circle) circle.stroke().ifPresent(stroke -> widths.add(stroke.widthMm()));
            if (shape instanceof Shape.Area area) area.stroke().ifPresent(stroke -> widths.add(stroke.widthMm()));
        });
        // the gap of a gate is a broad line of paper
        widths.remove(Inks.CUT * 1.6);
        assertEquals(Set.of(0.18, 0.25, 0.35, 0.7), widths);
    }

    /** A bed of 4200 x 1200 and three courses of 200 has a tie; it is drawn from inner face to inner face at its place. */
    @Test
    void crossTiesAreDrawnAtTheirPlaces() {
        Bed bed = TestGardens.bed("L", "", Outline.rectangle(4200, 1200), 1000, 1500, 0, 3);
        Garden garden = yard(12_000, 9_500, bed);
        var work = TestGardens.work(bed);
        CrossTies held = CrossTies.of(bed, work.frame().inner(), work.frame().seams());
        assertFalse(held.ties().isEmpty());
        Page page = draw(garden, A3);
        Box ground = Box.round(((Shape.Area) group(page, "ground").orElseThrow().shapes().get(0)).rings().get(0));
        List<List<Point>> lines = all(group(page, "bed-L").orElseThrow().shapes())
                .filter(Shape.Lines.class::isInstance).flatMap(one -> ((Shape.Lines) one).lines().stream()).filter(line -> line.size() == 2).toList();
        for (var tie : held.ties()) {
            Point from = bed.placement().toYard(tie.from());
            Point on = new Point(ground.left() + from.x() / 50, ground.high() - from.y() / 50);
            assertTrue(lines.stream().anyMatch(line -> line.get(0).distanceMm(on) < 0.01 && Math.abs(line.get(0).distanceMm(line.get(1)) - 1000 / 50.0) < 0.01),
                    tie + " is not in " + lines);
        }
    }

    /** 200 beds of 600 to 1500 by 400 to 1000, as near as 100 to each other, in a yard of 30 to 40 m: each has its code, no text lies on another. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void eachOf200SmallBedsIsLabelled(long seed) throws Exception {
        Random random = new Random(seed);
        List<Bed> beds = new ArrayList<>();
        double cellX = 1600 + random.nextInt(400);
        double cellY = 1100 + random.nextInt(400);
        for (int i = 0; i < 200; i++) {
            double width = 600 + random.nextInt(900);
            double depth = 400 + random.nextInt(600);
            double x = 500 + (i % 20) * cellX + random.nextDouble() * (cellX - width - 100);
            double y = 500 + (i / 20) * cellY + random.nextDouble() * (cellY - depth - 100);
            String id = seed % 2 == 0 ? "B" + (i + 1) : "row" + (i / 20 + 1) + "-" + (i % 20 + 1);
            beds.add(TestGardens.bed(id, "", Outline.rectangle(width, depth), x, y, 0, 2));
        }
        Page page = draw(yard(20 * cellX + 1000, 10 * cellY + 1000, beds.toArray(Bed[]::new)), A3);
        List<String> without = beds.stream().map(Bed::id).filter(id -> texts(page, Shape.id("label", id)).stream().noneMatch(text -> text.startsWith(id))).toList();
        assertEquals(List.of(), without);
        assertEquals(List.of(), Drawn.of(page).collisions());
    }
}
