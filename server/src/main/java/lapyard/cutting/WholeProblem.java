package lapyard.cutting;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import lapyard.working.CommonMeasure;

/**
 * A cutting problem in whole numbers. An item weighs its length plus one kerf and a board holds its usable length
 * plus one kerf, so that kerf falls between pieces only; all weights are divided by their common divisor. Equal
 * pieces are one item and equal boards one stock, whatever they are called. Boards that can hold nothing, or that
 * a longer and no dearer unlimited board replaces, are left out.
 */
final class WholeProblem {
    static final int UNLIMITED = Integer.MAX_VALUE;
    /** What a piece left over costs in {@link #scarce}. */
    private static final long UNCUT = 1 << 20;

    /** Items: those that any face serves first, then those that need more good faces; each part longest first. */
    final int[] weight;

    final int[] demand;
    /** Good faces that an item needs; 0 where every board has as many. */
    final int[] itemFaces;
    /** The demands behind an item, in the order of the problem. */
    final List<List<CuttingProblem.Demand>> itemDemands;

    final int[] capacity;
    final int[] supply;
    /** Good faces of a board; more than any item needs are not told apart, but one from none always is. */
    final int[] stockFaces;
    /** Whole units of {@link #priceUnit}. */
    final long[] price;
    /** {@code price x boardWeight + 1}: money first, boards second. */
    final long[] cost;
    /** The boards behind a stock, in the order of the problem. */
    final List<List<CuttingProblem.Stock>> stockBoards;

    final BigDecimal priceUnit;
    final long boardWeight;
    /** No best plan takes more boards than this. */
    final long mostBoards;
    /** What leaving a piece uncut costs: more than any board it could displace. */
    final long[] uncutCost;
    /** Micrometres a weight unit stands for. */
    final long micronsAUnit;

    /** Worked out when it is first asked for. */
    private boolean[] buyable;

    private record Kind(long length, int faces) {}

    private record BoardKind(int capacity, BigDecimal price, boolean limited, int faces) {}

    /**
     * @param pieces    demands that some board can hold
     * @param microns   a length as whole micrometres, by demand
     * @param kerf      micrometres
     */
    WholeProblem(
            List<CuttingProblem.Demand> pieces,
            Map<CuttingProblem.Demand, Long> microns,
            List<CuttingProblem.Stock> boards,
            Map<CuttingProblem.Stock, Long> usable,
            long kerf) {
        int everyBoard = boards.stream().mapToInt(CuttingProblem.Stock::goodFaces).min().orElse(0);
        int asked = Math.max(1, pieces.stream().mapToInt(CuttingProblem.Demand::goodFaces).max().orElse(0));
        Map<Kind, List<CuttingProblem.Demand>> kinds =
                new TreeMap<>(Comparator.comparingInt(Kind::faces).thenComparing(Comparator.comparingLong(Kind::length).reversed()));
        for (var piece : pieces) {
            Kind kind = new Kind(microns.get(piece) + kerf, piece.goodFaces() <= everyBoard ? 0 : piece.goodFaces());
            kinds.computeIfAbsent(kind, k -> new ArrayList<>()).add(piece);
        }
        micronsAUnit = CommonMeasure.of(kinds.keySet().stream().mapToLong(Kind::length));
        weight = kinds.keySet().stream().mapToInt(kind -> Math.toIntExact(kind.length() / micronsAUnit)).toArray();
        itemFaces = kinds.keySet().stream().mapToInt(Kind::faces).toArray();
        itemDemands = kinds.values().stream().map(List::copyOf).toList();
        demand = itemDemands.stream()
                .mapToInt(same -> Math.toIntExact(same.stream().mapToLong(CuttingProblem.Demand::count).sum()))
                .toArray();
        mostBoards = Math.max(1, IntStream.of(demand).asLongStream().sum());

        Map<BoardKind, List<CuttingProblem.Stock>> kept = boardKinds(boards, usable, kerf, asked);
        capacity = kept.keySet().stream().mapToInt(BoardKind::capacity).toArray();
        stockFaces = kept.keySet().stream().mapToInt(BoardKind::faces).toArray();
        supply = kept.entrySet().stream().mapToInt(kind -> kind.getKey().limited() ? onHand(kind.getValue()) : UNLIMITED).toArray();
        stockBoards = kept.entrySet().stream().map(kind -> kind.getKey().limited() ? List.copyOf(kind.getValue()) : List.of(kind.getValue().get(0))).toList();
        priceUnit = CommonMeasure.of(kept.keySet().stream().map(BoardKind::price).toList());
        price = kept.keySet().stream().mapToLong(kind -> kind.price().divideToIntegralValue(priceUnit).longValueExact()).toArray();
        boardWeight = boardWeight();
        cost = LongStream.of(price).map(each -> boardWeight == 0 ? 1 : boardWeight == 1 ? each : each * boardWeight + 1).toArray();
        uncutCost = uncutCost();
    }

