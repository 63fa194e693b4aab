package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.WayKind;
import org.junit.jupiter.api.Test;

/** A garden that is built from boards on hand alone. */
class RackOnlyTest {
    private static List<Finding> found(int longOnes) {
        return Job.prepare(Gardens.garden("""
                {"beds":[{"id":"A","width":2400,"depth":1200,"courses":2}],
                 "catalogue":{"sections":[{"id":"100x200","thickness":100,"height":200,"goodFaces":2,"stock":[]}]},
                 "rack":[{"id":"K","length":2600,"count":%d,"goodFaces":2,"origin":"larch from a fence","treatment":"none"},
                         {"id":"J","length":1400,"count":4,"goodFaces":2,"origin":"larch from a fence","treatment":"none"}]}""".formatted(longOnes)))
                .snags().stream()
                .filter(finding -> finding.kind() == FindingKind.BOARDS_RUN_OUT || finding.kind() == FindingKind.BOARDS_RUN_OUT_PERHAPS
                        || finding.kind() == FindingKind.PIECE_NO_BOARD)
                .toList();
    }

    /** Two courses have four long walls of 2300 or 2400, one a board: with three boards one is left over, by counting. */
    @Test
    void aWallThatIsLeftOverIsProvedAndTheBoardForItIsNamed() {
        List<Finding> found = found(3);
        assertEquals(1, found.size(), found.toString());
        assertEquals(FindingKind.BOARDS_RUN_OUT, found.get(0).kind());
        assertEquals(1, found.get(0).amount().orElseThrow().value());
        assertEquals(WayKind.GET_BOARDS, found.get(0).ways().get(0).kind());
        assertTrue(found.get(0).ways().get(0).toString().contains("count=1"), found.get(0).ways().toString());
        assertEquals(List.of(), found(4));
    }
}
