package lapyard.cutting;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import lapyard.working.Effort;
import lapyard.working.Progress;
import lapyard.working.SearchBudget;

/** How few pieces a plan must leave over when boards on hand run out, and which boards would hold them. */
final class Lacking {
    /** Steps that go into one set of boards to add. */
    private static final Effort A_WAY = Effort.ofSteps(200_000, 3_000);
    /** What a millimetre is taken to be worth where no board has a worth: it only tells a longer board from a shorter. */
    private static final BigDecimal PER_MM = new BigDecimal("0.0001");
    private static final int MOST_KINDS = 6;
    private static final int MOST_WAYS = 5;
    /** The part of a search by the clock that counting takes at least. */
    private static final int LEAST_SHARE = 10;
    private static final String EXTRA = "\u0000";

    private Lacking() {}

    /** @param plan leaves as few pieces over as was found; the first one where no fewer were */
    record Fewest(Solution plan, long atLeast) {}

    /** The fewest pieces left over: by counting, else by a search in which only they cost. */
    static Fewest fewest(WholeProblem whole, Solution first, Filling filling, Effort effort, SearchBudget budget) {
        WholeProblem scarce = whole.scarce();
        long atLeast = byCounting(scarce);
        if (first.uncut() <= atLeast) return new Fewest(first, atLeast);
        Duration limit = effort.limit();
        Duration left = limit.minusNanos((long) (budget.seconds() * 1e9));
        Duration least = limit.dividedBy(LEAST_SHARE);
        Effort mine = new Effort(effort.steps(), left.compareTo(least) < 0 ? least : left, effort.patience());
        CuttingSearch search = new CuttingSearch(scarce, null, mine, SearchBudget.whole(mine, Progress.UNHEARD));
        Solution found = search.run();
        atLeast = Math.max(atLeast, scarce.uncutAtLeast(search.bound()));
        return new Fewest(found.uncut() < first.uncut() ? whole(whole, found, filling) : first, Math.min(atLeast, found.uncut()));
    }

    /** The plan for scarce boards, with all that can be bought for filled in. */
    private static Solution whole(WholeProblem problem, Solution scarce, Filling filling) {
        int[] demand = problem.demand.clone();
        int[] supply = problem.supply.clone();
        Solution all = new Solution(problem);
        scarce.patterns().forEach((pattern, count) -> {
            for (int i = 0; i < pattern.items().length; i++) demand[pattern.items()[i]] -= pattern.counts()[i] * count;
            if (pattern.stock() != Pattern.NONE) supply[pattern.stock()] -= count;
            all.add(pattern, count);
        });
        all.addAll(filling.best(demand, supply));
        return all;
    }

    /** No board holds more of the pieces from a length on than fit in it, and all boards together hold no more than their length. */
    static long byCounting(WholeProblem scarce) {
        long most = 0;
        for (int faces = 0; faces <= CuttingProblem.MOST_GOOD_FACES; faces++) {
            long total = 0;
            for (int k = 0; k < scarce.stocks(); k++) {
                if (scarce.stockFaces[k] >= faces) total += (long) scarce.capacity[k] * scarce.supply[k];
            }
            for (int at = 0; at < scarce.items(); at++) {
                int least = scarce.weight[at];
                long wanted = 0;
                for (int i = 0; i < scarce.items(); i++) {
                    if (scarce.itemFaces[i] >= faces && scarce.weight[i] >= least) wanted += scarce.demand[i];
                }
                long room = 0;
                for (int k = 0; k < scarce.stocks(); k++) {
                    if (scarce.stockFaces[k] >= faces) room += (long) scarce.supply[k] * (scarce.capacity[k] / least);
                }
                most = Math.max(most, wanted - room);
            }
            most = Math.max(most, byLength(scarce, faces, total));
        }
        return most;
    }

    private static long byLength(WholeProblem scarce, int faces, long room) {
        List<Integer> shortest = new ArrayList<>();
        for (int i = 0; i < scarce.items(); i++) if (scarce.itemFaces[i] >= faces) shortest.add(i);
        shortest.sort(Comparator.comparingInt(i -> scarce.weight[i]));
        long left = 0;
        long over = 0;
        for (int i : shortest) {
            long fit = Math.min(scarce.demand[i], (room - left) / scarce.weight[i]);
            left += fit * scarce.weight[i];
            over += scarce.demand[i] - fit;
        }
        return over;
    }

