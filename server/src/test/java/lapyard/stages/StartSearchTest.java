package lapyard.stages;

import static org.junit.jupiter.api.Assertions.assertEquals;
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
import lapyard.working.SearchBudget;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class StartSearchTest {
    static LongStream seeds() {
        return LongStream.rangeClosed(1, 80);
    }

    /** Against every start of every task, some unbroken: the end before the best is refused, the best is not. */
    @ParameterizedTest
    @MethodSource("seeds")
    void refusesJustTheEndsThatNoScheduleHas(long seed) {
        StagingProblem problem = seed % 4 < 2 ? StagingJobs.small(5, seed, seed % 4 == 0) : even(6, seed);
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

    /** Against every start of every task, where one resource is not always there in full and tasks are released one by one. */
    @ParameterizedTest
    @ValueSource(longs = {143, 338, 414, 492, 519, 617, 829})
    void refusesJustTheEndsThatNoScheduleHasWhereAmountsDiffer(long seed) {
        StagingProblem problem = differing(6, seed);
        int best = BruteForce.leastEnd(problem, StagingSolver.solve(problem, StagingSolver.QUICK).makespan());
        assertTrue(refuses(problem, best - 1));
        assertFalse(refuses(problem, best));
    }

    /** Lists are forgotten all the time; the ends are those that it finds with all of them, and a judged schedule has the last. */
    @ParameterizedTest
    @ValueSource(longs = {6, 7, 12, 21, 27, 28, 36, 46})
    void refusesTheSameEndsWhereItForgets(long seed) {
        StagingProblem problem = StagingJobs.scarce(12, seed);
        StagingResult known = ScheduleJudge.check(problem, StagingSolver.solve(problem, Effort.ofSteps(1_000)));
        assertTrue(known.proven());
        assertTrue(refuses(problem, known.makespan() - 1, 100));
        assertFalse(refuses(problem, known.makespan(), 100));
    }

    /** On nets of 15 tasks with scarce resources, where the search has to look at many starts: a judged schedule has this end. */
    @ParameterizedTest
    @ValueSource(longs = {6, 7, 12, 21, 27, 28, 36, 46})
    void refusesNoEndThatAScheduleHas(long seed) {
        StagingProblem problem = StagingJobs.scarce(15, seed);
        StagingResult known = ScheduleJudge.check(problem, StagingSolver.solve(problem, Effort.ofSteps(1_000)));
        assertFalse(refuses(problem, known.makespan()));
    }

    /** As above; a reason that claims one place too many refuses the end of this one. */
    @Test
    void refusesNoEndThatIsHardToReach() {
        StagingProblem problem = StagingJobs.standard(20, 1.5, 0.75, 0.2, 111);
        StagingResult known = ScheduleJudge.check(problem, StagingSolver.solve(problem, Effort.ofSteps(8_000)));
        assertEquals(59, known.makespan());
        assertFalse(refuses(problem, 59));
    }

    /** As above, where lags go on over breaks; a reason that moves by worked units across a lag refuses the end of this one. */
    @Test
    void refusesNoEndWhereLagsCrossBreaks() {
        Random random = new Random(10_568);
        List<StagingProblem.Task> list = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            List<StagingProblem.Wait> after = new ArrayList<>();
            for (int earlier = 0; earlier < i; earlier++) if (random.nextInt(3) == 0) after.add(new StagingProblem.Wait("t" + earlier, 1 + random.nextInt(4)));
            int duration = 1 + random.nextInt(3);
            list.add(task("t" + i, duration, List.of(random.nextInt(4), 1 + random.nextInt(2)), after, 0));
        }
        StagingProblem problem = new StagingProblem("lagged", List.of(3, 3), list,
                Optional.of(new StagingProblem.Calendar(List.of(true, true, false, false, false), List.of())), 1);
        assertEquals(37, ScheduleJudge.check(problem, StagingSolver.solve(problem, Effort.ofSteps(50))).makespan());
        assertFalse(refuses(problem, 37));
    }

    /**
     * One of k, x and i has to wait. Where i waits for k it ends at 10, else at 7, with x from 4 to 14: the same task is done and the same
     * have begun at 5, but of the five that share a resource with i only the second leaves room for all by 14.
     */
    @Test
    void doesNotTakeATaskThatEndsLaterForOneThatEndsSooner() {
        List<StagingProblem.Task> tasks = new ArrayList<>();
        tasks.add(task("k", 4, List.of(1, 0), List.of(), 0));
        tasks.add(task("z", 10, List.of(0, 0), List.of(new StagingProblem.Wait("k", 0)), 0));
        tasks.add(task("x", 10, List.of(1, 0), List.of(), 0));
        tasks.add(task("i", 6, List.of(1, 1), List.of(), 1));
        for (int j = 0; j < 5; j++) tasks.add(task("j" + j, 3, List.of(0, 1), List.of(), 5));
        StagingProblem problem = new StagingProblem("sooner", List.of(2, 2), tasks, Optional.empty(), 1);
        assertEquals(14, BruteForce.leastEnd(problem, 15));
        assertFalse(refuses(problem, 14));
    }

    private static StagingProblem.Task task(String id, int duration, List<Integer> uses, List<StagingProblem.Wait> after, int notBefore) {
        return new StagingProblem.Task(id, duration, uses, after, false, "", notBefore, OptionalInt.empty());
    }

    @Test
    void refusesNothingWhenItsStepsAreOver() {
        StagingProblem problem = StagingJobs.scarce(15, 6);
        Net net = new Net(problem);
        SearchBudget budget = SearchBudget.patient(Effort.ofSteps(1), Progress.UNHEARD);
        int end = StagingSolver.solve(problem, Effort.ofSteps(1_000)).makespan();
        assertFalse(new StartSearch(net, budget, 1, StartSearch.LISTS).refuses(new Windows(net, new Priority(net), end)));
    }

    private static boolean refuses(StagingProblem problem, int end) {
        return refuses(problem, end, StartSearch.LISTS);
    }

    private static boolean refuses(StagingProblem problem, int end, int lists) {
        Net net = new Net(problem);
        SearchBudget budget = SearchBudget.patient(Effort.ofSteps(10_000), Progress.UNHEARD);
        return new StartSearch(net, budget, 1, lists).refuses(new Windows(net, new Priority(net), end));
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

    /** All tasks use one of the first resource, so that all can be worked on in the same units, with more or fewer others. */
    private static StagingProblem differing(int tasks, long seed) {
        Random random = new Random(seed * 10 + 4);
        int length = 3 + random.nextInt(5);
        List<Boolean> cycle = new ArrayList<>();
        List<Integer> there = new ArrayList<>();
        for (int t = 0; t < length; t++) {
            there.add(t == 0 ? 3 : random.nextInt(4));
            cycle.add(t == 0 || random.nextInt(4) > 0);
        }
        List<StagingProblem.Task> list = new ArrayList<>();
        for (int i = 0; i < tasks; i++) {
            List<StagingProblem.Wait> after = new ArrayList<>();
            for (int earlier = 0; earlier < i; earlier++) {
                if (random.nextInt(6) == 0) after.add(new StagingProblem.Wait("t" + earlier, random.nextInt(2) * random.nextInt(4)));
            }
            int duration = 1 + random.nextInt(4);
            List<Integer> uses = List.of(1, random.nextInt(3));
            list.add(task("t" + i, duration, uses, after, random.nextInt(3) == 0 ? random.nextInt(6) : 0));
        }
        return new StagingProblem("differing-" + tasks + "-" + seed, List.of(3, 2), list,
                Optional.of(new StagingProblem.Calendar(cycle, List.of(there, List.of()))), 1);
    }
}
