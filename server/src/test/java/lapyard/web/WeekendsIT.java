package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

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
}
