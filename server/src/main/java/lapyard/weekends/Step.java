package lapyard.weekends;

import java.util.List;
import lapyard.plan.Rate;

/** Every step of the order of work, with the rates that time it. A {@code *} in the code stands for the step's number. */
public enum Step {
    /** At the bench, for one stage of the garden. */
    SAW("saw-*", "cut the pieces", false, Rate.CUT, Rate.SETTING),
    PATH("path", "lay the path", false, Rate.PATH, Rate.STONE_PATH, Rate.EDGING),
    SET_OUT("set-out", "set out", true, Rate.SET_OUT),
    DIG("dig", "dig", true, Rate.DIG, Rate.BARROW),
    POUR("pour", "pour", true, Rate.SUB_BASE, Rate.POUR),
    GROUND("ground", "make the ground ready", true, Rate.GROUND, Rate.SCRIBE),
    MARK("mark", "mark pieces", true, Rate.MARK),
    NOTCHES("notches", "cut drain notches", true, Rate.NOTCH),
    COURSE_1("course-1", "course 1, level and square", true, Rate.FIRST_COURSE, Rate.BRACKET, Rate.CROSS_TIE, Rate.POST),
    COURSES("courses", "the courses above", true, Rate.COURSE, Rate.BRACKET, Rate.COURSE_TIE, Rate.CROSS_TIE, Rate.POST),
    COAT("coat-*", "coat", false, Rate.COAT),
    STRIPS("strips", "rip and cut bearer strips", false, Rate.STRIP),
    BASE("base", "lay the base", false, Rate.BASE),
    LINER("liner", "line", false, Rate.LINER),
    FILL("fill", "fill by barrow, tread lightly, water", false, Rate.BARROW),
    PLANT("plant", "plant and mulch", false, Rate.PLANT),
    TOP_UP("top-up", "top up", false, Rate.TOP_UP, Rate.BARROW);

    /** The code with a {@code *} for a number: {@code coat-*}. */
    public final String code;
    /** What is done, in words. */
    public final String label;
    /** Whether it comes before the walls of the bed stand; the last course does. */
    public final boolean stacks;
    /** The rates that make up its time. */
    public final List<Rate> rates;

    Step(String code, String label, boolean stacks, Rate... rates) {
        this.code = code;
        this.label = label;
        this.stacks = stacks;
        this.rates = List.of(rates);
    }

    /** Whether it takes the saw bench, at which one task is worked at a time. */
    public boolean atSaw() {
        return this == SAW || this == STRIPS;
    }

    /** @param number of a day at the saw or of a coat; without meaning elsewhere */
    public String code(int number) {
        return code.replace("*", String.valueOf(number));
    }

    /** The code of the task that does this step of a bed; a saw day's and a path's have codes of their own. */
    public String task(String bed, int number) {
        return bed + "." + code(number);
    }

    /** The code of the task of a step that each bed has once. */
    public String task(String bed) {
        return task(bed, 0);
    }

    /** Whether it lays timbers of the walls. */
    public boolean lays() {
        return this == COURSE_1 || this == COURSES;
    }
}
