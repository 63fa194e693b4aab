package lapyard.weekends;

import java.util.List;
import lapyard.plan.Rate;

/** Every step of the order of work, with the rates that time it. A {@code *} in the code stands for the step's number. */
public enum Step {
    /** At the bench, for one stage of the garden. */
    SAW("saw-*", false, Rate.CUT, Rate.SETTING),
    PATH("path", false, Rate.PATH, Rate.STONE_PATH, Rate.EDGING),
    SET_OUT("set-out", true, Rate.SET_OUT),
    DIG("dig", true, Rate.DIG, Rate.BARROW),
    POUR("pour", true, Rate.SUB_BASE, Rate.POUR),
    GROUND("ground", true, Rate.GROUND, Rate.SCRIBE, Rate.SUB_BASE),
    MARK("mark", true, Rate.MARK),
    NOTCHES("notches", true, Rate.NOTCH),
    COURSE_1("course-1", true, Rate.FIRST_COURSE, Rate.BRACKET, Rate.CROSS_TIE, Rate.POST),
    COURSES("courses", true, Rate.COURSE, Rate.BRACKET, Rate.COURSE_TIE, Rate.CROSS_TIE, Rate.POST),
    COAT("coat-*", false, Rate.COAT),
    STRIPS("strips", false, Rate.STRIP),
    BASE("base", false, Rate.BASE),
    LINER("liner", false, Rate.LINER),
    FILL("fill", false, Rate.BARROW),
    PLANT("plant", false, Rate.PLANT),
    TOP_UP("top-up", false, Rate.TOP_UP, Rate.BARROW);

    private final String code;
    private final boolean stacks;
    private final List<Rate> rates;

    Step(String code, boolean stacks, Rate... rates) {
        this.code = code;
        this.stacks = stacks;
        this.rates = List.of(rates);
    }

    /** @param number of a day at the saw or of a coat; of no meaning elsewhere */
    public String code(int number) {
        return code.replace("*", String.valueOf(number));
    }

    /** The code of the task that does this step of a bed; a saw day's and a path's have codes of their own. */
    public String task(String bed, int number) {
        return bed + "." + code(number);
    }

    /** Of a step that a bed has once. */
    public String task(String bed) {
        return task(bed, 0);
    }

    /** Whether it is done before the bed's walls stand, the last course among it. */
    public boolean stacks() {
        return stacks;
    }

    /** Whether it lays timbers of the walls. */
    public boolean lays() {
        return this == COURSE_1 || this == COURSES;
    }

    /** What times it. */
    public List<Rate> rates() {
        return rates;
    }
}
