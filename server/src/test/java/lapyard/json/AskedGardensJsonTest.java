package lapyard.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lapyard.geometry.Lengths;
import lapyard.job.Gardens;
import lapyard.job.Job;
import lapyard.job.SearchMemory;
import lapyard.layout.LaidOut;
import lapyard.layout.LayOut;
import lapyard.plan.Bed;
import lapyard.plan.Garden;
import lapyard.sizes.Resize;
import lapyard.sizes.SizeAnswer;
import lapyard.sizes.SizeLook;
import lapyard.sizes.SizesThatGive;
import lapyard.working.Progress;
import org.junit.jupiter.api.Test;

/** Each answer's document is a garden that the reader takes and that costs what the answer says. */
class AskedGardensJsonTest {
    private static final String YARD = """
            {"ground":{"outline":[[0,0],[12000,0],[12000,9000],[0,9000]],
              "surfaces":[{"kind":"grass","outline":[[0,0],[12000,0],[12000,9000],[0,9000]]}],
              "keepClear":[{"kind":"gate","hinge":[0,4000],"leaf":1000,"closed":90}]},
             "give":{"width":[-60,0],"depth":[-60,0],"step":20,"inLine":false},
             "types":[{"id":"T","width":2400,"depth":1200,"courses":2}],
             "paths":[{"id":"P","line":[[600,4500],[9000,4500]],"layers":[{"material":"bark","depth":60}]}],
             "beds":[{"id":"A","name":"Beans","type":"T","at":[800,6400]},{"id":"B","type":"T","at":[4800,6400]},
                     {"id":"C","courses":2,"at":[800,800],"outline":[[0,0],[2500,0],[2500,1000],[1000,1000],[1000,2000],[0,2000]]},
                     {"id":"D","courses":2,"at":[5000,800],"give":false,"walls":[{"length":1500},{"length":900},{"length":1500},{"length":900}]}]%s}""";

    @Test
    void sizesAreWrittenToTypesAndBeds() throws Exception {
        JsonNode document = DocumentText.parse(YARD.formatted(""));
        Garden garden = Gardens.garden(document.toString());
        assertEquals(Set.of("A", "B", "C"), garden.asking().giving().byBed().keySet());
        SizesThatGive given = SizesThatGive.of(garden, garden.asking().giving(), SizeLook.ofSeconds(1, 4), Progress.UNHEARD, new SearchMemory(20_000_000));
        ObjectNode json = SizesJson.of(document, garden, given);
        assertTrue(json.path("front").size() > 0, json::toString);
        for (JsonNode answer : json.path("front")) {
            Garden changed = Gardens.garden(answer.path("garden").toString());
            assertEquals(new BigDecimal(answer.path("total").asText()), Job.prepare(changed).slip().total(), answer.path("text").asText());
            assertEquals(changed.beds().get(0).outline(), changed.beds().get(1).outline(), "beds of a type stay alike");
            assertEquals(garden.beds().get(3).outline(), changed.beds().get(3).outline());
        }
    }

    /** Worked by hand: in one sentence, what changes alike is named once. */
    @Test
    void changesAlikeAreSaidTogether() throws Exception {
        JsonNode document = DocumentText.parse("""
                {"give":{"width":[-20,0],"depth":[-20,0],"step":20,"inLine":false,"equalGaps":false},
                 "beds":[{"id":"A","width":2400,"depth":1200},{"id":"B","width":1800,"depth":1000,"at":[4000,0]},
                         {"id":"C","at":[8000,0],"outline":[[0,0],[2500,0],[2500,1000],[1000,1000],[1000,2000],[0,2000]]}]}""");
        Garden garden = Gardens.garden(document.toString());
        SizesThatGive given = SizesThatGive.of(garden, garden.asking().giving(), SizeLook.ofSeconds(1, 3), Progress.UNHEARD, new SearchMemory(20_000_000));
        List<Resize> all = given.sides().stream().map(side -> new Resize(side, side.leastMm())).toList();
        SizesThatGive every = new SizesThatGive(given.now(), given.sides(), List.of(new SizeAnswer(all, 160, BigDecimal.ONE, BigDecimal.TEN, 2)), given.bounds(), given.bound(),
                false, List.of(), List.of(), true, 4, false);
        String text = SizesJson.of(document, garden, every).path("text").asText();
        assertTrue(text.endsWith(" could be saved. Looking 4 times as long found nothing cheaper."), text);
        assertEquals("Beds A, B 20 mm narrower; beds A, B 20 mm shallower; walls A, F of bed C 40 mm shorter; walls B, C, D, E of bed C 20 mm shorter: "
                + "2 boards fewer, GBP 10 less in all", SizesJson.of(document, garden, every).path("front").path(0).path("text").asText());
    }

