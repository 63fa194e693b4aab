package lapyard.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import lapyard.working.Effort;
import lapyard.working.Progress;
import lapyard.working.SearchBudget;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How soon the money and the boards of a job are proved: in no more steps than were counted, with a tenth to spare. */
class SearchStepsTest {
    /** Several lengths and boards on hand, one length, and the shapes of the literature that {@link Shapes} names. */
    private static CuttingProblem job(String shape, int seed) {
        Shapes.Case job = switch (shape) {
            case "garden" -> Shapes.trade(4 + seed, 20 + 10 * seed, 1 + seed % 5, seed % 4, seed);
            case "one length" -> Shapes.trade(4 + seed, 20 + 10 * seed, 1, 0, seed);
            case "uniform" -> Shapes.uniform(120, seed);
            case "triplets" -> Shapes.triplets(60, seed);
            case "narrow" -> Shapes.narrow(60, seed);
            case "spread" -> Shapes.spread(60, 4, 0.3, seed);
            case "hard" -> Shapes.hard(60, seed);
            default -> Shapes.planted(10 * seed, 4800, 3, 10, seed);
        };
        return job.problem();
    }

    @ParameterizedTest(name = "{0} {1}: {2} boards of {3} in {4} steps")
    @CsvSource({
        "garden, 1, 7, 19242, 353", "garden, 2, 10, 36942, 490", "garden, 3, 14, 11750, 64", "garden, 4, 14, 56559, 3348", "garden, 5, 30, 1307, 373",
        "garden, 6, 28, 52101, 1969", "garden, 7, 29, 105031, 2405", "garden, 8, 37, 95268, 783", "garden, 9, 40, 96540, 6331", "garden, 10, 32, 32073, 1997",
        "garden, 11, 50, 79418, 2145", "garden, 12, 52, 43767, 862", "one length, 13, 40, 40, 940", "one length, 14, 43, 43, 1513",
        "one length, 15, 50, 50, 551", "one length, 16, 49, 49, 2805", "one length, 17, 46, 46, 2510", "one length, 18, 41, 41, 3336",
        "one length, 19, 51, 51, 4289", "one length, 20, 57, 57, 4589", "one length, 21, 41, 41, 4361", "one length, 22, 53, 53, 3555",
        "one length, 23, 48, 48, 2973", "one length, 24, 105, 105, 1142", "uniform, 1, 48, 48, 1276", "triplets, 1, 20, 20, 247", "narrow, 1, 11, 11, 1581",
        "spread, 1, 16, 16, 2908", "uniform, 2, 46, 46, 1272", "triplets, 2, 20, 20, 625", "narrow, 2, 11, 11, 1379", "spread, 2, 15, 15, 3276",
        "planted, 2, 20, 20, 534", "uniform, 3, 52, 52, 683", "triplets, 3, 20, 20, 271", "spread, 3, 15, 15, 3384", "hard, 3, 23, 23, 2071"
    })
    void theBestPlanIsProvedInFewSteps(String shape, int seed, long boards, long money, long steps) {
        WholeProblem problem = new Intake(job(shape, seed)).whole();
        Effort effort = Effort.ofSteps(100_000, 6_000);
        SearchBudget budget = SearchBudget.whole(effort, Progress.UNHEARD);
        CuttingSearch search = new CuttingSearch(problem, null, effort, budget);
        Solution plan = search.run();
        assertEquals(boards, plan.boards());
        assertEquals(money, plan.money());
        assertEquals(plan.cost(), search.bound());
        assertTrue(10 * budget.steps() <= 11 * steps && 2 * budget.steps() >= steps, "steps " + budget.steps());
    }
}
