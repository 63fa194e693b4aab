package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import lapyard.job.Gardens;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.openqa.selenium.Keys;

/** Who brings what, for how much, and how it comes in. */
@ExtendWith(Open.class)
class OrderIT {
    private static String chapel() throws IOException {
        return Files.readString(Path.of("../samples/chapel-corner.json"));
    }

    @Test
    void theSlipNamesEachSupplierAndAddsUpAsItsJobSheetDoes(Page page) throws IOException, InterruptedException {
        JsonNode slip = ordersAddUp(page, chapel());
        Browser browser = page.browser();
        browser.click("[data-key=\"order nursery\"]");
        String nursery = browser.text("lap-slip .more details[open]");
        for (JsonNode order : slip.path("orders")) {
            if (!order.path("supplier").asText().equals("nursery")) continue;
            for (JsonNode line : order.path("lines")) {
                for (JsonNode pack : line.path("packs")) {
                    String told = pack.path("count").asText() + " × " + pack.path("called").asText() + ", " + line.path("label").asText() + "£" + pack.path("cost").asText();
                    assertTrue(nursery.replace(",", "").contains(told.replace(",", "")), told + " is not in " + nursery);
                }
            }
        }
        browser.click("[data-key=\"slip shares\"]");
        assertTrue(browser.text("[data-key=\"share bed D\"]").contains("a m² inside"));
        browser.click("[data-key=money]");
        browser.until("what was not bought is told", "return /£[0-9.,]+ to pay: goods still to buy/.test(document.querySelector('order-money p')?.textContent)");
        page.hasNoComplaints();
    }

    @Test
    void whatComesFromNobodyInParticularIsAnOrderToo(Page page) throws IOException, InterruptedException {
        JsonNode slip = ordersAddUp(page, chapel().replaceAll(",\\s*\"supplier\":\\s*\"yard\"", ""));
        List<String> suppliers = new ArrayList<>();
        slip.path("orders").forEach(order -> suppliers.add(order.path("supplier").asText()));
        assertTrue(suppliers.contains("") && suppliers.size() > 1, suppliers::toString);
        page.hasNoComplaints();
    }

    private static JsonNode ordersAddUp(Page page, String garden) throws IOException, InterruptedException {
        String id = page.open(garden);
        JsonNode slip = page.server().get("api/gardens/" + id + "/job-sheet").path("slip");
        assertEquals("£" + slip.path("total").asText(), page.total().replace(",", ""));
        BigDecimal sum = BigDecimal.ZERO;
        for (JsonNode order : slip.path("orders")) {
            String line = page.browser().text("[data-key=\"order " + order.path("supplier").asText() + "\"]");
            assertTrue(line.startsWith(order.path("name").asText()), line);
            sum = sum.add(new BigDecimal(line.replaceAll("[^0-9.]", "")));
        }
        assertEquals(0, new BigDecimal(slip.path("total").asText()).compareTo(sum));
        return slip;
    }

