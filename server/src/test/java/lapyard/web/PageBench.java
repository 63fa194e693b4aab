package lapyard.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * Measures the page in the browser by its own performance API and prints one line each: how soon it is ready, what goes
 * over the wire, how long frames take while one of 200 beds is carried about or all are zoomed, and how soon a drop has its order. Needs {@code target/lapyard.jar}.
 */
final class PageBench {
    private static final int ROUNDS = 7;
    private static final int COLUMNS = 20;
    private static final int BEDS = 200;
    private static final int FRAMES = 300;

    /** Frames while nothing is carried, then while a bed is: time between frames, and the time to paint each. */
    private static final String FRAMES_SCRIPT = """
        const [frames, carry, done] = arguments;
        const yard = document.querySelector('lap-yard');
        const bed = yard.querySelector('[data-bed]');
        const box = bed.getBoundingClientRect();
        const [x, y] = [box.left + box.width / 2, box.top + box.height / 2];
        const send = (type, dx, dy) => bed.dispatchEvent(new PointerEvent(type,
          { bubbles: true, pointerId: 7, pointerType: 'mouse', button: type === 'pointermove' ? -1 : 0, buttons: 1, clientX: x + dx, clientY: y + dy }));
        yard.svg.setPointerCapture = () => {};
        const between = [], painted = [];
        const after = new MessageChannel();
        let began = 0;
        after.port1.onmessage = () => painted.push(performance.now() - began);
        if (carry) { send('pointerdown', 0, 0); send('pointermove', 6, 6); }
        let last = null;
        const frame = now => {
          if (last !== null) between.push(now - last);
          last = now;
          if (between.length >= frames) {
            if (carry) send('pointerup', 0, 0);
            return done([between, painted]);
          }
          began = performance.now();
          const turn = between.length / 20;
          if (carry) send('pointermove', 200 * Math.sin(turn), 120 * Math.cos(turn));
          after.port2.postMessage(null);
          requestAnimationFrame(frame);
        };
        requestAnimationFrame(frame);
        """;

    private static final String DROP_SCRIPT = """
        const [round, done] = arguments;
        const yard = document.querySelector('lap-yard');
        const bed = yard.querySelectorAll('[data-bed]')[20 + round];
        const box = bed.getBoundingClientRect();
        const [x, y] = [box.left + box.width / 2, box.top + box.height / 2];
        const send = (type, dx, dy) => bed.dispatchEvent(new PointerEvent(type,
          { bubbles: true, pointerId: 7, pointerType: 'mouse', button: type === 'pointermove' ? -1 : 0, buttons: 1, clientX: x + dx, clientY: y + dy }));
        yard.svg.setPointerCapture = () => {};
        send('pointerdown', 0, 0);
        for (let i = 1; i <= 5; i++) send('pointermove', 2 * i, 0);
        requestAnimationFrame(() => requestAnimationFrame(() => {
          const began = performance.now();
          const { reckoning } = yard.garden;
          const look = () => { if (reckoning.isOrdered) { reckoning.removeEventListener('change', look); requestAnimationFrame(() => setTimeout(() => done(performance.now() - began))); } };
          reckoning.addEventListener('change', look);
          send('pointerup', 10, 0);
        }));
        """;

    private PageBench() {}

    public static void main(String[] none) throws IOException, InterruptedException {
        try (RunningServer server = new RunningServer(); Browser browser = Browser.open()) {
            browser.size(1440, 900, false);
            String id = server.stored(garden());
            Page page = new Page(server, browser);
            page.show(id);
            wire(browser);
            if (Boolean.getBoolean("lapyard.only.zoom")) { zoomed(server, id); return; }
            ready(page, browser, server.stored(Page.TWO_BEDS), "2 beds");
            ready(page, browser, id, BEDS + " beds");
            page.show(id);
            frames(browser, false, "nothing carried");
            frames(browser, true, "one of " + BEDS + " beds carried");
            dropped(page, id);
            zoomed(server, id);
            slow(page, browser, "village-hall");
        }
    }

    /**
     * Frames while 200 beds are zoomed by the wheel, a part of a notch a frame: the work of the page's own thread in each frame
     * (script, style, layout, paint, commit), as the browser's tracing has it, in processor time, which other work on the machine
     * does not lengthen.
     */
    private static void zoomed(RunningServer server, String id) throws IOException {
        try (Browser browser = Browser.traced("toplevel,devtools.timeline,blink.user_timing")) {
            browser.size(1440, 900, false);
            new Page(server, browser).show(id);
            browser.driver.executeAsyncScript("const [frames, done] = arguments; const yard = document.querySelector('lap-yard'); let n = 0;"
                    + "const frame = () => { performance.mark('zoom frame'); if (++n > frames) return done(); yard.svg.dispatchEvent(new WheelEvent('wheel',"
                    + " { deltaY: Math.floor(n / 20) % 2 ? 30 : -30, clientX: 600, clientY: 400, bubbles: true, cancelable: true })); requestAnimationFrame(frame); };"
                    + " requestAnimationFrame(frame);", FRAMES);
            System.out.printf("%d beds zoomed: work a frame %s%n", BEDS, spread(workAFrame(browser.traces())));
        }
    }

