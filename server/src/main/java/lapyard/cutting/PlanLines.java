package lapyard.cutting;

import java.math.BigDecimal;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Gives every board and piece of a plan its own name again. Pieces are named earlier stages first, so that no board
 * waits for a later stage than it must; on a board they stand in the order of cutting.
 */
final class PlanLines {
    private final Intake intake;
    private final WholeProblem problem;
    private final List<Deque<Lot<CuttingProblem.Demand>>> pieces = new ArrayList<>();
    private final List<Deque<Lot<CuttingProblem.Stock>>> boards = new ArrayList<>();
    private final List<CuttingResult.BoardLine> lines = new ArrayList<>();
    private final Map<CuttingResult.BoardLine, Integer> firstStage = new HashMap<>();
    private BigDecimal cost = BigDecimal.ZERO;
    private BigDecimal salvage = BigDecimal.ZERO;

    private static final class Lot<T> {
        final T of;
        int left;

        Lot(T of, int left) {
            this.of = of;
            this.left = left;
        }
    }

    PlanLines(Intake intake, WholeProblem problem, Solution solution) {
        this.intake = intake;
        this.problem = problem;
        for (List<CuttingProblem.Demand> demands : problem.itemDemands) {
            Deque<Lot<CuttingProblem.Demand>> lots = new ArrayDeque<>();
            demands.stream()
                    .sorted(Comparator.comparingInt(CuttingProblem.Demand::stage))
                    .forEach(d -> lots.add(new Lot<>(d, d.count())));
            pieces.add(lots);
        }
        for (int k = 0; k < problem.stocks(); k++) {
            Deque<Lot<CuttingProblem.Stock>> lots = new ArrayDeque<>();
            for (var board : problem.stockBoards.get(k)) {
                lots.add(new Lot<>(board, board.available().orElse(WholeProblem.UNLIMITED)));
            }
            boards.add(lots);
        }
        List<Map.Entry<Pattern, Integer>> order = new ArrayList<>(solution.patterns().entrySet());
        order.removeIf(e -> e.getKey().stock() == Pattern.NONE);
        order.sort(Comparator.comparing(Map.Entry::getKey, PlanLines::compare));
        for (var entry : order) place(entry.getKey(), entry.getValue());
        lines.sort(Comparator.comparing(firstStage::get));
    }

    List<CuttingResult.BoardLine> lines() {
        return lines;
    }

    /** Exact, with the decimals that the prices were given in. */
    BigDecimal cost() {
        return cost;
    }

    /** The part of the cost that is the worth of boards on hand. */
    BigDecimal salvage() {
        return salvage;
    }

    /** What no board was left for, once every line stands. */
    List<CuttingResult.Unplaced> leftOver() {
        List<CuttingResult.Unplaced> over = new ArrayList<>();
        boolean stages = problem.itemDemands.stream()
                        .flatMap(List::stream)
                        .mapToInt(CuttingProblem.Demand::stage)
                        .distinct()
                        .count()
                > 1;
        for (Deque<Lot<CuttingProblem.Demand>> lots : pieces) {
            for (Lot<CuttingProblem.Demand> lot : lots) {
                if (lot.left == 0) continue;
                over.add(new CuttingResult.Unplaced(
                        lot.of.id(),
                        lot.of.lengthMm(),
                        lot.left,
                        "no board left: " + lot.left + " of " + lot.of.count() + " at "
                                + Intake.text(lot.of.lengthMm())
                                + (lot.of.goodFaces() > 0 ? " with " + Intake.faces(lot.of.goodFaces()) : "")
                                + (stages ? " for stage " + lot.of.stage() : "")
                                + " wait when the boards on hand are used up",
                        true));
            }
        }
        return over;
    }

    private static int compare(Pattern a, Pattern b) {
        if (a.stock() != b.stock()) return Integer.compare(a.stock(), b.stock());
        for (int i = 0; i < Math.min(a.items().length, b.items().length); i++) {
            if (a.items()[i] != b.items()[i]) return Integer.compare(a.items()[i], b.items()[i]);
            if (a.counts()[i] != b.counts()[i]) return Integer.compare(b.counts()[i], a.counts()[i]);
        }
        return Integer.compare(a.items().length, b.items().length);
    }

    /** One line as long as the same names repeat, then the next. */
    private void place(Pattern pattern, int count) {
        int left = count;
        while (left > 0) {
            Lot<CuttingProblem.Stock> board = head(boards.get(pattern.stock()));
            int times = Math.min(left, board.left);
            List<CuttingProblem.Demand> cut = new ArrayList<>();
            Map<Lot<CuttingProblem.Demand>, Integer> used = new HashMap<>();
            for (int i = 0; i < pattern.items().length; i++) {
                int wanted = pattern.counts()[i];
                for (Lot<CuttingProblem.Demand> lot : pieces.get(pattern.items()[i])) {
                    int here = Math.min(wanted, lot.left);
                    if (here == 0) continue;
                    used.put(lot, here);
                    for (int c = 0; c < here; c++) cut.add(lot.of);
                    wanted -= here;
                    if (wanted == 0) break;
                }
            }
            for (var entry : used.entrySet()) times = Math.min(times, entry.getKey().left / entry.getValue());
            for (var entry : used.entrySet()) entry.getKey().left -= times * entry.getValue();
            if (board.left != WholeProblem.UNLIMITED) board.left -= times;
            left -= times;
            addLine(board.of, times, cut);
        }
    }

    private static <T> Lot<T> head(Deque<Lot<T>> lots) {
        while (lots.peek().left == 0) lots.poll();
        return lots.peek();
    }

    private void addLine(CuttingProblem.Stock board, int times, List<CuttingProblem.Demand> cut) {
        cut.sort(Comparator.comparingInt(CuttingProblem.Demand::stage)
                .thenComparing(Comparator.comparingDouble(CuttingProblem.Demand::lengthMm).reversed()));
        long room = intake.usable(board) - intake.kerf() * (cut.size() - 1);
        List<String> ids = new ArrayList<>();
        List<Double> lengths = new ArrayList<>();
        for (var piece : cut) {
            ids.add(piece.id());
            lengths.add(piece.lengthMm());
            room -= intake.microns(piece);
        }
        var line = new CuttingResult.BoardLine(board.id(), times, ids, lengths, room / 1000.0);
        lines.add(line);
        firstStage.put(line, cut.get(0).stage());
        cost = cost.add(board.worth().multiply(BigDecimal.valueOf(times)));
        salvage = salvage.add(board.salvage().multiply(BigDecimal.valueOf(times)));
    }
}
