package lapyard.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import lapyard.plan.Told;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import lapyard.working.Progress;
import org.junit.jupiter.params.provider.CsvSource;

class ReplanJsonTest {
    private static String garden(String sawn) {
        return """
            {"name":"M+N","kerf":4,"endTrim":10,
             "stock":[{"id":"L24","length":2400,"price":17.40},{"id":"L30","length":3000,"price":21.90},
                      {"id":"L36","length":3600,"price":26.40},{"id":"L48","length":4800,"price":36.00}],
             "pieces":[{"id":"A","length":2900,"count":3},{"id":"F","length":2300,"count":3},
                       {"id":"E","length":1700,"count":9},{"id":"B","length":1400,"count":3},
                       {"id":"C","length":1200,"count":3},{"id":"D","length":900,"count":3},
                       {"id":"N","length":800,"count":6}],
             "sawn":%s}"""
                .formatted(sawn);
    }

    /** By hand: 15 pieces and their kerfs take 18660; boards 7 to 10 hold 4 x 4784 less 700 = 18436. */
    @Test
    void theRestAfterSixBoardsAndASplitOneTakesOneMoreBoardOf2400() {
        var result = SolveLine.solve("cutting", garden("""
                    [{"board":"#1-3","stock":"L48","count":3,"cut":["A","E"]},
                     {"board":"#4-6","stock":"L48","count":3,"cut":["E","E","C"]},
                     {"board":"#7","stock":"L48","lost":700},{"board":"#8-10","stock":"L48","count":3}]"""),
                5, Progress.UNHEARD);
        assertEquals(
                "{\"cut\":15,\"wanted\":15,\"needed\":18660,\"there\":18436,\"fit\":14,"
                        + "\"lacking\":[{\"id\":\"N\",\"length\":800,\"count\":1}],\"buy\":{\"L24\":1}}",
                result.get("rest").toString());
        assertEquals("17.40", result.get("cost").toString());
        assertTrue(result.get("proven").booleanValue());
    }

    @ParameterizedTest(name = "{1}")
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
        [{"board":"#1","stock":"L48","opened":false,"cut":["A"]}]        | 1 piece (A) is cut from board #1, but the board is not opened. Open the board in the tally first
        [{"board":"#1","stock":"L48","count":4,"cut":["A"]}]             | Of piece A, 4 pieces are cut, and 3 pieces are planned. Take 1 piece off the tally
        [{"board":"#1","stock":"L50"}]                                   | Board #1 is of L50, which is neither a stock length nor a board on hand.
        [{"board":"#1","stock":"L48","lost":-7}]                         | sawn board 1, lost: "lost" is -7 mm; at least 0 mm is needed
        [{"board":"#1","stock":"L48","cut":"A"}]                         | sawn board 1, cut: "cut" must be a list in square brackets, not the text "A"
        [{"board":"#1","stock":"L48","count":1000000000}]                | "sawn" has 1000000000 boards; at most 100000 boards are possible
        [{"board":"#1"}]                                                 | sawn board 1, stock: "stock" is missing. Give text in quotes
        7                                                                | "sawn" must be a list in square brackets, not the number 7
        """)
    void whatCannotBeTrueIsNamedWithAWayOut(String sawn, String says) {
        String message = Told.refusal(assertThrows(IllegalArgumentException.class, () -> SolveLine.solve("cutting", garden(sawn), 1, Progress.UNHEARD)));
        assertTrue(message.contains(says), message);
    }
}
