package lapyard.construction;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class FirstFitTest {
    /** Piece by piece, each into the first board that has room: the rule as it is written down. */
    private static int oneByOne(List<Double> pieces, double board, double kerf) {
        List<Double> sorted = new ArrayList<>(pieces);
        sorted.sort(Comparator.reverseOrder());
        List<Double> left = new ArrayList<>();
        for (double piece : sorted) {
            int i = 0;
            while (i < left.size() && left.get(i) < piece - 1e-6) {
                i++;
            }
            if (i == left.size()) {
                left.add(Math.max(board, piece));
            }
            left.set(i, left.get(i) - piece - kerf);
        }
        return left.size();
    }

    @Test
    void fillingAlikeBoardsTogetherIsFirstFitPieceByPiece() {
        Random random = new Random(17);
        for (int i = 0; i < 3000; i++) {
            FirstFit fit = new FirstFit();
            List<Double> pieces = new ArrayList<>();
            for (int kinds = 1 + random.nextInt(6); kinds > 0; kinds--) {
                double length = 100 + random.nextInt(i % 10 == 0 ? 3000 : 2280);
                int count = 1 + random.nextInt(9);
                fit.add(length, count);
                for (int k = 0; k < count; k++) {
                    pieces.add(length);
                }
            }
            assertEquals(oneByOne(pieces, 2380, 4), fit.boards(2380, 4), () -> "pieces " + pieces);
        }
    }

    /** Nine strips of 2400 for the worked L: 5 of 1270 + 870, 3 of 1270, 1 of 1600. */
    @Test
    void theWorkedStripsFillNine() {
        FirstFit fit = new FirstFit();
        fit.add(1270, 8);
        fit.add(870, 5);
        fit.add(1600, 1);
        assertEquals(9, fit.boards(2380, 4));
    }
}
