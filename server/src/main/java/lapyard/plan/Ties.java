package lapyard.plan;

import java.util.List;
import java.util.OptionalDouble;
import lapyard.working.Whole;

/**
 * What holds a stack together besides its corner screws.
 *
 * @param fixingLengthMm length of the screws of brackets and straps
 * @param supports       ties and posts that the garden names itself, whatever else is put in
 */
public record Ties(Corners corners, Courses courses, double fixingLengthMm, Across across, List<Support> supports) {
    /**
     * @param brackets       a bracket in each corner of each course, inside
     * @param bracketFixings screws a bracket
     */
    public record Corners(boolean brackets, int bracketFixings) {}

    /**
     * @param courseTies    whether each course is fixed to the one below it
     * @param courseEveryMm greatest distance between course ties along a piece
     * @param courseTie     what a course tie is
     * @param courseFixings screws a strap
     */
    public record Courses(boolean courseTies, double courseEveryMm, CourseTie courseTie, int courseFixings) {}

    /**
     * Ties from wall to wall across the bed: behind the joints of walls first, then in clear runs that are too long.
     *
     * @param crossEveryMm greatest clear run of a wall where ties are put in
     * @param crossOverMm  a clear run up to this needs no tie
     * @param crossFromMm  walls lower than this need none
     */
    public record Across(boolean crossTies, double crossEveryMm, double crossOverMm, double crossFromMm) {}

    /** Timber that must be left behind the tip of a screw driven square into a face. */
    public static final double BEHIND_MM = 10;

    /** The shortest fixing that a document may name. */
    public static final double LEAST_FIXING_MM = 15;

    /** Courses up to this high are screwed down through their whole height: no longer screw is sold everywhere. */
    public static final double SCREWED_UP_TO_MM = 200;

    /** A long screw goes this far into the course below: seven shanks of 8, where NDS and EN 1995-1-1 ask for six. */
    public static final double INTO_BELOW_MM = 60;

    /** Common practice, no source: {@code docs/method/fixings.md}. */
    public static final Ties USUAL = new Ties(new Corners(false, 6), new Courses(true, 600, CourseTie.BY_HEIGHT, 4), 50, new Across(true, 1800, 2400, 400), List.of());

    /** Corner screws alone. */
    public static final Ties NONE = new Ties(USUAL.corners, new Courses(false, 600, CourseTie.BY_HEIGHT, 4), 50, new Across(false, 1800, 2400, 400), List.of());

    public Ties {
        supports = List.copyOf(supports);
    }

    /** How a course is fixed to the one below it. */
    public enum CourseTie {
        /** Long screws where the course is low enough for them, else straps. */
        BY_HEIGHT,
        /** A long screw from the top of the course into the one below. */
        SCREWS,
        /** A flat strap inside over the joint between the two. */
        STRAPS
    }

    /**
     * A hold that the garden names.
     *
     * @param wall letter of the wall
     * @param atMm along it from its outer start corner; empty: behind each joint of the wall
     * @param post true for a post in the ground inside the wall, false for a tie to the opposite wall
     */
    public record Support(String wall, OptionalDouble atMm, boolean post) {}

    public Ties withFixings(double lengthMm) {
        return new Ties(corners, courses, lengthMm, across, supports);
    }

    public Ties withSupports(List<Support> others) {
        return new Ties(corners, courses, fixingLengthMm, across, others);
    }

    /**
     * The usual length, in thin timber the longest in whole 5 mm that leaves {@link #BEHIND_MM}, but no shorter than may be given (common
     * practice, no source): it comes out of timber thinner still, and is refused there.
     */
    public static double usualFixingMm(double thicknessMm) {
        return Math.max(LEAST_FIXING_MM, Math.min(USUAL.fixingLengthMm, 5 * Whole.down((thicknessMm - BEHIND_MM) / 5)));
    }

    /** Whether the courses of timber of this height are strapped and not screwed. */
    public boolean strapped(double courseHeightMm) {
        return courses.courseTie == CourseTie.STRAPS
                || courses.courseTie == CourseTie.BY_HEIGHT && courseHeightMm > SCREWED_UP_TO_MM + 1e-6;
    }

    /** Length of a long screw through a course of this height, as they are sold: whole 20 mm (common practice, no source). */
    public static double courseScrewMm(double courseHeightMm) {
        return 20 * Whole.up((courseHeightMm + INTO_BELOW_MM) / 20);
    }
}
