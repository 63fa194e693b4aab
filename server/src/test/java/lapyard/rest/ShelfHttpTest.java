package lapyard.rest;

import static lapyard.rest.Served.json;
import static lapyard.rest.Served.problem;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import lapyard.answers.GardenDesk;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The shelf over HTTP: a price list of two boards' prices, gardens that have it, and a newer one. */
class ShelfHttpTest {
    private static final String PRICES = "{\"kind\":\"catalogue\",\"name\":\"Hill sawmill\",\"content\":{\"sections\":[{\"id\":\"100x200\",\"thickness\":100,\"height\":200,"
            + "\"stock\":[{\"length\":3000,\"price\":%s}]}]}}";
    private static final String GARDEN = "{\"name\":\"Yard\",\"beds\":[{\"id\":\"A\",\"width\":2400,\"depth\":1200,\"courses\":3}]}";

    @TempDir
    private Path folder;

    private Served served;

    @BeforeEach
    void start() throws Exception {
        served = new Served(folder, Keys.NONE, ShelfHttpTest.class.getClassLoader(), new GardenDesk());
    }

    @AfterEach
    void stop() {
        served.close();
    }

    private String kept(String piece) throws Exception {
        var answer = served.post("/api/shelf", piece);
        assertEquals(201, answer.statusCode(), answer::body);
        return json(answer).path("id").asText();
    }

    private BigDecimal total(String garden) throws Exception {
        return new BigDecimal(json(served.get(garden + "/job-sheet/slip")).path("total").asText());
    }

    @Test
    void aNewPriceListShowsWhatItChangesWhereBeforeItIsTakenAndQuotesKeepTheirs() throws Exception {
        String id = kept(PRICES.formatted("20.00"));
        String one = served.created(GARDEN);
        String quoted = served.created(GARDEN.replace("Yard", "Quoted"));
        served.created(GARDEN.replace("Yard", "Without"));
        for (String garden : List.of(one, quoted))
            assertEquals(200, served.post(garden + "/shelf", "{\"piece\":\"" + id + "\"}", "If-Match", "*").statusCode());
        assertEquals(200, served.patch(quoted, "{\"state\":\"quoted\"}", "If-Match", "*").statusCode());
        BigDecimal before = total(one);
        assertEquals(2, json(served.get("/api/shelf")).at("/pieces/0/gardens").asInt());

        assertEquals(200, served.put("/api/shelf/" + id, PRICES.formatted("23.00"), "If-Match", "\"1\"").statusCode());
        assertEquals(before, total(one)); // nothing changed yet
        JsonNode effect = json(served.get("/api/shelf/" + id + "/gardens?effect=true"));
        assertEquals(2, effect.path("gardens").size());
        JsonNode told = effect.at("/gardens/0/name").asText().equals("Yard") ? effect.at("/gardens/0") : effect.at("/gardens/1");
        assertFalse(told.path("keeps").asBoolean());
        assertEquals(before.toPlainString(), told.at("/variation/before").asText());
        BigDecimal boards = new BigDecimal(told.at("/variation/difference").asText()).divide(new BigDecimal("3.00"));
        assertTrue(boards.signum() > 0 && boards.stripTrailingZeros().scale() <= 0, "each board is 3.00 dearer: " + boards);

        assertTrue(problem(409, served.post(quoted + "/shelf", "{\"piece\":\"" + id + "\"}", "If-Match", "*")).path("detail").asText().contains("keeps its prices"));
        assertEquals(1, json(served.get(quoted)).at("/shelf/0/revision").asInt());
        assertEquals(200, served.post(one + "/shelf", "{\"piece\":\"" + id + "\"}", "If-Match", "*").statusCode());
        assertEquals(told.at("/variation/after").asText(), total(one).toPlainString());
        assertEquals("{\"kind\":\"catalogue\",\"id\":\"" + id + "\",\"revision\":2,\"name\":\"Hill sawmill\"}", json(served.get(one)).at("/shelf/0").toString());
        assertEquals(before, total(quoted));
        assertEquals(200, served.post(quoted + "/shelf", "{\"piece\":\"" + id + "\",\"anyway\":true}", "If-Match", "*").statusCode());
        assertEquals(total(one), total(quoted));
    }

