package lapyard.cutting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.function.ToIntFunction;

/**
 * One board of a plan with the places of its cuts. All places are measured along the board from the end that is
 * trimmed first, in millimetres.
 *
 * @param number   from 1 on, in the order in which the boards are opened
 * @param stock    id of the stock length or of the board on hand
 * @param lengthMm of the whole board
 * @param trimMm   cut from the first end; nothing where the board is not cut
 * @param cuts     in the order of cutting: earlier stages first, then long before short
 * @param restMm   what is left behind the last cut with the far end's trim still on it; 0 where that cut runs off the end
 */
public record SawBoard(int number, String stock, double lengthMm, double trimMm, List<Cut> cuts, double restMm) {
    public SawBoard {
        cuts = List.copyOf(cuts);
    }

    /** The piece {@code mark} lies from {@code fromMm} to {@code toMm}; the saw takes its kerf beyond {@code toMm}. */
    public record Cut(String mark, double lengthMm, int stage, double fromMm, double toMm) {}

    public int openedIn() {
        return cuts.get(0).stage();
    }

    /** The stages in which this board is cut, first one first. */
    public List<Integer> stages() {
        return cuts.stream().map(Cut::stage).distinct().toList();
    }

    public List<Cut> cutsIn(int stage) {
        return cuts.stream().filter(cut -> cut.stage() == stage).toList();
    }

    /** Whether an end is trimmed before this stage's first piece: the board's first end, or that of an offcut trimmed again. */
    public boolean trimmedIn(int stage, double kerfMm) {
        double from = 0;
        for (Cut cut : cuts) {
            if (cut.stage() == stage) return openedIn() == stage ? trimMm > 0 : cut.fromMm() > from + kerfMm + 1e-6;
            from = cut.toMm();
        }
        return false;
    }

    /** What is left of the board when a stage's cuts are done, the far end's trim still on it. */
    public double leftAfterMm(int stage, double kerfMm) {
        double from = trimMm;
        for (Cut cut : cuts) {
            if (cut.stage() <= stage) {
                from = cut.toMm() + kerfMm;
            }
        }
        return Math.max(0, thousandth(lengthMm - from));
    }

    /**
     * Boards in the order in which they are opened: by the stage of their first cut, then by their cuts, long before
     * short, so that a batch opens its boards in the order of their numbers.
     *
     * @param problem gives stock lengths, kerf and end trim
     * @param plan    as solved, pieces under any names
     * @param stageOf the stage of a piece by its name in the plan
     * @throws IllegalArgumentException where a line names a stock that the problem does not have, or cuts more than
     *     the board holds, naming both
     */
    public static List<SawBoard> of(
            CuttingProblem problem, List<CuttingResult.BoardLine> plan, ToIntFunction<String> stageOf) {
        Map<String, CuttingProblem.Stock> stocks = new HashMap<>();
        problem.stock().forEach(stock -> stocks.put(stock.id(), stock));
        List<SawBoard> boards = new ArrayList<>();
        for (CuttingResult.BoardLine line : plan) {
            CuttingProblem.Stock stock = stocks.get(line.stock());
            if (stock == null) {
                throw new IllegalArgumentException("the plan cuts a board " + line.stock() + " that is not in the stock");
            }
            SawBoard board = laidOut(problem, line, stock, stageOf);
            for (int i = 0; i < line.count(); i++) {
                boards.add(board);
            }
        }
        boards.sort(SawBoard::byOpening);
        List<SawBoard> numbered = new ArrayList<>();
        for (SawBoard board : boards) {
            numbered.add(new SawBoard(
                    numbered.size() + 1, board.stock, board.lengthMm, board.trimMm, board.cuts, board.restMm));
        }
        return numbered;
    }

    /** The boards of a problem whose pieces keep the ids of their demands. */
    public static List<SawBoard> of(CuttingProblem problem, List<CuttingResult.BoardLine> plan) {
        Map<String, Integer> stages = new HashMap<>();
        problem.pieces().forEach(piece -> stages.put(piece.id(), piece.stage()));
        return of(problem, plan, id -> stages.getOrDefault(id, 1));
    }

