package lapyard.stages;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import lapyard.plan.Told;
import lapyard.stages.StagingProblem.Calendar;
import lapyard.stages.StagingProblem.Task;
import lapyard.stages.StagingProblem.Wait;
import lapyard.working.Effort;
import lapyard.working.Progress;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.provider.ValueSource;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class StagingSolverTest {
    private static final Effort SHORT = new Effort(3_000, Duration.ofMinutes(1));

    private static StagingResult solved(StagingProblem problem) {
        return ScheduleJudge.check(problem, StagingSolver.solve(problem, SHORT));
    }

    private static Task task(String id, int duration, int uses, Wait... after) {
        return new Task(id, duration, List.of(uses), List.of(after), false, "", 0, OptionalInt.empty());
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void endsAsEarlyAsTryingEveryStartDoes(long seed) {
        StagingProblem problem = StagingJobs.small(4 + (int) (seed % 2), seed, seed % 3 == 0);
        if (impossible(problem)) return;
        StagingResult ours = solved(problem);
        int best = BruteForce.leastEnd(problem, ours.makespan());
        assertEquals(best, ours.makespan(), () -> "seed " + seed);
        assertTrue(ours.lowerBound() <= best, () -> "seed " + seed + ": bound " + ours.lowerBound() + ", best " + best);
    }

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 80);
    }

    /** OR-Tools CP-SAT 9.15 with a model of its own, on problems with a calendar, lags and people who come and go. */
    @ParameterizedTest
    @MethodSource("someSeeds")
    void endsWhenAnIndependentSolverProvesItMust(long seed) {
        StagingProblem problem = StagingJobs.small(9, 1000 + seed, seed % 2 == 0);
        if (impossible(problem)) return;
        StagingResult ours = solved(problem);
        Reference.Answer reference = Reference.byStarts(problem, ours.makespan(), 20);
        assertTrue(reference.optimal(), () -> "seed " + seed + ": " + reference);
        assertEquals(reference.makespan(), ours.makespan(), () -> "seed " + seed);
        assertTrue(ours.lowerBound() <= reference.makespan(), () -> "seed " + seed + ": bound " + ours.lowerBound());
    }

    static LongStream someSeeds() {
        return LongStream.rangeClosed(1, 12);
    }

    /** By hand: five tasks of two units use 2 of 5 each, so at most two at once: 6 units. By amounts alone 5 x 2 x 2 / 5 = 4. */
    @Test
    void tasksThatDoNotFitAtOnceAreProvedToTakeLonger() {
        List<Task> tasks = new ArrayList<>();
        for (int i = 0; i < 5; i++) tasks.add(task("t" + i, 2, 2));
        StagingResult pairs = solved(new StagingProblem("pairs", List.of(5), tasks, Optional.empty(), 1));
        assertEquals(6, pairs.makespan());
        assertTrue(pairs.proven());
    }

    /** OR-Tools CP-SAT 9.15 with a model of its own, on nets whose ends need a search: what we prove is what it finds. */
    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14, 15, 16, 17, 18})
    void provesWhatAnIndependentSolverProves(long seed) {
        StagingProblem problem = StagingJobs.standard(20, 1.5 + 0.3 * (seed % 3), seed % 2 == 0 ? 1 : 0.75, 0.2, seed);
        StagingResult ours = ScheduleJudge.check(problem, StagingSolver.solve(problem, Effort.ofSteps(40_000)));
        Reference.Answer reference = Reference.byIntervals(problem, 200, 20);
        assertTrue(reference.optimal(), () -> "seed " + seed + ": " + reference);
        assertEquals(reference.makespan(), ours.makespan());
        assertTrue(ours.proven(), () -> "bound " + ours.lowerBound());
    }

    /** Of six such nets at most one is not proved; without what is learned from contradictions three were not. */
    @Test
    void netsWithScarceResourcesAreProved() {
        int proved = 0;
        for (int seed = 300; seed < 306; seed++) {
            StagingResult ours = ScheduleJudge.check(StagingJobs.scarce(30, seed), StagingSolver.solve(StagingJobs.scarce(30, seed), Effort.ofSteps(30_000)));
            if (ours.proven()) proved++;
        }
        assertTrue(proved >= 5, proved + " of 6");
    }

    /** A seed may make a task that no unit of its calendar can hold: that is refused, and tested below. */
    private static boolean impossible(StagingProblem problem) {
        for (Task task : problem.tasks()) {
            int longest = 0;
            int run = 0;
            int length = problem.calendar().orElseThrow().cycle().size();
            for (int t = 0; t < 3 * length; t++) {
                run = ScheduleJudge.canWork(problem, task, t) ? run + 1 : 0;
                longest = Math.max(longest, run);
            }
            if (task.duration() > 0 && longest == 0 || task.unbroken() && longest < task.duration()) {
                assertThrows(IllegalArgumentException.class, () -> StagingSolver.solve(problem, SHORT));
                return true;
            }
        }
        return false;
    }

    /** PSPLIB j30 (Kolisch and Sprecher, EJOR 96:205-216, 1997) and two derived with a weekend calendar and curing lags. */
    @Test
    void reachesThePublishedOptima() throws IOException {
        String folder = System.getProperty("lapyard.reference", "");
        Path scheduling = Path.of(folder, "scheduling");
        Assumptions.assumeTrue(!folder.isBlank() && Files.isReadable(scheduling.resolve("sample.json")),
                "NOT RUN: the published scheduling instances are absent; name their folder by -Dlapyard.reference=DIR");
        for (ResearchSample.Known known : ResearchSample.read(scheduling)) {
            StagingResult ours = ScheduleJudge.check(known.problem(), StagingSolver.solve(known.problem(), new Effort(60_000, Duration.ofMinutes(1))));
            assertEquals(known.optimum(), ours.makespan(), known.problem().name());
        }
    }

    @Test
    void theSameProblemGivesTheSameSchedule() {
        StagingProblem problem = StagingJobs.scarce(40, 7);
        StagingResult first = solved(problem);
        StagingResult again = solved(problem);
        assertEquals(first.starts(), again.starts());
        assertEquals(first.lowerBound(), again.lowerBound());
    }

    /** Worked by hand: 3 hours begun on the last hour of a day pause overnight and end 2 hours into the next. */
    @Test
    void workPausesAndWaitsRunThroughTheNight() {
        Optional<Calendar> days = Optional.of(new Calendar(List.of(true, true, false, false), List.of()));
        StagingResult result = solved(new StagingProblem("night", List.of(1), List.of(task("a", 1, 1), task("b", 3, 1, new Wait("a", 0)), task("c", 1, 1, new Wait("b", 2))), days, 1));
        assertEquals(List.of(0, 1, 8), List.copyOf(result.starts().values()));
        assertEquals(List.of(1, 6, 9), List.copyOf(result.ends().values()));
        assertTrue(result.proven());
    }

    @Test
    void anUnbrokenTaskWaitsForAStretchThatHoldsIt() {
        Optional<Calendar> days = Optional.of(new Calendar(List.of(true, true, false), List.of()));
        StagingResult result = solved(new StagingProblem("pour", List.of(1), List.of(task("a", 1, 1), new Task("b", 2, List.of(1), List.of(new Wait("a", 0)), true, "", 0, OptionalInt.empty())), days, 1));
        assertEquals(3, result.starts().get("b"));
    }

    /** Two beds of two tasks and one person: by hand, each is open 4 units when done one after the other. */
    @Test
    void groupsAreDoneOneAfterTheOther() {
        List<Task> tasks = new ArrayList<>();
        for (String bed : List.of("M", "N")) {
            for (int i = 0; i < 2; i++) {
                List<Wait> after = i == 0 ? List.of() : List.of(new Wait(bed + 0, 0));
                tasks.add(new Task(bed + i, 2, List.of(1), after, false, bed, 0, OptionalInt.empty()));
            }
        }
        StagingResult result = solved(new StagingProblem("beds", List.of(1), tasks, Optional.empty(), 8));
        assertEquals(List.of(0, 2, 4, 6), List.copyOf(result.starts().values()));
    }

    /** Beds of two tasks with a wait between them and one person: every order of the tasks, each placed as early as it goes. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void behindTheLastPeriodTheSumOfTheBedsReadyDaysIsLeast(long seed) {
        Random random = new Random(seed);
        int beds = 2 + random.nextInt(2);
        int[] duration = random.ints(2L * beds, 1, 5).toArray();
        int[] lag = random.ints(beds, 0, 6).toArray();
        List<Task> tasks = new ArrayList<>();
        for (int i = 0; i < 2 * beds; i++) {
            List<Wait> after = i % 2 == 0 ? List.of() : List.of(new Wait("t" + (i - 1), lag[i / 2]));
            tasks.add(new Task("t" + i, duration[i], List.of(1), after, true, "bed" + i / 2, 0, OptionalInt.empty()));
        }
        StagingResult result = solved(new StagingProblem("beds", List.of(1), tasks, Optional.empty(), 7));
        long ready = 0;
        for (int bed = 0; bed < beds; bed++) ready += result.ends().get("t" + (2 * bed + 1));
        long[] best = {Long.MAX_VALUE, Long.MAX_VALUE};
        tryAll(new ArrayList<>(), duration, lag, best);
        assertEquals(best[0], (result.makespan() + 6) / 7, "weeks");
        assertEquals(best[1], ready, "sum of ready days");
    }

    private static void tryAll(List<Integer> order, int[] duration, int[] lag, long[] best) {
        if (order.size() == duration.length) {
            int[] end = new int[duration.length];
            List<int[]> taken = new ArrayList<>();
            for (int task : order) {
                int from = task % 2 == 0 ? 0 : end[task - 1] + lag[task / 2];
                boolean moved = true;
                while (moved) {
                    moved = false;
                    for (int[] one : taken) {
                        if (from < one[1] && one[0] < from + duration[task]) {
                            from = one[1];
                            moved = true;
                        }
                    }
                }
                end[task] = from + duration[task];
                taken.add(new int[] {from, end[task]});
            }
            long weeks = (java.util.Arrays.stream(end).max().orElseThrow() + 6) / 7;
            long ready = 0;
            for (int i = 1; i < end.length; i += 2) ready += end[i];
            if (weeks < best[0] || weeks == best[0] && ready < best[1]) {
                best[0] = weeks;
                best[1] = ready;
            }
            return;
        }
        for (int task = 0; task < duration.length; task++) {
            if (order.contains(task) || task % 2 == 1 && !order.contains(task - 1)) continue;
            order.add(task);
            tryAll(order, duration, lag, best);
            order.remove(order.size() - 1);
        }
    }

    @Test
    void aDueTaskGoesFirstAndLatenessIsCounted() {
        List<Task> tasks = List.of(
                new Task("a", 3, List.of(1), List.of(), false, "A", 0, OptionalInt.empty()),
                new Task("b", 3, List.of(1), List.of(), false, "B", 0, OptionalInt.of(2)));
        StagingResult result = solved(new StagingProblem("due", List.of(1), tasks, Optional.empty(), 10));
        assertEquals(0, result.starts().get("b"));
        assertEquals(1, result.late());
    }

    @Test
    void nothingBeginsBeforeItMay() {
        List<Task> tasks = List.of(new Task("a", 1, List.of(1), List.of(), false, "", 5, OptionalInt.empty()));
        StagingResult result = solved(new StagingProblem("later", List.of(1), tasks, Optional.empty(), 1));
        assertEquals(5, result.starts().get("a"));
        assertTrue(result.proven());
    }

    @Test
    void nothingToDoEndsAtOnce() {
        StagingResult result = solved(new StagingProblem("none", List.of(), List.of(), Optional.empty(), 1));
        assertEquals(0, result.makespan());
        assertTrue(result.proven());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("wrong")
    void whatCanNeverBeDoneIsRefusedByNameAndAmount(String told, StagingProblem problem) {
        String message = Told.refusal(assertThrows(IllegalArgumentException.class, () -> StagingSolver.solve(problem, SHORT)));
        assertTrue(message.contains(told), message);
    }

    static Stream<org.junit.jupiter.params.provider.Arguments> wrong() {
        List<Object[]> cases = new ArrayList<>();
        Optional<Calendar> never = Optional.of(new Calendar(List.of(false, false), List.of()));
        Optional<Calendar> days = Optional.of(new Calendar(List.of(true, true, false), List.of()));
        Optional<Calendar> away = Optional.of(new Calendar(List.of(true, false), List.of(List.of(1, 2))));
        cases.add(new Object[] {"\"a\" waits for \"b\" waits for \"a\"", problem(2, Optional.empty(),
                task("a", 1, 1, new Wait("b", 0)), task("b", 1, 1, new Wait("a", 0)))});
        cases.add(new Object[] {"task a: The task uses 3 of resource 1, and 2 are there", problem(2, Optional.empty(), task("a", 1, 3))});
        cases.add(new Object[] {"is listed twice", problem(2, Optional.empty(), task("a", 1, 1), task("a", 1, 1))});
        cases.add(new Object[] {"There is no task \"x\"", problem(2, Optional.empty(), task("a", 1, 1, new Wait("x", 0)))});
        cases.add(new Object[] {"\"lag\" is -1 clock units; at least 0 clock units is needed", problem(2, Optional.empty(), task("b", 1, 1), task("a", 1, 1, new Wait("b", -1)))});
        cases.add(new Object[] {"\"duration\" is -1 clock units", problem(2, Optional.empty(), task("a", -1, 1))});
        cases.add(new Object[] {"no working unit", problem(2, never, task("a", 1, 1))});
        cases.add(new Object[] {"never there together", problem(2, away, task("a", 1, 2))});
        cases.add(new Object[] {"takes 3 clock units in one go; the longest stretch without a break has 2 clock units", problem(2, days, new Task("a", 3, List.of(1), List.of(), true, "", 0, OptionalInt.empty()))});
        cases.add(new Object[] {"names 2 amounts, and there are 1 resource", problem(2, days, new Task("a", 3, List.of(1, 1), List.of(), true, "", 0, OptionalInt.empty()))});
        cases.add(new Object[] {"Count in larger units", problem(2, Optional.empty(), task("a", 2_000_000_000, 1))});
        return cases.stream().map(org.junit.jupiter.params.provider.Arguments::of);
    }

    private static StagingProblem problem(int people, Optional<Calendar> calendar, Task... tasks) {
        return new StagingProblem("wrong", List.of(people), List.of(tasks), calendar, 1);
    }
}
