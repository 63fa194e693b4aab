package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.api.extension.ExtendWith;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.interactions.PointerInput;
import org.openqa.selenium.interactions.Sequence;

/** What a hand expects of a drawing: take hold, carry, turn, copy, paste, a menu, a frame, and nothing drawn that is not so. */
@ExtendWith(Open.class)
class HandsIT {
    private static final List<String> SAMPLES =
            List.of("chapel-corner", "ferry-lane", "lock-keepers-yard", "school-courtyard", "terrace-feet", "three-entries", "village-hall", "allotment-field");

    /** Segments are the board, end to end and to scale, whatever was spoiled or waits: added up for every board of every sample. */
    @Test
    void barsAreTheBoardsOfEverySample(Page page) throws IOException, InterruptedException {
        Browser browser = page.browser();
        browser.size(1440, 900, false);
        for (String sample : SAMPLES) {
            page.show(sample);
            PlacesIT.opens(browser, "saw-day");
            assertEquals("", browser.js("const wrong = []; const [sample] = arguments; const { sheet } = document.querySelector('lap-yard').garden.reckoning;"
                    + "const boards = new Map([...sheet.cutting, ...sheet.strips].flatMap(part => part.boards.map(board => [part.section + board.number, board])));"
                    + "for (const section of document.querySelectorAll('[data-key^=\"saw \"]')) { const name = section.dataset.key?.slice(4);"
                    + " for (const item of section.querySelectorAll('.saw-boards > li')) { const bar = item.querySelector('.bar-board'); const box = bar.getBoundingClientRect();"
                    + " const board = boards.get(name + item.dataset.key.slice(6).split(',')[0]); const k = bar.clientWidth / board.length; let at = 0; let end = box.left + bar.clientLeft;"
                    + " const cuts = [];"
                    + " for (const one of bar.children) { const own = one.getBoundingClientRect(); const mm = Number(one.dataset.mm);"
                    + "  if (Math.abs(own.left - end) > 0.6 || Math.abs(own.width - mm * k) > 0.6) wrong.push(sample + ' ' + item.dataset.key + ' ' + one.className);"
                    + "  if (one.classList.contains('cut')) cuts.push([at, mm].map(Math.round).join());"
                    + "  at += mm; end = own.right; }"
                    + " if (Math.abs(at - board.length) > 0.01) wrong.push(sample + ' ' + item.dataset.key + ' adds up to ' + at);"
                    + " if (cuts.join(' ') !== board.cuts.map(cut => [cut.from, cut.length].map(Math.round).join()).join(' ')) wrong.push(sample + ' ' + item.dataset.key + ' cuts ' + cuts.join(' '));"
                    + " } } return wrong.slice(0, 4).join('; ')", sample), sample);
        }
    }

    @Test
    void deleteStrikesOnlyWhatWasTakenHoldOf(Page page) throws IOException, InterruptedException {
        String id = page.open(YardIT.THREE_BEDS);
        Browser browser = page.browser();
        page.chooses("A");
        browser.keys(Keys.DELETE);
        assertEquals(2, page.stored(id).path("beds").size());
        browser.until("no bed has the focus", "return Boolean(document.activeElement.dataset.bed)");
        browser.keys(Keys.DELETE);
        browser.keys("t");
        page.says("that it is not in hand", "not in hand");
        JsonNode garden = page.stored(id);
        assertEquals(2, garden.path("beds").size());
        assertTrue(garden.at("/beds/0/turn").isMissingNode());
    }

    /** Against the server's own access and clearance checks. */
    @Test
    void firstSuggestedPlaceIsFreeByTheStandard(Page page) throws IOException, InterruptedException {
        Browser browser = page.browser();
        for (String sample : List.of("village-hall", "school-courtyard", "chapel-corner", "ferry-lane")) {
            String id = page.open(page.server().garden(sample).toString());
            browser.js("document.querySelector('lap-yard').pointer.over = null; document.querySelector('lap-yard .plan').focus()");
            browser.keys("b");
            JsonNode garden = page.stored(id);
            String bed = garden.path("beds").get(garden.path("beds").size() - 1).path("id").asText();
            JsonNode ground = page.server().get("api/gardens/" + id + "/job-sheet").path("ground");
            boolean free = !browser.text("#heard").contains("no free place");
            if (!free) continue;
            for (JsonNode keep : ground.path("keepClear")) {
                for (JsonNode near : keep.path("beds")) {
                    if (near.path("bed").asText().equals(bed)) assertTrue(near.path("distance").asDouble() >= keep.path("clearance").asDouble() - 0.5, sample + ": " + keep.path("kind") + " " + near);
                }
            }
            for (JsonNode row : ground.at("/access/rows")) {
                if (row.path("where").asText().matches(".*\\b" + bed + "\\b.*") && row.path("what").asText().contains("gap")) assertTrue(row.path("pass").asBoolean(), sample + ": " + row);
            }
        }
    }

