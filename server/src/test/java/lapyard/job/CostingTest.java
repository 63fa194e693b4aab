package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import lapyard.geometry.Stretch;
import lapyard.plan.Bed;
import lapyard.plan.Garden;
import lapyard.working.Progress;
import lapyard.working.SecondThread;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The total that a search over sizes asks for is the one on the job sheet. */
class CostingTest {
    @ParameterizedTest
    @ValueSource(strings = {"village-hall", "chapel-corner", "ferry-lane", "lock-keepers-yard", "school-courtyard", "terrace-feet", "three-entries"})
    void theTotalAloneIsTheJobSheetsTotal(String sample) throws IOException {
        Garden garden = Gardens.garden(Gardens.text(sample));
        assertEquals(Job.prepare(garden).slip().total(), Costing.of(garden, new SearchMemory(1 << 20)).total(), sample);
        Random random = new Random(sample.hashCode());
        for (int i = 0; i < 3; i++) {
            List<Bed> beds = new ArrayList<>();
            for (Bed bed : garden.beds()) {
                double by = -5 * random.nextInt(20);
                beds.add(bed.outline().upright() ? bed.withOutline(Stretch.of(bed.outline()).get(random.nextInt(2)).applied(bed.outline(), by)) : bed);
            }
            Garden changed = garden.withBeds(beds);
            assertEquals(Job.prepare(changed).slip().total(), Costing.of(changed, new SearchMemory(1 << 20)).total(), sample);
        }
    }

    /** What each bed takes alone is found by a second thread; several job sheets at once share what was found before. */
    @Test
    void threadsThatShareWhatWasFoundChangeNothing() {
        Random random = new Random(19);
        List<Garden> gardens = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            StringBuilder beds = new StringBuilder();
            for (int bed = 0; bed < 8; bed++) {
                beds.append(bed == 0 ? "" : ",").append("{\"width\":%d,\"depth\":%d,\"courses\":2,\"at\":[%d,0]}".formatted(
                        2400 + 10 * random.nextInt(300), 900 + 10 * random.nextInt(60), 7000 * bed));
            }
            gardens.add(Gardens.garden("{\"rack\":[{\"section\":\"100x200\",\"length\":2750}],\"beds\":[" + beds + "]}"));
        }
        List<String> alone = gardens.stream().map(CostingTest::told).toList();
        for (int round = 0; round < 4; round++) {
            SearchMemory shared = new SearchMemory(round % 2 == 0 ? 1 << 14 : 4 << 20);
            List<SecondThread<String>> beside = gardens.stream().map(garden -> new SecondThread<>(() -> told(garden, shared))).toList();
            assertEquals(alone, beside.stream().map(SecondThread::result).toList());
        }
    }

    private static String told(Garden garden) {
        return told(garden, new SearchMemory(4 << 20));
    }

    /** What is bought, cut and found; the searches' seconds differ. */
    private static String told(Garden garden, SearchMemory memory) {
        JobSheet sheet = Job.prepare(garden, what -> Progress.UNHEARD, memory);
        return sheet.slip() + " " + sheet.works() + " " + sheet.weekends() + " " + sheet.snags() + " "
                + sheet.cutting().stream().map(one -> one.saw().boards()).toList() + sheet.rolls().stream().map(one -> one.result().rolls()).toList();
    }
}
