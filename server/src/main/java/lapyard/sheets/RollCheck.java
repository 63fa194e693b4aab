package lapyard.sheets;

import java.util.HashSet;
import java.util.Locale;
import java.util.Set;
import lapyard.working.BrokenRule;

/** What can never be a roll job, and which pieces no roll can hold. */
final class RollCheck {
    /** One kilometre; keeps every area far inside 64 bits. */
    private static final double LARGEST_MM = 1e6;

    private static final double LEAST_MM = 0.001;
    private static final int MOST_PIECES = 20_000;
    private static final int MOST_ROLLS = 100;

    private RollCheck() {}

    /** @throws BrokenRule with the roll or piece, the value and its limit */
    static void check(RollProblem problem) {
        BrokenRule.atMost("problem", "rolls", problem.rolls().size(), MOST_ROLLS, "widths");
        Set<String> ids = new HashSet<>();
        for (RollProblem.Stock roll : problem.rolls()) {
            String where = "roll " + roll.id();
            if (!ids.add(roll.id())) throw BrokenRule.twice("rolls", "Roll", roll.id());
            length(where, "width", roll.widthMm());
            length(where, "step", roll.stepMm());
            if (roll.maxLengthMm().isPresent()) {
                double longest = roll.maxLengthMm().getAsDouble();
                length(where, "maxLength", longest);
                if (longest < roll.stepMm())
                    throw BrokenRule.of(BrokenRule.Rule.ROLL_STEP_LONG, where).with("longest", longest, "mm").with("step", roll.stepMm(), "mm");
            }
            BrokenRule.money(where, "price", roll.price());
            BrokenRule.between(where, "available", roll.available().orElse(0), 0, Integer.MAX_VALUE, "");
        }
        long pieces = 0;
        for (RollProblem.Piece piece : problem.pieces()) {
            String where = "piece " + piece.id();
            length(where, "width", piece.widthMm());
            length(where, "height", piece.heightMm());
            BrokenRule.between(where, "count", piece.count(), 1, Integer.MAX_VALUE, "");
            pieces += piece.count();
        }
        BrokenRule.atMost("problem", "pieces", pieces, MOST_PIECES, "pieces");
    }

    private static void length(String where, String name, double mm) {
        BrokenRule.between(where, name, mm, LEAST_MM, LARGEST_MM, "mm");
        if (Math.abs(mm * 1000 - Math.rint(mm * 1000)) > 1e-4 * 1000)
            throw BrokenRule.of(BrokenRule.Rule.FIELD_FINE, where).with("name", name).with("value", mm + " mm").with("step", LEAST_MM + " mm");
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
