package lapyard.weekends;

import java.util.List;

/**
 * One task of the garden.
 *
 * @param id      unique and the same for every plan of the garden, {@code M.course-1}
 * @param place   where, {@code bed M}; {@code saw} for the bench
 * @param bed     the bed's code, empty for saw and paths
 * @param step    what of the order of work, {@code course-1}
 * @param label   in words
 * @param minutes that it takes with {@code people} at it
 * @param lifts   whether all of them must be able to lift
 * @param dry     whether it needs a dry day
 * @param after   what must be done before
 * @param marks   the timbers that are handled
 * @param loads   what is carried, in words
 * @param cautions what can hurt, or is hidden afterwards
 */
public record Work(
        String id,
        String place,
        String bed,
        String step,
        String label,
        double minutes,
        int people,
        boolean lifts,
        boolean dry,
        List<After> after,
        List<String> marks,
        List<String> loads,
        List<String> cautions) {
    public Work {
        after = List.copyOf(after);
        marks = List.copyOf(marks);
        loads = List.copyOf(loads);
        cautions = List.copyOf(cautions);
    }

    /**
     * @param days whole days between the earlier task's last day and this one's first; 0 for as soon as it is done
     * @param why  what the wait is for, or what this task would hide
     */
    public record After(String task, int days, String why) {}

    /** People times time. */
    public double personHours() {
        return people * minutes / 60;
    }
}
