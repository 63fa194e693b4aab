package lapyard.diagrams;

import lapyard.plan.CannotAnswer;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import lapyard.construction.BedWork;
import lapyard.construction.Beds;
import lapyard.drawing.Page;
import lapyard.drawing.Paper;
import lapyard.drawing.PdfLines;
import lapyard.drawing.PdfWriter;
import lapyard.drawing.Scale;
import lapyard.drawing.Shape;
import lapyard.drawing.SvgWriter;
import lapyard.geometry.Outline;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.ground.GateSwing;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.Finding.Weight;
import lapyard.plan.Garden;
import lapyard.plan.Ground;
import lapyard.plan.KeepClearKind;
import lapyard.plan.Place;
import lapyard.plan.SurfaceKind;
import lapyard.plan.Told;
import lapyard.plan.WayKind;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

class PlanDrawingTest {
    private static final PlanOptions A3 = TestOptions.plan(false);

    private static List<BedWork> works(Garden garden) {
        return garden.beds().stream().map(TestGardens::work).toList();
    }

    private static Garden yardOf(double width, double depth) {
        Ground ground = new Ground(List.of(Outline.rectangle(width, depth)), List.of(), List.of(), List.of(), 0);
        return TestGardens.garden("Yard", false, ground, List.of(), List.of());
    }

    private static Page chapel(PlanOptions options) {
        Garden garden = TestGardens.chapelYard();
        return TestGardens.draw(garden, works(garden), TestGardens.chapelPaths(), snags(), options);
    }

    private static List<Finding> snags() {
        return List.of(
                Told.saying(Weight.SNAG, Place.wall("H", "D"), "240 over the edge of the long walk.").way(WayKind.TAKE_OUT),
                Told.saying(Weight.NOTE, Place.bed("L"), "only a note"),
                Told.saying(Weight.SNAG, Place.bed("T"), "the gate is 220 short of clear.").way(WayKind.TAKE_OUT));
    }

    /** ISO 7200:2004 wants the title whole; it takes two lines of its field and stays within it. */
    @Test
    void aLongNameStandsWholeInTheTitleBlock() {
        String name = "Wheelwright's orchard yard behind the old smithy at Lower Tanyard Lane, the upper terrace";
        Garden garden = TestGardens.garden(name, false, new Ground(List.of(Outline.rectangle(9000, 7000)), List.of(), List.of(), List.of(), 0), List.of(), List.of());
        List<Shape.Text> texts = Drawn.textShapes(TestGardens.draw(garden, List.of(), List.of(), List.of(), A3).shapes());
        Shape.Text caption = texts.stream().filter(text -> text.text().equals("Title")).findFirst().orElseThrow();
        List<Shape.Text> lines = texts.stream().filter(text -> text.at().x() == caption.at().x() && text.at().y() > caption.at().y() && text.at().y() < caption.at().y() + 9).toList();
        assertEquals(name, lines.stream().map(Shape.Text::text).collect(java.util.stream.Collectors.joining(" ")));
        assertEquals(2, lines.size());
        assertTrue(lines.get(0).at().y() - lines.get(0).sizeMm() * Shape.Text.CAPITALS > caption.at().y(), "below its caption");
        assertTrue(lines.get(1).at().y() - lines.get(0).at().y() >= lines.get(0).sizeMm(), "each on its own line");
    }

    /** mm = size / scale: 3000 at 1:50 is 60.0 mm; a yard of 12.0 x 9.5 m is 240 x 190 mm and fits A3. */
    @Test
    void aBedOf3000Measures60MillimetresAtOneToFifty() throws Exception {
        Bed bed = TestGardens.bed("M", "", TestGardens.M, 800, 1500, 0, 3);
        Ground ground = new Ground(List.of(TestGardens.YARD), List.of(), List.of(), List.of(), 0);
        Garden garden = TestGardens.garden("Yard", false, ground, List.of(bed), List.of());
        Drawn drawn = Drawn.of(TestGardens.draw(garden, List.of(), List.of(), List.of(), A3));
        double[] own = drawn.polygons("bed-M");
        assertEquals(60.0, own[2] - own[0], 0.0011);
        assertEquals(48.0, own[3] - own[1], 0.0011);
        double[] yard = drawn.polygons("ground");
        assertEquals(240, yard[2] - yard[0], 0.0011);
        assertEquals(190, yard[3] - yard[1], 0.0011);
        // From the house wall and from the left, at 1:50.
        assertEquals(1500 / 50.0, yard[3] - own[3], 0.0011);
        assertEquals(800 / 50.0, own[0] - yard[0], 0.0011);
        assertTrue(drawn.says("1:50") && drawn.says("A3"), drawn.texts()::toString);
    }

