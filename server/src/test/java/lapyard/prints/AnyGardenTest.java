package lapyard.prints;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import lapyard.diagrams.Drawn;
import lapyard.drawing.Page;
import lapyard.drawing.Shape;
import lapyard.drawing.Tag;
import lapyard.drawing.TextBox;
import lapyard.geometry.Point;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds for every page of any garden, whatever stands on it. */
class AnyGardenTest {
    /** ISO 5457: 10 mm around the frame, 20 on the side of the binding. */
    private static final double RIM = 10;

    static Stream<Long> seeds() {
        long from = Long.getLong("lapyard.seed", 931);
        return LongStream.range(from, from + Long.getLong("lapyard.seeds", 3)).boxed();
    }

    /** Each kind's pages: in feet on Letter, else on what is usual. */
    private static Map<String, List<Page>> kinds(JobSheet sheet, long seed) {
        PrintAsk ask = PrintAsk.usual("revision 3", "2027-03-01").onPaper(AnyGarden.feet(seed) ? Optional.of("Letter") : Optional.empty());
        Map<String, List<Page>> kinds = new java.util.LinkedHashMap<>();
        for (Print print : Prints.ALL) {
            if (print.name().equals("labels")) continue;
            try {
                kinds.put(print.name(), print.pages().apply(sheet, print.name().equals("plan") ? ask.onPaper(Optional.empty()) : ask));
            } catch (CannotPrint left) {
                // told in the contents of the set
            }
        }
        assertTrue(kinds.size() > 12, kinds.keySet()::toString);
        return kinds;
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void eachPageIsUsedAndHoldsWholeWordsApartAndWithinItsFrame(long seed) {
        JobSheet sheet = Gardens.sheet(AnyGarden.of(seed));
        Map<String, List<Page>> kinds = kinds(sheet, seed);
        assertAll(() -> textsLieApartAndWithinTheFrame(kinds), () -> noLineOfASentenceStandsAlone(kinds), () -> onlyNamesAreCutOff(kinds),
                () -> assertEquals(List.of(), PageUseTest.nearlyEmpty(sheet)));
    }

    private static void textsLieApartAndWithinTheFrame(Map<String, List<Page>> kinds) throws Exception {
        List<String> found = new ArrayList<>();
        for (Map.Entry<String, List<Page>> kind : kinds.entrySet()) {
            for (Page page : kind.getValue()) {
                for (String one : Drawn.of(page).collisions()) found.add(page.title() + ": " + one);
                for (Shape.Text text : Drawn.textShapes(page.shapes())) {
                    if (!TextBox.of(text).stream().allMatch(corner -> within(page, corner))) found.add(page.title() + ": " + text.text() + " leaves the frame");
                }
            }
        }
        assertEquals(List.of(), found);
    }

    private static boolean within(Page page, Point corner) {
        return corner.x() >= RIM && corner.y() >= RIM && corner.x() <= page.widthMm() - RIM && corner.y() <= page.heightMm() - RIM;
    }

    /** Neither the first line of a sentence stands alone at the foot of a page nor its last at the head of the next. */
    private static void noLineOfASentenceStandsAlone(Map<String, List<Page>> kinds) {
        List<String> found = new ArrayList<>();
        kinds.values().forEach(pages -> {
            for (int i = 1; i < pages.size(); i++) {
                Map<Tag, Integer> here = lines(pages.get(i));
                Map<Tag, Integer> before = lines(pages.get(i - 1));
                for (Shape.Text text : Drawn.textShapes(pages.get(i).shapes())) {
                    if (before.containsKey(text.tag()) && (here.get(text.tag()) < 2 || before.get(text.tag()) < 2)) found.add(pages.get(i).title() + ": " + text.text());
                }
            }
        });
        assertEquals(List.of(), found);
    }

    private static Map<Tag, Integer> lines(Page page) {
        Map<Tag, Integer> lines = new IdentityHashMap<>();
        for (Shape.Text text : Drawn.textShapes(page.shapes())) {
            if (text.tag() != Tag.AROUND && text.tag() != Tag.RUNNING_HEAD && text.tag() != Tag.RUNNING_FOOT && text.tag() != Tag.REPEATED) lines.merge(text.tag(), 1, Integer::sum);
        }
        return lines;
    }

    /** Names may be as long as anybody likes; all else is written whole, such as the set of a slanted cut. */
    private static void onlyNamesAreCutOff(Map<String, List<Page>> kinds) {
        List<String> found = new ArrayList<>();
        kinds.values().forEach(pages -> pages.forEach(page -> Drawn.textShapes(page.shapes()).forEach(text -> {
            if (text.text().contains("…") && AnyGarden.NAMES.stream().noneMatch(name -> !name.isEmpty() && text.text().contains(name.substring(0, 4)))) found.add(page.title() + ": " + text.text());
        })));
        assertEquals(List.of(), found);
    }

    /** Pieces, trim and rest of a bar lie one behind the other to the end of its board, a kerf apart at most, each piece as long as it says; in millimetres. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void partsOfABarMakeItsBoard(long seed) {
        JobSheet sheet = Gardens.sheet(AnyGarden.of(seed).replace("\"imperial\"", "\"metric\""));
        double kerf = sheet.garden().goods().saw().kerfMm();
        int bars = 0;
        for (Page page : Prints.pages("saw-day", sheet, PrintAsk.usual("", ""))) {
            List<Shape.Text> texts = Drawn.textShapes(page.shapes());
            List<double[]> boxes = boxes(page.shapes());
            // of the scale, by the longest piece, which is written to a whole millimetre as all are
            double mm = texts.stream().filter(text -> text.anchor() == Shape.Anchor.MIDDLE && text.text().matches("[0-9]{3,}")).max(Comparator.comparingInt(text -> Integer.parseInt(text.text())))
                    .flatMap(text -> boxes.stream().filter(box -> holds(box, text)).min(Comparator.comparingDouble(box -> box[2] - box[0])).map(box -> (box[2] - box[0]) / Double.parseDouble(text.text()))).orElse(0.0);
            for (Shape.Text length : texts) {
                if (mm == 0 || !length.bold() || length.anchor() != Shape.Anchor.START || !length.text().matches("[0-9]+")) continue;
                double right = texts.stream().filter(text -> text.at().y() == length.at().y() && text.anchor() == Shape.Anchor.START && text.bold() && text.at().x() > length.at().x()).mapToDouble(text -> text.at().x()).min().orElse(page.widthMm());
                List<double[]> parts = boxes.stream().filter(box -> Math.abs(box[1] + 3.4 - length.at().y()) < 1e-6 && box[0] > length.at().x() && box[0] < right).sorted(Comparator.comparingDouble(box -> box[0])).toList();
                if (parts.isEmpty()) continue;
                String bar = page.title() + ", " + length.text();
                bars++;
                for (int i = 1; i < parts.size(); i++) assertEquals(kerf * mm / 2, parts.get(i)[0] - parts.get(i - 1)[2], kerf * mm / 2 + 0.01, bar);
                double[] last = parts.get(parts.size() - 1);
                assertEquals(Double.parseDouble(length.text()) * mm - kerf * mm / 2, last[2] - parts.get(0)[0], (kerf / 2 + 2) * mm, bar);
                for (double[] part : parts) {
                    texts.stream().filter(text -> text.anchor() == Shape.Anchor.MIDDLE && text.text().matches("[0-9]+") && holds(part, text))
                            .forEach(text -> assertEquals(Double.parseDouble(text.text()) * mm, part[2] - part[0], mm + 0.01, bar));
                }
            }
        }
        assertTrue(bars > 0);
    }

    private static boolean holds(double[] box, Shape.Text text) {
        return text.at().x() > box[0] && text.at().x() < box[2] && text.at().y() > box[1] && text.at().y() < box[3];
    }

    /** Left, top, right and low of each upright rectangle. */
    private static List<double[]> boxes(List<Shape> shapes) {
        List<double[]> boxes = new ArrayList<>();
        for (Shape shape : shapes) {
            if (shape instanceof Shape.Group group) boxes.addAll(boxes(group.shapes()));
            if (!(shape instanceof Shape.Area area) || area.rings().size() > 1 || area.rings().get(0).size() != 4) continue;
            List<Point> ring = area.rings().get(0);
            if (area.stroke().isPresent()) boxes.add(new double[] {ring.get(0).x(), ring.get(0).y(), ring.get(2).x(), ring.get(2).y()});
        }
        return boxes;
    }
}
