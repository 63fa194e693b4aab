package lapyard.geometry;

import java.util.List;

/**
 * One thing wrong with an outline, with its place and its amount.
 *
 * @param corners numbers of the corners concerned, counted from 1
 * @param sides   sides concerned, counted from 0 as in {@link Outline#sideMm}: side i runs from corner i + 1 to the
 *     next
 * @param amount  in {@code unit}: what is missing or too much; see {@link Kind}
 * @param unit    {@code mm}, {@code degrees} or {@code corners}
 * @param at      a place on the outline to point at
 */
public record OutlineFault(Kind kind, List<Integer> corners, List<Integer> sides, double amount, String unit, Point at) {
    public OutlineFault {
        corners = List.copyOf(corners);
        sides = List.copyOf(sides);
    }

    /** Findings have kinds of the same names. */
    public enum Kind {
        /** Amount: corners missing. */
        CORNERS_FEW,
        /** Two corners on one spot. Amount 0. */
        CORNERS_SAME,
        /** Two sides cross. Amount: the least length by which one of them would have to end sooner. */
        SIDES_CROSS,
        /** Two sides touch, or run along each other for the amount. */
        SIDES_TOUCH,
        /** The corner furthest from a right angle of those that are nearly square. Amount: degrees off it. */
        CORNER_NOT_SQUARE,
        /** A corner in a wall that goes all but straight on. Amount: its degrees of turn. */
        CORNER_FLAT,
        /** A corner too sharp for any joint. Amount: degrees that it lacks. */
        CORNER_SHARP,
        /** All corners right-angled but the sides not along the axes. Amount: degrees of turn. */
        OUTLINE_TILTED,
        /** Amount: what the side lacks of the least length. */
        SIDE_SHORT,
        /** Amount: what the inside lacks of the least width. */
        INSIDE_NARROW
    }
}
