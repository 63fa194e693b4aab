package lapyard.construction;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** How many boards some pieces take when the longest goes first into the first board that has room. */
final class FirstFit {
    /** Lengths with how often each is wanted, longest first. */
    private final Map<Double, Integer> pieces = new TreeMap<>(Comparator.reverseOrder());

    void add(double lengthMm, int count) {
        pieces.merge(lengthMm, count, Integer::sum);
    }

    /** Lengths with how often each was added, longest first. */
    Map<Double, Integer> pieces() {
        return pieces;
    }

    /** Boards with the same length left, standing next to each other. */
    private record Alike(double leftMm, int count) {}

    /**
     * @param boardMm usable length of a board; a longer piece takes one of its own
     * @param kerfMm  lost between two pieces of a board
     */
    int boards(double boardMm, double kerfMm) {
        List<Alike> open = new ArrayList<>();
        for (Map.Entry<Double, Integer> piece : pieces.entrySet()) {
            List<Alike> after = new ArrayList<>();
            int left = piece.getValue();
            for (Alike boards : open) left = fill(boards, piece.getKey(), left, kerfMm, after);
            open(piece.getKey(), left, boardMm, kerfMm, after);
            open = after;
        }
        return open.stream().mapToInt(Alike::count).sum();
    }

    private static void open(double pieceMm, int wanted, double boardMm, double kerfMm, List<Alike> after) {
        double step = pieceMm + kerfMm;
        double whole = Math.max(boardMm, pieceMm);
        int each = (int) Math.floor((whole + kerfMm + 1e-6) / step);
        if (wanted / each > 0) after.add(new Alike(whole - each * step, wanted / each));
        if (wanted % each > 0) after.add(new Alike(whole - wanted % each * step, 1));
    }

    /** Fills boards one after the other; returns the pieces left over. */
    private static int fill(Alike boards, double pieceMm, int wanted, double kerfMm, List<Alike> after) {
        double step = pieceMm + kerfMm;
        int each = (int) Math.floor((boards.leftMm() + kerfMm + 1e-6) / step);
        if (each == 0 || wanted == 0) {
            after.add(boards);
            return wanted;
        }
        int full = Math.min(boards.count(), wanted / each);
        int rest = full < boards.count() ? wanted - full * each : 0;
        int untouched = boards.count() - full - (rest > 0 ? 1 : 0);
        if (full > 0) after.add(new Alike(boards.leftMm() - each * step, full));
        if (rest > 0) after.add(new Alike(boards.leftMm() - rest * step, 1));
        if (untouched > 0) after.add(new Alike(boards.leftMm(), untouched));
        return wanted - full * each - rest;
    }
}
