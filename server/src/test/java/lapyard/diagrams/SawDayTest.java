package lapyard.diagrams;

import java.util.ArrayList;
import java.util.Map;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.TreeSet;
import java.util.stream.Collectors;
import lapyard.construction.BedWork;
import lapyard.cutting.Batches;
import lapyard.cutting.Ledger;
import lapyard.cutting.SawBoard;
import lapyard.drawing.Page;
import lapyard.drawing.Paper;
import lapyard.drawing.Shape;
import lapyard.geometry.Outline;
import lapyard.plan.Lifting;
import lapyard.plan.Saw;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

/**
 * The sheets for the saw of two beds worked by hand: M is L-shaped, N is 1800 x 900; kerf 4, end trim 10, boards of
 * 4800, M in stage 1 and N in stage 2.
 */
class SawDayTest {
    private static final BenchOptions A4 = TestOptions.stamped(BenchOptions.usual("Yard", false), "revision 7", "2026-05-12");
    private static final BedWork M = TestGardens.work(TestGardens.bed("M", "", TestGardens.M, 0, 0, 0, 3));
    private static final BedWork N = TestGardens.work(TestGardens.bed("N", "", Outline.rectangle(1800, 900), 4200, 0, 0, 3));

    /** Boards are cut as listed, one a row: mark and length of each piece. */
    private static List<SawBoard> boards(String... rows) {
        List<SawBoard> boards = new ArrayList<>();
        for (String row : rows) {
            List<SawBoard.Cut> cuts = new ArrayList<>();
            double from = 10;
            for (String piece : row.split(" ")) {
                String[] of = piece.split("=");
                double length = Double.parseDouble(of[1]);
                cuts.add(new SawBoard.Cut(of[0], length, of[0].startsWith("M") ? 1 : 2, from, from + length));
                from += length + 4;
            }
            boards.add(new SawBoard(boards.size() + 1, "4800", 4800, 10, cuts, Math.max(0, 4800 - from)));
        }
        return boards;
    }

    private static final String[] PLAN = {
        "M-1A=2900 M-1E=1700", "M-2A=2900 M-2E=1700", "M-3A=2900 M-3E=1700", "M-1F=2300 M-2F=2300",
        "M-3F=2300 M-1B=1400 M-1D=900", "M-2B=1400 M-2D=900 N-1B=800 N-1D=800 N-2B=800",
        "M-3B=1400 M-3D=900 N-2D=800 N-3B=800 N-3D=800", "M-1C=1200 N-1A=1700 N-1C=1700", "M-2C=1200 N-2A=1700 N-2C=1700",
        "M-3C=1200 N-3A=1700 N-3C=1700"
    };

    private static SawDay.Work work(List<SawBoard> boards) {
        return new SawDay.Work(
                "", "Timber 100x200", "", Optional.of(TestGardens.SECTION), 4, 300, boards, Batches.of(boards, 4, Batches.Rates.USUAL),
                Ledger.of(boards, 4, 300), List.of(), List.of());
    }

    private static List<Page> pages(BenchOptions options) {
        return SawDay.pages(new Lifting(25, 2), List.of(M, N), List.of(work(boards(PLAN))), OptionalDouble.empty(), options);
    }

    private static List<String> texts(List<Page> pages, String kind) throws Exception {
        List<String> texts = new ArrayList<>();
        for (Page page : pages) {
            // a section ends where the heading of the next one stands
            boolean in = false;
            for (String text : Drawn.of(page).texts()) {
                in = page.subjects().contains(text) ? text.startsWith(kind) : in;
                if (in) texts.add(text);
            }
        }
        return texts;
    }

    /** First weekend: M alone has 6 lengths and 18 pieces: 18 x 4 + 6 x 10 = 132 min; N has 2 lengths, 12 x 4 + 2 x 10 = 68. */
    @Test
    void theBatchSheetOfEachWeekendHasOneRowASetting() throws Exception {
        List<Page> pages = pages(A4);
        List<String> first = texts(pages, "Saw Day, stage 1: batches");
        for (String stop : List.of("2900", "2300", "1700", "1400", "1200", "900")) {
            assertEquals(1, first.stream().filter(stop::equals).count(), stop);
        }
        assertEquals(5, first.stream().filter("× 3"::equals).count() - 1, "six lengths of three pieces");
        assertTrue(first.stream().anyMatch(t -> t.contains("28 cuts, 10 of them to trim × 4 min + 6 settings × 3 min = 130 min")), first::toString);
        List<String> second = texts(pages, "Saw Day, stage 2: batches");
        assertTrue(second.containsAll(List.of("1700", "800", "× 6")), second::toString);
        assertTrue(second.stream().anyMatch(t -> t.contains("12 cuts × 4 min + 2 settings × 3 min = 54 min")), second::toString);
    }