    /**
     * A kind of board that more could be had of.
     *
     * @param cost what one more counts in the search: above all that is bought, so that none takes the place of a board to buy
     */
    private record Kind(CuttingProblem.Stock board, BigDecimal cost) {}

    /**
     * Boards that hold what a plan leaves over, beside those that are there: the cheapest mixture found, and each kind by itself.
     * Pieces that none of those given could hold, however many there were, have a board of their own in every way.
     */
    static List<Shortage.Way> ways(CuttingProblem problem, CuttingResult plan) {
        List<CuttingResult.Unplaced> unplaced = plan.unplaced();
        Map<String, CuttingProblem.Demand> byId = new HashMap<>();
        problem.pieces().forEach(piece -> byId.putIfAbsent(piece.id(), piece));
        List<CuttingProblem.Demand> pieces = new ArrayList<>();
        List<Shortage.More> unlisted = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        Set<String> scarce = new HashSet<>();
        Set<String> refused = new HashSet<>();
        for (var one : unplaced) (one.scarce() ? scarce : refused).add(one.id());
        for (var piece : problem.pieces()) {
            if (piece.count() == 0 || !seen.add(piece.id())) continue;
            boolean held = problem.stock().stream().anyMatch(board -> holds(problem, board, piece));
            if (held && !refused.contains(piece.id())) {
                pieces.add(piece);
            } else if (!held) {
                unlisted.add(new Shortage.More("", piece.count(), SawBoard.thousandth(piece.lengthMm() + 2 * problem.endTrimMm()), piece.goodFaces()));
            }
        }
        if (scarce.isEmpty()) return unlisted.isEmpty() ? List.of() : List.of(new Shortage.Way(BigDecimal.ZERO, unlisted));
        BigDecimal bought = bought(problem, plan);
        List<Kind> kinds = kinds(problem, byId, scarce, bought);
        List<List<Kind>> choices = new ArrayList<>(List.of(kinds));
        if (kinds.size() > 1) kinds.stream().limit(MOST_KINDS).forEach(kind -> choices.add(List.of(kind)));
        Map<List<Shortage.More>, Found> ways = new LinkedHashMap<>();
        for (List<Kind> choice : choices) {
            Optional<Found> found = found(problem, pieces, choice, unlisted, BigDecimal.ZERO, true);
            // where the whole job is too tightly cut to be cut so well again, the plan stands and the rest lies on boards of its own
            if (found.isEmpty()) found = found(problem, rest(byId, unplaced), choice, unlisted, bought, false);
            found.ifPresent(way -> ways.merge(way.way().boards(), way, (a, b) -> a.total().compareTo(b.total()) <= 0 ? a : b));
        }
        return ways.values().stream()
                .sorted(Comparator.comparing(Found::total)
                        .thenComparingInt(way -> way.way().boards().stream().mapToInt(Shortage.More::count).sum())
                        .thenComparingDouble(Found::lengthMm))
                .limit(MOST_WAYS)
                .map(Found::way)
                .toList();
    }

    static boolean holds(CuttingProblem problem, CuttingProblem.Stock board, CuttingProblem.Demand piece) {
        return board.goodFaces() >= piece.goodFaces()
                && board.lengthMm() - (board.sawnEnd() ? 1 : 2) * problem.endTrimMm() >= piece.lengthMm();
    }

    /** Boards on hand of which one more would hold something that is left over, the cheapest first; none that another replaces. */
    private static List<Kind> kinds(CuttingProblem problem, Map<String, CuttingProblem.Demand> byId, Set<String> scarce, BigDecimal bought) {
        List<Kind> all = new ArrayList<>();
        for (var board : problem.stock()) {
            if (board.available().isEmpty() || scarce.stream().noneMatch(id -> holds(problem, board, byId.get(id)))) continue;
            all.add(new Kind(board, board.price().signum() > 0 ? board.price() : board.worth()));
        }
        BigDecimal perMm = perMm(all);
        // what has no worth is counted by the board, then by length
        all.replaceAll(kind -> kind.cost().signum() > 0 ? kind
                : new Kind(kind.board(), perMm.multiply(BigDecimal.valueOf(kind.board().lengthMm())).add(BigDecimal.ONE)
                        .setScale(4, RoundingMode.UP)));
        all.sort(Comparator.comparing(Kind::cost).thenComparingDouble(kind -> kind.board().lengthMm()));
        List<Kind> kept = new ArrayList<>();
        for (Kind kind : all) {
            if (kept.stream().noneMatch(other -> other.cost().compareTo(kind.cost()) <= 0
                    && other.board().lengthMm() == kind.board().lengthMm()
                    && other.board().goodFaces() >= kind.board().goodFaces()
                    && (other.board().sawnEnd() || !kind.board().sawnEnd()))) {
                kept.add(kind);
            }
        }
        kept.replaceAll(kind -> new Kind(kind.board(), kind.cost().add(bought)));
        return kept;
    }

