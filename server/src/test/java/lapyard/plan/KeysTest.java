package lapyard.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.job.Gardens;
import lapyard.job.Job;

import org.junit.jupiter.api.Test;

/** What stands for itself in a map: equal ones hash alike (contract of java.lang.Object), others mostly apart. */
class KeysTest {
    private static final String NAMES = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";

    private static Garden garden(int widthMm) {
        String beds = NAMES.chars().mapToObj(id -> "{\"id\":\"%c\",\"width\":%d,\"depth\":1200,\"courses\":2,\"at\":[%d,0]}".formatted(id, widthMm, (id - 'A') * 6000))
                .collect(Collectors.joining(","));
        return Gardens.garden("{\"beds\":[" + beds + "]}");
    }

    @Test
    void bedsAreKeysByTheirCodeAndOutline() {
        Set<Integer> hashes = new HashSet<>();
        for (int widthMm = 1500; widthMm < 2500; widthMm += 10) {
            List<Bed> beds = garden(widthMm).beds();
            assertEquals(beds, garden(widthMm).beds());
            assertEquals(beds.hashCode(), garden(widthMm).beds().hashCode());
            beds.forEach(bed -> hashes.add(bed.hashCode()));
        }
        assertEquals(26 * 100, hashes.size(), 26.0, "one in a hundred may fall on another");
        assertNotEquals(garden(1500).beds().get(0), garden(1510).beds().get(0));
    }

    @Test
    void findingsAreKeysByTheirKindAndPlace() {
        List<Finding> once = Job.prepare(garden(5200)).snags();
        List<Finding> again = Job.prepare(garden(5200)).snags();
        assertEquals(once, again);
        assertEquals(once.hashCode(), again.hashCode());
        Finding first = FindingList.singles(once).get(0);
        assertNotEquals(first, first.with("other", Fact.count(1, "beds")), "figures tell findings apart");
    }

    /** As a record's own: zeros of either sign are two numbers, as for Double. */
    @Test
    void pointsAndOutlinesAreEqualByEachNumber() {
        assertEquals(new Point(1, 2), new Point(1, 2));
        assertEquals(new Point(1, 2).hashCode(), new Point(1, 2).hashCode());
        assertNotEquals(new Point(0.0, 1), new Point(-0.0, 1));
        assertNotEquals(new Point(1, 2), new Point(2, 1));
        assertNotEquals(new Point(1, 2), null);
        Outline outline = Outline.rectangle(2400, 1200);
        assertEquals(outline, Outline.rectangle(2400, 1200));
        assertEquals(outline.hashCode(), Outline.rectangle(2400, 1200).hashCode());
        assertNotEquals(outline, Outline.rectangle(2400, 1201));
        assertNotEquals(outline, outline.corners());
    }
}
