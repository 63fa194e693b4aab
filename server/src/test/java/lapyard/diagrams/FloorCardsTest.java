package lapyard.diagrams;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.construction.Beds;
import lapyard.construction.BedWork;
import lapyard.construction.Construction;
import lapyard.drawing.Page;
import lapyard.drawing.Shape;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Saw;
import org.junit.jupiter.api.Test;

class FloorCardsTest {
    private static BedWork bedM() {
        return work(TestGardens.bed("M", "Corner bed", TestGardens.M, 0, 0, 0, 3));
    }

    /** With the ground falling to the rear. */
    private static BedWork work(Bed bed) {
        return Construction.of(bed, Saw.USUAL, 4780, Optional.of(new Point(0, 1)));
    }

    private static String text(List<Page> pages) throws Exception {
        List<String> texts = new ArrayList<>();
        for (Page page : pages) texts.addAll(Drawn.of(page).texts());
        return String.join("\n", texts);
    }

    /** Worked by hand: inner 2800 x 1300 and 1600 x 900; 9 slat rows of 1200 and 395 in the narrow one; strips 30 short at the wall. */
    @Test
    void theCardOfTheWorkedBedTellsItsFloorAndItsLiner() throws Exception {
        BedWork work = bedM();
        String text = text(FloorCards.pages("Yard", false, List.of(work), BenchOptions.usual(false)));
        assertTrue(text.contains("R1: 2800 × 1300") && text.contains("R2: 1600 × 900"), text);
        assertTrue(text.contains("of 870") && text.contains("of 1270"), text);
        assertTrue(text.contains("1200 + 395"), text);
        assertTrue(text.contains("2460") && text.contains("3960") && text.contains("2760 × 1780"), text);
        assertTrue(text.contains("21 drain slits") && text.contains("144 staples"), text);
    }

    /** The floor's rectangle R1 of 2800 x 1300 measures what the scale in the corner says. */
    @Test
    void theFloorIsToScale() throws Exception {
        Page page = FloorCards.pages("Yard", false, List.of(bedM()), BenchOptions.usual(false)).get(0);
        String scale = Drawn.of(page).texts().stream().filter(text -> text.matches("1:[0-9]+")).findFirst().orElseThrow();
        double n = Double.parseDouble(scale.substring(2));
        double widest = areas(page.shapes()).stream()
                .filter(area -> area.stroke().isPresent() && !area.stroke().get().dashMm().isEmpty())
                .mapToDouble(area -> Box.round(area.rings().get(0)).width())
                .max()
                .orElseThrow();
        assertEquals(2800 / n, widest, 1e-6);
    }

    private static List<Shape.Area> areas(List<Shape> shapes) {
        List<Shape.Area> areas = new ArrayList<>();
        for (Shape shape : shapes) {
            if (shape instanceof Shape.Group group) areas.addAll(areas(group.shapes()));
            if (shape instanceof Shape.Area area) areas.add(area);
        }
        return areas;
    }

    @Test
    void gardensWithoutFloorAndLinerSaySo() throws Exception {
        String text = text(FloorCards.pages("Yard", false, List.of(), BenchOptions.usual(false)));
        assertTrue(text.contains("No bed here has a slatted floor or a liner."), text);
    }

    @Test
    void aMirroredBedsFloorIsMirrored() throws Exception {
        Bed bed = TestGardens.bed("M", "", TestGardens.M, 0, 0, 0, 3);
        var mirrored = new Placement(bed.placement().at(), 0, true);
        Page plain = FloorCards.pages("Yard", false, List.of(work(bed)), BenchOptions.usual(false)).get(0);
        Page turned = FloorCards.pages(
                "Yard", false, List.of(work(Beds.placed(bed, mirrored))), BenchOptions.usual(false)).get(0);
        double middle = (20 + 3 + plain.widthMm() - 10 - 3) / 2;
        double left = narrow(plain) - middle;
        double right = narrow(turned) - middle;
        assertEquals(left, -right, 1e-6);
        assertTrue(Math.abs(left) > 1);
    }

    /** Middle of the narrower rectangle across the paper. */
    private static double narrow(Page page) {
        return areas(page.shapes()).stream()
                .filter(area -> area.stroke().isPresent() && !area.stroke().get().dashMm().isEmpty())
                .map(area -> Box.round(area.rings().get(0)))
                .min((a, b) -> Double.compare(a.width(), b.width()))
                .orElseThrow()
                .centre().x();
    }
}
