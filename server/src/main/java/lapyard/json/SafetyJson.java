package lapyard.json;

import java.util.List;
import lapyard.job.Provenance;
import lapyard.plan.RackBoard;
import lapyard.plan.Treatment;

/** Where a board on hand comes from and where it may go. */
record SafetyJson(String board, String section, String origin, boolean coated, Treatment treatment, String checkedBy,
        String allowed, String why, List<String> beds) {
    static SafetyJson of(Provenance one) {
        RackBoard board = one.board();
        return new SafetyJson(board.id(), board.section(), board.origin(), board.coated(), board.treatment(),
                board.checkedBy(), one.allowed(), one.why(), one.beds());
    }
}
