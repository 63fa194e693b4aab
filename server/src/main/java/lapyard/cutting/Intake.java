package lapyard.cutting;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import lapyard.working.BrokenRule;

/** Refuses what can never make sense, names what no board can hold, and puts the rest in whole micrometres. */
final class Intake {
    /** Two kilometres: in micrometres still well inside whole-number range. */
    static final double LONGEST_MM = 2_000_000;

    private static final double LEAST_MM = 0.001;

    static final long MOST_PIECES = 1_000_000;

    private final CuttingProblem problem;
    private final long kerf;
    private final long trim;
    private final long keepOffcut;
    private final Map<CuttingProblem.Demand, Long> pieceMicrons = new IdentityHashMap<>();
    private final Map<CuttingProblem.Stock, Long> usableMicrons = new IdentityHashMap<>();
    private final List<CuttingProblem.Demand> placeable = new ArrayList<>();
    private final List<CuttingProblem.Stock> boards = new ArrayList<>();
    private final List<CuttingResult.Unplaced> unplaced = new ArrayList<>();

    Intake(CuttingProblem problem) {
        this.problem = problem;
        kerf = roundUp(measure("problem", "kerf", problem.kerfMm(), true));
        trim = roundUp(measure("problem", "endTrim", problem.endTrimMm(), true));
        keepOffcut = roundUp(measure("problem", "keepOffcut", problem.keepOffcutMm(), true));
        Set<String> ids = new HashSet<>();
        for (var stock : problem.stock()) {
            if (!ids.add(stock.id())) throw BrokenRule.twice("stock", "Board", stock.id());
            checkStock(stock);
            long usable = roundDown(stock.lengthMm()) - (stock.sawnEnd() ? 1 : 2) * trim;
            usableMicrons.put(stock, usable);
            if (usable > 0 && stock.available().orElse(1) > 0) boards.add(stock);
        }
        ids.clear();
        long total = 0;
        for (var piece : problem.pieces()) {
            boolean twice = !ids.add(piece.id());
            String where = "piece " + piece.id();
            measure(where, "length", piece.lengthMm(), false);
            BrokenRule.between(where, "count", piece.count(), 0, Integer.MAX_VALUE, "");
            BrokenRule.between(where, "stage", piece.stage(), 0, Integer.MAX_VALUE, "");
            BrokenRule.between(where, "goodFaces", piece.goodFaces(), 0, CuttingProblem.MOST_GOOD_FACES, "");
            long microns = roundUp(piece.lengthMm());
            pieceMicrons.put(piece, microns);
            String why = twice
                    ? "listed twice: " + piece.count() + " at " + text(piece.lengthMm()) + " left out, give each line its own id"
                    : whyNot(piece, microns, total);
            if (why == null) {
                placeable.add(piece);
                total += piece.count();
            } else {
                unplaced.add(new CuttingResult.Unplaced(piece.id(), piece.lengthMm(), piece.count(), why, !twice && piece.count() > 0 && microns >= kerf && usedUp(piece)));
            }
        }
    }

    /** Whether it fits only boards of which there are none. */
    private boolean usedUp(CuttingProblem.Demand piece) {
        List<CuttingProblem.Stock> holding = problem.stock().stream().filter(board -> Lacking.holds(problem, board, piece)).toList();
        return !holding.isEmpty() && holding.stream().allMatch(board -> board.available().orElse(1) == 0);
    }

    List<CuttingResult.Unplaced> unplaced() {
        return unplaced;
    }

    boolean nothingToCut() {
        return placeable.isEmpty();
    }

    WholeProblem whole() {
        return new WholeProblem(placeable, pieceMicrons, boards, usableMicrons, kerf);
    }

    /** Those that can hold something, and that there are some of. */
    List<CuttingProblem.Stock> boards() {
        return boards;
    }

    /** Micrometres, as all lengths here. */
    long keepOffcut() {
        return keepOffcut;
    }

    long kerf() {
        return kerf;
    }

    long microns(CuttingProblem.Demand piece) {
        return pieceMicrons.get(piece);
    }

    long usable(CuttingProblem.Stock stock) {
        return usableMicrons.get(stock);
    }

    private void checkStock(CuttingProblem.Stock stock) {
        String where = "board " + stock.id();
        measure(where, "length", stock.lengthMm(), false);
        BrokenRule.money(where, "price", stock.price());
        BrokenRule.money(where, "salvage", stock.salvage());
        BrokenRule.between(where, "goodFaces", stock.goodFaces(), 0, CuttingProblem.MOST_GOOD_FACES, "");
        BrokenRule.between(where, "available", stock.available().orElse(0), 0, Integer.MAX_VALUE, "");
    }

    private String whyNot(CuttingProblem.Demand piece, long microns, long total) {
        if (piece.count() == 0) return "count is 0: nothing to cut";
        if (microns < kerf) {
            return "shorter than the saw cut: " + text(piece.lengthMm()) + " long, kerf " + text(problem.kerfMm());
        }
        if (boards.isEmpty()) return "no board to cut it from: " + text(piece.lengthMm()) + " needed";
        OptionalLong longest = boards.stream().mapToLong(usableMicrons::get).max();
        if (microns > longest.getAsLong()) {
            return "longer than every stock length: " + text(piece.lengthMm()) + " needed, "
                    + text(longest.getAsLong() / 1000.0) + " usable";
        }
        if (piece.goodFaces() > 0) {
            String faces = faces(piece.goodFaces());
            longest = boards.stream()
                    .filter(board -> board.goodFaces() >= piece.goodFaces())
                    .mapToLong(usableMicrons::get)
                    .max();
            if (longest.isEmpty()) return "no board with " + faces + ": " + text(piece.lengthMm()) + " needed";
            if (microns > longest.getAsLong()) {
                return "longer than every board with " + faces + ": " + text(piece.lengthMm()) + " needed, "
                        + text(longest.getAsLong() / 1000.0) + " usable";
            }
        }
        if (total + piece.count() > MOST_PIECES) {
            return piece.count() + " asked: one job plans at most " + MOST_PIECES + " pieces, " + total
                    + " stand before these";
        }
        return null;
    }

    /** A micrometre is the least that can be told from nothing. */
    static double measure(String where, String name, double mm, boolean mayBeZero) {
        BrokenRule.between(where, name, mm, mayBeZero ? 0 : LEAST_MM, LONGEST_MM, "mm");
        return mm;
    }

    static String faces(int good) {
        return good == 1 ? "a good face" : good + " good faces";
    }

    /** Pieces, kerf and trim: what is finer than a micrometre counts up. */
    static long roundUp(double mm) {
        return (long) Math.ceil(mm * 1000 - 1e-4);
    }

    /** Boards: what is finer than a micrometre counts down. */
    private static long roundDown(double mm) {
        return (long) Math.floor(mm * 1000 + 1e-4);
    }

    static String text(double mm) {
        BigDecimal value = BigDecimal.valueOf(mm).stripTrailingZeros();
        return value.toPlainString();
    }
}
