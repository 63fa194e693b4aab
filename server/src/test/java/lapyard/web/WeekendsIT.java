package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.openqa.selenium.Keys;
import org.openqa.selenium.interactions.Actions;

/** The days of work and the tally, as somebody uses them. */
@ExtendWith(Open.class)
class WeekendsIT {
    @Test
    void daysFillAndSayWhatIsDone(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "weekends");
        JsonNode weekends = page.server().get("api/gardens/" + id + "/job-sheet/weekends");
        assertEquals((long) weekends.path("days").size(), browser.js("return document.querySelectorAll('lap-days .day').length"));
        browser.click("[data-key=\"day 0\"]");
        assertTrue(browser.text("[data-key=\"day open\"]").matches("(?s).*cut for (weekend|stage) 1.*"));
        assertTrue(((Number) browser.js("return document.querySelectorAll('lap-days .day.waits, lap-days .day .fill').length")).intValue() > 0);
        browser.click("[data-key^=\"take A.\"]");
        browser.until("the bed of the task is not taken", "return document.querySelector('lap-yard').garden.choice.bed === 'A'");
    }

    @Test
    void whatSeveralDeliveriesCostIsToldWhenAsked(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "weekends");
        browser.click("[data-key=\"staging cost\"]");
        browser.until("no ways to buy", "return document.querySelectorAll('staging-cost tbody tr').length === 4");
        JsonNode cost = page.server().get("api/gardens/" + id + "/job-sheet/weekends").path("cost");
        assertEquals(4, cost.size());
        assertTrue(browser.text("staging-cost").contains(cost.at("/2/way").asText()));
    }

    /** The day came with the weekends; its pieces and what is bought did not. */
    @Test
    void aTallyOfWhichAPartDidNotComeSaysSo(Page page) throws IOException, InterruptedException {
        page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "weekends");
        browser.until("the days do not come", "return document.querySelector('lap-days .day') !== null");
        browser.js("const fetched = window.fetch; window.fetch = (address, of) => String(address).includes('parts=cutting')"
                + " ? Promise.resolve(new Response('{\"detail\":\"too many requests wait: ask again\"}', { status: 503 })) : fetched(address, of);");
        PlacesIT.opens(browser, "tally");
        browser.until("it is not said", "return document.querySelector('lap-tally').textContent.startsWith('Not worked out yet, the server says: too many requests wait.')");
        assertTrue(browser.text("lap-tally").contains("The day"));
    }

    /** On a phone: a tap is kept at once, survives a reload and is taken back by one press. */
    @Test
    void everyTapOfTheTallyIsKeptAtOnce(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        browser.size(360, 740, true);
        page.show(id);
        PlacesIT.opens(browser, "tally");
        browser.click("[data-key=\"tally beds\"]");
        browser.click("[data-key=\"place bed A open\"]");
        browser.click("[data-key=\"tick A.set-out\"]");
        assertEquals("A.set-out", page.stored(id).at("/tally/done/0/task").asText());
        page.reload();
        assertEquals("A.set-out", page.stored(id).at("/tally/done/0/task").asText());
        browser.click("[data-key=undo]");
        assertTrue(page.stored(id).path("tally").isMissingNode());
        browser.size(1440, 900, false);
    }

    /** All tasks of the first day are ticked one by one; the list stays as it is until the next day is asked for. */
    @Test
    void theListOfTheDayStaysStillUntilThePersonGoesOn(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "tally");
        String list = "return [document.querySelector('lap-tally h3').textContent, ...[...document.querySelectorAll('lap-tally .tick')].map(one => one.dataset.key)].join()";
        Object before = browser.js(list);
        int ticks = browser.all("lap-tally .tick").size();
        assertTrue(ticks > 1, ticks + " tasks on the first day");
        for (int i = 0; i < ticks; i++) {
            browser.all("lap-tally .tick").get(i).click();
            assertEquals(i + 1, page.stored(id).at("/tally/done").size());
            browser.until("the plan is not made anew", "return document.querySelector('lap-yard').garden.reckoning.standing === 'fresh'");
            assertEquals(before, browser.js(list), "after tick " + (i + 1));
        }
        browser.click("[data-key=\"day after\"]");
        assertTrue(!before.equals(browser.js(list)));
        page.hasNoComplaints();
    }

    /** What is left of a board takes its spoiled piece once more: then both lengths and a saw cut each are gone, 10 + 2 (1100 + 4) of 6000 mm. */
    @Test
    void pieceIsSawnAnewFromTheBoardItWasSpoiledOn(Page page) throws IOException, InterruptedException {
        String id = page.open("{\"format\":1,\"name\":\"One bed\"," + Page.YARD + ",\"catalogue\":{\"sections\":[{\"id\":\"100x200\",\"thickness\":100,\"height\":200,\"stock\":[{\"length\":6000,\"price\":40}]}]},"
                + "\"beds\":[{\"id\":\"A\",\"width\":2400,\"depth\":1200,\"courses\":1,\"at\":[1000,2000]}]}");
        Browser browser = page.browser();
        PlacesIT.opens(browser, "tally");
        browser.js("document.querySelector('[data-key=\"piece A-1D\"]').focus()");
        browser.keys("s");
        assertEquals("[\"A-1D\"]", page.stored(id).at("/tally/boards/1/spoiled").toString());
        assertTrue(browser.text("[data-key=\"piece A-1D\"]").contains("spoiled on #2: saw it anew from board 2"), browser.text("[data-key=\"piece A-1D\"]"));
        browser.keys(Keys.ENTER);
        JsonNode board = page.stored(id).at("/tally/boards/1");
        assertEquals("[[\"A-1D\"],1104.0,true]", "[" + board.path("cut") + "," + board.path("lost").asDouble() + "," + board.path("spoiled").isMissingNode() + "]");
        assertEquals(3782, page.server().get("api/gardens/" + id + "/job-sheet").at("/cutting/0/boards/1/rest").asDouble());
        assertTrue(browser.find("[data-key=\"piece A-1D\"]").getDomAttribute("class").contains("cut"));
    }

    /** The first piece of the day is cut, the second is spoiled by a long press: the rest has a new plan everywhere. */
    @Test
    void aDayIsWorkedThroughFromOneScreenAndASpoiledPieceIsPlannedAnew(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        browser.size(390, 844, true);
        page.show(id);
        JsonNode before = page.server().get("api/gardens/" + id + "/job-sheet");
        PlacesIT.opens(browser, "tally");
        double type = ((Number) browser.js("const len = document.querySelector('lap-tally .piece .len'); return parseFloat(getComputedStyle(len).fontSize)")).doubleValue();
        assertTrue(type >= 26, "lengths are " + type + " px");
        assertTrue(((Number) browser.js("return Math.min(...[...document.querySelectorAll('lap-tally .piece')].map(one => one.getBoundingClientRect().height))")).doubleValue() >= 44);
        String cut = String.valueOf(browser.js("return document.querySelectorAll('lap-tally .piece')[0].dataset.key"));
        browser.click("[data-key=\"" + cut + "\"]");
        assertEquals("[\"" + cut.substring(6) + "\"]", page.stored(id).at("/tally/boards/0/cut").toString());
        String other = "";
        for (JsonNode board : before.at("/cutting/0/boards")) {
            if (board.path("cuts").size() > 1 && !board.toString().contains("\"" + cut.substring(6) + "\"")) other = board.at("/cuts/0/mark").asText();
        }
        String spoiled = "piece " + other;
        new Actions(browser.driver).moveToElement(browser.find("[data-key=\"" + spoiled + "\"]")).clickAndHold().pause(java.time.Duration.ofMillis(900)).release().perform();
        JsonNode tally = page.stored(id).path("tally");
        assertTrue(tally.toString().contains("\"spoiled\":[\"" + spoiled.substring(6) + "\"]"), tally.toString());
        JsonNode after = page.server().get("api/gardens/" + id + "/job-sheet");
        assertTrue(browser.text("[data-key=\"" + spoiled + "\"]").contains("saw it anew from board"), browser.text("[data-key=\"" + spoiled + "\"]"));
        int pieces = count(before);
        assertEquals(pieces, count(after));
        PlacesIT.opens(browser, "saw-day");
        Object shown = browser.js("return [...document.querySelectorAll('[data-key^=\"saw 100x200\"] .cut')].reduce((sum, one) => sum + one.title.split(', ').length, 0)");
        assertEquals((long) pieces, shown);
        assertTrue(((Number) browser.js("return document.querySelectorAll('[data-key^=\"saw 100x200\"] .lost').length")).intValue() >= 1, "the spoiled length is not drawn");
        PlacesIT.opens(browser, "slip");
        if (!before.at("/slip/total").equals(after.at("/slip/total"))) {
            assertTrue(browser.all("lap-slip li.changed s").size() > 0, "the slip does not tell before and after");
        }
        browser.size(1440, 900, false);
    }

    /** 32 beds of three courses of four timbers: 384 pieces (arithmetic). */
    @Test
    void ofVeryManyPiecesAFewHundredAreListedUntilAllAreAskedFor(Page page) throws IOException, InterruptedException {
        String beds = IntStream.range(0, 32).mapToObj(i -> "{\"id\":\"B%d\",\"type\":\"T\",\"at\":[%d,%d]}".formatted(i, i % 8 * 4000, i / 8 * 3000)).collect(Collectors.joining(","));
        page.open("{\"name\":\"Many\",\"types\":[{\"id\":\"T\",\"width\":2400,\"depth\":1200,\"courses\":3}],\"beds\":[" + beds + "]}");
        Browser browser = page.browser();
        PlacesIT.opens(browser, "tally");
        for (int day = 0; day < 6 && browser.all("lap-tally ul.pieces").isEmpty(); day++) browser.click("[data-key=\"day after\"]");
        assertEquals(300, browser.all("lap-tally ul.pieces .piece").size());
        assertEquals("Show all 384 pieces", browser.text("[data-key=\"all pieces 1\"]"));
        browser.click("[data-key=\"all pieces 1\"]");
        assertEquals(384, browser.all("lap-tally ul.pieces .piece").size());
        assertTrue(browser.all("[data-key=\"all pieces 1\"]").isEmpty());
    }

    private static int count(JsonNode sheet) {
        int pieces = 0;
        for (JsonNode board : sheet.at("/cutting/0/boards")) pieces += board.path("cuts").size();
        return pieces;
    }

    /** In feet, of 2438.4 mm = 8': one bought board of ten or so is told, what the order no longer has is taken back by a press, and boards that are short are called in feet. */
    @Test
    void whatIsBoughtIsToldInTheGardensMeasuresAndTakenBack(Page page) throws IOException, InterruptedException {
        String id = page.open("""
                {"name":"Feet","units":"imperial","ground":{"outline":[[0,0],[9000,0],[9000,6000],[0,6000]]},"beds":[{"id":"A","width":2400,"depth":1200,"courses":4,"at":[1000,1000]}],
                 "tally":{"boards":[{"board":"#1","stock":"2438.4"}],"bought":[{"item":"timber 100x200","pack":"board of 2438.4","count":1},{"item":"timber 100x200","pack":"board of 9144","count":2}]},
                 "catalogue":{"sections":[{"id":"100x200","thickness":100,"height":200,"stock":[{"length":2438.4,"price":17}]}]}}""");
        Browser browser = page.browser();
        PlacesIT.opens(browser, "tally");
        assertTrue(browser.text("[data-key=\"short 100x200\"]").matches("Buy \\d+ boards of 8' .* for £\\d+\\.00: .*"), browser.text("[data-key=\"short 100x200\"]"));
        browser.click("[data-key=\"tally bought\"]");
        String part = browser.text("[data-key=\"bought timber 100x200 board of 2438.4\"]");
        assertTrue(part.endsWith("board of 8' 1 of them bought"), part);
        String over = browser.text("[data-key=\"bought timber 100x200 board of 9144\"]");
        assertTrue(over.endsWith("2 × board of 30' bought, no longer in the order"), over);
        browser.click("[data-key=\"bought timber 100x200 board of 9144\"]");
        assertEquals(1, page.stored(id).at("/tally/bought").size());
        page.hasNoComplaints();
    }

    @Test
    void whoComesIsSaidByTheKeyboardOnAPhone(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        browser.size(360, 740, true);
        PlacesIT.opens(browser, "weekends");
        browser.send("[data-key=\"crew open crew\"]", Keys.ENTER);
        writes(browser, "[data-key=\"crew holidays\"]", "2027-03-13");
        assertTrue(browser.text("lap-days .crew").contains("first day of work"));
        writes(browser, "[data-key=\"crew holidays\"]", "");
        writes(browser, "[data-key=\"crew start\"]", "2027-03-06");
        writes(browser, "[data-key=\"crew days\"]", "sat");
        writes(browser, "[data-key=\"crew holidays\"]", "2027-03-13");
        writes(browser, "[data-key=\"crew hours\"]", "4");
        browser.send("[data-key=\"crew open people\"]", Keys.ENTER);
        browser.send("[data-key=\"add people\"]", Keys.ENTER);
        writes(browser, "[data-key=\"people 0 name\"]", "Ada");
        browser.choose("[data-key=\"people 1 lifts\"]", "false");
        browser.send("[data-key=\"crew open rates\"]", Keys.ENTER);
        writes(browser, "[data-key=\"rates cut\"]", "6");
        page.kept();
        JsonNode crew = page.stored(id).path("crew");
        assertEquals("{\"start\":\"2027-03-06\",\"days\":[\"sat\"],\"holidays\":[\"2027-03-13\"],\"hours\":4,"
                + "\"people\":[{\"name\":\"Ada\"},{\"name\":\"Helper\",\"lifts\":false}],\"rates\":{\"cut\":6}}", crew.toString());
        assertTrue(((Number) browser.js("return document.documentElement.scrollWidth")).intValue() <= 360);
        JsonNode days = page.server().get("api/gardens/" + id + "/job-sheet/weekends").path("days");
        assertEquals("2027-03-06", days.at("/0/date").asText());
        assertEquals("2027-03-20", days.at("/1/date").asText());
        assertEquals("Ada", days.at("/0/people/0").asText());
        browser.until("the ribbon does not follow", "return document.querySelector('lap-days .day').textContent.includes('6 Mar')");
        String first = page.server().get("api/gardens/" + id + "/job-sheet/weekends").at("/tasks/0/id").asText();
        browser.js("document.querySelector('lap-yard').garden.plans.run(plan => ({ ...plan, tally: { done: [{ task: arguments[0], day: 7 }] } }))".replace("arguments[0]", "'" + first + "'"));
        writes(browser, "[data-key=\"crew start\"]", "2027-02-27");
        page.kept();
        assertEquals("14", page.stored(id).at("/tally/done/0/day").asText(), "a tick keeps its date");
        browser.size(1440, 900, false);
    }

    /** Over what stands there, as by hand: a field that is emptied first shows what is usual again. */
    private static void writes(Browser browser, String selector, String text) {
        browser.send(selector, Keys.chord(Keys.CONTROL, "a"), text.isEmpty() ? Keys.DELETE : text, Keys.TAB);
    }
}
