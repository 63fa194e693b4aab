package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.openqa.selenium.WebElement;

/** What the page shows to somebody who opens it. */
@ExtendWith(Open.class)
class FirstLookIT {
    @Test
    void opensOnASmallExampleAndLetsOneChooseAnother(Page page) throws IOException, InterruptedException {
        Browser browser = page.browser();
        String id = page.server().stored(Page.TWO_BEDS);
        browser.forget(page.server().address);
        browser.size(1440, 900, false);
        browser.driver.get("about:blank");
        browser.complaints();
        browser.driver.get(page.server().address.toString());
        browser.until("no garden opens", "return document.getElementById('page')?.dataset.garden === arguments[0]", "chapel-corner");
        page.kept();
        assertEquals("Chapel corner", browser.text("h1"));
        assertTrue(browser.text(".example").contains("This is an example"));

        browser.click("[data-key=gardens]");
        browser.click("[data-key=\"garden " + id + "\"]");
        browser.until("the other garden does not open", "return document.getElementById('page').dataset.garden === arguments[0]", id);
        page.kept();
        assertEquals("School yard", browser.text("h1"));
        assertEquals(2, browser.all("lap-yard [data-bed]").size());
        page.hasNoComplaints();
    }

    @Test
    void drawsBedsToScaleWithTheHouseAtTheFoot(Page page) throws IOException, InterruptedException {
        page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        double perMetre = page.pixelsPerMetre();
        List<WebElement> faces = browser.all("lap-yard .bed .face");
        assertEquals(2.4 * perMetre, faces.get(0).getRect().getWidth(), 3);
        assertEquals(1.2 * perMetre, faces.get(0).getRect().getHeight(), 3);
        assertEquals(5 * perMetre, faces.get(1).getRect().getX() - faces.get(0).getRect().getX(), 3);
        int house = browser.find("lap-yard .house").getRect().getY();
        int front = faces.get(0).getRect().getY() + faces.get(0).getRect().getHeight();
        assertEquals(2 * perMetre, house - front, 3);
    }

    @Test
    void slipStandsWithTheLargestSavingFirstAndItsTotal(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        JsonNode slip = page.server().get("api/gardens/" + id + "/job-sheet").path("slip");
        List<String> items = page.browser().all("lap-slip .lines .item").stream().map(WebElement::getText).toList();
        assertFalse(items.isEmpty());
        assertEquals(slip.path("lines").size(), items.size());
        for (int i = 0; i < items.size(); i++) {
            JsonNode line = slip.path("lines").get(i);
            assertEquals(line.path("label").asText(line.path("item").asText()), items.get(i));
        }
        assertEquals(slip.path("total").asText(), page.total().replaceAll("[^0-9.]", ""));
        String label = page.browser().text("lap-slip .total span");
        assertEquals(slip.path("atLeast").asBoolean() ? "At least" : "Total", label);
    }

    @Test
    void everyNumberOfABedUnfoldsItsWorking(Page page) throws IOException, InterruptedException {
        page.open(Page.TWO_BEDS);
        page.choosesInBeds("A");
        Browser browser = page.browser();
        browser.click("bed-card .number");
        assertTrue(browser.find("bed-card .working .line").getText().contains("="));
        assertEquals("true", browser.find("bed-card .number").getAttribute("aria-expanded"));
        browser.click("bed-card .number");
        assertEquals(0, browser.all("bed-card .working").size());
    }

