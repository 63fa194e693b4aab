package lapyard.diagrams;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import lapyard.drawing.Page;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import lapyard.plan.Finding;
import lapyard.construction.Seam;
import lapyard.plan.Lifting;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The cards of the nursery checked by hand: an L, a U, a hexagon, a wall of 7 m and a bed across the fall, all of 100 x 200.
 * Every figure was worked with pencil and plane geometry from the drawing, none was read off the program.
 */
class HandCheckTest {
    private static JobSheet sheet;
    private static final Map<String, Drawn> CARDS = new HashMap<>();

    @BeforeAll
    static void print() throws Exception {
        sheet = Gardens.sample("ferry-lane");
        for (JobSheet.BedSheet bed : sheet.beds()) {
            List<Page> pages = CourseCard.pages(
                    new Lifting(25, 2),
                    List.of(new CourseCard.Stack(bed.work(), bed.quantities(), Map.of(), List.of())),
                    BenchOptions.usual("Ferry lane nursery", false));
            assertEquals(1, pages.size(), "one page a bed");
            CARDS.put(bed.work().bed().id(), Drawn.of(pages.get(0)));
        }
    }

    /**
     * Turning lap: outer to outer L - 100, outer to inside L, inside to inside L + 100, the same in every course.
     * E: walls 2600 1200 1000 1000 1600 2200, corner 4 inside. V: 3000 2000 1000 1200 1000 1200 1000 2000, corners 5 and 6
     * inside. X: mitred, long point 1200. Y: 2400 1200.
     */
    @ParameterizedTest(name = "bed {0}")
    @CsvSource({
        "E, 2500 1100 1000 1000 1500 2100, 9200",
        "V, 2900 1900 900 1200 1100 1200 900 1900, 12000",
        "X, 1200 1200 1200 1200 1200 1200, 7200",
        "Y, 2300 1100 2300 1100, 6800"
    })
    void everyTimberOfEveryCourse(String bed, String lengths, int sum) {
        String[] walls = lengths.split(" ");
        int total = 0;
        for (int wall = 0; wall < walls.length; wall++) {
            total += Integer.parseInt(walls[wall]);
            for (int course = 1; course <= 3; course++) {
                String mark = bed + "-" + course + (char) ('A' + wall);
                assertEquals(walls[wall], cutTo(CARDS.get(bed), mark, "" + (char) ('A' + wall)), () -> mark + " in " + CARDS.get(bed).texts());
            }
        }
        // P - 4 x 100: 9600 - 400, 12400 - 400, 7200 - 400; the hexagon's long points are its sides
        assertEquals(sum, total);
    }

    /** 1200 - 2 x 100 x tan 30 = 1200 - 115.47 = 1084.5; both ends 30 degrees, 18 timbers. */
    @Test
    void theHexagonIsMitredAt30() {
        Drawn card = CARDS.get("X");
        // all three courses lie alike: one row for the three timbers of a wall
        assertEquals(12, card.texts().stream().filter("30°"::equals).count());
        assertTrue(says("X", "A 1200 and 1085"), card.texts()::toString);
        // half of a screw of 120 needs 60 x sin 30 / sin 60 = 34.6 from the joint, set to 35
        assertTrue(says("X", "at 30° off the inner face through the mitre, from either timber by turns, 35 from the joint"), card.texts()::toString);
        // means 6 x (1200 + 1084.53) / 2 = 6853.6 a course; 3 courses x 0.02 m2 x 600 kg/m3 = 246.7 kg
        assertEquals(246.73, quantity("X", "timber.mass"), 0.01);
    }

    /** The bench has them too: 18 alike, 1200 long, 1200 outside, 1084.5 inside, 30 degrees at both ends. */
    @Test
    void theBenchKnowsTheAngledEnds() throws Exception {
        List<Page> pages = SawDay.pages(
                new Lifting(25, 2), sheet.beds().stream().map(JobSheet.BedSheet::work).toList(), List.of(),
                OptionalDouble.empty(), BenchOptions.usual("Ferry lane nursery", false));
        Drawn angled = Drawn.of(pages.get(0));
        assertTrue(angled.says("Angled ends"), angled.texts()::toString);
        // 1200 rounded corners: walls within 0.1, so in whole millimetres every face reads 1200 and 1085
        assertTrue(angled.says("1085") && angled.says("30°"), angled.texts()::toString);
        assertTrue(String.join(" ", angled.texts()).contains("X-1A"), angled.texts()::toString);
    }