    @Test
    void aGardenSaysWhatItHasAndWhetherItStandsAsItWasTaken() throws Exception {
        String id = kept(PRICES.formatted("20.00"));
        String garden = served.created(GARDEN);
        served.post(garden + "/shelf", "{\"piece\":\"" + id + "\"}", "If-Match", "*");
        served.put("/api/shelf/" + id, PRICES.formatted("21.00").replace("Hill", "Vale"), "If-Match", "*");
        assertEquals("{\"pieces\":[{\"kind\":\"catalogue\",\"id\":\"" + id + "\",\"name\":\"Vale sawmill\",\"revision\":1,\"newest\":2,\"changed\":false}]}", served.get(garden + "/shelf").body());
        served.patch(garden, "{\"catalogue\":{\"examples\":false}}", "If-Match", "*");
        assertTrue(json(served.get(garden + "/shelf")).at("/pieces/0/changed").asBoolean());
        assertEquals(20, json(served.get("/api/shelf/" + id + "?revision=1")).at("/content/sections/0/stock/0/price").asInt());
        served.delete("/api/shelf/" + id);
        assertFalse(json(served.get(garden + "/shelf")).at("/pieces/0").has("newest"));
        assertEquals(0, json(served.get("/api/shelf")).path("pieces").size());
    }

    /** Who comes when is a garden's own, as its first day is; names of people tell whose days they are. */
    @Test
    void aCrewIsTakenWithoutTheDaysOfItsPeople() throws Exception {
        String piece = kept("""
                {"kind":"crew","name":"Three","content":{"start":"2027-03-06","people":[{"name":"Ann","hours":5,"away":["2027-03-13"]},{"name":"Bob","comes":["2027-03-06"]},{"name":"Cy"}]}}""");
        String without = served.created(GARDEN);
        String own = served.created(GARDEN.replaceFirst("\\{", "{\"crew\":{\"start\":\"2027-06-05\",\"people\":[{\"name\":\"Bob\",\"away\":[\"2027-06-06\"]},{\"name\":\"Di\"}]},"));
        for (String garden : List.of(without, own)) assertEquals(200, served.post(garden + "/shelf", "{\"piece\":\"" + piece + "\"}", "If-Match", "*").statusCode(), garden);
        assertEquals("{\"people\":[{\"name\":\"Ann\",\"hours\":5},{\"name\":\"Bob\"},{\"name\":\"Cy\"}]}", json(served.get(without)).path("crew").toString());
        assertEquals("{\"people\":[{\"name\":\"Ann\",\"hours\":5},{\"name\":\"Bob\",\"away\":[\"2027-06-06\"]},{\"name\":\"Cy\"}],\"start\":\"2027-06-05\"}", json(served.get(own)).path("crew").toString());
        assertFalse(json(served.get(own + "/shelf")).toString().contains("\"changed\":true"), "it is as it was taken");
    }

