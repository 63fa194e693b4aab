package lapyard.cutting;

import static lapyard.cutting.Jobs.board;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class StagedCuttingTest {
    private static CuttingProblem.Demand piece(String id, double length, int count, int stage) {
        return new CuttingProblem.Demand(id, length, count, stage, 0);
    }

    /** An L bed in weekend 1 and a small one in weekend 2, worked by hand: together 10 boards, apart 7 + 4. */
    private static CuttingProblem beds(double retrim) {
        return new CuttingProblem("M, N", 4, 10, 300, retrim, List.of(board(4800, "36.00")), List.of(
                piece("A", 2900, 3, 1), piece("F", 2300, 3, 1), piece("E", 1700, 3, 1), piece("B", 1400, 3, 1),
                piece("C", 1200, 3, 1), piece("D", 900, 3, 1), piece("NA", 1700, 6, 2), piece("NB", 800, 6, 2)));
    }

    @Test
    void stagingIsFreeWhereOffcutsAreTakenUpAsTheyLie() {
        var now = Jobs.solved(beds(0), CuttingSolver.QUICK);
        assertEquals(
                new StagedCutting(new StagedCutting.Way(10, new BigDecimal("360.00")), new StagedCutting.Way(11, new BigDecimal("396.00"))),
                StagedCutting.of(beds(0), now, CuttingSolver.QUICK));
    }

    @Test
    void trimmingOffcutsAgainHasItsPrice() {
        var now = Jobs.solved(beds(200), CuttingSolver.QUICK);
        assertEquals(11, now.boards());
        assertEquals(10, StagedCutting.of(beds(200), now, CuttingSolver.QUICK).pooledOnce().boards());
    }

    @Test
    void aBoardOnHandGoesToTheEarliestStageThatTakesIt() {
        var job = new CuttingProblem("x", 0, 0, 300, 0, List.of(board(2000, "9"), Jobs.onHand("R", 2000, "0", 1)), List.of(
                piece("a", 1900, 1, 1), piece("b", 1900, 1, 2)));
        assertEquals(
                new StagedCutting.Way(2, new BigDecimal("9")),
                StagedCutting.of(job, Jobs.solved(job, CuttingSolver.QUICK), CuttingSolver.QUICK).stageByStage());
    }

    /** What is proved can't be undercut by any of the other ways. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void cuttingTogetherNeverCostsMoreThanApart(long seed) {
        CuttingProblem problem = Shapes.trade(5, 20, 2, 0, seed).problem();
        var now = Jobs.solved(problem, CuttingSolver.FULL);
        assertTrue(now.paid().compareTo(StagedCutting.of(problem, now, CuttingSolver.FULL).stageByStage().paid()) <= 0);
    }

    /** A price and a salvage value of the same amount steer alike; only what is paid differs. */
    @ParameterizedTest
    @ValueSource(longs = {41, 42, 43, 44, 45, 46})
    void aSalvageValueSteersAsAPriceDoes(long seed) {
        CuttingProblem priced = Shapes.trade(5, 18, 2, 3, seed).problem();
        var salvaged = priced.with(
                priced.stock().stream()
                        .map(s -> s.available().isEmpty()
                                ? s
                                : new CuttingProblem.Stock(
                                        s.id(), s.lengthMm(), BigDecimal.ZERO, s.available(), s.goodFaces(), s.price(), false))
                        .toList(),
                priced.pieces());
        var one = Jobs.solved(priced, CuttingSolver.FULL);
        var other = Jobs.solved(salvaged, CuttingSolver.FULL);
        assertEquals(one.cost(), other.cost());
        assertEquals(one.plan(), other.plan());
        assertEquals(0, one.cost().compareTo(other.paid().add(other.salvage())));
    }

    /** Trims at each end count alike for a whole board and for one sawn end that is as much shorter. */
    @Test
    void aSawnEndSavesOneTrim() {
        var whole = new CuttingProblem.Stock("W", 1020, BigDecimal.ONE, OptionalInt.of(1), 1);
        var sawn = new CuttingProblem.Stock(
                "S", 1010, BigDecimal.ONE, OptionalInt.of(1), 1, BigDecimal.ZERO, true);
        for (var stock : List.of(whole, sawn)) {
            var result = Jobs.solved(Jobs.job("x", 4, 10, List.of(stock), Jobs.pieces(1000, 1)), CuttingSolver.FULL);
            assertEquals(0, result.plan().get(0).leftMm());
            assertTrue(!Jobs.solved(Jobs.job("x", 4, 10, List.of(stock), Jobs.pieces(1001, 1)), CuttingSolver.FULL)
                    .unplaced()
                    .isEmpty());
        }
    }
}
