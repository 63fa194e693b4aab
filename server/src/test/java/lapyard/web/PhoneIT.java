package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.Keys;

/** The whole job on a phone, held either way, by real touches alone: every tap lands where a thumb would put it. */
@ExtendWith(Open.class)
class PhoneIT {
    private static void touch(Browser browser, String type, List<Map<String, Object>> points) {
        browser.driver.executeCdpCommand("Input.dispatchTouchEvent", Map.of("type", type, "touchPoints", points));
    }

    /** Brings what the selector finds into sight, as a reader scrolls to it, and touches its middle for so long, ms. */
    private static void tap(Browser browser, String selector, long held) throws InterruptedException {
        browser.find(selector);
        browser.drawn();
        browser.until(selector + " cannot be touched", "const one = document.querySelector(arguments[0]); if (!one) return false; one.scrollIntoView({ block: 'center', inline: 'center', behavior: 'instant' });"
                + " const { left, top, width, height } = one.getBoundingClientRect(); const hit = document.elementFromPoint(left + width / 2, top + height / 2);"
                + " window.spot = [left + width / 2, top + height / 2]; return Boolean(hit) && (one.contains(hit) || hit.contains(one))", selector);
        List<?> spot = (List<?>) browser.js("return window.spot");
        touch(browser, "touchStart", List.of(Map.of("x", spot.get(0), "y", spot.get(1))));
        Thread.sleep(held);
        touch(browser, "touchEnd", List.of());
        browser.drawn();
    }

    private static void tap(Browser browser, String selector) throws InterruptedException {
        tap(browser, selector, 40);
    }

    private static void types(Browser browser, String selector, String text) throws InterruptedException {
        tap(browser, selector);
        browser.until("the touch gives " + selector + " no caret", "return document.activeElement === document.querySelector(arguments[0])", selector);
        browser.js("document.activeElement.select()");
        browser.driver.executeCdpCommand("Input.insertText", Map.of("text", text));
    }

    private static void place(Browser browser, String table, String key) throws InterruptedException {
        if (Boolean.TRUE.equals(browser.js("return document.querySelector('[data-key=\"table ' + arguments[0] + '\"]').getAttribute('aria-expanded') === 'false'", table))) tap(browser, "[data-key=\"table " + table + "\"]");
        tap(browser, "[data-key=\"place " + key + "\"]");
        browser.until(key + " is not open", "return Boolean(document.querySelector('[data-place=\"' + arguments[0] + '\"]')?.checkVisibility())", key);
        browser.drawn();
        assertEquals(browser.js("return innerWidth"), browser.js("return document.documentElement.scrollWidth"), key + " is wider than the phone");
        looked(browser, key);
    }

    /** What a touch does to the garden comes with the click that the browser makes of it. */
    private static void stands(Page page, String what) {
        page.browser().until("not so: " + what, "const { plan } = document.querySelector('lap-yard').garden; return Boolean(" + what + ")");
        page.kept();
    }

    /** A picture for whoever wants to look: {@code -Dlapyard.looks=DIR}. */
    private static void looked(Browser browser, String what) {
        String folder = System.getProperty("lapyard.looks");
        if (folder == null) return;
        try {
            Path into = Files.createDirectories(Path.of(folder));
            Files.write(into.resolve(browser.js("return innerWidth") + "-" + what + ".png"), Base64.getDecoder().decode((String) browser.driver.executeCdpCommand("Page.captureScreenshot", Map.of("format", "png")).get("data")));
        } catch (IOException cannot) {
            throw new java.io.UncheckedIOException(cannot);
        }
    }

