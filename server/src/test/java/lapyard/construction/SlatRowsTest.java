package lapyard.construction;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import lapyard.plan.Base;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Boards of 95 x 1200, gaps of at most 15, 5 off a row's length, no piece under 300: worked by hand. Common practice, no source. */
class SlatRowsTest {
    private static final Base BASE = Base.USUAL;

    /**
     * 425 = 4 x 95 + 3 x 15; one tenth more takes a fifth row of 20 (the least), which leaves 425.1 - 380 - 20 = 25.1 for four gaps.
     * 190 = 2 x 95 without a gap; 189 takes one whole and, over a gap of 15, one of 79.
     */
    @ParameterizedTest(name = "{0} across: {1} rows, gaps of {2}, one ripped to {3}")
    @CsvSource({"425, 4, 15, 0", "425.1, 5, 6.275, 20", "95, 1, 0, 0", "60, 1, 0, 60", "190, 2, 0, 0", "189, 2, 15, 79", "200, 2, 10, 0"})
    void rowsFillTheWidth(double across, int rows, double gap, double ripped) {
        SlatRows laid = SlatRows.of(across, 1205, BASE);
        assertEquals(rows, laid.rows());
        assertEquals(gap, laid.gapMm(), 1e-9);
        assertEquals(ripped, laid.rippedMm());
        // A row of 1205 less 5 is one whole board.
        assertEquals(rows, laid.rowsMm().size());
        laid.rowsMm().forEach(row -> assertEquals(List.of(1200.0), row));
    }

    /** A rest under 300 takes what it lacks from the board before it, where that board keeps 300. */
    @ParameterizedTest(name = "a row of {0} from boards of {1}")
    @CsvSource({
        "2400, 1200, 1200 1200", "2700, 1200, 1200 1200 300", "2699.9, 1200, 1200 1199.9 300", "1300, 1200, 1000 300", "200, 1200, 200",
        "600, 550, 300 300", "599, 550, 550 49", "0, 1200, ''"
    })
    void aShortRestTakesFromTheBoardBeforeIt(double length, double board, String pieces) {
        Base base = new Base(true, new Base.Bearers("50x75", 23, 400, 30), new Base.Slats(95, 22, board, 15, 5, 300), 0, true);
        assertEquals(pieces.isEmpty() ? List.of() : Arrays.stream(pieces.split(" ")).map(Double::valueOf).toList(), SlatRows.row(length, base));
    }

    /** In a slanted floor the rows differ; the longest by what its pieces measure together is told, the first of equal ones. */
    @Test
    void theLongestRowIsTold() {
        List<List<Double>> rows = List.of(List.of(700.0), List.of(500.0, 400.0), List.of(600.0, 300.0), List.of(800.0));
        SlatRows slanted = SlatRows.of(425, 905, BASE).with(rows);
        assertEquals(rows, slanted.rowsMm());
        assertEquals(List.of(500.0, 400.0), slanted.piecesMm());
        assertEquals(List.of(900.0), SlatRows.of(425, 905, BASE).piecesMm());
    }

    /** Rows of 900 leave 300 of a board: with a kerf of 4 four of them need four boards, rows of 598 two, rows of 599 four. */
    @ParameterizedTest(name = "four rows of {0} from {1} boards")
    @CsvSource({"900, 4", "598, 2", "599, 4", "1200, 4"})
    void boardsAreCountedWithTheirKerf(double row, int boards) {
        assertEquals(boards, SlatRows.boards(List.of(SlatRows.of(425, row + 5, BASE)), BASE, 4));
    }
}