    /** Processor time of the tasks between two marks, on the thread that set them, ms. */
    private static List<Double> workAFrame(List<String> messages) throws IOException {
        JsonMapper mapper = new JsonMapper();
        List<JsonNode> events = new ArrayList<>();
        for (String message : messages) {
            JsonNode event = mapper.readTree(message).at("/message/params");
            if (event.has("ph")) events.add(event);
        }
        List<JsonNode> marks = events.stream().filter(event -> event.path("name").asText().equals("zoom frame")).sorted(Comparator.comparingLong(event -> event.path("ts").asLong())).toList();
        long thread = marks.get(0).path("tid").asLong();
        long process = marks.get(0).path("pid").asLong();
        double[] work = new double[marks.size() - 1];
        for (JsonNode event : events) {
            if (event.path("tid").asLong() != thread || event.path("pid").asLong() != process || !event.path("name").asText().endsWith("RunTask") || !event.has("tdur")) continue;
            long at = event.path("ts").asLong() + event.path("dur").asLong() / 2;
            int frame = 0;
            while (frame < work.length && at >= marks.get(frame + 1).path("ts").asLong()) frame++;
            if (frame < work.length && at >= marks.get(0).path("ts").asLong()) work[frame] += event.path("tdur").asLong() / 1000.0;
        }
        return Arrays.stream(work).boxed().toList();
    }

    /** From the moment a bed is let go until the order of the whole garden is reckoned anew and drawn. */
    private static void dropped(Page page, String id) {
        Browser browser = page.browser();
        page.show(id);
        PlacesIT.opens(browser, "slip");
        double[] times = IntStream.range(0, ROUNDS).mapToDouble(round -> {
            double ms = ((Number) browser.driver.executeAsyncScript(DROP_SCRIPT, round)).doubleValue();
            page.kept();
            return ms;
        }).sorted().toArray();
        System.out.printf("%d beds, one dropped to new order: median %.0f ms, least %.0f, most %.0f, of %d%n", BEDS, times[ROUNDS / 2], times[0], times[ROUNDS - 1], ROUNDS);
    }

    /** A phone's first visit at 1.6 Mbit/s and 150 ms, nothing kept. */
    private static void slow(Page page, Browser browser, String id) {
        browser.driver.executeCdpCommand("Network.enable", Map.of());
        browser.driver.executeCdpCommand("Network.setCacheDisabled", Map.of("cacheDisabled", true));
        browser.driver.executeCdpCommand("Network.setBypassServiceWorker", Map.of("bypass", true));
        browser.driver.executeCdpCommand("Network.emulateNetworkConditions", Map.of("offline", false, "latency", 150, "downloadThroughput", 200_000, "uploadThroughput", 93_750));
        browser.size(390, 844, true);
        ready(page, browser, id, "1.6 Mbit/s and 150 ms, a phone");
    }

    private static void wire(Browser browser) {
        Object bytes = browser.js("return performance.getEntries().filter(one => one.entryType === 'navigation' || one.entryType === 'resource' && !one.name.includes('/api/'))"
                + ".reduce((sum, one) => sum + one.transferSize, 0)");
        Object files = browser.js("return performance.getEntriesByType('resource').filter(one => !one.name.includes('/api/')).length + 1");
        System.out.printf("page over the wire, first visit: %.1f kB in %s files%n", ((Number) bytes).doubleValue() / 1000, files);
    }

    private static void ready(Page page, Browser browser, String id, String what) {
        double[] times = IntStream.range(0, ROUNDS).mapToDouble(round -> {
            page.show(id);
            return ((Number) browser.js("return performance.getEntriesByName('lapyard ready')[0].startTime")).doubleValue();
        }).sorted().toArray();
        System.out.printf("page ready, warm, %s: median %.0f ms, least %.0f, most %.0f, of %d%n", what, times[ROUNDS / 2], times[0], times[ROUNDS - 1], ROUNDS);
    }

    private static void frames(Browser browser, boolean carry, String what) {
        List<?> both = (List<?>) browser.driver.executeAsyncScript(FRAMES_SCRIPT, FRAMES, carry);
        System.out.printf("%s: between frames %s; from input to painted %s%n", what, spread((List<?>) both.get(0)), spread((List<?>) both.get(1)));
    }

    private static String spread(List<?> values) {
        double[] sorted = values.stream().mapToDouble(one -> ((Number) one).doubleValue()).sorted().toArray();
        return String.format("median %.1f ms, 95th %.1f ms", sorted[sorted.length / 2], sorted[(int) (sorted.length * 0.95)]);
    }

    /** Ten rows of twenty beds with paths between, a quarter of them Ls. */
    private static String garden() {
        StringBuilder beds = new StringBuilder();
        for (int i = 0; i < BEDS; i++) {
            String shape = i % 4 == 0
                    ? "\"outline\":[[0,0],[2400,0],[2400,1200],[1200,1200],[1200,1800],[0,1800]]"
                    : "\"width\":2400,\"depth\":1200";
            beds.append(i == 0 ? "" : ",").append(String.format("{\"id\":\"B%d\",%s,\"courses\":2,\"at\":[%d,%d]}", i, shape, 600 + i % COLUMNS * 3600, 600 + i / COLUMNS * 3000));
        }
        Map<String, Integer> yard = Map.of("width", COLUMNS * 3600 + 600, "depth", BEDS / COLUMNS * 3000 + 600);
        return String.format("{\"format\":1,\"name\":\"Two hundred\",\"ground\":{\"outline\":[[0,0],[%1$d,0],[%1$d,%2$d],[0,%2$d]]},\"beds\":[%3$s]}", yard.get("width"), yard.get("depth"), beds);
    }
}
