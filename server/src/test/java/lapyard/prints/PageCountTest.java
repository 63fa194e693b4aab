package lapyard.prints;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import lapyard.drawing.Page;
import lapyard.drawing.Shape;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A set of sheets is carried outside: it has as many pages as are needed and no more. */
class PageCountTest {
    private static final String YARD = "[[0,0],[14000,0],[14000,4000],[0,4000]]";

    private static final String L_AND_TWO = "{\"name\":\"L and two\",\"beds\":[{\"id\":\"A\",\"walls\":[{\"length\":3000,\"turn\":\"left\"},"
            + "{\"length\":1500,\"turn\":\"left\"},{\"length\":1200,\"turn\":\"right\"},{\"length\":900,\"turn\":\"left\"},{\"length\":1800,\"turn\":\"left\"},"
            + "{\"length\":2400,\"turn\":\"left\"}],\"courses\":3},{\"id\":\"B\",\"width\":2400,\"depth\":1200,\"courses\":3,\"at\":[5000,0]},"
            + "{\"id\":\"C\",\"width\":1800,\"depth\":900,\"courses\":3,\"at\":[5000,3000]}]}";

    private static void atMost(int pages, String document) throws Exception {
        JobSheet sheet = Gardens.sheet(document);
        List<Page> set = Prints.pages(Prints.SET, sheet, PrintAsk.usual("", "2026-03-01"));
        assertTrue(set.size() <= pages, () -> set.size() + ": " + set.stream().map(Page::title).collect(Collectors.joining("; ")));
        String all = set.stream().map(Page::title).collect(Collectors.joining("; "));
        for (String kind : List.of("Contents", "Saw Day", "Course card", "Base and liner", "Weekend", "Slip", "Deliver")) {
            assertTrue(all.contains(kind), kind + " is not in " + all);
        }
    }

    /** A sheet that holds only a few rows of what stands on the one before is a waste: a fifth of its height is used, or it begins something. */
    @ParameterizedTest
    @ValueSource(strings = {"ferry-lane", "chapel-corner", "lock-keepers-yard", "school-courtyard", "terrace-feet", "three-entries", "village-hall"})
    void noSheetHoldsALittleRestAlone(String name) throws Exception {
        List<Page> set = Prints.pages(Prints.SET, Gardens.sample(name), PrintAsk.usual("", "2026-03-01"));
        for (int i = 1; i < set.size(); i++) {
            Page page = set.get(i);
            List<String> before = set.get(i - 1).subjects();
            if (page.subjects().isEmpty() || before.isEmpty() || !page.subjects().equals(before.subList(before.size() - 1, before.size()))) continue;
            double lowest = page.shapes().stream().filter(Shape.Text.class::isInstance).mapToDouble(shape -> ((Shape.Text) shape).at().y())
                    .filter(y -> y < page.heightMm() - 20).max().orElse(0);
            assertTrue(lowest > 0.3 * page.heightMm(), page.title() + ": " + lowest);
        }
    }

    /** Four beds of a type that hold more soil than is designed here have one card, and one sentence warns of all four. */
    @Test
    void bedsWarnedAlikeShareACard() throws Exception {
        String beds = IntStream.range(0, 4).mapToObj(i -> "{\"id\":\"K" + i + "\",\"width\":1200,\"depth\":1200,\"courses\":" + (i < 3 ? 4 : 5) + ",\"at\":[" + (1000 + 3000 * i) + ",1000]}")
                .collect(Collectors.joining(","));
        JobSheet sheet = Gardens.sheet("{\"name\":\"Tall\",\"ground\":{\"outline\":" + YARD + ",\"surfaces\":[{\"kind\":\"grass\",\"outline\":" + YARD + "}]},\"beds\":[" + beds + "]}");
        List<Page> cards = Prints.pages("course-cards", sheet, PrintAsk.usual("", "2026-03-01"));
        assertTrue(cards.get(0).title().startsWith("Course card, beds K0-K2"), cards.get(0).title());
        assertTrue(cards.get(1).title().startsWith("Course card, bed K3"), cards.get(1).title());
        List<String> warned = cards.stream().flatMap(page -> page.shapes().stream())
                .filter(shape -> shape instanceof Shape.Group group && group.layer().equals("warning"))
                .flatMap(shape -> ((Shape.Group) shape).shapes().stream())
                .filter(shape -> shape instanceof Shape.Text text && text.text().contains("designed"))
                .map(shape -> ((Shape.Text) shape).text().replaceAll(" mm.*", "")).distinct().toList();
        assertEquals(List.of("Beds K0-K2 hold up to 750", "Bed K3 holds 950"), warned);
    }

    /** The job of forty beds of many sizes keeps its name: one page, and each weekend tells where something is done. */
    @Test
    void theJobOfFortyBedsIsOnOnePage() throws Exception {
        Random random = new Random(40);
        String beds = IntStream.range(0, 40).mapToObj(i -> "{\"id\":\"K" + (i + 1) + "\",\"width\":" + (1800 + 100 * random.nextInt(12)) + ",\"depth\":" + (900 + 100 * random.nextInt(5))
                        + ",\"courses\":" + (2 + random.nextInt(2)) + ",\"stage\":" + (i / 6 + 1) + ",\"at\":[" + 4200 * (i % 8) + "," + 2700 * (i / 8) + "]}").collect(Collectors.joining(","));
        JobSheet sheet = Gardens.sheet("{\"name\":\"Forty\",\"crew\":{\"start\":\"2027-03-06\"},\"beds\":[" + beds + "]}");
        List<Page> pages = Prints.pages("job", sheet, PrintAsk.usual("", "2026-03-01"));
        assertEquals(1, pages.size());
        Map<Integer, Set<String>> done = new TreeMap<>();
        sheet.weekends().days().forEach(day -> day.parts().forEach(part -> done.computeIfAbsent(day.weekend(), number -> new TreeSet<>())
                .add(sheet.weekends().byId().get(part.task()).work().place().replace("bed ", ""))));
        List<Shape.Text> texts = pages.get(0).shapes().stream().filter(Shape.Text.class::isInstance).map(Shape.Text.class::cast).toList();
        double left = texts.stream().filter(text -> text.text().startsWith("where")).findFirst().orElseThrow().at().x();
        Map<Integer, Set<String>> told = new TreeMap<>();
        for (Shape.Text text : texts) {
            if (text.at().x() == left && !text.text().startsWith("where")) told.computeIfAbsent(told.size() + 1, number -> new TreeSet<>()).addAll(places(text.text()));
        }
        assertTrue(done.size() > 15, done.size() + " weekends");
        assertEquals(List.copyOf(done.values()), List.copyOf(told.values()));
    }

    /** {@code saw; K1-K3, K7} in single places. */
    private static Set<String> places(String cell) {
        Set<String> all = new TreeSet<>();
        for (String run : cell.split("[;,] ")) {
            String[] ends = run.split("-");
            if (ends.length == 1) all.add(run);
            else IntStream.rangeClosed(Integer.parseInt(ends[0].substring(1)), Integer.parseInt(ends[1].substring(1))).forEach(i -> all.add("K" + i));
        }
        return all;
    }

    @Test
    void oneBedHasTenPages() throws Exception {
        atMost(10, Gardens.text("three-entries"));
    }

    @Test
    void anLAndTwoRectanglesHaveTwentySix() throws Exception {
        atMost(26, L_AND_TWO);
    }

    @Test
    void theVillageHallHasFortyFive() throws Exception {
        atMost(45, Gardens.text("village-hall"));
    }
}
