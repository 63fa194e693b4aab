package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import lapyard.geometry.Spans;
import lapyard.plan.Bed;
import lapyard.plan.Garden;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The total that a search over sizes asks for is the one on the job sheet. */
class CostingTest {
    @ParameterizedTest
    @ValueSource(strings = {"village-hall", "chapel-corner", "ferry-lane", "lock-keepers-yard", "school-courtyard", "terrace-feet", "three-entries"})
    void theTotalAloneIsTheJobSheetsTotal(String sample) throws IOException {
        Garden garden = Gardens.garden(Files.readString(Path.of("../samples/" + sample + ".json")));
        assertEquals(Job.prepare(garden).slip().total(), Costing.of(garden, new SearchMemory(1 << 20)).total(), sample);
        Random random = new Random(sample.hashCode());
        for (int i = 0; i < 3; i++) {
            List<Bed> beds = new ArrayList<>();
            for (Bed bed : garden.beds()) {
                double by = -5 * random.nextInt(20);
                beds.add(bed.outline().upright() ? bed.withOutline(Spans.stretched(bed.outline(), random.nextBoolean(), 0, by)) : bed);
            }
            Garden changed = garden.withBeds(beds);
            assertEquals(Job.prepare(changed).slip().total(), Costing.of(changed, new SearchMemory(1 << 20)).total(), sample);
        }
    }
}