    private static SawBoard laidOut(
            CuttingProblem problem, CuttingResult.BoardLine line, CuttingProblem.Stock stock, ToIntFunction<String> stageOf) {
        record Wanted(String mark, double lengthMm, int stage) {}
        double length = stock.lengthMm();
        double trim = stock.sawnEnd() ? 0 : problem.endTrimMm();
        List<Wanted> wanted = new ArrayList<>();
        for (int i = 0; i < line.pieces().size(); i++) {
            String mark = line.pieces().get(i);
            wanted.add(new Wanted(mark, line.lengthsMm().get(i), stageOf.applyAsInt(mark)));
        }
        wanted.sort(Comparator.comparingInt(Wanted::stage)
                .thenComparing(Comparator.comparingDouble(Wanted::lengthMm).reversed()));
        List<Cut> cuts = new ArrayList<>();
        double from = trim;
        int stage = wanted.isEmpty() ? 0 : wanted.get(0).stage();
        for (Wanted piece : wanted) {
            if (piece.stage() != stage) {
                from = thousandth(from + problem.retrimMm());
                stage = piece.stage();
            }
            double to = thousandth(from + piece.lengthMm());
            cuts.add(new Cut(piece.mark(), piece.lengthMm(), piece.stage(), from, to));
            from = thousandth(to + problem.kerfMm());
        }
        double end = cuts.isEmpty() ? 0 : cuts.get(cuts.size() - 1).toMm();
        if (end > length - problem.endTrimMm() + 1e-6) {
            throw new IllegalArgumentException("board " + line.stock() + " of " + length + " mm is cut to " + end
                    + " mm and has " + problem.endTrimMm() + " mm to trim");
        }
        return new SawBoard(0, line.stock(), length, trim, cuts, Math.max(0, thousandth(length - from)));
    }

    private static int byOpening(SawBoard a, SawBoard b) {
        for (int i = 0; i < Math.min(a.cuts.size(), b.cuts.size()); i++) {
            Cut one = a.cuts.get(i);
            Cut other = b.cuts.get(i);
            int order = one.stage() != other.stage()
                    ? Integer.compare(one.stage(), other.stage())
                    : Double.compare(other.lengthMm(), one.lengthMm());
            if (order != 0) {
                return order;
            }
        }
        return Integer.compare(b.cuts.size(), a.cuts.size());
    }

    /** Lengths are exact to a thousandth; sums of them stay so. */
    static double thousandth(double mm) {
        return Math.rint(mm * 1000) / 1000;
    }

    /** Where to have a board cut before it is carried. */
    public record FirstCut(int board, List<Double> atMm, OptionalInt tooLongPiece) {
        public FirstCut {
            atMm = List.copyOf(atMm);
        }
    }

    /**
     * Cuts to ask of the merchant so that no part of a board is longer than what can be carried in. Each lies where a
     * piece ends, so the plan stays as it is: the merchant's saw takes the kerf that ours would have taken.
     *
     * @param longestMm the longest part that passes or that the vehicle takes, above 0
     * @return the boards that are longer, each with as few cuts as do; {@code tooLongPiece} is the number of the first
     *     cut whose piece is itself too long to be carried, counted from 1
     */
    public static List<FirstCut> firstCuts(List<SawBoard> boards, double longestMm, double kerfMm) {
        if (!(longestMm > 0)) {
            throw new IllegalArgumentException("the longest part to carry must be above 0 mm, was " + longestMm);
        }
        List<FirstCut> first = new ArrayList<>();
        for (SawBoard board : boards) {
            if (board.lengthMm > longestMm) {
                first.add(board.firstCut(longestMm, kerfMm));
            }
        }
        return first;
    }

    private FirstCut firstCut(double longestMm, double kerfMm) {
        List<Double> at = new ArrayList<>();
        OptionalInt tooLong = OptionalInt.empty();
        double from = 0;
        for (int i = 0; i < cuts.size(); i++) {
            double end = i + 1 < cuts.size() ? cuts.get(i + 1).toMm() : lengthMm;
            double to = cuts.get(i).toMm();
            if (to - from > longestMm && tooLong.isEmpty()) {
                tooLong = OptionalInt.of(i + 1);
            }
            if (end - from > longestMm && to < lengthMm) {
                at.add(to);
                from = to + kerfMm;
            }
        }
        return new FirstCut(number, at, tooLong);
    }
}
