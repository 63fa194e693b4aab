package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.deque.html.axecore.results.Results;
import com.deque.html.axecore.selenium.AxeBuilder;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.openqa.selenium.Keys;

/** WCAG 2.2 AA as far as a machine can see it, with axe-core, in every place, light and dark, wide and narrow. */
@ExtendWith(Open.class)
class AccessIT {
    private static final List<String> RULES = List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice");

    /** Understanding SC 2.5.8, Target Size (Minimum), W3C Recommendation WCAG 2.2: 24 by 24 CSS pixels. */
    private static final int LEAST_TARGET = 24;

    @Test
    void axeFindsNothingInAnyPlace(Page page) throws IOException, InterruptedException {
        Browser browser = page.browser();
        String id = page.open(Page.TWO_BEDS);
        for (int width : new int[] {1440, 360}) {
            browser.size(width, width == 360 ? 740 : 900, width == 360);
            for (String scheme : new String[] {"light", "dark"}) {
                browser.prefers("prefers-color-scheme", scheme);
                page.show(id);
                page.choosesInBeds("A");
                browser.js("document.querySelector('bed-build details').open = true");
                browser.click("bed-card .number");
                isClean(browser, scheme + " " + width + ", a bed in hand, a working unfolded");
            }
            PlacesIT.opens(browser, "courses");
            browser.click("[data-key=\"course 1\"]");
            browser.until("no ring", "return Boolean(document.querySelector('.timber.lifted'))");
            isClean(browser, width + ", a course lifted out");
        }
        browser.prefers("prefers-color-scheme", "light");
    }

    @Test
    void axeFindsNothingInWhatOpens(Page page) throws IOException, InterruptedException {
        Browser browser = page.browser();
        page.open(Page.TWO_BEDS);
        isClean(browser, "as opened");
        browser.click("[data-key=try]");
        browser.until("nothing is tried", "return document.activeElement.closest('try-bar') !== null");
        browser.js("document.querySelector('lap-yard').garden.plans.run(plan => ({ ...plan, beds: plan.beds.slice(1) }))");
        browser.click("[data-key=\"try beside\"]");
        browser.until("nothing stands side by side", "return document.querySelector('try-bar .beside') !== null");
        isClean(browser, "something tried, side by side");
        browser.click("[data-key=\"try let go\"]");
        page.kept();
        browser.click("[data-key=add]");
        browser.click("[data-key=\"add bed\"]");
        browser.type("[data-key=\"add width\"]", "100");
        isClean(browser, "adding a bed, an error at its field");
        browser.prefers("prefers-color-scheme", "dark");
        browser.click("[data-key=gardens]");
        browser.click("[data-key=start]");
        browser.type("[data-key=\"ask width\"]", "no length");
        isClean(browser, "dark, starting a garden, errors at their fields");
        browser.click("[data-key=keys]");
        isClean(browser, "dark, the keys");
        browser.keys(Keys.ESCAPE);
        browser.prefers("prefers-color-scheme", "light");
    }

    @Test
    void axeFindsNothingInThePlacesRoundTheYard(Page page) throws IOException, InterruptedException {
        Browser browser = page.browser();
        String id = page.server().stored(java.nio.file.Files.readString(java.nio.file.Path.of("..", "samples", "village-hall.json")));
        for (int width : new int[] {1440, 360}) {
            browser.forget(page.server().address);
            browser.size(width, width == 360 ? 740 : 900, width == 360);
            browser.prefers("prefers-color-scheme", width == 360 ? "dark" : "light");
            page.show(id);
            for (String place : PlacesIT.keys(browser)) {
                PlacesIT.opens(browser, place);
                browser.js("document.querySelectorAll('[data-place=\"' + arguments[0] + '\"] details').forEach(one => { one.open = true; })", place);
                isClean(browser, width + ", place " + place);
                assertEquals(List.of(), tooSmall(browser), width + ", place " + place);
            }
        }
        browser.prefers("prefers-color-scheme", "light");
    }

    @Test
    void axeFindsNothingWhileDrawingAndWithSeveralBeds(Page page) throws IOException, InterruptedException {
        Browser browser = page.browser();
        page.open(Page.TWO_BEDS);
        browser.js("document.querySelector('lap-yard').garden.choice.takeBeds(['A', 'B'])");
        PlacesIT.opens(browser, "beds");
        browser.click("[data-key=block]");
        isClean(browser, "two beds in hand");
        browser.js("document.querySelector('lap-yard').draw({ as: 'outline', name: 'Surface' })");
        browser.until("the bar does not open", "return !document.querySelector('draw-bar').hidden");
        isClean(browser, "drawing");
        browser.keys(Keys.ESCAPE);
    }

