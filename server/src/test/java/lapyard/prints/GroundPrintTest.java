package lapyard.prints;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.Set;
import lapyard.drawing.Page;
import lapyard.drawing.Shape;
import lapyard.drawing.SvgWriter;
import lapyard.drawing.TextBox;
import lapyard.drawing.TextMeasure;
import lapyard.geometry.Point;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class GroundPrintTest {
    private static final PrintAsk ASK = PrintAsk.usual("revision 3", "");

    private static String sample() throws Exception {
        return Gardens.text("lock-keepers-yard");
    }

    private static String text(List<Page> pages) {
        StringBuilder all = new StringBuilder();
        pages.forEach(page -> all.append(SvgWriter.write(page)));
        return all.toString();
    }

    /** Worked by hand for the L bed at (800, 1500). */
    @Test
    void theLsNumbersStandOnTheSheet() throws Exception {
        String l = "\"outline\":[[0,0],[3000,0],[3000,1500],[1800,1500],[1800,2400],[0,2400]]";
        String text = text(Prints.pages("setting-out", Gardens.sheet("{\"ground\":{\"outline\":[[0,0],[12000,0],[12000,9000],[0,9000]],"
                + "\"baseline\":{\"from\":[0,0],\"to\":[12000,0]}},\"beds\":[{\"id\":\"M\"," + l + ",\"at\":[800,1500]}]}"), ASK));
        for (String number : List.of(">800<", ">2600<", ">3800<", ">1500<", ">3900<", "P2–P6 3842", "P1–P3 3354", "P1–P5 3000", "800, 2600, 3800", "Square at P1: 3000")) {
            assertTrue(text.contains(number), number);
        }
    }

    /** U of 3600 x 2400 with a recess of 1200 x 1500, steps, a hexagon: the numbers of its pegs stand beside them and not on each other. */
    @Test
    void numbersOfPegsStandApart() throws Exception {
        for (String name : List.of("ferry-lane", "village-hall")) {
            for (Page page : Prints.pages("setting-out", Gardens.sample(name), ASK)) {
                List<Shape.Text> pegs = page.shapes().stream().filter(Shape.Text.class::isInstance).map(Shape.Text.class::cast)
                        .filter(text -> text.text().matches("P[0-9]+") && text.anchor() == Shape.Anchor.MIDDLE).toList();
                for (int i = 0; i < pegs.size(); i++) {
                    for (int k = 0; k < i; k++) {
                        Point a = pegs.get(i).at();
                        Point b = pegs.get(k).at();
                        assertTrue(Math.abs(a.x() - b.x()) > 4 || Math.abs(a.y() - b.y()) > 3, name + ": " + pegs.get(i).text() + " on " + pegs.get(k).text());
                    }
                }
            }
        }
    }

    /** Twenty-five hexagons, each turned otherwise, have 150 pegs, as many distances along the baseline. */
    @ParameterizedTest
    @ValueSource(strings = {"Letter", "A4", "A3"})
    void numbersAlongTheBaselineStayOnTheSheet(String paper) throws Exception {
        StringBuilder beds = new StringBuilder();
        for (int i = 0; i < 25; i++) {
            beds.append(i == 0 ? "" : ",").append("{\"id\":\"B%d\",\"outline\":[[0,0],[900,0],[1350,780],[900,1560],[0,1560],[-450,780]],\"courses\":1,\"turn\":%d,\"at\":[%d,%d]}"
                    .formatted(i, 7 * i, 2500 + i % 5 * 3100 + 37 * i, 1500 + i / 5 * 2700));
        }
        JobSheet sheet = Gardens.sheet("{\"ground\":{\"outline\":[[0,0],[18000,0],[18000,15000],[0,15000]]},\"beds\":[" + beds + "]}");
        List<Page> pages = Prints.pages("setting-out", sheet, ASK.onPaper(Optional.of(paper)));
        List<Shape.Text> texts = pages.get(0).shapes().stream().filter(Shape.Text.class::isInstance).map(Shape.Text.class::cast).toList();
        List<Shape.Text> numbers = texts.stream().filter(text -> text.turnDeg() != 0 && text.text().matches("[0-9]+")).toList();
        assertTrue(numbers.size() > 20, numbers::toString);
        double bar = texts.stream().filter(text -> text.text().startsWith("Scale ")).findFirst().orElseThrow().at().x();
        double right = pages.get(0).widthMm() - bar;
        for (Shape.Text number : numbers) assertTrue(number.at().x() >= bar && number.at().x() <= right, number::toString);
        int left = texts.stream().filter(text -> text.text().contains("have no room here")).mapToInt(text -> Integer.parseInt(text.text().replaceAll(" .*", ""))).findFirst().orElseThrow();
        String list = text(pages.subList(1, pages.size())).replaceAll("<[^>]*>", " ").replaceAll("\\s+", " ").replaceAll(".*laid once along the baseline: ", "").replaceAll("\\. Square.*", "");
        // both ends of the baseline stand beside it too
        assertEquals(list.split(", ").length + 2, numbers.size() + left);
    }

    /** A garden far across: feet and sixteenths take the whole width of the sheet. */
    @Test
    void numbersInFeetStandBesideEachOther() throws Exception {
        String bed = "{\"id\":\"%s\",\"width\":2438.4,\"depth\":1219.2,\"at\":[%d,1507]}";
        List<Page> pages = Prints.pages("setting-out", Gardens.sheet("{\"units\":\"imperial\",\"ground\":{\"outline\":[[0,0],[21000,0],[21000,14000],[0,14000]]},\"beds\":["
                + bed.formatted("A", 3801) + "," + bed.formatted("B", 15007) + "]}"), ASK);
        int rows = 0;
        Set<Double> sizes = new TreeSet<>();
        for (Page page : pages) {
            List<Shape.Text> texts = page.shapes().stream().filter(Shape.Text.class::isInstance).map(Shape.Text.class::cast).filter(text -> text.turnDeg() == 0).toList();
            for (Shape.Text peg : texts) {
                if (!peg.text().matches("P[0-9]") || peg.anchor() != Shape.Anchor.START) continue;
                List<Shape.Text> row = texts.stream().filter(text -> Math.abs(text.at().y() - peg.at().y()) < 0.1 && text.at().x() >= peg.at().x()).toList();
                assertTrue(row.size() >= 6, row::toString);
                for (int i = 1; i < 6; i++) assertTrue(left(row.get(i)) > left(row.get(i - 1)) + wide(row.get(i - 1)), row.get(i - 1).text() + " on " + row.get(i).text());
                row.forEach(number -> sizes.add(number.sizeMm()));
                rows++;
            }
        }
        assertTrue(rows == 8, "two beds of four pegs");
        assertEquals(1, sizes.size(), () -> "one type for all numbers, not " + sizes);
    }

    private static double wide(Shape.Text text) {
        return TextMeasure.widthMm(text.text(), text.sizeMm(), text.bold());
    }

    private static double left(Shape.Text text) {
        return text.anchor() == Shape.Anchor.END ? text.at().x() - wide(text) : text.at().x();
    }

    @ParameterizedTest
    @ValueSource(strings = {"setting-out", "shade", "access"})
    void nothingRunsOffTheSheet(String name) throws Exception {
        for (String units : List.of("metric", "imperial")) {
            String document = sample().replaceFirst("\"currency\"", "\"units\": \"" + units + "\", \"currency\"");
            for (Page page : Prints.pages(name, Gardens.sheet(document), ASK)) {
                page.shapes().forEach(shape -> within(page, shape));
            }
        }
    }

    /** A layer is asked for by name; one that the garden says too little for is refused with what to give. */
    @Test
    void sunAndPegsAreLayersOfThePlan() throws Exception {
        PrintAsk ask = ASK.showing(List.of("sun", "pegs", "beds"));
        String text = text(Prints.pages("plan", Gardens.sheet(sample()), ask));
        for (String words : List.of("full sun, 6 h and more", "shade, under 3 h", ">P1<", "baseline 11400")) {
            assertTrue(text.contains(words), words);
        }
        JobSheet bare = Gardens.sheet("{\"beds\":[{\"width\":2400,\"depth\":1200,\"courses\":3}]}");
        String refused = Told.refusal(assertThrows(CannotPrint.class, () -> Prints.pages("plan", bare, ASK.showing(List.of("sun")))));
        assertTrue(refused.contains("Give latitude, longitude and a day"), refused);
    }

    private static void within(Page page, Shape shape) {
        if (shape instanceof Shape.Group group) {
            group.shapes().forEach(inner -> within(page, inner));
        } else if (shape instanceof Shape.Text words) {
            for (Point corner : TextBox.of(words)) {
                assertTrue(corner.x() >= 19 && corner.x() <= page.widthMm() - 9 && corner.y() >= 9 && corner.y() <= page.heightMm() - 9,
                        words.text() + " at " + corner);
            }
        }
    }

    @Test
    void theShadeSheetTellsHoursAndTimes() throws Exception {
        String text = text(Prints.pages("shade", Gardens.sheet(sample()), ASK));
        assertTrue(text.contains("2026-03-20") && text.contains("rises 06:") && text.contains("full sun, 6 h and more"), text.substring(0, 400));
    }

    @Test
    void theAccessSheetSaysWhichBedFailsAndByHowMuch() throws Exception {
        String text = text(Prints.pages("access", Gardens.sheet(sample()), ASK));
        assertTrue(text.contains("of 17 checks pass") && text.contains("reach by 103"), "bed C fails");
    }

    @Test
    void aGardenWithoutBaselineOrPlaceSaysWhatIsMissing() throws Exception {
        JobSheet bare = Gardens.sheet("{\"beds\":[{\"width\":2400,\"depth\":1200}]}");
        assertTrue(Told.refusal(assertThrows(CannotPrint.class, () -> Prints.pages("setting-out", bare, ASK))).contains("There is no baseline"));
        assertThrows(CannotPrint.class, () -> Prints.pages("shade", bare, ASK));
        assertThrows(CannotPrint.class, () -> Prints.pages("access", bare, ASK));
        String set = text(Prints.pages(Prints.SET, bare, ASK));
        assertTrue(set.contains("no baseline"), "the set names what it lacks");
    }
}
