package lapyard.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import lapyard.job.Gardens;
import lapyard.plan.Garden;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;

class HiddenWallsTest {
    /** The fence runs 80 behind wall C of 2400 and beside wall B at 120; the deck lies 60 in front of wall A. */
    @Test
    void aFenceOrADeckCloserThanAHandHidesTheWholeWallOrNone() {
        Garden garden = Gardens.garden("""
                {"ground":{"keepClear":[{"kind":"wall","line":[[0,1280],[3000,1280]]},{"kind":"wall","line":[[2520,0],[2520,1200]]}],
                           "surfaces":[{"kind":"deck","outline":[[-500,-2000],[4000,-2000],[4000,-60],[-500,-60]]}]},
                 "beds":[{"id":"A","width":2400,"depth":1200}]}""");
        HiddenWalls hidden = HiddenWalls.of(garden);
        assertEquals(Set.of("A", "C"), hidden.garden().beds().get(0).walls().hidden());
        assertEquals(1, hidden.findings().size());
        assertTrue(Told.text(hidden.findings().get(0)).contains("has 100 mm or less to"), hidden.findings().toString());
        assertTrue(Told.text(hidden.findings().get(0)).contains("walls"), hidden.findings().toString());
    }

    @Test
    void halfAFenceHidesNothing() {
        Garden garden = Gardens.garden("""
                {"ground":{"keepClear":[{"kind":"wall","line":[[0,1280],[1200,1280]]}]},"beds":[{"id":"A","width":2400,"depth":1200}]}""");
        assertSame(garden, HiddenWalls.of(garden).garden());
    }

    @Test
    void theDeckUnderABedHidesNothing() {
        Garden garden = Gardens.garden("""
                {"ground":{"surfaces":[{"kind":"deck","outline":[[-500,-500],[3000,-500],[3000,2000],[-500,2000]]}]},"beds":[{"id":"A","width":2400,"depth":1200}]}""");
        assertSame(garden, HiddenWalls.of(garden).garden());
    }

    /** Two beds 80 apart hide each other's walls; the shorter one's wall is covered, the longer one's is not. */
    @Test
    void bedsHideEachOther() {
        Garden garden = Gardens.garden("""
                {"beds":[{"id":"A","width":2400,"depth":1200},{"id":"B","width":1200,"depth":1200,"at":[0,1280]}]}""");
        HiddenWalls hidden = HiddenWalls.of(garden);
        assertEquals(Set.of(), hidden.garden().beds().get(0).walls().hidden());
        assertEquals(Set.of("A"), hidden.garden().beds().get(1).walls().hidden());
    }

    @Test
    void aBedThatNamesItsSeenWallsKeepsThem() {
        Garden garden = Gardens.garden("""
                {"ground":{"keepClear":[{"kind":"wall","line":[[0,1280],[3000,1280]]}]},
                 "beds":[{"id":"A","width":2400,"depth":1200,"seen":["A","C"]}]}""");
        assertEquals(Set.of("B", "D"), HiddenWalls.of(garden).garden().beds().get(0).walls().hidden());
    }
}
