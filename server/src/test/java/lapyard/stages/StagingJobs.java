package lapyard.stages;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;

/** Problems from a seed. */
public final class StagingJobs {
    private StagingJobs() {}

    /**
     * A net of layered waits with scarce resources: each task uses most of the resources, each resource is a fifth of the
     * way from the least that is possible to the most that can be used.
     *
     * @see "Kolisch, Sprecher and Drexl, Characterization and generation of a general class of resource-constrained project
     *     scheduling problems, Management Science 41:1693-1703 (1995), in outline"
     */
    public static StagingProblem scarce(int tasks, long seed) {
        Random random = new Random(seed);
        int resources = 4;
        int[][] uses = new int[tasks][resources];
        List<StagingProblem.Task> list = new ArrayList<>();
        int[] most = new int[resources];
        int[] peak = new int[resources];
        for (int i = 0; i < tasks; i++) {
            for (int r = 0; r < resources; r++) {
                uses[i][r] = random.nextInt(4) > 0 ? 1 + random.nextInt(10) : 0;
                most[r] = Math.max(most[r], uses[i][r]);
                peak[r] += uses[i][r];
            }
        }
        List<Integer> capacity = new ArrayList<>();
        for (int r = 0; r < resources; r++) capacity.add((int) Math.round(most[r] + 0.2 * (peak[r] / 4.0 - most[r])));
        for (int i = 0; i < tasks; i++) {
            List<StagingProblem.Wait> after = new ArrayList<>();
            int waits = i < 3 ? 0 : 1 + random.nextInt(2) + random.nextInt(2);
            for (int w = 0; w < waits; w++) {
                String task = "t" + Math.max(0, i - 1 - random.nextInt(Math.min(i, 12)));
                if (after.stream().noneMatch(wait -> wait.task().equals(task))) after.add(new StagingProblem.Wait(task, 0));
            }
            List<Integer> own = new ArrayList<>();
            for (int r = 0; r < resources; r++) own.add(uses[i][r]);
            list.add(new StagingProblem.Task("t" + i, 1 + random.nextInt(10), own, after, false, "", 0, OptionalInt.empty()));
        }
        return new StagingProblem("scarce-" + tasks + "-" + seed, capacity, list, Optional.empty(), 1);
    }

    /**
     * A net as the PSPLIB sets are made, from memory: three tasks begin and three end, none has more than three before or after it, and
     * waits are added until there are {@code complexity} for each task, none of which another way already says.
     *
     * @param factor   share of pairs of task and resource in which the task uses it
     * @param strength how far each resource is from the least that is possible (0) to the most that is used at once when all begin early (1)
     * @see "Kolisch, Sprecher and Drexl, Characterization and generation of a general class of resource-constrained project
     *     scheduling problems, Management Science 41:1693-1703 (1995), in outline"
     */
    public static StagingProblem standard(int tasks, double complexity, double factor, double strength, long seed) {
        Random random = new Random(seed);
        boolean[][] reaches = new boolean[tasks][tasks];
        List<List<Integer>> before = new ArrayList<>();
        int[] followers = new int[tasks];
        for (int i = 0; i < tasks; i++) before.add(new ArrayList<>());
        for (int i = 3; i < tasks; i++) wait(draw(random, Math.min(i, tasks - 3), followers), i, before, followers, reaches);
        for (int i = tasks - 4; i >= 0; i--)
            for (int tries = 0; followers[i] == 0 && tries < 1000; tries++) wait(i, Math.max(3, i + 1 + random.nextInt(tasks - i - 1)), before, followers, reaches);
        int waits = before.stream().mapToInt(List::size).sum();
        // those to and from the two ends of the net count too
        for (int tries = 0; waits < complexity * (tasks + 2) - 6 && tries < 100_000; tries++)
            if (wait(random.nextInt(tasks - 3), 3 + random.nextInt(tasks - 3), before, followers, reaches)) waits++;
        int[] duration = random.ints(tasks, 1, 11).toArray();
        int[][] uses = new int[tasks][4];
        for (int n = (int) Math.round(factor * 4 * tasks), i = 0; n > 0; i++) {
            int task = i < tasks ? i : random.nextInt(tasks);
            int r = random.nextInt(4);
            if (uses[task][r] > 0) continue;
            uses[task][r] = 1 + random.nextInt(10);
            n--;
        }
        List<Integer> capacity = capacity(before, duration, uses, strength);
        List<StagingProblem.Task> list = new ArrayList<>();
        for (int i = 0; i < tasks; i++) {
            list.add(new StagingProblem.Task("t" + i, duration[i], Arrays.stream(uses[i]).boxed().toList(),
                    before.get(i).stream().map(earlier -> new StagingProblem.Wait("t" + earlier, 0)).toList(), false, "", 0, OptionalInt.empty()));
        }
        return new StagingProblem("standard-" + tasks + "-" + seed, capacity, list, Optional.empty(), 1);
    }