    private static int onHand(List<CuttingProblem.Stock> same) {
        return (int) Math.min(same.stream().mapToLong(board -> board.available().orElse(0)).sum(), UNLIMITED - 1);
    }

    /** Patterns that hold something and that no other replaces, the largest first, each with its boards. */
    private Map<BoardKind, List<CuttingProblem.Stock>> boardKinds(
            List<CuttingProblem.Stock> boards, Map<CuttingProblem.Stock, Long> usable, long kerf, int asked) {
        Map<BoardKind, List<CuttingProblem.Stock>> kinds = new TreeMap<>(Comparator.comparingInt(BoardKind::capacity)
                .reversed()
                .thenComparing(BoardKind::price)
                .thenComparing(BoardKind::limited)
                .thenComparingInt(BoardKind::faces));
        for (var board : boards) {
            int capacityHere = (int) Math.min(Integer.MAX_VALUE, (usable.get(board) + kerf) / micronsAUnit);
            BoardKind kind = new BoardKind(capacityHere, board.worth().stripTrailingZeros(), board.available().isPresent(), Math.min(asked, board.goodFaces()));
            kinds.computeIfAbsent(kind, k -> new ArrayList<>()).add(board);
        }
        List<BoardKind> all = List.copyOf(kinds.keySet());
        kinds.keySet().removeIf(kind -> !holdsSomething(kind) || all.stream().anyMatch(o -> replaces(o, kind)));
        return kinds;
    }

    private long[] uncutCost() {
        long dearest = Math.max(1, LongStream.of(cost).max().orElse(1));
        long[] uncut = new long[items()];
        for (int i = 0; i < uncut.length; i++) {
            uncut[i] = Long.MAX_VALUE;
            for (int j = 0; j < stocks(); j++) if (supply[j] == UNLIMITED && holds(j, i)) uncut[i] = Math.min(uncut[i], cost[j]);
            // Pieces that bought boards can hold are never left uncut, so their figure is only a cap on what they are worth.
            if (uncut[i] == Long.MAX_VALUE) {
                double share = 1 + weight[i] / (double) Math.max(1, capacity[0]);
                uncut[i] = (long) (dearest * Math.min(1000, mostBoards + 1) * share);
            }
        }
        return uncut;
    }

    /** The same saw and stock for other items and boards. */
    private WholeProblem(
            WholeProblem other, int[] weight, int[] demand, int[] itemFaces, long[] uncutCost, int[] supply, long mostBoards, long[] price,
            long[] cost, long boardWeight) {
        this.weight = weight;
        this.demand = demand;
        this.itemFaces = itemFaces;
        this.uncutCost = uncutCost;
        this.supply = supply;
        this.mostBoards = mostBoards;
        itemDemands = other.itemDemands;
        capacity = other.capacity;
        stockFaces = other.stockFaces;
        this.price = price;
        this.cost = cost;
        this.boardWeight = boardWeight;
        stockBoards = other.stockBoards;
        priceUnit = other.priceUnit;
        micronsAUnit = other.micronsAUnit;
    }

    /** Where an item of this weight stands among those that any face serves. */
    int place(int extra) {
        int at = 0;
        while (at < items() && itemFaces[at] == 0 && weight[at] > extra) at++;
        return at;
    }

    /** The same job with a rest of this weight to be left on one of the boards, as an item at {@link #place}. */
    WholeProblem leaving(int extra, int[] boards) {
        int at = place(extra);
        return new WholeProblem(
                this, with(weight, at, extra), with(demand, at, 1), with(itemFaces, at, 0), uncutWith(extra, at, boards), boards,
                mostBoards + 1, price, cost, boardWeight);
    }

    /** The same boards for other amounts of the same items; limits that held for the larger demand still hold. */
    WholeProblem withDemand(int[] smallerDemand) {
        return new WholeProblem(this, weight, smallerDemand.clone(), itemFaces, uncutCost, supply, mostBoards, price, cost, boardWeight);
    }

    /**
     * The question how few pieces are left over: pieces and boards that can be bought are left out, and a piece left over costs
     * more than all boards together, a longer one a little more than a shorter.
     */
    WholeProblem scarce() {
        int[] wanted = demand.clone();
        for (int i = 0; i < wanted.length; i++) if (buyable(i)) wanted[i] = 0;
        int[] onHand = IntStream.of(supply).map(there -> there == UNLIMITED ? 0 : there).toArray();
        long each = Math.max(UNCUT, 4 * mostBoards);
        long[] uncut = IntStream.of(weight)
                .mapToLong(one -> each + each * one / (2 * (mostBoards + 1) * Math.max(one, capacity[0])))
                .toArray();
        return counted(wanted, uncut, onHand);
    }

