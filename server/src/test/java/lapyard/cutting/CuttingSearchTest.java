package lapyard.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import lapyard.working.Effort;
import lapyard.working.Progress;
import lapyard.working.SearchBudget;
import org.junit.jupiter.api.Test;

/** What a search tells while it goes on, and that it ends as soon as what is asked of it is known: a search to the end is the reference. */
class CuttingSearchTest {
    private static final Effort EFFORT = Effort.ofSteps(100_000, 20_000);

    private record Heard(BigDecimal money, BigDecimal bound) {}

    private static SearchBudget budget() {
        return SearchBudget.whole(EFFORT, Progress.UNHEARD);
    }

    /** Several lengths and boards on hand, and one length. */
    private static List<WholeProblem> jobs() {
        return IntStream.range(1, 25)
                .mapToObj(i -> Shapes.trade(3 + i / 2, 10 + 2 * i, i % 4 == 0 ? 1 : 2 + i % 3, i % 4, 700 + i))
                .map(one -> new Intake(one.problem()).whole())
                .toList();
    }

    @Test
    void whatIsToldComesNearerEachTimeAndEndsAtThePlan() {
        int often = 0;
        for (WholeProblem problem : jobs()) {
            List<Heard> heard = new ArrayList<>();
            CuttingSearch search = new CuttingSearch(problem, null, EFFORT, SearchBudget.whole(EFFORT, (money, bound) -> heard.add(new Heard(money, bound))));
            Solution plan = search.run();
            Solution first = new Filling(problem, budget()).best(problem.demand, problem.supply);
            assertTrue(heard.get(0).money().compareTo(problem.money(first.money())) <= 0, "the first filling is told");
            for (int n = 0; n < heard.size(); n++) {
                Heard now = heard.get(n);
                assertTrue(now.bound().compareTo(now.money()) <= 0);
                if (n == 0) continue;
                Heard before = heard.get(n - 1);
                assertTrue(now.money().compareTo(before.money()) <= 0 && now.bound().compareTo(before.bound()) >= 0 && !now.equals(before), before + " and then " + now);
            }
            Heard last = heard.get(heard.size() - 1);
            assertEquals(new Heard(problem.money(plan.money()), problem.money(Math.min(plan.money(), search.moneyBound()))), last);
            if (heard.size() > 2) often++;
        }
        assertTrue(often > 8, "told more than twice: " + often);
        List<Heard> heard = new ArrayList<>();
        WholeProblem few = new Intake(Jobs.job("too few", 3, 0, List.of(Jobs.onHand("R", 3000, "1", 1)), Jobs.pieces(900, 5))).whole();
        new CuttingSearch(few, null, EFFORT, SearchBudget.whole(EFFORT, (money, bound) -> heard.add(new Heard(money, bound)))).run();
        assertEquals(List.of(), heard, "money with pieces left over is not told");
    }

    @Test
    void aSearchEndsAsSoonAsWhatIsAskedIsKnown() {
        long all = 0;
        long asked = 0;
        for (WholeProblem problem : jobs()) {
            SearchBudget own = budget();
            CuttingSearch search = new CuttingSearch(problem, null, EFFORT, own);
            Solution plan = search.run();
            assertEquals(plan.cost(), search.bound(), "proved");
            assertSame(plan, new CuttingSearch(problem, plan, EFFORT, budget()).run(), "a known plan stays where none is better");
            for (long goal : new long[] {plan.cost() - 1, plan.cost(), plan.cost() + plan.cost() / 20}) {
                SearchBudget less = budget();
                CuttingSearch towards = new CuttingSearch(problem, null, EFFORT, less, goal, CuttingSearch.NO_RIVAL);
                Solution found = towards.run();
                assertTrue(goal < plan.cost() ? towards.bound() > goal : found.cost() <= goal);
                assertTrue(towards.bound() <= plan.cost() && found.cost() >= plan.cost() && less.spent() <= own.spent());
                all += own.spent();
                asked += less.spent();
            }
            for (long below : new long[] {plan.money() / 2, plan.money(), plan.money() + 1, CuttingSearch.NO_RIVAL}) {
                SearchBudget less = budget();
                CuttingSearch money = CuttingSearch.ofMoney(problem, EFFORT, less, below);
                Solution found = money.run();
                assertEquals(below <= plan.money(), money.hopeless());
                assertEquals(below <= plan.money(), money.moneyBound() >= below);
                assertTrue(money.moneyBound() <= plan.money() && (money.hopeless() || found.money() == plan.money()));
                all += own.spent();
                asked += less.spent();
            }
        }
        assertTrue(asked < 0.8 * all, asked + " turns of " + all);
    }
}
