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
 * @param goneMm  lengths of pieces sawn from it that the job does not have, mm
 */
public record Sawn(
        String board,
        String stock,
        boolean opened,
        List<String> cut,
        List<String> spoiled,
        double lostMm,
        OptionalDouble leftMm,
        List<Double> goneMm) {
    public Sawn {
        cut = List.copyOf(cut);
        spoiled = List.copyOf(spoiled);
        goneMm = List.copyOf(goneMm);
    }

    /** With pieces of the job alone. */
    public Sawn(String board, String stock, boolean opened, List<String> cut, List<String> spoiled, double lostMm, OptionalDouble leftMm) {
        this(board, stock, opened, cut, spoiled, lostMm, leftMm, List.of());
    }

    /** {@code #7} for board 7 of a plan. */
    public static String name(SawBoard board) {
        return "#" + board.number();
    }
}