    /** Scales of a scale rule on the drawing space of A3 (420-20-10 by 297-10-10 mm): 22 x 14 m needs 1:75, 12 x 9 m 1:50. */
    @ParameterizedTest(name = "{0} x {1} mm goes on A3 at 1:{2}")
    @CsvSource({"22000, 14000, 75", "26000, 20000, 100", "12000, 9000, 50", "12000, 9500, 50", "2400, 1200, 10", "130000, 80000, 500"})
    void theLargestScaleThatFitsIsTaken(double width, double depth, int n) throws Exception {
        assertTrue(Drawn.of(TestGardens.draw(yardOf(width, depth), List.of(), List.of(), List.of(), A3)).says("1:" + n));
    }

    @Test
    void theHouseWallRunsAlongTheBottomEdge() throws Exception {
        Drawn drawn = Drawn.of(chapel(A3));
        double[] ground = drawn.polygons("ground");
        double[] withWall = drawn.polygons("yard");
        assertTrue(withWall[3] > ground[3] && withWall[1] >= ground[1] - 0.001, "the wall's band lies below the yard");
        assertTrue(drawn.says("house wall 12000"), drawn.texts()::toString);
        assertTrue(drawn.says("5590.2"), "side 3-4 of the yard, hypot(5000, 2500)");
    }

    @Test
    void sheetsAreLaidTheWayThatGivesTheLargerScale() {
        Page tall = TestGardens.draw(yardOf(8000, 11000), List.of(), List.of(), List.of(), TestOptions.on(A3, Paper.A4));
        Page wide = TestGardens.draw(yardOf(11000, 8000), List.of(), List.of(), List.of(), TestOptions.on(A3, Paper.A4));
        assertEquals(297, tall.heightMm());
        assertEquals(210, wide.heightMm());
        Page tabloid = TestGardens.draw(yardOf(11000, 5000), List.of(), List.of(), List.of(), TestOptions.on(A3, Paper.TABLOID));
        assertEquals(17 * 25.4, tabloid.widthMm(), 1e-9);
    }

    @Test
    void aScaleThatDoesNotFitIsRefusedNamingTheNearestThatDoes() throws Exception {
        Garden garden = TestGardens.chapelYard();
        for (Paper paper : Paper.values()) {
            for (int n : new int[] {1, 5, 10}) {
                PlanOptions asked = TestOptions.at(TestOptions.on(A3, paper), n);
                CannotAnswer e = assertThrows(CannotAnswer.class, () -> TestGardens.draw(garden, List.of(), List.of(), List.of(), asked));
                Scale nearest = new Scale(Integer.parseInt(Told.refusal(e).replaceFirst(".*Use 1:(\\d+), or use larger paper\\..*", "$1")));
                assertTrue(Scale.usual(nearest.n(), false).equals(nearest) && nearest.n() > n, e.getMessage());
                assertTrue(Drawn.of(TestGardens.draw(garden, List.of(), List.of(), List.of(), TestOptions.at(asked, nearest.n()))).says(nearest.toString()));
            }
        }
        assertTrue(Drawn.of(TestGardens.draw(garden, List.of(), List.of(), List.of(), TestOptions.at(A3, 125))).says("1:125"), "any smaller one may be asked for");
    }

