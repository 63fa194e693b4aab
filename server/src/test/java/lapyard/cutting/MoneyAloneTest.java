package lapyard.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.working.Effort;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Asking for the money alone, or for less than some, answers as a whole search would, so that stopping early costs nothing. */
class MoneyAloneTest {
    private static final Effort GLANCE = new Effort(4_000, Duration.ofMinutes(1), 800);

    static List<CuttingProblem> jobs() {
        List<CuttingProblem> jobs = new ArrayList<>();
        for (long seed = 61; seed <= 90; seed++) {
            jobs.add(Shapes.trade(3 + (int) (seed % 7), 12 + (int) (seed % 40), 1 + (int) (seed % 4), (int) (seed % 3), seed).problem());
        }
        jobs.add(Jobs.job("all free", 3, 0, List.of(Jobs.onHand("R1", 3000, "0", 4), Jobs.onHand("R2", 2000, "0", 9)),
                Jobs.pieces(900, 5, 650, 4)));
        jobs.add(Jobs.job("too few", 3, 0, List.of(Jobs.onHand("R1", 3000, "1", 1)), Jobs.pieces(900, 5, 650, 4)));
        jobs.add(Jobs.job("too few and too long", 3, 0, List.of(Jobs.onHand("R1", 3000, "1", 2)), Jobs.pieces(3900, 1, 900, 5, 650, 4)));
        for (int more = 0; more < 6; more++) {
            jobs.add(Jobs.job("long ones on hand run out " + more, 4, 0, List.of(Jobs.board(3000, "7.30"), Jobs.board(2400, "5.90"), Jobs.onHand("R", 3300, "1", 2)),
                    Jobs.pieces(3280, 2 + more / 2, 3110 + more, 1 + more % 2, 1450 + 7 * more, 6, 905 - 11 * more, 8, 410 + more, 5)));
        }
        jobs.add(Jobs.job("two too long", 3, 0, List.of(Jobs.board(3000, "7.30"), Jobs.board(3300, "8.10")), Jobs.pieces(3900, 1, 3500, 2, 900, 5, 650, 4)));
        jobs.add(Jobs.job("one too long", 3, 0, List.of(Jobs.board(3000, "7.30")), Jobs.pieces(3900, 1, 650, 4)));
        return jobs;
    }

    @ParameterizedTest
    @MethodSource("jobs")
    void theAnswerIsThatOfAWholeSearch(CuttingProblem problem) {
        CuttingResult whole = CuttingSolver.cheapest(problem, GLANCE);
        for (String more : List.of("-20", "-1", "-0.10", "-0.001", "0", "0.001", "0.10", "1", "20")) {
            BigDecimal than = whole.cost().add(new BigDecimal(more)).max(BigDecimal.ZERO);
            for (int left = 0; left <= 3; left++) {
                Optional<CuttingResult> cheaper = CuttingSolver.cheaper(problem, GLANCE, than, left);
                int uncut = whole.unplaced().size();
                assertEquals(uncut < left || uncut == left && whole.cost().compareTo(than) < 0, cheaper.isPresent(),
                        "less than " + than + " with " + left + " left against " + whole);
                cheaper.ifPresent(plan -> {
                    assertEquals(whole.plan(), plan.plan());
                    assertEquals(whole.cost(), plan.cost());
                    assertEquals(whole.unplaced(), plan.unplaced());
                });
            }
        }
    }

    /** The whole search goes on to fewer boards, fewer stops and longer offcuts; it is the reference for the money. */
    @ParameterizedTest
    @MethodSource("jobs")
    void theMoneyAloneIsThatOfThePlanForTheSaw(CuttingProblem problem) {
        CuttingResult sawn = CuttingSolver.solve(problem, CuttingSolver.QUICK);
        CuttingResult money = CuttingSolver.cheapest(problem, CuttingSolver.QUICK);
        PlanChecker.check(problem, money);
        assertEquals(sawn.unplaced().size(), money.unplaced().size());
        assertTrue(money.lowerBound().compareTo(sawn.cost()) <= 0 && sawn.lowerBound().compareTo(money.cost()) <= 0, sawn + " and " + money);
        if (sawn.proven()) assertEquals(0, sawn.cost().compareTo(money.cost()), sawn + " and " + money);
    }

    @Test
    void aPlanThatLeavesPiecesUncutIsNoCheaperOne() {
        CuttingProblem problem = Jobs.job("too few", 3, 0, List.of(Jobs.onHand("R1", 3000, "1", 1)), Jobs.pieces(900, 5));
        assertTrue(CuttingSolver.cheaper(problem, GLANCE, new BigDecimal("50"), 0).isEmpty());
    }
}
