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

    /** Words that leave the picture, or that name something in the ground and lie on a tape; and gates without a name. */
    private static final String CUT = "const yard = document.querySelector('lap-yard'); const all = yard.getBoundingClientRect(), whole = arguments[0];"
            + " const tapes = [...yard.querySelectorAll('.tape rect')].map(one => one.getBoundingClientRect()); const found = [];"
            + " const meet = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1.5 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1.5;"
            + " for (const one of yard.querySelectorAll('.label')) { if (one.style.display === 'none' || !one.checkVisibility({ visibilityProperty: true })) continue;"
            + " const box = one.getBoundingClientRect(); if (!box.width || !meet(box, all)) continue;"
            + " if (box.left < all.left - 1 || box.top < all.top - 1 || box.right > all.right + 1 || box.bottom > all.bottom + 1) found.push(one.textContent + ' is cut');"
            + " else if (one.matches('.small') && tapes.some(tape => meet(tape, box))) found.push(one.textContent + ' lies on a tape'); }"
            + " if (whole) for (const gate of yard.querySelectorAll('.keep-clear .label')) if (gate.style.display === 'none') found.push('no name at ' + gate.textContent);"
            + " return found.slice(0, 5);";

    @ParameterizedTest
    @ValueSource(longs = {21, 22, 23, 24, 25, 26})
    void namesAtTheYardsEdgeStayInThePicture(long seed, Page page) throws IOException, InterruptedException {
        Browser browser = page.browser();
        Random random = new Random(seed);
        page.open(edged(random));
        for (int[] screen : new int[][] {{1440, 900}, {1024, 768}, {390, 844}, {844, 390}}) {
            browser.size(screen[0], screen[1], screen[0] < 1000);
            page.showsYard();
            browser.drawn();
            browser.js("document.querySelector('lap-yard').wholeYard(false)");
            browser.drawn();
            assertEquals(List.of(), browser.js(CUT, true), "seed " + seed + ", " + screen[0] + " x " + screen[1]);
            for (int i = 0; i < 8; i++) {
                browser.js("const yard = document.querySelector('lap-yard'); yard.wholeYard(false); const { view, size: [wide, high] } = yard; const [k, dx, dy] = arguments;"
                        + " yard.look({ k: view.k * k, x: wide / 2 + (view.x - wide * dx) * k, y: high / 2 + (view.y - high * dy) * k })", 0.7 + 3 * random.nextDouble(), random.nextDouble(), random.nextDouble());
                browser.drawn();
                assertEquals(List.of(), browser.js(CUT, false), "seed " + seed + ", look " + i + ", " + screen[0] + " x " + screen[1]);
            }
        }
    }

    /** A yard with straight or slanting edges, gates and doors on every side and at corners, and a few beds. */
    private static String edged(Random random) {
        int width = 7000 + random.nextInt(9000);
        int depth = 6000 + random.nextInt(8000);
        int slant = random.nextInt(2) * random.nextInt(1200);
        int[][] corners = {{0, 0}, {width, 0}, {width - slant, depth}, {slant / 2, depth - slant}};
        List<String> things = new ArrayList<>();
        for (int side = 0; side < 4; side++) {
            int[] from = corners[side];
            int[] to = corners[(side + 1) % 4];
            double along = new double[] {0, 0.3 + 0.4 * random.nextDouble()}[random.nextInt(2)];
            String at = String.format(Locale.ROOT, "[%d,%d]", Math.round(from[0] + along * (to[0] - from[0])), Math.round(from[1] + along * (to[1] - from[1])));
            things.add(random.nextInt(4) == 0 ? "{\"kind\":\"tap\",\"at\":" + at + "}" : "{\"kind\":\"gate\",\"hinge\":" + at + ",\"leaf\":900,\"swing\":\"" + (random.nextBoolean() ? "in" : "out") + "\"}");
        }
        String outline = String.format(Locale.ROOT, "[[0,0],[%d,0],[%d,%d],[%d,%d]]", width, corners[2][0], corners[2][1], corners[3][0], corners[3][1]);
        return String.format(Locale.ROOT, "{\"format\":1,\"name\":\"Edged\",\"ground\":{\"outline\":%s,\"surfaces\":[{\"kind\":\"grass\",\"outline\":%1$s}],\"keepClear\":%s},\"beds\":["
                + "{\"id\":\"A\",\"width\":1800,\"depth\":900,\"courses\":2,\"at\":[1500,1600]},{\"id\":\"B\",\"width\":900,\"depth\":2400,\"courses\":3,\"at\":[%d,%d]}]}", outline, things, width - 3200, depth - 4600);
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