    /**
     * The ground falls 150 in 9000 to the rear, so rear walls are low. Clear run less 200 at each end, ceil(/ 900) + 1:
     * E-C 900 clear from its outer start 100: 300 to 800, 2; E-E 1400: 300 to 1300, 3. V-C and V-G 800: 300, 700; V-E between
     * inside corners 1000: 200, 800. X-D 1200 less 57.7 both ends: 257.7, 942.3. Y-C 2200: 300, 1200, 2100. Q-C 6800: 6400 / 900
     * gives 9, 800 apart.
     */
    @ParameterizedTest(name = "bed {0}")
    @CsvSource(delimiter = '|', value = {
        "E | 300, 800; 300, 800, 1300",
        "V | 300, 700; 200, 800; 300, 700",
        "X | 258, 942",
        "Y | 300, 1200, 2100"
    })
    void theNotches(String bed, String places) {
        // beside its wall, or at the foot where a short wall has no room
        List<String> told = Pattern.compile("notch ([0-9]+(?:, [0-9]+)*)").matcher(String.join("; ", CARDS.get(bed).texts())).results()
                .map(found -> found.group(1)).sorted().toList();
        assertEquals(Stream.of(places.split("; ")).sorted().toList(), told, CARDS.get(bed).texts()::toString);
    }

    /**
     * Grass, so a strip of 200 is levelled to the lowest corner and nothing is scribed. 1:60 under 2200 of elbow: 36.667 in front,
     * 36.667 - 1200 / 60 = 16.667 at the rear of wall B. Mean heights along E: A 2600 x 36.667 = 95333, B 1200 x 26.667 = 32000,
     * C 1000 x 16.667 = 16667, D 1000 x 8.333 = 8333, E 0, F 2200 x 18.333 = 40333: 192667 mm2 x 200 = 0.03853 m3. Y: A 2400 x 20,
     * B and D 1200 x 10: 72000 x 200 = 0.0144 m3.
     */
    @Test
    void theStripIsLevelledToTheLowestCorner() {
        assertEquals(0.038533, quantity("E", "dig"), 1e-5);
        assertEquals(0.0144, quantity("Y", "dig"), 1e-5);
        assertTrue(sheet.beds().stream().flatMap(bed -> bed.quantities().stream()).noneMatch(one -> one.key().toString().startsWith("scribe.")));
    }

    /**
     * Open on grass, lined on the walls: each piece is its inner face and 150 round a corner, 600 - 25 + 50 + 100 = 725 high. Inner
     * faces of E: 2400, 1000, 1000, 1000, 1400, 2000. Soil 600 - 50 - 50 = 500 deep over 2.6 x 1.2 + 1.6 x 1.0 - 0.1 x 9.2 = 3.80
     * m2: 1.90 settled, 2.2353 loose; 3.80 x (600 - 50 of mulch) = 2.09 have room on the day, so 0.1453 are kept back.
     */
    @Test
    void theElbowIsOpenAndLinedOnItsWalls() {
        var work = sheet.beds().get(0).work();
        assertEquals(List.of(2550.0, 1150.0, 1150.0, 1150.0, 1550.0, 2150.0),
                work.liner().stream().map(piece -> piece.widthMm()).toList());
        assertTrue(work.liner().stream().allMatch(piece -> piece.heightMm() == 725));
        assertEquals(500, quantity("E", "soil.depth"));
        assertEquals(3.8 * 0.5 / 0.85, quantity("E", "soil.loose"), 1e-9);
        assertEquals(3.8 * 0.5 / 0.85 - 3.8 * 0.55, quantity("E", "soil.top-up"), 1e-9);
        assertTrue(sheet.beds().stream().flatMap(bed -> bed.quantities().stream()).noneMatch(one -> one.key().toString().startsWith("base.")));
    }

    /**
     * Course ties every 600, ceil(/ 600) + 1 a timber from course 2 up. E: 2500 6, 1100 3, 1000 3, 1000 3, 1500 4, 2100 5 make 24 a
     * course, 48. X: 1200 3 each, 18 a course, 36. Y: 2300 5, 1100 3, twice: 16 a course, 32. Cross ties where more than 2400 is
     * clear: V wall A 2800, one at 1400 + 100; E wall A 2400, none.
     */
    @Test
    void theCoursesAreTiedAndTheLongWallsHeld() {
        assertEquals(48, quantity("E", "ties.course"));
        assertEquals(36, quantity("X", "ties.course"));
        assertEquals(32, quantity("Y", "ties.course"));
        assertTrue(says("E", "screws of 260 straight down"), CARDS.get("E").texts()::toString);
        // 0.4 x 600 is 240 up, in course 2, whose middle is 300 up
        assertTrue(says("V", "tie 1500 to E") && says("V", "300 over the ground, a batten upright at both ends"), CARDS.get("V").texts()::toString);
        assertEquals(0, quantity("E", "ties.cross"));
        assertEquals(List.of(1500.0), sheet.beds().get(1).work().frame().crossTies().stream().map(tie -> tie.atMm()).toList());
    }

