package lapyard.geometry;

import java.util.List;
import java.util.function.IntFunction;

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
public record OutlineFault(
        Kind kind, List<Integer> corners, List<Integer> sides, double amount, String unit, Point at) {
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

    /** In words, the number first. {@code sideName} gives a side's name, for example {@code wall D}. */
    public String text(IntFunction<String> sideName) {
        String size = Lengths.text(amount);
        String place = "(" + Lengths.text(at.x()) + ", " + Lengths.text(at.y()) + ")";
        return switch (kind) {
            case TOO_FEW_CORNERS -> size + " corners missing: an outline needs 3";
            case ZERO_SIDE ->
                "0 between corners " + corners.get(0) + " and " + corners.get(1) + ": " + sideName.apply(sides.get(0))
                        + " has no length";
            case CROSSING ->
                size + " too far: " + sideName.apply(sides.get(0)) + " (from corner " + corners.get(0) + ") crosses "
                        + sideName.apply(sides.get(1)) + " (from corner " + corners.get(1) + ") at " + place;
            case TOUCHING ->
                (amount > 0 ? size + " along each other: " : "0 between them: ")
                        + sideName.apply(sides.get(0)) + " (from corner " + corners.get(0) + ") touches "
                        + sideName.apply(sides.get(1)) + " (from corner " + corners.get(1) + ") at " + place;
            case NOT_RIGHT_ANGLED -> size + " degrees off a right angle at corner " + corners.get(0);
            case FLAT_CORNER -> size + " degrees of turn at corner " + corners.get(0) + ": the wall goes straight on there";
            case SHARP_CORNER -> size + " degrees too sharp at corner " + corners.get(0) + ": no timber is cut to such a point";
            case TILTED -> size + " degrees off its own axes: " + sideName.apply(sides.get(0));
            case SHORT_SIDE -> size + " too short: " + sideName.apply(sides.get(0)) + ", from corner " + corners.get(0);
            case NARROW_INSIDE ->
                size + " too narrow inside, between " + sideName.apply(sides.get(0)) + " and "
                        + sideName.apply(sides.get(1)) + " at " + place;
        };
    }

    /** A way out, in words. */
    public String way(IntFunction<String> sideName) {
        String size = Lengths.text(amount);
        return switch (kind) {
            case TOO_FEW_CORNERS -> "add " + size + " corners";
            case ZERO_SIDE -> "leave out corner " + corners.get(1);
            case CROSSING -> "check the order of the corners, or move corner " + corners.get(0);
            case TOUCHING -> "move " + sideName.apply(sides.get(1)) + " away, or make two outlines of it";
            case NOT_RIGHT_ANGLED -> "move corner " + corners.get(0) + " until its sides are square";
            case FLAT_CORNER -> "leave out corner " + corners.get(0);
            case SHARP_CORNER -> "open corner " + corners.get(0) + " to 60 degrees or more, or cut its point off with a wall";
            case TILTED -> "draw it along its own axes and turn it as a whole";
            case SHORT_SIDE -> "make " + sideName.apply(sides.get(0)) + " " + size + " longer, or leave the step out";
            case NARROW_INSIDE ->
                "move " + sideName.apply(sides.get(1)) + " out by " + size + ", or use thinner timber";
        };
    }
}
