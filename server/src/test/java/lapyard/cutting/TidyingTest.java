package lapyard.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Random;
import java.util.stream.IntStream;
import lapyard.working.Effort;
import lapyard.working.Progress;
import lapyard.working.SearchBudget;
import org.junit.jupiter.api.Test;

/** What is made of a plan without more money: whatever it begins with, nothing is lost and nothing that is looked for is left. */
class TidyingTest {
    private final SearchBudget budget = SearchBudget.whole(Effort.ofSteps(100_000_000), Progress.UNHEARD);
    private final Random random = new Random(828);

    /** From plans that open every board in turn, whatever that wastes. */
    @Test
    void tidyingCostsNothingAndLeavesNoShorterRest() {
        int longer = 0;
        int fewer = 0;
        int left = 0;
        int exchanged = 0;
        for (int job = 0; job < 120; job++) {
            WholeProblem problem = new Intake(FillingTest.job(random, job % 2 == 0)).whole();
            if (problem.items() == 0) continue;
            long keep = 60 * (1 + random.nextInt(5)) * 1000 / problem.micronsAUnit;
            Filling filling = new Filling(problem, budget);
            Tidying tidying = new Tidying(problem, filling, Effort.ofSteps(3_000), budget, keep);
            Solution plan = filling.fill(problem.demand, problem.supply, random.nextInt(problem.stocks()));
            if (plan.uncut() > 0) left++;
            Solution spared = tidying.sparing(plan);
            int[] there = FillingTest.check(problem, spared);
            assertTrue(spared.cost() <= plan.cost() && spared.boards() == plan.boards());
            if (job % 2 == 0) checkSpared(problem, spared, there);
            if (plan.boards() > 0) exchanged += checkExchanged(problem, spared, tidying.longestOffcut(spared), keep, job % 2 == 0);
            Solution tidy = tidying.tidy(plan);
            FillingTest.check(problem, tidy);
            assertTrue(tidy.cost() <= spared.cost());
            long before = longest(problem, spared);
            long after = longest(problem, tidy);
            if (tidy.cost() == spared.cost()) assertTrue(before < keep || after >= before, "a rest of " + before + " was " + after);
            if (tidy.cost() == spared.cost() && after > before && after >= keep) longer++;
            if (settings(tidy) < settings(plan)) fewer++;
            checkSettings(problem, tidy, keep);
        }
        assertTrue(longer > 10 && fewer > 10 && left > 10 && exchanged > 10, exchanged + " exchanged, " + longer + " longer, " + fewer + " with fewer settings, " + left + " with pieces left over");
    }

    /** Each piece on a board of its own, the boards on hand drawn at random: the reference tries all ways to lay these loads on boards on hand. */
    @Test
    void theLoadsLieOnTheShortestBoardsOnHandThatHoldThem() {
        int shorter = 0;
        for (int job = 0; job < 150; job++) {
            List<CuttingProblem.Stock> stock = new ArrayList<>(List.of(Jobs.board(1500, "0.01"), Jobs.board(4000, "9")));
            for (int k = 0; k < 5; k++) stock.add(Jobs.onHand("S" + k, 1000 + 100 * random.nextInt(20), "0", 1 + random.nextInt(2)));
            List<CuttingProblem.Demand> pieces = new ArrayList<>();
            for (int i = 0; i < 4; i++) pieces.add(Jobs.piece("P" + i, 500 + 50 * random.nextInt(50), 1 + random.nextInt(2)));
            WholeProblem problem = new Intake(Jobs.job("some", 4, 0, stock, pieces)).whole();
            int[] there = problem.supply.clone();
            Solution plan = new Solution(problem);
            List<Long> loads = new ArrayList<>();
            for (int i = 0; i < problem.items(); i++) {
                for (int n = problem.demand[i]; n > 0; n--) {
                    int item = i;
                    int[] hold = IntStream.range(0, there.length).filter(k -> there[k] > 0 && problem.holds(k, item)).toArray();
                    int on = hold.length == 0 ? Pattern.NONE : hold[random.nextInt(hold.length)];
                    plan.add(new Pattern(on, new int[] {i}, new int[] {1}), 1);
                    if (on == Pattern.NONE || problem.supply[on] == WholeProblem.UNLIMITED) continue;
                    there[on]--;
                    loads.add((long) problem.weight[i]);
                }
            }
            Solution spared = new Tidying(problem, new Filling(problem, budget), Effort.ofSteps(1), budget, 0).sparing(plan);
            FillingTest.check(problem, spared);
            assertEquals(bought(problem, plan), bought(problem, spared));
            int[] onHand = IntStream.of(problem.supply).map(all -> all == WholeProblem.UNLIMITED ? 0 : all).toArray();
            assertEquals(shortest(problem, loads, 0, onHand), length(problem, spared));
            if (length(problem, spared) < length(problem, plan)) shorter++;
        }
        assertTrue(shorter > 100, "shorter: " + shorter);
    }

