package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.openqa.selenium.interactions.Actions;

/** Places open at their tables beside the yard, never over it, and what is pressed in them is not lost when they are drawn anew. */
@ExtendWith(Open.class)
class PlacesIT {
    private static final String SHOWN = "return [...document.querySelectorAll('.place')].filter(one => one.checkVisibility()).map(one => one.dataset.place).join()";

    /** What a wet glove would miss: a number's working and a drawn piece are as large as their line and their board. */
    private static final String SMALL = "return [...document.querySelectorAll('#page button, #page a, #page input, #page select, #page textarea, #page summary')]"
            + ".filter(one => one.checkVisibility({ visibilityProperty: true }) && !one.matches('.number, .cut, [type=range], [data-key=gardens]'))"
            + ".filter(one => { const tick = one.type === 'checkbox'; const box = (tick ? one.closest('label') : one).getBoundingClientRect();"
            + " return box.height < 43.5 || !tick && one.matches('input, select, textarea') && parseFloat(getComputedStyle(one).fontSize) < 16; }).map(one => one.outerHTML.slice(0, 90)).slice(0, 3).join()";

    private static final String ALL = "return document.querySelector('table-rail').places.all.map(one => one.key + ':' + (one.table ?? '')).join()";

    /** Every place that is there, in its order. */
    static List<String> keys(Browser browser) {
        return Stream.of(all(browser)).map(one -> one.split(":")[0]).toList();
    }

    private static String[] all(Browser browser) {
        return String.valueOf(browser.js(ALL)).split(",");
    }

    /** By the table and its tab, as by hand. */
    /** What a press changes is drawn once it has ended. */
    private static void shows(Browser browser, String key) {
        browser.until("not the one place shown: " + key, SHOWN + " === arguments[0]", key);
    }

    static void opens(Browser browser, String key) {
        if (!key.equals(browser.js(SHOWN))) {
            String table = Stream.of(all(browser)).filter(one -> one.startsWith(key + ":")).findFirst().orElseThrow().substring(key.length() + 1);
            if (table.isEmpty()) {
                browser.click("[data-key=\"open " + key + "\"]");
            } else {
                if (Boolean.TRUE.equals(browser.js("return document.querySelector('[data-key=\"table ' + arguments[0] + '\"]').getAttribute('aria-expanded') === 'false'", table))) {
                    browser.click("[data-key=\"table " + table + "\"]");
                }
                browser.click("[data-key=\"place " + key + "\"]");
            }
        }
        browser.until("place " + key + " is not shown", "return Boolean(document.querySelector('[data-place=\"' + arguments[0] + '\"]')?.checkVisibility())", key);
        browser.until("what " + key + " shows does not come", "const { reckoning } = document.querySelector('lap-yard').garden;"
                + " return reckoning.problem !== null || reckoning.standing === 'away' || !reckoning.lacks(reckoning.shown.asked.parts)");
        browser.drawn();
    }

    @Test
    void everyPlaceIsOnePressFromTheNextAndTheYardStaysInSight(Page page) throws IOException, InterruptedException {
        page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        page.chooses("A");
        assertTrue(keys(browser).size() >= 17, keys(browser).toString());
        for (String key : keys(browser)) {
            opens(browser, key);
            assertEquals(key, browser.js(SHOWN));
            assertTrue((Boolean) browser.js("const yard = document.querySelector('lap-yard'); const { left, top } = yard.getBoundingClientRect(); const { width, height } = yard.frame;"
                    + "return width > 300 && height > 200 && [[.1, .1], [.5, .5], [.9, .9]].every(([x, y]) =>"
                    + " document.elementFromPoint(left + width * x, top + height * y).closest('lap-yard, bed-tag, lap-gaps'))"), "the yard is covered by " + key);
        }
    }

    @Test
    void closedPlaceGivesTheFocusBackAndEachTableRemembersItsLast(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        opens(browser, "rack");
        browser.until("the focus is not in the place", "return document.activeElement.dataset.place === 'rack'");
        browser.click("[data-key=\"close rack\"]");
        browser.until("the focus is lost", "return document.activeElement.dataset.key === 'table buy'");
        shows(browser, "");
        browser.click("[data-key=\"table build\"]");
        browser.click("[data-key=\"table buy\"]");
        shows(browser, "rack");
        page.show(id);
        shows(browser, "rack");
    }

    @Test
    void placeFillsThePhonesScreenAndTheYardIsOnePressAway(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        for (int[] screen : new int[][] {{360, 740}, {844, 390}}) {
            browser.size(screen[0], screen[1], true);
            page.show(id);
            for (String key : keys(browser)) {
                opens(browser, key);
                assertEquals(key, browser.js(SHOWN));
                assertEquals((long) screen[0], browser.js("return document.documentElement.scrollWidth"), key);
                double width = ((Number) browser.js("return document.querySelector('[data-place=\"' + arguments[0] + '\"]').getBoundingClientRect().width", key)).doubleValue();
                assertTrue(width >= 320, key + " is " + width + " wide");
                assertEquals("", browser.js(SMALL), key + " has targets under 44 px or fields under 16 px");
                assertEquals("", browser.js("const all = document.querySelector('[data-place=\"' + arguments[0] + '\"]'); return [all, ...all.querySelectorAll('*')].filter(one => one.checkVisibility()"
                        + " && !one.closest('svg, input, select') && one.scrollWidth > one.clientWidth + 2 && !['auto', 'scroll', 'hidden'].includes(getComputedStyle(one).overflowX) && getComputedStyle(one).display !== 'inline')"
                        + ".map(one => one.outerHTML.slice(0, 120)).slice(0, 2).join()", key), key + " is wider than the phone");
            }
            browser.click("[data-key=\"table yard\"]");
            shows(browser, "");
            assertTrue((Boolean) browser.js("return document.querySelector('lap-yard').checkVisibility({ visibilityProperty: true })"));
        }
        browser.size(1440, 900, false);
    }

    /** The page is drawn anew between the press and the release, as when the job sheet comes in. */
    @Test
    void pressIsNotLostWhenThePageIsDrawnAnewInTheMiddleOfIt(Page page) throws IOException, InterruptedException {
        page.open(Page.TWO_BEDS);
        page.chooses("A");
        Browser browser = page.browser();
        for (String key : List.of("number slip timber 100x200", "tag turn 90", "place rack")) {
            String selector = "[data-key^=\"" + key + "\"]";
            browser.js("window.pressed = 0; document.querySelector(arguments[0]).addEventListener('click', () => window.pressed++)", selector);
            new Actions(browser.driver).moveToElement(browser.find(selector)).clickAndHold().perform();
            browser.js("const { garden } = document.querySelector('lap-yard'); garden.plans.run(plan => ({ ...plan, name: plan.name + '.' }))");
            page.kept();
            new Actions(browser.driver).release().perform();
            assertEquals(1L, browser.js("return window.pressed"), key);
        }
    }
}
