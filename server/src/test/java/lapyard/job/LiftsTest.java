package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import lapyard.plan.Finding;
import lapyard.plan.Finding.Weight;
import org.junit.jupiter.api.Test;

/** Lifts over what one person manages: one note a kind for the whole garden. */
class LiftsTest {
    private static final String M =
            "{\"id\":\"M\",\"outline\":[[0,0],[3000,0],[3000,1500],[1800,1500],[1800,2400],[0,2400]],\"courses\":3}";
    private static final String ONLY_4800 =
            ",\"catalogue\":{\"sections\":[{\"id\":\"100x200\",\"thickness\":100,\"height\":200,\"stock\":[{\"length\":4800,\"price\":36.00}]}]}";

    private static List<Finding> lifts(String document) {
        return Gardens.sheet(document).snags().stream()
                .filter(finding -> finding.where().endsWith(", lifts"))
                .toList();
    }

    /** 2.9 m 34.8 kg and 2.3 m 27.6 kg, three each; two people together are good for 2/3 of 2 x 25 = 33.3 (HSE L23, from memory). */
    @Test
    void fewLiftsAreNamedByTheirMarks() {
        Finding note = lifts("{\"beds\":[" + M + "]}").get(0);
        assertEquals("bed M, lifts", note.where());
        assertEquals(Weight.NOTE, note.weight());
        assertTrue(note.text().startsWith("6 lifts over 25 kg, two people each: M-1A 34.8, M-1F 27.6"), note.text());
        assertTrue(note.text().endsWith("; 3 over the guide of 33.3 kg for two"), note.text());
    }

    /** A board of 4800 is 57.6 kg. */
    @Test
    void theBoardsToUnloadAreCountedByTheirLength() {
        Finding note = Gardens.sheet("{\"beds\":[" + M + "]" + ONLY_4800 + "}").snags().stream()
                .filter(finding -> finding.where().equals("timber 100x200"))
                .findFirst()
                .orElseThrow();
        assertTrue(note.text().contains("two people each: 7 of 4800 at 57.6"), note.text());
    }

    @Test
    void sixtyBedsAreOneNote() {
        List<String> beds = new ArrayList<>();
        for (int i = 1; i <= 60; i++) {
            beds.add("{\"id\":\"" + (i < 10 ? "0" : "") + i + "\",\"width\":2400,\"depth\":1200,\"at\":[" + i * 4000 + ",0]}");
        }
        List<Finding> found = lifts("{\"beds\":[" + String.join(",", beds) + "]}");
        assertEquals(1, found.size());
        assertEquals("beds 01-60, lifts", found.get(0).where());
        assertTrue(found.get(0).text().startsWith("360 lifts over 25 kg, two people each: 360 of 27.6"), found.get(0).text());
    }

    @Test
    void whatIsBeyondTwoPeopleIsANoteOfItsOwn() {
        List<Finding> found = lifts("{\"beds\":[{\"id\":\"K\",\"width\":4500,\"depth\":900,\"courses\":2}]}");
        assertEquals(1, found.size());
        assertTrue(found.get(0).text().startsWith("4 lifts over 50 kg, beyond two people: K-1A 52.8"), found.get(0).text());
    }
}
