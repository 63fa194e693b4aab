package lapyard.cutting;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import lapyard.working.Effort;
import lapyard.working.Progress;
import lapyard.working.SearchBudget;
import org.junit.jupiter.api.Test;

/** What whole numbers say is what the lengths and prices of the job say, each looked at one by one. */
class WholeProblemTest {
    private final Random random = new Random(828);

    private CuttingProblem job() {
        List<CuttingProblem.Stock> stock = new ArrayList<>();
        for (int k = random.nextInt(7); k >= 0; k--) {
            OptionalInt there = random.nextBoolean() ? OptionalInt.of(random.nextInt(4)) : OptionalInt.empty();
            stock.add(new CuttingProblem.Stock("S" + k, 1000 + 200 * random.nextInt(4), BigDecimal.valueOf(random.nextInt(4) * 25, 1), there, random.nextInt(3),
                    BigDecimal.valueOf(random.nextInt(2) * 25, 1), random.nextInt(4) == 0));
        }
        List<CuttingProblem.Demand> pieces = new ArrayList<>();
        for (int i = random.nextInt(6); i >= 0; i--) pieces.add(new CuttingProblem.Demand("P" + i, 900 + 50 * random.nextInt(12), 1 + random.nextInt(3), 1, Math.max(0, random.nextInt(5) - 2)));
        return new CuttingProblem("some", 4, 10, 300, 0, stock, pieces);
    }

    /** A board counts where it holds something and no other, of which there are as many as wanted, is as long, as good and no dearer. */
    @Test
    void boardsThatAnotherReplacesAreLeftOut() {
        int left = 0;
        for (int job = 0; job < 200; job++) {
            CuttingProblem problem = job();
            Intake intake = new Intake(problem);
            WholeProblem whole = intake.whole();
            int most = Math.max(1, problem.pieces().stream().filter(piece -> intake.unplaced().stream().noneMatch(one -> one.id().equals(piece.id())))
                    .mapToInt(CuttingProblem.Demand::goodFaces).max().orElse(0));
            Set<String> kept = new HashSet<>();
            for (CuttingProblem.Stock board : intake.boards()) {
                boolean holds = problem.pieces().stream().anyMatch(piece -> Lacking.holds(problem, board, piece));
                boolean replaced = false;
                for (CuttingProblem.Stock other : intake.boards()) {
                    int faces = Integer.compare(Math.min(most, other.goodFaces()), Math.min(most, board.goodFaces()));
                    // a part of the unit at the end of a board holds nothing
                    int length = Long.compare(units(intake, whole, other), units(intake, whole, board));
                    int money = other.worth().compareTo(board.worth());
                    boolean same = faces == 0 && length == 0 && money == 0;
                    replaced |= other.available().isEmpty() && faces >= 0 && length >= 0 && money <= 0 && (!same || board.available().isPresent());
                }
                if (holds && !replaced) kept.add(units(intake, whole, board) + " " + board.worth().stripTrailingZeros() + " " + board.available().isPresent() + " " + Math.min(most, board.goodFaces()));
                else left++;
            }
            Set<String> stocks = new HashSet<>();
            for (int k = 0; k < whole.stocks(); k++) {
                stocks.add(whole.capacity[k] + " " + whole.money(whole.price[k]).stripTrailingZeros() + " " + (whole.supply[k] != WholeProblem.UNLIMITED) + " " + whole.stockFaces[k]);
            }
            assertEquals(whole.items() == 0 ? Set.of() : kept, stocks, problem.toString());
            assertEquals(stocks.size(), whole.stocks());
        }
        assertTrue(left > 120, "left out: " + left);
    }

    private static long units(Intake intake, WholeProblem whole, CuttingProblem.Stock board) {
        return (intake.usable(board) + intake.kerf()) / whole.micronsAUnit;
    }