    @Test
    void bedsAreCopiedCutPastedAndDuplicated(Page page) throws IOException, InterruptedException {
        String id = page.open(YardIT.THREE_BEDS);
        Browser browser = page.browser();
        page.chooses("A");
        browser.chord("c", Keys.CONTROL);
        int[] free = YardIT.pixel(browser, 6000, 7000);
        new Actions(browser.driver).moveToLocation(free[0], free[1]).perform();
        browser.chord("v", Keys.CONTROL);
        JsonNode beds = page.stored(id).path("beds");
        assertEquals(4, beds.size());
        assertEquals(5400, beds.at("/3/at/0").asDouble(), 60);
        assertEquals(6400, beds.at("/3/at/1").asDouble(), 60);
        browser.keys("d");
        assertEquals(5, page.stored(id).path("beds").size());
        browser.chord("x", Keys.CONTROL);
        assertEquals(4, page.stored(id).path("beds").size());
        browser.chord("v", Keys.CONTROL);
        assertEquals(5, page.stored(id).path("beds").size());
        browser.chord("z", Keys.CONTROL);
        browser.chord("z", Keys.CONTROL);
        assertEquals(5, page.stored(id).path("beds").size());
    }

    @Test
    void rightButtonOpensAMenuForWhatIsUnderIt(Page page) throws IOException, InterruptedException {
        String id = page.open(YardIT.THREE_BEDS);
        Browser browser = page.browser();
        int[] bed = YardIT.pixel(browser, 4900, 2750);
        new Actions(browser.driver).moveToLocation(bed[0], bed[1]).contextClick().perform();
        browser.until("no menu", "return Boolean(document.querySelector('.menu [data-key=\"menu turn\"]'))");
        assertEquals("B", YardIT.inHand(browser));
        browser.click("[data-key=\"menu turn\"]");
        assertEquals(90, page.stored(id).at("/beds/1/turn").asInt());
        int[] ground = YardIT.pixel(browser, 6000, 7000);
        new Actions(browser.driver).moveToLocation(ground[0], ground[1]).contextClick().perform();
        browser.until("no menu", "return Boolean(document.querySelector('.menu [data-key=\"menu add bed\"]'))");
        browser.keys(Keys.ENTER);
        JsonNode at = page.stored(id).at("/beds/3/at");
        assertTrue(Math.abs(at.get(0).asDouble() - 5000) < 1500 && at.get(1).asDouble() > 6000, at.toString());
        browser.until("the menu stays", "return !document.querySelector('.menu')");
    }

    @Test
    void bedIsTurnedByItsHandle(Page page) throws IOException, InterruptedException {
        String id = page.open(YardIT.THREE_BEDS);
        Browser browser = page.browser();
        page.chooses("B");
        List<?> knob = (List<?>) browser.js("const box = document.querySelector('[data-turn] .knob').getBoundingClientRect(); return [box.left + box.width / 2, box.top + box.height / 2]");
        int[] from = {((Number) knob.get(0)).intValue(), ((Number) knob.get(1)).intValue()};
        int[] middle = YardIT.pixel(browser, 4900, 2750);
        int far = middle[1] - from[1];
        // a quarter to the left is 90 degrees counter-clockwise
        new Actions(browser.driver).moveToLocation(from[0], from[1]).clickAndHold().moveToLocation(middle[0] - far / 2, middle[1] - far).moveToLocation(middle[0] - far, middle[1] + 1).release().perform();
        assertEquals(90, page.stored(id).at("/beds/1/turn").asInt());
    }

