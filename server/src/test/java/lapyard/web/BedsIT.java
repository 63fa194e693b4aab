package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.openqa.selenium.Keys;

/** Beds are stood, placed, turned, mirrored and deleted, and the store holds what the page shows. */
@ExtendWith(Open.class)
class BedsIT {
    @Test
    void bedIsStoodWithThreeEntriesAndTheSlipFollows(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.EMPTY);
        Browser browser = page.browser();
        browser.click("[data-key=add]");
        browser.click("[data-key=\"add bed\"]");
        browser.type("[data-key=\"add width\"]", "7' 10 1/2\"");
        assertEquals("= 2400.3 mm", browser.text("add-bed length-field .note"));
        browser.type("[data-key=\"add width\"]", "2.4 m");
        browser.type("[data-key=\"add depth\"]", "1200+95");
        browser.type("[data-key=\"add courses\"]", "3");
        browser.click("add-bed button.main");
        JsonNode bed = page.stored(id).at("/beds/0");
        assertEquals(List.of(2400.0, 1295.0, 3.0), List.of(bed.path("width").asDouble(), bed.path("depth").asDouble(), bed.path("courses").asDouble()));
        assertEquals("A", browser.driver.switchTo().activeElement().getAttribute("data-bed"), "the new bed has the focus");
        page.says("where it stands", "Slip: ");
        String first = page.total();

