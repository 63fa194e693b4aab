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

/** Asking only for a better plan than the one in hand answers as a whole search would, so that stopping early costs nothing. */
class BetterTest {
    private static final Effort GLANCE = new Effort(4_000, Duration.ofMinutes(1), 800);

    static List<CuttingProblem> jobs() {
        List<CuttingProblem> jobs = new ArrayList<>();
        for (long seed = 61; seed <= 90; seed++) {
            jobs.add(Shapes.trade(3 + (int) (seed % 7), 12 + (int) (seed % 40), 1 + (int) (seed % 4), (int) (seed % 3), seed).problem());
        }
        jobs.add(Jobs.job("all free", 3, 0, List.of(Jobs.onHand("R1", 3000, "0", 4), Jobs.onHand("R2", 2000, "0", 9)),
                Jobs.pieces(900, 5, 650, 4)));
        jobs.add(Jobs.job("too few", 3, 0, List.of(Jobs.onHand("R1", 3000, "1", 1)), Jobs.pieces(900, 5, 650, 4)));
        jobs.add(Jobs.job("one too long", 3, 0, List.of(Jobs.board(3000, "7.30")), Jobs.pieces(3900, 1, 650, 4)));
        return jobs;
    }

    private static List<CuttingResult> rivals(CuttingResult found) {
        List<CuttingResult> rivals = new ArrayList<>();
        for (String more : List.of("-20", "-1", "-0.10", "-0.001", "0", "0.001", "0.10", "1", "20")) {
            for (int boards = -1; boards <= 1; boards++) {
                rivals.add(rival(found, found.cost().add(new BigDecimal(more)).max(BigDecimal.ZERO), found.boards() + boards));
            }
        }
        return rivals;
    }

    private static CuttingResult rival(CuttingResult of, BigDecimal cost, int boards) {
        return new CuttingResult("rival", cost, BigDecimal.ZERO, boards, BigDecimal.ZERO, false, 0, List.of(), of.unplaced(), of.shortage());
    }

    private static boolean beats(CuttingResult one, CuttingResult than) {
        if (one.unplaced().size() != than.unplaced().size()) return one.unplaced().size() < than.unplaced().size();
        int cost = one.cost().compareTo(than.cost());
        return cost != 0 ? cost < 0 : one.boards() < than.boards();
    }

    @ParameterizedTest
    @MethodSource("jobs")
    void theAnswerIsThatOfAWholeSearch(CuttingProblem problem) {
        CuttingResult whole = CuttingSolver.solve(problem, GLANCE);
        for (CuttingResult rival : rivals(whole)) {
            Optional<CuttingResult> better = CuttingSolver.better(problem, GLANCE, rival);
            assertEquals(beats(whole, rival), better.isPresent(), "rival " + rival.cost() + ", " + rival.boards() + " against " + whole);
            better.ifPresent(plan -> {
                assertEquals(whole.plan(), plan.plan());
                assertEquals(whole.cost(), plan.cost());
            });
        }
    }

    @Test
    void aPlanThatCutsEverythingIsNotBeatenByOneThatDoesNot() {
        CuttingProblem problem = Jobs.job("too few", 3, 0, List.of(Jobs.onHand("R1", 3000, "1", 1)), Jobs.pieces(900, 5));
        CuttingResult all = new CuttingResult("all", new BigDecimal("50"), BigDecimal.ZERO, 9, BigDecimal.ZERO, false, 0, List.of(), List.of(), Shortage.NONE);
        assertTrue(CuttingSolver.better(problem, GLANCE, all).isEmpty());
    }
}