    /** Pieces keep their length, number and faces, longest first, and share no larger unit; equal boards on hand are counted together. */
    @Test
    void piecesAndBoardsAreCountedTogether() {
        for (int job = 0; job < 120; job++) {
            CuttingProblem problem = job();
            Intake intake = new Intake(problem);
            WholeProblem whole = intake.whole();
            BigInteger common = BigInteger.ZERO;
            for (int i = 0; i < whole.items(); i++) {
                common = common.gcd(BigInteger.valueOf(whole.weight[i]));
                int count = 0;
                for (CuttingProblem.Demand piece : whole.itemDemands.get(i)) {
                    assertEquals(intake.microns(piece) + intake.kerf(), whole.weight[i] * whole.micronsAUnit);
                    assertTrue(whole.itemFaces[i] == 0 ? intake.boards().stream().allMatch(board -> board.goodFaces() >= piece.goodFaces()) : piece.goodFaces() == whole.itemFaces[i]);
                    count += piece.count();
                }
                assertEquals(count, whole.demand[i]);
                boolean later = i == 0 || whole.itemFaces[i] > whole.itemFaces[i - 1] || whole.itemFaces[i] == whole.itemFaces[i - 1] && whole.weight[i] < whole.weight[i - 1];
                assertTrue(later, "faces, then longest first, each once");
            }
            if (whole.items() == 0) continue;
            assertEquals(BigInteger.ONE, common);
            assertEquals(whole.mostBoards, IntStream.of(whole.demand).sum());
            for (int k = 0; k < whole.stocks(); k++) {
                List<CuttingProblem.Stock> boards = whole.stockBoards.get(k);
                assertEquals(boards.get(0).available().isEmpty() ? WholeProblem.UNLIMITED : boards.stream().mapToInt(board -> board.available().getAsInt()).sum(), whole.supply[k]);
            }
            checkUncut(whole);
            checkMoney(whole);
        }
    }

    /** Uncut, a piece costs what the cheapest board costs that can be bought for it; where none can, more than any board. */
    private static void checkUncut(WholeProblem whole) {
        for (int i = 0; i < whole.items(); i++) {
            long least = Long.MAX_VALUE;
            long dearest = 0;
            for (int k = 0; k < whole.stocks(); k++) {
                if (whole.supply[k] == WholeProblem.UNLIMITED && whole.holds(k, i)) least = Math.min(least, whole.cost[k]);
                dearest = Math.max(dearest, whole.cost[k]);
            }
            assertEquals(least < Long.MAX_VALUE, whole.buyable(i));
            if (whole.buyable(i)) assertEquals(least, whole.uncutCost[i]);
            else assertTrue(whole.uncutCost[i] > dearest && whole.uncutCost[i] >= dearest * Math.min(1000, whole.mostBoards));
        }
    }

    /** Money comes before boards, and the least money of a cost is the first that reaches it with as many boards as a plan may take. */
    private void checkMoney(WholeProblem whole) {
        long weight = whole.boardWeight;
        for (int k = 0; k < whole.stocks(); k++) {
            for (int other = 0; other < whole.stocks(); other++) {
                if (whole.price[k] < whole.price[other]) assertTrue(whole.cost[k] < whole.cost[other]);
            }
            if (weight > 1) assertTrue(weight * whole.price[k] + 1 == whole.cost[k] && weight > whole.mostBoards, "more boards never outweigh money");
            if (weight == 1) assertTrue(whole.cost[k] == whole.price[k] && whole.price[k] == whole.price[0] && whole.price[k] > 0);
            if (weight == 0) assertTrue(whole.cost[k] == 1 && whole.price[k] == 0);
        }
        for (int n = 0; n < 20; n++) {
            long cost = random.nextInt((int) Math.max(2, 12 * Math.max(1, weight))) - 2;
            long money = 0;
            if (weight > 0) while (money * weight + (weight > 1 ? whole.mostBoards : 0) < cost) money++;
            assertEquals(money, whole.moneyAtLeast(cost));
            BigDecimal sum = whole.money(money);
            assertEquals(money, whole.unitsIn(sum));
            assertEquals(money + 1, whole.unitsIn(sum.add(new BigDecimal("0.001"))));
        }
    }

