package lapyard.diagrams;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import lapyard.construction.BedWork;
import lapyard.drawing.Page;
import lapyard.drawing.Paper;
import lapyard.drawing.Scale;
import lapyard.drawing.Shape;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import org.junit.jupiter.api.Test;

class CourseCardTest {
    private static final PlanOptions A4 = PlanOptions.usual(false).on(Paper.A4);

    private static BedWork bedM() {
        return TestGardens.work(TestGardens.bed("M", "Corner", TestGardens.M, 0, 0, 0, 3));
    }

    /** Bed M by the turning lap, worked by hand: 2900 1400 1200 900 1700 2300; at 600 kg/m3 A weighs 34.8 and F 27.6 kg. */
    @Test
    void tellsEveryTimberWithItsLengthAndWeight() throws Exception {
        List<Page> pages = CourseCard.draw(bedM(), "Yard", false, 25, A4);
        assertEquals(1, pages.size());
        Drawn card = Drawn.of(pages.get(0));
        String[] lengths = {"2900", "1400", "1200", "900", "1700", "2300"};
        for (int course = 1; course <= 3; course++) {
            for (int wall = 0; wall < 6; wall++) {
                String mark = "M-" + course + Bed.wallLetter(wall);
                assertTrue(card.says(mark), mark);
                assertTrue(card.says(mark + " · " + lengths[wall]), card.texts()::toString);
            }
        }
        assertEquals(3, card.texts().stream().filter("34.8 two"::equals).count());
        assertEquals(3, card.texts().stream().filter("27.6 two"::equals).count());
        assertEquals(3, card.texts().stream().filter("20.4"::equals).count());
        assertEquals(List.of(), card.collisions());
    }

    /** 3000 at 1:50 is 60.0 mm on the card as well. */
    @Test
    void ringsAreToScale() throws Exception {
        Drawn card = Drawn.of(CourseCard.draw(bedM(), "Yard", false, 25, A4).get(0));
        assertTrue(card.says("1:50"), card.texts()::toString);
        double[] ring = card.polygons("course-2");
        assertEquals(60, ring[2] - ring[0], 0.0011);
        assertEquals(48, ring[3] - ring[1], 0.0011);
    }

    /** Odd courses run past at the start of each wall, even ones at its end. */
    @Test
    void theBarLiesAcrossTheEndThatRunsPast() {
        Page page = CourseCard.draw(bedM(), "Yard", false, 25, A4).get(0);
        for (int course = 1; course <= 2; course++) {
            Shape.Group ring = group(page, "course-" + course);
            List<Shape.Lines> bars = new ArrayList<>();
            double left = 1e9;
            double right = -1e9;
            double low = -1e9;
            for (Shape shape : ring.shapes()) {
                if (shape instanceof Shape.Lines lines && lines.stroke().widthMm() == Inks.BROAD) {
                    bars.add(lines);
                } else if (shape instanceof Shape.Area area) {
                    for (Point p : area.rings().get(0)) {
                        left = Math.min(left, p.x());
                        right = Math.max(right, p.x());
                        low = Math.max(low, p.y());
                    }
                }
            }
            assertEquals(6, bars.size());
            // Wall A's own: upright, in the lowest 2 mm, close to the left end in course 1 and to the right end in course 2.
            double y = low;
            double end = course == 1 ? left + 1.3 : right - 1.3;
            assertEquals(1, bars.stream().map(bar -> bar.lines().get(0))
                    .filter(bar -> bar.stream().allMatch(p -> p.y() > y - 2.01 && Math.abs(p.x() - end) < 0.01)).count());
        }
    }

    private static Shape.Group group(Page page, String id) {
        return page.shapes().stream()
                .filter(shape -> shape instanceof Shape.Group group && group.id().equals(id))
                .map(Shape.Group.class::cast)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void moreThanThreeCoursesGoOnMorePages() throws Exception {
        BedWork deep = TestGardens.work(TestGardens.bed("D", "", Outline.rectangle(1200, 600), 0, 0, 0, 7));
        List<Page> pages = CourseCard.draw(deep, "Yard", true, 25, A4.on(Paper.LETTER));
        assertEquals(3, pages.size());
        assertTrue(Drawn.of(pages.get(2)).says("D-7A") && Drawn.of(pages.get(2)).says("3 of 3"));
        assertTrue(Drawn.of(pages.get(0)).says("D-1A · 3' 7 5/16\""), Drawn.of(pages.get(0)).texts()::toString);
    }

    @Test
    void manyTimbersAndLongNamesStayApart() throws Exception {
        Outline comb = TestGardens.corners(0, 0, 6000, 0, 6000, 2400, 5000, 2400, 5000, 1200, 4000, 1200, 4000, 2400, 3000, 2400,
                3000, 1200, 2000, 1200, 2000, 2400, 1000, 2400, 1000, 1200, 0, 1200);
        BedWork work = TestGardens.work(TestGardens.bed("W".repeat(40), "n".repeat(500), comb, 0, 0, 0, 3));
        for (Paper paper : Paper.values()) {
            for (Page page : CourseCard.draw(work, "g".repeat(500), true, 25, A4.on(paper))) {
                assertEquals(List.of(), Drawn.of(page).collisions(), paper.label());
            }
        }
    }

    @Test
    void aRingTooLargeForTheScaleIsRefused() {
        DoesNotFit e = assertThrows(
                DoesNotFit.class, () -> CourseCard.draw(bedM(), "Yard", false, 25, A4.at(new Scale(20))));
        assertEquals(50, e.nearest().n());
    }
}
