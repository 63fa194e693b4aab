package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** The history, the quote and the sheets, each at its place. */
@ExtendWith(Open.class)
class PaperIT {
    @Test
    void whatChangedIsToldAndAnOldRevisionIsNamedAndBroughtBack(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        page.chooses("A");
        browser.click("[data-key=\"tag turn 90\"]");
        page.kept();
        PlacesIT.opens(browser, "revisions");
        browser.click("[data-key=difference]");
        browser.until("the change is not told", "return document.querySelector('[data-key=\"difference lines\"]')?.textContent.startsWith('bed A')");
        browser.click("[data-key=\"name 1\"]");
        browser.type("[data-key=\"name text 1\"]", "for the saw");
        browser.click("[data-key=\"name yes 1\"]");
        browser.until("the name is not shown", "return document.querySelector('[data-key=\"revision 1\"] em')?.textContent.trim() === 'for the saw'");
        assertEquals("for the saw", page.server().get("api/gardens/" + id + "/revisions").at("/revisions/1/stamp").asText());
        browser.click("[data-key=\"restore 1\"]");
        browser.until("it is not brought back", "return Boolean(document.querySelector('[data-key=\"revision 3\"]'))");
        assertFalse(page.stored(id).at("/beds/0").has("turn"));
        assertTrue(browser.text("[data-key=\"revision 3\"]").contains("brought back from 1"));
        browser.js("document.querySelector('lap-yard').garden.plans.run(plan => ({ ...plan, tally: { done: [{ task: 'A.set-out', day: 0 }] }, beds: plan.beds.slice(0, 1) }))");
        page.kept();
        assertEquals(1, page.stored(id).path("beds").size());
        browser.until("the revision is not listed", "return Boolean(document.querySelector('[data-key=\"revision 4\"]'))");
        browser.click("[data-key=\"restore 1\"]");
        browser.until("nothing is said of the tally", "return document.body.textContent.includes('Revision 1 is back, with what has been done')");
        page.kept();
        assertEquals(2, page.stored(id).path("beds").size());
        assertEquals("A.set-out", page.stored(id).at("/tally/done/0/task").asText(), "what is done stays done");
        page.hasNoComplaints();
    }

    /** While the browser lays out a sheet, the yard has the sheet's size. */
    @Test
    void theYardIsAsItWasAfterThePageWasPrinted(Page page) throws IOException, InterruptedException {
        page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        String look = "const { view, size } = document.querySelector('lap-yard'); return JSON.stringify([view, size])";
        Object before = browser.js(look);
        browser.driver.executeCdpCommand("Page.printToPDF", Map.of());
        browser.drawn();
        browser.drawn();
        assertEquals(before, browser.js(look));
    }

    @Test
    void revisionBecomesAGardenOfItsOwn(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "revisions");
        browser.click("[data-key=\"copy 1\"]");
        browser.until("the copy is not opened", "return location.hash.length > 1 && location.hash !== '#' + arguments[0]", id);
        page.kept();
        String copy = String.valueOf(browser.js("return decodeURIComponent(location.hash.slice(1))"));
        assertEquals(2, page.server().garden(copy).path("beds").size());
    }

    @Test
    void shareIsToldOnceAndTakenBack(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "people");
        browser.type("[data-key=\"share label\"]", "neighbour");
        browser.click("[data-key=share]");
        browser.until("no token is told", "return document.querySelector('lap-people .token code')?.textContent.length > 20");
        assertEquals("neighbour", page.server().get("api/gardens/" + id + "/shares").at("/shares/0/label").asText());
        JsonNode share = page.server().get("api/gardens/" + id + "/shares").at("/shares/0");
        long days = Duration.between(Instant.parse(share.path("made").asText()), Instant.parse(share.path("ends").asText())).toDays();
        assertTrue(days >= 89 && days <= 90, "to the end of the ninetieth day, which a change of the clocks may shorten, not " + days);
        assertTrue(browser.text("lap-people li").contains("until"), browser.text("lap-people li"));
        browser.click("[data-key^=unshare]");
        browser.until("it is still shared", "return !document.querySelector('[data-key^=unshare]') && !document.querySelector('lap-people .token')");
        assertEquals(0, page.server().get("api/gardens/" + id + "/shares").path("shares").size());
    }

    @Test
    void quoteFollowsWorkAndMarginAndAnEmptiedFieldSaysNothing(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "quote");
        browser.click("[data-key=\"work add\"]");
        browser.enter("[data-key=\"work 0 what\"]", "Building");
        browser.enter("[data-key=\"work 0 hours\"]", "10");
        browser.enter("[data-key=\"work 0 rate\"]", "25");
        browser.enter("[data-key=\"quote margin\"]", "20");
        assertEquals(new ObjectMapper().readTree("{\"labour\":[{\"what\":\"Building\",\"hours\":10,\"rate\":25}],\"margin\":20}"), page.stored(id).path("quote"));
        JsonNode quote = page.server().get("api/gardens/" + id + "/job-sheet/quote");
        // 10 h at 25 cost 250; 250 / (1 - 0.20) = 312.50
        assertEquals("312.50", quote.path("lines").get(quote.path("lines").size() - 1).path("price").asText());
        browser.until("the price is not shown", "return document.querySelector('[data-key=\"quote total\"]')?.textContent.replaceAll(',', '').includes(arguments[0])",
                quote.path("price").asText());
        browser.enter("[data-key=\"quote margin\"]", "");
        browser.click("[data-key=\"work 0 off\"]");
        assertEquals("", page.stored(id).path("quote").toString());
        browser.type("[data-key=\"quote margin\"]", "100");
        browser.until("the error is not at the field", "return [...document.querySelectorAll('lap-quote .note.wrong')].some(one => one.textContent.includes('99.9 or less'))");
    }

    @Test
    void variationShowsWhatAChangeDoesToTheOrder(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        page.chooses("B");
        browser.enter("[data-key=\"tag width\"]", "2400");
        page.kept();
        PlacesIT.opens(browser, "quote");
        browser.click("[data-key=variation]");
        JsonNode variation = page.server().get("api/gardens/" + id + "/variation?from=1&to=2");
        browser.until("the difference is not shown", "return document.querySelector('[data-key=\"variation total\"]')?.textContent.replaceAll(',', '').includes(arguments[0])",
                variation.path("difference").asText().replace("-", ""));
        assertTrue(browser.text("lap-quote").contains("Timber 100x200"));
    }

    @Test
    void everySheetIsListedAndOneThatCannotBeDrawnSaysWhatIsMissing(Page page) throws IOException, InterruptedException {
        page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "sheets");
        browser.until("no list", "return document.querySelectorAll('lap-sheets dl.sheets div').length > 10");
        browser.click("[data-key=\"sheet shade.pdf\"]");
        page.says("what is missing", "Give latitude, longitude and a day");
        browser.complaints();
        browser.click("[data-key=\"sheets how\"]");
        browser.choose("[data-key=\"sheets paper\"]", "A2");
        browser.enter("[data-key=\"sheets scale\"]", "1:100");
        browser.click("[data-key=\"layer pegs\"]");
        String address = String.valueOf(browser.js("return document.querySelector('[data-key=\"sheet plan.svg\"]').getAttribute('href')"));
        assertTrue(address.contains("plan.svg?paper=A2&scale=100&layers=") && address.contains("pegs"), address);
        browser.click("[data-key=\"layer pegs\"]");
        browser.click("[data-key=\"sheet plan.svg\"]");
        assertTrue(WholeJobIT.arrived(browser, "-plan.svg").contains("1:100"));
        page.hasNoComplaints();
    }
}
