package lapyard.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import java.util.stream.IntStream;
import lapyard.working.Effort;
import lapyard.working.Progress;
import lapyard.working.SearchBudget;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FullBoardsTest {
    @Test
    void noneOfTheFifteensFillsThreeBoards() {
        for (int[] lengths : Shapes.THREE_BOARDS_IN_FOUR) {
            assertEquals(15, lengths.length);
            assertEquals(0, IntStream.of(lengths).sum() % 3);
            assertFalse(Shapes.fillThree(lengths, IntStream.of(lengths).sum() / 3));
        }
    }

    /** Delorme, Iori and Martello, EJOR 255 (2016) 1-20: 201 pieces need one board more than fractions of boards say, 202 do not. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void augmentedJobsAreProved(boolean split) {
        Shapes.Case job = Shapes.augmented(split, 51);
        CuttingResult result = PlanChecker.check(job.problem(), CuttingSolver.solve(job.problem(), Effort.ofSteps(2_000_000)));
        assertEquals(job.optimum(), result.boards(), job.problem().name());
        assertTrue(result.proven(), job.problem().name());
    }

    /** The same jobs on the boards that fractions of boards ask for: refused, or filled where pieces were split, with a fifth of the steps to spare. */
    @ParameterizedTest(name = "job {0}, one piece split {1}: at most {2} steps")
    @CsvSource({"51, false, 12300", "57, false, 3400", "61, false, 3450", "51, true, 13100", "57, true, 3600", "61, true, 7000"})
    void augmentedJobsAreSettledInFewSteps(long seed, boolean split, int steps) {
        WholeProblem problem = new Intake(Shapes.augmented(split, seed).problem()).whole();
        SearchBudget budget = SearchBudget.whole(Effort.ofSteps(2_000_000), Progress.UNHEARD);
        FullBoards full = new FullBoards(problem, budget);
        assertEquals(split, full.on(65, 2_000_000) != null);
        assertTrue(full.complete());
        assertTrue(budget.steps() > steps / 2 && budget.steps() <= steps, "steps " + budget.steps());
    }

    /** Against all ways to lay each piece on some board. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void fillsBoardsExactlyWhereThatCanBeDone(long seed) {
        Random random = new Random(seed);
        int held = 0;
        int refused = 0;
        for (int job = 0; job < 400; job++) {
            int boards = 2 + random.nextInt(3);
            int board = 10 + random.nextInt(30);
            int spare = random.nextInt(3) == 0 ? 0 : random.nextInt(5);
            int[] lengths = cutUp(boards, board, spare, random);
            WholeProblem problem = new Intake(Shapes.single("small", board, lengths)).whole();
            int unit = (int) (problem.micronsAUnit / 1000);
            FullBoards full = new FullBoards(problem, SearchBudget.whole(Effort.ofSteps(1_000_000), Progress.UNHEARD));
            Solution plan = full.on(boards, 100_000);
            boolean can = canHold(lengths, 0, new int[boards], board);
            assertEquals(can, plan != null, "seed " + seed + ", job " + job);
            assertTrue(can || full.complete(), "seed " + seed + ", job " + job);
            if (plan == null) {
                refused++;
                continue;
            }
            held++;
            assertEquals(boards, plan.boards());
            int[] left = problem.demand.clone();
            plan.patterns().forEach((pattern, count) -> {
                assertTrue(pattern.weight(problem) * unit <= board);
                for (int i = 0; i < pattern.items().length; i++) left[pattern.items()[i]] -= count * pattern.counts()[i];
            });
            assertEquals(0, IntStream.of(left).map(Math::abs).sum());
        }
        assertTrue(held > 50 && refused > 50, held + " held, " + refused + " refused");
    }

    /**
     * All pieces have more ways than are looked at, and those looked at with the longest piece all take the second, which only the third
     * board may have: what is left of 1 - 5 + 4 twentieths is then too long for one board. Three boards do hold all: the pairs 801 and 699,
     * 785 and 715, 44 and 676 with 500, 500 and 1280 of the rest.
     */
    @Test
    void claimsNoProofWhereWaysWereLeftOut() {
        int[] lengths = IntStream.concat(
                        IntStream.of(801, 699, 785, 715, 44, 676, 180), IntStream.rangeClosed(1, 14).map(each -> 20 * each)).toArray();
        assertTrue(canHold(lengths, 0, new int[3], 2000));
        WholeProblem problem = new Intake(Shapes.single("left out", 2000, lengths)).whole();
        FullBoards full = new FullBoards(problem, SearchBudget.whole(Effort.ofSteps(1_000_000), Progress.UNHEARD));
        assertNull(full.on(3, 100_000));
        assertFalse(full.complete());
    }

    /** A fiftieth of a board of 100 is 2, wasted on three boards in all; pieces of one kind more than the sums have room for are left to the prices. */
    @ParameterizedTest(name = "{0} of 300 on {1} boards: {2}")
    @CsvSource({"298, 3, true", "300, 3, true", "297, 3, false", "301, 3, false", "298, 4, false"})
    void boardsMustBeFullWhereAFiftiethMayBeWasted(int length, int boards, boolean suits) {
        int[] lengths = {49, 51, 48, 53, length - 201};
        assertEquals(suits, FullBoards.suits(new Intake(Shapes.single("full", 100, lengths)).whole(), boards));
    }

    @Test
    void onlyBoardsOfOneKindAsManyAsWantedAndNotTooManySumsAreFilled() {
        int[] halves = new int[2002];
        Arrays.setAll(halves, i -> i % 2 == 0 ? 49 : 51);
        assertTrue(FullBoards.suits(whole(100, Arrays.copyOf(halves, 2000)), 1000));
        assertFalse(FullBoards.suits(whole(100, halves), 1001));
        for (int kinds = 25; kinds <= 26; kinds++) {
            int[] lengths = IntStream.rangeClosed(1, kinds).toArray();
            lengths[kinds - 1] = 1_999_999 - kinds * (kinds - 1) / 2;
            assertEquals(kinds == 25, FullBoards.suits(whole(1_999_999, lengths), 1), kinds + " kinds");
        }
        CuttingProblem one = Shapes.single("one", 100, new int[] {49, 51});
        CuttingProblem.Stock board = one.stock().get(0);
        CuttingProblem.Stock few = new CuttingProblem.Stock("few", 100, board.price(), OptionalInt.of(5), 1);
        CuttingProblem.Stock longer = new CuttingProblem.Stock("longer", 101, board.price().add(board.price()), OptionalInt.empty(), 1);
        assertFalse(FullBoards.suits(whole(one, few), 1));
        assertFalse(FullBoards.suits(whole(one, board, longer), 1));
    }

    private static WholeProblem whole(int board, int[] lengths) {
        return new Intake(Shapes.single("full", board, lengths)).whole();
    }

    private static WholeProblem whole(CuttingProblem job, CuttingProblem.Stock... stock) {
        return new Intake(new CuttingProblem(job.name(), 0, 0, 0, 0, List.of(stock), job.pieces())).whole();
    }

    /** Fifteens of three boards that need four: the search is not done when its steps are over. */
    @Test
    void claimsNoProofWhereItsStepsWereOver() {
        int[] lengths = Shapes.THREE_BOARDS_IN_FOUR[0];
        WholeProblem problem = new Intake(Shapes.single("short", IntStream.of(lengths).sum() / 3, lengths)).whole();
        FullBoards full = new FullBoards(problem, SearchBudget.whole(Effort.ofSteps(1_000_000), Progress.UNHEARD));
        assertNull(full.on(3, 0));
        assertFalse(full.complete());
        assertNull(full.on(3, 100_000));
        assertTrue(full.complete());
    }

    /** Pieces of all but {@code spare} of the boards' length, one of them not always on a board of its own cutting. */
    private static int[] cutUp(int boards, int board, int spare, Random random) {
        int left = boards * board - spare;
        int count = 2 * boards + random.nextInt(4);
        int[] lengths = new int[count];
        for (int i = 0; i < count - 1; i++) {
            lengths[i] = 1 + random.nextInt(Math.max(1, Math.min(board, 2 * left / (count - i)) - 1));
            left -= lengths[i];
        }
        lengths[count - 1] = left;
        return left > 0 && left <= board ? lengths : cutUp(boards, board, spare, random);
    }

    private static boolean canHold(int[] lengths, int at, int[] used, int board) {
        if (at == lengths.length) return true;
        for (int b = 0; b < used.length; b++) {
            if (used[b] + lengths[at] > board) continue;
            used[b] += lengths[at];
            boolean can = canHold(lengths, at + 1, used, board);
            used[b] -= lengths[at];
            if (can) return true;
            if (used[b] == 0) break;
        }
        return false;
    }
}
