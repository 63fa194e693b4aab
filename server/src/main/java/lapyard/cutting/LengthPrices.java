package lapyard.cutting;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.LongStream;
import lapyard.working.CommonMeasure;
import lapyard.working.Effort;
import lapyard.working.Progress;
import lapyard.working.SearchBudget;

/**
 * Prices of lengths at which no board holds more than it costs, so that no plan for any pieces costs less than these fetch together.
 * They come from the fractional plan of one problem. A length without a price gets the highest that no board forbids, beside all
 * lengths that have one: so one problem's prices bound many others with the same saw and boards. Not safe for many threads.
 *
 * @see "Farley, Operations Research 38 (1990) 922-923, for prices that are brought down until no board is worth more than it costs"
 */
public final class LengthPrices {
    /** What is finer than so many parts of the longest board and than a millimetre is counted down, which is never on the wrong side. */
    private static final int MOST_CELLS = 8192;

    private static final long MILLIMETRE = 1000;
    /** Bits of a price. */
    private static final int BITS = 36;

    /** Bits of a board's cost up to which sums over all pieces stay exact. */
    private static final int MOST_BITS = 38;
    /** A piece that only boards on hand hold is worth at most so many of the dearest board. */
    private static final int DEAREST = 4;

    private static final int ROUNDS = 200;
    private static final int FACE_BITS = 2;

    /**
     * @param cells    what it holds
     * @param cost     scaled
     * @param there    how many there are, or {@link WholeProblem#UNLIMITED}
     * @param level    number of its kind of face
     */
    private record Board(int cells, long cost, int there, int level) {}

    /** So many pieces of a length at one price. */
    private record Batch(int count, long price) {}

    private final long kerf;
    private final long cellMicrons;
    private final int scale;
    private final int shift;
    private final BigInteger coin;
    /** Kinds of faces that boards have, rising. */
    private final int[] levels;
    private final List<Board> boards = new ArrayList<>();
    /** By {@link #length}. */
    private final Map<Long, List<Batch>> prices = new HashMap<>();
    /** The most that priced pieces in so many cells are worth, by kind of face. */
    private final long[][] worth;
    /** What each board may hold at most. */
    private final long[] allowed;
    /** The fraction that brings all prices down, and what boards on hand are worth beyond their cost, times {@link #below}. */
    private BigInteger above = BigInteger.ONE;

    private BigInteger below = BigInteger.ONE;
    private BigInteger beyond = BigInteger.ZERO;

    /**
     * @param effort for the fractional plan
     * @return empty where some piece cannot be cut, all boards are free, or one costs too much to count with
     */
    public static Optional<LengthPrices> of(CuttingProblem problem, Effort effort) {
        Intake intake = new Intake(problem);
        if (!intake.unplaced().isEmpty() || intake.nothingToCut()) return Optional.empty();
        WholeProblem whole = intake.whole();
        if (whole.boardWeight == 0 || LongStream.of(costs(intake)).anyMatch(cost -> bits(cost) > MOST_BITS)) return Optional.empty();
        SearchBudget budget = SearchBudget.whole(effort, Progress.UNHEARD);
        Solution first = new Filling(whole, budget).best(whole.demand, whole.supply);
        Relaxation relaxation = new Relaxation(whole, budget);
        first.patterns().keySet().forEach(relaxation::add);
        relaxation.solve(Long.MAX_VALUE, ROUNDS);
        return Optional.of(new LengthPrices(problem, intake, whole, relaxation.prices()));
    }

    private LengthPrices(CuttingProblem problem, Intake intake, WholeProblem whole, double[] found) {
        kerf = intake.kerf();
        long longest = intake.boards().stream().mapToLong(intake::usable).max().orElseThrow() + kerf;
        long finest = longest / MOST_CELLS + 1;
        cellMicrons = whole.micronsAUnit >= finest && whole.micronsAUnit < MILLIMETRE ? whole.micronsAUnit : Math.max(MILLIMETRE, finest);
        scale = scale(intake);
        long[] costs = costs(intake);
        long dearest = LongStream.of(costs).max().orElseThrow();
        coin = BigInteger.valueOf(CommonMeasure.of(LongStream.of(costs)));
        shift = Math.max(0, BITS - bits(dearest));
        levels = new TreeSet<>(intake.boards().stream().map(CuttingProblem.Stock::goodFaces).toList()).stream().mapToInt(Integer::intValue).toArray();
        Map<Board, Integer> kinds = new LinkedHashMap<>();
        for (int b = 0; b < costs.length; b++) {
            CuttingProblem.Stock stock = intake.boards().get(b);
            int level = 0;
            while (levels[level] < stock.goodFaces()) level++;
            kinds.merge(new Board((int) ((intake.usable(stock) + kerf) / cellMicrons), costs[b] << shift, stock.available().isEmpty() ? WholeProblem.UNLIMITED : 1, level),
                    stock.available().orElse(1), Integer::sum);
        }
        kinds.forEach((board, there) -> boards.add(board.there() == WholeProblem.UNLIMITED ? board : new Board(board.cells(), board.cost(), there, board.level())));
        worth = new long[levels.length][boards.stream().mapToInt(Board::cells).max().orElseThrow() + 1];
        double unit = whole.priceUnit.movePointRight(scale).doubleValue() * (1L << shift) / whole.boardWeight;
        for (int i = 0; i < whole.items(); i++) {
            long microns = whole.weight[i] * whole.micronsAUnit;
            long price = microns < cellMicrons ? 0 : Math.min(DEAREST * (dearest << shift), (long) (found[i] * unit));
            add(length(microns, whole.itemFaces[i]), new Batch(whole.demand[i], price));
        }
        allowed = boards.stream().mapToLong(board -> Math.max(board.cost(), worth[board.level()][board.cells()])).toArray();
        bringDown();
    }