    private static int draw(Random random, int below, int[] followers) {
        while (true) {
            int task = random.nextInt(below);
            if (followers[task] < 3) return task;
        }
    }

    private static boolean wait(int from, int to, List<List<Integer>> before, int[] followers, boolean[][] reaches) {
        if (from >= to || followers[from] == 3 || before.get(to).size() == 3 || reaches[from][to]) return false;
        int n = followers.length;
        // neither said by others nor such that it says others again
        for (int i = 0; i <= from; i++)
            for (int j = to; j < n; j++)
                if ((i == from || reaches[i][from]) && (j == to || reaches[to][j]) && before.get(j).contains(i)) return false;
        before.get(to).add(from);
        followers[from]++;
        for (int i = 0; i <= from; i++)
            for (int j = to; j < n; j++) if ((i == from || reaches[i][from]) && (j == to || reaches[to][j])) reaches[i][j] = true;
        return true;
    }

    private static List<Integer> capacity(List<List<Integer>> before, int[] duration, int[][] uses, double strength) {
        int n = duration.length;
        int[] end = new int[n];
        int[][] peak = new int[10 * n][4];
        List<Integer> capacity = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            int start = before.get(i).stream().mapToInt(earlier -> end[earlier]).max().orElse(0);
            end[i] = start + duration[i];
            for (int t = start; t < end[i]; t++) for (int r = 0; r < 4; r++) peak[t][r] += uses[i][r];
        }
        for (int r = 0; r < 4; r++) {
            int resource = r;
            int least = Arrays.stream(uses).mapToInt(use -> use[resource]).max().orElse(0);
            int most = Arrays.stream(peak).mapToInt(use -> use[resource]).max().orElse(0);
            capacity.add(Math.max(1, least + (int) Math.round(strength * (most - least))));
        }
        return capacity;
    }

    /** A small problem with a calendar, lags, unbroken tasks, and people who are not always there. */
    public static StagingProblem small(int tasks, long seed, boolean people) {
        Random random = new Random(seed);
        int length = 4 + random.nextInt(6);
        List<Boolean> cycle = new ArrayList<>();
        List<Integer> there = new ArrayList<>();
        for (int t = 0; t < length; t++) {
            cycle.add(t < 3 || random.nextBoolean());
            there.add(t < 2 ? 2 : random.nextInt(3));
        }
        List<StagingProblem.Task> list = new ArrayList<>();
        for (int i = 0; i < tasks; i++) {
            List<StagingProblem.Wait> after = new ArrayList<>();
            for (int earlier = 0; earlier < i; earlier++) {
                if (random.nextInt(4) == 0) after.add(new StagingProblem.Wait("t" + earlier, random.nextInt(3) * random.nextInt(4)));
            }
            boolean unbroken = random.nextInt(4) == 0;
            int duration = random.nextInt(6) == 0 ? 0 : 1 + random.nextInt(unbroken ? 2 : 4);
            list.add(new StagingProblem.Task("t" + i, duration, List.of(1 + random.nextInt(2), random.nextInt(2)), after, unbroken, "", 0, OptionalInt.empty()));
        }
        return new StagingProblem("small-" + tasks + "-" + seed, List.of(2, 1), list, Optional.of(
                new StagingProblem.Calendar(cycle, people ? List.of(there, List.of()) : List.of())), 1);
    }

    /**
     * Beds of eight tasks each with a curing and a drying wait, built by so many people on weekends of 2 x 8 hours; one
     * unit is an hour, the beds are groups.
     */
    public static StagingProblem beds(int beds, int people, long seed) {
        Random random = new Random(seed);
        List<Boolean> cycle = new ArrayList<>();
        for (int hour = 0; hour < 168; hour++) cycle.add(hour >= 9 && hour < 17 || hour >= 33 && hour < 41);
        List<StagingProblem.Task> list = new ArrayList<>();
        for (int bed = 0; bed < beds; bed++) {
            for (int step = 0; step < 8; step++) {
                List<StagingProblem.Wait> after = step == 0 ? List.of()
                        : List.of(new StagingProblem.Wait(bed + "." + (step - 1), step == 2 ? 48 : step == 5 ? 24 : 0));
                list.add(new StagingProblem.Task(bed + "." + step, 1 + random.nextInt(4),
                        List.of(people > 1 && random.nextInt(4) == 0 ? 2 : 1), after, false, "bed " + bed, 0, java.util.OptionalInt.empty()));
            }
        }
        return new StagingProblem("beds-" + beds + "-" + people, List.of(people), list,
                Optional.of(new StagingProblem.Calendar(cycle, List.of())), 168);
    }
}
