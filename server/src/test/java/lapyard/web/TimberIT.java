package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.openqa.selenium.Keys;

/** Boards on hand, what the saw does with them, the rolls, snags that stay, and lengths in feet. */
@ExtendWith(Open.class)
class TimberIT {
    @Test
    void boardsAreRackedChangedAndChalked(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "rack");
        browser.enter("[data-key=\"rack length\"]", "2750");
        browser.enter("[data-key=\"rack count\"]", "2");
        browser.click("[data-key=\"rack it\"]");
        assertEquals("{\"id\":\"K1\",\"section\":\"100x200\",\"length\":2750,\"count\":2}", page.stored(id).at("/rack/0").toString());
        browser.until("no piece is chalked on the rack", "return document.querySelectorAll('lap-rack .chalked').length > 0");

        browser.click("[data-key=\"board 0 open\"]");
        browser.enter("[data-key=\"board 0 bad\"]", "1180-1260, 0-150");
        browser.choose("[data-key=\"board 0 faces\"]", "1");
        browser.click("[data-key=\"board 0 coated\"]");
        JsonNode board = page.stored(id).at("/rack/0");
        assertEquals("[[0,150],[1180,1260]]", board.path("bad").toString());
        assertEquals("1", board.path("goodFaces").asText());
        assertTrue(board.path("coated").asBoolean());
        assertTrue(browser.text("[data-key=\"board 0 open\"]").contains("sound 1030 and 1490"));
        browser.type("[data-key=\"board 0 bad\"]", "2700-2800");
        assertTrue(browser.text("[data-key=\"board 0\"] .wide .note.wrong").startsWith("50 mm beyond the end"));
        browser.enter("[data-key=\"board 0 bad\"]", "");
        browser.click("[data-key=\"board 0 off\"]");
        assertEquals(0, page.stored(id).path("rack").size());
    }

    @Test
    void everyPieceOfTheJobSheetIsOnABoardOfTheSawDay(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "saw-day");
        JsonNode sheet = page.server().get("api/gardens/" + id + "/job-sheet");
        int pieces = StreamSupport.stream(sheet.at("/cutting/0/boards").spliterator(), false).mapToInt(board -> board.path("cuts").size()).sum();
        Object shown = browser.js("return [...document.querySelectorAll('[data-key^=\"saw 100x200\"] .cut')].reduce((sum, cut) => sum + cut.title.split(', ').length, 0)");
        assertEquals((long) pieces, shown);
        assertTrue((Boolean) browser.js("return [...document.querySelectorAll('.bar-board .kerf')].every(cut => cut.getBoundingClientRect().width >= 1)"), "a saw cut is too thin to be seen");
        browser.click("[data-key=\"saw settings\"]");
        long settings = StreamSupport.stream(sheet.at("/cutting/0/batches/stages").spliterator(), false).mapToLong(stage -> stage.path("settings").size()).sum();
        assertEquals(settings, browser.js("return document.querySelectorAll('[data-key^=\"saw 100x200\"] .settings li').length"));
        browser.click("[data-key=\"saw boards\"]");
        browser.click("[data-key^=\"cut B-1\"]");
        browser.until("the bed of the piece is not taken", "return document.querySelector('lap-yard').garden.choice.bed === 'B'");
    }

    /** Of many boards the browser draws those in sight only; all are there to find and to read out. */
    @Test
    void boardsOutOfSightAreNotDrawn(Page page) throws IOException, InterruptedException {
        String beds = IntStream.range(0, 24).mapToObj(i -> "{\"id\":\"K" + i + "\",\"width\":" + (1810 + 37 * i) + ",\"depth\":" + (910 + 13 * i) + ",\"at\":[" + 3500 * (i % 6) + "," + 2500 * (i / 6) + "]}")
                .collect(Collectors.joining(","));
        page.open("{\"format\":1,\"name\":\"Many boards\",\"beds\":[" + beds + "]}");
        Browser browser = page.browser();
        PlacesIT.opens(browser, "saw-day");
        String seen = "const drawn = [...document.querySelectorAll('.saw-boards > li > p')].map(one => one.checkVisibility({ contentVisibilityAuto: true }));";
        browser.until("all or none are drawn", seen + "return drawn[0] && drawn.length > 20 && !drawn.at(-1)");
        browser.js("[...document.querySelectorAll('.saw-boards > li')].at(-1).scrollIntoView()");
        browser.until("the last is not drawn", seen + "return drawn.at(-1)");
    }

    @Test
    void everyPieceOfLinerLiesOnARoll(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "rolls");
        JsonNode rolls = page.server().get("api/gardens/" + id + "/job-sheet").at("/rolls/0/result/rolls");
        int placed = StreamSupport.stream(rolls.spliterator(), false).mapToInt(roll -> roll.path("placed").size()).sum();
        assertEquals(placed, browser.all("[data-key=\"rolls liner\"] .piece").size());
    }

    @Test
    void snagIsAcceptedWithAReasonAndTakenBack(Page page) throws IOException, InterruptedException {
        String id = page.open("{\"format\":1,\"name\":\"Over the edge\"," + Page.YARD
                + ",\"beds\":[{\"id\":\"A\",\"width\":2400,\"depth\":1200,\"courses\":3,\"at\":[10000,2000]}]}");
        Browser browser = page.browser();
        PlacesIT.opens(browser, "snags");
        String where = browser.find("lap-snags li.snag .where").getText();
        browser.click("lap-snags li.snag .accept button");
        browser.click("lap-snags form.accept button.main");
        assertTrue(browser.text("lap-snags form.accept .note").startsWith("Nothing here yet"));
        browser.type("lap-snags form.accept input", "Sam: the hedge goes");
        browser.click("lap-snags form.accept button.main");
        JsonNode accepted = page.stored(id).at("/accepted/0");
        assertEquals(where, accepted.path("where").asText());
        assertEquals("Sam: the hedge goes", accepted.path("reason").asText());
        browser.until("it is still a snag", "return ![...document.querySelectorAll('lap-snags li.snag .where')].some(one => one.textContent === arguments[0])", where);
        browser.click("[data-key^=accepted]");
        assertFalse(page.stored(id).has("accepted"));
        browser.until("it is no snag again", "return [...document.querySelectorAll('lap-snags li.snag .where')].some(one => one.textContent === arguments[0])", where);
    }

    @Test
    void lengthsAreShownInFeetAndNothingStoredChanges(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        page.chooses("A");
        browser.click("[data-key=gardens]");
        browser.choose("[data-key=units]", "imperial");
        assertEquals("imperial", page.stored(id).path("units").asText());
        assertEquals("7' 10 1/2\"", browser.find("[data-key=\"tag width\"]").getAttribute("value"));
        assertEquals("2400", page.stored(id).at("/beds/0/width").asText());
        browser.enter("[data-key=\"tag depth\"]", "4' + 6\"");
        assertEquals("1371.6", page.stored(id).at("/beds/0/depth").asText());
        browser.click("[data-key=add]");
        browser.click("[data-key=\"add bed\"]");
        assertTrue(browser.text("add-bed .usual").startsWith("Timber 4x8, "), browser.text("add-bed .usual"));
        browser.keys(Keys.ESCAPE);
        browser.click("[data-key=gardens]");
        browser.choose("[data-key=units]", "metric");
        assertFalse(page.stored(id).has("units"));
        assertEquals("1371.6", browser.find("[data-key=\"tag depth\"]").getAttribute("value"));
    }
}
