package lapyard.prints;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.TreeMap;
import java.util.Map;
import lapyard.drawing.Page;
import lapyard.drawing.Shape;
import lapyard.job.Gardens;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Paper is read outdoors, so no page of any sample holds type below the least size. */
class TypeSizeTest {
    @ParameterizedTest
    @MethodSource("lapyard.job.Gardens#samples")
    void noPageHoldsTypeBelowTheLeastSize(String sample) throws Exception {
        List<Page> pages = Prints.pages(Prints.SET, Gardens.sample(sample), PrintAsk.usual("", ""));
        Map<String, Integer> small = new TreeMap<>();
        int[] texts = {0};
        for (Page page : pages) {
            walk(page.shapes(), text -> {
                texts[0]++;
                if (text.sizeMm() < 2.5) small.merge(page.title().replaceAll("[0-9]+", "N") + " " + text.sizeMm() + " e.g. " + text.text().replaceAll("[0-9]+", "N"), 1, Integer::sum);
            });
        }
        assertTrue(texts[0] > 10 * pages.size(), "texts were looked at");
        assertEquals(Map.of(), small);
    }

    private static void walk(List<Shape> shapes, java.util.function.Consumer<Shape.Text> each) {
        for (Shape shape : shapes) {
            if (shape instanceof Shape.Group group) walk(group.shapes(), each);
            else if (shape instanceof Shape.Window window) walk(window.shapes(), each);
            else if (shape instanceof Shape.Text text) each.accept(text);
        }
    }
}
