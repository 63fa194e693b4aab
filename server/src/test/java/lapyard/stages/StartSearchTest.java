package lapyard.stages;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.stream.LongStream;
import lapyard.working.Effort;
import lapyard.working.Progress;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class StartSearchTest {
    static LongStream seeds() {
        return LongStream.rangeClosed(1, 80);
    }

    /** Against every start of every task: the end before the best is refused, the best is not. */
    @ParameterizedTest
    @MethodSource("seeds")
    void refusesJustTheEndsThatNoScheduleHas(long seed) {
        StagingProblem problem = seed % 4 == 0 ? StagingJobs.small(5, seed, true) : even(6, seed);
        int reached;
        try {
            reached = StagingSolver.solve(problem, StagingSolver.QUICK).makespan();
        } catch (IllegalArgumentException never) {
            return;
        }
        int best = BruteForce.leastEnd(problem, reached);
        assertTrue(refuses(problem, best - 1), "seed " + seed);
        assertFalse(refuses(problem, best), "seed " + seed);
    }

    /** On nets of 15 tasks with scarce resources, where the search has to look at many starts: a judged schedule has this end. */
    @ParameterizedTest
    @ValueSource(longs = {6, 7, 12, 21, 27, 28, 36, 46})
    void refusesNoEndThatAScheduleHas(long seed) {
        StagingProblem problem = StagingJobs.scarce(15, seed);
        StagingResult known = ScheduleJudge.check(problem, StagingSolver.solve(problem, Effort.ofSteps(1_000)));
        assertFalse(refuses(problem, known.makespan()));
    }

    private static boolean refuses(StagingProblem problem, int end) {
        Net net = new Net(problem);
        StagingBudget budget = new StagingBudget(Effort.ofSteps(3_000), Progress.UNHEARD);
        return new StartSearch(net, budget, 1).refuses(new Windows(net, new Priority(net), end));
    }

    /** Amounts that are always there, and one calendar for all, or none. */
    private static StagingProblem even(int tasks, long seed) {
        Random random = new Random(seed);
        List<StagingProblem.Task> list = new ArrayList<>();
        for (int i = 0; i < tasks; i++) {
            List<StagingProblem.Wait> after = new ArrayList<>();
            for (int earlier = 0; earlier < i; earlier++) {
                if (random.nextInt(5) == 0) after.add(new StagingProblem.Wait("t" + earlier, random.nextInt(2) * random.nextInt(4)));
            }
            List<Integer> uses = List.of(random.nextInt(4), 1 + random.nextInt(2));
            list.add(new StagingProblem.Task("t" + i, 1 + random.nextInt(4), uses, after, false, "", 0, OptionalInt.empty()));
        }
        Optional<StagingProblem.Calendar> calendar = random.nextBoolean()
                ? Optional.empty()
                : Optional.of(new StagingProblem.Calendar(List.of(true, true, false, true, false), List.of()));
        return new StagingProblem("even-" + tasks + "-" + seed, List.of(3, 3), list, calendar, 1);
    }
}
