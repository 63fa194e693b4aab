package lapyard.json;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import lapyard.job.Gardens;
import lapyard.job.Job;
import lapyard.job.SearchMemory;
import lapyard.working.Look;
import lapyard.working.Progress;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Whatever was worked out for a garden before an edit or an undo, a first look at it among that, its job sheet is that of one that was never seen before. */
class RememberedEditsTest {
    private static final JsonMapper MAPPER = new JsonMapper();

    @ParameterizedTest
    @CsvSource({"4711, 40_000_000", "4712, 40_000_000", "4713, 60_000"})
    void aJobSheetKnowsNothingOfEarlierOnes(long seed, String bytes) throws IOException {
        Random random = new Random(seed);
        SearchMemory memory = new SearchMemory(Long.parseLong(bytes.replace("_", "")));
        List<ObjectNode> versions = new ArrayList<>(List.of(garden(random)));
        for (int edit = 0; edit < 14; edit++) {
            ObjectNode now = versions.get(random.nextInt(4) == 0 ? random.nextInt(versions.size()) : versions.size() - 1).deepCopy();
            String what = edited(now, random);
            versions.add(now);
            if (random.nextBoolean()) first(now, memory);
            assertEquals(sheet(now, new SearchMemory(40_000_000)), sheet(now, memory), "seed " + seed + ", edit " + edit + ": " + what + " of " + now);
        }
    }

    /** One change alone: a wall of 5300 is joined of boards of 3000, and every limit of the saw and of the boards has a say in how; one of 3500 where a board on hand grows to reach it. */
    @ParameterizedTest
    @CsvSource({
        "/saw/leastPiece, 1500", "/saw/leastPart, 1400", "/saw/seamStagger, 900", "/saw/seamFromCorner, 1400", "/saw/kerf, 9", "/saw/endTrim, 200", "/crew/liftLimit, 10",
        "/catalogue/sections/0/stock/0/length, 3400", "/catalogue/sections/0/stock/0/length, 2200", "/catalogue/sections/0/stock/0/length, 4000",
        "/catalogue/sections/1/stock/0/length, 700", "/rack/0/length, 3900"
    })
    void eachLimitOfSawAndBoardsCounts(String field, int value) throws IOException {
        boolean onHand = field.startsWith("/rack");
        ObjectNode before = (ObjectNode) MAPPER.readTree("""
                {"saw":{"kerf":4},"rack":[%s],"crew":{"liftLimit":25},"beds":[{"id":"A","width":%d,"depth":1100,"courses":2,"base":"slatted"},
                         {"id":"B","width":3500,"depth":1100,"courses":1,"at":[7000,0],"seams":false}],
                 "catalogue":{"sections":[
                 {"id":"100x200","thickness":100,"height":200,"stock":[{"length":3000,"price":20}]},
                 {"id":"50x75","thickness":50,"height":75,"stock":[{"length":1300,"price":5}]}]}}
                """.formatted(onHand ? "{\"id\":\"K\",\"length\":3300,\"count\":2,\"goodFaces\":2}" : "", onHand ? 3500 : 5300));
        ObjectNode after = before.deepCopy();
        int name = field.lastIndexOf('/');
        ((ObjectNode) after.at(field.substring(0, name))).put(field.substring(name + 1), value);
        SearchMemory memory = new SearchMemory(40_000_000);
        sheet(before, memory);
        assertEquals(sheet(after, new SearchMemory(40_000_000)), sheet(after, memory));
    }

    private static void first(ObjectNode garden, SearchMemory memory) {
        assertEquals(Look.FIRST, Job.prepare(Gardens.garden(garden.toString()), what -> Progress.UNHEARD, Look.FIRST, memory).look());
    }

    private static String sheet(ObjectNode garden, SearchMemory memory) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        JobSheetJson.write(Job.prepare(Gardens.garden(garden.toString()), what -> Progress.UNHEARD, memory), SheetAsk.WHOLE, bytes);
        return bytes.toString(StandardCharsets.UTF_8).replaceAll("\"seconds\":[-0-9.E]+", "");
    }

    /** Four beds in a row on falling ground, two of them alike, one an L, one slatted, of timber of two thicknesses and bearers; walls of up to 5 m are joined. */
    private static ObjectNode garden(Random random) throws IOException {
        int width = 2600 + random.nextInt(2400);
        ObjectNode garden = (ObjectNode) MAPPER.readTree("""
                {"ground":{"levels":[{"at":[0,0],"drop":400},{"at":[20000,0],"drop":430},{"at":[0,4000],"drop":460}]},
                 "rack":[{"id":"K","length":3300,"count":2,"goodFaces":2}],"saw":{"kerf":4},
                 "beds":[{"id":"A","width":%d,"depth":1100,"courses":3},{"id":"B","width":%d,"depth":1100,"courses":3,"at":[5600,0]},
                         {"id":"C","courses":2,"at":[11200,0],"outline":[[0,0],[%d,0],[%d,900],[900,900],[900,1900],[0,1900]]},
                         {"id":"D","width":1800,"depth":%d,"courses":2,"at":[16800,0],"base":"slatted"}]}
                """.formatted(width, width, width - 300, width - 300, 800 + random.nextInt(400)));
        ArrayNode sections = garden.putObject("catalogue").putArray("sections");
        for (String id : List.of("100x200", "75x200", "50x75")) {
            String[] size = id.split("x");
            ObjectNode section = sections.addObject().put("id", id).put("thickness", Integer.parseInt(size[0])).put("height", Integer.parseInt(size[1]));
            section.putArray("stock").addObject().put("length", id.equals("50x75") ? 1300 : 3000).put("price", 20);
        }
        return garden;
    }

    private static String edited(ObjectNode garden, Random random) {
        ObjectNode bed = (ObjectNode) garden.path("beds").get(random.nextInt(4));
        String id = bed.path("id").asText();
        int what = random.nextInt(14);
        switch (what) {
            case 0 -> bed.put("courses", 1 + random.nextInt(4));
            case 1 -> bed.put("lap", random.nextBoolean() ? "long-wall" : "turning");
            case 2 -> bed.put("turn", 90 * random.nextInt(4));
            case 3 -> bed.put("food", random.nextBoolean());
            case 4 -> bed.put("base", random.nextBoolean() ? "slatted" : "open");
            case 5 -> ((ObjectNode) garden.path("saw")).put("kerf", 3 + random.nextInt(3));
            case 6 -> garden.withObject("/crew").put("liftLimit", 10 + random.nextInt(50));
            case 7 -> garden.withObject("/ground/levels/0").put("drop", 300 + 20 * random.nextInt(10));
            case 8 -> bed.put("section", random.nextBoolean() ? "75x200" : "100x200");
            case 9 -> ((ObjectNode) garden.at("/catalogue/sections/" + random.nextInt(2) + "/stock/0")).put("length", 3000 + 600 * random.nextInt(4));
            case 10 -> ((ObjectNode) garden.at("/rack/0")).put("length", 3300 + 600 * random.nextInt(5));
            case 11 -> ((ObjectNode) garden.at("/catalogue/sections/2/stock/0")).put("length", 700 + 600 * random.nextInt(3));
            default -> {
                String side = bed.has("width") ? random.nextBoolean() ? "width" : "depth" : "";
                if (!side.isEmpty()) bed.put(side, bed.path(side).asInt() - 1 - random.nextInt(60));
                else bed.put("stage", 1 + random.nextInt(2));
            }
        }
        return what + " in " + id;
    }
}
