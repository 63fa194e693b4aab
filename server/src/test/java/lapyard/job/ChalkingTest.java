package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import lapyard.cutting.CuttingResult.BoardLine;
import lapyard.plan.Finding;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;

/** Which timber comes from which board. Boards of the catalogue cost money, so what is on hand is used up first. */
class ChalkingTest {
    private static final String SECTION = """
            "catalogue":{"sections":[{"id":"100x200","thickness":100,"height":200,"density":600,"stock":[{"length":4800,"price":36.00}]}]}""";

    private static Map<String, String> boards(JobSheet sheet) {
        Map<String, String> boardOf = new HashMap<>();
        for (BoardLine line : sheet.cutting().get(0).result().plan()) {
            line.pieces().forEach(mark -> boardOf.put(mark, line.stock()));
        }
        return boardOf;
    }

    /**
     * The 2900s of wall A lie in courses 1, 2, 3 and can only come one from each board of 2950. Boards as weighed: 33.1,
     * 38.4 and 35.0 kg: course 1 the 38.4, course 2 the 35.0, course 3 the 33.1.
     */
    @Test
    void theHeaviestOfAlikeBoardsGoesToCourse1() {
        JobSheet sheet = Gardens.sheet("""
                {"beds":[{"id":"M","width":3000,"depth":1200,"seen":["B"]}],
                 "rack":[{"id":"L","length":2950,"weight":33.1},{"id":"H","length":2950,"weight":38.4},{"id":"S","length":2950,"weight":35.0}],
                 %s}""".formatted(SECTION));
        Map<String, String> boardOf = boards(sheet);
        // Both long walls want 2900s: six pieces, three boards on hand. Whichever wall, heavy lies under light.
        Map<String, Integer> courseOf = new HashMap<>();
        boardOf.forEach((mark, board) -> {
            if (List.of("L", "H", "S").contains(board)) {
                courseOf.put(board, Integer.parseInt(mark.substring(2, 3)));
            }
        });
        assertEquals(3, courseOf.size(), boardOf.toString());
        assertTrue(courseOf.get("H") <= courseOf.get("S") && courseOf.get("S") <= courseOf.get("L"), courseOf.toString());
    }

    @Test
    void withAsManyBoardsAsPiecesTheStackIsSortedByWeight() {
        JobSheet sheet = Gardens.sheet("""
                {"beds":[{"id":"M","width":3000,"depth":3000,"courses":3,"seen":["B"]}],
                 "rack":[{"id":"L","length":2950,"count":4,"weight":33.1},{"id":"H","length":2950,"count":4,"weight":38.4},
                         {"id":"S","length":2950,"count":4,"weight":35.0}],
                 %s}""".formatted(SECTION));
        boards(sheet).forEach((mark, board) ->
                assertEquals(Map.of('1', "H", '2', "S", '3', "L").get(mark.charAt(2)), board, mark));
    }

    /** Walls B seen only: its pieces come from boards with a good face, and the rim's from the board with two. */
    @Test
    void seenWallsGetGoodFacesAndTheRimTheBest() {
        JobSheet sheet = Gardens.sheet("""
                {"beds":[{"id":"M","width":3000,"depth":3000,"courses":3,"seen":["B"]}],
                 "rack":[{"id":"P","length":2950,"count":9,"goodFaces":0},{"id":"G","length":2950,"count":2,"goodFaces":1},
                         {"id":"T","length":2950,"count":1,"goodFaces":2}],
                 %s}""".formatted(SECTION));
        Map<String, String> boardOf = boards(sheet);
        assertEquals("G", boardOf.get("M-1B"));
        assertEquals("G", boardOf.get("M-2B"));
        assertEquals("T", boardOf.get("M-3B"));
        assertEquals("P", boardOf.get("M-1A"));
    }

    /** All walls seen, 12 pieces; nine boards have a good face and three plain ones lie idle. */
    @Test
    void aShortageOfGoodFacesIsCountedWithItsChoices() {
        JobSheet sheet = Gardens.sheet("""
                {"beds":[{"id":"M","width":3000,"depth":3000,"courses":3}],
                 "rack":[{"id":"P","length":2950,"count":3,"goodFaces":0},{"id":"G","length":2950,"count":9,"goodFaces":1}],
                 %s}""".formatted(SECTION));
        Finding note = sheet.snags().stream()
                .filter(finding -> finding.where().endsWith("good faces"))
                .findFirst()
                .orElseThrow();
        assertEquals(Finding.Weight.NOTE, note.weight());
        assertTrue(
                Told.text(note).startsWith("12 pieces in seen walls need a good face; boards on hand give 9 pieces"), Told.text(note));
        assertEquals(3, note.amount().orElseThrow().value());
        assertTrue(Told.ways(note).get(1).startsWith("Hide wall "), Told.ways(note).toString());
    }

    /** 195 high beside 200 is 5 apart; 99 thick beside 100 may lie in the same course. */
    @Test
    void aBoardOfAnotherHeightMayNotShareACourse() {
        JobSheet sheet = Gardens.sheet("""
                {"beds":[{"id":"M","width":3000,"depth":1200}],
                 "rack":[{"id":"LOW","length":2950,"height":195},{"id":"THIN","length":2950,"count":6,"thickness":99}],
                 %s}""".formatted(SECTION));
        Finding snag = sheet.snags().stream()
                .filter(finding -> finding.where().equals("board LOW"))
                .findFirst()
                .orElseThrow();
        assertEquals(Finding.Weight.SNAG, snag.weight());
        assertTrue(Told.text(snag).startsWith("Board LOW is 195 mm high; 100x200 is 200 mm."), Told.text(snag));
        assertEquals(new Finding.Amount(5, "mm"), snag.amount().orElseThrow());
        assertTrue(boards(sheet).containsValue("THIN"));
        assertTrue(!boards(sheet).containsValue("LOW"));
    }

    /** Thickness 95 as measured: the worked 2900 becomes 3000 - 95 = 2905, and three courses of 195 stand 585. */
    @Test
    void aMeasuredSectionReckonsWithItsOwnThicknessAndHeight() {
        JobSheet sheet = Gardens.sheet("""
                {"beds":[{"id":"M","width":3000,"depth":1200,"section":"95x195"}],
                 "catalogue":{"sections":[{"id":"95x195","thickness":95,"height":195,"stock":[{"length":4800,"price":36.00}]}]}}""");
        assertEquals(2905, sheet.beds().get(0).work().pieces().get(0).lengthMm());
        assertEquals(585, sheet.beds().get(0).work().bed().heightMm());
    }
}
