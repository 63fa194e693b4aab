package lapyard.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.Random;
import lapyard.job.Gardens;
import lapyard.job.Job;
import lapyard.job.JobSheet;
import lapyard.job.SearchMemory;
import lapyard.plan.Garden;
import lapyard.working.Look;
import lapyard.working.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A first look tells all amounts at once, says what it is, and promises nothing that only the whole knows. */
class FirstLookTest {
    private static final long BYTES = 40_000_000;

    private static JobSheet sheet(Garden garden, Look look, SearchMemory memory) {
        return Job.prepare(garden, what -> Progress.UNHEARD, look, memory);
    }

    private static String json(JobSheet sheet) throws IOException {
        return Written.whole(sheet).toString().replaceAll("\"seconds\":[-0-9.E]+", "");
    }

    @ParameterizedTest
    @MethodSource("lapyard.job.Gardens#samples")
    void theWholeKnowsNothingOfFirstLooksAndIsNoDearer(String sample) throws IOException {
        Garden garden = Gardens.garden(Gardens.text(sample));
        SearchMemory memory = new SearchMemory(BYTES);
        JobSheet first = sheet(garden, Look.FIRST, memory);
        JobSheet whole = sheet(garden, Look.WHOLE, memory);
        assertEquals(json(sheet(garden, Look.WHOLE, new SearchMemory(BYTES))), json(whole));
        assertTrue(whole.slip().total().compareTo(first.slip().total()) <= 0, whole.slip().total() + " after " + first.slip().total());
        JobSheet again = sheet(garden, Look.FIRST, memory);
        if (again.look() == Look.FIRST) assertEquals(whole.slip().total(), again.slip().total(), "what the whole has found is taken");
    }

    @Test
    void whatOnlyTheWholeKnowsIsLeftOut() throws IOException {
        Garden garden = Gardens.garden(Gardens.text("village-hall"));
        JsonNode first = Written.whole(sheet(garden, Look.FIRST, new SearchMemory(BYTES)));
        JsonNode whole = Written.whole(sheet(garden, Look.WHOLE, new SearchMemory(BYTES)));
        assertEquals("first", first.path("look").asText());
        assertTrue(whole.path("look").isMissingNode());
        assertTrue(whole.at("/slip/saved").isTextual() && whole.at("/slip/savings").size() > 0 && whole.at("/slip/bedByBed").isObject());
        assertTrue(first.at("/slip/saved").isNull() && first.at("/slip/savings").isMissingNode() && first.at("/slip/bedByBed").isMissingNode());
        first.at("/slip/lines").forEach(line -> assertTrue(line.path("bedByBed").isNull() && line.path("saved").isNull(), line::toString));
        for (String list : List.of("cutting", "strips")) {
            first.path(list).forEach(one -> {
                assertTrue(one.path("boardsBedByBed").isNull(), one::toString);
                assertEquals(1, one.path("ways").size(), "as pooled alone");
            });
            whole.path(list).forEach(one -> assertTrue(one.path("boardsBedByBed").asInt() > 0));
        }
        first.path("rolls").forEach(one -> assertTrue(one.path("metresBedByBed").isNull() && one.path("costBedByBed").isNull(), one::toString));
        assertTrue(new BigDecimal(first.at("/slip/total").asText()).signum() > 0);
    }

    /** The more is remembered of the garden before a change, the less a first look at the changed one is off. */
    @Test
    void wallsThatDidNotChangeAreJoinedAsTheLastWholePlanJoinedThem() throws IOException {
        Random random = new Random(735);
        BigDecimal known = BigDecimal.ZERO;
        BigDecimal unknown = BigDecimal.ZERO;
        for (int i = 0; i < 6; i++) {
            StringBuilder beds = new StringBuilder();
            for (int bed = 0; bed < 6; bed++) {
                beds.append(bed == 0 ? "" : ",").append("{\"width\":%d,\"depth\":1200,\"courses\":3,\"at\":[%d,0]}".formatted(3200 + 10 * random.nextInt(200), bed * 7000));
            }
            String before = "{\"beds\":[" + beds + "]}";
            Garden after = Gardens.garden(before.replaceFirst("1200", "1100"));
            SearchMemory memory = new SearchMemory(BYTES);
            sheet(Gardens.garden(before), Look.WHOLE, memory);
            known = known.add(sheet(after, Look.FIRST, memory).slip().total());
            unknown = unknown.add(sheet(after, Look.FIRST, new SearchMemory(BYTES)).slip().total());
            assertEquals(json(sheet(after, Look.FIRST, memory)), json(sheet(after, Look.FIRST, memory)), "as long as nothing else is remembered");
        }
        assertTrue(known.compareTo(unknown) < 0, known + " and " + unknown);
    }

    @Test
    void aGardenOfWhichSomethingIsBoughtHasNoFirstLook() throws IOException {
        String text = Gardens.text("village-hall");
        ObjectNode garden = (ObjectNode) DocumentText.tree(text);
        garden.withObject("/tally").putArray("bought").addObject().put("item", "soil.topsoil").put("pack", "bulk bag 0.75 m3").put("count", 1);
        assertEquals(Look.FIRST, sheet(Gardens.garden(text), Look.FIRST, new SearchMemory(BYTES)).look());
        assertEquals(Look.WHOLE, sheet(Gardens.garden(garden.toString()), Look.FIRST, new SearchMemory(BYTES)).look());
    }
}
