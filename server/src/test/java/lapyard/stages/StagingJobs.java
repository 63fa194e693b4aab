package lapyard.stages;

import java.util.ArrayList;
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
