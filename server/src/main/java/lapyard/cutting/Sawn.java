package lapyard.cutting;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What has become of one board so far: it is there, whole or opened, with what was cut from it and what was lost.
 *
 * @param board   its own name, such as {@code #7}
 * @param stock   id of the stock length or board on hand that it is
 * @param opened  whether the saw has been at it
 * @param cut     ids of good pieces cut from it, one entry a piece
 * @param spoiled ids of pieces cut wrong: their length is gone and they are still wanted
 * @param lostMm  further length that can't be used, such as a split; mm
 * @param leftMm  what was measured as left, the far end's trim still on it, mm; empty where it is worked out from the cuts
 */
public record Sawn(
        String board,
        String stock,
        boolean opened,
        List<String> cut,
        List<String> spoiled,
        double lostMm,
        OptionalDouble leftMm) {
    public Sawn {
        cut = List.copyOf(cut);
        spoiled = List.copyOf(spoiled);
    }

    /** A board that waits whole. */
    public static Sawn whole(String board, String stock) {
        return new Sawn(board, stock, false, List.of(), List.of(), 0, OptionalDouble.empty());
    }

    /** A board of a plan whose planned cuts are all done. */
    public static Sawn done(SawBoard board) {
        return new Sawn(
                name(board),
                board.stock(),
                true,
                board.cuts().stream().map(SawBoard.Cut::mark).toList(),
                List.of(),
                0,
                OptionalDouble.empty());
    }

    /** A board of a plan that is there and not opened yet. */
    public static Sawn waiting(SawBoard board) {
        return whole(name(board), board.stock());
    }

    /** The same board with so much of it lost, mm. */
    public Sawn losing(double mm) {
        return new Sawn(board, stock, opened, cut, spoiled, lostMm + mm, leftMm);
    }

    /** {@code #7} for board 7 of a plan. */
    public static String name(SawBoard board) {
        return "#" + board.number();
    }
}
