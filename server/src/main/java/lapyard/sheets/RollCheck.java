package lapyard.sheets;

import java.util.HashSet;
import java.util.Locale;
import java.util.Set;

/** What can never be a roll job, and which pieces no roll can hold. */
final class RollCheck {
    /** One kilometre; keeps every area far inside 64 bits. */
    private static final double LARGEST_MM = 1e6;

    private static final int MOST_PIECES = 20_000;
    private static final int MOST_ROLLS = 100;

    private RollCheck() {}

    /** @throws IllegalArgumentException naming the roll or piece, the value and its limit */
    static void check(RollProblem problem) {
        if (problem.rolls().size() > MOST_ROLLS)
            throw new IllegalArgumentException(
                    problem.rolls().size() + " rolls; at most " + MOST_ROLLS + " widths can be compared");
        Set<String> ids = new HashSet<>();
        for (RollProblem.Stock roll : problem.rolls()) {
            String name = "roll " + roll.id();
            if (!ids.add(roll.id()))
                throw new IllegalArgumentException(name + " is listed twice; give each roll its own id");
            length(name + ": width", roll.widthMm());
            length(name + ": step", roll.stepMm());
            if (roll.maxLengthMm().isPresent()) {
                double longest = roll.maxLengthMm().getAsDouble();
                length(name + ": maxLength", longest);
                if (longest < roll.stepMm())
                    throw new IllegalArgumentException(name + ": maxLength " + mm(longest)
                            + " is shorter than one sold step of " + mm(roll.stepMm()));
            }
            if (roll.price().signum() < 0)
                throw new IllegalArgumentException(name + ": price must be 0 or more, was " + roll.price());
            if (roll.price().precision() - roll.price().scale() > 9
                    || roll.price().scale() > 6)
                throw new IllegalArgumentException(
                        name + ": price must be under 1000000000 with at most 6 decimals, was " + roll.price());
            if (roll.available().isPresent() && roll.available().getAsInt() < 0)
                throw new IllegalArgumentException(name + ": available must be 0 or more, was "
                        + roll.available().getAsInt());
        }
        long pieces = 0;
        for (RollProblem.Piece piece : problem.pieces()) {
            String name = "piece " + piece.id();
            length(name + ": width", piece.widthMm());
            length(name + ": height", piece.heightMm());
            if (piece.count() < 1)
                throw new IllegalArgumentException(name + ": count must be 1 or more, was " + piece.count());
            pieces += piece.count();
        }
        if (pieces > MOST_PIECES)
            throw new IllegalArgumentException(
                    pieces + " pieces; at most " + MOST_PIECES + " can be laid at once, split the job");
    }

    private static void length(String what, double mm) {
        if (!(mm > 0) || mm > LARGEST_MM)
            throw new IllegalArgumentException(what + " must be above 0 and at most 1000000 mm, was " + mm(mm));
        if (Math.abs(mm * 1000 - Math.rint(mm * 1000)) > 1e-4 * 1000)
            throw new IllegalArgumentException(what + " must be whole thousandths of a millimetre, was " + mm);
        if (Math.rint(mm * 1000) < 1)
            throw new IllegalArgumentException(what + " must be at least 0.001 mm, was " + mm);
    }

    static long micro(double mm) {
        return Math.round(mm * 1000);
    }

    /** @return null where some roll holds the piece; else what is short by how much, and a way out */
    static String whyNoRollHolds(RollProblem.Piece piece, RollProblem problem) {
        if (problem.rolls().stream().allMatch(r -> r.available().orElse(1) == 0))
            return (problem.rolls().isEmpty() ? "no roll is listed" : "no roll is available") + ": add one at least "
                    + mm(narrowSide(piece, problem.turn())) + " wide";
        long widest = 0;
        long shortBy = Long.MAX_VALUE;
        for (RollProblem.Stock roll : problem.rolls()) {
            if (roll.available().orElse(1) == 0) continue;
            long width = micro(roll.widthMm());
            widest = Math.max(widest, width);
            long longest = roll.maxLengthMm().isPresent()
                    ? micro(roll.maxLengthMm().getAsDouble()) / micro(roll.stepMm()) * micro(roll.stepMm())
                    : Long.MAX_VALUE;
            for (int way = 0; way < (problem.turn() ? 2 : 1); way++) {
                long across = micro(way == 0 ? piece.widthMm() : piece.heightMm());
                long along = micro(way == 0 ? piece.heightMm() : piece.widthMm());
                if (across > width) continue;
                if (along <= longest) return null;
                shortBy = Math.min(shortBy, along - longest);
            }
        }
        String size = mm(piece.widthMm()) + " x " + mm(piece.heightMm());
        if (shortBy < Long.MAX_VALUE)
            return size + " is longer than every run sold, short by " + mm(shortBy / 1000.0)
                    + ": add a longer roll, or split the piece with a lap";
        double needed = narrowSide(piece, problem.turn());
        return size + " is wider than every roll" + (problem.turn() ? " both ways" : "") + ": the widest is "
                + mm(widest / 1000.0) + ", short by " + mm(needed - widest / 1000.0) + "; add a roll at least "
                + mm(needed)
                + " wide, " + (problem.turn() ? "" : "allow turning, ") + "or split the piece with a lap";
    }

    static String exhausted(RollJob job, int left) {
        StringBuilder text = new StringBuilder("the rolls on hand are used up, " + left + " left over (");
        for (RollJob.Roll roll : job.rolls)
            if (roll.runs() != Integer.MAX_VALUE)
                text.append(text.charAt(text.length() - 1) == '(' ? "" : ", ")
                        .append(roll.id())
                        .append(": ")
                        .append(roll.runs());
        return text.append("): raise what is available, or add a roll that is sold by the metre")
                .toString();
    }

    private static double narrowSide(RollProblem.Piece piece, boolean turn) {
        return turn ? Math.min(piece.widthMm(), piece.heightMm()) : piece.widthMm();
    }

    /** Millimetres as one writes them: no decimals where there are none. */
    static String mm(double mm) {
        if (!Double.isFinite(mm)) return Double.toString(mm);
        String text = String.format(Locale.ROOT, "%.3f", mm);
        return text.replaceAll("0+$", "").replaceAll("\\.$", "");
    }
}
