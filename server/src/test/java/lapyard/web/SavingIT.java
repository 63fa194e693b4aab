package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.openqa.selenium.Keys;

/** Nothing typed is lost: over a reload, without the server, beside somebody else. */
@ExtendWith(Open.class)
class SavingIT {
    @Test
    void stepsCanBeTakenBackAfterAReload(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        page.chooses("A");
        page.browser().keys(Keys.ARROW_RIGHT);
        page.browser().keys(Keys.ARROW_RIGHT);
        page.storedAt(id, 0, 1200, 2000);
        page.reload();
        page.browser().click("[data-key=undo]");
        page.storedAt(id, 0, 1100, 2000);
        page.browser().click("[data-key=undo]");
        page.storedAt(id, 0, 1000, 2000);
    }

    @Test
    void heldArrowKeyIsOneStepBack(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        page.chooses("A");
        page.browser().js("const bed = document.querySelector('[data-bed=A]');"
                + "for (let i = 0; i < 20; i++) bed.dispatchEvent(new KeyboardEvent('keydown', {key: 'ArrowRight', bubbles: true, repeat: i > 0}));"
                + "bed.dispatchEvent(new KeyboardEvent('keyup', {key: 'ArrowRight', bubbles: true}));");
        page.storedAt(id, 0, 3000, 2000);
        page.browser().click("[data-key=undo]");
        page.storedAt(id, 0, 1000, 2000);
    }

    @Test
    void changesOfTwoPeopleToDifferentBedsBothStand(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        page.chooses("A");
        page.server().changed(id, Page.TWO_BEDS.replace("[6000,2000]", "[7000,2000]"));
        page.browser().keys(Keys.ARROW_RIGHT);
        page.storedAt(id, 0, 1100, 2000);
        page.storedAt(id, 1, 7000, 2000);
        page.browser().until("their change is not drawn", "return document.querySelector('lap-yard [data-bed=B]').getAttribute('aria-label').includes('7000 along')");
    }

    @Test
    void changesOfTwoPeopleToOneBedAreShownAndAsked(Page page) throws IOException, InterruptedException {
        String theirs = Page.TWO_BEDS.replace("[1000,2000]", "[1000,4000]");
        for (boolean mine : new boolean[] {true, false}) {
            String id = page.open(Page.TWO_BEDS);
            page.chooses("A");
            page.hearsNothing();
            page.server().changed(id, theirs);
            page.browser().keys(Keys.ARROW_RIGHT);
            page.browser().until("nobody is asked", "return Boolean(document.querySelector('clash-ask dialog[open]'))");
            assertEquals("bed A", page.browser().text("clash-ask tbody th"));
            assertEquals("at 1100, 2000", page.browser().text("clash-ask tbody td:nth-child(2)"), "what differs alone");
            assertEquals("at 1000, 4000", page.browser().text("clash-ask tbody td:nth-child(3)"));
            page.browser().click(mine ? "clash-ask .verbs button:nth-child(1)" : "clash-ask .verbs button:nth-child(2)");
            page.storedAt(id, 0, mine ? 1100 : 1000, mine ? 2000 : 4000);
        }
    }

    @Test
    void newsFromSomebodyElseComesWithoutAsking(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        page.server().changed(id, Page.TWO_BEDS.replace("School yard", "Their yard"));
        page.browser().until("the news does not come", "return document.querySelector('h1').textContent === 'Their yard'");
    }

    @Test
    void whatIsDoneWhileTheServerIsAwayIsSavedWhenItIsBack(Page shared) throws IOException, InterruptedException {
        Assumptions.assumeTrue(RunningServer.isOurs(), "the server is not ours to stop");
        Browser browser = shared.browser();
        try (RunningServer server = new RunningServer()) {
            Page page = new Page(server, browser);
            String id = page.open(Page.TWO_BEDS);
            page.chooses("A");
            server.kill();
            browser.keys(Keys.ARROW_RIGHT);
            browser.until("nothing is said of the server", "return document.querySelector('garden-title .standing').textContent.includes('The server cannot be reached')");
            browser.keys(Keys.ARROW_RIGHT);
            page.says("that the server cannot be reached", "cannot be reached");
            server.start();
            // the page is loaded anew before its next try: what waits must come out of the browser's own storage
            page.reload();
            page.storedAt(id, 0, 1200, 2000);
        }
        browser.complaints();
    }
}