    /** Focus, scroll and lines stay where they are from the first look to the whole; nothing is marked from a first look. */
    @Test
    void aFirstLookSaysSoUntilTheWholeIsThere(Page page) throws IOException, InterruptedException {
        String id = page.open(chapel());
        Browser browser = page.browser();
        String shown = "return [...document.querySelectorAll('.first-look')].filter(one => getComputedStyle(one).visibility === 'visible').map(one => one.textContent).join('|')";
        assertEquals("", browser.js(shown));
        String lines = "return [...document.querySelectorAll('lap-slip .lines > li')].map(line => line.dataset.key).join()";
        Object before = browser.js(lines);
        browser.js("const fetched = window.fetch; const held = new Promise(go => { window.goOn = go; });"
                + "window.fetch = (address, asked) => /\\/job-sheet\\?(?!.*look=first)/.test(address) ? held.then(() => fetched(address, asked)) : fetched(address, asked);");
        page.chooses("D");
        browser.js("for (const one of document.querySelectorAll('table-panel, table-panel *')) if (one.scrollHeight > one.clientHeight + 40) one.scrollTop = 33;");
        String scrolled = "return [...document.querySelectorAll('table-panel, table-panel *')].filter(one => one.scrollTop === 33).length";
        assertTrue((Long) browser.js(scrolled) > 0);
        browser.keys(Keys.ARROW_RIGHT);
        browser.until("there is no first look", "return document.querySelector('lap-yard').garden.reckoning.standing === 'first'");
        browser.until("it is not said", shown.replace("return ", "return 'A first look: it may still improve.|A first look: it may still improve.' === "));
        assertFalse(browser.text("page-head .total").contains("saved"));
        assertEquals(before, browser.js(lines));
        PlacesIT.opens(browser, "tally");
        browser.click("lap-tally button.tick");
        page.says("that it cannot be marked yet", "This is a first look");
        PlacesIT.opens(browser, "slip");
        page.chooses("D");
        browser.js("for (const one of document.querySelectorAll('table-panel, table-panel *')) if (one.scrollHeight > one.clientHeight + 40) one.scrollTop = 33;");
        browser.js("window.goOn()");
        page.kept();
        assertEquals("", browser.js("return [...document.querySelectorAll('.first-look')].join()"));
        assertTrue(browser.text("page-head .total").contains("saved"));
        assertTrue((Long) browser.js(scrolled) > 0);
        assertEquals("D", browser.js("return document.activeElement.dataset.bed"));
        JsonNode whole = page.server().get("api/gardens/" + id + "/job-sheet");
        assertEquals("£" + whole.at("/slip/total").asText(), page.total().replace(",", ""));
        assertFalse(page.stored(id).has("tally"));
        page.hasNoComplaints();
    }

    @Test
    void aBusyServerIsNamedBesideTheFirstLookAndAskedAgain(Page page) throws IOException, InterruptedException {
        page.open(chapel());
        Browser browser = page.browser();
        browser.js("const fetched = window.fetch; let asked = 0;"
                + "window.fetch = (address, of) => /\\/job-sheet\\?(?!.*look=first)/.test(address) && asked++ < 2"
                + " ? Promise.resolve(new Response('{\"detail\":\"too many requests wait: ask again\"}', { status: 503 })) : fetched(address, of);"
                + "window.said = []; new MutationObserver(() => window.said.push(document.querySelector('lap-slip').textContent)).observe(document.body, { subtree: true, childList: true, characterData: true });");
        page.chooses("D");
        browser.keys(Keys.ARROW_LEFT);
        browser.until("it is not said", "return window.said.some(text => text.includes('Only a first look, the server says: too many requests wait; it is asked again.') && text.includes('A first look: it may still improve.'))");
        page.kept();
        assertTrue(browser.text("lap-slip").contains("One order for the whole garden."), browser.text("lap-slip"));
        assertEquals(false, browser.js("return window.said.some(text => text.includes('cannot be reached'))"));
        page.hasNoComplaints();
    }

    @Test
    void theLoadInTellsTripsLiftsAndBarrowRuns(Page page) throws IOException, InterruptedException {
        String id = page.open(chapel());
        Browser browser = page.browser();
        PlacesIT.opens(browser, "load-in");
        JsonNode loads = page.server().get("api/gardens/" + id + "/job-sheet/loads");
        browser.until("no drop is shown", "return Boolean(document.querySelector('[data-key=\"drop sawmill\"]'))");
        assertTrue(browser.text("[data-key=\"drop sawmill\"] h3").contains(loads.at("/drops/0/trips/count").asInt() + " trips of the flatbed"));
        int runs = 0;
        for (JsonNode one : loads.path("barrows")) {
            runs += one.path("runs").asInt();
        }
        assertTrue(browser.text("#barrow-sum").startsWith(runs + " runs"));
        browser.click("[data-key=\"way in\"]");
        browser.enter("[data-key=\"way  barrow\"]", "40");
        assertEquals(40, page.stored(id).at("/loadIn/barrow").asInt());
        page.hasNoComplaints();
    }

