package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.openqa.selenium.Keys;

/** Every way out that a press does: after it the snag is gone, and one step back brings the garden as it was. */
@ExtendWith(Open.class)
class WaysIT {
    private static final String SETTLED = "const { keeper, reckoning } = document.querySelector('lap-yard').garden;"
            + " return keeper.standing === 'refused' || keeper.standing === 'kept' && reckoning.standing === 'fresh'";

    /** A single finding by its kind, place and words without their figures, as one bed may stand on two others. */
    private static final String NAMED = "const named = (snag, one) => snag.kind + ' ' + one.where + ' ' + one.text.replace(/[\\d.,]+/g, '#');"
            + " const all = document.querySelector('lap-snags').snags;";

    /** The finding whose way a button is: of a merged one the worst, in its list the one itself. */
    private static final String FINDING = NAMED + "const [, i, j, k] = arguments[0].split(' '); return named(all[i], k !== undefined ? all[i].list[j] : all[i].list?.[0] ?? all[i]);";

    private static final String FINDINGS = NAMED + "return all.flatMap(snag => (snag.list ?? [snag]).map(one => named(snag, one)))";

    @Test
    void pressedWayOutMendsItsSnagInOneStep(Page page) throws IOException, InterruptedException {
        Browser browser = page.browser();
        JsonNode gardens = new JsonMapper().readTree(getClass().getResource("/lapyard/web/ways.json"));
        Set<String> pressed = new TreeSet<>();
        List<String> left = new ArrayList<>();
        for (String name : (Iterable<String>) gardens::fieldNames) {
            page.open(Page.EMPTY);
            PlacesIT.opens(browser, "snags");
            browser.js("const text = arguments[0]; document.querySelector('lap-yard').garden.plans.run(() => JSON.parse(text))", gardens.get(name).toString());
            browser.until(name + " does not settle", SETTLED);
            unfold(browser);
            @SuppressWarnings("unchecked")
            List<String> keys = (List<String>) browser.js("return [...document.querySelectorAll('lap-snags button[data-way]:not(.quiet)')].map(one => one.dataset.key)");
            assertTrue(!keys.isEmpty(), name + " has no way out to press: " + browser.text("lap-snags"));
            for (String key : keys) {
                unfold(browser);
                String finding = (String) browser.js(FINDING, key);
                String way = String.valueOf(browser.js("return document.querySelector('lap-snags [data-key=\"' + arguments[0] + '\"]').dataset.way", key));
                Object before = browser.js("const { plans } = document.querySelector('lap-yard').garden; return JSON.stringify([plans.plan, plans.past.length])");
                browser.js("document.querySelector('lap-snags [data-key=\"' + arguments[0] + '\"]').click()", key);
                browser.until(name + ": " + way + " does not settle", SETTLED);
                if (!"kept".equals(browser.js("return document.querySelector('lap-yard').garden.keeper.standing"))) left.add(name + ": " + way + " is refused");
                if (((List<?>) browser.js(FINDINGS)).contains(finding)) left.add(name + ": " + way + " leaves " + finding);
                pressed.add(way);
                browser.click("[data-key=undo]");
                browser.until(name + " does not settle after a step back", SETTLED);
                assertEquals(before, browser.js("const { plans } = document.querySelector('lap-yard').garden; return JSON.stringify([plans.plan, plans.past.length])"), name + ": " + way);
            }
        }
        assertEquals(List.of(), left);
        assertEquals(changes(), pressed);
        browser.complaints();
    }

    /** A way that no press can do leads to its field. */
    @Test
    void otherWayOutLeadsToItsField(Page page) throws IOException, InterruptedException {
        Browser browser = page.browser();
        page.open(Page.TWO_BEDS);
        PlacesIT.opens(browser, "snags");
        browser.js("document.querySelector('lap-yard').garden.choice.takeBed('A')");
        browser.until("notes alone are no word", "return document.querySelector('lap-snags').textContent.startsWith('Nothing is in the way.')");
        browser.js("document.querySelector('lap-yard').garden.choice.takeBeds([])");
        unfold(browser);
        assertTrue(browser.text("page-head .heaviest").matches("\\d+ notes"), browser.text("page-head .heaviest"));
        assertEquals("for information", browser.text("lap-snags li.note .weight"));
        browser.click("lap-snags button[data-way=\"name-base\"]");
        browser.until("the field has not the focus", "return document.activeElement.dataset.key === 'build base.kind' && document.activeElement.checkVisibility()");
        PlacesIT.opens(browser, "snags");
        unfold(browser);
        browser.click("lap-snags button[data-way=\"own-prices\"]");
        browser.until("the place does not open", "return document.querySelector('[data-place=catalogue]')?.checkVisibility() === true");
    }

    /** Notes go from before it once a bed is in hand: the snag that was pressed stays the one in focus, and the one pointed at. */
    @Test
    void snagPressedKeepsFocusAndThread(Page page) throws IOException, InterruptedException {
        Browser browser = page.browser();
        page.open(Page.TWO_BEDS.replace("[6000,2000]", "[3000,2000]").replace("]}]}", "]},{\"id\":\"C\",\"width\":1800,\"depth\":900,\"courses\":3,\"at\":[11000,6000]}]}"));
        PlacesIT.opens(browser, "snags");
        for (String where : List.of("bed C", "bed B")) {
            browser.js("document.querySelector('lap-yard').garden.choice.takeBeds([])");
            browser.drawn();
            String told = "return [...document.querySelectorAll('lap-snags li.snag')].find(one => one.querySelector('.where').textContent === arguments[0])";
            assertEquals(true, browser.js("return document.querySelector('lap-snags li').matches('.note')"), browser.text("lap-snags"));
            browser.js(told + ".querySelector('button').focus()", where);
            browser.keys(Keys.ENTER);
            browser.until("no bed is in hand", "return Boolean(document.querySelector('lap-yard').garden.bed)");
            browser.drawn();
            assertEquals(where, browser.js("return document.activeElement.querySelector('.where')?.textContent"), "has the focus");
            assertEquals(where, browser.js("return document.querySelector(`[data-snag=\"${document.querySelector('lap-yard').garden.choice.snag.key}\"] .where`)?.textContent"), "has the thread");
        }
    }

    private static void unfold(Browser browser) {
        browser.drawn();
        browser.js("const all = document.querySelector('lap-snags [data-key=all]'); if (all?.getAttribute('aria-expanded') === 'false') all.click();"
                + " document.querySelectorAll('lap-snags details').forEach(one => { one.open = true; })");
        browser.drawn();
    }

    /** The ways that the page says it does. */
    private static Set<String> changes() throws IOException {
        String source = Files.readString(PageSources.PAGE.resolve("state/ways.js"));
        String table = source.substring(source.indexOf("const CHANGES = {"), source.indexOf("\n};", source.indexOf("const CHANGES = {")));
        return Pattern.compile("(?m)^ {2}'?([a-z-]+)'?: ").matcher(table).results().map((MatchResult found) -> found.group(1)).collect(Collectors.toCollection(TreeSet::new));
    }
}
