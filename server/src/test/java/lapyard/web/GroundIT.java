package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.nio.file.Files;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;

/** The ground is entered on the page, and the store holds what was typed. */
@ExtendWith(Open.class)
class GroundIT {
    private static void opens(Page page, String place, int width, int height) {
        page.browser().size(width, height, width < 500);
        PlacesIT.opens(page.browser(), place);
    }

    private static void unfolds(Page page, String section) {
        page.browser().js("document.querySelector('details[data-section=\"' + arguments[0] + '\"]').open = true", section);
        page.browser().drawn();
    }

    private static void chooses(Page page, String key, String value) {
        page.browser().js(
                "const select = document.querySelector('[data-key=\"' + arguments[0] + '\"]'); select.value = arguments[1];"
                        + "select.dispatchEvent(new Event('change', {bubbles: true}))",
                key, value);
        page.browser().drawn();
    }

    private static void presses(Page page, String key) {
        page.browser().js("document.querySelector('[data-key=\"' + arguments[0] + '\"]').click()", key);
        page.browser().drawn();
    }

    /** By keys alone, as on a small screen the sticky yard lies over what is scrolled under it. */
    private static void enters(Page page, String key, String text) {
        page.browser().js("const field = document.querySelector('[data-key=\"' + arguments[0] + '\"]'); field.focus(); field.select()", key);
        page.browser().keys(text, Keys.TAB);
        page.browser().drawn();
    }

    @ParameterizedTest
    @CsvSource({"1440,900", "360,740"})
    void theYardIsTapedInThreeWays(int width, int height, Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        opens(page, "ground", width, height);
        chooses(page, "ground way", "tapes");
        JsonNode survey = page.stored(id).at("/ground/survey");
        assertEquals(4, survey.path("corners").size());
        assertEquals(15000, survey.at("/corners/2/first").asDouble(), "3-4-5: 12000 and 9000");
        enters(page, "corners 2 second", "9100");
        assertEquals(9100, page.stored(id).at("/ground/survey/corners/2/second").asDouble());
        presses(page, "add checks");
        enters(page, "checks 0 taped", "15200");
        page.browser().until("the check tape is not told", "return document.querySelector('lap-snags')?.textContent.includes('longer than drawn')"
                + " || document.querySelector('lap-ground').garden.reckoning.sheet.snags.some(snag => /longer than drawn/i.test(snag.text))");
        chooses(page, "ground way", "walk");
        assertEquals(4, page.stored(id).at("/ground/survey/walk").size());
        enters(page, "walk 0 length", "12084");
        page.browser().until("the closing error is not told", "return document.querySelector('lap-ground [data-section=outline] .told').textContent.includes('closing error')");
        chooses(page, "ground way", "drawn");
        assertEquals(4, page.stored(id).at("/ground/outline").size());
        assertTrue(page.stored(id).at("/ground/survey").isMissingNode());
        page.hasNoComplaints();
    }

    /** As on the plan's sheet: 300 to either side of a drain, all along it, and nothing inside its bend. */
    @Test
    void whatADrainKeepsClearIsDrawnAllAlongIt(Page page) throws IOException, InterruptedException {
        page.open(Page.EMPTY.replace("\"outline\"", "\"keepClear\":[{\"kind\":\"drain\",\"line\":[[1000,1000],[9000,1000],[9000,8000]],\"clearance\":300}],\"outline\""));
        String taken = "const band = document.querySelector('lap-yard .keep-clear .clearance'); const line = document.querySelector('lap-yard .keep-clear .clear');"
                + " const at = (x, y) => new DOMPoint(x, -y); return [[5000, 1290], [5000, 1310], [9290, 5000], [9310, 5000], [6000, 4000]].map(([x, y]) => band.isPointInStroke(at(x, y)) && getComputedStyle(band).vectorEffect === 'none')"
                + ".concat(line.getAttribute('fill') !== 'none' && line.isPointInFill(at(6000, 2000)))";
        assertEquals(List.of(true, false, true, false, false, false), page.browser().js(taken));
    }

