package lapyard.prints;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import lapyard.cutting.Ledger;
import lapyard.diagrams.LabelGrid;
import lapyard.diagrams.Stamp;
import lapyard.drawing.Page;
import lapyard.drawing.Paper;
import lapyard.drawing.Shape;
import lapyard.drawing.TextBox;
import lapyard.geometry.Point;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Labels for pieces and tags for offcuts on sheets of labels. */
class LabelsTest {
    private static PrintAsk ask(String labels) {
        return new PrintAsk(
                Optional.empty(), false, PrintAsk.OfPlan.USUAL, PrintAsk.OfSaw.USUAL, Optional.of(labels), Stamp.NONE, PhotosAtHand.NONE);
    }

    private static List<Shape.Text> texts(Page page) {
        return page.shapes().stream().map(Shape.Text.class::cast).toList();
    }

    /** ISO 216: A4 is 210 x 297, so three columns of 70 and eight rows of 37 leave half a millimetre above and below. No text comes nearer than 2 mm to an edge. */
    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {"3x8,0,0.5; 3; 8; 70; 37", "2x7,4.65,15.15; 2; 7; 100.35; 38.1", "4x10,10,13.5,2,0; 4; 10; 46; 27"})
    void everyTextLiesOnItsOwnLabel(String labels, int columns, int rows, double wide, double high) throws Exception {
        String[] mm = labels.split(",");
        double left = Double.parseDouble(mm[1]);
        double top = Double.parseDouble(mm[2]);
        double gap = mm.length > 3 ? Double.parseDouble(mm[3]) : 0;
        List<Page> pages = Prints.pages("labels", Gardens.sample("chapel-corner"), ask(labels));
        assertTrue(pages.size() > 1);
        for (Page page : pages) {
            assertEquals(210, page.widthMm());
            assertEquals(297, page.heightMm());
            for (Shape.Text text : texts(page)) {
                List<Integer> on = new ArrayList<>();
                for (Point corner : TextBox.of(text)) {
                    double x = corner.x() - left;
                    double y = corner.y() - top;
                    int column = (int) Math.floor(x / (wide + gap));
                    int row = (int) Math.floor(y / high);
                    double inX = x - column * (wide + gap);
                    double inY = y - row * high;
                    assertTrue(inX > 2 && inX < wide - 2 && inY > 2 && inY < high - 2, text.text() + " at " + corner);
                    on.add(row * columns + column);
                }
                assertEquals(1, on.stream().distinct().count(), text.text());
                assertTrue(on.get(0) < columns * rows, text.text());
            }
        }
    }

    /** Each piece and each offcut that is not scrap has one label with its own length. */
    @ParameterizedTest
    @ValueSource(strings = {"chapel-corner", "village-hall", "three-entries"})
    void eachPieceAndEachKeptOffcutHasOneLabel(String name) throws Exception {
        JobSheet sheet = Gardens.sample(name);
        List<String> all = Prints.pages("labels", sheet, ask("3x8,0,0.5")).stream().flatMap(page -> texts(page).stream()).map(Shape.Text::text).toList();
        sheet.beds().forEach(bed -> bed.work().pieces().forEach(piece -> {
            List<Integer> at = Stream.iterate(0, i -> i + 1).limit(all.size()).filter(i -> all.get(i).equals(piece.mark())).toList();
            assertEquals(1, at.size(), piece.mark());
            assertEquals(String.valueOf(Math.round(Math.floor(piece.lengthMm() + 0.5))), all.get(at.get(0) + 1), piece.mark());
            assertTrue(all.get(at.get(0) + 2).startsWith("bed " + bed.work().bed().id() + ", course " + piece.course() + ", wall " + piece.wall()), all.get(at.get(0) + 2));
        }));
        long kept = Stream.concat(sheet.cutting().stream(), sheet.strips().stream())
                .flatMap(cutting -> cutting.saw().ledger().offcuts().stream()).filter(offcut -> offcut.fate() != Ledger.Fate.SCRAP).count();
        assertEquals(kept, all.stream().filter(text -> text.startsWith("#")).distinct().count());
    }

    @Test
    void labelsThatDoNotFitTheirPaperAreRefusedWithTheirSize() {
        String small = Told.refusal(assertThrows(IllegalArgumentException.class, () -> LabelGrid.read("3x30,0,0", Paper.A4)));
        assertTrue(small.contains("70 x 9.9 mm"), small);
        for (String wrong : List.of("3", "3x", "3x8,1", "ax8", "3x8,0,0.5,1", "3x8,x,y", "0x8", "3x8,-1,0", "3x8,NaN,0")) {
            assertThrows(IllegalArgumentException.class, () -> LabelGrid.read(wrong, Paper.A4), wrong);
        }
    }
}