    /** Dimension lines, ISO 129-1: as long as what they measure to scale, the wall's true length written on each. */
    @Test
    void everyWallOfAnAngledBedHasADimensionLineOfItsLength() {
        Bed bed = TestGardens.bed("M", "", TestGardens.M, 4000, 3500, 0, 3);
        // a yard has chains, which tell some of the walls
        Page page = TestGardens.draw(TestGardens.garden("Bed", false, TestGardens.NO_GROUND, List.of(bed), List.of()), List.of(), List.of(), List.of(), TestOptions.at(A3, 50));
        List<Shape> drawn = group(page.shapes(), "dimensions-M").orElseThrow().shapes();
        List<Double> lines = new ArrayList<>();
        List<Double> written = new ArrayList<>();
        for (Shape shape : drawn) {
            if (shape instanceof Shape.Lines line) lines.add(line.lines().get(0).get(0).distanceMm(line.lines().get(0).get(1)) * 50);
            if (shape instanceof Shape.Text text) written.add(Double.valueOf(text.text().replace("\u2009", "").replace(" ", "")));
        }
        List<Double> walls = new ArrayList<>();
        for (int i = 0; i < bed.outline().sides(); i++) walls.add(bed.outline().sideMm(i));
        assertEquals(walls, written);
        for (int i = 0; i < walls.size(); i++) assertEquals(walls.get(i), lines.get(i), 1e-6);
    }

    @Test
    void aRectangleIsDimensionedOnceEachWay() throws Exception {
        Drawn drawn = Drawn.of(TestGardens.draw(yardWith(TestGardens.bed("R", "", Outline.rectangle(2400, 1200), 3000, 3000, 90, 2)), List.of(), List.of(), List.of(), A3));
        assertEquals(List.of("1200", "2400"), drawn.texts().stream().filter(List.of("2400", "1200")::contains).sorted().toList());
    }

    private static Garden yardWith(Bed bed) {
        Ground ground = new Ground(List.of(TestGardens.YARD), List.of(), List.of(), List.of(), 0);
        return TestGardens.garden("Yard", false, ground, List.of(bed), List.of());
    }

    private static Optional<Shape.Group> group(List<Shape> shapes, String id) {
        return shapes.stream()
                .filter(Shape.Group.class::isInstance)
                .map(Shape.Group.class::cast)
                .flatMap(one -> one.id().equals(id) ? Stream.of(one) : group(one.shapes(), id).stream())
                .findFirst();
    }

    @Test
    void noTwoTextsLieOnEachOther() throws Exception {
        for (Paper paper : Paper.values()) {
            assertEquals(List.of(), Drawn.of(chapel(TestOptions.on(A3, paper))).collisions(), paper.label());
        }
        assertEquals(List.of(), Drawn.of(chapel(TestOptions.plan(TestOptions.mono(A3.sheet())))).collisions());
        for (int count : new int[] {1, 7, 60, 200}) {
            Garden field = TestGardens.field(count);
            assertEquals(List.of(), Drawn.of(TestGardens.draw(field, works(field), List.of(), List.of(), A3)).collisions(), count + " beds");
        }
    }

    @Test
    void noTwoTextsLieOnEachOtherWhereverBedsStand() throws Exception {
        for (long seed = 1; seed <= 12; seed++) {
            var random = new java.util.Random(seed);
            List<Bed> beds = new ArrayList<>();
            for (int i = 0; i < 25; i++) {
                Outline outline = i % 3 == 0 ? TestGardens.M
                        : Outline.rectangle(900 + random.nextInt(3000), 700 + random.nextInt(900));
                beds.add(TestGardens.bed("R" + i, "Row " + "abcdefgh ".repeat(random.nextInt(6)), outline,
                        random.nextInt(16000), random.nextInt(11000), random.nextInt(4) * 90 + (i % 5 == 0 ? 17 : 0), 2));
            }
            Garden garden = TestGardens.garden("Seed " + seed, seed % 2 == 0, TestGardens.chapelYard().ground(), beds, List.of());
            Page page = TestGardens.draw(garden, works(garden), List.of(), snags(), A3);
            assertEquals(List.of(), Drawn.of(page).collisions(), "seed " + seed);
        }
    }