    /** With snags and a five-figure order beside it. */
    @ParameterizedTest
    @CsvSource({"360, 740", "390, 844", "844, 390"})
    void nameOfTheGardenIsReadInTheHead(int width, int height, Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS.replace("School yard", "Old smithy orchard").replace("\"courses\":3", "\"courses\":9"));
        Browser browser = page.browser();
        try {
            browser.size(width, height, true);
            page.show(id);
            for (String standing : new String[] {"kept", "away"}) assertEquals("", browser.js("const kept = document.querySelector('.standing'); if (arguments[0] !== 'kept') { kept.className = `standing ${arguments[0]}`;"
                    + " kept.textContent = 'The server cannot be reached. Your changes are kept in this browser and sent when it is back.'; } const name = document.querySelector('h1 button'); const parts = ['h1 button', '.standing', '[data-key=undo]', '[data-key=add]', '.snags', '.total'].map(one => document.querySelector(`page-head ${one}`).getBoundingClientRect());"
                    + " if (name.scrollWidth > name.clientWidth) return `${name.clientWidth} of ${name.scrollWidth} px of the name`;"
                    + " return parts.some((a, i) => a.right > innerWidth || parts.some((b, j) => j > i && a.left < b.right - 1 && b.left < a.right - 1 && a.top < b.bottom - 1 && b.top < a.bottom - 1)) ? JSON.stringify(parts) : ''", standing), standing);
        } finally {
            browser.size(1440, 900, false);
        }
    }

    @ParameterizedTest
    @CsvSource({"390, 844", "844, 390"})
    void wholeJobIsDoneByTouchFromAnEmptyYardToSharing(int width, int height, Page page) throws IOException, InterruptedException {
        String id = page.open(Page.EMPTY);
        Browser browser = page.browser();
        browser.driver.executeCdpCommand("Emulation.setTouchEmulationEnabled", Map.of("enabled", true, "maxTouchPoints", 2));
        try {
            browser.size(width, height, true);
            browser.forget(page.server().address);
            page.show(id);
            looked(browser, "1-empty");
            tap(browser, "p.first button");
            types(browser, "[data-key=\"add width\"]", "2.4 m x 1.2 m");
            looked(browser, "2-add");
            tap(browser, "add-bed button[type=submit]");
            stands(page, "plan.beds.length === 1");
            assertEquals(1200, page.stored(id).at("/beds/0/depth").asInt());
            looked(browser, "3-bed");
            assertEquals("", browser.js("const gaps = document.querySelector('lap-gaps'); const told = [...gaps.querySelectorAll('.lines text')].filter(one => one.checkVisibility()).map(one => one.textContent);"
                    + " const wanted = [...gaps.querySelectorAll('input')].map(one => one.value); return wanted.length && told.join() === wanted.join() ? '' : told + ' for ' + wanted"), "distances of the bed in hand");
            tap(browser, "lap-yard .bed[data-bed=A]", 900);
            browser.until("a held finger opens no menu", "return Boolean(document.querySelector('.menu [data-key=\"menu duplicate\"]'))");
            looked(browser, "3-menu");
            tap(browser, "[data-key=\"menu duplicate\"]");
            stands(page, "plan.beds.length === 2");
            assertEquals(2, page.stored(id).path("beds").size());
            tap(browser, "[data-key=\"let go\"]");
            looked(browser, "4-yard");

            place(browser, "buy", "slip");
            assertTrue(page.total().matches(".*[1-9].*"));
            String number = String.valueOf(browser.js("return document.querySelector('lap-slip .number').dataset.key"));
            tap(browser, "[data-key=\"" + number + "\"]");
            browser.until("the working does not unfold", "return Boolean(document.querySelector('lap-slip .working p'))");
            place(browser, "build", "weekends");
            assertEquals(true, browser.js("return [...document.querySelectorAll('lap-days .parts li')].every(task => Math.abs(task.querySelector('.when').getBoundingClientRect().top - task.querySelector('.what').getBoundingClientRect().top) < 12)"), "a task takes two lines");
            assertTrue(browser.all("lap-days .day").size() > 1);
            place(browser, "build", "tally");
            String piece = "[data-key=\"" + browser.js("return document.querySelector('lap-tally .piece').dataset.key") + "\"]";
            tap(browser, piece);
            browser.until("a tap does not mark it as cut", "return document.querySelector(arguments[0]).matches('.cut')", piece);
            page.kept();
            place(browser, "lay-out", "paths");
            tap(browser, "[data-key=\"path draw\"]");
            for (int[] at : new int[][] {{5, 4}, {6, 4}}) {
                List<?> spot = (List<?>) browser.js("const yard = document.querySelector('lap-yard'); const box = yard.getBoundingClientRect(); return [box.left + box.width * arguments[0] / 10, box.top + box.height * arguments[1] / 10]", at[0], at[1]);
                touch(browser, "touchStart", List.of(Map.of("x", spot.get(0), "y", spot.get(1))));
                touch(browser, "touchEnd", List.of());
                browser.drawn();
            }
            looked(browser, "5-path");
            tap(browser, "[data-key=\"draw done\"]");
            stands(page, "plan.paths?.length === 1 && plan.paths[0].line.length === 2");
            assertEquals(true, browser.js("return document.querySelector('[data-place=paths]').checkVisibility()"), "the table is not back");
            tap(browser, "[data-key=\"path 0 open\"]");
            tap(browser, "[data-key=\"path 0 delete\"]");
            stands(page, "!plan.paths?.length");
            place(browser, "build", "tally");
            String spoiled = "[data-key=\"" + browser.js("return document.querySelectorAll('lap-tally .piece')[2].dataset.key") + "\"]";
            tap(browser, spoiled, 900);
            stands(page, "JSON.stringify(plan.tally).includes('spoiled')");
            assertTrue(page.stored(id).path("tally").toString().contains("spoiled"), page.stored(id).path("tally").toString());
            looked(browser, "5-marked");
            tap(browser, "[data-key=undo]");
            stands(page, "!JSON.stringify(plan.tally).includes('spoiled')");
            assertTrue(!page.stored(id).path("tally").toString().contains("spoiled"));
            assertTrue(page.stored(id).path("tally").toString().contains("\"cut\":[\""));
            place(browser, "share", "people");
            types(browser, "[data-key=\"share label\"]", "Sam at the yard");
            tap(browser, "[data-key=share]");
            browser.until("it is not shared", "return Boolean(document.querySelector('lap-people .token code')?.textContent)");
            looked(browser, "6-shared");
            place(browser, "share", "sheets");
            tap(browser, "[data-key=\"sheet course-cards.pdf\"]");
            assertTrue(WholeJobIT.arrived(browser, ".pdf").startsWith("%PDF-"));
            tap(browser, "[data-key=\"table yard\"]");
            browser.until("the yard is away", "return document.querySelector('lap-yard').checkVisibility({ visibilityProperty: true })");
            page.hasNoComplaints();
        } finally {
            browser.driver.executeCdpCommand("Emulation.setTouchEmulationEnabled", Map.of("enabled", false));
            browser.size(1440, 900, false);
        }
    }

    /** A narrow window is also what a reader has who magnifies: WCAG 2.2, 1.4.10 Reflow. */
    @Test
    void drawingByKeysBringsBackTableAndFocus(Page page) throws IOException, InterruptedException {
        page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        try {
            browser.size(390, 844, false);
            PlacesIT.opens(browser, "paths");
            for (String how : List.of("left", "done")) {
                browser.js("document.querySelector('[data-key=\"path draw\"]').focus()");
                browser.keys(Keys.ENTER);
                browser.until("the place to type has not the focus", "return document.activeElement.dataset.key === 'draw along' && document.activeElement.checkVisibility({ visibilityProperty: true })");
                assertEquals(false, browser.js("return document.querySelector('table-panel').checkVisibility()"), "the table is over the yard");
                assertEquals(false, browser.js("return document.querySelector('table-rail').checkVisibility({ visibilityProperty: true })"), "places that would not be seen are offered");
                if (how.equals("done")) for (String along : List.of("4000", "5000")) browser.keys(along + Keys.TAB + "5000" + Keys.ENTER);
                browser.drawn();
                if (how.equals("done")) browser.click("[data-key=\"draw done\"]");
                else browser.keys(Keys.ESCAPE);
                browser.drawn();
                assertEquals(true, browser.js("return document.querySelector('[data-place=paths]').checkVisibility()"), how + ": the table is not back");
                assertEquals("path draw", browser.js("return document.activeElement.dataset.key"), how);
            }
            stands(page, "plan.paths?.length === 1");
        } finally {
            browser.size(1440, 900, false);
        }
    }
}
