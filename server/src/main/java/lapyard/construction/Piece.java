package lapyard.construction;

import lapyard.geometry.Rectangle;

/**
 * One timber of one course.
 *
 * @param mark     as written on it: bed-course-wall, with a or b for a joined part: {@code M-2C}, {@code M-1Aa}
 * @param course   1 is the lowest
 * @param part     empty, or {@code a}, {@code b} ... from the wall's start
 * @param lengthMm to 0.1 mm
 * @param fromMm   where it begins, measured along the wall from the wall's outer start corner; may be below 0 at an
 *     inside corner
 * @param lies     the timber seen from above in the bed's own frame
 * @param seen     whether its wall is seen
 */
public record Piece(
        String mark,
        int course,
        String wall,
        String part,
        double lengthMm,
        RunsPast runsPast,
        double fromMm,
        Rectangle lies,
        boolean seen) {

    /** Which ends of the piece run past the corner. */
    public enum RunsPast {
        START,
        END,
        BOTH,
        NONE
    }
}