    @Test
    void yardIsLookedAlongByTheMiddleButtonAndNearedInEvenStepsAtThePointer(Page page) throws IOException, InterruptedException {
        String id = page.open(YardIT.THREE_BEDS);
        Browser browser = page.browser();
        int[] bed = YardIT.pixel(browser, 1600, 2600);
        PointerInput mouse = new PointerInput(PointerInput.Kind.MOUSE, "mouse");
        Sequence pan = new Sequence(mouse, 0)
                .addAction(mouse.createPointerMove(java.time.Duration.ZERO, PointerInput.Origin.viewport(), bed[0], bed[1]))
                .addAction(mouse.createPointerDown(PointerInput.MouseButton.MIDDLE.asArg()))
                .addAction(mouse.createPointerMove(java.time.Duration.ofMillis(80), PointerInput.Origin.viewport(), bed[0] + 60, bed[1] - 40))
                .addAction(mouse.createPointerMove(java.time.Duration.ofMillis(80), PointerInput.Origin.viewport(), bed[0] + 120, bed[1] - 90))
                .addAction(mouse.createPointerUp(PointerInput.MouseButton.MIDDLE.asArg()));
        browser.driver.perform(List.of(pan));
        browser.drawn();
        int[] then = YardIT.pixel(browser, 1600, 2600);
        assertEquals(120, then[0] - bed[0], 3);
        assertEquals(-90, then[1] - bed[1], 3);
        page.storedAt(id, 0, 1000, 2000);
        double before = page.pixelsPerMetre();
        for (int notch = 1; notch <= 3; notch++) {
            browser.driver.executeCdpCommand("Input.dispatchMouseEvent", Map.of("type", "mouseWheel", "x", then[0], "y", then[1], "deltaX", 0, "deltaY", -100));
            browser.drawn();
            assertEquals(before * Math.pow(1.2, notch), page.pixelsPerMetre(), 0.01 * before);
        }
        int[] after = YardIT.pixel(browser, 1600, 2600);
        assertEquals(then[0], after[0], 2);
        assertEquals(then[1], after[1], 2);
    }

    @Test
    void frameTakesWhatItTouchesAndTheArrowsMoveIt(Page page) throws IOException, InterruptedException {
        String id = page.open(YardIT.THREE_BEDS);
        Browser browser = page.browser();
        int[] from = YardIT.pixel(browser, 1900, 1500);
        int[] to = YardIT.pixel(browser, 4300, 2500);
        new Actions(browser.driver).keyDown(Keys.SHIFT).moveToLocation(from[0], from[1]).clickAndHold().moveToLocation((from[0] + to[0]) / 2, to[1]).moveToLocation(to[0], to[1]).release().keyUp(Keys.SHIFT).perform();
        assertEquals("A,B", YardIT.inHand(browser));
        browser.keys(Keys.ARROW_UP);
        page.storedAt(id, 0, 1000, 2100);
        page.storedAt(id, 1, 4000, 2400);
    }

    @Test
    void whatLiesInTheGroundIsTakenThenDraggedAndDeleted(Page page) throws IOException, InterruptedException {
        String id = page.open("{\"format\":1,\"name\":\"Things\",\"ground\":{\"outline\":[[0,0],[12000,0],[12000,9000],[0,9000]],\"keepClear\":[{\"kind\":\"tap\",\"at\":[9000,6000]}]},"
                + "\"paths\":[{\"id\":\"P1\",\"line\":[[1000,7000],[5000,7000]]}],\"beds\":[]}");
        Browser browser = page.browser();
        drag(browser, new double[] {9000, 6000}, new double[] {8000, 6000});
        assertEquals("[9000,6000]", page.stored(id).at("/ground/keepClear/0/at").toString());
        browser.click("[data-key=whole]");
        browser.until("the yard does not come to rest", "return document.querySelector('lap-yard').camera.whole");
        press(browser, 9000, 6000);
        drag(browser, new double[] {9000, 6000}, new double[] {8000, 5500});
        assertEquals("[8000,5500]", page.stored(id).at("/ground/keepClear/0/at").toString());
        press(browser, 3000, 7000);
        drag(browser, new double[] {3000, 7000}, new double[] {3500, 6500});
        assertEquals("[[1500,6500],[5500,6500]]", page.stored(id).at("/paths/0/line").toString());
        drag(browser, new double[] {5500, 6500}, new double[] {7000, 6500});
        assertEquals("[[1500,6500],[7000,6500]]", page.stored(id).at("/paths/0/line").toString());
        PlacesIT.opens(browser, "ground");
        browser.until("the corners cannot be taken", "return document.querySelectorAll('[data-point^=\"ground outline\"]').length === 4");
        browser.drawn();
        drag(browser, new double[] {12000, 9000}, new double[] {11000, 8500});
        assertEquals("[11000,8500]", page.stored(id).at("/ground/outline/2").toString());
        press(browser, 3000, 6500);
        browser.js("document.querySelector('lap-yard .plan').focus()");
        browser.keys(Keys.DELETE);
        assertEquals(0, page.stored(id).path("paths").size());
    }

