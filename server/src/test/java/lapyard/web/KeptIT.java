package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.openqa.selenium.Keys;
import org.openqa.selenium.interactions.Actions;

/** What somebody is in the middle of stays while the page is drawn anew: the focus, the caret, what is typed, how far it is scrolled. */
@ExtendWith(Open.class)
class KeptIT {
    /** Answers with a new order wait until they are let through. */
    private static final String HELD = "window.through = new Promise(go => { window.letThrough = go; }); const fetched = window.fetch;"
            + "window.fetch = async (address, asked) => { const answer = await fetched(address, asked); await window.through; return answer; };";

    /**
     * In the place that is open, for each of its controls: the focus, some text with the caret in it, then another garden
     * with another order by turns. Tells the controls that lost something. The garden's keeper is quiet meanwhile.
     */
    private static final String SWEEP = """
            const done = arguments[arguments.length - 1];
            (async () => {
              const frame = () => document.querySelector('[data-place]');
              const { garden } = document.querySelector('lap-yard');
              const drawn = () => new Promise(go => requestAnimationFrame(() => requestAnimationFrame(() => requestAnimationFrame(go))));
              window.sheets ??= await (async () => {
                const asked = async (plan, parts) => (await fetch(`api/job-sheet${parts}`, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(plan) })).json();
                const of = async plan => ({ plan, sheet: { ...await asked(plan, ''), ...await asked(plan, '?parts=yard,searches') } });
                const plan = structuredClone(garden.plan);
                plan.beds.unshift({ id: 'Z', width: 3000, depth: 900, courses: 2, at: [5000, 6500] });
                plan.ground.surfaces = [{ kind: 'grass', outline: [[0, 0], [4000, 0], [4000, 4000]] }, ...(plan.ground.surfaces ?? [])];
                garden.keeper.put = () => {};
                return [await of(garden.plan), await of(plan)];
              })();
              const keyOf = one => one.dataset.key ?? one.textContent;
              const controls = () => [...frame().querySelectorAll('button, a[href], input, select, textarea, summary')].filter(one => one.checkVisibility({ visibilityProperty: true }) && !one.disabled && one.type !== 'file');
              const all = controls();
              const step = Math.max(1, Math.floor(all.length / 14));
              const keys = all.filter((_, i) => i % step === 0 || all[i].matches('form input, form textarea')).map(keyOf);
              const wrong = [];
              let turn = 0;
              for (const key of keys) {
                const control = controls().find(one => keyOf(one) === key);
                if (!control) continue;
                control.focus();
                if (document.activeElement !== control) continue;
                const text = control.matches('input:not([type=checkbox], [type=radio], [type=date], [type=range], [type=color], [type=number], [type=search]), textarea');
                const before = control.value;
                if (text) {
                  control.value = '12x';
                  control.dispatchEvent(new Event('input', { bubbles: true }));
                  control.setSelectionRange(1, 2);
                }
                turn = 1 - turn;
                const { plan, sheet } = window.sheets[turn];
                garden.plans.replace(plan);
                garden.reckoning.fresh(sheet);
                for (const one of [garden.choice, garden.keeper]) one.dispatchEvent(new Event('change'));
                await drawn();
                const now = document.activeElement;
                const there = controls().find(one => keyOf(one) === key);
                if (!frame().contains(now)) wrong.push(`${key}: the focus is at ${now.tagName}`);
                else if (there && there !== now) wrong.push(`${key}: the focus is at ${keyOf(now).slice(0, 30)}`);
                else if (there && text && [now.value, now.selectionStart, now.selectionEnd].join() !== '12x,1,2') wrong.push(`${key}: ${[now.value, now.selectionStart, now.selectionEnd]}`);
                if (text && there === now) { now.value = before; now.dispatchEvent(new Event('input', { bubbles: true })); }
              }
              done(`${keys.length}|${wrong.join(' / ')}`);
            })().catch(problem => done(`0|${problem.stack}`));
            """;

    @Test
    void everyPlaceKeepsTheFocusTheCaretAndWhatIsTypedWhenItIsDrawnAnew(Page page) throws IOException, InterruptedException {
        page.open(Page.TWO_BEDS);
        page.chooses("A");
        Browser browser = page.browser();
        int tried = 0;
        for (String key : PlacesIT.keys(browser)) {
            PlacesIT.opens(browser, key);
            String[] told = String.valueOf(browser.driver.executeAsyncScript(SWEEP)).split("\\|", 2);
            assertEquals("", told[1], key);
            tried += Integer.parseInt(told[0]);
        }
        assertTrue(tried > 150, tried + " controls");
    }

    @Test
    void orderThatComesLateLeavesWhoTypesAlone(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "rack");
        browser.until("the focus is not in the place", "return document.activeElement.dataset.place === 'rack'");
        browser.js(HELD);
        browser.js("document.querySelector('lap-yard').garden.plans.run(plan => ({ ...plan, beds: plan.beds.map(bed => ({ ...bed, courses: 5 })) }))");
        browser.type("lap-rack form input", "27");
        browser.js("document.activeElement.setSelectionRange(1, 1); document.querySelector('[data-place]').scrollTop = 40; window.field = document.activeElement;"
                + " window.scrolled = document.querySelector('[data-place]').scrollTop; window.letThrough()");
        page.kept();
        browser.keys("5");
        assertEquals("257", browser.js("return document.activeElement === window.field && window.field.value"));
        assertEquals(true, browser.js("return document.querySelector('[data-place]').scrollTop === window.scrolled"));
        assertEquals(5, page.stored(id).at("/beds/0/courses").asInt());
    }

    /** A busy machine may draw frames between the press and what was put off until its end. */
    @Test
    void placeGetsTheFocusHoweverLateItIsDrawn(Page page) throws IOException, InterruptedException {
        page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "slip");
        String tab = "[data-key=\"place rack\"]";
        new Actions(browser.driver).moveToElement(browser.find(tab)).clickAndHold().perform();
        browser.js("document.querySelector(arguments[0]).click()", tab);
        browser.drawn();
        browser.drawn();
        new Actions(browser.driver).moveToElement(browser.find("lap-yard")).release().perform();
        browser.until("the focus is not in the place", "return document.activeElement.dataset.place === 'rack'");
        browser.keys(Keys.TAB);
        assertEquals(true, browser.js("return document.querySelector('[data-place=rack]').contains(document.activeElement)"));
    }
}
