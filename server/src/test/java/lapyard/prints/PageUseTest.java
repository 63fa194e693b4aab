package lapyard.prints;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import lapyard.drawing.Page;
import lapyard.drawing.Shape;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Paper that is carried outside is used: a page in use for less than a quarter of the height of its frame is the last of its kind. */
class PageUseTest {
    private static final double LEAST = 0.25;

    @ParameterizedTest
    @ValueSource(strings = {"three-entries", "village-hall", "terrace-feet", "ferry-lane", "chapel-corner", "lock-keepers-yard", "school-courtyard", "allotment-field"})
    void samplesFillTheirPages(String sample) throws IOException {
        assertEquals(List.of(), nearlyEmpty(Gardens.sample(sample)));
    }

    @ParameterizedTest(name = "{0} beds, seed {1}")
    @CsvSource({"30, 1", "30, 2", "60, 4", "60, 5"})
    void gardensOfManyBedsFillTheirPages(int beds, long seed) {
        assertEquals(List.of(), nearlyEmpty(Gardens.sheet(made(beds, seed))));
    }

    /** The drawing of a roll gives way as type and gaps do, where that saves a sheet for a few lines of its tables. */
    @Test
    void aRollStandsOnOneSheetWithItsTables() {
        JobSheet sheet = Gardens.sheet("""
                {"catalogue":{"sections":[{"id":"100x200","thickness":100,"height":200,"stock":[{"length":4800,"price":39}]},
                                          {"id":"75x200","thickness":75,"height":200,"stock":[{"length":3600,"price":21}]}]},
                 "beds":[{"width":3000,"depth":1150,"courses":2},{"width":6100,"depth":1000,"courses":2,"at":[9000,0],"section":"75x200","base":"slatted"},
                         {"width":7200,"depth":950,"courses":2,"at":[18000,0],"base":"slatted"},{"width":2400,"depth":1200,"courses":3,"at":[27000,0]}]}""");
        assertEquals(List.of("Liner"), kinds(sheet, "rolls"));
    }

    /** What each sheet of a print is headed. */
    private static List<String> kinds(JobSheet sheet, String name) {
        Print print = Prints.ALL.stream().filter(one -> one.name().equals(name)).findFirst().orElseThrow();
        return print.pages().apply(sheet, PrintAsk.usual("", "2026-03-01")).stream().map(page -> page.title().split(",")[0]).toList();
    }

    /** With type of the usual size two of its weekends go on to a second sheet; smaller type saves both, so nothing is shared between sheets. */
    @Test
    void eachWeekendHasOneSheetWhereSmallerTypeSavesTheSecond() throws IOException {
        JobSheet sheet = Gardens.sample("chapel-corner");
        assertEquals(List.of("Weekend 1", "Weekend 2", "Weekend 3", "Weekend 4", "Weekend 5"), kinds(sheet, "weekends"));
    }

    /** Beds of a dozen types in rows, in stages of some six, a few of slanted outline, on grass and slab. */
    private static String made(int count, long seed) {
        Random random = new Random(seed);
        List<String> types = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            String size = random.nextInt(5) == 0
                    ? "\"outline\":[[0,0],[2400,0],[2400,1200],[1200,1800],[0,1200]]"
                    : "\"width\":" + (1200 + 300 * random.nextInt(9)) + ",\"depth\":" + (900 + 150 * random.nextInt(5));
            types.add(String.format(Locale.ROOT, "{\"id\":\"T%d\",%s,\"courses\":%d}", i, size, 1 + random.nextInt(4)));
        }
        int across = 6;
        int deep = (count + across - 1) / across;
        String beds = IntStream.range(0, count).mapToObj(i -> String.format(Locale.ROOT, "{\"id\":\"B%d\",\"type\":\"T%d\",\"at\":[%d,%d],\"stage\":%d}",
                i + 1, random.nextInt(12), 1000 + 5200 * (i % across), 1000 + 3200 * (i / across), 1 + i / 6)).collect(Collectors.joining(","));
        String yard = "[[0,0],[" + (2000 + 5200 * across) + ",0],[" + (2000 + 5200 * across) + "," + (2000 + 3200 * deep) + "],[0," + (2000 + 3200 * deep) + "]]";
        return "{\"name\":\"Made " + seed + "\",\"ground\":{\"outline\":" + yard + ",\"surfaces\":[{\"kind\":\"grass\",\"outline\":" + yard + "}]},\"types\":["
                + String.join(",", types) + "],\"beds\":[" + beds + "]}";
    }

    /** Pages of any kind that are nearly empty and not the last, with what part of them is used. */
    static List<String> nearlyEmpty(JobSheet sheet) {
        List<String> found = new ArrayList<>();
        for (Print print : Prints.ALL) {
            List<Page> pages;
            try {
                pages = print.pages().apply(sheet, PrintAsk.usual("", "2026-03-01"));
            } catch (CannotPrint left) {
                continue;
            }
            for (int i = 0; i + 1 < pages.size(); i++) {
                Page page = pages.get(i);
                // an order is handed over by itself, so what comes behind it begins on a fresh sheet
                if (print.name().equals("slip") && !page.subjects().equals(pages.get(i + 1).subjects())) continue;
                // batches are taken to the stop, boards to the saw
                if (page.title().contains("batches") && !pages.get(i + 1).title().contains("batches")) continue;
                double used = (lowest(page.shapes(), page.heightMm() - 20) - 28) / (page.heightMm() - 45);
                if (used <= LEAST) found.add(String.format(Locale.ROOT, "%s, %s: %.2f", print.name(), page.title(), used));
            }
        }
        return found;
    }

    /** Of words, above the foot. */
    private static double lowest(List<Shape> shapes, double foot) {
        double lowest = 0;
        for (Shape shape : shapes) {
            if (shape instanceof Shape.Text text && text.at().y() < foot) lowest = Math.max(lowest, text.at().y());
            if (shape instanceof Shape.Group group) lowest = Math.max(lowest, lowest(group.shapes(), foot));
        }
        return lowest;
    }
}