    /** A board with a good face is no shorter than one without of its length, and serves what needs the face. */
    @Test
    void aGoodFaceIsNotSpentOnWhatNeedsNone() {
        for (int faces = 0; faces <= 1; faces++) {
            List<CuttingProblem.Stock> stock = new ArrayList<>();
            for (int length : new int[] {1000, 2000}) {
                for (int k = 0; k <= 1; k++) stock.add(new CuttingProblem.Stock(length + " with " + k, length, BigDecimal.ZERO, OptionalInt.of(1), k));
            }
            var pieces = List.of(new CuttingProblem.Demand("plain", 601, 1, 1, 0), new CuttingProblem.Demand("seen", 901, 1, 1, 1));
            WholeProblem problem = new Intake(Jobs.job("faces", 0, 0, stock, pieces)).whole();
            assertEquals(List.of(2000, 2000, 1000, 1000), IntStream.of(problem.capacity).mapToObj(each -> (int) (each * problem.micronsAUnit / 1000)).toList());
            // the plain piece alone on the short plain board, or the seen one on the long board with a face
            Solution plan = new Solution(problem);
            plan.add(new Pattern(faces == 0 ? 2 : 1, new int[] {faces}, new int[] {1}), 1);
            Solution spared = new Tidying(problem, new Filling(problem, budget), Effort.ofSteps(1), budget, 0).sparing(plan);
            assertEquals(faces == 0 ? 2 : 3, spared.patterns().keySet().iterator().next().stock());
        }
    }

    private static Map<Pattern, Integer> bought(WholeProblem problem, Solution plan) {
        Map<Pattern, Integer> bought = new HashMap<>(plan.patterns());
        bought.keySet().removeIf(pattern -> pattern.stock() != Pattern.NONE && problem.supply[pattern.stock()] != WholeProblem.UNLIMITED);
        return bought;
    }

    private static long length(WholeProblem problem, Solution plan) {
        return plan.patterns().entrySet().stream().filter(line -> line.getKey().stock() != Pattern.NONE && problem.supply[line.getKey().stock()] != WholeProblem.UNLIMITED)
                .mapToLong(line -> (long) problem.capacity[line.getKey().stock()] * line.getValue()).sum();
    }

    private static long shortest(WholeProblem problem, List<Long> loads, int at, int[] there) {
        if (at == loads.size()) return 0;
        long least = Long.MAX_VALUE / 2;
        for (int k = 0; k < there.length; k++) {
            if (there[k] == 0 || problem.capacity[k] < loads.get(at)) continue;
            there[k]--;
            least = Math.min(least, problem.capacity[k] + shortest(problem, loads, at + 1, there));
            there[k]++;
        }
        return least;
    }

    /** Jobs of more than 60 pieces are tidied by exchanges alone. */
    @Test
    void exchangesLengthenTheLongestRestOfManyPieces() {
        int longer = 0;
        for (int job = 0; job < 40; job++) {
            List<CuttingProblem.Demand> pieces = new ArrayList<>();
            for (int i = 0; i < 8; i++) pieces.add(new CuttingProblem.Demand("P" + i, 250 + 10 * random.nextInt(120), 8 + random.nextInt(4), 1, 0));
            WholeProblem problem = new Intake(new CuttingProblem("many", 4, 0, 300, 0, List.of(Jobs.board(2400, "17.40"), Jobs.board(3600, "26")), pieces)).whole();
            Filling filling = new Filling(problem, budget);
            long keep = 300_000 / problem.micronsAUnit;
            Solution plan = filling.best(problem.demand, problem.supply);
            Tidying tidying = new Tidying(problem, filling, Effort.ofSteps(3_000), budget, keep);
            checkExchanged(problem, plan, tidying.longestOffcut(plan), keep, true);
            Solution tidy = tidying.tidy(plan);
            FillingTest.check(problem, tidy);
            assertTrue(tidy.cost() <= plan.cost());
            if (tidy.cost() < plan.cost() || longest(problem, tidy) > longest(problem, plan) && longest(problem, tidy) >= keep) longer++;
            else assertTrue(longest(problem, plan) < keep || longest(problem, tidy) >= longest(problem, plan));
        }
        assertTrue(longer > 20, "longer or cheaper: " + longer);
    }

