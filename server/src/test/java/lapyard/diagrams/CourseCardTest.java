package lapyard.diagrams;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import lapyard.construction.BedWork;
import lapyard.drawing.Page;
import lapyard.drawing.Paper;
import lapyard.drawing.Shape;
import lapyard.geometry.Outline;
import lapyard.plan.Bed;
import lapyard.plan.Lifting;
import lapyard.plan.Saw;
import org.junit.jupiter.api.Test;

class CourseCardTest {
    private static final BenchOptions A4 = BenchOptions.usual("Yard", false).on(Paper.A4);

    private static BedWork bedM() {
        return TestGardens.work(TestGardens.bed("M", "Corner", TestGardens.M, 0, 0, 0, 3));
    }

    private static List<Page> cards(BedWork... works) {
        return CourseCard.pages(new Lifting(25, 2), stacks(works), A4);
    }

    private static List<CourseCard.Stack> stacks(BedWork... works) {
        return Stream.of(works)
                .map(work -> new CourseCard.Stack(work, work.quantities(), Map.of(), List.of()))
                .toList();
    }

    /** Bed M by the turning lap, worked by hand: 2900 1400 1200 900 1700 2300; at 600 kg/m3 A weighs 34.8 and F 27.6 kg. */
    @Test
    void tellsEveryTimberWithItsLengthEndsAndWeight() throws Exception {
        List<Page> pages = cards(bedM());
        assertEquals(1, pages.size());
        Drawn card = Drawn.of(pages.get(0));
        String[] lengths = {"2900", "1400", "1200", "900", "1700", "2300"};
        for (int course = 1; course <= 3; course++) {
            for (int wall = 0; wall < 6; wall++) {
                String mark = "M-" + course + Bed.wallLetter(wall);
                assertTrue(card.says(mark), mark);
            }
        }
        String[] outside = {"3000", "1500", "1200", "900", "1800", "2400"};
        for (int wall = 0; wall < 6; wall++) {
            // courses 1 and 3 lie alike and share a ring and a table, course 2 has its own
            assertEquals(2, java.util.Collections.frequency(card.texts(), Bed.wallLetter(wall) + " · " + lengths[wall] + " (" + outside[wall] + ")"), card.texts()::toString);
            assertEquals(2, java.util.Collections.frequency(card.texts(), lengths[wall]), card.texts()::toString);
        }
        assertEquals(2, card.texts().stream().filter("34.8 ●"::equals).count());
        assertEquals(2, card.texts().stream().filter("27.6 ●"::equals).count());
        assertEquals(2, card.texts().stream().filter("20.4"::equals).count());
        assertEquals(12, card.texts().stream().filter("through"::equals).count());
        assertEquals(12, card.texts().stream().filter("butts"::equals).count());
        // 1 to 3 of the worked bed: 3354.1; the longest, 2 to 6: 3841.9
        assertTrue(card.texts().stream().anyMatch(words -> words.contains("2 to 6 is 3842")), card.texts()::toString);
        assertEquals(List.of(), card.collisions());
    }

    /** 3000 x 2400, as large as its column allows: 84.3 less a rim of 7 on both sides. */
    @Test
    void ringsKeepTheirProportions() {
        Box ring = timbers(group(cards(bedM()).get(0), "course-2"));
        assertEquals(0.8, ring.height() / ring.width(), 1e-6);
        assertTrue(ring.width() > 60, "drawn only " + ring.width() + " wide");
    }

    private static Box timbers(Shape.Group course) {
        return Box.round(course.shapes().stream()
                .filter(shape -> shape instanceof Shape.Area area && area.fill().equals(new Inks(false).timber().fill()))
                .flatMap(shape -> ((Shape.Area) shape).rings().get(0).stream())
                .toList());
    }

    /** odd courses run through at the start of each wall, even ones at its end. */
    @Test
    void theBarLiesAcrossTheEndThatRunsPast() throws Exception {
        Page page = cards(bedM()).get(0);
        for (int course = 1; course <= 2; course++) {
            Shape.Group ring = group(page, "course-" + course);
            Box box = timbers(ring);
            List<Shape.Lines> bars = new ArrayList<>();
            for (Shape shape : ring.shapes()) {
                if (shape instanceof Shape.Lines lines && lines.stroke().widthMm() == Inks.BROAD) {
                    bars.add(lines);
                }
            }
            assertEquals(6, bars.size());
            // Wall A's own: upright, in the lowest timber, close to the left end in course 1 and to the right end in course 2.
            double y = box.high();
            double end = course == 1 ? box.left() + 1.3 : box.right() - 1.3;
            assertEquals(1, bars.stream().map(bar -> bar.lines().get(0))
                    .filter(bar -> bar.stream().allMatch(p -> p.y() > y - 2.6 && Math.abs(p.x() - end) < 0.01)).count());
        }
    }

