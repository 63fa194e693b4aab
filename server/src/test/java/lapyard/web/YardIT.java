package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.openqa.selenium.Keys;
import org.openqa.selenium.interactions.Actions;

/** Several beds at once, distances that are typed, walls that are dragged, paths that are drawn. */
@ExtendWith(Open.class)
class YardIT {
    static final String THREE_BEDS = "{\"format\":1,\"name\":\"Row\"," + Page.YARD + ",\"beds\":["
            + "{\"id\":\"A\",\"width\":1200,\"depth\":1200,\"courses\":2,\"at\":[1000,2000]},"
            + "{\"id\":\"B\",\"width\":1800,\"depth\":900,\"courses\":2,\"at\":[4000,2300]},"
            + "{\"id\":\"C\",\"width\":1200,\"depth\":1500,\"courses\":2,\"at\":[9000,2000]}]}";

    static String inHand(Browser browser) {
        return String.valueOf(browser.js("return document.querySelector('lap-yard').garden.choice.beds.join()"));
    }

    /** A place of the yard on the screen, whole pixels from the screen's corner. */
    static int[] pixel(Browser browser, double x, double y) {
        List<?> at = (List<?>) browser.js("const yard = document.querySelector('lap-yard'); const { left, top } = yard.getBoundingClientRect();"
                + " return [left + yard.view.x + arguments[0] * yard.view.k, top + yard.view.y - arguments[1] * yard.view.k]", x, y);
        return new int[] {(int) Math.round(((Number) at.get(0)).doubleValue()), (int) Math.round(((Number) at.get(1)).doubleValue())};
    }

    private static Actions to(Actions actions, int[] pixel) {
        return actions.moveToLocation(pixel[0], pixel[1]);
    }

    @Test
    void severalBedsAreTakenInAFrameMovedSpreadAndDeleted(Page page) throws IOException, InterruptedException {
        String id = page.open(THREE_BEDS);
        Browser browser = page.browser();
        Actions frame = new Actions(browser.driver).keyDown(Keys.SHIFT);
        to(frame, pixel(browser, 500, 1500)).clickAndHold();
        to(frame, pixel(browser, 3000, 3000));
        to(frame, pixel(browser, 6500, 4200)).release().keyUp(Keys.SHIFT).perform();
        assertEquals("A,B", inHand(browser));
        Actions more = new Actions(browser.driver).keyDown(Keys.SHIFT);
        to(more, pixel(browser, 9600, 2700)).click().keyUp(Keys.SHIFT).perform();
        assertEquals("A,B,C", inHand(browser));

        PlacesIT.opens(browser, "beds");
        browser.click("[data-key=\"align front\"]");
        page.storedAt(id, 1, 4000, 2000);
        browser.click("[data-key=\"spread along\"]");
        // 1000 to 10200 is 9200, less 4200 of bed, leaves two rooms of 2500
        page.storedAt(id, 1, 4700, 2000);
        browser.enter("[data-key=\"room along\"]", "1.2 m");
        page.storedAt(id, 1, 3400, 2000);
        page.storedAt(id, 2, 6400, 2000);
        browser.enter("[data-key=\"by away\"]", "1200+95");
        page.storedAt(id, 2, 6400, 3295);
        browser.enter("[data-key=\"all courses\"]", "4");
        assertEquals("4", page.stored(id).at("/beds/2/courses").asText());
        browser.click("[data-key=\"all delete\"]");
        assertEquals(0, page.stored(id).path("beds").size());
        browser.click("[data-key=undo]");
        assertEquals(3, page.stored(id).path("beds").size());
    }

    @Test
    void severalBedsAreDraggedAndTurnedAsOne(Page page) throws IOException, InterruptedException {
        String id = page.open(THREE_BEDS);
        Browser browser = page.browser();
        browser.js("document.querySelector('lap-yard').garden.choice.takeBeds(['A', 'B'])");
        int pixels = (int) Math.round(2 * page.pixelsPerMetre());
        page.drags("A", 0, -pixels, true);
        JsonNode beds = page.stored(id).path("beds");
        assertEquals(300, beds.at("/1/at/1").asDouble() - beds.at("/0/at/1").asDouble(), 0.05);
        assertEquals(2000 + pixels / page.pixelsPerMetre() * 1000, beds.at("/0/at/1").asDouble(), 1);
        assertEquals("A,B", inHand(browser));
        browser.keys("t");
        assertEquals("90", page.stored(id).at("/beds/1/turn").asText());
    }

    @Test
    void keyboardAloneTakesSeveralBedsAndMovesThem(Page page) throws IOException, InterruptedException {
        String id = page.open(THREE_BEDS);
        Browser browser = page.browser();
        page.chooses("A");
        browser.keys(Keys.PAGE_DOWN);
        browser.chord(Keys.ENTER, Keys.SHIFT);
        browser.keys(Keys.ARROW_UP);
        page.storedAt(id, 0, 1000, 2100);
        page.storedAt(id, 1, 4000, 2400);
        browser.chord("a", Keys.CONTROL);
        assertEquals("A,B,C", inHand(browser));
        browser.keys(Keys.ESCAPE);
        assertEquals("", inHand(browser));
    }

