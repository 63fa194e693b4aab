package lapyard.cutting;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import lapyard.working.Effort;
import lapyard.working.Progress;

/**
 * Plans where an offcut's end is trimmed each time that a later stage takes it up again. The plan that ignores it is cut
 * first: its bound holds, as trimming only takes length away. Boards on which the trimming finds no room are cut afresh
 * on boards shortened by all the trimming that there can be; so is everything, and the cheaper plan stands.
 */
final class Retrim {
    private final CuttingProblem problem;
    private final Effort effort;
    private final Map<String, CuttingProblem.Demand> pieces = new HashMap<>();

    private Retrim(CuttingProblem problem, Effort effort) {
        this.problem = problem;
        this.effort = effort;
        problem.pieces().forEach(piece -> pieces.putIfAbsent(piece.id(), piece));
    }

    static CuttingResult solve(CuttingProblem problem, Effort effort, Progress progress) {
        return new Retrim(problem, effort).solve(progress);
    }

    private CuttingResult solve(Progress progress) {
        CuttingResult plain = CuttingSolver.asTheyLie(problem, part(2), progress);
        List<CuttingResult.BoardLine> kept = new ArrayList<>();
        Map<String, Integer> open = new HashMap<>();
        for (var line : plain.plan()) {
            double left = trimmed(line);
            if (left >= 0) {
                kept.add(new CuttingResult.BoardLine(line.stock(), line.count(), line.pieces(), line.lengthsMm(), left));
            } else {
                line.pieces().forEach(id -> open.merge(id, line.count(), Integer::sum));
            }
        }
        if (open.isEmpty()) return result(plain, kept, plain.unplaced());
        return ways(kept, open).stream()
                .min(this::order)
                .map(cheapest -> result(plain, cheapest, plain.unplaced()))
                .orElseGet(() -> lacking(plain, kept, open));
    }

    private Effort part(int of) {
        return new Effort(Math.max(1, effort.steps() / of), effort.limit().dividedBy(of), effort.patience());
    }

    /** Every way found to cut everything that the plain plan cuts. */
    private List<List<CuttingResult.BoardLine>> ways(
            List<CuttingResult.BoardLine> kept, Map<String, Integer> open) {
        List<List<CuttingResult.BoardLine>> ways = new ArrayList<>();
        Map<String, Integer> all = new HashMap<>(open);
        kept.forEach(line -> line.pieces().forEach(id -> all.merge(id, line.count(), Integer::sum)));
        add(ways, kept, shortened(left(kept), demands(open)));
        add(ways, List.of(), shortened(problem.stock(), demands(all)));
        return ways;
    }

    private static void add(
            List<List<CuttingResult.BoardLine>> ways,
            List<CuttingResult.BoardLine> kept,
            List<CuttingResult.BoardLine> rest) {
        if (rest.isEmpty()) return;
        List<CuttingResult.BoardLine> all = new ArrayList<>(kept);
        all.addAll(rest);
        ways.add(all);
    }

    private List<CuttingProblem.Demand> demands(Map<String, Integer> counts) {
        return problem.counted(piece -> pieces.get(piece.id()) == piece ? counts.getOrDefault(piece.id(), 0) : 0);
    }

    private List<CuttingProblem.Stock> left(List<CuttingResult.BoardLine> kept) {
        Map<String, Integer> used = new HashMap<>();
        kept.forEach(line -> used.merge(line.stock(), line.count(), Integer::sum));
        return problem.stockLess(used);
    }

    /** Nothing where not all can be cut so. */
    private List<CuttingResult.BoardLine> shortened(
            List<CuttingProblem.Stock> stock, List<CuttingProblem.Demand> demands) {
        CuttingResult result = afresh(stock, demands);
        return result.unplaced().isEmpty() ? lines(result, demands) : List.of();
    }

    private double off(List<CuttingProblem.Demand> demands) {
        return problem.retrimMm() * (demands.stream().mapToInt(CuttingProblem.Demand::stage).distinct().count() - 1);
    }

