package lapyard.cutting;

import static lapyard.cutting.Jobs.board;
import static lapyard.cutting.Jobs.job;
import static lapyard.cutting.Jobs.onHand;
import static lapyard.cutting.Jobs.piece;
import static lapyard.cutting.Jobs.pieces;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ReplanTest {
    private static final List<CuttingProblem.Stock> LENGTHS =
            List.of(board(2400, "17.40"), board(3000, "21.90"), board(3600, "26.40"), board(4800, "36.00"));

    /** Bed M, an L of 3000 x 2400 less 1200 x 900, and bed N, 1800 x 900, in three courses of 100 thick timber. */
    private static final CuttingProblem GARDEN = job("M+N", 4, 10, LENGTHS, List.of(
            piece("2900", 2900, 3), piece("2300", 2300, 3), piece("1700", 1700, 9), piece("1400", 1400, 3),
            piece("1200", 1200, 3), piece("900", 900, 3), piece("800", 800, 6)));

    private static Sawn opened(int number, String... cut) {
        return new Sawn("#" + number, "L4800", true, List.of(cut), List.of(), 0, OptionalDouble.empty());
    }

    private static Sawn fresh(String board, String stock) {
        return new Sawn(board, stock, false, List.of(), List.of(), 0, OptionalDouble.empty());
    }

    private static Sawn waiting(int number) {
        return fresh("#" + number, "L4800");
    }

    private static List<Sawn> afterSixBoards() {
        List<Sawn> sawn = new ArrayList<>();
        for (int n = 1; n <= 3; n++) sawn.add(opened(n, "2900", "1700"));
        for (int n = 4; n <= 6; n++) sawn.add(opened(n, "1700", "1700", "1200"));
        for (int n = 7; n <= 10; n++) sawn.add(waiting(n));
        return sawn;
    }

    private static Replan.Planned planned(CuttingProblem problem, List<Sawn> sawn) {
        var planned = assertInstanceOf(Replan.Planned.class, Replan.of(problem, sawn, CuttingSolver.QUICK));
        PlanChecker.check(planned.rest(), planned.result());
        return planned;
    }

    private static List<Replan.Stop> refused(List<Sawn> sawn) {
        return assertInstanceOf(Replan.Refused.class, Replan.of(GARDEN, sawn, CuttingSolver.QUICK)).stops();
    }

    /**
     * By hand: boards 7 to 10 hold 4 x 4784 = 19136, less 700 is 18436; the rest needs 6900 + 4200 + 2700 + 4800 and 15
     * kerfs = 18660.
     */
    @Test
    void afterSixBoardsWith700LostOnTheSeventhOneBoardOf2400IsBought() {
        List<Sawn> sawn = afterSixBoards();
        sawn.set(6, SawnBoards.losing(sawn.get(6), 700));
        var after = planned(GARDEN, sawn);
        assertEquals(15, after.cut());
        assertEquals(15, after.wanted());
        assertEquals(18660, after.neededMm());
        assertEquals(18436, after.thereMm());
        assertEquals(14, after.fit());
        assertEquals(List.of("800"), after.lacking().stream().map(CuttingResult.Unplaced::id).toList());
        assertEquals(1, after.lacking().get(0).count());
        assertEquals(Map.of("L2400", 1), after.buy());
        assertEquals(new BigDecimal("17.40"), after.result().cost());
        assertTrue(after.result().proven());
    }

    @Test
    void withNothingLostTheFourBoardsThatWaitAreEnough() {
        var after = planned(GARDEN, afterSixBoards());
        assertEquals(15, after.fit());
        assertTrue(after.buy().isEmpty());
        assertEquals(0, after.result().paid().signum());
        assertEquals(4, after.result().boards());
    }

    @Test
    void whatWasBoughtAndNotToldOfIsBoughtAgain() {
        var after = planned(GARDEN, afterSixBoards().subList(0, 6));
        assertEquals(0, after.fit());
        assertEquals(0, after.thereMm());
        // what the pieces of boards 7 to 10 cost on their own
        var own = Jobs.solved(job("rest", 4, 10, LENGTHS, pieces(2300, 3, 1400, 3, 900, 3, 800, 6)), CuttingSolver.QUICK);
        assertEquals(own.cost(), after.result().cost());
    }

    /** A 1700 cut wrong on board 1 after the 2900: it is wanted again, and 4800 - 10 - 2904 - 1704 = 182 is left. */
    @Test
    void aSpoiledPieceIsWantedAgainAndItsLengthIsGone() {
        List<Sawn> sawn = afterSixBoards();
        sawn.set(0, new Sawn("#1", "L4800", true, List.of("2900"), List.of("1700"), 0, OptionalDouble.empty()));
        var after = planned(GARDEN, sawn);
        assertEquals(16, after.wanted());
        assertEquals(14, after.cut());
        assertEquals(182, after.rest().stock().get(0).lengthMm());
    }

    /** The offcut has one fresh end: 1000 measured, less 10 of far trim, holds a 990 and no 991. */
    @ParameterizedTest
    @ValueSource(ints = {990, 991})
    void anOffcutIsTrimmedAtItsFarEndOnly(int length) {
        var job = job("x", 4, 10, List.of(board(4800, "36.00")), List.of(piece("a", 2000, 1), piece("b", length, 1)));
        var offcut = new Sawn("#1", "L4800", true, List.of("a"), List.of(), 0, OptionalDouble.of(1000));
        var after = planned(job, List.of(offcut));
        assertEquals(length == 990 ? 1 : 0, after.fit());
        assertEquals(length == 990 ? Map.of() : Map.of("L4800", 1), after.buy());
    }

    @Test
    void theMeasuredRestCountsWhereItDiffersFromTheWorkedOutOne() {
        var job = job("x", 0, 0, List.of(board(2000, "9")), List.of(piece("a", 1000, 1), piece("b", 1000, 1)));
        assertTrue(planned(job, List.of(new Sawn("#1", "L2000", true, List.of("a"), List.of(), 0, OptionalDouble.empty())))
                .buy()
                .isEmpty());
        var shorter = new Sawn("#1", "L2000", true, List.of("a"), List.of(), 0, OptionalDouble.of(996));
        assertEquals(Map.of("L2000", 1), planned(job, List.of(shorter)).buy());
    }

    @Test
    void boardsOnHandThatWereOpenedAreNoLongerOnHand() {
        var job = job("x", 0, 0, List.of(onHand("R", 2000, "0", 2), board(2000, "9")), List.of(piece("a", 1900, 3)));
        var after = planned(job, List.of(new Sawn("R1", "R", true, List.of("a"), List.of(), 0, OptionalDouble.empty())));
        assertEquals(Map.of("L2000", 1), after.buy());
        assertEquals(1, after.fit());
    }

    @Test
    void moreCutThanPlannedIsRefused() {
        List<Sawn> sawn = afterSixBoards();
        sawn.set(6, opened(7, "2900"));
        assertEquals(List.of(new Replan.Stop(Replan.Wrong.CUT_MORE, "2900", "", 4, 3)), refused(sawn));
    }

    @Test
    void aPieceFromABoardThatIsNotOpenedIsRefused() {
        List<Sawn> sawn = afterSixBoards();
        sawn.set(6, new Sawn("#7", "L4800", false, List.of("2300"), List.of(), 0, OptionalDouble.empty()));
        assertEquals(List.of(new Replan.Stop(Replan.Wrong.NOT_OPENED, "#7", "2300", 1, 0)), refused(sawn));
    }

    @Test
    void whatCannotBeTrueOfABoardIsRefusedWithItsAmount() {
        assertEquals(List.of(new Replan.Stop(Replan.Wrong.CUT_OVER, "#1", "", 5214, 4800)), refused(List.of(opened(1, "2900", "2300"))));
        assertEquals(List.of(new Replan.Stop(Replan.Wrong.BOARD_TWICE, "#1", "", 0, 0)), refused(List.of(waiting(1), waiting(1))));
        assertEquals(List.of(new Replan.Stop(Replan.Wrong.PIECE_UNKNOWN, "#1", "777", 0, 0)), refused(List.of(opened(1, "777"))));
        assertEquals(
                List.of(new Replan.Stop(Replan.Wrong.STOCK_UNKNOWN, "#1", "L9", 0, 0)), refused(List.of(fresh("#1", "L9"))));
        assertEquals(List.of(new Replan.Stop(Replan.Wrong.LOST_OVER, "#1", "", 5000, 4800)), refused(List.of(SawnBoards.losing(waiting(1), 5000))));
        assertEquals(
                List.of(new Replan.Stop(Replan.Wrong.LEFT_OVER, "#1", "", 2000, 1886)),
                refused(List.of(new Sawn("#1", "L4800", true, List.of("2900"), List.of(), 0, OptionalDouble.of(2000)))));
        assertEquals(
                List.of(new Replan.Stop(Replan.Wrong.NEGATIVE, "#1", "", 0, 0)), refused(List.of(SawnBoards.losing(waiting(1), -5))));
    }

    @Test
    void aNameThatAStockLengthHasIsRefused() {
        assertEquals(List.of(new Replan.Stop(Replan.Wrong.BOARD_NAME, "L3000", "#1", 0, 0)), refused(List.of(fresh("L3000", "L4800"))));
    }

    /** A single board on hand may keep its name; of two each has its own, and no more than two can be told of. */
    @Test
    void boardsOnHandAreToldOfByTheirOwnNames() {
        var stock = List.of(onHand("R", 2000, "0", 1), onHand("Q", 2000, "0", 2));
        var job = job("x", 0, 0, stock, List.of(piece("a", 1900, 2)));
        assertEquals(2, planned(job, List.of(fresh("R", "R"))).fit());
        assertEquals(List.of(new Replan.Stop(Replan.Wrong.BOARD_NAME, "Q", "#1", 0, 0)), stops(job, fresh("Q", "Q")));
        assertEquals(List.of(new Replan.Stop(Replan.Wrong.BOARD_NAME, "R", "#1", 0, 0)), stops(job, fresh("R", "Q")));
        assertEquals(List.of(new Replan.Stop(Replan.Wrong.STOCK_MORE, "R", "", 2, 1)), stops(job, fresh("R1", "R"), fresh("R2", "R")));
    }

    private static List<Replan.Stop> stops(CuttingProblem problem, Sawn... sawn) {
        return assertInstanceOf(Replan.Refused.class, Replan.of(problem, List.of(sawn), CuttingSolver.QUICK)).stops();
    }

    /** A whole board on hand is worth 10.15 kept, a new one costs 8, so that is bought; opened, the board is worth nothing and is used. At 10.15 the new one is no cheaper. */
    @ParameterizedTest
    @CsvSource({"false, 8, L1000", "true, 8, ''", "false, 12, ''"})
    void aBoardOnHandIsKeptWholeWhereANewOneIsCheaper(boolean opened, String price, String bought) {
        var on = new CuttingProblem.Stock("R", 4000, BigDecimal.ZERO, OptionalInt.of(1), 1, new BigDecimal("10.15"), false);
        var job = job("x", 0, 0, List.of(on, board(1000, price)), List.of(piece("a", 900, 1)));
        var after = planned(job, List.of(new Sawn("R", "R", opened, List.of(), List.of(), 0, OptionalDouble.empty())));
        assertEquals(bought, String.join(",", after.buy().keySet()));
        assertEquals(1, after.fit());
    }

    /** Sawing a plan board by board, any part of it done, never costs more than the plan itself still had to. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void keepingToThePlanNeverNeedsAnotherBoard(long seed) {
        CuttingProblem problem = Shapes.trade(5, 24, 2, (int) (seed % 3), seed).problem();
        CuttingResult result = Jobs.solved(problem, CuttingSolver.FULL);
        Random random = new Random(seed);
        List<Sawn> sawn = new ArrayList<>();
        for (SawBoard board : SawBoard.of(problem, result.plan())) {
            sawn.add(random.nextBoolean() ? SawnBoards.done(board) : SawnBoards.waiting(board));
        }
        var after = planned(problem, sawn);
        assertTrue(after.buy().isEmpty(), after.toString());
        assertTrue(after.lacking().isEmpty(), after.toString());
        assertEquals(0, after.result().paid().signum());
    }
}