    /** Six sides of 1000 mitred at 30: outer face 1000, inner 884.5, so 0.94225 x 0.1 x 0.2 x 600 = 11.3 kg and not 12. */
    @Test
    void aMitredPieceWeighsByItsMean() throws Exception {
        Outline six = TestGardens.corners(0, 0, 1000, 0, 1500, 866, 1000, 1732, 0, 1732, -500, 866);
        BedWork mitred = lapyard.construction.Beds.work(TestGardens.bed("X", "", six, 0, 0, 0, 2), Saw.USUAL, 4780, Map.of(), Optional.empty(), 2400, 25);
        List<SawBoard> boards = boards("X-1A=1000");
        List<String> over = texts(SawDay.pages(new Lifting(11.2, 2), List.of(mitred), List.of(work(boards)), OptionalDouble.empty(), A4), "Saw");
        List<String> under = texts(SawDay.pages(new Lifting(11.5, 2), List.of(mitred), List.of(work(boards)), OptionalDouble.empty(), A4), "Saw");
        assertTrue(over.contains("X-1A ●▲/"), over::toString);
        assertTrue(under.contains("X-1A ▲/"), under::toString);
    }

    /** A of bed M weighs 34.8 kg, over the 25 kg of one person; every wall is seen. */
    @Test
    void everyPieceHasItsMarkWithSignsAndATickBoxOnBothSheets() throws Exception {
        List<Page> pages = pages(A4);
        for (String kind : List.of("batches", "boards")) {
            List<String> texts = new ArrayList<>();
            for (int stage = 1; stage <= 2; stage++) {
                texts.addAll(texts(pages, "Saw Day, stage " + stage + ": " + kind));
            }
            for (String row : PLAN) {
                for (String piece : row.split(" ")) {
                    String mark = piece.substring(0, piece.indexOf('='));
                    assertEquals(1, texts.stream().filter(t -> t.equals(mark) || t.startsWith(mark + " ")).count(), kind + " " + mark);
                }
            }
            assertTrue(texts.contains("M-1A ●▲"), texts::toString);
            assertTrue(texts.contains("M-1C ▲"), texts::toString);
        }
    }

    /** Trim 10, then 1400 and 900 with a kerf of 4 each: cuts at 10, 1410, 2314; the offcut of 2482 carries the tag #6-1. */
    @Test
    void boardsShowTheirRunningPlacesAndWhatIsCarried() throws Exception {
        List<String> first = texts(pages(A4), "Saw Day, stage 1: boards");
        assertTrue(first.containsAll(List.of("10", "1410", "2314", "2482 for stage 2", "#6-1", "#7-1", "3586 for stage 2")), first::toString);
        // In stage 2 places are counted from the sawn end: 800, 1604, 2408, and 70 are left.
        List<String> second = texts(pages(A4), "Saw Day, stage 2: boards");
        assertTrue(second.containsAll(List.of("800", "1604", "2408", "70 scrap", "#6-1", "1700", "3404", "178 scrap")), second::toString);
        assertEquals(1, second.stream().filter("10"::equals).count(), "board 10, but no trim of 10 at an offcut's sawn end");
    }

    /** 2900 at the scale of the sheet, 1:25, is 116.0 mm; 4800 fill 192. */
    @Test
    void barsAreToScale() {
        Page page = pages(A4).stream().filter(p -> p.title().startsWith("Saw Day, stage 1: boards")).findFirst().orElseThrow();
        TreeSet<Double> widths = new TreeSet<>();
        for (Shape shape : page.shapes()) {
            if (shape instanceof Shape.Area area && area.rings().size() == 1) {
                Box box = Box.round(area.rings().get(0));
                widths.add(Math.rint(box.width() * 100) / 100);
            }
        }
        assertTrue(widths.containsAll(List.of(48.33, 28.33, 0.17)), widths::toString);
    }

    @Test
    void boardsCutAlikeShareABar() throws Exception {
        List<String> first = texts(pages(A4), "Saw Day, stage 1: boards");
        // the bar of 2900 + 1700 stands once for three boards
        assertEquals(1, first.stream().filter("2900"::equals).count(), first::toString);
    }

    @Test
    void theLedgerTellsWhatBecomesOfEachOffcut() throws Exception {
        List<String> texts = texts(pages(A4), "Saw Day: offcuts");
        assertTrue(texts.contains("stage 2 cuts N-1A, N-1C from it"), texts::toString);
        assertTrue(texts.containsAll(List.of("1-10", "5, longest 3586")), texts::toString);
    }