    private CuttingResult afresh(List<CuttingProblem.Stock> stock, List<CuttingProblem.Demand> demands) {
        double off = off(demands);
        List<CuttingProblem.Stock> shorter = stock.stream()
                .filter(board -> board.lengthMm() > off)
                .map(board -> board.longer(-off))
                .toList();
        return CuttingSolver.asTheyLie(problem.with(shorter, demands), part(8));
    }

    private List<CuttingResult.BoardLine> lines(CuttingResult afresh, List<CuttingProblem.Demand> demands) {
        double off = off(demands);
        return afresh.plan().stream()
                .map(line -> new CuttingResult.BoardLine(
                        line.stock(),
                        line.count(),
                        line.pieces(),
                        line.lengthsMm(),
                        SawBoard.thousandth(trimmed(line) + off)))
                .toList();
    }

    /** Where no way cuts everything, the boards that hold out stand, what fits is cut from the others and the rest is named. */
    private CuttingResult lacking(
            CuttingResult plain, List<CuttingResult.BoardLine> kept, Map<String, Integer> open) {
        CuttingResult rest = afresh(left(kept), demands(open));
        kept.addAll(lines(rest, demands(open)));
        List<CuttingResult.Unplaced> unplaced = new ArrayList<>(plain.unplaced());
        for (var one : rest.unplaced()) {
            unplaced.add(new CuttingResult.Unplaced(
                    one.id(),
                    one.lengthMm(),
                    one.count(),
                    "no board left: " + one.count() + " at " + Intake.text(one.lengthMm()) + " for stage "
                            + pieces.get(one.id()).stage() + " when each offcut is trimmed by " + Intake.text(problem.retrimMm())
                            + " again",
                    true));
        }
        CuttingResult stands = result(plain, kept, unplaced);
        Map<String, Integer> cut = new HashMap<>();
        kept.forEach(line -> line.pieces().forEach(id -> cut.merge(id, line.count(), Integer::sum)));
        BigDecimal bound = CuttingSolver.asTheyLie(problem.with(problem.stock(), demands(cut)), part(8))
                .lowerBound()
                .min(stands.cost());
        return new CuttingResult(
                stands.name(), stands.cost(), stands.salvage(), stands.boards(), bound,
                bound.compareTo(stands.cost()) == 0, stands.seconds(), stands.plan(), unplaced, stands.shortage());
    }

    private double trimmed(CuttingResult.BoardLine line) {
        long stages = line.pieces().stream().mapToInt(id -> pieces.get(id).stage()).distinct().count();
        return SawBoard.thousandth(line.leftMm() - problem.retrimMm() * (stages - 1));
    }

    private int order(List<CuttingResult.BoardLine> a, List<CuttingResult.BoardLine> b) {
        int byCost = cost(a, false).compareTo(cost(b, false));
        return byCost != 0 ? byCost : Integer.compare(boards(a), boards(b));
    }

    private static int boards(List<CuttingResult.BoardLine> lines) {
        return lines.stream().mapToInt(CuttingResult.BoardLine::count).sum();
    }

    private BigDecimal cost(List<CuttingResult.BoardLine> lines, boolean salvageOnly) {
        BigDecimal sum = BigDecimal.ZERO;
        for (var line : lines) {
            var board = problem.stock().stream()
                    .filter(stock -> stock.id().equals(line.stock()))
                    .findFirst()
                    .orElseThrow();
            sum = sum.add((salvageOnly ? board.salvage() : board.worth()).multiply(BigDecimal.valueOf(line.count())));
        }
        return sum;
    }

    private CuttingResult result(
            CuttingResult plain, List<CuttingResult.BoardLine> lines, List<CuttingResult.Unplaced> unplaced) {
        List<CuttingResult.BoardLine> order = new ArrayList<>(lines);
        order.sort(Comparator.comparingInt(
                line -> pieces.get(line.pieces().get(0)).stage()));
        BigDecimal cost = cost(lines, false);
        return new CuttingResult(
                plain.name(), cost, cost(lines, true), boards(lines), plain.lowerBound(),
                plain.lowerBound().compareTo(cost) == 0, plain.seconds(), order, unplaced, plain.shortage());
    }
}