    private static void press(Browser browser, double x, double y) {
        int[] at = YardIT.pixel(browser, x, y);
        new Actions(browser.driver).moveToLocation(at[0], at[1]).click().perform();
        browser.drawn();
    }

    private static void drag(Browser browser, double[] from, double[] to) {
        int[] a = YardIT.pixel(browser, from[0], from[1]);
        int[] b = YardIT.pixel(browser, to[0], to[1]);
        new Actions(browser.driver).moveToLocation(a[0], a[1]).clickAndHold().moveToLocation((a[0] + b[0]) / 2, (a[1] + b[1]) / 2).moveToLocation(b[0], b[1]).release().perform();
        browser.drawn();
    }

    @Test
    void aGardenIsDeletedAndBroughtBack(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        browser.click("[data-key=gardens]");
        browser.click("[data-key=\"delete garden\"]");
        browser.until("another garden does not open", "return document.getElementById('page').dataset.garden !== arguments[0]", id);
        page.kept();
        browser.click("[data-key=gardens]");
        choose(browser, "list which", "deleted");
        browser.click("[data-key=\"bring back " + id + "\"]");
        browser.until("it does not come back", "return document.getElementById('page').dataset.garden === arguments[0]", id);
        assertEquals(2, page.stored(id).path("beds").size());
    }

    private static void choose(Browser browser, String key, String value) {
        browser.js("const s = document.querySelector(`[data-key=\"${arguments[0]}\"]`); s.value = arguments[1]; s.dispatchEvent(new Event('change', { bubbles: true }))", key, value);
    }

    /** 130 gardens: the list is a page, more on request; one is found by its client, gets a state, is archived and comes back. */
    @Test
    void aGardenIsFoundAmongManyGetsAStateAndIsArchived(Page page) throws IOException, InterruptedException {
        for (int i = 0; i < 130; i++)
            page.server().stored("{\"name\":\"Many " + (1000 + i) + "\",\"quote\":{\"client\":\"Client no. " + i + "\"},\"beds\":[]}");
        String id = page.open(Page.TWO_BEDS.replace("\"format\":1,", "\"format\":1,\"quote\":{\"client\":\"Ms Oakes\\n4 Mill Lane\"},"));
        Browser browser = page.browser();
        browser.click("[data-key=gardens]");
        browser.until("a page of gardens is not listed", "return document.querySelectorAll('.gardens li').length === 50");
        browser.click("[data-key=\"more gardens\"]");
        browser.until("more are not listed", "return document.querySelectorAll('.gardens li').length === 100");
        browser.js("const i = document.querySelector('[data-key=\"find garden\"]'); i.value = 'OAKES school'; i.dispatchEvent(new Event('input', { bubbles: true }))");
        browser.until("it is not found by its client and name", "return [...document.querySelectorAll('.gardens li')].map(e => e.textContent).join() === 'School yardMs Oakes · Pencilled'");
        int others = page.server().get("api/gardens?state=quoted").path("total").asInt();
        choose(browser, "state", "quoted");
        page.kept();
        assertEquals("quoted", page.stored(id).path("state").asText());
        choose(browser, "list which", "quoted");
        browser.until("it is not found by its state", "return document.querySelectorAll('.gardens li').length === 1");
        browser.click("[data-key=\"archive garden\"]");
        browser.until("another garden does not open", "return document.getElementById('page').dataset.garden !== arguments[0]", id);
        assertEquals(others, page.server().get("api/gardens?state=quoted").path("total").asInt());
        browser.click("[data-key=gardens]");
        choose(browser, "list which", "archived");
        browser.click("[data-key=\"bring back " + id + "\"]");
        browser.until("it does not come back", "return document.getElementById('page').dataset.garden === arguments[0]", id);
        assertEquals(others + 1, page.server().get("api/gardens?state=quoted").path("total").asInt());
    }