    @Test
    void pressingACourseShowsThatRingAloneWithLengthsAndRunPastEnds(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        page.chooses("A");
        Browser browser = page.browser();
        PlacesIT.opens(browser, "courses");
        assertEquals(3, browser.all("lap-course-stack .course").size());
        browser.click("[data-key=\"course 1\"]");
        browser.until("the ring is not shown", "return document.querySelectorAll('lap-yard .bed.chosen .timber.lifted').length > 0");
        JsonNode pieces = page.server().get("api/gardens/" + id + "/job-sheet").at("/beds/0/pieces");
        List<String> wanted = new java.util.ArrayList<>();
        pieces.forEach(piece -> {
            if (piece.path("course").asInt() == 1) wanted.add(piece.path("wall").asText() + piece.path("part").asText() + " " + piece.path("length").asInt());
        });
        List<String> shown = browser.all("lap-yard .label.length").stream().map(WebElement::getText).toList();
        assertEquals(wanted, shown);
        assertEquals(4, browser.all("lap-yard .run-past").size());
        assertEquals(4, browser.all("[data-key=\"course pieces\"] tbody tr").size());
        browser.click("[data-key=\"course 1\"]");
        browser.until("the ring is not put back", "return document.querySelectorAll('lap-yard .timber.lifted').length === 0");
        browser.click("[data-key=\"course 2\"]");
        browser.until("the ring is not shown", "return document.querySelectorAll('lap-yard .timber.lifted').length > 0");
        browser.click("[data-key=\"table build\"]");
        browser.drawn();
        assertTrue(browser.all("lap-yard .timber.lifted").size() > 0, "it stays where the yard has all the room");
        PlacesIT.opens(browser, "pegs");
        browser.until("Setting out shows one course alone", "return document.querySelectorAll('lap-yard .timber.lifted').length === 0");
    }

    @Test
    void threadRunsFromASnagToItsPlace(Page page) throws IOException, InterruptedException {
        page.open("{\"format\":1,\"name\":\"Over the edge\"," + Page.YARD
                + ",\"beds\":[{\"id\":\"A\",\"width\":2400,\"depth\":1200,\"courses\":3,\"at\":[10000,2000]}]}");
        Browser browser = page.browser();
        PlacesIT.opens(browser, "snags");
        browser.until("no snag is listed", "return Boolean(document.querySelector('lap-snags li.snag button'))");
        browser.js("document.querySelector('lap-snags li.snag button').focus()");
        browser.until("no thread is drawn", "return Boolean(document.querySelector('red-thread .knot'))");
        WebElement knot = browser.find("red-thread .knot");
        WebElement bed = browser.find("lap-yard [data-bed=A] .face");
        assertTrue(knot.getRect().getX() >= bed.getRect().getX() - 10 && knot.getRect().getX() <= bed.getRect().getX() + bed.getRect().getWidth() + 10);
        browser.js("document.activeElement.blur()");
        browser.until("the thread stays", "return !document.querySelector('red-thread .knot')");
    }

    @Test
    void hostileNamesAreOnlyText(Page page) throws IOException, InterruptedException {
        String hostile = "<script>document.title='taken'</script><img src=x onerror=\\\"document.title='taken'\\\"> \\u202Etfel ot 🌱 " + "x".repeat(150);
        page.open("{\"format\":1,\"name\":\"" + hostile + "\"," + Page.YARD
                + ",\"beds\":[{\"id\":\"A\",\"name\":\"" + hostile.substring(0, 120) + "\",\"width\":2400,\"depth\":1200,\"courses\":3,\"at\":[1000,2000]}]}");
        page.chooses("A");
        Browser browser = page.browser();
        assertTrue(browser.text("h1").startsWith("<script>document.title='taken'</script><img"));
        assertEquals(0, browser.all("#page script, #page img").size());
        assertFalse(browser.driver.getTitle().equals("taken"));
        page.hasNoComplaints();
    }

    @Test
    void planAndSlipAreTakenAlong(Page page) throws IOException, InterruptedException {
        page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        for (String name : List.of("plan.svg", "plan.pdf", "slip.csv")) {
            browser.click("[data-key=\"" + name + "\"]");
            String ending = name.substring(name.indexOf('.'));
            Path file = null;
            for (int tries = 0; file == null && tries < 200; tries++) {
                Thread.sleep(50);
                try (var files = Files.list(browser.downloads)) {
                    file = files.filter(found -> found.toString().endsWith(ending)).findFirst().orElse(null);
                }
            }
            assertTrue(file != null && Files.size(file) > 100, name + " did not come");
            Files.delete(file);
        }
    }

    @Test
    void phoneKeepsTheYardInSightAndNothingRunsOverItsEdge(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        browser.size(360, 740, true);
        page.show(id);
        page.chooses("A");
        assertEquals(360L, browser.js("return document.documentElement.scrollWidth"));
        browser.until("the yard is covered", "const yard = document.querySelector('lap-yard').getBoundingClientRect();"
                + "return yard.top < 90 && yard.height > 500 && document.elementFromPoint(180, 400).closest('lap-yard') !== null");
        browser.size(1440, 900, false);
    }
}