    /** What is a garden's own stays: the client of its quote, the first day of its crew; bed types stand beside each other. */
    @Test
    void everyKindIsTakenAndAWholeFileCarriesIt() throws Exception {
        String garden = served.created(GARDEN.replaceFirst("\\{", "{\"quote\":{\"client\":\"Ms Oakes\"},\"crew\":{\"start\":\"2027-04-03\"},\"types\":[{\"id\":\"S\",\"width\":900,\"depth\":900}],"));
        for (String piece : List.of(
                "{\"kind\":\"quote\",\"name\":\"Usual terms\",\"content\":{\"margin\":18,\"client\":\"nobody\"}}", "{\"kind\":\"crew\",\"name\":\"Two\",\"content\":{\"hours\":6,\"start\":\"2020-01-04\"}}",
                "{\"kind\":\"type\",\"name\":\"Long bed\",\"content\":{\"id\":\"L\",\"width\":3600,\"depth\":1200}}", "{\"kind\":\"access\",\"name\":\"Seated\",\"content\":{\"standard\":\"ada-2010\",\"rim\":\"seated\"}}"))
            assertEquals(200, served.post(garden + "/shelf", "{\"piece\":\"" + kept(piece) + "\"}", "If-Match", "*").statusCode(), piece);
        JsonNode document = json(served.get(garden));
        assertEquals("{\"margin\":18,\"client\":\"Ms Oakes\"}", document.path("quote").toString());
        assertEquals("{\"hours\":6,\"start\":\"2027-04-03\"}", document.path("crew").toString());
        assertEquals(List.of("S", "L"), List.of(document.at("/types/0/id").asText(), document.at("/types/1/id").asText()));
        assertEquals("ada-2010", document.at("/ground/access/standard").asText());
        assertEquals(4, document.path("shelf").size());
        var in = served.post("/api/gardens/file", served.get(garden + "/file").body());
        assertEquals(201, in.statusCode(), in::body);
        assertEquals(document, json(served.get("/api/gardens/" + json(in).path("id").asText())));
        String copy = served.created(GARDEN);
        String id = json(served.get("/api/shelf")).at("/pieces/0/id").asText();
        served.post(copy + "/shelf", "{\"piece\":\"" + id + "\",\"copy\":true}", "If-Match", "*");
        assertFalse(json(served.get(copy)).has("shelf"));
    }

    /** A type of 450 mm leaves no inside between timbers of 100 mm, and does between those of 50: the one garden says why, the other what it would cost. */
    @Test
    void aGardenThatCannotHaveTheNewestHidesNoOther() throws Exception {
        String type = "{\"kind\":\"type\",\"name\":\"Small\",\"content\":{\"id\":\"T\",\"width\":%d,\"depth\":900}}";
        String id = kept(type.formatted(900));
        String garden = "{\"name\":\"%s\",\"catalogue\":{\"sections\":[{\"id\":\"50x150\",\"thickness\":50,\"height\":150,\"stock\":[{\"length\":3000,\"price\":9}]}]},\"types\":[{\"id\":\"T\",\"width\":900,\"depth\":900}],\"beds\":[{\"id\":\"A\",\"type\":\"T\"%s}]}";
        for (String one : List.of(garden.formatted("Thick", ""), garden.formatted("Thin", ",\"section\":\"50x150\"")))
            assertEquals(200, served.post(served.created(one) + "/shelf", "{\"piece\":\"" + id + "\"}", "If-Match", "*").statusCode());
        assertEquals(200, served.put("/api/shelf/" + id, type.formatted(450), "If-Match", "*").statusCode());
        var answer = served.get("/api/shelf/" + id + "/gardens?effect=true");
        assertEquals(200, answer.statusCode(), answer::body);
        for (JsonNode one : json(answer).path("gardens")) {
            boolean thick = one.path("name").asText().equals("Thick");
            assertEquals(thick, one.path("refused").asText().startsWith("Bed A is 450 mm wide; at least 500 mm is needed"), one.toString());
            assertEquals(!thick, one.has("variation"), one.toString());
        }
        assertEquals(2, json(answer).path("gardens").size());
    }

    @Test
    void whoMayOnlyReadChangesNothingOnTheShelf() throws Exception {
        served.close();
        try (Served guarded = new Served(folder, Keys.read(List.of("editor editor-token-0000000000000001", "reader reader-token-0000000000000001")), ShelfHttpTest.class.getClassLoader(), new GardenDesk())) {
            String reader = "Bearer reader-token-0000000000000001";
            assertEquals(200, guarded.get("/api/shelf", "Authorization", reader).statusCode());
            problem(403, guarded.post("/api/shelf", PRICES.formatted("1"), "Authorization", reader));
            problem(401, guarded.get("/api/shelf"));
        }
    }
}
