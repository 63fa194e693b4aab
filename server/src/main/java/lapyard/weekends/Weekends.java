package lapyard.weekends;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.plan.Finding;

/**
 * The garden's work laid over its days.
 *
 * @param days      each day that is worked or wet, in order
 * @param tasks     in the order of work, with where each lies
 * @param waits     that hold a task back, from the first day that can still be planned
 * @param loadHours person-hours of all tasks still to do
 * @param lastDay   day on which the beds are planted, topping up left aside
 * @param endDay    day of the very last task, topping up among them
 * @param leastDay  bounds {@code endDay}, proved: no order of work ends before this day
 * @param done      ids of tasks that the tally says are done
 */
public record Weekends(
        List<Day> days,
        List<Task> tasks,
        List<Wait> waits,
        double loadHours,
        int lastDay,
        int endDay,
        int leastDay,
        List<String> done,
        List<Finding> findings) {
    public Weekends {
        days = List.copyOf(days);
        tasks = List.copyOf(tasks);
        waits = List.copyOf(waits);
        done = List.copyOf(done);
        findings = List.copyOf(findings);
    }

    /**
     * @param number     from 0, the first day of work
     * @param weekend    from 1
     * @param date       empty where the garden names no first day
     * @param hoursThere person-hours of all who come; none where the day is over
     * @param hoursUsed  of them
     * @param parts      by the time at which they begin
     */
    public record Day(
            int number,
            int weekend,
            Optional<LocalDate> date,
            DayOfWeek dayOfWeek,
            boolean wet,
            List<String> people,
            double hoursThere,
            double hoursUsed,
            List<Part> parts) {
        public Day {
            people = List.copyOf(people);
            parts = List.copyOf(parts);
        }

        public double hoursLeft() {
            return Math.max(0, hoursThere - hoursUsed);
        }

        /** Whether the rest is planned from a later day; else somebody is there. */
        public boolean isOver() {
            return hoursThere == 0;
        }
    }

    /**
     * What is done of a task on one day without a break: minutes from the day's beginning; part {@code number} of {@code of}.
     *
     * @param people          the most who are at it
     * @param togetherMinutes of it in which more than one is needed
     */
    public record Part(String task, int fromMinute, int toMinute, int people, int togetherMinutes, int number, int of) {
        /** {@code 2}, or {@code 2 for 45 min} where one alone does the rest. */
        public String hands() {
            return people + (people > 1 && togetherMinutes < toMinute - fromMinute ? " for " + togetherMinutes + " min" : "");
        }
    }

    /** The days, from 0, on which it begins and ends; of a task that is done, both are the day on which it was. */
    public record Task(GardenTask work, int firstDay, int lastDay, boolean done) {}

    /** From the day on which {@code after} is done to the first on which {@code task} may begin. */
    public record Wait(String task, String after, String why, int fromDay, int toDay) {}

    /** What is still waited for when a day is over. */
    public List<Wait> waits(Day after) {
        return waits.stream().filter(wait -> wait.fromDay() <= after.number() && after.number() < wait.toDay()).toList();
    }

    /** A task as a person says it, also one that the plan no longer has. */
    public String words(String id) {
        return tasks.stream().map(Task::work).filter(work -> work.id().equals(id)).findFirst().map(GardenTask::words).orElseGet(() -> GardenTask.words(id));
    }

    /** First day of each task by its id. */
    public Map<String, Task> byId() {
        Map<String, Task> tasks = new java.util.LinkedHashMap<>();
        this.tasks.forEach(task -> tasks.put(task.work().id(), task));
        return tasks;
    }
}
