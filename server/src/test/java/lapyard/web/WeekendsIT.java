package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.openqa.selenium.Keys;

/** The days of work, the tally and the try-out, as somebody uses them. */
@ExtendWith(Open.class)
class WeekendsIT {
    @Test
    void daysFillAndSayWhatIsDone(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "weekends");
        JsonNode weekends = page.server().get("api/gardens/" + id + "/weekends");
        assertEquals((long) weekends.path("days").size(), browser.js("return document.querySelectorAll('lap-days .day').length"));
        browser.click("[data-key=\"day 0\"]");
        assertTrue(browser.text("[data-key=\"day open\"]").contains("cut for weekend 1"));
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
        JsonNode cost = page.server().get("api/gardens/" + id + "/weekends").path("cost");
        assertEquals(4, cost.size());
        assertTrue(browser.text("staging-cost").contains(cost.at("/2/way").asText()));
    }

    @Test
    void aTickIsShownBeforeItIsKept(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        browser.size(360, 740, true);
        PlacesIT.opens(browser, "tally");
        browser.click("[data-key=\"place bed A open\"]");
        browser.click("[data-key=\"tick A.set-out\"]");
        assertTrue(page.stored(id).path("tally").isMissingNode());
        browser.click("[data-key=\"tally show\"]");
        browser.until("the difference is not shown", "return Boolean(document.querySelector('lap-tally .beside'))");
        assertTrue(((Number) browser.js("return document.documentElement.scrollWidth")).intValue() <= 360);
        browser.click("[data-key=\"tally keep\"]");
        assertEquals("A.set-out", page.stored(id).at("/tally/done/0/task").asText());
        browser.size(1440, 900, false);
    }

    @Test
    void aTryOutIsKeptOrLetGo(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "try-out");
        browser.enter("[data-key=\"try value\"]", "2");
        browser.click("[data-key=\"try add\"]");
        browser.click("[data-key=try]");
        browser.until("nothing stands side by side", "return Boolean(document.querySelector('lap-try-out .beside'))");
        assertEquals(3, page.stored(id).at("/beds/0/courses").asInt());
        browser.click("[data-key=\"try keep\"]");
        assertEquals(2, page.stored(id).at("/beds/0/courses").asInt());
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
        JsonNode days = page.server().get("api/gardens/" + id + "/weekends").path("days");
        assertEquals("2027-03-06", days.at("/0/date").asText());
        assertEquals("2027-03-20", days.at("/1/date").asText());
        assertEquals("Ada", days.at("/0/people/0").asText());
        browser.until("the ribbon does not follow", "return document.querySelector('lap-days .day').textContent.includes('6 Mar')");
        browser.size(1440, 900, false);
    }

    /** Over what stands there, as by hand: a field that is emptied first shows what is usual again. */
    private static void writes(Browser browser, String selector, String text) {
        browser.send(selector, Keys.chord(Keys.CONTROL, "a"), text.isEmpty() ? Keys.DELETE : text, Keys.TAB);
    }
}
