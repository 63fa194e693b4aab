package lapyard.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import lapyard.working.Effort;
import lapyard.working.Progress;
import lapyard.working.SearchBudget;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BoardSetsTest {
    private static final Effort EFFORT = Effort.ofSteps(1_000_000, 20_000);

    private final SearchBudget budget = SearchBudget.whole(EFFORT, Progress.UNHEARD);

    private BoardSets sets(WholeProblem problem) {
        Relaxation root = new Relaxation(problem, budget);
        root.solve(Long.MAX_VALUE, 1000);
        return BoardSets.ofMoney(problem, root, budget, problem.moneyAtLeast(root.bound()));
    }

    /**
     * By hand: six pieces of 45 and boards of 100 at 3.00 and of 50 at 1.60. Two lie on a long board, one on a short one. So half a
     * long board each is 9.00 for six, and that is three long boards; seven pieces ask for one board more, and the short one is cheaper.
     */
    @Test
    void theFirstSetThatHoldsThePiecesIsTheCheapest() {
        var stock = List.of(Jobs.board(100, "3.00"), Jobs.board(50, "1.60"));
        assertEquals(0, new BigDecimal("9.00").compareTo(money(new Intake(Jobs.job("six", 0, 0, stock, Jobs.pieces(45, 6))).whole())));
        assertEquals(0, new BigDecimal("10.60").compareTo(money(new Intake(Jobs.job("seven", 0, 0, stock, Jobs.pieces(45, 7))).whole())));
    }

    /** By the sets alone, starting from the plain filling: no dives. */
    private BigDecimal money(WholeProblem problem) {
        BoardSets sets = sets(problem);
        Solution best = new Filling(problem, budget).best(problem.demand, problem.supply);
        for (int turn = 0; turn < 20 && sets.atLeast(best.money()) < best.money(); turn++) {
            best = sets.round(best, best.money(), CuttingSearch.NO_RIVAL, EFFORT, new Patience(budget, 200_000));
            assertTrue(sets.atLeast(best.money()) <= best.money());
        }
        assertEquals(best.money(), sets.atLeast(best.money()), "the proof closes");
        return problem.money(best.money());
    }

    /** Against every way of sharing the pieces out, which knows nothing of patterns or prices of pieces. */
    @Test
    void theSetsAloneFindAndProveTheMoneyOfTryingEverything() {
        int some = 0;
        for (long seed = 1001; seed <= 1300; seed++) {
            CuttingProblem job = BruteForceTest.random(seed);
            // more pieces take trying everything longer than they tell more
            if (job.pieces().stream().mapToInt(CuttingProblem.Demand::count).sum() > 6) continue;
            BruteForce.Least least = BruteForce.of(job);
            if (least == null) continue;
            WholeProblem problem = new Intake(job).whole();
            if (problem.boardWeight <= 1) continue;
            Solution first = new Filling(problem, budget).best(problem.demand, problem.supply);
            if (first.uncut() > 0) continue;
            assertEquals(0, least.money().compareTo(money(problem)), job.name() + ": " + least);
            some++;
        }
        assertTrue(some > 35, "enough jobs: " + some);
    }

    /** Sets of one price by their number: what they say is needed is never more than trying everything needs. */
    @Test
    void noFewerBoardsAreSaidToBeNeededThanTryingEverythingNeeds() {
        int closed = 0;
        for (long seed = 2001; seed <= 2300; seed++) {
            CuttingProblem job = BruteForceTest.random(seed);
            // more pieces take trying everything longer than they tell more
            if (job.pieces().stream().mapToInt(CuttingProblem.Demand::count).sum() > 6) continue;
            BruteForce.Least least = BruteForce.of(job);
            WholeProblem problem = new Intake(job).whole();
            if (least == null || problem.boardWeight <= 1) continue;
            long money = problem.unitsIn(least.money());
            long cost = money * problem.boardWeight + least.boards();
            BoardSets number = sets(problem).ofNumber(money);
            long atLeast = number.atLeast(cost + 1);
            assertTrue(atLeast <= cost, job.name() + ": " + atLeast + " of " + cost);
            Solution first = new Filling(problem, budget).best(problem.demand, problem.supply);
            if (first.uncut() > 0) continue;
            Solution found = first;
            for (int turn = 0; turn < 20 && number.atLeast(cost) < cost; turn++) {
                found = number.round(first, cost, CuttingSearch.NO_RIVAL, EFFORT, new Patience(budget, 200_000));
                assertTrue(found == first || found.cost() >= cost, job.name() + ": " + found.cost() + " is below the least, " + cost);
            }
            assertEquals(cost, number.atLeast(cost), job.name());
            closed++;
        }
        assertTrue(closed > 30, "enough jobs: " + closed);
    }

    /** Plans of this money exist (checked piece by piece when they were found), so no proof may say that it takes more. */
    @ParameterizedTest
    @CsvSource({"18, 243, 5, 0, 503, 955.61", "29, 216, 4, 2, 513, 880.16", "17, 103, 3, 4, 511, 833.34", "28, 204, 3, 7, 521, 1382.66"})
    void noSetThatHoldsThePiecesIsPassedOver(int types, int pieces, int lengths, int onHand, long seed, BigDecimal known) {
        CuttingResult result = Jobs.solved(Shapes.trade(types, pieces, lengths, onHand, seed).problem(), Effort.ofSteps(3_000_000));
        assertTrue(result.lowerBound().compareTo(known) <= 0, result.lowerBound() + " is above a plan of " + known);
        assertTrue(result.cost().compareTo(known) <= 0, result.cost() + " where a plan costs " + known);
    }

    /** Four lengths that cost nearly the same by their length: near the bound there are sets past counting. */
    @Test
    void aShortSearchDoesNotSpendItselfOnListingSets() {
        var stock = List.of(Jobs.board(3000, "21.90"), Jobs.board(2400, "17.40"), Jobs.board(1800, "13.20"), Jobs.board(1200, "8.90"));
        Random random = new Random(23);
        double[] pieces = new double[240];
        for (int i = 0; i < pieces.length; i += 2) {
            pieces[i] = 800 + 10 * random.nextInt(220);
            pieces[i + 1] = 2 + random.nextInt(6);
        }
        WholeProblem problem = new Intake(Jobs.job("many", 4, 0, stock, Jobs.pieces(pieces))).whole();
        SearchBudget few = SearchBudget.whole(Effort.ofSteps(40_000), Progress.UNHEARD);
        Relaxation root = new Relaxation(problem, few);
        root.solve(Long.MAX_VALUE, 1000);
        long from = few.steps();
        BoardSets.ofMoney(problem, root, few, problem.moneyAtLeast(root.bound())).pass(Long.MAX_VALUE, new Patience(few, 1000));
        assertTrue(few.steps() - from <= 2600, few.steps() - from + " steps where 1000 without a gain were given");
    }

    /** The answer is known: boards cut up without waste, so the money of the boards taken is the least where all cost the same by length. */
    @Test
    void boardsCutUpWithoutWasteArePutTogetherAgain() {
        for (long seed = 1; seed <= 6; seed++) {
            Random random = new Random(seed);
            List<Double> pieces = new ArrayList<>();
            int[] lengths = {1800, 2400, 3000, 4200};
            int length = 0;
            for (int board = 0; board < 12; board++) {
                int room = lengths[random.nextInt(lengths.length)];
                length += room;
                while (room > 700) {
                    int piece = 200 + 10 * random.nextInt(Math.min(90, (room - 400) / 10));
                    pieces.add((double) piece);
                    room -= piece;
                }
                pieces.add((double) room);
            }
            List<CuttingProblem.Stock> stock = new ArrayList<>();
            for (int each : lengths) stock.add(Jobs.board(each, BigDecimal.valueOf(each, 2).toString()));
            double[] all = new double[2 * pieces.size()];
            for (int i = 0; i < pieces.size(); i++) {
                all[2 * i] = pieces.get(i);
                all[2 * i + 1] = 1;
            }
            CuttingResult result = Jobs.solved(Jobs.job("cut up " + seed, 0, 0, stock, Jobs.pieces(all)), EFFORT);
            assertTrue(result.proven(), "seed " + seed + ": " + result.cost() + " of " + result.lowerBound());
            assertEquals(0, BigDecimal.valueOf(length, 2).compareTo(result.cost()), "seed " + seed);
        }
    }
}