    @Test
    void oneBedBecomesABlockWithPathsBetween(Page page) throws IOException, InterruptedException {
        String id = page.open(THREE_BEDS);
        Browser browser = page.browser();
        page.choosesInBeds("A");
        browser.click("[data-key=block]");
        browser.enter("[data-key=\"block columns\"]", "9");
        browser.until("it is not said that the block is too wide", "return document.querySelector('.block .hint').textContent.includes('over the yard')");
        browser.enter("[data-key=\"block columns\"]", "3");
        browser.enter("[data-key=\"block rows\"]", "2");
        browser.enter("[data-key=\"block away\"]", "900");
        browser.click("[data-key=\"block paths\"]");
        browser.click("[data-key=\"block stand\"]");
        JsonNode garden = page.stored(id);
        assertEquals(8, garden.path("beds").size());
        assertEquals("[5800,4100]", garden.at("/beds/7/at").toString());
        assertEquals(3, garden.path("paths").size());
        assertEquals("900", garden.at("/paths/2/width").asText());
        assertEquals(6, inHand(browser).split(",").length);
        browser.click("[data-key=undo]");
        assertEquals(3, page.stored(id).path("beds").size());
    }

    @Test
    void distanceToANeighbourIsTypedOver(Page page) throws IOException, InterruptedException {
        String id = page.open(THREE_BEDS);
        Browser browser = page.browser();
        page.chooses("A");
        assertEquals("1800", browser.find("[data-key=\"gap right\"]").getAttribute("value"));
        browser.enter("[data-key=\"gap right\"]", "600+95");
        page.storedAt(id, 0, 2105, 2000);
        browser.enter("[data-key=\"gap front\"]", "0.5 m");
        page.storedAt(id, 0, 2105, 500);
        browser.type("[data-key=\"gap left\"]", "-20");
        assertTrue(browser.text("[data-key=\"gap field left\"] .note").startsWith("-20 is no distance"));
    }

    @Test
    void wallIsDraggedAndTheBedChangesItsShape(Page page) throws IOException, InterruptedException {
        String id = page.open(THREE_BEDS);
        Browser browser = page.browser();
        page.chooses("A");
        Actions drag = new Actions(browser.driver);
        to(drag, pixel(browser, 2200, 2300)).clickAndHold();
        to(drag, pixel(browser, 2600, 2300));
        to(drag, pixel(browser, 2780, 2300)).release().perform();
        // a path of 1200 before B's face at 4000 draws the wall to 2800
        JsonNode bed = page.stored(id).at("/beds/0");
        assertEquals("1800", bed.path("width").asText());
        assertEquals("1200", bed.path("depth").asText());
        Actions in = new Actions(browser.driver);
        to(in, pixel(browser, 1000, 2300)).clickAndHold();
        to(in, pixel(browser, 1300, 2300));
        to(in, pixel(browser, 1512, 2300)).release().perform();
        bed = page.stored(id).at("/beds/0");
        assertEquals("1300", bed.path("width").asText());
        page.storedAt(id, 0, 1500, 2000);
    }

