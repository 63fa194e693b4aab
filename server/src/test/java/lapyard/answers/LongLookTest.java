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
import lapyard.working.Look;
import org.junit.jupiter.api.Test;

/** A garden whose cheapest plans are looked for longer: told how far it is, stopped, and the same again. */
class LongLookTest {
    private record Reached(BigDecimal best, BigDecimal bound) {}

    /** Beds made up with a seeded random, whose liner a longer look lays better; what was searched for one depth is not remembered for another. */
    private static String garden(String search, int depth) {
        return Gardens.rows(search, "1300x" + depth + "x2 4150x1300x2 2900x1450x4 2500x1250x3 2700x850x3 1900x1050x4 3800x800x4 4150x900x4 3050x1400x2 "
                + "1250x700x2 4100x1000x3 1150x800x2 4050x750x3 4150x1450x4 900x950x2 2450x1350x2 1900x900x2 4150x1000x2 1350x1250x3 1950x750x3 "
                + "1400x950x2 2400x1250x2 4000x950x4 3350x1300x4 3850x1200x2");
    }

    private static JobSheet sheet(String search, int depth) {
        return Gardens.sheet(garden(search, depth));
    }

    @Test
    void neverCostsMoreAndHereCostsLessAndTellsHowFarItIs() throws Exception {
        Map<String, List<Reached>> heard = new LinkedHashMap<>();
        JobSheet quick = sheet("short", 1300);
        String told = new GardenDesk().prepare(GivenDocument.of(garden("long", 1300)), what -> (best, bound) ->
                heard.computeIfAbsent(what, w -> new ArrayList<>()).add(new Reached(best, bound)), Look.WHOLE).slipJson();
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
                desk.prepare(GivenDocument.of(garden("long", 1250)), what -> (best, bound) -> Thread.currentThread().interrupt(), Look.WHOLE).slipJson()));
        looking.start();
        looking.join(60_000);
        JsonMapper mapper = new JsonMapper();
        BigDecimal early = new BigDecimal(mapper.readTree(stopped.get()).path("total").asText());
        BigDecimal whole = new BigDecimal(mapper.readTree(desk.prepare(GivenDocument.of(garden("long", 1250))).slipJson()).path("total").asText());
        assertEquals(sheet("long", 1250).slip().total(), whole, "what was cut short is not handed out");
        assertTrue(whole.compareTo(early) < 0, whole + " after " + early);
    }

    /** A garden that is being built has no first look, so even that is searched as long as it says. */
    @Test
    void aFirstLookAtALongSearchIsShortUnlessSomethingIsBought() {
        String begun = garden("long", 1300).replaceFirst("\\{", "{\"tally\":{\"bought\":[{\"item\":\"spade\",\"pack\":\"one\",\"count\":1}]},");
        GardenDesk desk = new GardenDesk();
        assertEquals(List.of(true, false, true, true, false), List.of(
                desk.isLarge(GivenDocument.of(garden("long", 1300)), Look.WHOLE), desk.isLarge(GivenDocument.of(garden("long", 1300)), Look.FIRST),
                desk.isLarge(GivenDocument.of(begun), Look.WHOLE), desk.isLarge(GivenDocument.of(begun), Look.FIRST),
                desk.isLarge(GivenDocument.of(begun.replace("long", "short")), Look.FIRST)));
    }
}