    @Test
    void everyBedIsNamedWhereThereIsRoom() throws Exception {
        Drawn drawn = Drawn.of(chapel(A3));
        for (Bed bed : TestGardens.chapelYard().beds()) {
            assertTrue(drawn.says(bed.id()), bed.id());
        }
        assertTrue(drawn.says("Herbs") && drawn.says("2400 × 1200 × 400"), drawn.texts()::toString);
        assertTrue(drawn.says("Cross walk, 900 wide") && drawn.says("gate 1000") && drawn.says("412"));
        assertEquals("Bed L, Long bed: 4200 × 1000 × 600 mm, 3 courses", drawn.title("bed-L"));
    }

    @Test
    void everyLevelIsWrittenBesideItsCross() throws Exception {
        for (Paper paper : List.of(Paper.A4, Paper.A3, Paper.A1)) {
            Drawn drawn = Drawn.of(chapel(TestOptions.on(A3, paper)));
            for (String drop : List.of("412", "409", "486", "501")) {
                assertTrue(drawn.says(drop), drop + " on " + paper.label());
            }
        }
    }

    @Test
    void bedsWithoutRoomForANameAreCounted() throws Exception {
        List<Bed> heap = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            heap.add(TestGardens.bed("H" + i, "", Outline.rectangle(900, 900), i * 5, i * 5, 0, 1));
        }
        Ground wide = new Ground(List.of(Outline.rectangle(200_000, 200_000)), List.of(), List.of(), List.of(), 0);
        Drawn drawn = Drawn.of(TestGardens.draw(TestGardens.garden("Heap", false, wide, heap, List.of()), List.of(), List.of(), List.of(), A3));
        long named = heap.stream().filter(bed -> drawn.says(bed.id())).count();
        assertTrue(named < 40);
        assertTrue(drawn.texts().stream().anyMatch(t -> t.startsWith((40 - named) + " bed")), drawn.texts()::toString);
    }

    /** Bed M's inner faces (worked by hand): 2800 x 2200 over all, so 56 x 44 mm at 1:50 within 60 x 48. */
    @Test
    void timbersAreDrawnBetweenOuterAndInnerFaces() throws Exception {
        Bed bed = TestGardens.bed("M", "", TestGardens.M, 800, 1500, 0, 3);
        Garden garden = TestGardens.garden("Yard", false,
                new Ground(List.of(TestGardens.YARD), List.of(), List.of(), List.of(), 0), List.of(bed), List.of());
        Drawn drawn = Drawn.of(TestGardens.draw(garden, works(garden), List.of(), List.of(), A3));
        double[] soil = drawn.polygons("bed-M");
        assertEquals(56, soil[2] - soil[0], 0.0011);
        assertEquals(44, soil[3] - soil[1], 0.0011);
        assertTrue(SvgWriter.write(TestGardens.draw(garden, works(garden), List.of(), List.of(), A3)).contains("#C08A45"));
    }

    @Test
    void turnedAndMirroredBedsLieAsPlaced() throws Exception {
        Bed bed = Beds.placed(
                TestGardens.bed("M", "", TestGardens.M, 0, 0, 0, 3), new Placement(new Point(6000, 2000), 90, true));
        Garden garden = TestGardens.garden("Yard", false,
                new Ground(List.of(TestGardens.YARD), List.of(), List.of(), List.of(), 0), List.of(bed), List.of());
        Drawn drawn = Drawn.of(TestGardens.draw(garden, List.of(), List.of(), List.of(), A3));
        double[] yard = drawn.polygons("ground");
        double[] own = drawn.polygons("bed-M");
        // Mirrored, x runs 0 to -3000; turned by a quarter, x becomes y: 3000 below to 2000, and y becomes -x: 2400 to the left.
        assertEquals((6000 - 2400) / 50.0, own[0] - yard[0], 0.0011);
        assertEquals(6000 / 50.0, own[2] - yard[0], 0.0011);
        assertEquals((2000 - 3000) / 50.0, yard[3] - own[3], 0.0011);
        assertEquals(2000 / 50.0, yard[3] - own[1], 0.0011);
    }

    @Test
    void aGateSweepsAQuarterOfADiscIntoTheYard() throws Exception {
        Drawn drawn = Drawn.of(chapel(A3));
        double[] yard = drawn.polygons("ground");
        double[] swing = drawn.polygons("keep-clear-1");
        assertEquals(1000 / 50.0, swing[2] - swing[0], 0.0011);
        assertEquals(1000 / 50.0, swing[3] - swing[1], 0.0011);
        assertEquals(12000 / 50.0, swing[2] - yard[0], 0.0011);
        // It hangs at 2300 and its closed leaf runs away from the house.
        assertEquals(2300 / 50.0, yard[3] - swing[3], 0.0011);
    }

    @Test
    void aGateThatSwingsOutLeavesTheYard() {
        GateSwing out = swing(false, new Point(12000, 2300), new Point(12000, 3300));
        assertPoint(13000, 2300, out.open().orElseThrow());
        assertPoint(12000, 3300, out.closed().orElseThrow());
        GateSwing hungTheOtherWay = swing(true, new Point(12000, 2300), new Point(12000, 1300));
        assertPoint(11000, 2300, hungTheOtherWay.open().orElseThrow());
        assertPoint(12000, 1300, hungTheOtherWay.closed().orElseThrow());
    }

    /** A leaf whose closed side nobody named may lie either way: half a disc, of radius 1000 about (12000, 2300). */
    @Test
    void aGateWithItsHingeAloneKeepsHalfADisc() {
        Box in = Box.round(swing(true, new Point(12000, 2300)).ring());
        assertEquals(List.of(11000.0, 1300.0, 12000.0, 3300.0), List.of(in.left(), in.low(), in.right(), in.high()));
        Box out = Box.round(swing(false, new Point(12000, 2300)).ring());
        assertEquals(13000, out.right(), 1e-6);
        assertEquals(12000, out.left(), 1e-6);
    }

    private static GateSwing swing(boolean in, Point... points) {
        return GateSwing.of(new Ground.KeepClear(KeepClearKind.GATE, List.of(points), 0, 1000, in, 0), List.of(TestGardens.YARD));
    }

    private static void assertPoint(double x, double y, Point actual) {
        assertEquals(x, actual.x(), 1e-6);
        assertEquals(y, actual.y(), 1e-6);
    }

    @Test
    void snagsStandAsLettersAndInTheList() throws Exception {
        Drawn drawn = Drawn.of(chapel(A3));
        assertEquals(2, drawn.group("snags").getElementsByTagName("circle").getLength());
        assertTrue(drawn.says("a") && drawn.says("b") && !drawn.says("c"));
        assertTrue(drawn.texts().stream().anyMatch(t -> t.startsWith("wall D of bed H: Unknown field \"240 over")), drawn.texts()::toString);
        assertTrue(drawn.texts().stream().noneMatch(t -> t.contains("only a note")));
        List<Finding> many = new ArrayList<>();
        for (int i = 0; i < 300; i++) {
            many.add(Told.saying(Weight.SNAG, Place.bed("H"), "snag " + i + " of a long row that takes a line or two of the list").way(WayKind.TAKE_OUT));
        }
        Garden garden = TestGardens.chapelYard();
        Drawn crowded = Drawn.of(TestGardens.draw(garden, works(garden), TestGardens.chapelPaths(), many, A3));
        assertTrue(crowded.texts().stream().anyMatch(t -> t.endsWith(" more in the list of snags")));
        assertEquals(List.of(), crowded.collisions());
    }

    @Test
    void monoUsesBlackAndWhiteAloneAndKeepsEveryHatch() throws Exception {
        Drawn colour = Drawn.of(chapel(A3));
        Drawn mono = Drawn.of(chapel(TestOptions.plan(TestOptions.mono(A3.sheet()))));
        for (String attribute : List.of("fill", "stroke")) {
            Set<String> inks = new HashSet<>(mono.values(attribute));
            inks.removeAll(Set.of("none", "#000000", "#FFFFFF"));
            assertEquals(Set.of(), inks, attribute);
        }
        // grass is flat in colour, in the yard and in the legend
        assertEquals(hatches(colour) + 2, hatches(mono));
        assertTrue(hatches(mono) > 10);
        assertEquals(colour.texts(), mono.texts());
    }

    private static long hatches(Drawn drawn) {
        return drawn.values("class").stream().filter("hatch"::equals).count();
    }

    @Test
    void everyHatchOfThePlanDiffersFromEveryOther() {
        Inks mono = new Inks(true);
        Set<Object> seen = new HashSet<>();
        List<Inks.Filling> all = new ArrayList<>(List.of(mono.of(Inks.PLANTED), mono.of(Inks.HOUSE_WALL), mono.of(Inks.KEEP_CLEAR), mono.of(Inks.OBSTACLE),
                mono.path("path.gravel", 0), mono.path("path.bark", 1), mono.path("path.other", 2), mono.path("path.last", 3)));
        for (SurfaceKind kind : SurfaceKind.values()) all.add(mono.surface(kind));
        all.forEach(filling -> assertTrue(seen.add(filling.hatch().orElseThrow()), filling::toString));
    }

    @Test
    void theSameGardenGivesTheSameBytes() {
        assertEquals(SvgWriter.write(chapel(A3)), SvgWriter.write(chapel(A3)));
        assertNotEquals(SvgWriter.write(chapel(A3)), SvgWriter.write(chapel(TestOptions.plan(TestOptions.stamped(A3.sheet(), "B", "")))));
    }

    @Test
    void idsAreUsedOnce() throws Exception {
        List<String> ids = Drawn.of(chapel(A3)).ids();
        assertEquals(ids.size(), new HashSet<>(ids).size(), ids::toString);
        assertTrue(ids.containsAll(List.of("ground", "paths", "beds", "bed-U", "path-P1", "scale-bar", "north", "panel")));
    }

    @Test
    void whateverPeopleTypeIsDrawnAsText() throws Exception {
        List<Bed> beds = new ArrayList<>();
        List<String> names = List.of("<script>alert(1)</script>", "x".repeat(10_240), "\u05E2\u05E8\u05D5\u05D2\u05D4 \u0645\u0632\u0631\u0639\u0629",
                "\uD83C\uDF31 beans \uD83E\uDD55", "null \u0000 & \uD83C half");
        for (int i = 0; i < names.size(); i++) {
            beds.add(TestGardens.bed("<" + i + "&>", names.get(i), Outline.rectangle(2400, 1200), 500, 500 + i * 1700, 0, 2));
        }
        Garden garden = TestGardens.garden("\"><svg onload=alert(1)> " + "n".repeat(10_240), false,
                new Ground(List.of(TestGardens.YARD), List.of(), List.of(), List.of(), 0), beds, List.of());
        List<Finding> findings = List.of(Told.saying(Weight.SNAG, Place.bed("<0&>"), "s".repeat(10_240)).way(WayKind.TAKE_OUT));
        Page page = TestGardens.draw(garden, works(garden), List.of(), findings, TestOptions.plan(TestOptions.stamped(A3.sheet(), "<b>", "\u202E2026")));
        Drawn drawn = Drawn.of(page);
        assertEquals(List.of(), drawn.collisions());
        assertTrue(drawn.texts().stream().anyMatch(t -> t.startsWith("<script>alert(1)</")), drawn.texts()::toString);
        assertTrue(drawn.says("\uD83C\uDF31 beans \uD83E\uDD55") && drawn.says("null & \uFFFD half"), drawn.texts()::toString);
        assertTrue(drawn.title("bed-_3c_1_26__3e_").contains("x".repeat(10_240)), "titles carry names whole");
        try (PDDocument pdf = Loader.loadPDF(PdfWriter.write(List.of(page)))) {
            assertTrue(new PDFTextStripper().getText(pdf).contains("<script>alert(1)</"));
        }
    }

    /** Points are 1/72 inch of 25.4 mm; the bed's front wall at 1:50 is 60 mm, 170.08 points. */
    @Test
    void thePdfSaysTheSameAtTheSameSize() throws Exception {
        Bed bed = TestGardens.bed("M", "Corner", TestGardens.M, 800, 1500, 0, 3);
        Garden garden = TestGardens.garden("Yard", false,
                new Ground(List.of(TestGardens.YARD), List.of(), List.of(), List.of(), 0), List.of(bed), List.of());
        Page page = TestGardens.draw(garden, List.of(), List.of(), List.of(), TestOptions.plan(TestOptions.stamped(A3.sheet(), "C", "2026-11-25")));
        try (PDDocument pdf = Loader.loadPDF(PdfWriter.write(List.of(page)))) {
            String text = new PDFTextStripper().getText(pdf);
            for (String said : List.of("Corner", "3000 × 2400 × 600", "1:50", "2026-11-25", "house wall 12000", "Legend", "Cautions")) {
                assertTrue(text.contains(said), said + " is missing from " + text);
            }
            assertEquals(420 / 25.4 * 72, pdf.getPage(0).getMediaBox().getWidth(), 0.002);
            assertEquals(297 / 25.4 * 72, pdf.getPage(0).getMediaBox().getHeight(), 0.002);
            double wall = 3000 / 50.0 / 25.4 * 72;
            assertTrue(PdfLines.of(pdf.getPage(0)).stream()
                    .anyMatch(l -> Math.abs(l.y1() - l.y2()) < 0.01 && Math.abs(Math.abs(l.x2() - l.x1()) - wall) < 0.01));
        }
    }

    @Test
    void imperialGardensReadInFeetInchesAndSixteenths() throws Exception {
        Garden metric = TestGardens.chapelYard();
        Garden garden = TestGardens.garden("Terrace", true, metric.ground(), metric.beds(), metric.paths());
        Drawn drawn = Drawn.of(TestGardens.draw(garden, works(garden), TestGardens.chapelPaths(), List.of(), TestOptions.plan(true)));
        assertTrue(drawn.says("1/4 in = 1 ft (1:48)"), drawn.texts()::toString);
        assertTrue(drawn.says("house wall 39' 4 7/16\""), drawn.texts()::toString);
        assertTrue(drawn.says("7' 10 1/2\" × 3' 11 1/4\" × 1' 3 3/4\""), drawn.texts()::toString);
        assertEquals(List.of(), drawn.collisions());
        double[] own = drawn.polygons("bed-S");
        assertFalse(own[2] - own[0] > 900 * 1.3 / 48);
    }

    @Test
    void withoutAYardTheBedsAloneAreDrawn() throws Exception {
        Garden one = TestGardens.garden("", false, TestGardens.NO_GROUND,
                List.of(TestGardens.bed("1", "", Outline.rectangle(2400, 1200), 0, 0, 0, 3)), List.of());
        Drawn drawn = Drawn.of(TestGardens.draw(one, List.of(), List.of(), List.of(), A3));
        assertTrue(drawn.says("2400 × 1200 × 600"), drawn.texts()::toString);
        assertTrue(drawn.texts().stream().noneMatch(t -> t.startsWith("house wall")));
    }

    @Test
    void anEmptyGardenSaysWhatToDo() throws Exception {
        Garden none = TestGardens.garden("", false, TestGardens.NO_GROUND, List.of(), List.of());
        assertTrue(Drawn.of(TestGardens.draw(none, List.of(), List.of(), List.of(), A3)).texts().stream().anyMatch(t -> t.startsWith("Nothing to draw yet")));
    }

    /** The bar's numbers times the scale are its length, which the bar itself states. */
    @Test
    void theScaleBarIsAsLongAsItSays() throws Exception {
        for (int n : new int[] {50, 100, 200, 500}) {
            Drawn drawn = Drawn.of(TestGardens.draw(TestGardens.chapelYard(), List.of(), List.of(), List.of(), TestOptions.at(A3, n)));
            double[] bar = drawn.polygons("scale-bar");
            String last = drawn.texts().stream().filter(t -> t.matches("[0-9.]+ m")).findFirst().orElseThrow();
            double metres = Double.parseDouble(last.replace(" m", ""));
            assertEquals(metres * 1000 / n, bar[2] - bar[0], 0.0011);
            String check = "this bar is %s mm long on paper".formatted(lapyard.geometry.Lengths.text(metres * 1000 / n));
            assertTrue(drawn.says(check), drawn.texts()::toString);
        }
    }
}