    /** 200 % zoom of a screen of 1280 is a screen of 640: SC 1.4.4 and 1.4.10 of the same recommendation. */
    @Test
    void nothingIsLostAtTwiceTheSize(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        browser.size(640, 450, false);
        page.show(id);
        for (String place : PlacesIT.keys(browser)) {
            PlacesIT.opens(browser, place);
            assertEquals(true, browser.js("return document.documentElement.scrollWidth <= innerWidth"), place);
        }
        page.chooses("A");
        browser.click("[data-key=\"tag turn 90\"]");
        assertEquals("90", page.stored(id).at("/beds/0/turn").asText());
    }

    @Test
    void axeFindsNothingInAClash(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        page.chooses("A");
        page.hearsNothing();
        page.server().changed(id, Page.TWO_BEDS.replace("[1000,2000]", "[1000,4000]"));
        page.browser().keys(Keys.ARROW_RIGHT);
        page.browser().until("nobody is asked", "return Boolean(document.querySelector('clash-ask dialog[open]'))");
        isClean(page.browser(), "a clash");
        page.browser().click("clash-ask .verbs button:nth-child(2)");
        page.kept();
    }

    @Test
    void everythingThatIsPressedIsLargeEnough(Page page) throws IOException, InterruptedException {
        Browser browser = page.browser();
        String id = page.open(Page.TWO_BEDS);
        for (int width : new int[] {1440, 360}) {
            browser.size(width, 800, width == 360);
            page.show(id);
            page.choosesInBeds("A");
            browser.js("document.querySelector('bed-build details').open = true");
            assertEquals(List.of(), tooSmall(browser));
        }
    }

    private static Object tooSmall(Browser browser) {
        return browser.js("return [...document.querySelectorAll('button, a, input, select')]"
                + ".filter(one => one.checkVisibility() && !one.classList.contains('skip'))"
                + ".filter(one => { const box = one.getBoundingClientRect(); return Math.min(box.width, box.height) < arguments[0]; })"
                + ".map(one => one.outerHTML.slice(0, 90))", LEAST_TARGET);
    }

    @Test
    void focusIsSeenOnEverythingTheTabKeyReaches(Page page) throws IOException, InterruptedException {
        page.open(Page.TWO_BEDS);
        page.chooses("A");
        Browser browser = page.browser();
        int seen = 0;
        for (int i = 0; i < 45; i++) {
            browser.keys(Keys.TAB);
            String unseen = (String) browser.js("const at = document.activeElement; if (at === document.body) return null;"
                    + "const style = getComputedStyle(at); const face = at.querySelector?.('.face');"
                    + "const marked = style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2"
                    + " || face && getComputedStyle(face).strokeDasharray !== 'none';"
                    + "return marked ? '' : at.outerHTML.slice(0, 120);");
            if (unseen == null) break;
            assertEquals("", unseen);
            seen++;
        }
        assertTrue(seen > 20, seen + " stops of the tab key");
    }

    @Test
    void lessMotionIsKeptTo(Page page) throws IOException, InterruptedException {
        Browser browser = page.browser();
        page.open(Page.TWO_BEDS);
        browser.prefers("prefers-reduced-motion", "reduce");
        page.chooses("A");
        PlacesIT.opens(browser, "courses");
        double before = page.pixelsPerMetre();
        browser.click("[data-key=\"course 1\"]");
        assertTrue(page.pixelsPerMetre() > before, "the view is there at once");
        browser.prefers("prefers-reduced-motion", "no-preference");
    }

    /** What is still moving or fading is not yet what one reads. */
    private static void isClean(Browser browser, String where) {
        browser.until("it does not come to rest", "const box = document.querySelector('lap-yard [data-bed]')?.getBoundingClientRect();"
                + " const now = box ? [box.left, box.top, box.width].join() : 'none'; const before = window.seenLast; window.seenLast = now;"
                + " return before === now && document.getAnimations().every(one => one.playState !== 'running');");
        // in the page itself: there are no frames in it, for which the tool would open a second window each time
        Results results = new AxeBuilder().setLegacyMode().withTags(RULES).analyze(browser.driver);
        List<String> found = results.getViolations().stream()
                .map(rule -> rule.getId() + ": " + rule.getHelp() + " " + rule.getNodes().stream().map(node -> String.valueOf(node.getTarget())).limit(4).toList())
                .toList();
        assertEquals(List.of(), found, where);
    }
}
