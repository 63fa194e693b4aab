package lapyard.web;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;

/**
 * Takes a picture of every place, on a wide screen and on a phone, with the sample of the village hall: into the folder
 * given, {@code ../docs/pictures} unless one is. Needs {@code target/lapyard.jar}.
 */
final class Pictures {
    private static final String GARDEN = "village-hall";

    private Pictures() {}

    public static void main(String[] folder) throws IOException, InterruptedException {
        Path into = Path.of(folder.length > 0 ? folder[0] : "../docs/pictures");
        Files.createDirectories(into);
        try (RunningServer server = new RunningServer(); Browser browser = Browser.open()) {
            Page page = new Page(server, browser);
            page.show(GARDEN);
            List<String> places = new ArrayList<>(PlacesIT.keys(browser));
            for (boolean phone : new boolean[] {false, true}) {
                browser.size(phone ? 360 : 1440, phone ? 740 : 900, phone);
                for (String place : places) {
                    browser.forget(server.address);
                    page.show(GARDEN);
                    PlacesIT.opens(browser, place);
                    browser.js("document.activeElement.blur()");
                    take(browser, into.resolve("place-" + place + (phone ? "-phone" : "") + ".webp"));
                }
                browser.forget(server.address);
                page.show(GARDEN);
                page.chooses("C");
                take(browser, into.resolve(phone ? "bed-phone.webp" : "bed.webp"));
                PlacesIT.opens(browser, "courses");
                browser.click("[data-key=\"course 1\"]");
                browser.until("no ring", "return Boolean(document.querySelector('.timber.lifted'))");
                Thread.sleep(500);
                take(browser, into.resolve(phone ? "course-phone.webp" : "course.webp"));
            }
        }
    }

    private static void take(Browser browser, Path file) throws IOException {
        browser.drawn();
        Object data = browser.driver.executeCdpCommand("Page.captureScreenshot", Map.of("format", "webp", "quality", 82)).get("data");
        Files.write(file, Base64.getDecoder().decode((String) data));
    }
}
