package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Yards full of beds, paths and things, made up with a seed: every bed has its name and no words lie on others. */
@ExtendWith(Open.class)
class CrowdedIT {
    private static final String[] KINDS = {"tap", "tree", "drain", "door", "cover"};

    /** Words in the yard that are shown and lie on each other by more than a pixel, and beds without a name. */
    private static final String ON_OTHERS = "const shown = [...document.querySelectorAll('lap-yard .label')].filter(one => one.checkVisibility() && one.style.display !== 'none')"
            + ".map(one => ({ text: one.textContent, box: one.getBoundingClientRect() })).filter(({ box }) => box.width > 0);"
            + " const found = []; shown.forEach((a, i) => shown.slice(i + 1).forEach(b => {"
            + " const wide = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left), high = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);"
            + " if (wide > 1.5 && high > 1.5) found.push(a.text + ' on ' + b.text + ' by ' + wide.toFixed(1) + ' x ' + high.toFixed(1)); }));"
            + " for (const bed of document.querySelectorAll('lap-yard [data-bed]')) if (!bed.querySelector('.code').checkVisibility()) found.push('no name on ' + bed.dataset.bed);"
            + " return found.slice(0, 5);";

    /** Names of other beds under the tag of the one in hand. */
    private static final String UNDER_TAG = "const tag = document.querySelector('bed-tag').getBoundingClientRect(); const own = document.querySelector('lap-yard').garden.choice.bed;"
            + " return [...document.querySelectorAll('lap-yard [data-bed]')].filter(bed => bed.dataset.bed !== own).map(bed => [bed.dataset.bed, bed.querySelector('.code').getBoundingClientRect()])"
            + ".filter(([, box]) => Math.min(tag.right, box.right) - Math.max(tag.left, box.left) > 1 && Math.min(tag.bottom, box.bottom) - Math.max(tag.top, box.top) > 1).map(([id]) => id).join()";

    /** Distances round the bed in hand that lie on the names of others; where beds stand close on all sides one may. */
    private static final String UNDER_GAPS = "const gaps = [...document.querySelectorAll('.gap-field')].map(one => one.getBoundingClientRect()); const own = document.querySelector('lap-yard').garden.choice.bed;"
            + " return [...document.querySelectorAll('lap-yard [data-bed]')].filter(bed => bed.dataset.bed !== own).map(bed => bed.querySelector('.code').getBoundingClientRect())"
            + ".filter(box => gaps.some(gap => Math.min(gap.right, box.right) - Math.max(gap.left, box.left) > 1 && Math.min(gap.bottom, box.bottom) - Math.max(gap.top, box.top) > 1)).length";

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void wordsNeverLieOnEachOtherAndEveryBedHasItsName(long seed, Page page) throws IOException, InterruptedException {
        Browser browser = page.browser();
        page.open(crowded(new Random(seed)));
        for (int[] screen : new int[][] {{1440, 900}, {1024, 768}, {390, 844}, {844, 390}}) {
            browser.size(screen[0], screen[1], screen[0] < 1000);
            page.showsYard();
            browser.drawn();
            for (double nearer : new double[] {1, 1.7, 3}) {
                browser.js("const yard = document.querySelector('lap-yard'); yard.wholeYard(false); const { left, top, width, height } = yard.frame; const k = arguments[0];"
                        + " const point = [left + width / 2, top + height / 2]; const { view } = yard; yard.look({ k: view.k * k, x: point[0] + (view.x - point[0]) * k, y: point[1] + (view.y - point[1]) * k })", nearer);
                browser.drawn();
                assertEquals(List.of(), browser.js(ON_OTHERS), "seed " + seed + ", " + screen[0] + " x " + screen[1] + ", " + nearer + " times as near");
            }
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13})
    void tagCoversNoNeighboursNameWhileThereIsRoomBeside(long seed, Page page) throws IOException, InterruptedException {
        Browser browser = page.browser();
        page.open(crowded(new Random(seed)));
        browser.click("[data-key^=\"close \"]");
        int beds = browser.all("lap-yard [data-bed]").size();
        assertTrue(beds > 5, beds + " beds");
        for (int i = 0; i < beds; i += 1 + beds / 8) {
            String bed = (String) browser.js("const bed = document.querySelectorAll('lap-yard [data-bed]')[arguments[0]].dataset.bed; document.querySelector('lap-yard').garden.choice.takeBed(bed); return bed", i);
            browser.drawn();
            browser.drawn();
            assertEquals("", browser.js(UNDER_TAG), "seed " + seed + ", bed " + bed + " in hand");
            assertTrue(((Number) browser.js(UNDER_GAPS)).intValue() <= 1, "seed " + seed + ", bed " + bed + ": distances lie on names");
        }
    }

    /** Beds of many sizes on a raster with some left out, so that none lies on another, with paths and things between and over them. */
    private static String crowded(Random random) {
        int columns = 3 + random.nextInt(8);
        int rows = 2 + random.nextInt(6);
        int across = 1400 + random.nextInt(2000);
        int away = 1000 + random.nextInt(1600);
        List<String> beds = new ArrayList<>();
        for (int i = 0; i < columns * rows; i++) {
            if (random.nextInt(6) == 0) continue;
            int wide = 500 + random.nextInt(across - 600);
            int deep = 500 + random.nextInt(away - 560);
            String code = random.nextInt(5) == 0 ? "Herb" + i : random.nextInt(3) == 0 ? String.valueOf(i) : Character.toString('A' + i % 26) + i;
            beds.add(String.format(Locale.ROOT, "{\"id\":\"%s\",\"width\":%d,\"depth\":%d,\"courses\":%d,\"at\":[%d,%d]}", code, wide, deep, 1 + random.nextInt(3), 300 + i % columns * across, 300 + i / columns * away));
        }
        int width = columns * across + 600;
        int depth = rows * away + 600;
        List<String> things = new ArrayList<>();
        for (int i = 0; i < 6; i++) things.add(String.format(Locale.ROOT, "{\"kind\":\"%s\",\"at\":[%d,%d]}", KINDS[random.nextInt(KINDS.length)], random.nextInt(width), random.nextInt(depth)));
        List<String> paths = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            int at = 700 + random.nextInt((i % 2 == 0 ? depth : width) - 1400);
            paths.add(String.format(Locale.ROOT, i % 2 == 0 ? "{\"id\":\"P%d\",\"line\":[[700,%d],[%d,%2$d]],\"width\":900}" : "{\"id\":\"P%d\",\"line\":[[%d,700],[%2$d,%d]],\"width\":900}", i, at, (i % 2 == 0 ? width : depth) - 700));
        }
        String outline = String.format(Locale.ROOT, "[[0,0],[%1$d,0],[%1$d,%2$d],[0,%2$d]]", width, depth);
        return "{\"format\":1,\"name\":\"Crowded\",\"ground\":{\"outline\":" + outline + ",\"surfaces\":[{\"kind\":\"grass\",\"outline\":" + outline + "}],\"keepClear\":" + things + "},\"beds\":" + beds + ",\"paths\":" + paths + "}";
    }
}