    /** A garden of which something is done asks what its copy is: another job, or all of it to be safe. */
    @ParameterizedTest
    @CsvSource({"copy new, false", "copy done, true"})
    void aCopyOfWhatIsHalfBuiltIsAsked(String way, boolean done, Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS.replace("\"format\":1,", "\"format\":1,\"tally\":{\"done\":[{\"task\":\"A.set-out\"}]},"));
        Browser browser = page.browser();
        browser.click("[data-key=gardens]");
        browser.click("[data-key=copy]");
        browser.click("[data-key=\"" + way + "\"]");
        browser.until("the copy does not open", "return document.getElementById('page').dataset.garden !== arguments[0]", id);
        String copy = (String) browser.js("return document.getElementById('page').dataset.garden");
        assertEquals(List.of("School yard, copy", done), List.of(page.stored(copy).path("name").asText(), page.stored(copy).has("tally")));
    }

    /** A4 portrait, as the browser itself prints: the yard's beds, the order with its total, the prices' caution. */
    @Test
    void printedPageHoldsTheYardAndTheWholeOrder(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "rack");
        Object data = browser.driver.executeCdpCommand("Page.printToPDF", Map.of("paperWidth", 8.27, "paperHeight", 11.69)).get("data");
        try (var pdf = Loader.loadPDF(java.util.Base64.getDecoder().decode((String) data))) {
            String text = new PDFTextStripper().getText(pdf);
            JsonNode slip = page.server().get("api/gardens/" + id + "/job-sheet").path("slip");
            for (JsonNode line : slip.path("lines")) assertTrue(text.contains(line.path("label").asText()), line.path("label") + " is not on paper: " + text);
            assertTrue(text.replace(",", "").contains(slip.path("total").asText()), text);
            assertTrue(text.contains("School yard") && text.contains("examples of ours"), text);
        }
        browser.until("what was for paper stays", "return !document.querySelector('.on-paper')");
    }

    @Test
    void slipSaysThatPricesAreExamplesAndThatAPathIsMadeOfNothing(Page page) throws IOException, InterruptedException {
        page.open("{\"format\":1,\"name\":\"Bare path\"," + Page.YARD + ",\"paths\":[{\"id\":\"P1\",\"line\":[[1000,7000],[5000,7000]]}],"
                + "\"beds\":[{\"id\":\"A\",\"width\":2400,\"depth\":1200,\"courses\":3,\"at\":[1000,2000]}]}");
        Browser browser = page.browser();
        assertTrue(browser.text("lap-slip").contains("Prices are examples of ours"));
        assertTrue(browser.text("page-head").contains("example prices"));
        assertTrue(browser.text("lap-slip").contains("Path P1 has no layers"));
        browser.click("[data-key=\"to merchants\"]");
        browser.until("the prices are not in sight", "const field = document.activeElement; const { top, bottom } = field.getBoundingClientRect();"
                + " return field.dataset.key === 'currency' && document.querySelector('[data-key^=\"row price\"]') !== null && top > 0 && bottom < innerHeight");
    }

    /** Codes at every zoom, and no words on others: measured as they are drawn, 60 beds. */
    @Test
    void everyBedIsNamedAtAnyZoomAndNoLabelLiesOnAnother(Page page) throws IOException, InterruptedException {
        Browser browser = page.browser();
        browser.size(1440, 900, false);
        for (String sample : List.of("allotment-field", "village-hall")) {
            page.show(sample);
            for (double factor : new double[] {1, 0.4, 2.2}) {
                browser.js("const yard = document.querySelector('lap-yard'); const { view, frame } = yard; const x = frame.left + frame.width / 2, y = frame.top + frame.height / 2;"
                        + " const f = arguments[0]; yard.look({ k: view.k * f, x: x - (x - view.x) * f, y: y - (y - view.y) * f })", factor);
                assertEquals("", browser.js("const shown = [...document.querySelectorAll('lap-yard .label')].filter(one => getComputedStyle(one).display !== 'none');"
                        + "const boxes = shown.map(one => ({ text: one.textContent, box: one.getBoundingClientRect() }));"
                        + "const wrong = boxes.flatMap((a, i) => boxes.slice(i + 1).filter(b => a.box.left + 2 < b.box.right && b.box.left + 2 < a.box.right && a.box.top + 4 < b.box.bottom && b.box.top + 4 < a.box.bottom).map(b => a.text + ' on ' + b.text));"
                        + "for (const bed of document.querySelectorAll('lap-yard .bed')) if (!shown.some(one => one.parentNode === bed && one.textContent === bed.dataset.bed)) wrong.push(bed.dataset.bed + ' has no name');"
                        + "return wrong.slice(0, 6).join('; ')"), sample + " at " + factor);
            }
        }
    }

    @Test
    void sheetsAreNamedAfterTheGardenAndRevision(Page page) throws IOException, InterruptedException {
        page.open(Page.TWO_BEDS);
        assertEquals("school-yard-r1-plan.pdf", page.browser().driver.findElement(By.cssSelector("[data-key=\"plan.pdf\"]")).getAttribute("download"));
    }
}