    /** Whoever saws by the words makes the garden that is written: slanted walls change by another amount than the side that moves. */
    @Test
    void eachWallIsToldItsOwnChange() throws Exception {
        JsonNode document = DocumentText.parse("""
                {"give":{"width":[-60,20],"depth":[-40,20],"step":10,"inLine":false,"equalGaps":false},"types":[{"id":"T","width":2400,"depth":1200}],
                 "beds":[{"id":"A","outline":[[0,0],[2600,0],[1300,1950]]},{"id":"B","at":[4000,0],"outline":[[0,0],[2300,0],[1800,1350],[500,1350]]},
                         {"id":"C","at":[8000,0],"outline":[[0,0],[2500,0],[2500,1000],[1000,1000],[1000,2000],[0,2000]]},
                         {"id":"D","at":[12000,0],"outline":[[0,0],[2600,0],[2600,1200],[2200,1600],[0,1600]]},
                         {"id":"E","at":[16000,0],"walls":[{"length":1000,"turn":60},{"length":1000,"turn":60},{"length":1000,"turn":60},{"length":1000,"turn":60},{"length":1000,"turn":60},{"length":1000,"turn":60}]},
                         {"id":"F","at":[20000,0],"outline":[[0,0],[2000,0],[2600,1200],[600,1200]]},
                         {"id":"G","at":[24000,0],"outline":[[0,0],[3000,0],[3000,2000],[2000,2000],[2000,1000],[1000,1000],[1000,2000],[0,2000]]},
                         {"id":"H","type":"T","at":[0,6000]},{"id":"J","type":"T","at":[4000,6000],"turn":90},{"id":"K","type":"T","at":[8000,6000],"mirror":true}]}""");
        Garden garden = Gardens.garden(document.toString());
        SizesThatGive given = SizesThatGive.of(garden, garden.asking().giving(), List.of(new SizeLook(2, false, 1, 1)), Progress.UNHEARD, new SearchMemory(20_000_000));
        List<SizeAnswer> made = new ArrayList<>();
        for (int seed = 1; seed <= 40; seed++) {
            Random random = new Random(seed);
            List<Resize> some = given.sides().stream().map(side -> new Resize(side, side.leastMm() + 10 * random.nextInt((int) (side.mostMm() - side.leastMm()) / 10 + 1)))
                    .filter(one -> one.byMm() != 0 && random.nextBoolean()).toList();
            if (!some.isEmpty()) made.add(new SizeAnswer(some, 1, BigDecimal.ONE, BigDecimal.TEN, 0));
        }
        SizesThatGive every = new SizesThatGive(given.now(), given.sides(), made, given.bounds(), given.bound(), false, List.of(), List.of(), true, 1, false);
        for (JsonNode answer : SizesJson.of(document, garden, every).path("front")) {
            String text = answer.path("text").asText();
            Garden changed = Gardens.garden(answer.path("garden").toString());
            Map<String, String> is = new TreeMap<>();
            for (int bed = 0; bed < garden.beds().size(); bed++) {
                Bed was = garden.beds().get(bed);
                for (int wall = 0; wall < was.outline().sides(); wall++) {
                    String by = Lengths.text(Double.parseDouble(Lengths.text(changed.beds().get(bed).outline().sideMm(wall)))
                            - Double.parseDouble(Lengths.text(was.outline().sideMm(wall))));
                    // a tenth is what corners drawn in tenths make of a slanted wall that stays
                    if (Math.abs(Double.parseDouble(by)) > 0.1) is.put(was.id() + Bed.wallLetter(wall), by);
                }
            }
            assertEquals(is, told(text), text);
        }
    }

    /** By bed and wall what a reader takes from the words; wall A runs along the width of a rectangle, wall B along its depth. */
    private static Map<String, String> told(String text) {
        Map<String, String> told = new TreeMap<>();
        Matcher one = Pattern.compile("(?i)(?:walls? ([A-Z](?:, [A-Z])*) of )?beds? ([A-Z](?:, [A-Z])*) ([0-9.]+) mm (\\w+)").matcher(text);
        while (one.find()) {
            boolean less = one.group(4).matches("shorter|narrower|shallower");
            String walls = one.group(1) != null ? one.group(1) : one.group(4).matches("narrower|wider") ? "A, C" : "B, D";
            for (String bed : one.group(2).split(", ")) {
                for (String wall : walls.split(", ")) assertNull(told.put(bed + wall, (less ? "-" : "") + one.group(3)), () -> "told twice: " + text);
            }
        }
        return told;
    }

    /** The same for the same garden, unless somebody stopped it, which the answer says. */
    @Test
    void anAnswerSaysWhereAStopEndedTheLook() throws Exception {
        JsonNode document = DocumentText.parse(YARD.formatted(""));
        Garden garden = Gardens.garden(document.toString());
        List<String> whole = new ArrayList<>();
        for (boolean stop : new boolean[] {false, true, false}) {
            Progress heard = (best, bound) -> {
                if (stop) Thread.currentThread().interrupt();
            };
            ObjectNode json;
            try {
                json = SizesJson.of(document, garden, SizesThatGive.of(garden, garden.asking().giving(), List.of(new SizeLook(60, false, 4, 2)), heard, new SearchMemory(20_000_000)));
            } finally {
                Thread.interrupted();
            }
            assertEquals(stop, json.path("early").asBoolean());
            assertEquals(stop, json.path("text").asText().contains("may find other sizes another time"), json.path("text")::asText);
            if (!stop) whole.add(json.toString());
        }
        assertEquals(whole.get(0), whole.get(1));
    }

