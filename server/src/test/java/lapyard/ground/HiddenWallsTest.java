package lapyard.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import lapyard.job.Gardens;
import lapyard.plan.Garden;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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

    /** A hand is 100: a fence 100 off hides the wall and one 101 off does not; a thick wall counts by its near face, a post for nothing. */
    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', textBlock = """
        fence at 100            | [[0,1300],[2400,1300]]                          | C
        fence at 101            | [[0,1301],[2400,1301]]                          |
        fence that ends early   | [[0,1280],[2398,1280]]                          | C
        fence half as long      | [[0,1280],[1200,1280]]                          |
        wall of brick at 60     | outline [[-100,1260],[2600,1260],[2600,1480],[-100,1480]] | C
        wall of brick at 120    | outline [[-100,1320],[2600,1320],[2600,1480],[-100,1480]] |
        wall in the bed         | outline [[-100,1100],[2600,1100],[2600,1480],[-100,1480]] |
        fence along the bed     | [[0,1200],[2400,1200]]                          | C
        corner of two fences    | [[-50,-50],[-50,1250],[2450,1250]]                  | C D
        """)
    void aFenceHidesWhatIsWithinAHandOfIt(String name, String line, String hidden) {
        Garden garden = Gardens.garden("{\"ground\":{\"keepClear\":[{\"kind\":\"wall\"," + (line.startsWith("outline") ? "\"outline\":" + line.substring(8) : "\"line\":" + line) + "}]},\"beds\":[{\"id\":\"A\",\"width\":2400,\"depth\":1200}]}");
        assertEquals(hidden == null ? Set.of() : Set.of(hidden.split(" ")), HiddenWalls.of(garden).garden().beds().get(0).walls().hidden(), name);
    }
}
