package lapyard.answers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicReference;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import org.junit.jupiter.api.Test;

/** A garden whose cheapest plans are looked for longer: told how far it is, stopped, and the same again. */
class LongLookTest {
    private record Reached(BigDecimal best, BigDecimal bound) {}

    /** Twelve beds made up with a seeded random; what was searched for one depth is not remembered for another. */
    private static String garden(String search, int depth) {
        return Gardens.rows(search, "1950x" + depth + "x3 4100x1450x4 3050x800x4 1200x1450x3 2950x1050x2 3450x1450x4 3850x1450x3 3200x900x2 "
                + "3200x900x4 2400x700x4 3650x800x2 3600x750x3");
    }

    private static JobSheet sheet(String search, int depth) {
        return Gardens.sheet(garden(search, depth));
    }

    @Test
    void neverCostsMoreAndHereCostsLessAndTellsHowFarItIs() throws Exception {
        Map<String, List<Reached>> heard = new LinkedHashMap<>();
        JobSheet quick = sheet("short", 900);
        String told = new GardenDesk().prepare(GivenDocument.of(garden("long", 900)), what -> (best, bound) ->
                heard.computeIfAbsent(what, w -> new ArrayList<>()).add(new Reached(best, bound))).slipJson();
        JsonNode slip = new JsonMapper().readTree(told);
        BigDecimal total = new BigDecimal(slip.path("total").asText());
        assertTrue(total.compareTo(quick.slip().total()) < 0, total + " after " + quick.slip().total());
        assertEquals(List.of("Timber 100x200", "Bearers 50x75", "Liner"), List.copyOf(heard.keySet()));
        heard.forEach((what, all) -> {
            for (int i = 0; i < all.size(); i++) {
                assertTrue(all.get(i).bound().compareTo(all.get(i).best()) <= 0, what + ": " + all);
                if (i > 0) {
                    assertTrue(all.get(i).best().compareTo(all.get(i - 1).best()) <= 0, what + ": " + all);
                    assertTrue(all.get(i).bound().compareTo(all.get(i - 1).bound()) >= 0, what + ": " + all);
                }
            }
        });
        for (JsonNode line : slip.path("lines")) {
            if (line.path("item").asText().startsWith("timber")) {
                List<Reached> boards = heard.get("Timber 100x200");
                assertEquals(0, boards.get(boards.size() - 1).best().compareTo(new BigDecimal(line.path("cost").asText())));
            }
        }
    }

    @Test
    void toldToStopItGivesWhatItHasAndTheWholeAnswerComesAfterwardsAllTheSame() throws Exception {
        GardenDesk desk = new GardenDesk();
        AtomicReference<String> stopped = new AtomicReference<>();
        Thread looking = new Thread(() -> stopped.set(
                desk.prepare(GivenDocument.of(garden("long", 850)), what -> (best, bound) -> Thread.currentThread().interrupt()).slipJson()));
        looking.start();
        looking.join(60_000);
        JsonMapper mapper = new JsonMapper();
        BigDecimal early = new BigDecimal(mapper.readTree(stopped.get()).path("total").asText());
        BigDecimal whole = new BigDecimal(mapper.readTree(desk.prepare(GivenDocument.of(garden("long", 850))).slipJson()).path("total").asText());
        assertEquals(sheet("long", 850).slip().total(), whole, "what was cut short is not handed out");
        assertTrue(whole.compareTo(early) < 0, whole + " after " + early);
    }
}
