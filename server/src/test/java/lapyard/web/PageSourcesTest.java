package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What holds of the page's files as they are written: no browser is needed to see it. */
class PageSourcesTest {
    private static final Pattern IMPORT = Pattern.compile("^(?:import|export)\\s(?:[^'\"]*?from\\s)?['\"]([^'\"]+)['\"]", Pattern.MULTILINE);
    private static final Pattern DOM = Pattern.compile("\\b(?:document|window|HTMLElement|localStorage|sessionStorage|location)\\s*[.(]");

    @Test
    void everyImportNamesAFileThatIsThere() {
        List<String> missing = new ArrayList<>();
        for (String module : PageSources.below(PageSources.PAGE, ".js")) {
            Path file = PageSources.PAGE.resolve(module);
            Matcher found = IMPORT.matcher(PageSources.text(file));
            while (found.find()) {
                String target = found.group(1);
                if (!target.startsWith(".") || !Files.exists(file.resolveSibling(target).normalize())) missing.add(module + " imports " + target);
            }
        }
        assertEquals(List.of(), missing);
    }

    @Test
    void everyModuleOfGeometryAndStateHasItsTest() {
        List<String> untested = new ArrayList<>();
        for (String folder : List.of("geometry", "state")) {
            for (String module : PageSources.below(PageSources.PAGE.resolve(folder), ".js")) {
                Path test = PageSources.TESTS.resolve(folder).resolve(module.replace(".js", ".test.js"));
                if (!Files.exists(test)) untested.add(folder + "/" + module);
            }
        }
        assertEquals(List.of(), untested);
    }

    @Test
    void geometryAndStateNeverTouchThePage() {
        List<String> touching = new ArrayList<>();
        for (String folder : List.of("geometry", "state")) {
            for (String module : PageSources.below(PageSources.PAGE.resolve(folder), ".js")) {
                Matcher found = DOM.matcher(code(PageSources.PAGE.resolve(folder).resolve(module)));
                if (found.find()) touching.add(folder + "/" + module + ": " + found.group());
            }
        }
        assertEquals(List.of(), touching);
    }

    @Test
    void geometryImportsGeometryOnlyAndStateNoElements() {
        List<String> wrong = new ArrayList<>();
        for (String folder : List.of("geometry", "state")) {
            for (String module : PageSources.below(PageSources.PAGE.resolve(folder), ".js")) {
                Matcher found = IMPORT.matcher(PageSources.text(PageSources.PAGE.resolve(folder).resolve(module)));
                while (found.find()) {
                    String target = found.group(1);
                    boolean allowed = target.startsWith("./") || folder.equals("state") && target.startsWith("../geometry/");
                    if (!allowed) wrong.add(folder + "/" + module + " imports " + target);
                }
            }
        }
        assertEquals(List.of(), wrong);
    }

    @Test
    void onlyOneModuleAndTheWorkerTalkToTheServer() {
        List<String> talking = PageSources.below(PageSources.PAGE, ".js").stream()
                .filter(module -> code(PageSources.PAGE.resolve(module)).matches("(?s).*\\b(?:fetch\\((?!\\))|XMLHttpRequest|EventSource|WebSocket|sendBeacon).*"))
                .toList();
        assertEquals(List.of("api.js", "sw.js"), talking);
    }

    @Test
    void elementsStandInFilesNamedAsTheirTags() {
        Pattern definition = Pattern.compile("customElements\\.define\\('([^']+)'");
        List<String> wrong = new ArrayList<>();
        for (String module : PageSources.below(PageSources.PAGE, ".js")) {
            Matcher found = definition.matcher(code(PageSources.PAGE.resolve(module)));
            int count = 0;
            while (found.find()) {
                count++;
                if (!module.equals("elements/" + found.group(1) + ".js")) wrong.add(module + " defines " + found.group(1));
            }
            if (count > 1) wrong.add(module + " defines " + count);
        }
        assertEquals(List.of(), wrong);
    }

    /** A policy that lets only the page's own files through would break anything else. */
    @Test
    void nothingIsFetchedFromElsewhereAndNothingStandsInline() {
        for (String ending : List.of(".js", ".css", ".html")) {
            for (String file : PageSources.below(PageSources.PAGE, ending)) {
                String text = PageSources.text(PageSources.PAGE.resolve(file)).replace("http://www.w3.org/2000/svg", "");
                assertFalse(text.matches("(?s).*(?<!\\^)https?://.*"), file + " names an address");
                assertFalse(text.matches("(?s).*(?:@import|\\bfont-face|innerHTML|outerHTML|insertAdjacentHTML|document\\.write|\\beval\\().*"),
                        file + " takes in markup, styles or code as text");
            }
        }
        String html = PageSources.text(PageSources.PAGE.resolve("index.html"));
        assertFalse(html.matches("(?s).*(?:\\sstyle=|\\son[a-z]+=|<style|<script(?![^>]*\\bsrc=)).*"), "index.html holds style or code");
    }

    @Test
    void noFileOfThePageIsLongerThanFiveHundredLines() {
        for (String ending : List.of(".js", ".css")) {
            for (String file : PageSources.below(PageSources.PAGE, ending)) {
                assertTrue(PageSources.text(PageSources.PAGE.resolve(file)).lines().count() <= 500, file);
            }
        }
    }

    /** A module without its comments, so that words in them are not taken for code. */
    private static String code(Path file) {
        return PageSources.text(file).replaceAll("(?s)/\\*.*?\\*/", "").replaceAll("(?m)//.*$", "");
    }
}
