package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** In a yard without signal: the browser's network is cut and the server killed, so that the worker reaches nothing either. */
@ExtendWith(Open.class)
class WithoutSignalIT {
    private static void network(Browser browser, boolean on) {
        browser.driver.executeCdpCommand("Network.enable", Map.of());
        browser.driver.executeCdpCommand("Network.emulateNetworkConditions", Map.of("offline", !on, "latency", 0, "downloadThroughput", -1, "uploadThroughput", -1));
    }

    @Test
    void theGardenOpenLastIsWorkedOnAndMergedWhenTheNetIsBack(Page page) throws IOException, InterruptedException {
        assumeTrue(RunningServer.isOurs(), "only a server of our own can be killed");
        String id = page.open(Page.TWO_BEDS.replace("\"ground\":{", "\"ground\":{\"baseline\":{\"from\":[0,0],\"to\":[12000,0]},"));
        Browser browser = page.browser();
        browser.until("the worker does not come", "return navigator.serviceWorker.controller !== null || (navigator.serviceWorker.ready.then(() => {}), false)");
        page.reload();
        browser.until("the garden is not kept", "if (window.looked === undefined) { window.looked = false; caches.open('lapyard-gardens').then(cache => cache.keys()).then(keys => { window.looked = keys.some(one => one.url.endsWith('kept/' + arguments[0])) ? true : undefined; }); } return window.looked === true", id);
        browser.until("the sheets are not fetched ahead", "if (window.sheets === undefined) { window.sheets = false; caches.open('lapyard-sheets').then(cache => cache.keys()).then(keys => {"
                + " const names = keys.map(one => one.url); window.sheets = ['/job-sheet', 'api/sheets', 'weekends.pdf', 'course-cards.pdf', 'saw-day.pdf', 'setting-out.pdf', 'load-in.pdf', 'job-sheet/pegs', 'job-sheet/loads'].every(name => names.some(url => url.endsWith(name) && (name === 'api/sheets' || url.includes(arguments[0])))) ? true : undefined; }); }"
                + " return window.sheets === true", id);
        page.server().kill();
        network(browser, false);
        try {
            browser.driver.navigate().refresh();
            browser.until("the page does not open", "return document.getElementById('page')?.dataset.garden === arguments[0]", id);
            assertEquals(2, browser.all("lap-yard [data-bed]").size());
            for (String place : new String[] {"saw-day", "weekends", "courses", "tally"}) {
                PlacesIT.opens(browser, place);
                browser.until(place + " shows nothing", "return document.querySelector('[data-place=\"' + arguments[0] + '\"]').textContent.length > 80", place);
            }
            PlacesIT.opens(browser, "saw-day");
            assertTrue(browser.all(".bar-board .cut").size() > 3);
            PlacesIT.opens(browser, "sheets");
            for (String sheet : new String[] {"weekends.pdf", "course-cards.pdf", "saw-day.pdf", "setting-out.pdf", "load-in.pdf"}) {
                browser.click("[data-key=\"sheet " + sheet + "\"]");
                assertTrue(WholeJobIT.arrived(browser, ".pdf").startsWith("%PDF-"), sheet);
            }
            PlacesIT.opens(browser, "pegs");
            browser.until("the pegs are not there", "return document.querySelectorAll('[data-pegs] tbody tr').length === 8");
            PlacesIT.opens(browser, "load-in");
            browser.until("the deliveries are not there", "return document.querySelectorAll('[data-key^=\"drop \"]').length > 0 && document.querySelector('lap-load-in').textContent.includes('reached last')");
            PlacesIT.opens(browser, "tally");
            String piece = String.valueOf(browser.js("return document.querySelector('lap-tally .piece').dataset.key"));
            browser.click("[data-key=\"" + piece + "\"]");
            browser.until("it is not marked", "return document.querySelector('lap-tally .piece.cut') !== null");
            browser.driver.navigate().refresh();
            browser.until("the mark is lost", "return document.querySelector('lap-tally .piece.cut') !== null");
            browser.until("it is not said that the server cannot be reached", "return document.querySelector('garden-title').textContent.includes('cannot be reached')");

            page.server().start();
            ObjectNode theirs = (ObjectNode) page.server().garden(id);
            theirs.putObject("tally").putArray("done").addObject().put("task", "A.set-out");
            page.server().changed(id, theirs.toString());
        } finally {
            network(browser, true);
        }
        browser.until("it is not sent", "const { keeper } = document.querySelector('lap-yard').garden; return keeper.standing === 'kept'");
        JsonNode tally = page.stored(id).path("tally");
        assertEquals("A.set-out", tally.at("/done/0/task").asText());
        assertTrue(tally.toString().contains("\"cut\":[\""), tally.toString());
        browser.complaints();
    }
}
