package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.openqa.selenium.Keys;

/** From an empty page to the plan and the slip in hand, as somebody does it who has a tape and an afternoon. */
@ExtendWith(Open.class)
class WholeJobIT {
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

    private static String comes(Browser browser, String name) throws IOException, InterruptedException {
        browser.click("[data-key=\"" + name + "\"]");
        String ending = name.substring(name.indexOf('.'));
        for (int tries = 0; tries < 600; tries++) {
            Thread.sleep(50);
            try (var files = Files.list(browser.downloads)) {
                Path file = files.filter(found -> found.toString().endsWith(ending)).findFirst().orElse(null);
                if (file == null) continue;
                String text = Files.readString(file);
                Files.delete(file);
                return text;
            }
        }
        throw new AssertionError(name + " did not come");
    }
}
