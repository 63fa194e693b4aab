package lapyard.construction;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** How many boards some pieces take when the longest goes first into the first board that has room. */
final class FirstFit {
    private FirstFit() {}

    /**
     * @param piecesMm none longer than {@code boardMm}
     * @param boardMm  usable length of a board
     * @param kerfMm   lost between two pieces of a board
     */
    static int boards(List<Double> piecesMm, double boardMm, double kerfMm) {
        List<Double> longestFirst = new ArrayList<>(piecesMm);
        longestFirst.sort(Comparator.reverseOrder());
        List<Double> left = new ArrayList<>();
        for (double piece : longestFirst) {
            int board = 0;
            while (board < left.size() && left.get(board) < piece - 1e-6) {
                board++;
            }
            if (board == left.size()) {
                left.add(boardMm);
            }
            left.set(board, left.get(board) - piece - kerfMm);
        }
        return left.size();
    }
}