    @Test
    void pathIsDrawnPressByPress(Page page) throws IOException, InterruptedException {
        String id = page.open(THREE_BEDS);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "paths");
        browser.enter("[data-key=\"path width\"]", "900");
        browser.click("[data-key=\"path draw\"]");
        for (double[] point : new double[][] {{1000, 5010}, {5000, 4990}, {5000, 8000}}) {
            Actions press = new Actions(browser.driver);
            to(press, pixel(browser, point[0], point[1])).click().perform();
        }
        browser.click("[data-key=\"draw done\"]");
        JsonNode path = page.stored(id).at("/paths/0");
        assertEquals("[[1000,5000],[5000,5000],[5000,8000]]", path.path("line").toString());
        assertEquals("900", path.path("width").asText());
        browser.until("the focus does not return", "return document.activeElement.dataset.key === 'path draw'");
        assertEquals(3, page.stored(id).path("beds").size());
    }

    @Test
    void pathIsTypedByKeyboardAlone(Page page) throws IOException, InterruptedException {
        String id = page.open(THREE_BEDS);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "paths");
        browser.send("[data-key=\"path draw\"]", Keys.ENTER);
        browser.until("no place can be typed", "return document.activeElement.dataset.key === 'draw along'");
        browser.keys("0.5 m", Keys.TAB, "4500", Keys.ENTER);
        browser.type("[data-key=\"draw further\"]", "6000");
        browser.send("[data-key=\"draw right\"]", Keys.ENTER);
        browser.type("[data-key=\"draw further\"]", "4' ");
        browser.send("[data-key=\"draw back\"]", Keys.ENTER);
        browser.send("[data-key=\"draw done\"]", Keys.ENTER);
        assertEquals("[[500,4500],[6500,4500],[6500,5719.2]]", page.stored(id).at("/paths/0/line").toString());
        browser.click("[data-key=\"path 0 open\"]");
        browser.click("[data-key=\"path 0 delete\"]");
        assertEquals(0, page.stored(id).path("paths").size());
    }

    @Test
    void whatIsBeingDrawnCanBeLeft(Page page) throws IOException, InterruptedException {
        String id = page.open(THREE_BEDS);
        Browser browser = page.browser();
        page.chooses("A");
        browser.js("document.querySelector('lap-yard').draw({ as: 'outline', name: 'Yard' }).then(points => { window.drawn = points; })");
        browser.until("the bar does not open", "return !document.querySelector('draw-bar').hidden");
        browser.js("window.drawn = 'nothing yet'");
        for (double[] point : new double[][] {{1000, 6000}, {2000, 6000}}) {
            Actions press = new Actions(browser.driver);
            to(press, pixel(browser, point[0], point[1])).click().perform();
        }
        browser.click("[data-key=\"draw done\"]");
        page.says("that points are missing", "1 more wanted");
        browser.keys(Keys.ESCAPE);
        browser.until("it is not given up", "return window.drawn === null && document.querySelector('draw-bar').hidden");
        browser.until("the bed's distances do not come back", "return !document.querySelector('lap-gaps').hidden && !document.querySelector('bed-tag').hidden");
        assertEquals(3, page.stored(id).path("beds").size());
    }

    /** A finger that slides over a bed looks along the yard; the bed is carried once a tap took hold of it. */
    @Test
    void fingerCarriesABedOnlyAfterATapTookHoldOfIt(Page page) throws IOException, InterruptedException {
        String id = page.open(THREE_BEDS);
        Browser browser = page.browser();
        browser.js("document.querySelector('lap-yard').look({ ...document.querySelector('lap-yard').view })");
        double before = ((Number) browser.js("return document.querySelector('lap-yard').view.y")).doubleValue();
        slides(browser, pixel(browser, 1600, 2600), pixel(browser, 1600, 5600));
        assertTrue(((Number) browser.js("return document.querySelector('lap-yard').view.y")).doubleValue() < before - 50, "the yard was not looked along");
        assertEquals("", inHand(browser));
        page.storedAt(id, 0, 1000, 2000);
        touches(browser, "touchStart", new int[][] {pixel(browser, 1600, 2600)});
        touches(browser, "touchEnd", new int[][] {});
        assertEquals("A", inHand(browser));
        slides(browser, pixel(browser, 1600, 2600), pixel(browser, 1600, 5600));
        assertEquals(5000, page.stored(id).at("/beds/0/at/1").asDouble(), 60);
    }

    private static void slides(Browser browser, int[] from, int[] to) {
        touches(browser, "touchStart", new int[][] {from});
        for (int i = 1; i <= 4; i++) touches(browser, "touchMove", new int[][] {{from[0] + (to[0] - from[0]) * i / 4, from[1] + (to[1] - from[1]) * i / 4}});
        browser.drawn();
        touches(browser, "touchEnd", new int[][] {});
    }

    @Test
    void twoFingersComeNearerAndTheBedsStayWhereTheyAre(Page page) throws IOException, InterruptedException {
        String id = page.open(THREE_BEDS);
        Browser browser = page.browser();
        int[] middle = pixel(browser, 6000, 6000);
        double before = page.pixelsPerMetre();
        // the driver's own touches stay down after two fingers and are lost to later tests, so the page is sent pointer events
        browser.js("const [x, y] = arguments; const { svg } = document.querySelector('lap-yard'); svg.setPointerCapture = () => {};"
                + "const send = (type, id, dx) => svg.dispatchEvent(new PointerEvent(type, { bubbles: true, pointerId: id, pointerType: 'touch', button: 0, clientX: x + dx, clientY: y }));"
                + "send('pointerdown', 11, -40); send('pointerdown', 12, 40);"
                + "for (let apart = 50; apart <= 80; apart += 10) { send('pointermove', 11, -apart); send('pointermove', 12, apart); }"
                + "send('pointerup', 11, -80); send('pointerup', 12, 80);", middle[0], middle[1]);
        assertEquals(2 * before, page.pixelsPerMetre(), 0.02 * before);
        page.storedAt(id, 0, 1000, 2000);
    }

    @Test
    void fingersTakeSeveralBedsOneAfterTheOther(Page page) throws IOException, InterruptedException {
        page.open(THREE_BEDS);
        Browser browser = page.browser();
        browser.click("[data-key=several]");
        for (double[] bed : new double[][] {{1600, 2600}, {4900, 2750}}) {
            touches(browser, "touchStart", new int[][] {pixel(browser, bed[0], bed[1])});
            touches(browser, "touchEnd", new int[][] {});
        }
        assertEquals("A,B", inHand(browser));
        browser.click("[data-key=several]");
    }

    static void touches(Browser browser, String type, int[][] points) {
        List<Map<String, Integer>> all = new ArrayList<>();
        for (int i = 0; i < points.length; i++) all.add(Map.of("x", points[i][0], "y", points[i][1], "id", i));
        browser.driver.executeCdpCommand("Input.dispatchTouchEvent", Map.of("type", type, "touchPoints", all));
    }
}