    /** One piece more stands among the others by its length; all else stays. */
    @Test
    void aRestToLeaveIsOnePieceMore() {
        for (int job = 0; job < 120; job++) {
            WholeProblem whole = new Intake(job()).whole();
            if (whole.items() == 0) continue;
            int extra = 1 + random.nextInt(whole.capacity[0]);
            int[] boards = whole.supply.clone();
            if (random.nextBoolean()) for (int k = 0; k < boards.length; k++) boards[k] = Math.min(boards[k], random.nextInt(3));
            WholeProblem with = whole.leaving(extra, boards);
            int at = whole.place(extra);
            assertEquals(whole.items() + 1, with.items());
            assertArrayEquals(boards, with.supply);
            assertEquals(whole.mostBoards + 1, with.mostBoards);
            assertTrue(with.weight[at] == extra && with.demand[at] == 1 && with.itemFaces[at] == 0);
            assertTrue(at == 0 || with.itemFaces[at - 1] == 0 && with.weight[at - 1] > extra);
            assertTrue(at == whole.items() || with.itemFaces[at + 1] > 0 || with.weight[at + 1] <= extra);
            for (int i = 0; i < whole.items(); i++) {
                int there = i < at ? i : i + 1;
                assertTrue(whole.weight[i] == with.weight[there] && whole.demand[i] == with.demand[there] && whole.itemFaces[i] == with.itemFaces[there] && whole.uncutCost[i] == with.uncutCost[there]);
            }
            long bought = IntStream.range(0, boards.length).filter(k -> boards[k] == WholeProblem.UNLIMITED && whole.capacity[k] >= extra).mapToLong(k -> whole.cost[k]).min().orElse(-1);
            long dearest = IntStream.range(0, whole.items()).mapToLong(i -> whole.uncutCost[i]).max().orElse(1);
            assertEquals(bought < 0 ? dearest : bought, with.uncutCost[at]);
        }
    }

    /** The question how few are left over asks for no piece that can be bought and counts each piece before all boards. */
    @Test
    void piecesLeftOverOutweighBoards() {
        for (int job = 0; job < 120; job++) {
            WholeProblem whole = new Intake(job()).whole();
            if (whole.items() == 0) continue;
            for (WholeProblem question : List.of(whole.scarce(), whole.given())) {
                boolean scarce = question.demand != whole.demand;
                for (int i = 0; i < whole.items(); i++) {
                    assertEquals(scarce && whole.buyable(i) ? 0 : whole.demand[i], question.demand[i]);
                    assertTrue(question.uncutCost[i] * 8 >= 4 * whole.mostBoards && (!scarce || question.uncutCost[i] > whole.mostBoards));
                    assertTrue(i == 0 || question.itemFaces[i] > question.itemFaces[i - 1] || question.uncutCost[i] <= question.uncutCost[i - 1], "the longer first");
                }
                for (int k = 0; k < whole.stocks(); k++) {
                    assertTrue(question.cost[k] == 1 && question.price[k] == 0);
                    boolean bought = whole.supply[k] == WholeProblem.UNLIMITED;
                    assertEquals(scarce && bought ? 0 : Math.min(whole.supply[k], scarce ? whole.supply[k] : whole.mostBoards), question.supply[k]);
                }
                if (!scarce) continue;
                Solution plan = new Filling(question, SearchBudget.whole(Effort.ofSteps(100_000), Progress.UNHEARD)).best(question.demand, question.supply);
                assertTrue(question.uncutAtLeast(plan.cost()) <= plan.uncut(), "as much is left over as it costs, or more");
                assertEquals(plan.uncut(), question.uncutAtLeast(plan.cost() + whole.mostBoards - plan.boards()), 1);
            }
        }
    }

    /** Counted by hand: three steps of patience, two that do not count, and one more after the last gain. */
    @Test
    void patienceEndsAWhileAfterTheLastGain() {
        SearchBudget budget = SearchBudget.whole(Effort.ofSteps(20), Progress.UNHEARD);
        assertEquals(20_000, budget.turns());
        Patience patience = new Patience(budget, 3);
        budget.spend(3_000);
        assertEquals(0, patience.left());
        assertFalse(patience.over());
        budget.spend(1);
        assertTrue(patience.over());
        patience.skip(2);
        assertEquals(1_999, patience.left());
        assertFalse(patience.over());
        patience.renew();
        assertEquals(3_000, patience.left());
        assertEquals(3, budget.steps());
        budget.spend(16_998);
        assertFalse(budget.over());
        budget.spend(1);
        assertTrue(budget.over());
        patience.renew();
        assertTrue(patience.over(), "no patience outlasts the whole");
        assertEquals(Long.MAX_VALUE, SearchBudget.turns(Long.MAX_VALUE / 2));
        assertFalse(SearchBudget.whole(Effort.ofSteps(1), Progress.UNHEARD).over());
    }
}
