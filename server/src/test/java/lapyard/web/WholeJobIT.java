package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.openqa.selenium.Keys;

/** From an empty page to the plan and the slip in hand, as somebody does it who has a tape and an afternoon. */
@ExtendWith(Open.class)
class WholeJobIT {
    /** More than the page has stops of the tab key in any place. */
    private static final int MOST_STOPS = 250;

    @Test
    void gardenIsLaidOutFromNothingAndTakenAlong(Page page) throws IOException, InterruptedException {
        page.open(Page.EMPTY);
        Browser browser = page.browser();
        browser.click("[data-key=gardens]");
        browser.click("[data-key=start]");
        browser.type("[data-key=\"ask name\"]", "Orchard end");
        browser.type("[data-key=\"ask width\"]", "16 m");
        browser.type("[data-key=\"ask depth\"]", "9.5 m");
        browser.click("[data-key=\"ask yes\"]");
        browser.until("the new garden does not open", "return document.querySelector('h1')?.textContent === 'Orchard end'");
        String id = (String) browser.js("return document.getElementById('page').dataset.garden");
        page.kept();

        PlacesIT.opens(browser, "paths");
        browser.click("[data-key=\"path draw\"]");
        browser.type("[data-key=\"draw along\"]", "0.6 m");
        browser.type("[data-key=\"draw away\"]", "4800");
        browser.send("[data-key=\"draw away\"]", Keys.ENTER);
        browser.type("[data-key=\"draw further\"]", "14800");
        browser.click("[data-key=\"draw right\"]");
        browser.click("[data-key=\"draw done\"]");

        browser.click("[data-key=add]");
        browser.click("[data-key=\"add bed\"]");
        browser.type("[data-key=\"add width\"]", "2.4 m x 1.2 m");
        browser.send("[data-key=\"add width\"]", Keys.TAB);
        browser.send("[data-key=\"add courses\"]", Keys.ENTER);
        page.kept();
        PlacesIT.opens(browser, "beds");
        browser.click("[data-key=\"make type\"]");
        browser.click("[data-key=block]");
        browser.enter("[data-key=\"block columns\"]", "3");
        browser.click("[data-key=\"block stand\"]");
        assertEquals(3, page.stored(id).path("beds").size());

        PlacesIT.opens(browser, "rack");
        browser.enter("[data-key=\"rack length\"]", "2600");
        browser.click("[data-key=\"rack it\"]");
        PlacesIT.opens(browser, "saw-day");
        page.kept();

        JsonNode garden = page.stored(id);
        assertEquals(1, garden.path("paths").size());
        assertEquals(1, garden.path("types").size());
        assertEquals("2600", garden.at("/rack/0/length").asText());
        JsonNode slip = page.server().get("api/gardens/" + id + "/job-sheet").path("slip");
        assertEquals(slip.path("total").asText(), page.total().replaceAll("[^0-9.]", ""));
        assertTrue(browser.all("lap-saw-day .cut").size() > 3);

        PlacesIT.opens(browser, "slip");
        assertTrue(comes(browser, "plan.svg").contains("<svg"));
        String csv = comes(browser, "slip.csv");
        for (JsonNode line : slip.path("lines")) assertTrue(csv.contains(line.path("item").asText()), () -> line + " is not in the slip");
        page.hasNoComplaints();
    }