    /** 2000 lb are 907.185 kg, 2 cu yd 1.529 m3, 20 US gal 75.708 l (NIST SP 811, 2008, appendix B). */
    @Test
    void theWayInIsToldInPoundsAndGallonsAndReadsAsItsSheet(Page page) throws IOException, InterruptedException {
        String id = page.open("{\"format\":1,\"name\":\"Feet\",\"units\":\"imperial\"," + Page.YARD + ",\"beds\":[{\"id\":\"A\",\"width\":3600,\"depth\":1200,\"courses\":3,\"at\":[1000,2000]}]}");
        Browser browser = page.browser();
        PlacesIT.opens(browser, "load-in");
        browser.click("[data-key=\"way in\"]");
        browser.enter("[data-key=\"way vehicle payload\"]", "2000");
        browser.enter("[data-key=\"way vehicle volume\"]", "2");
        browser.enter("[data-key=\"way vehicle bedLength\"]", "6'");
        browser.enter("[data-key=\"way  barrow\"]", "20");
        JsonNode way = page.stored(id).path("loadIn");
        assertEquals(List.of(907.185, 1.529, 75.708), List.of(way.at("/vehicle/payload").asDouble(), way.at("/vehicle/volume").asDouble(), way.path("barrow").asDouble()));
        JsonNode loads = page.server().get("api/gardens/" + id + "/job-sheet/loads");
        page.reload();
        browser.until("the way in is not shown", "return document.querySelector('[data-key=\"way vehicle payload\"]')?.value === '2000'");
        String told = browser.text("lap-load-in");
        assertTrue(told.contains("Bulk bags and heaps take " + loads.path("bags").asInt() + " places"), told);
        assertEquals(List.of(false, true), List.of(loads.at("/lifts/0/beyondCrew").asBoolean(), loads.at("/lifts/0/overGuide").asBoolean()));
        assertTrue(told.contains(": 2 people, over guide"), told);
        JsonNode trips = loads.at("/drops/0/trips");
        assertTrue(told.contains("These are the fewest trips that carry what can go on it."), told);
        for (JsonNode load : trips.path("tooMuch")) {
            assertTrue(told.contains(load.path("count").asText() + " × " + load.path("name").asText() + " (" + load.path("label").asText() + ") cannot go on it"), told);
        }
        assertTrue(told.contains("box of 1000 (Liner staples)"), told);
        page.hasNoComplaints();
    }

    @Test
    void aPriceIsWrittenOverAnExampleAndTheSlipFollows(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        String before = page.total();
        PlacesIT.opens(browser, "catalogue");
        browser.until("no prices are shown", "return document.querySelectorAll('lap-catalogue .prices li').length > 10");
        browser.enter("[data-key=\"price packs staples 0\"]", "6.25");
        assertEquals("6.25", page.stored(id).at("/catalogue/packs/0/packs/0/price").asText());
        assertFalse(before.equals(page.total()), before);
        browser.type("[data-key=\"price packs staples 0\"]", "-1");
        assertTrue(browser.text("[data-key=\"row price packs staples 0\"] .note.wrong").startsWith("A price is 0 or more"));
    }

