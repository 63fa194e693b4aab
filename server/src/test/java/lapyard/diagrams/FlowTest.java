package lapyard.diagrams;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lapyard.drawing.Page;
import lapyard.drawing.Shape;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What a flow promises, on blocks that say their own names. */
class FlowTest {
    private final BenchSheet sheet = new BenchSheet("mind", BenchOptions.usual("Yard", false));

    private Flow.Block block(String name, double heightMm, boolean withNext) {
        return new Flow.Block(heightMm, withNext, (x, y) -> List.of(
                sheet.text(x, y, name, 3, false), sheet.line(x, y, x, y + heightMm, Inks.THIN)));
    }

    private static List<String> names(BenchSheet.Draft draft) {
        return draft.shapes().stream().filter(Shape.Text.class::isInstance).map(shape -> ((Shape.Text) shape).text()).toList();
    }

    private static double lowest(BenchSheet.Draft draft) {
        return draft.shapes().stream()
                .filter(Shape.Lines.class::isInstance)
                .flatMap(shape -> ((Shape.Lines) shape).lines().stream().flatMap(List::stream))
                .mapToDouble(point -> point.y())
                .max()
                .orElse(0);
    }

    static IntStream seeds() {
        return IntStream.range(0, 200);
    }

    /** Nothing is lost, turned round or drawn over the foot, and a sheet is left only where the next chain found no room. */
    @ParameterizedTest
    @MethodSource("seeds")
    void sheetsFillInOrder(int seed) {
        Random random = new Random(seed);
        Flow flow = new Flow(sheet, "Kind", "");
        List<String> all = new ArrayList<>();
        double[] heights = new double[40];
        boolean[] withNext = new boolean[40];
        for (int i = 0; i < heights.length; i++) {
            heights[i] = 3 + random.nextInt(40);
            withNext[i] = i + 1 < heights.length && random.nextInt(4) == 0 && (i < 2 || !withNext[i - 1] || !withNext[i - 2]);
            all.add("b" + i);
            flow.block(block("b" + i, heights[i], withNext[i]));
        }
        List<BenchSheet.Draft> drafts = flow.drafts();
        assertEquals(all, drafts.stream().flatMap(draft -> names(draft).stream()).toList());
        int at = 0;
        for (int s = 0; s < drafts.size(); s++) {
            assertTrue(lowest(drafts.get(s)) <= sheet.space().high() + 1e-6, "seed " + seed + ", sheet " + s);
            at += names(drafts.get(s)).size();
            if (at == all.size()) break;
            assertTrue(!withNext[at - 1], "seed " + seed + ": b" + (at - 1) + " was to stand with the next");
            double chain = heights[at];
            for (int i = at; withNext[i]; i++) chain += heights[i + 1];
            assertTrue(lowest(drafts.get(s)) + chain > sheet.space().high(), "seed " + seed + ": sheet " + s + " was left too early");
        }
    }

    @Test
    void headsStandAgainOnEachFurtherSheet() {
        Flow flow = new Flow(sheet, "Kind", "");
        flow.head(block("outer", 10, true), block("outer again", 8, true));
        flow.head(block("inner", 10, true), block("inner again", 8, true));
        for (int i = 0; i < 10; i++) flow.block(block("row " + i, 20, false));
        flow.endHead();
        flow.block(block("below outer", 100, false));
        flow.endHead();
        List<List<String>> sheets = flow.drafts().stream().map(FlowTest::names).toList();
        assertEquals(List.of("outer", "inner", "row 0"), sheets.get(0).subList(0, 3));
        assertEquals(List.of("outer again", "inner again"), sheets.get(1).subList(0, 2));
        assertEquals(List.of("outer again", "below outer"), sheets.get(2));
    }

    @Test
    void aHeadWithoutRowsIsLeftOut() {
        Flow flow = new Flow(sheet, "Kind", "");
        flow.head(block("head", 10, true), block("again", 10, true));
        flow.endHead();
        flow.block(block("row", 10, false));
        assertEquals(List.of("row"), names(flow.drafts().get(0)));
    }

    @Test
    void aSectionGoesOnTheSheetOfTheOneBeforeWhereItFindsRoom() {
        Flow flow = new Flow(sheet, "First", "");
        flow.block(block("a", 40, false));
        flow.section("Second", "about it");
        flow.block(block("b", 40, false));
        flow.section("Third", "");
        flow.block(block("c", 100, false));
        flow.section("Fourth", "", 0.5);
        flow.block(block("d", 5, false));
        List<BenchSheet.Draft> drafts = flow.drafts();
        assertEquals(List.of(List.of("First", "Second"), List.of("Third"), List.of("Fourth")), drafts.stream().map(BenchSheet.Draft::kinds).toList());
        assertEquals(List.of("a", "Second", "about it", "b"), names(drafts.get(0)));
    }

    /** The line below the heading is that of the section that goes on, not of the first that stood on the sheet before. */
    @Test
    void whatGoesOnKeepsItsOwnWords() {
        Flow flow = new Flow(sheet, "First", "about the first");
        flow.block(block("a", 40, false));
        flow.section("Second", "about the second");
        flow.block(block("b", 40, false));
        flow.block(block("c", 100, false));
        assertEquals(List.of("about the first", "about the second"), flow.drafts().stream().map(BenchSheet.Draft::about).toList());
    }

