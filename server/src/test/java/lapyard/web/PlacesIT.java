package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.openqa.selenium.interactions.Actions;

/** Places open beside the yard, never over it, and what is pressed in them is not lost when they are drawn anew. */
@ExtendWith(Open.class)
class PlacesIT {
    private static final String SHOWN = "return [...document.querySelectorAll('.place')].filter(one => one.checkVisibility()).map(one => one.dataset.place).join()";

    /** Every place that is there, in the order of the row. */
    static List<String> keys(Browser browser) {
        return List.of(String.valueOf(browser.js("return [...document.querySelectorAll('[data-key^=\"place \"]')].map(one => one.dataset.key.slice(6)).join()")).split(","));
    }

    static void opens(Browser browser, String key) {
        if (Boolean.TRUE.equals(browser.js("return document.querySelector('[data-key=\"place ' + arguments[0] + '\"]').getAttribute('aria-expanded') === 'false'", key))) {
            browser.click("[data-key=\"place " + key + "\"]");
        }
        browser.until("place " + key + " is not shown", "return Boolean(document.querySelector('[data-place=\"' + arguments[0] + '\"]')?.checkVisibility())", key);
        browser.drawn();
    }

    @Test
    void fourPlacesAtMostAreShownAndTheYardStaysInSight(Page page) throws IOException, InterruptedException {
        page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        page.chooses("A");
        for (String key : keys(browser)) {
            opens(browser, key);
            int shown = String.valueOf(browser.js(SHOWN)).split(",").length;
            assertTrue(shown + 1 <= 4, shown + " places and the bed's tag with " + key);
            assertTrue((Boolean) browser.js("const yard = document.querySelector('lap-yard'); const { left, top, width, height } = yard.frame;"
                    + "return width > 300 && height > 200 && [[.1, .1], [.5, .5], [.9, .9]].every(([x, y]) =>"
                    + " document.elementFromPoint(left + width * x, top + height * y).closest('lap-yard, lap-courses'))"), "the yard is covered by " + key);
        }
    }

    @Test
    void placePutAwayGivesTheFocusBackAndIsRemembered(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        opens(browser, "rack");
        browser.until("the focus is not in the place", "return document.activeElement.dataset.place === 'rack'");
        browser.click("[data-key=\"put away snags\"]");
        browser.until("the focus is lost", "return document.activeElement.dataset.key === 'place snags'");
        page.show(id);
        assertEquals("rack,slip", browser.js(SHOWN));
    }

    @Test
    void placeFillsThePhonesWidthAndIsAloneThere(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        browser.size(360, 740, true);
        page.show(id);
        for (String key : keys(browser)) {
            opens(browser, key);
            assertEquals(key, browser.js(SHOWN));
            assertEquals(360L, browser.js("return document.documentElement.scrollWidth"), key);
            double width = ((Number) browser.js("return document.querySelector('[data-place=\"' + arguments[0] + '\"]').getBoundingClientRect().width", key)).doubleValue();
            assertTrue(width >= 320, key + " is " + width + " wide");
        }
    }

    /** The page is drawn anew between the press and the release, as when the job sheet comes in. */
    @Test
    void pressIsNotLostWhenThePageIsDrawnAnewInTheMiddleOfIt(Page page) throws IOException, InterruptedException {
        page.open(Page.TWO_BEDS);
        page.chooses("A");
        Browser browser = page.browser();
        for (String key : List.of("number slip timber 100x200", "turn 90", "place rack")) {
            String selector = "[data-key^=\"" + key + "\"]";
            browser.js("window.pressed = 0; document.querySelector(arguments[0]).addEventListener('click', () => window.pressed++)", selector);
            new Actions(browser.driver).moveToElement(browser.find(selector)).clickAndHold().perform();
            browser.js("const { garden } = document.querySelector('lap-slip'); garden.plans.run(plan => ({ ...plan, name: plan.name + '.' }))");
            page.kept();
            new Actions(browser.driver).release().perform();
            assertEquals(1L, browser.js("return window.pressed"), key);
        }
    }
}