    @Test
    void aMerchantsListIsShownBeforeItIsTakenColumnsAreNamedAndGoodLinesTaken(Page page) throws IOException, InterruptedException {
        String id = page.open(Page.TWO_BEDS);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "catalogue");
        browser.type("[data-key=\"supplier name\"]", "Hill sawmill");
        browser.click("[data-key=\"supplier add\"]");
        assertEquals("hill-sawmill", page.stored(id).at("/catalogue/suppliers/0/id").asText());
        browser.type("[data-key=\"list text\"]", "item,length,price\n100x200,4800,31.00\n100x200,2400,nine\n");
        browser.click("[data-key=\"list show\"]");
        browser.until("the bad line is not named", "return document.querySelector('lap-catalogue .preview .wrong')?.textContent.includes('Line 3: price \"nine\" is no number')");
        assertEquals("Take 1 good line", browser.text("[data-key=\"list take\"]"));
        browser.type("[data-key=\"list text\"]", "Ware;Laenge, m;EUR\nTimber 100x200;4.8;31.00\n100x200;2.4;nine\n");
        browser.choose("[data-key=\"list supplier\"]", "hill-sawmill");
        browser.click("[data-key=\"list show\"]");
        browser.until("the columns cannot be named", "return Boolean(document.querySelector('[data-key=\"column 2\"]'))");
        browser.choose("[data-key=\"column 0\"]", "item");
        browser.choose("[data-key=\"column 1\"]", "length");
        browser.choose("[data-key=\"column 2\"]", "price");
        browser.until("the good line is not understood", "return document.querySelector('[data-key=\"list take\"]')?.textContent === 'Take 1 good line'");
        assertTrue(browser.find("[data-key=\"list template\"]").getAttribute("href").contains("item%2Cdescription%2Cpack%2Clength%20(mm)%2Cprice"));
        browser.click("[data-key=\"list take\"]");
        browser.until("it is not taken", "return !document.querySelector('lap-catalogue .preview')");
        JsonNode section = page.stored(id).at("/catalogue/sections/0");
        JsonNode board = section.at("/stock/0");
        assertEquals(Map.of("length", "4800", "price", "31", "supplier", "hill-sawmill"),
                Map.of("length", board.path("length").asText(), "price", board.path("price").asText(), "supplier", board.path("supplier").asText()));
        assertEquals(3, board.size());
        PlacesIT.opens(browser, "slip");
        browser.until("the slip does not follow", "return document.querySelector('lap-slip').textContent.includes('from Hill sawmill')");
        page.hasNoComplaints();
    }

    @Test
    void aLongerLookFindsACheaperPlanThatIsKept(Page page) throws IOException, InterruptedException {
        String id = page.open(Gardens.rows("", "1300x1300x2 4150x1300x2 2900x1450x4 2500x1250x3 2700x850x3 1900x1050x4 3800x800x4 4150x900x4 3050x1400x2 "
                + "1250x700x2 4100x1000x3 1150x800x2 4050x750x3 4150x1450x4 900x950x2 2450x1350x2 1900x900x2 4150x1000x2 1350x1250x3 1950x750x3 "
                + "1400x950x2 2400x1250x2 4000x950x4 3350x1300x4 3850x1200x2"));
        Browser browser = page.browser();
        double before = page.server().get("api/gardens/" + id + "/job-sheet/slip").path("total").asDouble();
        assertTrue(browser.text("look-longer").contains("Liner: "), browser.text("look-longer"));
        browser.click("[data-key=\"look longer\"]");
        browser.until("it does not end", "return Boolean(document.querySelector('[data-key=\"look keep\"]'))");
        assertTrue(browser.text("look-longer").contains(" less: "), browser.text("look-longer"));
        assertFalse(page.stored(id).has("search"), "nothing is kept before it is pressed");
        browser.click("[data-key=\"look keep\"]");
        assertEquals("long", page.stored(id).path("search").asText());
        double after = page.server().get("api/gardens/" + id + "/job-sheet/slip").path("total").asDouble();
        assertTrue(after < before, after + " after " + before);
        browser.click("[data-key=\"look short\"]");
        assertFalse(page.stored(id).has("search"));
        page.hasNoComplaints();
    }

    @Test
    void aLongerLookTellsHowFarItIsAndCanBeStopped(Page page) throws IOException, InterruptedException {
        Random random = new Random(2);
        List<String> sizes = new ArrayList<>();
        for (int i = 0; i < 48; i++) {
            sizes.add(1200 + 50 * random.nextInt(60) + "x" + (700 + 50 * random.nextInt(16)) + "x" + (2 + random.nextInt(3)));
        }
        page.open(Gardens.rows("", String.join(" ", sizes)));
        Browser browser = page.browser();
        browser.click("[data-key=\"look longer\"]");
        browser.until("nothing is told", "return Boolean(document.querySelector('look-longer .bounds li')) && document.querySelector('[data-key=\"look stop\"]') !== null");
        assertTrue(browser.text("look-longer .bounds").contains("none "), browser.text("look-longer"));
        browser.click("[data-key=\"look stop\"]");
        browser.until("it does not stop", "return document.querySelector('look-longer').textContent.startsWith('Stopped after')");
        browser.click("[data-key=\"look let go\"]");
        browser.until("it does not go", "return Boolean(document.querySelector('[data-key=\"look longer\"]'))");
        page.hasNoComplaints();
    }

    /** A price list goes on the shelf, another garden takes it, and what a newer one changes is shown before it is taken. */
    @Test
    void aPriceListIsKeptOnceForAllGardens(Page page) throws IOException, InterruptedException {
        String priced = Page.TWO_BEDS.replace("\"format\":1,", "\"format\":1,\"catalogue\":{\"sections\":[{\"id\":\"100x200\",\"thickness\":100,\"height\":200,\"stock\":[{\"length\":3000,\"price\":%s}]}]},");
        String first = page.open(priced.formatted("20.00"));
        Browser browser = page.browser();
        PlacesIT.opens(browser, "catalogue");
        browser.click("[data-key=\"shelf catalogue\"]");
        browser.until("the shelf is not shown", "return Boolean(document.querySelector('[data-key=\"shelf name catalogue\"]'))");
        browser.js("document.querySelector('[data-key=\"shelf name catalogue\"]').value = 'Hill sawmill'");
        browser.click("[data-key=\"shelf put catalogue\"]");
        browser.until("it is not on the shelf", "return Boolean(document.querySelector('ul.shelf')?.textContent.includes('here as it stands'))");
        String piece = page.server().get("api/shelf").at("/pieces/0/id").asText();
        assertEquals(piece, page.stored(first).at("/shelf/0/id").asText());

        String second = page.open(Page.TWO_BEDS);
        PlacesIT.opens(browser, "catalogue");
        browser.click("[data-key=\"shelf catalogue\"]");
        browser.click("[data-key=\"shelf take " + piece + "\"]");
        browser.until("it is not taken", "return document.querySelector('ul.shelf')?.textContent.includes('in 2 gardens')");
        assertEquals(20, page.stored(second).at("/catalogue/sections/0/stock/0/price").asInt());

        page.open(priced.formatted("26.00"));
        PlacesIT.opens(browser, "catalogue");
        browser.click("[data-key=\"shelf catalogue\"]");
        browser.click("[data-key=\"shelf keep " + piece + "\"]");
        browser.until("it is not a new revision", "return document.querySelector('ul.shelf')?.textContent.includes('revision 2')");
        browser.click("[data-key=\"shelf effect " + piece + "\"]");
        browser.until("what changes is not shown", "return document.querySelector('shelf-piece').textContent.split(', then ').length === 3");
        assertEquals(20, page.stored(second).at("/catalogue/sections/0/stock/0/price").asInt());

        page.show(second);
        browser.js("document.querySelector('lap-yard').garden.plans.run(plan => ({ ...plan, state: 'quoted' }))");
        page.kept();
        PlacesIT.opens(browser, "catalogue");
        browser.click("[data-key=\"shelf catalogue\"]");
        browser.click("[data-key=\"shelf take " + piece + "\"]");
        browser.until("the order before and after is not told", "return /quoted: .* from .*\\d.* to .*\\d/.test(document.querySelector('shelf-piece .warning')?.textContent)");
        assertEquals(20, page.stored(second).at("/catalogue/sections/0/stock/0/price").asInt());
        browser.click("[data-key=\"shelf anyway " + piece + "\"]");
        browser.until("it is not taken", "return document.querySelector('ul.shelf')?.textContent.includes('here as it stands')");
        assertEquals(26, page.stored(second).at("/catalogue/sections/0/stock/0/price").asInt());
        browser.click("[data-key=\"undo\"]");
        browser.until("the older list does not come back", "return document.querySelector('lap-yard').garden.plan.catalogue.sections[0].stock[0].price === 20");
        assertEquals(20, page.stored(second).at("/catalogue/sections/0/stock/0/price").asInt());
        assertEquals(1, page.stored(second).at("/shelf/0/revision").asInt());
    }
}
