package lapyard.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.StringReader;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.StreamSupport;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import lapyard.order.SlipCsv;
import lapyard.order.SlipLine;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a line costs where each bed buys alone is one figure, wherever it is told. */
class BedByBedTest {
    /** The mill is cheap for little, the yard for much: whom the one order chooses is not whom a bed alone chooses. */
    private static final String SOLD = "\"catalogue\":{\"suppliers\":[{\"id\":\"mill\",\"name\":\"Mill\"},{\"id\":\"yard\",\"name\":\"Yard\",\"delivery\":20}],"
            + "\"sections\":[{\"id\":\"100x200\",\"thickness\":100,\"height\":200,\"stock\":[{\"length\":2400,\"price\":19.00,\"supplier\":\"mill\"},"
            + "{\"length\":3000,\"price\":24.50,\"supplier\":\"mill\"},{\"length\":2400,\"price\":17.00,\"supplier\":\"yard\"},"
            + "{\"length\":1800,\"price\":13.10,\"supplier\":\"yard\"}]},{\"id\":\"50x75\",\"thickness\":50,\"height\":75,\"stock\":["
            + "{\"length\":2400,\"price\":6.40,\"supplier\":\"mill\"},{\"length\":3000,\"price\":7.20,\"supplier\":\"yard\"}]}],"
            + "\"rolls\":[{\"id\":\"W4\",\"material\":\"liner\",\"width\":4000,\"price\":9.00,\"step\":500,\"supplier\":\"mill\"},"
            + "{\"id\":\"Y2\",\"material\":\"liner\",\"width\":2500,\"price\":4.70,\"step\":1000,\"supplier\":\"yard\"}]}";

    private static String garden(long seed, boolean rack) {
        Random random = new Random(seed);
        List<String> beds = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            beds.add("{\"width\":" + (1500 + 100 * random.nextInt(25)) + ",\"depth\":" + (900 + 100 * random.nextInt(4)) + ",\"courses\":" + (1 + random.nextInt(2))
                    + ",\"base\":\"slatted\",\"at\":[" + 5000 * i + ",0]}");
        }
        return "{\"beds\":" + beds + (rack ? ",\"rack\":[{\"section\":\"100x200\",\"length\":2100,\"count\":2}]" : "") + "," + SOLD + "}";
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void everyPlaceTellsTheSlipsFigure(long seed) throws Exception {
        JobSheet sheet = Gardens.sheet(garden(seed, seed % 2 == 0));
        JsonNode all = Written.whole(sheet);
        for (String part : List.of("cutting", "strips")) {
            assertTrue(all.path(part).size() > 0, part);
            for (JsonNode cutting : all.path(part)) {
                JsonNode way = StreamSupport.stream(cutting.path("ways").spliterator(), false)
                        .filter(one -> one.path("way").asText().equals("bed by bed")).findFirst().orElseThrow();
                assertEquals(cutting.path("boardsBedByBed").asInt(), way.path("boards").asInt());
                same(all, sheet, (part.equals("cutting") ? "timber " : "bearers ") + cutting.path("section").asText(), way.path("cost"));
            }
        }
        assertTrue(all.path("rolls").size() > 0);
        for (JsonNode roll : all.path("rolls")) same(all, sheet, roll.path("material").asText(), roll.path("costBedByBed"));
    }

    private static void same(JsonNode all, JobSheet sheet, String item, JsonNode told) throws Exception {
        BigDecimal figure = new BigDecimal(told.asText());
        SlipLine line = sheet.slip().lines().stream().filter(one -> one.item().equals(item)).findFirst().orElseThrow();
        assertEquals(0, figure.compareTo(line.bedByBed().orElseThrow()), item + " " + figure + " " + line.bedByBed());
        for (JsonNode row : all.at("/slip/lines")) if (row.path("item").asText().equals(item)) assertEquals(0, figure.compareTo(new BigDecimal(row.path("bedByBed").asText())));
        for (JsonNode row : all.at("/slip/savings")) if (row.path("item").asText().equals(item)) assertEquals(0, figure.compareTo(new BigDecimal(row.path("bedByBed").asText())));
        List<String> cells = new ArrayList<>();
        for (CSVRecord row : CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get().parse(new StringReader(SlipCsv.write(sheet.slip(), false)))) {
            if (row.get("item").equals(item) && !row.get("bed by bed").isEmpty()) cells.add(row.get("bed by bed"));
        }
        assertEquals(1, cells.size(), item);
        assertEquals(0, figure.compareTo(new BigDecimal(cells.get(0))));
    }

    /** Boards and metres are of the same orders as the money: what gardens of one bed each take, added up. */
    @ParameterizedTest
    @ValueSource(longs = {1, 3, 5, 7})
    void boardsAndMetresAreOfTheSameOrders(long seed) {
        JobSheet together = Gardens.sheet(garden(seed, false));
        int boards = 0;
        int strips = 0;
        double metres = 0;
        for (int bed = 0; bed < 3; bed++) {
            String document = garden(seed, false);
            String beds = document.substring(document.indexOf('[') + 1, document.indexOf("],\"cat"));
            JobSheet one = Gardens.sheet("{\"beds\":[" + beds.split("(?<=}), ")[bed] + "]," + SOLD + "}");
            boards += one.cutting().get(0).saw().ways().get(0).boards();
            strips += one.strips().get(0).saw().ways().get(0).boards();
            metres += one.rolls().get(0).result().rolls().stream().mapToDouble(roll -> roll.boughtMm()).sum() / 1000;
        }
        assertEquals(boards, together.cutting().get(0).boardsBedByBed());
        assertEquals(strips, together.strips().get(0).boardsBedByBed());
        assertEquals(metres, together.rolls().get(0).metresBedByBed().orElseThrow(), 1e-9);
    }
}
