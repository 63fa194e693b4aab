package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** A try-out is a state of the whole garden: everything shows it, nothing of it is saved until it is kept. */
@ExtendWith(Open.class)
class TryOutIT {
    private static final String TOTAL = "const { reckoning } = document.querySelector('lap-yard').garden; return reckoning.sheet.slip.total";

    private static void tries(Page page, String bed, int courses) {
        page.browser().click("[data-key=try]");
        page.browser().until("the focus is not in the bar", "return document.activeElement.closest('try-bar') !== null");
        page.chooses(bed);
        page.browser().enter("[data-key=\"tag courses\"]", String.valueOf(courses));
        worked(page);
    }

    private static void worked(Page page) {
        page.browser().until("what is tried is not worked out", "const { reckoning, plans } = document.querySelector('lap-yard')?.garden ?? {}; return reckoning !== undefined && plans.trying && reckoning.stands !== null && reckoning.standing === 'fresh'");
        page.browser().drawn();
    }

    @Test
    void everyPlaceShowsWhatIsTriedAndTheStoreKnowsNothingOfIt(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        Object stood = browser.js(TOTAL);
        tries(page, "A", 1);
        assertNotEquals(stood, browser.js(TOTAL));
        assertTrue(browser.text("try-bar").matches(".*Bed A: 2 courses less, £[0-9.,]+ less.*"), browser.text("try-bar"));
        assertTrue(browser.text("garden-title").contains("Nothing of it is saved"));
        PlacesIT.opens(browser, "slip");
        assertTrue(browser.text("lap-slip").contains("Only tried"));
        assertTrue(browser.all("lap-slip s").size() > 0, "the slip does not show what stood before");
        PlacesIT.opens(browser, "weekends");
        String days = browser.text("lap-days");
        PlacesIT.opens(browser, "load-in");
        browser.until("the delivery does not come", "return document.querySelector('lap-load-in').textContent.length > 100");
        PlacesIT.opens(browser, "sheets");
        assertEquals("true", browser.find("lap-sheets a").getAttribute("aria-disabled"));
        PlacesIT.opens(browser, "tally");
        browser.click("lap-tally .tick");
        page.says("why nothing is marked", "Nothing is marked while you try something");
        browser.click("[data-key=\"try beside\"]");
        browser.until("nothing stands side by side", "return document.querySelectorAll('try-bar .beside tr.changed').length > 1");
        JsonNode stored = page.server().garden(id);
        assertEquals(3, stored.at("/beds/0/courses").asInt());
        assertEquals(true, stored.path("tally").isMissingNode());

        browser.click("[data-key=\"try let go\"]");
        page.kept();
        assertEquals(stood, browser.js(TOTAL));
        assertEquals(3L, browser.js("return document.querySelector('lap-yard').garden.plan.beds[0].courses"));
        PlacesIT.opens(browser, "weekends");
        assertNotEquals(days, browser.text("lap-days"));
        assertEquals("\"1\"", browser.js("return document.querySelector('lap-yard').garden.keeper.revision"));
        page.hasNoComplaints();
    }

    @Test
    void whatIsKeptIsOneStepHoweverManyItWas(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        tries(page, "A", 2);
        page.chooses("B");
        browser.click("[data-key=\"tag turn 90\"]");
        worked(page);
        browser.click("[data-key=\"try keep\"]");
        JsonNode stored = page.stored(id);
        assertEquals(2, stored.at("/beds/0/courses").asInt());
        assertEquals(90, stored.at("/beds/1/turn").asInt());
        assertEquals("\"2\"", browser.js("return document.querySelector('lap-yard').garden.keeper.revision"));
        browser.click("[data-key=undo]");
        stored = page.stored(id);
        assertEquals(3, stored.at("/beds/0/courses").asInt());
        assertTrue(stored.at("/beds/1/turn").isMissingNode());
    }

    @Test
    void reloadForgetsNothingOfWhatIsTriedAndOthersChangesGoIn(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        tries(page, "A", 1);
        browser.driver.navigate().refresh();
        worked(page);
        assertTrue(browser.text("try-bar").contains("Bed A: 2 courses less"), browser.text("try-bar"));
        page.server().changed(id, Page.TWO_BEDS.replace("[6000,2000]", "[6000,4000]"));
        browser.until("the other's change does not come", "return document.querySelector('lap-yard').garden.plan.beds[1].at[1] === 4000");
        worked(page);
        assertEquals(1L, browser.js("return document.querySelector('lap-yard').garden.plan.beds[0].courses"));
        assertEquals(3, page.server().garden(id).at("/beds/0/courses").asInt());
        browser.click("[data-key=\"try keep\"]");
        JsonNode stored = page.stored(id);
        assertEquals(1, stored.at("/beds/0/courses").asInt());
        assertEquals(4000, stored.at("/beds/1/at/1").asInt());
    }

    /** What cannot be built cannot be kept, and says why. */
    @Test
    void whatIsRefusedIsNotKept(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        browser.click("[data-key=try]");
        browser.js("document.querySelector('lap-yard').garden.plans.run(plan => ({ ...plan, paths: [{ id: 'P', line: [[-500, 7000], [6600, 7000]], width: 1200 }] }))");
        browser.until("it is not refused", "return document.querySelector('try-bar').textContent.includes('cannot be built')");
        browser.click("[data-key=\"try keep\"]");
        page.says("why it is not kept", "It cannot be kept");
        assertTrue(page.server().garden(id).path("paths").isMissingNode());
        browser.click("[data-key=\"try let go\"]");
        page.kept();
    }
}
