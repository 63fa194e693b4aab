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

/**
 * A way out is taken as it is told, and what it was offered for is gone. Not tried are the ways that are no change of the document
 * (a helper, a sack truck, an engineer, a tape taken again, a later start once the day to order is past) and those that name no
 * figure or thing to put in its place (another section, thicker slats, a quicker supplier).
 */
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
            Map.entry(WayKind.ALLOW_JOINT, (Change) (bed, values) -> bed.put("seams", true)),
            Map.entry(WayKind.NAME_LOW_WALLS, (Change) (bed, values) -> bed.putArray("low").add("A")),
            Map.entry(WayKind.LESS_SOIL, (Change) (bed, values) -> bed.withObject("/fill").put("freeboard", 50 + 200 * bed.get("courses").asInt() - 600)),
            Map.entry(WayKind.DRAIN_GAP, (Change) (bed, values) -> bed.withObject("/base").put("drainGap", mm(values, 0))),
            Map.entry(WayKind.SHORTEN_WALL, (Change) (bed, values) -> longer(bed, values, -mm(values, 1))),
            Map.entry(WayKind.SHORTEN_WALL_NO_JOINT, (Change) (bed, values) -> longer(bed, values, -mm(values, 1))),
            Map.entry(WayKind.LENGTHEN_WALL, (Change) (bed, values) -> longer(bed, values, mm(values, 1))),
            Map.entry(WayKind.CROSS_TIES, (Change) (bed, values) ->
                    bed.withObject("/ties").put("crossTies", true).put("crossOver", 1800).put("crossEvery", 1800).put("crossFrom", 200)),
            Map.entry(WayKind.TIES_APART, (Change) (bed, values) ->
                    bed.withObject("/ties").put("crossTies", true).put("crossOver", down(mm(values, 0))).put("crossEvery", down(mm(values, 0))).put("crossFrom", 0)),
            Map.entry(WayKind.POSTS_AT_JOINTS, (Change) (bed, values) ->
                    bed.withObject("/ties").withArray("supports").addObject().put("wall", ((Fact.Name) values.get(0)).name()).put("by", "post")),
            Map.entry(WayKind.BEARERS_CLOSER, (Change) (bed, values) -> bed.withObject("/base").put("kind", "slatted").put("bearerEvery", 250))));

    private interface GardenChange {
        void on(ObjectNode garden, Finding finding, List<Fact> values);
    }

    /** Ways that are a change of the garden. */
    private static final Map<WayKind, GardenChange> GARDEN_CHANGES = new EnumMap<>(Map.ofEntries(
            Map.entry(WayKind.LATER_WEEKEND, (GardenChange) (garden, finding, values) -> {
                ObjectNode bed = bed(garden, ((Fact.Name) values.get(0)).name());
                bed.put("stage", bed.path("stage").asInt(1) + 1);
            }),
            Map.entry(WayKind.MORE_PEOPLE, (GardenChange) (garden, finding, values) -> {
                ArrayNode people = garden.withObject("/crew").withArray("people");
                for (String name : people.isEmpty() ? List.of("Ann", "Bo", "Cy") : List.of("Dee")) people.addObject().put("name", name);
            }),
            Map.entry(WayKind.LONGER_DAYS, (GardenChange) (garden, finding, values) -> garden.withObject("/crew").put("hours", 8)),
            Map.entry(WayKind.NAME_BASE, (GardenChange) (garden, finding, values) -> finding.place().ids(What.BED).forEach(id -> bed(garden, id).put("base", "open"))),
            Map.entry(WayKind.DAY_DRY, (GardenChange) (garden, finding, values) -> garden.withObject("/crew").remove("wet")),
            Map.entry(WayKind.MOVE_APART, (GardenChange) (garden, finding, values) -> {
                Fact.Spot by = (Fact.Spot) values.get(2);
                moved(bed(garden, ((Fact.Name) values.get(0)).name()), out(by.xMm()), out(by.yMm()));
            }),
            Map.entry(WayKind.WIDEN_TO, (GardenChange) (garden, finding, values) -> path(garden, finding).put("width", mm(values, 0))),
            Map.entry(WayKind.NARROW_TO, (GardenChange) (garden, finding, values) -> path(garden, finding).put("width", down(mm(values, 0)))),
            Map.entry(WayKind.GIVE_LAYERS, (GardenChange) (garden, finding, values) ->
                    path(garden, finding).putArray("layers").addObject().put("material", "bark").put("depth", 50)),
            Map.entry(WayKind.TAKE_LEVELS, (GardenChange) (garden, finding, values) -> {
                ArrayNode levels = garden.withObject("/ground").putArray("levels");
                for (int[] at : new int[][] {{0, 0, 400}, {9000, 0, 400}, {0, 7000, 460}}) levels.addObject().put("drop", at[2]).putArray("at").add(at[0]).add(at[1]);
            }),
            Map.entry(WayKind.DRAW_SURFACE, (GardenChange) (garden, finding, values) -> {
                ArrayNode outline = garden.withObject("/ground").putArray("surfaces").addObject().put("kind", "grass").putArray("outline");
                for (int[] at : new int[][] {{0, 0}, {11000, 0}, {11000, 8000}, {0, 8000}}) outline.addArray().add(at[0]).add(at[1]);
            }),
            Map.entry(WayKind.LONGER_BOARD, (GardenChange) (garden, finding, values) ->
                    garden.withObject("/catalogue").putArray("sections").addObject().put("id", "100x200").put("thickness", 100).put("height", 200).put("density", 600)
                            .putArray("stock").addObject().put("length", mm(values, 0)).put("price", 60)),
            Map.entry(WayKind.TIMBER_STAMPED, (GardenChange) (garden, finding, values) ->
                    garden.withObject("/catalogue").putArray("sections").addObject().put("id", "100x200").put("thickness", 100).put("height", 200).put("density", 600)
                            .put("strengthClass", ((Fact.Name) values.get(0)).name()).putArray("stock").addObject().put("length", 4800).put("price", 60))));

    /** What these promise is less of it, not that it goes. */
    private static final Set<WayKind> LESSEN = EnumSet.of(WayKind.LATER_WEEKEND, WayKind.MORE_PEOPLE, WayKind.LONGER_DAYS);

    private static ObjectNode bed(ObjectNode garden, String id) {
        for (var bed : garden.get("beds")) if (bed.get("id").asText().equals(id)) return (ObjectNode) bed;
        throw new AssertionError("no bed " + id);
    }

    private static ObjectNode path(ObjectNode garden, Finding finding) {
        for (var path : garden.get("paths")) if (finding.place().ids(What.PATH).contains(path.get("id").asText())) return (ObjectNode) path;
        throw new AssertionError("no path at " + finding.where());
    }

    /** A wall of a rectangle and the one opposite. */
    private static void longer(ObjectNode bed, List<Fact> values, double mm) {
        String side = List.of("A", "C").contains(((Fact.Name) values.get(0)).name()) ? "width" : "depth";
        bed.put(side, down(bed.get(side).asDouble() + mm));
    }

    private static double out(double mm) {
        return Math.signum(mm) * Math.ceil(Math.abs(mm) * 10 - 1e-6) / 10;
    }

    private static double mm(List<Fact> values, int at) {
        Fact value = values.get(at);
        double mm = value instanceof Fact.Screw screw ? screw.mm() : ((Fact.Length) value).mm();
        return Math.ceil(mm * 10 - 1e-6) / 10;
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

    private static double amount(Finding finding) {
        return finding.amount().map(amount -> Math.abs(amount.value())).orElse(0.0);
    }

    /** Takes each way that is known here for each finding of a kind once, up to {@code most} of them. */
    private static List<String> tryWays(ObjectNode garden, int most, Set<WayKind> tried) throws Exception {
        Set<String> seen = new TreeSet<>();
        List<String> wrong = new ArrayList<>();
        for (Finding finding : findings(garden)) {
            for (WayOut way : finding.ways()) {
                boolean whole = GARDEN_CHANGES.containsKey(way.kind());
                boolean ofBed = finding.place().only(What.BED).isPresent() && CHANGES.containsKey(way.kind());
                if (!whole && !ofBed || seen.size() >= most || !seen.add(finding.kind() + " " + way.kind())) continue;
                ObjectNode changed = garden.deepCopy();
                if (whole) GARDEN_CHANGES.get(way.kind()).on(changed, finding, way.values());
                else CHANGES.get(way.kind()).on(bed(changed, finding.place().only(What.BED).get()), way.values());
                List<Finding> after = findings(changed);
                tried.add(way.kind());
                String told = Wording.METRIC.paragraph(finding) + " | " + way.kind();
                if (after.stream().anyMatch(one -> one.weight() == Finding.Weight.STOP && finding.weight() != Finding.Weight.STOP)) {
                    wrong.add(told + " is refused: " + after.stream().map(Wording.METRIC::text).toList());
                } else if (after.stream().anyMatch(one -> same(one, finding) && (!LESSEN.contains(way.kind()) || amount(one) >= amount(finding)))) {
                    wrong.add(told + " mends nothing: " + changed);
                }
            }
        }
        return wrong;
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

    /** Stages that are too full, dates, paths that are narrow or bare, and ground that nobody drew. */
    private static ObjectNode worked(long seed) {
        Random random = new Random(seed);
        ObjectNode garden = MAPPER.createObjectNode();
        ArrayNode outline = garden.putObject("ground").putArray("outline");
        for (int[] corner : new int[][] {{0, 0}, {11000, 0}, {11000, 8000}, {0, 8000}}) outline.addArray().add(corner[0]).add(corner[1]);
        ArrayNode beds = garden.putArray("beds");
        for (int i = 0; i < 4; i++) {
            beds.addObject().put("id", String.valueOf((char) ('K' + i))).put("width", 1800 + 100 * random.nextInt(8)).put("depth", 1000 + 100 * random.nextInt(5))
                    .put("courses", 2 + random.nextInt(3)).put("stage", 1 + random.nextInt(2))
                    .putArray("at").add(800 + 3500 * (i % 2) + random.nextInt(300)).add(500 + 2600 * (i / 2) + random.nextInt(400));
        }
        ArrayNode line = garden.putArray("paths").addObject().put("id", "P").put("width", 600 + 100 * random.nextInt(4)).putArray("line");
        line.addArray().add(9600).add(500);
        line.addArray().add(9600).add(7000);
        if (seed % 2 == 0) {
            ObjectNode crew = garden.putObject("crew");
            crew.put("start", "2027-03-06").putArray("wet").add("2027-03-07");
            crew.putArray("people").addObject().put("name", "Ann");
        }
        return garden;
    }

    @Test
    void whatIsOfferedForDaysPathsAndGroundMends() throws Exception {
        Set<WayKind> tried = EnumSet.noneOf(WayKind.class);
        List<String> wrong = new ArrayList<>();
        for (long seed = 1; seed <= 2; seed++) wrong.addAll(tryWays(worked(seed), 30, tried));
        assertEquals(List.of(), wrong);
        assertTrue(tried.containsAll(EnumSet.of(WayKind.LATER_WEEKEND, WayKind.MORE_PEOPLE, WayKind.LONGER_DAYS, WayKind.WIDEN_TO, WayKind.TAKE_LEVELS, WayKind.DRAW_SURFACE,
                WayKind.GIVE_LAYERS, WayKind.MOVE_APART, WayKind.NAME_BASE, WayKind.NAME_LOW_WALLS, WayKind.LESS_SOIL, WayKind.DAY_DRY)), tried::toString);
    }

    @Test
    void whatIsOfferedMendsWhatItIsOfferedFor() throws Exception {
        Set<WayKind> tried = EnumSet.noneOf(WayKind.class);
        List<String> wrong = new ArrayList<>();
        for (long seed = 1; seed <= 12; seed++) wrong.addAll(tryWays(generated(seed), 12, tried));
        assertEquals(List.of(), wrong);
        assertTrue(tried.size() >= 10, () -> "only " + tried + " were offered");
    }

    @Test
    void theWayOutOfANarrowBedAndOfAForbiddenJointWorks() throws Exception {
        Set<WayKind> tried = EnumSet.noneOf(WayKind.class);
        List<String> wrong = new ArrayList<>();
        wrong.addAll(tryWays((ObjectNode) MAPPER.readTree("{\"beds\":[{\"id\":\"N\",\"width\":2400,\"depth\":250,\"courses\":2,\"at\":[0,0]}]}"), 3, tried));
        wrong.addAll(tryWays((ObjectNode) MAPPER.readTree("{\"beds\":[{\"id\":\"L\",\"width\":7200,\"depth\":1200,\"courses\":2,\"seams\":false,\"at\":[0,0]}]}"), 3, tried));
        assertEquals(List.of(), wrong);
        assertTrue(tried.containsAll(EnumSet.of(WayKind.MAKE_AT_LEAST, WayKind.ALLOW_JOINT)), tried::toString);
        assertTrue(FindingKind.BED_NARROW.ways.contains(WayKind.MAKE_AT_LEAST));
    }
}
