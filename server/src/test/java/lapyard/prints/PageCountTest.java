package lapyard.prints;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import lapyard.drawing.Page;
import lapyard.job.Job;
import lapyard.job.JobSheet;
import lapyard.json.GardenReader;
import lapyard.json.Reading;
import org.junit.jupiter.api.Test;

/** A set of sheets is carried outside: it has as many pages as are needed and no more. */
class PageCountTest {
    private static final String L_AND_TWO = "{\"name\":\"L and two\",\"beds\":[{\"id\":\"A\",\"walls\":[{\"length\":3000,\"turn\":\"left\"},"
            + "{\"length\":1500,\"turn\":\"left\"},{\"length\":1200,\"turn\":\"right\"},{\"length\":900,\"turn\":\"left\"},{\"length\":1800,\"turn\":\"left\"},"
            + "{\"length\":2400,\"turn\":\"left\"}],\"courses\":3},{\"id\":\"B\",\"width\":2400,\"depth\":1200,\"courses\":3,\"at\":[5000,0]},"
            + "{\"id\":\"C\",\"width\":1800,\"depth\":900,\"courses\":3,\"at\":[5000,3000]}]}";

    private static void atMost(int pages, String document) throws Exception {
        JobSheet sheet = Job.prepare(((Reading.Read) GardenReader.read(document)).garden());
        List<Page> set = Prints.pages(Prints.SET, sheet, PrintAsk.usual("", "2026-03-01"));
        assertTrue(set.size() <= pages, () -> set.size() + ": " + set.stream().map(Page::title).collect(Collectors.joining("; ")));
        String all = set.stream().map(Page::title).collect(Collectors.joining("; "));
        for (String kind : List.of("Contents", "Saw Day", "Course card", "Base and liner", "Weekend", "Slip", "Deliver")) {
            assertTrue(all.contains(kind), kind + " is not in " + all);
        }
    }

    @Test
    void oneBedHasTenPages() throws Exception {
        atMost(10, Files.readString(Path.of("..", "samples", "three-entries.json")));
    }

    @Test
    void anLAndTwoRectanglesHaveTwentySix() throws Exception {
        atMost(26, L_AND_TWO);
    }

    @Test
    void theVillageHallHasFortyFive() throws Exception {
        atMost(45, Files.readString(Path.of("..", "samples", "village-hall.json")));
    }
}
