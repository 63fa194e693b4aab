package lapyard.cutting;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Finds contradictions in a report of sawn boards. */
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
                check.stop(Replan.Wrong.BOARD_TWICE, board.board(), "", 0, 0);
            } else if (stock.containsKey(board.board()) && !onlyOne(board, stock)) {
                check.stop(Replan.Wrong.BOARD_NAME, board.board(), "#" + names.size(), 0, 0);
            }
            check.board(board);
            board.cut().forEach(id -> cut.merge(id, 1, Integer::sum));
            told.merge(board.stock(), 1, Integer::sum);
        }
        cut.forEach((id, count) -> {
            CuttingProblem.Demand piece = pieces.get(id);
            if (piece != null && count > piece.count()) {
                check.stop(Replan.Wrong.CUT_MORE, id, "", count, piece.count());
            }
        });
        told.forEach((id, count) -> {
            CuttingProblem.Stock board = stock.get(id);
            if (board != null && board.available().orElse(count) < count) {
                check.stop(Replan.Wrong.STOCK_MORE, id, "", count, board.available().getAsInt());
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
        for (double gone : board.goneMm()) used += gone + problem.kerfMm();
        return used;
    }

    private void board(Sawn board) {
        CuttingProblem.Stock was = stock.get(board.stock());
        if (was == null) {
            stop(Replan.Wrong.STOCK_UNKNOWN, board.board(), board.stock(), 0, 0);
            return;
        }
        List<String> sawn = new ArrayList<>(board.cut());
        sawn.addAll(board.spoiled());
        boolean known = true;
        for (String id : sawn) {
            if (!pieces.containsKey(id)) {
                stop(Replan.Wrong.PIECE_UNKNOWN, board.board(), id, 0, 0);
                known = false;
            }
        }
        board.goneMm().forEach(gone -> sawn.add(Intake.text(gone)));
        if (!board.opened() && !sawn.isEmpty()) {
            stop(Replan.Wrong.NOT_OPENED, board.board(), String.join(", ", sawn), sawn.size(), 0);
        }
        if (!whole(board.lostMm()) || !whole(board.leftMm().orElse(0))) {
            stop(Replan.Wrong.NEGATIVE, board.board(), "", 0, 0);
            return;
        }
        if (!known || !board.opened() && !sawn.isEmpty()) return;
        double used = usedMm(problem, was, pieces, board);
        // The last cut may run off the end of the board, so its kerf need not be there.
        double least = sawn.isEmpty() ? 0 : used - problem.kerfMm();
        if (least > was.lengthMm() + 1e-6) {
            stop(Replan.Wrong.CUT_OVER, board.board(), "", SawBoard.thousandth(least), was.lengthMm());
            return;
        }
        double room = Math.max(0, was.lengthMm() - used);
        if (board.leftMm().isPresent() && board.leftMm().getAsDouble() > room + Replan.OVER_LENGTH_MM) {
            stop(Replan.Wrong.LEFT_OVER, board.board(), "", board.leftMm().getAsDouble(), SawBoard.thousandth(room));
        } else if (board.leftMm().isEmpty() && board.lostMm() > room + 1e-6) {
            stop(Replan.Wrong.LOST_OVER, board.board(), "", board.lostMm(), SawBoard.thousandth(room));
        }
    }

    private static boolean whole(double mm) {
        return Double.isFinite(mm) && mm >= 0 && mm <= Intake.LONGEST_MM;
    }

    private void stop(Replan.Wrong wrong, String of, String name, double told, double most) {
        stops.add(new Replan.Stop(wrong, of, name, told, most));
    }
}
