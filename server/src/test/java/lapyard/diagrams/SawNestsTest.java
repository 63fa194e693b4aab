package lapyard.diagrams;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import lapyard.drawing.Page;
import lapyard.drawing.Paper;
import lapyard.geometry.Lengths;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import lapyard.plan.Lifting;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The bench sheet of pieces that are sawn head to tail. */
class SawNestsTest {
    private static List<Page> pages(JobSheet sheet, BenchOptions options) {
        List<SawDay.Work> works = sheet.cutting().stream()
                .map(cutting -> new SawDay.Work(
                        "", "Timber " + cutting.section(), "", Optional.empty(), 4, 300, cutting.saw().boards(), cutting.saw().batches(),
                        cutting.saw().ledger(), List.of(), cutting.saw().nests()))
                .toList();
        return SawDay.pages(
                new Lifting(25, 2), sheet.beds().stream().map(JobSheet.BedSheet::work).toList(), works,
                OptionalDouble.empty(), options);
    }

    /**
     * The hexagon of the nursery, worked by hand: two of 1200 with 30 degrees are 2 x 1142.27 + 57.74 + 4.62 = 2346.9 long. On the
     * face the first lies from 0 to 1200, on the back from 57.7 to 1142.3; the second ends at 2346.9 on the back, 57.7 before it
     * on the face, at 2289.15.
     */
    @Test
    void theNurserysHexagonIsPartedInTwos() throws Exception {
        JobSheet sheet = Gardens.sample("ferry-lane");
        List<String> texts = new ArrayList<>();
        for (Page page : pages(sheet, BenchOptions.usual("Yard", false))) {
            Drawn drawn = Drawn.of(page);
            assertEquals(List.of(), drawn.collisions(), page.title());
            assertTrue(!page.title().startsWith("Angled ends"), "every angled piece is in a nest");
            if (page.title().startsWith("Nested pieces")) texts.addAll(drawn.texts());
        }
        // its corners are given to 0.1 mm, so its nests differ by a tenth here and there: one drawing for all nine
        assertTrue(texts.contains("× 9"), texts::toString);
        assertTrue(texts.containsAll(List.of("2347", "58", "1142", "0", "1200", "2289", "saw at 30°")), texts::toString);
        // nine nests of two, three cuts each, all at one set: 27 x 4 + 3
        assertTrue(texts.contains("27 slanted cuts × 4 min + 1 setting × 3 min = 111 min, beside the square cuts of the batches."), texts::toString);
        for (int course = 1; course <= 3; course++) {
            for (char wall = 'A'; wall <= 'F'; wall++) {
                String mark = "X-" + course + wall + " ";
                assertEquals(1, texts.stream().filter(text -> text.startsWith(mark)).count(), mark + " in " + texts);
            }
        }
    }

    /** A with C, the wall of 2100 and the one of 900 beside a cut corner, is as long as C with A and parted elsewhere: two bars. */
    @Test
    void nestsOfOneLengthThatArePartedElsewhereShareNoBar() throws Exception {
        String bed = "{\"id\":\"K\",\"courses\":3,\"outline\":[[0,0],[2100,0],[2400,300],[2400,1200],[0,1200]]}";
        String tally = ",\"tally\":{\"boards\":[{\"board\":\"#1\",\"stock\":\"4800\",\"cut\":[\"K-1A+K-1C\"]},"
                + "{\"board\":\"#2\",\"stock\":\"4800\",\"cut\":[\"K-3C+K-3A\"]}]}";
        JobSheet sheet = Gardens.sheet(Gardens.faced(2, tally, "4800=36.00", List.of(bed)));
        List<String> lengths = sheet.cutting().get(0).saw().nests().stream().map(nest -> Lengths.text(nest.lengthMm())).toList();
        assertTrue(lengths.size() >= 2, lengths::toString);
        assertEquals(lengths.get(0), lengths.get(1));
        int bars = 0;
        for (Page page : pages(sheet, BenchOptions.usual("Yard", false))) {
            if (page.title().contains("boards")) bars += Collections.frequency(Drawn.of(page).texts(), lengths.get(0));
        }
        assertEquals(2, bars);
    }

    /** Many sizes, long codes, either unit and paper: no text on another. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void nothingRunsIntoAnythingElse(long seed) throws Exception {
        Random random = new Random(seed);
        List<String> beds = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            int sides = new int[] {5, 6, 8}[random.nextInt(3)];
            // of 1197 to 1216 a board of 4800 gives three, or four in a nest; of 493 to 502 one of 2000
            int side = seed % 2 == 0 ? 1197 + random.nextInt(20) : 493 + random.nextInt(10);
            String code = (seed % 2 == 0 ? "B" : "LongBed" + "x".repeat(8)) + i;
            beds.add(Gardens.sided(code, sides, side, 6000 * i, ",\"courses\":3"));
        }
        String garden = Gardens.faced(2, "", seed % 2 == 0 ? "4800=36.00" : "2000=15.00", beds);
        JobSheet sheet = Gardens.sheet(garden);
        int nested = 0;
        BenchOptions options = BenchOptions.usual("Yard", seed > 3).on(seed % 3 == 0 ? Paper.LETTER : Paper.A4);
        for (Page page : pages(sheet, options)) {
            assertEquals(List.of(), Drawn.of(page).collisions(), page.title());
            nested += page.title().startsWith("Nested pieces") ? 1 : 0;
        }
        assertTrue(nested > 0, () -> beds + " " + sheet.cutting().get(0).result());
    }
}
