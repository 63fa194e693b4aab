package lapyard.cutting;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import lapyard.working.Effort;

/**
 * What is left to do after some sawing: the done part stays done, the rest is planned on what is really there, and what
 * that can't hold is bought.
 */
public sealed interface Replan {
    /** How much longer than its nominal length a board may turn out, mm; common practice, no source. */
    double OVER_LENGTH_MM = 50;

    /**
     * The rest has a plan.
     *
     * @param rest     the pieces still wanted and the boards for them: those that are there under their own names, then
     *     what can be had beside them
     * @param result   the plan of {@code rest}
     * @param cut      pieces done
     * @param neededMm all pieces still wanted, each with a kerf
     * @param thereMm  what is there in boards that can hold one of them, each with a kerf
     * @param fit      how many of the pieces still wanted fit what is there
     * @param lacking  those that do not, with their count
     * @param buy      boards to buy beside what is there, by stock id
     */
    record Planned(
            CuttingProblem rest,
            CuttingResult result,
            int cut,
            double neededMm,
            double thereMm,
            int fit,
            List<CuttingResult.Unplaced> lacking,
            Map<String, Integer> buy)
            implements Replan {
        public Planned {
            lacking = List.copyOf(lacking);
            buy = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(buy));
        }

        /** Pieces still wanted. */
        public int wanted() {
            return rest.pieces().stream().mapToInt(CuttingProblem.Demand::count).sum();
        }
    }

    /** What was told about the boards can't be true; every contradiction is named. */
    record Refused(List<Stop> stops) implements Replan {
        public Refused {
            stops = List.copyOf(stops);
        }
    }

    /** What cannot be true in a report of sawn boards. */
    enum Wrong {
        /** A board is reported twice. */
        BOARD_TWICE,
        /** A board has the name of a stock length. */
        BOARD_NAME,
        /** More pieces are cut than the plan has: {@code told} of {@code most}. */
        CUT_MORE,
        /** More boards of a limited stock are reported than there are: {@code told} of {@code most}. */
        STOCK_MORE,
        /** A board is of a stock that the job does not have, {@code name}. */
        STOCK_UNKNOWN,
        /** A piece of the report is not in the plan, {@code name}. */
        PIECE_UNKNOWN,
        /** {@code told} pieces, {@code name}, are cut from a board that is not opened. */
        NOT_OPENED,
        /** A length that is lost or left is negative or no number. */
        NEGATIVE,
        /** {@code told} mm are cut from {@code most} mm. */
        CUT_OVER,
        /** {@code told} mm are left where at most {@code most} mm can be. */
        LEFT_OVER,
        /** {@code told} mm are lost of {@code most} mm that were left. */
        LOST_OVER
    }

    /**
     * One contradiction.
     *
     * @param of   id of the board, or of the piece or stock where that is what is wrong
     * @param name another name that it speaks of; empty where there is none
     * @param told the reported count, or length in mm; 0 where there is none
     * @param most the largest count or length, in mm, that could be true
     */
    record Stop(Wrong wrong, String of, String name, double told, double most) {}

    /**
     * @param problem the whole job as it was planned: all pieces, done ones too, and all stock. Boards without a limit are
     *     those that can be bought; of limited ones, those told of in {@code sawn} are taken off what is available
     * @param sawn    every board that was opened or bought, opened or not; a bought board that is not named is not there
     * @throws IllegalArgumentException where the problem itself can never make sense
     */
    static Replan of(CuttingProblem problem, List<Sawn> sawn, Effort effort) {
        Map<String, CuttingProblem.Stock> stock = new HashMap<>();
        problem.stock().forEach(board -> stock.put(board.id(), board));
        Map<String, CuttingProblem.Demand> pieces = new HashMap<>();
        problem.pieces().forEach(piece -> pieces.put(piece.id(), piece));
        List<Stop> stops = SawnCheck.of(problem, stock, pieces, sawn);
        if (!stops.isEmpty()) return new Refused(stops);

        Map<String, Integer> done = new HashMap<>();
        for (Sawn board : sawn) board.cut().forEach(id -> done.merge(id, 1, Integer::sum));
        List<CuttingProblem.Demand> wanted = problem.counted(piece -> piece.count() - done.getOrDefault(piece.id(), 0));
        List<CuttingProblem.Stock> all = there(problem, stock, pieces, sawn);
        CuttingResult without = CuttingSolver.solve(problem.with(all, wanted), effort);
        problem.stock().stream().filter(board -> board.available().isEmpty()).forEach(all::add);
        CuttingProblem rest = problem.with(all, wanted);
        CuttingResult result = without.unplaced().isEmpty() ? cheaper(without, rest, effort) : CuttingSolver.solve(rest, effort);
        int wantedCount = wanted.stream().mapToInt(CuttingProblem.Demand::count).sum();
        int lacking = without.unplaced().stream().mapToInt(CuttingResult.Unplaced::count).sum();
        return new Planned(
                rest,
                result,
                done.values().stream().mapToInt(Integer::intValue).sum(),
                neededMm(problem, wanted),
                thereMm(rest),
                wantedCount - lacking,
                without.unplaced(),
                bought(problem, result));
    }

    /** What is left of the boards told of, and the limited ones that nothing was told of. */
    private static List<CuttingProblem.Stock> there(
            CuttingProblem problem, Map<String, CuttingProblem.Stock> stock, Map<String, CuttingProblem.Demand> pieces, List<Sawn> sawn) {
        List<CuttingProblem.Stock> there = new ArrayList<>();
        Map<String, Integer> told = new HashMap<>();
        for (Sawn board : sawn) {
            told.merge(board.stock(), 1, Integer::sum);
            CuttingProblem.Stock was = stock.get(board.stock());
            double left = SawnCheck.leftMm(problem, was, pieces, board);
            if (left > 0) there.add(left(board, was, left));
        }
        for (var board : problem.stock()) {
            if (board.available().isEmpty()) continue;
            int left = board.available().getAsInt() - told.getOrDefault(board.id(), 0);
            if (left > 0) there.add(board.with(left));
        }
        return there;
    }

    /** How many of each board without a limit a plan takes. */
    private static Map<String, Integer> bought(CuttingProblem problem, CuttingResult result) {
        Map<String, Integer> buy = new LinkedHashMap<>();
        for (var board : problem.stock()) {
            if (board.available().isPresent()) continue;
            int count = result.plan().stream()
                    .filter(line -> line.stock().equals(board.id()))
                    .mapToInt(CuttingResult.BoardLine::count)
                    .sum();
            if (count > 0) buy.put(board.id(), count);
        }
        return buy;
    }

    /** Where all is there anyway, nothing is paid; buying may still be cheaper than the worth of boards on hand. */
    private static CuttingResult cheaper(CuttingResult without, CuttingProblem rest, Effort effort) {
        CuttingResult with = CuttingSolver.solve(rest, effort);
        boolean less = with.unplaced().isEmpty() && with.cost().compareTo(without.cost()) < 0;
        return less || without.cost().compareTo(with.cost()) == 0 ? with : without;
    }

    /** Bought and paid for, or on hand: it costs nothing more; only a whole board on hand is still worth keeping. */
    private static CuttingProblem.Stock left(Sawn board, CuttingProblem.Stock was, double leftMm) {
        return new CuttingProblem.Stock(
                board.board(),
                leftMm,
                BigDecimal.ZERO,
                OptionalInt.of(1),
                was.goodFaces(),
                board.opened() ? BigDecimal.ZERO : was.salvage(),
                board.opened() || was.sawnEnd());
    }

    private static double neededMm(CuttingProblem problem, List<CuttingProblem.Demand> wanted) {
        double sum = 0;
        for (var piece : wanted) sum += piece.count() * (piece.lengthMm() + problem.kerfMm());
        return SawBoard.thousandth(sum);
    }

    private static double thereMm(CuttingProblem rest) {
        double shortest = rest.pieces().stream()
                .mapToDouble(CuttingProblem.Demand::lengthMm)
                .min()
                .orElse(Double.POSITIVE_INFINITY);
        double sum = 0;
        for (var board : rest.stock()) {
            if (board.available().isEmpty()) continue;
            double usable = board.lengthMm() - (board.sawnEnd() ? 1 : 2) * rest.endTrimMm();
            if (usable >= shortest) sum += board.available().getAsInt() * (usable + rest.kerfMm());
        }
        return SawBoard.thousandth(sum);
    }
}