    /** A look whose counts end before the growths are known names the sides that are open, in words and in the list. */
    @Test
    void aListOfGrowthsThatWasCutSaysSo() throws Exception {
        JsonNode document = DocumentText.parse(YARD.formatted("").replace("[-60,0],\"depth\":[-60,0]", "[0,60],\"depth\":[0,60]"));
        Garden garden = Gardens.garden(document.toString());
        for (boolean cut : new boolean[] {true, false}) {
            List<SizeLook> look = cut ? List.of(new SizeLook(2, false, 1, 1)) : SizeLook.ofSeconds(20, 4);
            ObjectNode json = SizesJson.of(document, garden, SizesThatGive.of(garden, garden.asking().giving(), look, Progress.UNHEARD, new SearchMemory(20_000_000)));
            assertEquals(cut, json.path("growthOpen").size() > 0, json.path("text")::asText);
            assertEquals(cut, json.path("text").asText().contains("could grow at no cost is not known: the look ended first"), json.path("text")::asText);
            if (cut) assertTrue(json.path("growthOpen").toString().contains("depth of beds A, B"), json.path("growthOpen")::toString);
        }
    }

    @Test
    void proposalsKeepCodesNamesAndWhatIsPinned() throws Exception {
        JsonNode document = DocumentText.parse(YARD.formatted(",\"layOut\":{\"pinned\":[\"C\"],\"rank\":[\"cost\",\"beds\"]}"));
        Garden garden = Gardens.garden(document.toString());
        LaidOut laid = LayOut.of(garden, garden.asking().wishes(), 300, lapyard.working.Progress.UNHEARD, new SearchMemory(20_000_000));
        ObjectNode json = LayOutJson.of(document, garden, laid);
        assertTrue(json.path("proposals").size() >= 3, json.path("text")::toString);
        for (JsonNode proposal : json.path("proposals")) {
            Garden made = Gardens.garden(proposal.path("garden").toString());
            assertEquals(Set.of("A", "B", "C", "D"), Set.copyOf(made.beds().stream().map(bed -> bed.id()).toList()));
            assertEquals(garden.beds().get(2).inYard(), made.beds().stream().filter(bed -> bed.id().equals("C")).findFirst().orElseThrow().inYard());
            assertTrue(made.beds().stream().anyMatch(bed -> bed.name().equals("Beans")));
            assertTrue(made.paths().stream().allMatch(path -> path.layers().get(0).item().equals("bark")));
            assertEquals(new BigDecimal(proposal.path("figures").path("cost").asText()), Job.prepare(made).slip().total(), proposal.path("order").asText());
        }
    }

    /** By hand: with a path of 900 along it one bed of 2400 x 1200 fills 2400 x 2100, at the front or at the back. */
    @Test
    void aNarrowYardSaysWhyThereIsNoChoice() throws Exception {
        JsonNode document = DocumentText.parse("""
                {"ground":{"outline":[[0,0],[2400,0],[2400,2100],[0,2100]],"access":{"path":900,"reach":1200,"turning":0}},
                 "beds":[{"width":2400,"depth":1200}]}""");
        Garden garden = Gardens.garden(document.toString());
        LaidOut laid = LayOut.of(garden, garden.asking().wishes(), 300, lapyard.working.Progress.UNHEARD, new SearchMemory(20_000_000));
        JsonNode json = LayOutJson.of(document, garden, laid);
        int proposals = json.path("proposals").size();
        JsonNode orders = json.path("orders");
        assertTrue(proposals > 0 && proposals < 3, json.path("text")::asText);
        assertEquals(orders.path("tried").asInt(), proposals + orders.path("without").asInt() + orders.path("alike").asInt() + orders.path("worse").asInt());
        assertEquals("1 bed fits; more cannot, which is proved. Only 2 proposals of 6 orders tried: 4 left no bed that passes every check.",
                json.path("text").asText());
        Garden none = Gardens.garden(document.toString().replace("2100", "1100"));
        assertEquals("No order of these beds was found that passes every check, and none fits. Ask for fewer beds, a narrower path or a smaller margin.",
                LayOutJson.of(document, none, LayOut.of(none, none.asking().wishes(), 300, lapyard.working.Progress.UNHEARD, new SearchMemory(20_000_000))).path("text").asText());
    }

    @Test
    void whatCannotBeAskedIsRefusedByName() throws Exception {
        for (String wrong : List.of("\"layOut\":{\"pinned\":[\"Z\"]}", "\"layOut\":{\"beds\":[{\"type\":\"Z\"}]}", "\"give\":{\"alike\":[[\"Z\"]]}",
                "\"give\":{\"width\":[5,10]}")) {
            Reading reading = GardenReader.read("{" + wrong + ",\"beds\":[{\"width\":2400,\"depth\":1200}]}");
            assertInstanceOf(Reading.Refused.class, reading, wrong);
        }
    }
}
