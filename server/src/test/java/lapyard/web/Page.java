package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.util.List;
import org.openqa.selenium.Keys;
import org.openqa.selenium.interactions.Actions;

/** The page as somebody uses it: what is done to it and what it then says and has stored. */
record Page(RunningServer server, Browser browser) {
    static final String YARD = "\"ground\":{\"outline\":[[0,0],[12000,0],[12000,9000],[0,9000]]}";
    static final String TWO_BEDS = "{\"format\":1,\"name\":\"School yard\"," + YARD + ",\"beds\":["
            + "{\"id\":\"A\",\"width\":2400,\"depth\":1200,\"courses\":3,\"at\":[1000,2000]},"
            + "{\"id\":\"B\",\"width\":1800,\"depth\":900,\"courses\":2,\"at\":[6000,2000]}]}";
    static final String EMPTY = "{\"format\":1,\"name\":\"Bare yard\"," + YARD + ",\"beds\":[]}";

    /** Stores a garden and opens the page on it. */
    String open(String document) throws IOException, InterruptedException {
        String id = server.stored(document);
        browser.forget(server.address);
        browser.size(1440, 900, false);
        browser.complaints();
        show(id);
        return id;
    }

    void show(String id) {
        browser.driver.get("about:blank");
        browser.driver.get(server.address + "#" + id);
        browser.until("garden " + id + " does not open", "return document.getElementById('page')?.dataset.garden === arguments[0]", id);
        kept();
    }

    void reload() {
        browser.driver.navigate().refresh();
        kept();
    }

    /** Waits until all is saved and the slip stands for what is saved. */
    void kept() {
        browser.until("the garden is not saved and reckoned", "const garden = document.querySelector('lap-yard')?.garden;"
                + "return garden?.keeper.standing === 'kept' && garden.reckoning.standing === 'fresh'");
        browser.drawn();
    }

    /** The yard where a table has the whole screen. */
    void showsYard() {
        if (!Boolean.TRUE.equals(browser.js("return document.querySelector('lap-yard').checkVisibility({ visibilityProperty: true })"))) browser.click("[data-key=\"table yard\"]");
    }

    void chooses(String bed) {
        showsYard();
        browser.until("there is no bed " + bed, "const bed = document.querySelector('lap-yard [data-bed=\"' + arguments[0] + '\"]'); bed?.focus();"
                + " return Boolean(bed) && document.activeElement === bed", bed);
        browser.keys(Keys.ENTER);
        browser.until("bed " + bed + " is not chosen", "return document.querySelector('lap-yard .bed.chosen')?.dataset.bed === arguments[0]"
                + " && !document.querySelector('bed-tag').hidden", bed);
    }

    /** All about the bed in hand. */
    void choosesInBeds(String bed) {
        chooses(bed);
        PlacesIT.opens(browser, "beds");
    }

    JsonNode stored(String id) throws IOException, InterruptedException {
        kept();
        return server.garden(id);
    }

    void storedAt(String id, int bed, double x, double y) throws IOException, InterruptedException {
        JsonNode at = stored(id).at("/beds/" + bed + "/at");
        assertEquals(List.of(x, y), List.of(at.path(0).asDouble(), at.path(1).asDouble()));
    }

    double pixelsPerMetre() {
        return ((Number) browser.js("return document.querySelector('lap-yard').view.k * 1000")).doubleValue();
    }

    /** Drags a bed by pixels; with alt nothing draws it. */
    void drags(String bed, int dx, int dy, boolean free) {
        Actions actions = new Actions(browser.driver);
        if (free) actions.keyDown(Keys.ALT);
        actions.moveToElement(browser.find("lap-yard [data-bed=\"" + bed + "\"]"))
                .clickAndHold()
                .moveByOffset(dx / 2, dy / 2)
                .moveByOffset(dx - dx / 2, dy - dy / 2)
                .release();
        if (free) actions.keyUp(Keys.ALT);
        actions.perform();
    }

    /** Nothing was refused by the policy, nothing went wrong, nothing was looked for in vain. */
    void hasNoComplaints() {
        assertEquals(List.of(), browser.complaints());
    }

    void says(String what, String words) {
        browser.until(what + " was not said", "return document.getElementById('heard').textContent.includes(arguments[0])", words);
    }

    String total() {
        String text = browser.text("#order-total");
        assertTrue(text != null && text.matches(".*\\d.*"), () -> "the total reads " + text);
        return text;
    }

    /** The page's looks for news stay without an answer, so that both change the same revision. */
    void hearsNothing() {
        browser.js("const fetched = window.fetch; window.fetch = (address, asked) =>"
                + " asked?.headers?.['if-none-match'] ? new Promise(() => {}) : fetched(address, asked);");
    }
}
