package lapyard.cutting;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Finds what can't be true in what is told about boards. */
final class SawnCheck {
    private final CuttingProblem problem;
    private final Map<String, CuttingProblem.Stock> stock;
    private final Map<String, CuttingProblem.Demand> pieces;
    private final List<Replan.Stop> stops = new ArrayList<>();

    private SawnCheck(
            CuttingProblem problem, Map<String, CuttingProblem.Stock> stock, Map<String, CuttingProblem.Demand> pieces) {
        this.problem = problem;
        this.stock = stock;
        this.pieces = pieces;
    }

    static List<Replan.Stop> of(
            CuttingProblem problem,
            Map<String, CuttingProblem.Stock> stock,
            Map<String, CuttingProblem.Demand> pieces,
            List<Sawn> sawn) {
        SawnCheck check = new SawnCheck(problem, stock, pieces);
        Set<String> names = new HashSet<>();
        Map<String, Integer> cut = new LinkedHashMap<>();
        Map<String, Integer> told = new LinkedHashMap<>();
        for (Sawn board : sawn) {
            if (!names.add(board.board())) {
                check.stop(board.board(), "told of twice", "keep one line for it");
            } else if (stock.containsKey(board.board()) && !onlyOne(board, stock)) {
                check.stop(board.board(), "has the name of a stock length", "give it its own, such as #" + names.size());
            }
            check.board(board);
            board.cut().forEach(id -> cut.merge(id, 1, Integer::sum));
            told.merge(board.stock(), 1, Integer::sum);
        }
        cut.forEach((id, count) -> {
            CuttingProblem.Demand piece = pieces.get(id);
            if (piece != null && count > piece.count()) {
                check.stop(
                        "piece " + id,
                        count + " cut, " + piece.count() + " planned",
                        "take " + (count - piece.count()) + " off the tally",
                        "ask for " + count + " of it in the plan");
            }
        });
        told.forEach((id, count) -> {
            CuttingProblem.Stock board = stock.get(id);
            if (board != null && board.available().orElse(count) < count) {
                check.stop(
                        "board " + id,
                        count + " told of, " + board.available().getAsInt() + " on hand",
                        "name the stock that the others are of");
            }
        });
        return check.stops;
    }

    /** A single board on hand may keep its id. */
    private static boolean onlyOne(Sawn board, Map<String, CuttingProblem.Stock> stock) {
        return board.board().equals(board.stock()) && stock.get(board.stock()).available().orElse(0) == 1;
    }

    /** What is left of a board that passed the check, mm, the far end's trim still on it. */
    static double leftMm(
            CuttingProblem problem, CuttingProblem.Stock was, Map<String, CuttingProblem.Demand> pieces, Sawn board) {
        double left = board.leftMm().orElseGet(() -> was.lengthMm() - usedMm(problem, was, pieces, board) - board.lostMm());
        return Math.max(0, SawBoard.thousandth(left));
    }

    /** What the first trim and the cuts took, each cut with its kerf, mm. */
    private static double usedMm(
            CuttingProblem problem, CuttingProblem.Stock was, Map<String, CuttingProblem.Demand> pieces, Sawn board) {
        if (!board.opened()) return 0;
        double used = was.sawnEnd() ? 0 : problem.endTrimMm();
        for (String id : board.cut()) used += pieces.get(id).lengthMm() + problem.kerfMm();
        for (String id : board.spoiled()) used += pieces.get(id).lengthMm() + problem.kerfMm();
        return used;
    }

    private void board(Sawn board) {
        CuttingProblem.Stock was = stock.get(board.stock());
        if (was == null) {
            stop(board.board(), "is of a stock " + board.stock() + " that the job does not have", "name one of its stock");
            return;
        }
        List<String> sawn = new ArrayList<>(board.cut());
        sawn.addAll(board.spoiled());
        boolean known = true;
        for (String id : sawn) {
            if (!pieces.containsKey(id)) {
                stop(board.board(), "piece " + id + " is not in the plan", "take it off the tally", "add it to the plan");
                known = false;
            }
        }
        if (!board.opened() && !sawn.isEmpty()) {
            stop(
                    board.board(),
                    sawn.size() + " cut from it (" + String.join(", ", sawn) + "), but it is not opened",
                    "open it in the tally first",
                    "take the pieces off it");
        }
        if (!whole(board.lostMm()) || !whole(board.leftMm().orElse(0))) {
            stop(board.board(), "what is lost or left must be 0 mm or more", "measure it again");
            return;
        }
        if (!known || !board.opened() && !sawn.isEmpty()) return;
        double used = usedMm(problem, was, pieces, board);
        // The last cut may run off the end of the board, so its kerf need not be there.
        double least = sawn.isEmpty() ? 0 : used - problem.kerfMm();
        if (least > was.lengthMm() + 1e-6) {
            stop(
                    board.board(),
                    Intake.text(SawBoard.thousandth(least)) + " cut from " + Intake.text(was.lengthMm()),
                    "tell which board the last pieces came from");
            return;
        }
        double room = Math.max(0, was.lengthMm() - used);
        if (board.leftMm().isPresent() && board.leftMm().getAsDouble() > room + Replan.OVER_LENGTH_MM) {
            stop(
                    board.board(),
                    Intake.text(board.leftMm().getAsDouble()) + " left, at most " + Intake.text(SawBoard.thousandth(room))
                            + " can be",
                    "measure it again",
                    "take a piece off it");
        } else if (board.leftMm().isEmpty() && board.lostMm() > room + 1e-6) {
            stop(
                    board.board(),
                    Intake.text(board.lostMm()) + " lost of " + Intake.text(SawBoard.thousandth(room)) + " left",
                    "give what is left instead");
        }
    }

    private static boolean whole(double mm) {
        return Double.isFinite(mm) && mm >= 0 && mm <= Intake.LONGEST_MM;
    }

    private void stop(String where, String text, String... ways) {
        String at = where.startsWith("piece ") || where.startsWith("board ") ? where : "board " + where;
        stops.add(new Replan.Stop(at, at + ": " + text, List.of(ways)));
    }
}
