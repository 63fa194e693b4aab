package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Proposals lie over the yard as ghosts and become its beds and paths; sizes are tried in the whole garden and kept. */
@ExtendWith(Open.class)
class LaidOutIT {
    private static final String YARD = """
            {"name":"To lay out","ground":{"outline":[[0,0],[9000,0],[9000,7000],[0,7000]],
              "surfaces":[{"kind":"grass","outline":[[0,0],[9000,0],[9000,7000],[0,7000]]}],
              "keepClear":[{"kind":"gate","hinge":[0,3000],"leaf":1000,"closed":90}]},
             "types":[{"id":"T","width":2000,"depth":1100,"courses":2}],
             "beds":[{"id":"A","type":"T","at":[600,5000]},{"id":"B","type":"T","at":[4600,5000]}]}""";

    @Test
    void aProposalIsAGhostAndThenTheGardenAndUndoneInOneStep(Page page) throws IOException, InterruptedException {
        page.open(YARD);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "laid-out");
        browser.js("const most = document.querySelector('[data-key=\"least T\"]'); most.value = '3'; most.dispatchEvent(new Event('change'))");
        browser.drawn();
        browser.click("[data-key=\"lay-out begin\"]");
        browser.until("no proposal came", "return document.querySelectorAll('ol.proposals > li').length >= 3");
        browser.click("[data-key=\"proposal 0\"]");
        browser.until("no ghosts in the yard", "return document.querySelectorAll('lap-yard .ghost').length >= 3 && document.querySelectorAll('lap-yard .ghost-path').length >= 1");
        assertEquals(ghostLabels(browser), browser.js("return document.querySelectorAll('lap-yard .ghost').length"), "each ghost has its label");
        assertEquals(List.of(), namesThatShow(browser), "a bed that moves has no second name where it stood");
        assertMoneyHasItsSign(browser, "ol.proposals");
        long ghosts = (Long) browser.js("return document.querySelectorAll('lap-yard .ghost').length");
        browser.click("[data-key=\"proposal keep\"]");
        browser.until("the proposal was not kept", "return document.querySelectorAll('lap-yard [data-bed]').length === arguments[0]", ghosts);
        assertEquals(0L, browser.js("return document.querySelectorAll('lap-yard .ghost').length"));
        browser.click("[data-key=\"undo\"]");
        browser.until("undo did not bring back two beds", "return document.querySelectorAll('lap-yard [data-bed]').length === 2");
    }

    private static Object ghostLabels(Browser browser) throws IOException, InterruptedException {
        return browser.js("return document.querySelectorAll('lap-yard .gap-text').length");
    }

    private static Object namesThatShow(Browser browser) {
        return browser.js("return [...document.querySelectorAll('lap-yard .bed')].filter(bed => getComputedStyle(bed.querySelector('.code')).opacity !== '0').map(bed => bed.dataset.bed)");
    }

    private static void assertMoneyHasItsSign(Browser browser, String list) throws IOException, InterruptedException {
        Object text = browser.js("return document.querySelector(arguments[0]).parentElement.textContent", list);
        assertTrue(text.toString().contains("£") && !text.toString().contains("GBP"), text.toString());
    }

    /** It lies where the bed lies, whose own label shows through. */
    @Test
    void aGhostOfABedThatStaysHasNoLabel(Page page) throws IOException, InterruptedException {
        page.open(YARD.replace("\"types\"", "\"layOut\":{\"pinned\":[\"A\"]},\"types\""));
        Browser browser = page.browser();
        PlacesIT.opens(browser, "laid-out");
        browser.click("[data-key=\"lay-out begin\"]");
        browser.until("no proposal came", "return document.querySelectorAll('ol.proposals > li').length >= 1");
        browser.click("[data-key=\"proposal 0\"]");
        browser.until("no ghosts in the yard", "return document.querySelectorAll('lap-yard .ghost').length === 2 && document.querySelectorAll('lap-yard .ghost.pinned').length === 1");
        assertEquals(1L, ghostLabels(browser));
        assertEquals(List.of("A"), namesThatShow(browser));
    }

    @Test
    void aNarrowYardSaysWhyThereIsNoChoice(Page page) throws IOException, InterruptedException {
        page.open("""
                {"name":"Narrow","ground":{"outline":[[0,0],[2400,0],[2400,2100],[0,2100]],"access":{"path":900,"reach":1200,"turning":0}},
                 "beds":[{"id":"A","width":2400,"depth":1200,"at":[0,0]}]}""");
        Browser browser = page.browser();
        PlacesIT.opens(browser, "laid-out");
        browser.click("[data-key=\"lay-out begin\"]");
        browser.until("no reason came", "return document.querySelector('lap-laid-out').textContent.includes('Only 2 proposals of 6 orders tried')");
        assertEquals(2L, browser.js("return document.querySelectorAll('ol.proposals > li').length"));
    }

    @Test
    void sizesThatSaveAreTriedInTheWholeGardenLetGoAndKept(Page page) throws IOException, InterruptedException {
        page.open(YARD);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "sizes");
        browser.js("const one = document.querySelector('[data-key=\"width smaller\"]'); one.value = '100'; one.dispatchEvent(new Event('change'))");
        browser.drawn();
        browser.click("[data-key=\"sizes begin\"]");
        browser.until("no answer came", "return document.querySelectorAll('ol.answers > li').length >= 1");
        assertMoneyHasItsSign(browser, "ol.answers");
        browser.click("[data-key=\"size 0\"]");
        browser.until("it is not tried", "const { garden } = document.querySelector('lap-yard'); return garden.trying && garden.plan.types[0].width < 2000");
        browser.click("[data-key=\"size cancel\"]");
        browser.until("it was not let go", "const { garden } = document.querySelector('lap-yard'); return !garden.trying && garden.plan.types[0].width === 2000");
        browser.click("[data-key=\"size 0\"]");
        browser.until("it is not tried again", "return document.querySelector('lap-yard').garden.trying");
        browser.click("[data-key=\"size keep\"]");
        browser.drawn();
        assertEquals(false, browser.js("return document.querySelector('lap-yard').garden.trying"));
        Object width = browser.js("return document.querySelector('lap-yard').garden.plan.types[0].width");
        assertTrue(((Number) width).doubleValue() < 2000, () -> "width is " + width);
    }
}
