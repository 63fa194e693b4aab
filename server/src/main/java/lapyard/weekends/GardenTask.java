package lapyard.weekends;

import java.util.List;
import java.util.stream.Stream;

/**
 * One task of the garden.
 *
 * @param id      unique, and the same in every plan of the garden: {@code M.course-1}
 * @param place   where the work is done: {@code bed M}; {@code saw} for the bench
 * @param bed     code of the bed; empty for the saw and for paths
 * @param step    its step in the order of work
 * @param number  the stage that a day at the saw cuts for, or the number of the coat; 0 elsewhere
 * @param label   the task in words
 * @param shares  parts of the task for one or more people, in the order of work
 * @param dry     whether it needs a dry day
 * @param after   the tasks that come before it, and how long it waits for them
 * @param marks   marks of the timbers that are handled
 * @param loads   amounts that the task handles, in words
 * @param cautions dangers of the task, and work that it hides
 */
public record GardenTask(
        String id,
        String place,
        String bed,
        Step step,
        int number,
        String label,
        List<Share> shares,
        boolean dry,
        List<After> after,
        List<String> marks,
        List<String> loads,
        List<String> cautions) {
    public GardenTask {
        shares = List.copyOf(shares);
        after = List.copyOf(after);
        marks = List.copyOf(marks);
        loads = List.copyOf(loads);
        cautions = List.copyOf(cautions);
    }

    /**
     * A stretch of a task with as many people from its beginning to its end.
     *
     * @param people  at it
     * @param lifts   whether all of them must be able to lift
     * @param minutes that it takes them, 0 or more
     */
    public record Share(int people, boolean lifts, double minutes) {
        /** One person's work. */
        public static Share alone(double minutes) {
            return new Share(1, false, minutes);
        }
    }

    /**
     * @param days whole days between the earlier task's last day and this one's first; 0 for as soon as it is done
     * @param why  what the wait is for, or what this task would hide
     */
    public record After(String task, int days, String why) {}

    /** As a person says it. */
    public String words() {
        return place + ": " + label;
    }

    /** The same of a task that a plan no longer has: what its id tells. */
    static String words(String id) {
        int dot = id.lastIndexOf('.');
        String code = id.substring(dot + 1);
        return Stream.of(Step.values()).filter(step -> dot > 0 && code.matches(step.code.replace("*", "[0-9]+"))).findFirst()
                .map(step -> "bed " + id.substring(0, dot) + ": " + step.label).orElse(id);
    }

    /** From its beginning to its end, all shares together. */
    public double minutes() {
        return shares.stream().mapToDouble(Share::minutes).sum();
    }

    /** The most who are at it together. */
    public int people() {
        return shares.stream().mapToInt(Share::people).max().orElse(1);
    }

    /** Whether some of it is lifted by people who can. */
    public boolean lifts() {
        return shares.stream().anyMatch(Share::lifts);
    }

    /** People times time, share by share. */
    public double personHours() {
        return shares.stream().mapToDouble(share -> share.people() * share.minutes()).sum() / 60;
    }
}