    /** A long bed lies course below course, and its seams have plates. */
    @Test
    void seamsHavePlatesAndPlaces() throws Exception {
        BedWork work = lapyard.construction.Beds.work(TestGardens.bed("K", "Long", Outline.rectangle(6000, 1200), 0, 0, 0, 2), Saw.USUAL, 4780, Map.of(), Optional.empty(), 2400, 25);
        Drawn card = Drawn.of(cards(work).get(0));
        assertTrue(card.says("K-1Aa") && card.says("Aa · 3500 (6000)"), card.texts()::toString);
        assertTrue(String.join(" ", card.texts()).contains("course 1 A at 3500, C at 3500; course 2 A at 2500"), card.texts()::toString);
        assertEquals(List.of(), card.collisions());
    }

    /** Six sides of 1000 mitred at 30: the short face is 884.5. */
    @Test
    void mitredEndsSayTheirDegreesAndFaces() throws Exception {
        Outline six = TestGardens.corners(0, 0, 1000, 0, 1500, 866, 1000, 1732, 0, 1732, -500, 866);
        BedWork work = lapyard.construction.Beds.work(TestGardens.bed("X", "", six, 0, 0, 0, 2), Saw.USUAL, 4780, Map.of(), Optional.empty(), 2400, 25);
        Drawn card = Drawn.of(cards(work).get(0));
        assertEquals(12, card.texts().stream().filter("30°"::equals).count());
        assertTrue(String.join(" ", card.texts()).contains("A 1000 and 885"), card.texts()::toString);
        assertEquals(List.of(), card.collisions());
    }

    private static Shape.Group group(Page page, String id) {
        return page.shapes().stream()
                .filter(shape -> shape instanceof Shape.Group group && group.id().equals(id))
                .map(Shape.Group.class::cast)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void moreThanFourCoursesGoOnMoreSheetsInTheOrderOfBuilding() throws Exception {
        BedWork deep = TestGardens.work(TestGardens.bed("D", "", Outline.rectangle(1200, 600), 0, 0, 0, 7));
        List<Page> pages = CourseCard.pages(new Lifting(25, 2), stacks(deep, bedM()), BenchOptions.usual("Yard", true));
        assertEquals(3, pages.size());
        assertTrue(Drawn.of(pages.get(1)).says("D-7A") && Drawn.of(pages.get(1)).says("sheet 2 of 3"));
        assertTrue(Drawn.of(pages.get(0)).texts().stream().anyMatch(words -> words.startsWith("A · 3' 7 5/16\" (")), Drawn.of(pages.get(0)).texts()::toString);
        assertTrue(Drawn.of(pages.get(2)).says("M-1A"));
    }

    /** Two beds of one size in two places share a card; one more course makes another. */
    @Test
    void bedsThatAreAlikeHaveOneCard() throws Exception {
        BedWork one = TestGardens.work(TestGardens.bed("P", "Peas", Outline.rectangle(2400, 1200), 0, 0, 0, 2));
        BedWork same = TestGardens.work(TestGardens.bed("Q", "Beans", Outline.rectangle(2400, 1200), 5000, 0, 90, 2));
        BedWork high = TestGardens.work(TestGardens.bed("S", "", Outline.rectangle(2400, 1200), 0, 4000, 0, 3));
        List<Page> pages = cards(one, same, high);
        assertEquals(List.of("Course card, beds P, Q: Peas, Beans", "Course card, bed S"), pages.stream().map(page -> page.subjects().get(0)).toList());
        assertTrue(Drawn.of(pages.get(0)).says("1A") && Drawn.of(pages.get(0)).says("2D"), Drawn.of(pages.get(0)).texts()::toString);
        assertTrue(Drawn.of(pages.get(1)).says("S-1A"));
    }

    @Test
    void manyTimbersAndLongNamesStayApart() throws Exception {
        Outline comb = TestGardens.corners(0, 0, 6000, 0, 6000, 2400, 5000, 2400, 5000, 1200, 4000, 1200, 4000, 2400, 3000, 2400,
                3000, 1200, 2000, 1200, 2000, 2400, 1000, 2400, 1000, 1200, 0, 1200);
        BedWork work = TestGardens.work(TestGardens.bed("W".repeat(40), "n".repeat(500), comb, 0, 0, 0, 3));
        for (Paper paper : Paper.values()) {
            for (Page page : CourseCard.pages(new Lifting(25, 2), stacks(work), BenchOptions.usual("g".repeat(500), true).on(paper))) {
                assertEquals(List.of(), Drawn.of(page).collisions(), paper.label());
            }
        }
    }

    @Test
    void aGardenWithoutBedsSaysSo() throws Exception {
        assertTrue(Drawn.of(cards().get(0)).says("No beds stand in this garden yet."));
    }

    /** Ties that cross lie 25 apart in height: the card tells the height of each that differs. */
    @Test
    void theHeightOfATieThatCrossesIsTold() throws Exception {
        var square = lapyard.construction.Beds.tied(lapyard.construction.Beds.bed("K", lapyard.geometry.Outline.rectangle(3000, 3000), 3, lapyard.plan.Lap.TURNING), lapyard.plan.Ties.USUAL);
        String told = String.join(" ", Drawn.of(cards(lapyard.construction.Beds.built(square)).get(0)).texts());
        assertTrue(told.contains("300 over the ground, wall B at 1500: 325, a batten"), told);
    }
}