    /** The question whether given boards hold all pieces: none can be bought, none costs anything, a piece left over costs by its length. */
    WholeProblem given() {
        int[] there = IntStream.of(supply).map(all -> (int) Math.min(all, mostBoards)).toArray();
        long each = Math.max(UNCUT, 4 * mostBoards);
        long[] uncut = IntStream.of(weight)
                .mapToLong(one -> each / 8 + each * one / Math.max(one, capacity[0]))
                .toArray();
        return counted(demand, uncut, there);
    }

    /** Boards cost nothing and are counted. */
    private WholeProblem counted(int[] wanted, long[] uncut, int[] there) {
        return new WholeProblem(
                this, weight, wanted, itemFaces, uncut, there, mostBoards, new long[stocks()], LongStream.of(cost).map(all -> 1).toArray(), 0);
    }

    WholeProblem withSupply(int[] boards) {
        return new WholeProblem(this, weight, demand, itemFaces, uncutCost, boards, mostBoards, price, cost, boardWeight);
    }

    /** How many pieces a plan of {@link #scarce} leaves over at least when it costs at least this much. */
    long uncutAtLeast(long costAtLeast) {
        long dearest = 1;
        for (long each : uncutCost) dearest = Math.max(dearest, each);
        return Math.max(0, -Math.floorDiv(-(costAtLeast - mostBoards), dearest));
    }

    private static int[] with(int[] all, int at, int one) {
        int[] more = new int[all.length + 1];
        System.arraycopy(all, 0, more, 0, at);
        more[at] = one;
        System.arraycopy(all, at, more, at + 1, all.length - at);
        return more;
    }

    /** Uncut, the rest costs what the cheapest board costs that can be bought for it, else what the dearest item does. */
    private long[] uncutWith(int extra, int at, int[] boards) {
        long buyable = Long.MAX_VALUE;
        for (int j = 0; j < stocks(); j++) {
            if (boards[j] == UNLIMITED && capacity[j] >= extra) buyable = Math.min(buyable, cost[j]);
        }
        long most = 1;
        for (long each : uncutCost) most = Math.max(most, each);
        long[] more = new long[uncutCost.length + 1];
        System.arraycopy(uncutCost, 0, more, 0, at);
        more[at] = buyable == Long.MAX_VALUE ? most : buyable;
        System.arraycopy(uncutCost, at, more, at + 1, uncutCost.length - at);
        return more;
    }

    int items() {
        return weight.length;
    }

    int stocks() {
        return capacity.length;
    }

    boolean holds(int stock, int item) {
        return weight[item] <= capacity[stock] && stockFaces[stock] >= itemFaces[item];
    }

    /** Whether boards for this item can be bought without limit. */
    boolean buyable(int item) {
        if (buyable == null) {
            boolean[] all = new boolean[items()];
            for (int i = 0; i < all.length; i++) all[i] = canBeBought(i);
            buyable = all;
        }
        return buyable[item];
    }

    private boolean canBeBought(int item) {
        for (int j = 0; j < stocks(); j++) if (supply[j] == UNLIMITED && holds(j, item)) return true;
        return false;
    }

    BigDecimal money(long units) {
        return priceUnit.multiply(BigDecimal.valueOf(units));
    }

    /** Price units that cost no less than this money. */
    long unitsIn(BigDecimal money) {
        return money.divide(priceUnit, 0, RoundingMode.CEILING).longValueExact();
    }

    /** The least money that a plan can cost when {@code money x boardWeight + boards} is at least {@code costAtLeast}. */
    long moneyAtLeast(long costAtLeast) {
        if (boardWeight == 0) return 0;
        if (boardWeight == 1) return Math.max(0, costAtLeast);
        return Math.max(0, -Math.floorDiv(-(costAtLeast - mostBoards), boardWeight));
    }

    private boolean holdsSomething(BoardKind kind) {
        for (int i = 0; i < items(); i++) {
            if (weight[i] <= kind.capacity() && kind.faces() >= itemFaces[i]) return true;
        }
        return false;
    }

    private static boolean replaces(BoardKind other, BoardKind kind) {
        if (other.limited() || other.equals(kind)) return false;
        boolean atLeast = other.capacity() >= kind.capacity()
                && other.price().compareTo(kind.price()) <= 0
                && other.faces() >= kind.faces();
        boolean same = other.capacity() == kind.capacity()
                && other.price().compareTo(kind.price()) == 0
                && other.faces() == kind.faces();
        return atLeast && (!same || kind.limited());
    }

    /** 1 where money alone counts the boards, 0 where all boards are free; else large enough to rank money first. */
    private long boardWeight() {
        long dearest = 0;
        boolean equal = true;
        for (long p : price) {
            dearest = Math.max(dearest, p);
            equal &= p == price[0];
        }
        if (dearest == 0) return 0;
        if (equal) return 1;
        long most = Math.max(8 * mostBoards, Math.min(256 * mostBoards, (1L << 26) / dearest));
        return Math.max(2, Math.min(most, (1L << 40) / dearest));
    }
}
