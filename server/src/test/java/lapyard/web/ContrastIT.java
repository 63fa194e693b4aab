package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Every word against the pixels that really lie under it, on bricks, hatches, timber and soil too, which axe does not look at.
 * WCAG 2.2, SC 1.4.3 and its definitions of contrast ratio, relative luminance and large-scale text: 4.5 to 1, 3 to 1 from 24 CSS
 * pixels on, or 18.66 in bold.
 */
@ExtendWith(Open.class)
class ContrastIT {
    /** A line of a hatch or the edge of a box may touch a word's box; more of them would be read against. */
    private static final double MOST_POOR = 0.04;

    /** Words that are seen, with their boxes, colours and sizes; words with a halo carry it. What cannot be pressed now is exempt. */
    private static final String WORDS = """
        const found = [];
        const walk = document.createTreeWalker(document.getElementById('page'), NodeFilter.SHOW_TEXT);
        const rgba = text => { const m = text.match(/[\\d.]+/g)?.map(Number) ?? [0, 0, 0, 0]; return text.startsWith('color(') ? [m[0] * 255, m[1] * 255, m[2] * 255, m[3] ?? 1] : [m[0], m[1], m[2], m[3] ?? 1]; };
        for (let node = walk.nextNode(); node; node = walk.nextNode()) {
          const text = node.textContent.trim();
          const at = node.parentElement;
          if (!text || !at.checkVisibility({ visibilityProperty: true, opacityProperty: true }) || at.closest('[aria-disabled=true], :disabled, option, .skip, [hidden]')) continue;
          const range = document.createRange();
          range.selectNodeContents(node);
          const box = range.getBoundingClientRect();
          const [x, y] = [box.left + box.width / 2, box.top + box.height / 2];
          if (box.width < 2 || box.height < 2 || box.left < 0 || box.top < 0 || box.right > innerWidth || box.bottom > innerHeight) continue;
          const svg = at instanceof SVGElement;
          const top = document.elementFromPoint(x, y);
          if (!svg && !(top && (at.contains(top) || top.contains(at)))) continue;
          if (svg && at.closest('lap-yard') && top && !top.closest('lap-yard')) continue;
          const style = getComputedStyle(at);
          let opacity = 1;
          for (let up = at; up; up = up.parentElement) opacity *= Number(getComputedStyle(up).opacity);
          const ink = rgba(svg ? style.fill : style.color);
          const size = svg ? parseFloat(style.fontSize) * (at.getScreenCTM?.().a ?? 1) : parseFloat(style.fontSize);
          const halo = svg && style.stroke !== 'none' && style.paintOrder.startsWith('stroke') && parseFloat(style.strokeWidth) > 0 ? rgba(style.stroke) : null;
          found.push({ text: text.slice(0, 40), ink, opacity, halo, size: Math.abs(size), bold: Number(style.fontWeight) >= 700, box: [box.left, box.top, box.width, box.height] });
        }
        return found;
        """;

    private static final String HIDDEN = "const style = new CSSStyleSheet(); style.replaceSync('#page, #page * { color: transparent !important; -webkit-text-fill-color: transparent !important; caret-color: transparent !important; transition: none !important }"
            + " #page text { fill: transparent !important; stroke: transparent !important } #page ::placeholder { color: transparent !important }'); document.adoptedStyleSheets = [style];";

    @ParameterizedTest
    @ValueSource(strings = {"light", "dark"})
    void everyWordStandsOutFromWhatLiesUnderIt(String scheme, Page page) throws IOException, InterruptedException {
        Browser browser = page.browser();
        String id = page.server().stored(Files.readString(Path.of("..", "samples", "village-hall.json")));
        browser.forget(page.server().address);
        browser.size(1440, 900, false);
        browser.prefers("prefers-color-scheme", scheme);
        page.show(id);
        int seen = 0;
        List<String> poor = new ArrayList<>();
        for (String place : PlacesIT.keys(browser)) {
            PlacesIT.opens(browser, place);
            if (place.equals("courses")) browser.js("const { choice } = document.querySelector('lap-yard').garden; choice.takeBed('C'); choice.liftCourse(1)");
            browser.until("it does not come to rest", "return document.getAnimations().every(one => one.playState !== 'running')");
            Thread.sleep(place.equals("courses") ? 500 : 0);
            browser.drawn();
            seen += look(browser, place, poor);
            browser.js("document.querySelector('lap-yard').garden.choice.takeNothing()");
        }
        browser.prefers("prefers-color-scheme", "light");
        assertTrue(seen > 1000, seen + " words were looked at");
        assertEquals(List.of(), poor.stream().distinct().toList(), scheme);
    }

    @SuppressWarnings("unchecked")
    private static int look(Browser browser, String place, List<String> poor) throws IOException {
        List<Map<String, Object>> words = (List<Map<String, Object>>) browser.js(WORDS);
        browser.js(HIDDEN);
        browser.drawn();
        String data = (String) browser.driver.executeCdpCommand("Page.captureScreenshot", Map.of("format", "png")).get("data");
        browser.js("document.adoptedStyleSheets = []");
        BufferedImage under = ImageIO.read(new ByteArrayInputStream(Base64.getDecoder().decode(data)));
        for (Map<String, Object> word : words) {
            boolean large = number(word.get("size")) >= 24 || Boolean.TRUE.equals(word.get("bold")) && number(word.get("size")) >= 18.66;
            double wanted = large ? 3 : 4.5;
            List<Number> box = (List<Number>) word.get("box");
            List<Number> ink = (List<Number>) word.get("ink");
            double opacity = number(word.get("opacity")) * ink.get(3).doubleValue();
            int count = 0;
            int bad = 0;
            double worst = 21;
            for (int y = box.get(1).intValue(); y < box.get(1).intValue() + box.get(3).intValue(); y++) {
                for (int x = box.get(0).intValue(); x < box.get(0).intValue() + box.get(2).intValue(); x++) {
                    if (x < 0 || y < 0 || x >= under.getWidth() || y >= under.getHeight()) continue;
                    double[] ground = word.get("halo") == null ? colour(under.getRGB(x, y)) : colour((List<Number>) word.get("halo"));
                    double[] seen = new double[3];
                    for (int i = 0; i < 3; i++) seen[i] = ink.get(i).doubleValue() * opacity + ground[i] * (1 - opacity);
                    double ratio = contrast(seen, ground);
                    count++;
                    if (ratio < wanted - 0.05) bad++;
                    worst = Math.min(worst, ratio);
                }
            }
            if (count > 0 && bad > MOST_POOR * count) poor.add(String.format("%s: \"%s\" %.1f to 1 on %d %% of it, %.0f px", place, word.get("text"), worst, 100 * bad / count, number(word.get("size"))));
        }
        return words.size();
    }

    private static double number(Object value) {
        return ((Number) value).doubleValue();
    }

    private static double[] colour(int rgb) {
        return new double[] {rgb >> 16 & 255, rgb >> 8 & 255, rgb & 255};
    }

    private static double[] colour(List<Number> rgb) {
        return new double[] {number(rgb.get(0)), number(rgb.get(1)), number(rgb.get(2))};
    }

    private static double contrast(double[] one, double[] other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    private static double luminance(double[] rgb) {
        double[] weight = {0.2126, 0.7152, 0.0722};
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            double part = rgb[i] / 255;
            sum += weight[i] * (part <= 0.04045 ? part / 12.92 : Math.pow((part + 0.055) / 1.055, 2.4));
        }
        return sum;
    }
}