    /** Both joints of both 7 m walls have a tie behind them. */
    @Test
    void theJointsOfTheSevenMetreWallsAreHeld() {
        var work = sheet.beds().get(4).work();
        for (Seam seam : work.frame().seams()) {
            int side = work.bed().wallLetters().indexOf(seam.wall());
            double x = side == 0 ? seam.atMm() : 7000 - seam.atMm();
            assertTrue(work.frame().crossTies().stream().anyMatch(tie -> Math.abs(tie.from().x() - x) <= 25),
                    seam + " of " + work.frame().crossTies());
        }
    }

    /**
     * The 7 m walls: pieces of 6900, from 0 in course 1 and from 100 in course 2, boards of 4800 giving 4780. Two parts of
     * 600 and more that two people lift (12 kg a metre, 50 kg: 4166), seams 400 from corners and 600 from each other.
     */
    @Test
    void theSevenMetreWalls() {
        var work = sheet.beds().stream()
                .map(JobSheet.BedSheet::work)
                .filter(one -> one.bed().id().equals("Q"))
                .findFirst()
                .orElseThrow();
        for (String wall : List.of("A", "C")) {
            double[] at = new double[2];
            for (int course = 1; course <= 2; course++) {
                String own = course + wall;
                var parts = work.pieces().stream().filter(piece -> piece.mark().startsWith("Q-" + own)).toList();
                assertEquals(2, parts.size());
                assertEquals(6900, parts.get(0).lengthMm() + parts.get(1).lengthMm(), 1e-9);
                assertTrue(parts.stream().allMatch(part -> part.lengthMm() >= 600 && part.lengthMm() <= 4166), parts.toString());
                at[course - 1] = (course == 1 ? 0 : 100) + parts.get(0).lengthMm();
                assertTrue(at[course - 1] >= 400 && at[course - 1] <= 6600);
                assertTrue(says("Q", wall + " at " + lapyard.geometry.Lengths.text(at[course - 1])), CARDS.get("Q").texts()::toString);
                parts.forEach(part -> assertEquals(
                        lapyard.geometry.Lengths.text(part.lengthMm()), cutTo(CARDS.get("Q"), part.mark(), part.wall() + part.part())));
            }
            assertTrue(Math.abs(at[0] - at[1]) >= 600, at[0] + " and " + at[1]);
        }
        assertEquals(4, quantity("Q", "seam.plates"));
    }

    /** Lifts over 25 kg: 2083 mm and more. E: A and F; V: A; Y: A and C; a row for courses 1 and 3, which lie alike, and one for 2. */
    @Test
    void theDotsStandOnWhatTwoPeopleLift() {
        assertEquals(2, dots("E", "30.0 ●"));
        assertEquals(2, dots("E", "25.2 ●"));
        assertEquals(2, dots("V", "34.8 ●"));
        assertEquals(4, dots("Y", "27.6 ●"));
        assertEquals(0, CARDS.get("X").texts().stream().filter(text -> text.endsWith(" ●")).count());
    }

    /** E: corners 2 to 6 are 2600 and 2200 apart: 3405.9; V: 1 to 3 3000 and 2000: 3605.6; X: across 2400; Y: 2683.3; in whole millimetres. */
    @ParameterizedTest(name = "bed {0}")
    @CsvSource({"E, 2 to 6 is 3406", "V, 1 to 3 is 3606", "X, 1 to 4 is 2400", "Y, 1 to 3 is 2683", "Q, 1 to 3 is 7071"})
    void theDiagonals(String bed, String words) {
        assertTrue(says(bed, words), CARDS.get(bed).texts()::toString);
    }

    @Test
    void nothingOnTheCardsCollidesAndNoPieceIsWrong() {
        CARDS.forEach((bed, card) -> assertEquals(List.of(), card.collisions(), "bed " + bed));
        assertTrue(sheet.snags().stream().noneMatch(one -> one.weight() != Finding.Weight.NOTE && one.where().startsWith("bed ")),
                sheet.snags()::toString);
    }

    /** The length in the row in which a mark stands. */
    private static String cutTo(Drawn card, String mark, String wall) {
        int at = card.texts().indexOf(mark);
        return at < 0 ? "not there" : card.texts().get(card.texts().subList(0, at).lastIndexOf(wall) + 1);
    }

    private static boolean says(String bed, String words) {
        String all = String.join(" ", CARDS.get(bed).texts());
        return all.contains(words);
    }

    private static long dots(String bed, String words) {
        return CARDS.get(bed).texts().stream().filter(words::equals).count();
    }

    private static double quantity(String bed, String key) {
        return sheet.beds().stream()
                .filter(one -> one.work().bed().id().equals(bed))
                .flatMap(one -> one.quantities().stream())
                .filter(one -> one.key().toString().equals(key))
                .findFirst()
                .orElseThrow()
                .value();
    }
}