    private static List<BenchSheet.Draft> rows(BenchSheet on, int count) {
        Flow flow = new Flow(on, "Rows", "");
        BenchTable table = new BenchTable(on, "Rows", new BenchTable.Column("n", 1, false));
        for (int i = 0; i < count; i++) table.row("row " + i);
        table.on(flow);
        return flow.drafts();
    }

    /** A few rows more than a sheet holds are drawn closer, half a sheet more are not, and no type is under the least. */
    @Test
    void aLittleMoreThanASheetIsDrawnCloser() {
        int full = 1;
        while (rows(sheet, full + 1).size() == 1) full++;
        assertEquals(2, rows(sheet, full + 2).size());
        for (int more : new int[] {2, full / 2}) {
            int count = full + more;
            List<Page> pages = BenchSheet.pages("mind", BenchOptions.usual("Yard", false), on -> rows(on, count));
            assertEquals(more == 2 ? 1 : 2, pages.size());
            List<Shape.Text> texts = pages.stream().flatMap(page -> page.shapes().stream()).filter(Shape.Text.class::isInstance).map(Shape.Text.class::cast).toList();
            assertEquals(count, texts.stream().filter(text -> text.text().startsWith("row ")).count());
            assertTrue(texts.stream().allMatch(text -> text.sizeMm() >= TypeSize.LEAST));
        }
        int many = full * BenchSheet.FEW_SHEETS + 2;
        assertEquals(BenchSheet.FEW_SHEETS + 1, BenchSheet.pages("mind", BenchOptions.usual("Yard", false), on -> rows(on, many)).size(), "of many, one is not worth it");
    }

    /** Of sheets that share, one that goes on is used for a quarter at least, in rows and in columns, and rows need no sheet more. */
    @ParameterizedTest
    @MethodSource("seeds")
    void whatGoesOnTakesAQuarterOfItsSheet(int seed) {
        Random random = new Random(seed);
        List<Flow.Block> blocks = new ArrayList<>();
        for (int i = 0; i < 12 + random.nextInt(60); i++) blocks.add(block("b" + i, 5 + random.nextInt(12), false));
        for (boolean columns : new boolean[] {false, true}) {
            Flow flow = new Flow(new BenchSheet("mind", BenchOptions.usual("Yard", false), 1, true), "Kind", "");
            Flow plain = new Flow(sheet, "Kind", "");
            if (columns) flow.columns(2, 5, blocks);
            else flow.rows(blocks);
            blocks.forEach(plain::block);
            List<BenchSheet.Draft> drafts = flow.drafts();
            assertEquals(blocks.size(), drafts.stream().mapToInt(draft -> names(draft).size()).sum());
            if (!columns) assertEquals(plain.drafts().size(), drafts.size(), "seed " + seed);
            for (BenchSheet.Draft draft : drafts.subList(1, drafts.size())) {
                double used = (lowest(draft) - sheet.space().low()) / sheet.space().height();
                assertTrue(used > 0.25, "seed " + seed + (columns ? ", columns: " : ", rows: ") + used);
            }
        }
    }

    /** Stages of saw work where the last setting of one alone goes on, and the next stage finds no room below it. */
    @Test
    void aSheetBeforeTheLastIsNotNearlyEmpty() {
        double high = sheet.space().height();
        List<Page> pages = BenchSheet.pages("mind", BenchOptions.usual("Yard", false), on -> {
            Flow flow = new Flow(on, "Kind", "");
            flow.rows(Stream.of(0.3, 0.3, 0.3, 0.2).map(part -> new Flow.Block(part * high, false, (x, y) -> List.of(on.text(x, y, "row " + part, 3, false)))).toList());
            flow.section("Next", "");
            flow.block(new Flow.Block(0.9 * high, false, (x, y) -> List.of(on.text(x, y, "row", 3, false))));
            return flow.drafts();
        });
        assertEquals(List.of(2L, 2L, 1L), pages.stream().map(page -> page.shapes().stream().filter(shape -> shape instanceof Shape.Text text && text.text().startsWith("row")).count()).toList());
    }

    /** Against every way to part the blocks in order. */
    @ParameterizedTest
    @MethodSource("seeds")
    void columnsAreAsLowAsTheyCanBe(int seed) {
        Random random = new Random(seed);
        List<Flow.Block> blocks = new ArrayList<>();
        for (int i = 0; i < 3 + random.nextInt(9); i++) blocks.add(block("b" + i, 2 + random.nextInt(20), false));
        Flow flow = new Flow(sheet, "Kind", "");
        flow.columns(3, 5, blocks);
        BenchSheet.Draft draft = flow.drafts().get(0);
        double best = Double.POSITIVE_INFINITY;
        for (int first = 0; first <= blocks.size(); first++) {
            for (int second = first; second <= blocks.size(); second++) {
                best = Math.min(best, Math.max(high(blocks, 0, first), Math.max(high(blocks, first, second), high(blocks, second, blocks.size()))));
            }
        }
        assertEquals(best, lowest(draft) - sheet.space().low(), 1e-6, "seed " + seed);
        assertEquals(blocks.size(), names(draft).size());
    }

    private static double high(List<Flow.Block> blocks, int from, int to) {
        return blocks.subList(from, to).stream().mapToDouble(Flow.Block::heightMm).sum();
    }
}