    /**
     * Either nothing was to be gained, or there is less money or a longer rest that is worth keeping, and no piece of its board can be
     * moved or exchanged to lengthen it further; returns 1 where something was gained.
     *
     * @param plain no good faces
     */
    private static int checkExchanged(WholeProblem problem, Solution plan, Solution then, long keep, boolean plain) {
        FillingTest.check(problem, then);
        if (then == plan) return 0;
        if (then.cost() == plan.cost()) assertTrue(longest(problem, then) > longest(problem, plan) && longest(problem, then) >= keep);
        else assertTrue(then.cost() < plan.cost());
        if (then.cost() < plan.cost()) return 1;
        Pattern board = then.patterns().keySet().stream().filter(each -> each.stock() != Pattern.NONE).max(Comparator.comparingLong(each -> rest(problem, each))).orElseThrow();
        for (int k = 0; k < problem.stocks(); k++) {
            boolean holds = problem.supply[k] == WholeProblem.UNLIMITED && problem.capacity[k] >= board.weight(problem) && problem.stockFaces[k] >= board.goodFaces(problem);
            assertTrue(!holds || problem.cost[k] >= problem.cost[board.stock()], "a cheaper board does");
        }
        for (Pattern other : then.patterns().keySet()) {
            if (other == board || other.stock() == Pattern.NONE) continue;
            for (int mine : board.items()) {
                if (problem.stockFaces[other.stock()] < problem.itemFaces[mine]) continue;
                assertTrue(problem.weight[mine] > rest(problem, other), "a piece can be moved");
                for (int theirs : plain ? other.items() : new int[0]) {
                    int gain = problem.weight[mine] - problem.weight[theirs];
                    assertTrue(gain <= 0 || gain > rest(problem, other), "an exchange lengthens the rest");
                }
            }
        }
        return 1;
    }

    /** No board that waits is shorter and would do. */
    private static void checkSpared(WholeProblem problem, Solution plan, int[] there) {
        for (Pattern pattern : plan.patterns().keySet()) {
            if (pattern.stock() == Pattern.NONE || problem.supply[pattern.stock()] == WholeProblem.UNLIMITED) continue;
            for (int k = 0; k < there.length; k++) {
                boolean does = there[k] > 0 && problem.supply[k] != WholeProblem.UNLIMITED && problem.cost[k] <= problem.cost[pattern.stock()] && pattern.weight(problem) <= problem.capacity[k];
                assertTrue(!does || problem.capacity[k] >= problem.capacity[pattern.stock()], "a shorter board waits");
            }
        }
    }

    private static long longest(WholeProblem problem, Solution plan) {
        return plan.patterns().keySet().stream().filter(each -> each.stock() != Pattern.NONE).mapToLong(each -> problem.capacity[each.stock()] - each.weight(problem)).max().orElse(0);
    }

    private static long settings(Solution plan) {
        return plan.patterns().entrySet().stream().mapToLong(line -> (long) line.getKey().items().length * line.getValue()).sum();
    }

    /** No exchange of two pieces between two boards saves a setting, but for the board with the rest that is kept. */
    private static void checkSettings(WholeProblem problem, Solution plan, long keep) {
        List<Pattern> all = List.copyOf(plan.patterns().keySet());
        long longest = longest(problem, plan);
        for (Pattern a : all) {
            for (Pattern b : all) {
                if (a.stock() == Pattern.NONE || b.stock() == Pattern.NONE) continue;
                boolean kept = longest >= keep && (rest(problem, a) == longest || rest(problem, b) == longest);
                if (a == b || kept) continue;
                for (int mine = 0; mine < a.items().length; mine++) {
                    for (int theirs = 0; theirs < b.items().length; theirs++) {
                        int more = problem.weight[b.items()[theirs]] - problem.weight[a.items()[mine]];
                        if (more > rest(problem, a) || -more > rest(problem, b)) continue;
                        if (!problem.holds(a.stock(), b.items()[theirs]) || !problem.holds(b.stock(), a.items()[mine])) continue;
                        int fewer = change(a, mine, b.items()[theirs]) + change(b, theirs, a.items()[mine]);
                        assertTrue(fewer >= 0 || a.items()[mine] == b.items()[theirs], "an exchange saves " + -fewer + " settings");
                    }
                }
            }
        }
    }

    private static long rest(WholeProblem problem, Pattern pattern) {
        return problem.capacity[pattern.stock()] - pattern.weight(problem);
    }

    /** Settings more with one piece of a place out and another in. */
    private static int change(Pattern pattern, int out, int in) {
        boolean there = false;
        for (int item : pattern.items()) there |= item == in;
        return (there ? 0 : 1) - (pattern.counts()[out] == 1 ? 1 : 0);
    }
}
