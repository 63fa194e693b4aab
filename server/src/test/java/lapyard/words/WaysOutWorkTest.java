package lapyard.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import lapyard.job.Job;
import lapyard.json.GardenReader;
import lapyard.json.Reading;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.FindingList;
import lapyard.plan.Place.What;
import lapyard.plan.WayKind;
import lapyard.plan.WayOut;
import org.junit.jupiter.api.Test;

/** A way out is taken as it is told, and what it was offered for is gone. */
class WaysOutWorkTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private interface Change {
        void on(ObjectNode bed, List<Fact> values);
    }

    /** Ways that are a change of the bed which the finding names. */
    private static final Map<WayKind, Change> CHANGES = new EnumMap<>(Map.ofEntries(
            Map.entry(WayKind.MOVE_LEFT, (Change) (bed, values) -> moved(bed, -mm(values, 0), 0)),
            Map.entry(WayKind.MOVE_RIGHT, (Change) (bed, values) -> moved(bed, mm(values, 0), 0)),
            Map.entry(WayKind.MOVE_AWAY, (Change) (bed, values) -> moved(bed, 0, mm(values, 0))),
            Map.entry(WayKind.MOVE_TOWARDS, (Change) (bed, values) -> moved(bed, 0, -mm(values, 0))),
            Map.entry(WayKind.CUT_WIDTH, (Change) (bed, values) -> bed.put("width", down(mm(values, 0)))),
            Map.entry(WayKind.CUT_DEPTH, (Change) (bed, values) -> bed.put("depth", down(mm(values, 0)))),
            Map.entry(WayKind.MAKE_NARROWER, (Change) (bed, values) ->
                    bed.put(bed.get("width").asDouble() < bed.get("depth").asDouble() ? "width" : "depth", mm(values, 0))),
            Map.entry(WayKind.MAKE_AT_LEAST, (Change) (bed, values) -> bed.put("depth", mm(values, 0))),
            Map.entry(WayKind.ADD_COURSES, (Change) (bed, values) -> bed.put("courses", bed.get("courses").asInt() + count(values))),
            Map.entry(WayKind.TAKE_OFF_COURSES, (Change) (bed, values) -> bed.put("courses", bed.get("courses").asInt() - count(values))),
            Map.entry(WayKind.OPEN_BASE, (Change) (bed, values) -> bed.put("base", "open")),
            Map.entry(WayKind.LESS_MULCH_BY, (Change) (bed, values) -> {
                double mulch = bed.path("fill").path("mulch").asDouble(50);
                bed.withObject("/fill").put("mulch", mulch - mm(values, 0));
            }),
            Map.entry(WayKind.BEARERS_APART, (Change) (bed, values) -> bed.putObject("base").put("kind", "slatted").put("bearerEvery", mm(values, 0))),
            Map.entry(WayKind.SCREWS_AT_MOST, (Change) (bed, values) -> bed.withObject("/screws").put("length", mm(values, 0))),
            Map.entry(WayKind.SCREWS_A_JOINT, (Change) (bed, values) -> bed.withObject("/screws").put("perJoint", count(values))),
            Map.entry(WayKind.BRACKETS, (Change) (bed, values) -> bed.withObject("/ties").put("brackets", true)),
            Map.entry(WayKind.TIES_AT, (Change) (bed, values) -> {
                ArrayNode supports = bed.withObject("/ties").withArray("supports");
                ((Fact.Lengths) values.get(2)).mm().forEach(at ->
                        supports.addObject().put("wall", ((Fact.Name) values.get(1)).name()).put("at", Math.round(at)));
            }),
            Map.entry(WayKind.TIES_AT_JOINTS, (Change) (bed, values) ->
                    bed.withObject("/ties").withArray("supports").addObject().put("wall", ((Fact.Name) values.get(0)).name())),
            Map.entry(WayKind.NOTCHES_AT_MOST, (Change) (bed, values) -> bed.putObject("notches").put("depth", mm(values, 0))),
            Map.entry(WayKind.ALLOW_JOINT, (Change) (bed, values) -> bed.put("seams", true))));

    private static double mm(List<Fact> values, int at) {
        return Math.ceil(((Fact.Length) values.get(at)).mm() * 10 - 1e-6) / 10;
    }

    private static double down(double mm) {
        return Math.floor(mm * 10 + 1e-6) / 10;
    }

    private static int count(List<Fact> values) {
        return (int) ((Fact.Count) values.get(0)).count();
    }

    private static void moved(ObjectNode bed, double x, double y) {
        ArrayNode at = (ArrayNode) bed.get("at");
        double left = at.get(0).asDouble() + x;
        double front = at.get(1).asDouble() + y;
        bed.putArray("at").add(Math.round(left * 10) / 10.0).add(Math.round(front * 10) / 10.0);
    }

    private static List<Finding> findings(ObjectNode garden) throws Exception {
        Reading reading = GardenReader.read(garden.toString());
        return reading instanceof Reading.Read read ? FindingList.singles(Job.prepare(read.garden()).snags()) : reading.findings();
    }

    private static boolean same(Finding one, Finding other) {
        return one.kind() == other.kind() && one.place().equals(other.place());
    }

    /** Takes each way that is known here for each finding of a kind once, up to {@code most} of them. */
    private static void tryWays(ObjectNode garden, int most, Set<WayKind> tried) throws Exception {
        Set<String> seen = new TreeSet<>();
        List<String> wrong = new ArrayList<>();
        for (Finding finding : findings(garden)) {
            for (WayOut way : finding.ways()) {
                if (finding.place().only(What.BED).isEmpty() || !CHANGES.containsKey(way.kind()) || seen.size() >= most
                        || !seen.add(finding.kind() + " " + way.kind())) {
                    continue;
                }
                ObjectNode changed = garden.deepCopy();
                for (var bed : changed.get("beds")) {
                    if (bed.get("id").asText().equals(finding.place().only(What.BED).get())) {
                        CHANGES.get(way.kind()).on((ObjectNode) bed, way.values());
                    }
                }
                List<Finding> after = findings(changed);
                tried.add(way.kind());
                String told = Wording.METRIC.paragraph(finding) + " | " + way.kind();
                if (after.stream().anyMatch(one -> one.weight() == Finding.Weight.STOP && finding.weight() != Finding.Weight.STOP)) {
                    wrong.add(told + " is refused: " + after.stream().map(Wording.METRIC::text).toList());
                } else if (after.stream().anyMatch(one -> same(one, finding))) {
                    wrong.add(told + " mends nothing: " + garden);
                }
            }
        }
        assertEquals(List.of(), wrong);
    }

    private static ObjectNode generated(long seed) {
        Random random = new Random(seed);
        ObjectNode garden = MAPPER.createObjectNode();
        ObjectNode ground = garden.putObject("ground");
        for (int[] corner : new int[][] {{0, 0}, {11000, 0}, {11000, 8000}, {0, 8000}}) {
            ground.withArray("outline").addArray().add(corner[0]).add(corner[1]);
        }
        ObjectNode surface = ground.putArray("surfaces").addObject().put("kind", List.of("grass", "slab", "soil").get(random.nextInt(3)));
        for (int[] corner : new int[][] {{0, 0}, {11000, 0}, {11000, 8000}, {0, 8000}}) {
            surface.withArray("outline").addArray().add(corner[0]).add(corner[1]);
        }
        ground.putArray("keepClear").addObject().put("kind", "cover").put("clearance", 400).putArray("at").add(2000 + random.nextInt(6000)).add(1500 + random.nextInt(4000));
        ArrayNode beds = garden.putArray("beds");
        for (int i = 0; i < 3; i++) {
            ObjectNode bed = beds.addObject().put("id", String.valueOf((char) ('K' + i))).put("width", 1500 + 100 * random.nextInt(45))
                    .put("depth", 900 + 100 * random.nextInt(8)).put("courses", 1 + random.nextInt(3));
            bed.putArray("at").add(-300 + 100 * random.nextInt(70)).add(100 + 2500 * i + random.nextInt(300));
            if (random.nextInt(3) == 0) bed.putObject("ties").put("crossTies", false).put("courseTies", random.nextBoolean());
            if (random.nextInt(3) == 0) bed.putObject("base").put("kind", "slatted").put("bearerEvery", 700);
            if (random.nextInt(3) == 0) bed.putObject("screws").put("length", 160 + 20 * random.nextInt(4));
            if (random.nextInt(4) == 0) bed.putObject("fill").put("mulch", 120).put("freeboard", 30);
        }
        return garden;
    }

    @Test
    void whatIsOfferedMendsWhatItIsOfferedFor() throws Exception {
        Set<WayKind> tried = EnumSet.noneOf(WayKind.class);
        for (long seed = 1; seed <= 12; seed++) {
            tryWays(generated(seed), 9, tried);
        }
        assertTrue(tried.size() >= 10, () -> "only " + tried + " were offered");
    }

    @Test
    void theWayOutOfANarrowBedAndOfAForbiddenJointWorks() throws Exception {
        Set<WayKind> tried = EnumSet.noneOf(WayKind.class);
        tryWays((ObjectNode) MAPPER.readTree("{\"beds\":[{\"id\":\"N\",\"width\":2400,\"depth\":250,\"courses\":2,\"at\":[0,0]}]}"), 3, tried);
        tryWays((ObjectNode) MAPPER.readTree("{\"beds\":[{\"id\":\"L\",\"width\":7200,\"depth\":1200,\"courses\":2,\"seams\":false,\"at\":[0,0]}]}"), 3, tried);
        assertTrue(tried.containsAll(EnumSet.of(WayKind.MAKE_AT_LEAST, WayKind.ALLOW_JOINT)), tried::toString);
        assertTrue(FindingKind.BED_NARROW.ways.contains(WayKind.MAKE_AT_LEAST));
    }
}
