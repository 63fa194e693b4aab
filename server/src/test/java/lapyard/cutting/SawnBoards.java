package lapyard.cutting;

import java.util.List;
import java.util.OptionalDouble;

/** Boards of a plan as the tests tell them to a new plan. */
public final class SawnBoards {
    private SawnBoards() {}

    /** All its planned cuts are done. */
    public static Sawn done(SawBoard board) {
        return new Sawn(Sawn.name(board), board.stock(), true, board.cuts().stream().map(SawBoard.Cut::mark).toList(),
                List.of(), 0, OptionalDouble.empty());
    }

    /** It is there and not opened yet. */
    public static Sawn waiting(SawBoard board) {
        return new Sawn(Sawn.name(board), board.stock(), false, List.of(), List.of(), 0, OptionalDouble.empty());
    }

    /** The same board with so much of it lost, mm. */
    static Sawn losing(Sawn sawn, double mm) {
        return new Sawn(sawn.board(), sawn.stock(), sawn.opened(), sawn.cut(), sawn.spoiled(), sawn.lostMm() + mm, sawn.leftMm());
    }
}