    @ParameterizedTest
    @CsvSource({"1440,900", "360,740"})
    void everythingAboutTheGroundIsEntered(int width, int height, Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS.replace("\"beds\"", "\"paths\":[{\"id\":\"P1\",\"line\":[[4700,500],[4700,8500]]}],\"beds\""));
        opens(page, "ground", width, height);
        for (String section : new String[] {"surfaces", "levels", "keepClear", "preparation", "rims", "access"}) {
            unfolds(page, section);
        }
        presses(page, "add surfaces");
        presses(page, "add levels");
        enters(page, "levels 2 drop", "100");
        presses(page, "add keepClear");
        enters(page, "keepClear 0 clearance", "250");
        enters(page, "keepClear 0 at", "5000, 7000");
        presses(page, "add keepClear");
        chooses(page, "keepClear 1 kind", "gate");
        enters(page, "keepClear 1 hinge", "0, 6000");
        chooses(page, "preparation soft", "strip");
        presses(page, "add rims");
        chooses(page, "access standard", "ada-2010");
        page.kept();
        page.browser().until("access is not held against the standard",
                "return document.querySelector('[data-section=access] .told').textContent.includes('pass')");
        // "Give it layers" leads to the field itself
        PlacesIT.opens(page.browser(), "snags");
        page.browser().until("no way to the layers", "document.querySelector('lap-snags [data-key=all][aria-expanded=false], lap-snags [data-key=all]:not([aria-expanded])')?.click();"
                + " const way = [...document.querySelectorAll('lap-snags button')].find(one => one.textContent.startsWith('Give it layers')); way?.click(); return Boolean(way)");
        page.browser().until("the layers of the path are not asked for", "return document.activeElement.dataset.key === 'paths 0 layers'");
        enters(page, "paths 0 layers", "sub-base 75; gravel 40");
        assertEquals(0L, page.browser().js("return document.querySelectorAll('lap-paths fieldset, lap-paths [data-key^=\"add \"]').length"), "a path is one of a list beside itself");
        PlacesIT.opens(page.browser(), "sun");
        enters(page, "sun latitude", "52");
        enters(page, "sun longitude", "-1.5");
        presses(page, "add tall");
        enters(page, "tall 0 height", "2 m");
        JsonNode stored = page.stored(id);
        assertEquals("grass", stored.at("/ground/surfaces/0/kind").asText());
        assertEquals(100, stored.at("/ground/levels/2/drop").asDouble());
        assertEquals(250, stored.at("/ground/keepClear/0/clearance").asDouble());
        assertEquals(5000, stored.at("/ground/keepClear/0/at/0").asDouble());
        assertEquals(900, stored.at("/ground/keepClear/1/leaf").asDouble());
        assertEquals("gravel", stored.at("/paths/0/layers/1/material").asText());
        assertEquals("strip", stored.at("/ground/preparation/soft").asText());
        assertEquals("A", stored.at("/ground/rims/0/beds/0").asText());
        assertEquals("ada-2010", stored.at("/ground/access/standard").asText());
        assertEquals(-1.5, stored.at("/ground/sun/longitude").asDouble());
        assertEquals(2000, stored.at("/ground/tall/0/height").asDouble());
        presses(page, "follow sun");
        page.browser().until("no hours", "return document.querySelector('lap-sun .told table') !== null");
        assertTrue((Boolean) page.browser().js("return document.documentElement.scrollWidth <= innerWidth"), "nothing runs off the screen");
        page.hasNoComplaints();
    }

    @Test
    void bedsArePeggedFromTheHouseWall(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        opens(page, "pegs", 1440, 900);
        presses(page, "house wall");
        assertEquals(12000, page.stored(id).at("/ground/baseline/to/0").asDouble());
        page.browser().until("the pegs do not come", "return document.querySelectorAll('lap-pegs [data-pegs]').length === 2");
        String first = page.browser().text("lap-pegs [data-pegs=A] tbody tr");
        assertEquals("P1100020002236.111180.3", first, "along, off and the tapes from both ends");
        enters(page, "baseline standOff", "400");
        assertEquals(400, page.stored(id).at("/ground/baseline/standOff").asDouble());
        page.hasNoComplaints();
    }

    @Test
    void wrongEntriesAreToldAtTheirField(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        opens(page, "ground", 1440, 900);
        enters(page, "ground outline", "0, 0; 12000");
        assertTrue(page.browser().text("lap-ground count-field .note").startsWith("Place 2"));
        assertEquals(4, page.stored(id).at("/ground/outline").size(), "the yard stays as it was");
    }

    @Test
    void yardComesFromADrawingOnceItsUnitIsSaid(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.EMPTY);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "ground");
        browser.click("[data-key=\"section file\"]");
        browser.driver.findElement(By.cssSelector("[data-key=\"site file\"]")).sendKeys(java.nio.file.Path.of("src/test/resources/exchange/yard-of-lines-r12.dxf").toAbsolutePath().toString());
        browser.until("its layers are not shown", "return document.querySelectorAll('site-file tbody tr').length === 2");
        browser.click("[data-key=\"site take\"]");
        browser.until("the unit is not asked for", "return document.querySelector('site-file').textContent.includes('Choose the unit first')");
        browser.js("const s = document.querySelector('[data-key=\"site unit\"]'); s.value = 'm'; s.dispatchEvent(new Event('change', { bubbles: true }))");
        browser.until("its size is not shown", "return document.querySelector('site-file').textContent.includes('12400 by 9100 mm')");
        String inFeet = "document.querySelector('lap-yard').garden.plans.run(plan => ({ ...plan, units: arguments0 })); document.querySelector('site-file').render()";
        browser.js(inFeet.replace("arguments0", "'imperial'"));
        browser.until("its size is not shown in feet", "return document.querySelector('site-file').textContent.includes(arguments[0])", "40' 8 3/16\" by 29' 10 1/4\"");
        browser.js(inFeet.replace("arguments0", "undefined"));
        browser.click("[data-key=\"site take\"]");
        browser.until("it is not taken", "return document.querySelectorAll('site-file tbody tr').length === 0");
        assertEquals(6, page.stored(id).at("/ground/outline").size());
        assertEquals(3, page.stored(id).at("/ground/levels").size());
        browser.click("[data-key=undo]");
        assertEquals(4, page.stored(id).at("/ground/outline").size());
    }

    /** A3 lying, ISO 216: 420 x 297 mm, as points of 1/72 inch. */
    @Test
    void firstPageOfAPdfLiesUnderTheYard(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "ground");
        browser.js("document.querySelector('[data-section=picture]').open = true");
        Path plan = browser.downloads.resolve("plan.pdf");
        Path none = browser.downloads.resolve("none.pdf");
        try (PDDocument document = new PDDocument()) {
            document.addPage(new PDPage(new PDRectangle(1190.55f, 841.89f)));
            document.save(plan.toFile());
            Files.writeString(none, "%PDF-1.7 and no more");
            browser.find("[data-key=\"picture file\"]").sendKeys(none.toString());
            browser.until("it is not refused", "return document.querySelector('site-picture .wrong')?.textContent.includes('cannot be read as a PDF')");
            browser.find("[data-key=\"picture file\"]").sendKeys(plan.toString());
            browser.until("no picture lies there", "return document.querySelector('lap-yard image') !== null");
        } finally {
            Files.deleteIfExists(plan);
            Files.deleteIfExists(none);
        }
        JsonNode picture = page.stored(id).at("/ground/picture");
        assertEquals(12000, picture.path("width").asInt());
        assertEquals(8485.7, picture.path("height").asDouble(), 10); // 12000 x 297 / 420
        browser.complaints();
    }
}