    private static BigDecimal perMm(List<Kind> kinds) {
        return kinds.stream()
                .filter(kind -> kind.cost().signum() > 0)
                .map(kind -> kind.cost().divide(BigDecimal.valueOf(kind.board().lengthMm()), 8, RoundingMode.UP))
                .min(Comparator.naturalOrder())
                .orElse(PER_MM);
    }

    /** @param total with what is bought anyway */
    private record Found(Shortage.Way way, BigDecimal total, double lengthMm) {}

    /** The pieces left over, each line as often as it is. */
    private static List<CuttingProblem.Demand> rest(Map<String, CuttingProblem.Demand> byId, List<CuttingResult.Unplaced> unplaced) {
        List<CuttingProblem.Demand> rest = new ArrayList<>();
        for (var one : unplaced) {
            if (one.scarce()) rest.add(byId.get(one.id()).with(one.count()));
        }
        return rest;
    }

    private static BigDecimal bought(CuttingProblem problem, CuttingResult plan) {
        BigDecimal bought = BigDecimal.ZERO;
        for (var line : plan.plan()) {
            for (var board : problem.stock()) {
                boolean of = board.available().isEmpty() && board.id().equals(line.stock());
                if (of) bought = bought.add(board.price().multiply(BigDecimal.valueOf(line.count())));
            }
        }
        return bought;
    }

    /**
     * @param bought what is bought beside these boards
     * @param whole  whether the boards that are there may be cut for these pieces too
     */
    private static Optional<Found> found(
            CuttingProblem problem, List<CuttingProblem.Demand> pieces, List<Kind> kinds, List<Shortage.More> unlisted, BigDecimal bought, boolean whole) {
        Map<String, CuttingProblem.Stock> extra = new LinkedHashMap<>();
        Map<String, BigDecimal> counted = new HashMap<>();
        List<CuttingProblem.Stock> stock = new ArrayList<>();
        // what is there anyway costs nothing here, so only what is added counts
        if (whole) for (var board : problem.stock()) stock.add(board.available().isEmpty() ? board : free(board));
        for (Kind kind : kinds) {
            var board = kind.board();
            var more = new CuttingProblem.Stock(
                    EXTRA + board.id(), board.lengthMm(), kind.cost(), java.util.OptionalInt.empty(), board.goodFaces(), BigDecimal.ZERO, board.sawnEnd());
            extra.put(more.id(), board);
            counted.put(board.id(), kind.cost());
            stock.add(more);
        }
        CuttingResult result = CuttingSolver.plan(problem.with(stock, pieces), A_WAY, Progress.UNHEARD);
        if (!result.unplaced().isEmpty()) return Optional.empty();
        Map<String, Shortage.More> boards = new LinkedHashMap<>();
        BigDecimal cost = BigDecimal.ZERO;
        BigDecimal total = result.cost().add(bought);
        double lengthMm = 0;
        for (var line : result.plan()) {
            var board = extra.get(line.stock());
            if (board == null) continue;
            double least = SawBoard.thousandth(board.lengthMm() - line.leftMm());
            boards.merge(board.id(), new Shortage.More(board.id(), line.count(), least, board.goodFaces()),
                    (a, b) -> new Shortage.More(a.stock(), a.count() + b.count(), Math.max(a.leastMm(), b.leastMm()), a.goodFaces()));
            lengthMm += line.count() * board.lengthMm();
            BigDecimal each = board.price().signum() > 0 ? board.price() : board.worth();
            BigDecimal many = BigDecimal.valueOf(line.count());
            cost = cost.add(each.multiply(many));
            total = total.add(each.subtract(counted.get(board.id())).multiply(many));
        }
        List<Shortage.More> all = new ArrayList<>(boards.values());
        all.addAll(unlisted);
        return all.isEmpty() ? Optional.empty() : Optional.of(new Found(new Shortage.Way(cost, all), total, lengthMm));
    }

    private static CuttingProblem.Stock free(CuttingProblem.Stock board) {
        return new CuttingProblem.Stock(
                board.id(), board.lengthMm(), BigDecimal.ZERO, board.available(), board.goodFaces(), BigDecimal.ZERO, board.sawnEnd());
    }
}
