package lapyard.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a bed stands on decides its floor, its liner and what is done under its walls. Common practice, no source. */
class BySurfaceTest {
    private static JobSheet on(String kind, String bed) {
        return Gardens.sheet("{\"ground\":{\"surfaces\":[{\"kind\":\"" + kind + "\",\"outline\":[[-500,-500],[6000,-500],[6000,6000],[-500,6000]]}],"
                + "\"levels\":[{\"at\":[0,0],\"drop\":0},{\"at\":[2400,0],\"drop\":0},{\"at\":[0,2400],\"drop\":30}]},"
                + "\"beds\":[{\"width\":2400,\"depth\":1200,\"courses\":3" + bed + "}]}");
    }

    private static boolean has(JobSheet sheet, String key) {
        return sheet.beds().get(0).quantities().stream().anyMatch(one -> one.key().toString().equals(key));
    }

    @ParameterizedTest(name = "{0}: slatted {1}, {2}")
    @CsvSource({"grass, false, level", "soil, false, level", "gravel, false, level", "slab, true, scribe", "concrete, true, scribe"})
    void theSurfaceDecides(String kind, boolean slatted, String way) {
        JobSheet sheet = on(kind, "");
        assertEquals(slatted, sheet.garden().beds().get(0).inside().base().slatted());
        assertEquals(way, sheet.ground().beds().get(0).way());
        assertEquals(slatted, has(sheet, "base.bearers"));
        assertEquals(slatted, has(sheet, "liner.slits"));
        assertEquals(!slatted, has(sheet, "dig"), "a strip is levelled");
        assertEquals(slatted, has(sheet, "scribe.most"));
        assertTrue(sheet.beds().get(0).work().liner().stream().allMatch(piece -> piece.wall().isEmpty() == slatted));
        assertTrue(sheet.snags().stream().noneMatch(one -> one.kind() == FindingKind.GROUND_NOT_DRAWN));
    }

    @Test
    void whoNamesAFloorKeepsIt() {
        assertTrue(has(on("grass", ",\"base\":\"slatted\""), "base.bearers"));
        assertFalse(has(on("slab", ",\"base\":\"open\""), "base.bearers"));
        assertTrue(has(on("grass", ",\"liner\":{\"over\":\"floor\"}"), "liner.slits"));
        assertTrue(has(on("grass", ",\"base\":{\"kind\":\"by-surface\",\"bearerEvery\":300}"), "dig"));
    }

    /** Three beds, one on grass: the two others are asked for in one finding. */
    @Test
    void whatIsNotDrawnIsAskedForOnce() {
        JobSheet sheet = Gardens.sheet("{\"ground\":{\"surfaces\":[{\"kind\":\"grass\",\"outline\":[[-500,-500],[2900,-500],[2900,2000],[-500,2000]]}]},"
                + "\"beds\":[{\"id\":\"A\",\"width\":2400,\"depth\":1200},{\"id\":\"B\",\"width\":2400,\"depth\":1200,\"at\":[5000,0]},"
                + "{\"id\":\"C\",\"width\":2400,\"depth\":1200,\"at\":[9000,0]},{\"id\":\"D\",\"width\":2400,\"depth\":1200,\"at\":[13000,0],\"base\":\"open\"}]}");
        List<Finding> asked = sheet.snags().stream().filter(one -> one.kind() == FindingKind.GROUND_NOT_DRAWN).toList();
        assertEquals(1, asked.size());
        assertEquals("beds B, C", asked.get(0).where());
        assertEquals(Finding.Weight.NOTE, asked.get(0).weight());
    }

    /** Beds anywhere over a yard half slab, half grass: each has the floor of the larger part under it. */
    @Test
    void theLargerPartDecides() {
        Random random = new Random(17);
        for (int i = 0; i < 40; i++) {
            int x = random.nextInt(5600);
            JobSheet sheet = Gardens.sheet("{\"ground\":{\"surfaces\":[{\"kind\":\"slab\",\"outline\":[[0,0],[4000,0],[4000,3000],[0,3000]]},"
                    + "{\"kind\":\"grass\",\"outline\":[[4000,0],[8000,0],[8000,3000],[4000,3000]]}]},"
                    + "\"beds\":[{\"width\":2400,\"depth\":1200,\"at\":[" + x + ",500]}]}");
            if (x != 2800) {
                assertEquals(x + 1200 < 4000, sheet.garden().beds().get(0).inside().base().slatted(), "at " + x);
            }
        }
    }
}