    @Test
    void everySheetRepeatsTitleRevisionAndNumberAndStaleOnesSaySo() throws Exception {
        List<Page> pages = pages(TestOptions.stale(TestOptions.mono(A4), "made from revision 7; the garden is at revision 9."));
        for (int i = 0; i < pages.size(); i++) {
            Drawn drawn = Drawn.of(pages.get(i));
            assertTrue(drawn.says("sheet " + (i + 1) + " of " + pages.size()));
            assertTrue(drawn.says("Yard") && drawn.says("revision 7, 2026-05-12"));
            assertTrue(drawn.says("STALE: made from revision 7; the garden is at revision 9."), drawn.texts()::toString);
            List<String> colours = drawn.values("fill").stream().filter(c -> c.startsWith("#")).distinct().toList();
            assertTrue(colours.stream().allMatch(List.of("#000000", "#FFFFFF")::contains), colours::toString);
        }
        assertFalse(texts(pages(A4), "Saw Day").stream().anyMatch(t -> t.startsWith("STALE")));
    }

    @Test
    void theMerchantIsAskedForCutsWhereBoardsAreTooLong() throws Exception {
        List<SawBoard> boards = boards(PLAN);
        SawDay.Work plain = work(boards);
        SawDay.Work asked = new SawDay.Work(
                "B", plain.name(), "Rip first.", plain.section(), 4, 300, boards, plain.batches(), plain.ledger(),
                SawBoard.firstCuts(boards, 3000, 4), List.of());
        List<Page> pages = SawDay.pages(new Lifting(25, 2), List.of(M, N), List.of(asked), OptionalDouble.of(3000), A4);
        List<String> texts = texts(pages, "First cuts at the merchant");
        assertTrue(texts.containsAll(List.of("B1-B3", "2910", "2910 + 1886")), texts::toString);
    }

    @Test
    void aGardenWithoutTimberHasOneSheetThatSaysSo() throws Exception {
        List<Page> pages = SawDay.pages(new Lifting(25, 2), List.of(), List.of(), OptionalDouble.empty(), A4);
        assertEquals(1, pages.size());
        assertTrue(Drawn.of(pages.get(0)).says("Nothing to saw in this garden."));
    }

    /** Long names, short pieces, many boards, either unit: no text on another, nothing off the sheet, every piece drawn. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void nothingRunsIntoAnythingElse(long seed) throws Exception {
        Random random = new Random(seed);
        List<SawBoard> boards = new ArrayList<>();
        int pieces = 0;
        for (int number = 1; number <= 40; number++) {
            List<SawBoard.Cut> cuts = new ArrayList<>();
            double length = 2400 + 600 * random.nextInt(5);
            double from = 10;
            int stage = 1;
            while (cuts.isEmpty() || random.nextInt(6) > 0) {
                double piece = 300 + random.nextInt(180) * 10 + random.nextInt(10) / 10.0;
                if (from + piece > length - 10) {
                    break;
                }
                stage = Math.min(3, stage + (random.nextInt(4) == 0 ? 1 : 0));
                cuts.add(new SawBoard.Cut(
                        (seed % 2 == 0 ? "B" + random.nextInt(99) : "W".repeat(30)) + "-" + ++pieces + "A", piece, stage, from, from + piece));
                from += piece + 4;
            }
            if (!cuts.isEmpty()) {
                boards.add(new SawBoard(boards.size() + 1, "stock " + "s".repeat(60), length, 10, cuts, Math.max(0, length - from)));
            }
        }
        BenchOptions options = TestOptions.stale(TestOptions.stamped(BenchOptions.usual("g".repeat(500), seed > 3).on(seed % 3 == 0 ? Paper.LETTER : Paper.A4), "r".repeat(200), "d".repeat(50)), "s".repeat(300));
        List<Page> pages = SawDay.pages(new Lifting(25, 2), List.of(), List.of(work(boards)), OptionalDouble.empty(), options);
        int batched = 0;
        for (Page page : pages) {
            Drawn drawn = Drawn.of(page);
            assertEquals(List.of(), drawn.collisions(), page.title());
            if (page.title().contains("batches")) {
                batched += (int) page.shapes().stream()
                        .filter(shape -> shape instanceof Shape.Area area && Math.abs(Box.round(area.rings().get(0)).width() - TypeSize.TICK) < 1e-6)
                        .count();
            }
        }
        assertEquals(pieces, batched, () -> "tick boxes on " + pages.stream().map(Page::title).collect(Collectors.joining(", ")));
    }
}
