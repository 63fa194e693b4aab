package lapyard.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Published and hand-checked examples, each with its source; stock as length@price, pieces as length x count. */
class WorkedExamplesTest {
    @ParameterizedTest(name = "{0} takes {5}")
    @CsvSource(delimiter = '|', textBlock = """
        # Wikipedia, 'Cutting stock problem', paper-machine illustration: 73 master rolls
        paper rolls  | 0 | 0 | 5600@1 | 1380x22 1520x25 1560x12 1710x14 1820x18 1880x18 1930x20 2000x10 2050x12 2100x14 2140x16 2150x18 2200x20 | 73
        # W. L. Winston, Operations Research: Applications and Algorithms, 17-ft boards; 310 ft / 17 = 18.2, and 15 x (9+5+3) + 2 x (5+3+3+3+3) + (5+5+5) + (3+3)
        17 ft boards | 0 | 0 | 17@1 | 3x25 5x20 9x15 | 19
        # V. Chvatal, Linear Programming (Freeman, 1983), ch. 13, 100-in raws; figures recalled, LP value 452.25
        100 in raws  | 0 | 0 | 100@1 | 45x97 36x610 31x395 14x211 | 453
        # R. Fourer, D. M. Gay, B. W. Kernighan, AMPL, cut.dat, 110-in rolls; LP value 46.25
        110 in rolls | 0 | 0 | 110@1 | 20x48 45x35 50x24 55x10 75x8 | 47
        # P. C. Gilmore, R. E. Gomory, Operations Research 9 (1961) 849-859, three stock lengths; figures recalled; worth 2, 3, 5 a piece of 2, 3, 4 ft proves 170
        three stocks | 0 | 0 | 9@10 6@7 5@6 | 2x20 3x10 4x20 | 170
        # Integer round-up literature (Marcotte 1986; Scheithauer and Terno 1995), figures recalled: length alone says 2
        no round-up  | 0 | 0 | 132@1 | 44x2 33x3 12x6 | 3
        # OR-Tools documentation, bin packing example, 11 items, capacity 100; figures recalled
        eleven items | 0 | 0 | 100@1 | 48x1 42x2 36x3 30x2 27x1 24x1 19x1 | 4
        # by hand: 3 x 996 + 2 x 4 = 2996 <= 3000
        kerf fits    | 4 | 0 | 3000@1 | 996x3 | 1
        # by hand: 3 x 998 + 2 x 4 = 3002 > 3000
        kerf misses  | 4 | 0 | 3000@1 | 998x3 | 2
        # by hand: 799 + 799 + 796 + 2 x 3 = 2400, so a flush end needs no third cut
        flush end    | 3 | 0 | 2400@1 | 799x2 796x1 | 1
        """)
    void takesThePublishedCostAndProvesIt(
            String name, double kerf, double trim, String stock, String pieces, String cost) {
        List<CuttingProblem.Stock> boards = new ArrayList<>();
        for (String board : stock.split(" ")) {
            String[] parts = board.split("@");
            boards.add(Jobs.board(Double.parseDouble(parts[0]), parts[1]));
        }
        String[] lengths = pieces.replace('x', ' ').split(" ");
        double[] numbers = new double[lengths.length];
        for (int i = 0; i < numbers.length; i++) numbers[i] = Double.parseDouble(lengths[i]);
        var result = Jobs.solved(Jobs.job(name, kerf, trim, boards, Jobs.pieces(numbers)), CuttingSolver.FULL);
        assertEquals(cost, result.cost().toPlainString());
        assertTrue(result.proven());
    }
}
