package lapyard.stages;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.stream.IntStream;
import lapyard.working.Effort;
import lapyard.working.Progress;
import lapyard.working.SearchBudget;
import org.junit.jupiter.api.Test;

/** Tasks placed one by one, against every start tried clock unit by clock unit. */
class PlacingTest {
    private static final int RESOURCES = 3;

    /** Many tasks on few hands, so that most of the clock is full where the later ones are placed; some use nothing, some may not be broken off. */
    private static StagingProblem problem(Random random, int tasks) {
        List<Boolean> cycle = IntStream.range(0, 14).mapToObj(t -> t % 7 < 4 || random.nextInt(4) == 0).toList();
        List<List<Integer>> there = List.of(IntStream.range(0, 14).mapToObj(t -> t % 5 == 0 ? 2 : 4).toList(), List.of(), List.of());
        List<StagingProblem.Task> all = new ArrayList<>();
        for (int i = 0; i < tasks; i++) {
            List<StagingProblem.Wait> after = i < 5 || random.nextInt(3) > 0 ? List.of()
                    : List.of(new StagingProblem.Wait(String.valueOf(random.nextInt(i)), random.nextInt(20)));
            List<Integer> uses = List.of(random.nextInt(3), random.nextInt(5) == 0 ? 1 : 0, random.nextInt(2));
            boolean unbroken = random.nextInt(4) == 0;
            all.add(new StagingProblem.Task(String.valueOf(i), random.nextInt(unbroken ? 4 : 9), uses, after, unbroken, "", random.nextInt(30), OptionalInt.empty()));
        }
        return new StagingProblem("many", List.of(4, 1, 2), all, Optional.of(new StagingProblem.Calendar(cycle, there)), 14);
    }

    /** What is used and what is there, unit by unit. */
    private record Clock(Net net, int[][] used) {
        private boolean works(int task, int unit) {
            if (!net.worked(unit)) return false;
            for (int u = 0; u < net.used[task].length; u++) if (net.there(net.used[task][u], unit) < net.amount[task][u]) return false;
            return true;
        }

        /** The units that the task takes from this one on; null where it cannot begin there. */
        private int[] from(int task, int start) {
            int[] units = new int[net.duration[task]];
            int count = 0;
            for (int unit = start; count < units.length; unit++) {
                if (!works(task, unit)) {
                    if (count == 0 || net.unbroken[task]) return null;
                    continue;
                }
                for (int u = 0; u < net.used[task].length; u++) {
                    if (used[net.used[task][u]][unit] + net.amount[task][u] > net.there(net.used[task][u], unit)) return null;
                }
                units[count++] = unit;
            }
            return units;
        }

        private void take(int task, int[] units) {
            for (int unit : units) for (int u = 0; u < net.used[task].length; u++) used[net.used[task][u]][unit] += net.amount[task][u];
        }
    }

    @Test
    void eachTaskLiesWhereTryingEveryStartPutsIt() {
        for (int seed = 1; seed <= 12; seed++) {
            Net net = new Net(problem(new Random(seed), 250));
            SearchBudget budget = SearchBudget.patient(Effort.ofSteps(1), Progress.UNHEARD);
            Placing placing = new Placing(net, budget);
            Placing.Times times = new Placing.Times(net.n);
            for (int pass = 0; pass < 2; pass++) {
                placing.forward(net.inOrder, times);
                assertEarliest(net, times, "seed " + seed + ", pass " + pass);
                assertTrue(times.last > 250, "the clock is full for long: " + times.last);
                placing.backward(times);
                assertLatest(net, times, "seed " + seed + ", pass " + pass);
            }
        }
    }

    private static void assertEarliest(Net net, Placing.Times times, String name) {
        Clock clock = new Clock(net, new int[RESOURCES][4 * times.last + 200]);
        int[] starts = new int[net.n];
        int[] ends = new int[net.n];
        for (int task : net.inOrder) {
            int earliest = net.notBefore[task];
            for (int p = 0; p < net.before[task].length; p++) earliest = Math.max(earliest, ends[net.before[task][p]] + net.beforeLag[task][p]);
            starts[task] = earliest;
            ends[task] = earliest;
            if (net.duration[task] == 0) continue;
            int[] units = null;
            for (int start = earliest; units == null; start++) units = clock.from(task, start);
            clock.take(task, units);
            starts[task] = units[0];
            ends[task] = units[units.length - 1] + 1;
        }
        assertArrayEquals(starts, times.start, name);
        assertArrayEquals(ends, times.end, name);
    }

    /** Where all stand, none can be moved later past what is placed after it: those that end last were placed first. */
    private static void assertLatest(Net net, Placing.Times times, String name) {
        Clock clock = new Clock(net, new int[RESOURCES][times.last + 200]);
        Integer[] lastFirst = IntStream.range(0, net.n).boxed().toArray(Integer[]::new);
        for (int task : lastFirst) clock.take(task, net.duration[task] == 0 ? new int[0] : units(net, clock, task, times.start[task]));
        Arrays.sort(lastFirst, (a, b) -> Integer.compare(times.start[a], times.start[b]));
        for (int task : lastFirst) {
            if (net.duration[task] == 0) continue;
            int[] own = units(net, clock, task, times.start[task]);
            for (int unit : own) for (int u = 0; u < net.used[task].length; u++) clock.used[net.used[task][u]][unit] -= net.amount[task][u];
            int latest = times.last;
            for (int s = 0; s < net.after[task].length; s++) latest = Math.min(latest, times.start[net.after[task][s]] - net.afterLag[task][s]);
            for (int start = own[0] + 1; start < latest; start++) {
                int[] later = clock.from(task, start);
                assertTrue(later == null || later[later.length - 1] >= latest, name + ": task " + task + " of " + times.start[task] + " could begin at " + start);
            }
            clock.take(task, own);
        }
    }

    private static int[] units(Net net, Clock clock, int task, int start) {
        int[] units = new int[net.duration[task]];
        int count = 0;
        for (int unit = start; count < units.length; unit++) if (clock.works(task, unit)) units[count++] = unit;
        return units;
    }
}