    /** Everything by keys: where the focus has to be, the tab key brings it. */
    @Test
    void wholeJobIsDoneByTheKeyboardAlone(Page page) throws IOException, InterruptedException {
        page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        presses(browser, "gardens");
        presses(browser, "start");
        reaches(browser, "ask name");
        browser.keys("Long strip", Keys.TAB, "9 m", Keys.TAB, "7.5 m");
        presses(browser, "ask yes");
        browser.until("the new garden does not open", "return document.querySelector('h1')?.textContent === 'Long strip'");
        String id = (String) browser.js("return document.getElementById('page').dataset.garden");
        page.kept();

        opensByKeys(browser, "lay-out", "ground");
        presses(browser, "draw outline");
        browser.until("nothing is drawn", "return document.activeElement.dataset.key === 'draw along'");
        browser.keys("0", Keys.TAB, "0", Keys.ENTER);
        goes(browser, "10 m", "right");
        goes(browser, "8 m", "back");
        goes(browser, "9500", "left");
        presses(browser, "draw last");
        goes(browser, "10000", "left");
        presses(browser, "draw done");
        assertEquals("[[0,0],[10000,0],[10000,8000],[0,8000]]", page.stored(id).at("/ground/outline").toString());

        reaches(browser, "the yard", "document.activeElement.matches('lap-yard svg')");
        browser.keys("b");
        browser.until("no bed is added", "return document.activeElement.dataset.bed === 'A'");
        browser.keys("b");
        browser.until("no second bed is added", "return document.activeElement.dataset.bed === 'B'");
        reaches(browser, "tag width");
        browser.keys("1.8 m", Keys.TAB, "90 cm", Keys.TAB);
        reaches(browser, "tag stage");
        browser.keys("2", Keys.ENTER);
        JsonNode garden = page.stored(id);
        assertEquals(List.of(2400, 1800, 900, 2), List.of(garden.at("/beds/0/width").asInt(), garden.at("/beds/1/width").asInt(), garden.at("/beds/1/depth").asInt(), garden.at("/beds/1/stage").asInt()));

        opensByKeys(browser, "buy", "slip");
        JsonNode slip = page.server().get("api/gardens/" + id + "/job-sheet").path("slip");
        reaches(browser, "open slip");
        assertTrue(browser.text("[data-key=\"open slip\"]").replaceAll("[^0-9.]", "").startsWith(slip.path("total").asText()), "the order is not read");
        for (JsonNode line : slip.path("lines")) assertTrue(browser.text("lap-slip").contains(line.path("label").asText()), () -> line + " is not in the order");

        opensByKeys(browser, "build", "weekends");
        assertTrue(browser.text("lap-days").contains("eekend 2"), browser.text("lap-days"));
        opensByKeys(browser, "build", "tally");
        reaches(browser, "a piece", "document.activeElement.matches('lap-tally .piece')");
        browser.keys(" ");
        browser.until("nothing is cut", "return document.activeElement.matches('lap-tally .piece.cut')");
        assertTrue(page.stored(id).path("tally").toString().contains("\"cut\":[\""), "the mark is not stored");

        opensByKeys(browser, "share", "sheets");
        reaches(browser, "sheet plan.pdf");
        browser.keys(Keys.ENTER);
        assertTrue(arrived(browser, ".pdf").startsWith("%PDF-"));
        page.hasNoComplaints();
    }

    private static void goes(Browser browser, String length, String way) {
        reaches(browser, "draw further");
        browser.keys(length);
        presses(browser, "draw " + way);
    }

    private static void opensByKeys(Browser browser, String table, String place) {
        reaches(browser, "table " + table);
        if ("false".equals(browser.js("return document.activeElement.getAttribute('aria-expanded')"))) browser.keys(Keys.ENTER);
        browser.drawn();
        reaches(browser, "place " + place);
        browser.keys(Keys.ENTER);
        browser.until(place + " does not open", "return document.activeElement.dataset.place === arguments[0]", place);
    }

    private static void presses(Browser browser, String key) {
        reaches(browser, key);
        browser.keys(Keys.ENTER);
        browser.drawn();
    }

    private static void reaches(Browser browser, String key) {
        reaches(browser, key, "document.activeElement.dataset.key === '" + key + "'");
    }

    /** By the tab key forwards, round the page at most once. */
    private static void reaches(Browser browser, String what, String there) {
        for (int stops = 0; stops < MOST_STOPS; stops++) {
            if (Boolean.TRUE.equals(browser.js("return " + there))) return;
            browser.keys(Keys.TAB);
        }
        throw new AssertionError("the tab key does not reach " + what);
    }

    private static String comes(Browser browser, String name) throws IOException, InterruptedException {
        browser.click("[data-key=\"" + name + "\"]");
        return arrived(browser, name.substring(name.indexOf('.')));
    }

    static String arrived(Browser browser, String ending) throws IOException, InterruptedException {
        for (int tries = 0; tries < 600; tries++) {
            Thread.sleep(50);
            try (var files = Files.list(browser.downloads)) {
                Path file = files.filter(found -> found.toString().endsWith(ending)).findFirst().orElse(null);
                if (file == null) continue;
                String text = Files.readString(file, StandardCharsets.ISO_8859_1);
                if (text.isEmpty()) continue; // the browser takes the name before it has the file
                Files.delete(file);
                return text;
            }
        }
        throw new AssertionError("no " + ending + " came");
    }
}
