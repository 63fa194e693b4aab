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

    public enum Kind {
        /** Amount: corners missing. */
        TOO_FEW_CORNERS,
        /** Two corners on one spot. Amount 0. */
        ZERO_SIDE,
        /** Two sides cross. Amount: the least length by which one of them would have to end sooner. */
        CROSSING,
        /** Two sides touch, or run along each other for the amount. */
        TOUCHING,
        /** The corner furthest from a right angle of those that are nearly square. Amount: degrees off it. */
        NOT_RIGHT_ANGLED,
        /** A corner in a wall that goes all but straight on. Amount: its degrees of turn. */
        FLAT_CORNER,
        /** A corner too sharp for any joint. Amount: degrees that it lacks. */
        SHARP_CORNER,
        /** All corners right-angled but the sides not along the axes. Amount: degrees of turn. */
        TILTED,
        /** Amount: what the side lacks of the least length. */
        SHORT_SIDE,
        /** Amount: what the inside lacks of the least width. */
        NARROW_INSIDE
    }
}