        browser.click("[data-key=add]");
        browser.click("[data-key=\"add bed\"]");
        browser.enter("[data-key=\"add width\"]", "1800 x 900");
        assertEquals("900", browser.find("[data-key=\"add depth\"]").getAttribute("value"));
        browser.click("add-bed button.main");
        assertEquals(2, page.stored(id).path("beds").size());
        assertFalse(first.equals(page.total()), "the slip follows");
        assertTrue(browser.all("lap-slip li.changed s, lap-slip .total s").size() > 0, "before and after are shown");
    }

    @Test
    void wrongEntryIsToldAtItsFieldWithTheAmountAndAWayOut(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.EMPTY);
        Browser browser = page.browser();
        browser.click("[data-key=add]");
        browser.click("[data-key=\"add bed\"]");
        for (String[] wrong : new String[][] {
            {"100", "400 too small"}, {"0", "0 is no width"}, {"-50", "-50 is no width"}, {"1e9", "is no unit of length"},
            {"12140", "140 longer than the yard"}, {"", "Nothing here yet"}, {"1,200", "two ways"}
        }) {
            browser.type("[data-key=\"add width\"]", wrong[0]);
            browser.click("add-bed button.main");
            String note = browser.text("add-bed length-field .note");
            assertTrue(note.contains(wrong[1]), note);
            assertTrue(note.matches("(?s).*(Write|Use) .*"), "a way out in: " + note);
            assertEquals("true", browser.find("[data-key=\"add width\"]").getAttribute("aria-invalid"));
        }
        assertEquals(0, page.stored(id).path("beds").size());
    }

    @Test
    void bedOfSixWallsIsStoodAndItsWallsAreMadeLonger(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.EMPTY);
        Browser browser = page.browser();
        browser.click("[data-key=add]");
        browser.click("[data-key=\"add bed\"]");
        browser.enter("[data-key=\"add width\"]", "3000 x 2400");
        browser.choose("[data-key=\"add shape\"]", "L");
        browser.type("[data-key=\"add part width\"]", "2700");
        browser.type("[data-key=\"add part depth\"]", "900");
        browser.click("add-bed button.main");
        assertTrue(browser.text("add-bed .parts .note").startsWith("200 too large"), "500 must stay of 3000");
        browser.type("[data-key=\"add part width\"]", "1200");
        browser.click("add-bed button.main");
        assertEquals("[[0,0],[3000,0],[3000,1500],[1800,1500],[1800,2400],[0,2400]]", page.stored(id).at("/beds/0/outline").toString());

        PlacesIT.opens(browser, "beds");
        browser.click("[data-key=build]");
        browser.enter("[data-key=\"wall A\"]", "3.3 m");
        assertEquals("[[0,0],[3300,0],[3300,1500],[1800,1500],[1800,2400],[0,2400]]", page.stored(id).at("/beds/0/outline").toString());
        browser.enter("[data-key=\"wall E\"]", "100");
        assertTrue(browser.text("length-field:has([data-key=\"wall E\"]) .note").startsWith("200 too short"));
    }

    @Test
    void bedIsBuiltOtherwiseThanUsual(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        page.choosesInBeds("A");
        Browser browser = page.browser();
        browser.click("[data-key=build]");
        browser.choose("[data-key=\"build base.kind\"]", "open");
        browser.choose("[data-key=\"build liner.wanted\"]", "no");
        browser.click("[data-key=\"seen C\"]");
        JsonNode bed = page.stored(id).at("/beds/0");
        assertEquals("open", bed.path("base").asText());
        assertFalse(bed.path("liner").asBoolean(true));
        assertEquals("[\"A\",\"B\",\"D\"]", bed.path("seen").toString());
        browser.until("the focus is lost", "return document.activeElement.dataset.key === 'seen C'");
        assertEquals("true", browser.js("return String(document.querySelector('bed-build details').open)"));
    }

    @Test
    void bedIsDraggedToItsPlaceAndTakenBack(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        double perMetre = page.pixelsPerMetre();
        int pixels = (int) Math.round(2 * perMetre);
        page.drags("A", pixels, -pixels, true);
        JsonNode at = page.stored(id).at("/beds/0/at");
        assertEquals(1000 + pixels / perMetre * 1000, at.get(0).asDouble(), 1);
        assertEquals(2000 + pixels / perMetre * 1000, at.get(1).asDouble(), 1);
        page.browser().click("[data-key=undo]");
        page.storedAt(id, 0, 1000, 2000);
        page.browser().click("[data-key=redo]");
        assertEquals(at, page.stored(id).at("/beds/0/at"));
    }

    @Test
    void draggedBedComesToRestAgainstANeighbour(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        int pixels = (int) Math.round(2.57 * page.pixelsPerMetre());
        page.drags("A", pixels, 2, false);
        // faces meet at 6000, so A of 2400 begins at 3600; the fronts are in line at 2000
        page.storedAt(id, 0, 3600, 2000);
    }

    @Test
    void pressingTheGroundLetsGo(Page page) throws IOException, InterruptedException {
        page.open(Page.TWO_BEDS);
        page.chooses("A");
        page.drags("B", 0, 0, false);
        page.browser().until("bed B is not chosen", "return document.querySelector('.bed.chosen').dataset.bed === 'B'");
        page.browser().js("const yard = document.querySelector('lap-yard svg'); const at = yard.querySelector('.yard').getBoundingClientRect();"
                + "for (const type of ['pointerdown', 'pointerup']) yard.dispatchEvent(new PointerEvent(type, {bubbles: true, pointerId: 1, button: 0,"
                + " clientX: at.left + 30, clientY: at.top + 30}));");
        page.browser().until("the bed is still held", "return !document.querySelector('.bed.chosen')");
    }

    @Test
    void bedIsMadePlacedTurnedAndDeletedByKeyboardAlone(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.EMPTY);
        Browser browser = page.browser();
        browser.js("document.activeElement.blur()");
        tabTo(browser, "add");
        browser.keys(Keys.ENTER);
        browser.keys(Keys.ENTER);
        browser.keys("2400", Keys.TAB, "1200", Keys.TAB, "2", Keys.ENTER);
        JsonNode at = page.stored(id).at("/beds/0/at");
        double x = at.get(0).asDouble();
        double y = at.get(1).asDouble();
        browser.keys(Keys.ARROW_RIGHT, Keys.ARROW_UP);
        browser.chord(Keys.ARROW_RIGHT, Keys.SHIFT);
        browser.chord(Keys.ARROW_RIGHT, Keys.ALT);
        browser.chord(Keys.ARROW_DOWN, Keys.ALT);
        page.storedAt(id, 0, x + 111, y + 99);
        page.says("the place", "along");

        browser.keys("t");
        assertEquals(90, page.stored(id).at("/beds/0/turn").asInt());
        browser.keys("m");
        assertTrue(page.stored(id).at("/beds/0/mirror").asBoolean());
        browser.chord("t", Keys.SHIFT);
        assertEquals(0, page.stored(id).at("/beds/0/turn").asInt());

        browser.keys(Keys.DELETE);
        assertEquals(0, page.stored(id).path("beds").size());
        page.says("the deletion", "deleted");
        browser.chord("z", Keys.CONTROL);
        assertEquals(1, page.stored(id).path("beds").size());
    }

    private static void tabTo(Browser browser, String key) {
        for (int i = 0; i < 40; i++) {
            browser.keys(Keys.TAB);
            if (key.equals(browser.js("return document.activeElement.dataset.key ?? null"))) return;
        }
        throw new AssertionError("the tab key does not reach " + key);
    }

    @Test
    void placeIsTypedToTheMillimetre(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        page.choosesInBeds("A");
        page.browser().enter("[data-key=\"bed x\"]", "1.234 m");
        page.browser().enter("[data-key=\"bed y\"]", "3001");
        page.storedAt(id, 0, 1234, 3001);
        page.browser().click("[data-key=\"turn 90\"]");
        page.browser().enter("[data-key=\"bed x\"]", "500");
        page.browser().enter("[data-key=\"bed y\"]", "600");
        // turned by 90 the bed reaches 1200 to the left of its origin
        page.storedAt(id, 0, 1700, 600);
    }

    @Test
    void figuresOfABedAreChangedInItsCard(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        page.choosesInBeds("A");
        Browser browser = page.browser();
        browser.enter("[data-key=\"tag width\"]", "3000");
        browser.enter("[data-key=\"tag courses\"]", "4");
        browser.enter("[data-key=\"bed name\"]", "Herbs");
        browser.click("[data-key=\"bed mirror\"]");
        PlacesIT.opens(browser, "stages");
        browser.click("[data-key=\"put stage 2\"]");
        JsonNode bed = page.stored(id).at("/beds/0");
        assertEquals(List.of("3000", "4", "Herbs", "2", "true"),
                List.of(bed.path("width").asText(), bed.path("courses").asText(), bed.path("name").asText(), bed.path("stage").asText(), bed.path("mirror").asText()));
        browser.until("the ribbon does not follow", "return document.querySelector('[data-key=\"stage 2\"] .code[aria-pressed=true]')?.textContent === 'A'");
        PlacesIT.opens(browser, "beds");
        browser.click("[data-key=\"bed copy\"]");
        assertEquals(3, page.stored(id).path("beds").size());
        browser.click("[data-key=\"bed delete\"]");
        assertEquals(2, page.stored(id).path("beds").size());
    }

    @Test
    void bedOfATypeKeepsTheTypeUntilItIsMadeItsOwn(Page page) throws IOException, InterruptedException {
        String id = page.open("{\"format\":1,\"name\":\"Typed\"," + Page.YARD + ",\"types\":[{\"id\":\"T\",\"width\":2400,\"depth\":1200,\"courses\":3}],"
                + "\"beds\":[{\"id\":\"A\",\"type\":\"T\",\"at\":[1000,2000]},{\"id\":\"B\",\"type\":\"T\",\"at\":[1000,5000]}]}");
        page.choosesInBeds("A");
        page.browser().click("[data-key=own]");
        JsonNode bed = page.stored(id).at("/beds/0");
        assertFalse(bed.has("type"));
        assertEquals(2400, bed.path("width").asInt());
        page.browser().enter("[data-key=\"tag width\"]", "2000");
        assertEquals("T", page.stored(id).at("/beds/1/type").asText());
    }

    @Test
    void bedBecomesATypeThatIsStoodAgainAndChangedOnce(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        page.choosesInBeds("A");
        Browser browser = page.browser();
        browser.click("[data-key=\"make type\"]");
        assertEquals("T1", page.stored(id).at("/beds/0/type").asText());
        PlacesIT.opens(browser, "beds");
        browser.click("[data-key=\"type T1 stand\"]");
        assertEquals("T1", page.stored(id).at("/beds/2/type").asText());
        browser.click("[data-key=build]");
        browser.enter("[data-key=\"build courses\"]", "4");
        browser.until("the exception is not shown", "return document.querySelector('[data-key=\"differs C\"]')?.textContent.includes('courses')");
        browser.click("[data-key=\"type T1 edit\"]");
        browser.enter("[data-key=\"type T1 depth\"]", "1500");
        browser.choose("[data-key=\"type T1 lap\"]", "long-wall");
        JsonNode type = page.stored(id).at("/types/0");
        assertEquals(List.of("2400", "1500", "3", "long-wall"),
                List.of(type.path("width").asText(), type.path("depth").asText(), type.path("courses").asText(), type.path("lap").asText()));
        browser.click("[data-key=\"follow C\"]");
        assertFalse(page.stored(id).at("/beds/2").has("courses"));
    }

    @Test
    void entriesSayWhereTheyComeFromAndGoBack(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "beds");
        browser.click("[data-key=usual]");
        browser.enter("[data-key=\"usual fill.freeboard\"]", "80");
        assertEquals("80", page.stored(id).at("/defaults/fill/freeboard").asText());
        page.chooses("A");
        browser.click("[data-key=build]");
        assertEquals("usual in this garden", browser.text("[data-key=\"build fill.freeboard entry\"] .from"));
        browser.enter("[data-key=\"build fill.freeboard\"]", "40");
        browser.enter("[data-key=\"build fill.layers\"]", "70 topsoil, 30 compost");
        JsonNode fill = page.stored(id).at("/beds/0/fill");
        assertEquals("40", fill.path("freeboard").asText());
        assertEquals("soil.compost", fill.at("/layers/1/material").asText());
        browser.type("[data-key=\"build fill.layers\"]", "70 topsoil");
        assertTrue(browser.text("[data-key=\"build fill.layers entry\"] .note").startsWith("30 % missing"));
        browser.click("[data-key=\"build fill.freeboard back\"]");
        assertFalse(page.stored(id).at("/beds/0/fill").has("freeboard"));
    }

    @Test
    void bedIsStoodByTheSidesWalkedRoundIt(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.EMPTY);
        Browser browser = page.browser();
        browser.click("[data-key=add]");
        browser.click("[data-key=\"add bed\"]");
        browser.choose("[data-key=\"add shape\"]", "sides");
        browser.type("[data-key=\"add sides\"]", "3000, 2500, 1000, 800 right");
        assertTrue(browser.text("add-bed .parts .note").contains("left turns"));
        browser.type("[data-key=\"add sides\"]", "3 m, 800, 1000 right, 700, 1000 right, 1000, 1000, 2500");
        browser.send("[data-key=\"add sides\"]", Keys.ENTER);
        JsonNode bed = page.stored(id).at("/beds/0");
        assertEquals(8, bed.path("walls").size());
        assertEquals("right", bed.at("/walls/2/turn").asText());
        PlacesIT.opens(page.browser(), "courses");
        page.browser().until("no course is there", "return document.querySelectorAll('lap-course-stack .course').length === 3");
    }

    /** What a document may say before it is right, by import, undo or another's hand: the page draws what can be drawn. */
    @Test
    void whatIsNoBedOrYardYetIsDrawnWithoutAFault(Page page) throws IOException, InterruptedException {
        page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        for (String change : new String[] {
            "p.beds[0].width = 0", "delete p.beds[0].depth", "delete p.beds[0].width; delete p.beds[0].depth; p.beds[0].type = 'T'",
            "p.beds[0].outline = []", "p.beds[0].outline = [[0, 0], [1000, 0]]", "p.beds[0].outline = [[0, 0], [1000, 0], [1000, 0], [2000, 0]]",
            "p.beds[0].walls = [0, 0, 0, 0].map(length => ({ length }))", "p.beds[0].section = 'oak'", "p.catalogue = { sections: [{ id: '100x200', stock: [] }] }",
            "p.paths = [{ line: [[1000, 0], [1000, 0]] }, { line: [[0, 0], [0, 900], [0, 0]] }, { line: [[0, 0]] }]",
            "p.ground.keepClear = [{ kind: 'gate', hinge: [0, 0] }, { kind: 'gate', hinge: [20000, 0], leaf: 900 }, { kind: 'tree' }]",
            "p.ground = { survey: { walk: [{ length: 0 }, { length: 10, fall: 20 }, { length: 0 }] } }", "p.ground.outline = [[0, 0], [0, 0], [0, 0]]", "p.beds = []; p.ground = {}"
        }) {
            browser.js("document.querySelector('lap-yard').garden.plans.run(plan => { const p = structuredClone(plan); p.beds[0].outline = undefined; " + change + "; return p; })");
            browser.drawn();
            browser.click("[data-key=undo]");
            browser.drawn();
            assertEquals(List.of(), browser.complaints().stream().filter(said -> !said.contains("status of 422")).toList(), change);
        }
    }

    @Test
    void sixSidedBedIsStoodByItsAngles(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.EMPTY.replace("\"beds\"", "\"catalogue\":{\"sections\":[{\"id\":\"150x200\",\"thickness\":150,\"height\":200,\"stock\":[{\"length\":3000,\"price\":30}]}]},\"defaults\":{\"section\":\"150x200\",\"courses\":2},\"beds\""));
        Browser browser = page.browser();
        browser.click("[data-key=add]");
        browser.click("[data-key=\"add bed\"]");
        browser.type("[data-key=\"add width\"]", "500");
        browser.click("add-bed button.main");
        assertTrue(browser.text("add-bed length-field .note").startsWith("100 too small: walls of 150 need 600"), "the garden's own timber is 150 thick");
        assertEquals("", browser.js("const field = document.querySelector('[data-key=\"add width\"]'); field.focus(); const style = getComputedStyle(field); const out = parseFloat(style.outlineOffset) + parseFloat(style.outlineWidth);"
                + " const ring = field.getBoundingClientRect(); const label = field.previousSibling.getBoundingClientRect(); const note = field.nextSibling.getBoundingClientRect();"
                + " return ring.top - out >= label.bottom - 1 && ring.bottom + out <= note.top + 1 ? '' : `${out} round ${ring.top} to ${ring.bottom}, label to ${label.bottom}, note from ${note.top}`"), "the ring round the field");
        browser.choose("[data-key=\"add shape\"]", "sides");
        browser.type("[data-key=\"add sides\"]", "1 m left 60, 1000 l 60, 1000 left 60, 1000 left 60, 1000 left 60, 1000 left 60°");
        browser.send("[data-key=\"add sides\"]", Keys.ENTER);
        JsonNode bed = page.stored(id).at("/beds/0");
        assertEquals(List.of(6, 60, 2), List.of(bed.path("walls").size(), bed.at("/walls/5/turn").asInt(), bed.path("courses").asInt()));
        assertEquals(6, page.server().get("api/gardens/" + id + "/job-sheet").at("/beds/0/pieces").size() / 2);
        page.hasNoComplaints();
    }

    @Test
    void newGardenIsStartedAndCopied(Page page) throws IOException, InterruptedException {
        page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        browser.click("[data-key=gardens]");
        browser.click("[data-key=copy]");
        browser.until("the copy does not open", "return document.querySelector('h1')?.textContent === 'School yard, copy'");
        page.kept();
        browser.click("[data-key=gardens]");
        browser.click("[data-key=start]");
        assertEquals(true, browser.js("const yes = document.querySelector('[data-key=\"ask yes\"]').getBoundingClientRect();"
                + " return yes.bottom <= Math.min(innerHeight, document.querySelector('.garden-menu').getBoundingClientRect().bottom)"), "the form is longer than the window");
        browser.type("[data-key=\"ask name\"]", "Front yard");
        browser.type("[data-key=\"ask width\"]", "24 ft");
        browser.type("[data-key=\"ask depth\"]", "6000");
        browser.click("[data-key=\"ask yes\"]");
        browser.until("the new garden does not open", "return document.querySelector('h1')?.textContent === 'Front yard'");
        String id = (String) browser.js("return document.getElementById('page').dataset.garden");
        assertEquals("[[0,0],[7315.2,0],[7315.2,6000],[0,6000]]", page.stored(id).at("/ground/outline").toString());
    }

    /** The garden at hand is in mm, the new one is said to be in feet: 40' wide, what is typed in mm as deep, timber and saw as in feet, and a path of 4'. */
    @Test
    void aGardenInFeetBeginsWithRoundFigures(Page page) throws IOException, InterruptedException {
        page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        // as "start your own" of an example does
        browser.js("document.querySelector('garden-title').begin()");
        assertEquals(List.of(), browser.js("return [...document.querySelectorAll('garden-title :is(.gardens, .finding, [data-key=copy])')].map(one => one.className)"), "other gardens are beside the new one");
        browser.click("[data-key=\"ask no\"]");
        browser.until("the gardens there are are not listed", "return document.querySelector('ul.gardens li') !== null && document.activeElement.dataset.key === 'start'");
        browser.keys(Keys.ENTER);
        browser.type("[data-key=\"ask name\"]", "Back lot");
        browser.type("[data-key=\"ask depth\"]", "9500");
        for (String units : List.of("imperial", "metric", "imperial")) browser.choose("[data-key=\"ask units\"]", units);
        assertEquals("40'", browser.find("[data-key=\"ask width\"]").getAttribute("value"));
        assertEquals("USD", browser.find("[data-key=\"ask currency\"]").getAttribute("value"));
        browser.type("[data-key=\"ask bed\"]", "8' x 4'");
        browser.click("[data-key=\"ask yes\"]");
        browser.until("the new garden does not open", "return document.querySelector('h1')?.textContent === 'Back lot'");
        String id = (String) browser.js("return document.getElementById('page').dataset.garden");
        JsonNode sheet = page.server().get("api/gardens/" + id + "/job-sheet");
        assertEquals(false, sheet.at("/slip/atLeast").asBoolean(), "something has no price");
        assertEquals("USD", sheet.at("/slip/currency").asText());
        assertEquals("6x6", sheet.at("/cutting/0/section").asText());
        assertEquals("[[0,0],[12192,0],[12192,9500],[0,9500]]", page.stored(id).at("/ground/outline").toString());
        assertEquals("[609.6,609.6]", page.stored(id).at("/beds/0/at").toString());
        // turning lap: 8' less 5 1/2"
        assertEquals(2298.7, sheet.at("/beds/0/pieces/0/length").asDouble());
        PlacesIT.opens(browser, "paths");
        assertEquals("4'", browser.find("[data-key=\"path width\"]").getAttribute("value"));
        page.hasNoComplaints();
    }
}
