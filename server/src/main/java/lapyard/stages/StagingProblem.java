package lapyard.stages;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Tasks that share resources, wait for each other and pause while nobody works. All times are whole units of one clock.
 *
 * @param resources how much there is of each
 * @param calendar  empty where every unit is worked and every resource always there in full
 * @param period    units of a week, say: where groups are kept together, one end is as good as another in the same period
 */
public record StagingProblem(
        String name, List<Integer> resources, List<Task> tasks, Optional<Calendar> calendar, int period) {
    public StagingProblem {
        if (period < 1) {
            throw new IllegalArgumentException("a period has 1 unit or more, was " + period);
        }
        resources = List.copyOf(resources);
        tasks = List.copyOf(tasks);
    }

    /**
     * One piece of work.
     *
     * @param duration  worked units; a task pauses over units in which it cannot be worked on
     * @param uses      of each resource while it is worked on; paused tasks hold nothing
     * @param unbroken  whether it may not pause
     * @param group     tasks of one group are best done close together; empty for none
     * @param notBefore clock unit before which it may not begin
     * @param due       clock unit by which it should have ended, a wish that goes before all others; empty for none
     */
    public record Task(
            String id,
            int duration,
            List<Integer> uses,
            List<Wait> after,
            boolean unbroken,
            String group,
            int notBefore,
            OptionalInt due) {
        public Task {
            uses = List.copyOf(uses);
            after = List.copyOf(after);
        }
    }

    /** Begin no earlier than {@code lag} clock units after {@code task} has ended, worked or not. */
    public record Wait(String task, int lag) {}

    /**
     * When there is work at all, and how much of each resource is there; both repeat for ever.
     *
     * @param cycle    whether each unit is worked
     * @param there    for each resource its amount in each unit of the cycle; an empty list where it is always there in
     *     full. A task can be worked on only in units in which all that it uses is there.
     */
    public record Calendar(List<Boolean> cycle, List<List<Integer>> there) {
        public Calendar {
            cycle = List.copyOf(cycle);
            there = there.stream().map(List::copyOf).toList();
        }
    }
}