    private static int scale(Intake intake) {
        return intake.boards().stream().mapToInt(board -> board.worth().stripTrailingZeros().scale()).max().orElseThrow();
    }

    private static long[] costs(Intake intake) {
        int scale = scale(intake);
        return intake.boards().stream().mapToLong(board -> board.worth().setScale(scale, RoundingMode.UNNECESSARY).unscaledValue().longValueExact()).toArray();
    }

    private static int bits(long value) {
        return 64 - Long.numberOfLeadingZeros(value);
    }

    /** A length with its kerf and the good faces that its board must have, as one number. */
    private long length(long microns, int faces) {
        return microns << FACE_BITS | (faces <= levels[0] ? 0 : faces);
    }

    private static int faces(long length) {
        return (int) length & (1 << FACE_BITS) - 1;
    }

    private int cells(long length) {
        return (int) ((length >> FACE_BITS) / cellMicrons);
    }

    /** Finds what to bring the prices down by, so that no board that can be bought is worth more than it costs. */
    private void bringDown() {
        for (int k = 0; k < allowed.length; k++) {
            BigInteger cost = BigInteger.valueOf(boards.get(k).cost());
            BigInteger most = BigInteger.valueOf(allowed[k]);
            if (boards.get(k).there() == WholeProblem.UNLIMITED && cost.multiply(below).compareTo(most.multiply(above)) < 0) {
                above = cost;
                below = most;
            }
        }
        for (int k = 0; k < allowed.length; k++) {
            Board board = boards.get(k);
            if (board.there() == WholeProblem.UNLIMITED) continue;
            BigInteger more = BigInteger.valueOf(allowed[k]).multiply(above).subtract(BigInteger.valueOf(board.cost()).multiply(below));
            beyond = beyond.add(more.max(BigInteger.ZERO).multiply(BigInteger.valueOf(board.there())));
        }
    }

    /**
     * What all plans cost at least that cut all of these pieces with this saw from these boards.
     *
     * @return 0 where no board holds one of them
     */
    public BigDecimal atLeast(List<CuttingProblem.Demand> pieces) {
        // a length fetches its prices once, however many stages want it
        Map<Long, Integer> longestFirst = new TreeMap<>(Comparator.reverseOrder());
        for (CuttingProblem.Demand piece : pieces) longestFirst.merge(length(Intake.roundUp(piece.lengthMm()) + kerf, piece.goodFaces()), piece.count(), Integer::sum);
        long sum = 0;
        for (Map.Entry<Long, Integer> length : longestFirst.entrySet()) sum += fetches(length.getKey(), length.getValue());
        BigInteger scaled = BigInteger.valueOf(sum).multiply(above).subtract(beyond);
        if (scaled.signum() <= 0) return BigDecimal.ZERO;
        BigInteger whole = coin.multiply(below).shiftLeft(shift);
        return new BigDecimal(scaled.add(whole).subtract(BigInteger.ONE).divide(whole).multiply(coin), scale);
    }

    /** What so many pieces fetch. */
    private long fetches(long length, int count) {
        List<Batch> batches = prices.computeIfAbsent(length, none -> new ArrayList<>());
        long sum = 0;
        int left = count;
        for (Batch batch : batches) {
            int here = Math.min(left, batch.count());
            sum += here * batch.price();
            left -= here;
        }
        if (left == 0) return sum;
        Batch more = new Batch(left, highest(length, left));
        add(length, more);
        return sum + left * more.price();
    }

    /** The highest price of so many more pieces with which no board holds more than it may. */
    private long highest(long length, int count) {
        int cells = cells(length);
        if (cells == 0) return 0;
        long highest = Long.MAX_VALUE;
        for (int k = 0; k < allowed.length; k++) {
            Board board = boards.get(k);
            if (levels[board.level()] < faces(length)) continue;
            int most = Math.min(count, board.cells() / cells);
            for (int n = 1; n <= most; n++) highest = Math.min(highest, (allowed[k] - worth[board.level()][board.cells() - n * cells]) / n);
        }
        return highest == Long.MAX_VALUE ? 0 : highest;
    }

    private void add(long length, Batch batch) {
        prices.computeIfAbsent(length, none -> new ArrayList<>()).add(batch);
        if (batch.price() == 0) return;
        int cells = cells(length);
        for (int level = 0; level < levels.length; level++) {
            if (levels[level] < faces(length)) continue;
            long[] here = worth[level];
            int left = Math.min(batch.count(), (here.length - 1) / cells);
            for (int part = 1; left > 0; part *= 2) {
                int copies = Math.min(part, left);
                left -= copies;
                long gain = copies * batch.price();
                int step = copies * cells;
                for (int at = here.length - 1; at >= step; at--) here[at] = Math.max(here[at], here[at - step] + gain);
            }
        }
    }
}
