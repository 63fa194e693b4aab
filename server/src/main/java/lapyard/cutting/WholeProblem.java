package lapyard.cutting;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

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
        Map<Kind, List<CuttingProblem.Demand>> kinds = new LinkedHashMap<>();
        for (var piece : pieces) {
            int faces = piece.goodFaces() <= everyBoard ? 0 : piece.goodFaces();
            Kind kind = new Kind(microns.get(piece) + kerf, faces);
            kinds.computeIfAbsent(kind, k -> new ArrayList<>()).add(piece);
        }
        long gcd = 0;
        for (Kind kind : kinds.keySet()) gcd = gcd(gcd, kind.length());
        micronsAUnit = Math.max(1, gcd);
        List<Kind> order = new ArrayList<>(kinds.keySet());
        order.sort(Comparator.comparingInt(Kind::faces).thenComparing(Comparator.comparingLong(Kind::length).reversed()));
        int n = order.size();
        weight = new int[n];
        demand = new int[n];
        itemFaces = new int[n];
        itemDemands = new ArrayList<>();
        long total = 0;
        for (int i = 0; i < n; i++) {
            weight[i] = Math.toIntExact(order.get(i).length() / micronsAUnit);
            itemFaces[i] = order.get(i).faces();
            List<CuttingProblem.Demand> demands = kinds.get(order.get(i));
            long sum = demands.stream().mapToLong(CuttingProblem.Demand::count).sum();
            demand[i] = Math.toIntExact(sum);
            total += sum;
            itemDemands.add(List.copyOf(demands));
        }

        Map<BoardKind, List<CuttingProblem.Stock>> boardKinds = new LinkedHashMap<>();
        for (var board : boards) {
            int capacityHere = (int) Math.min(Integer.MAX_VALUE, (usable.get(board) + kerf) / micronsAUnit);
            BoardKind kind = new BoardKind(
                    capacityHere,
                    board.worth().stripTrailingZeros(),
                    board.available().isPresent(),
                    Math.min(asked, board.goodFaces()));
            boardKinds.computeIfAbsent(kind, k -> new ArrayList<>()).add(board);
        }
        List<BoardKind> kept = new ArrayList<>();
        for (BoardKind kind : boardKinds.keySet()) {
            if (holdsSomething(kind) && boardKinds.keySet().stream().noneMatch(o -> replaces(o, kind))) kept.add(kind);
        }
        kept.sort(Comparator.comparingInt(BoardKind::capacity)
                .reversed()
                .thenComparing(BoardKind::price)
                .thenComparing(BoardKind::limited)
                .thenComparingInt(BoardKind::faces));
        int k = kept.size();
        capacity = new int[k];
        supply = new int[k];
        stockFaces = new int[k];
        price = new long[k];
        cost = new long[k];
        stockBoards = new ArrayList<>();
        int scale = 0;
        for (BoardKind kind : kept) scale = Math.max(scale, kind.price().scale());
        long priceGcd = 0;
        for (int j = 0; j < k; j++) {
            BoardKind kind = kept.get(j);
            capacity[j] = kind.capacity();
            stockFaces[j] = kind.faces();
            List<CuttingProblem.Stock> same = boardKinds.get(kind);
            long there = same.stream().mapToLong(b -> b.available().orElse(0)).sum();
            supply[j] = kind.limited() ? (int) Math.min(there, UNLIMITED - 1) : UNLIMITED;
            price[j] = kind.price().setScale(scale, RoundingMode.UNNECESSARY).unscaledValue().longValueExact();
            priceGcd = gcd(priceGcd, price[j]);
            stockBoards.add(kind.limited() ? List.copyOf(same) : List.of(same.get(0)));
        }
        if (priceGcd == 0) priceGcd = 1;
        for (int j = 0; j < k; j++) price[j] /= priceGcd;
        priceUnit = new BigDecimal(BigInteger.valueOf(priceGcd), scale);
        mostBoards = Math.max(1, total);
        boardWeight = boardWeight();
        long dearest = 1;
        for (int j = 0; j < k; j++) {
            cost[j] = boardWeight == 0 ? 1 : boardWeight == 1 ? price[j] : price[j] * boardWeight + 1;
            dearest = Math.max(dearest, cost[j]);
        }
        uncutCost = new long[n];
        for (int i = 0; i < n; i++) {
            uncutCost[i] = Long.MAX_VALUE;
            for (int j = 0; j < k; j++) {
                if (supply[j] == UNLIMITED && holds(j, i)) uncutCost[i] = Math.min(uncutCost[i], cost[j]);
            }
            // Pieces that bought boards can hold are never left uncut, so their figure is only a cap on what they are worth.
            if (uncutCost[i] == Long.MAX_VALUE) {
                double share = 1 + weight[i] / (double) Math.max(1, capacity[0]);
                uncutCost[i] = (long) (dearest * Math.min(1000, total + 1) * share);
            }
        }
    }

    /** The same saw and stock for other items and boards. */
    private WholeProblem(
            WholeProblem other, int[] weight, int[] demand, int[] itemFaces, long[] uncutCost, int[] supply, long mostBoards) {
        this.weight = weight;
        this.demand = demand;
        this.itemFaces = itemFaces;
        this.uncutCost = uncutCost;
        this.supply = supply;
        this.mostBoards = mostBoards;
        itemDemands = other.itemDemands;
        capacity = other.capacity;
        stockFaces = other.stockFaces;
        price = other.price;
        cost = other.cost;
        stockBoards = other.stockBoards;
        priceUnit = other.priceUnit;
        boardWeight = other.boardWeight;
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
                mostBoards + 1);
    }

    /** The same boards for other amounts of the same items; limits that held for the larger demand still hold. */
    WholeProblem withDemand(int[] smallerDemand) {
        return new WholeProblem(this, weight, smallerDemand.clone(), itemFaces, uncutCost, supply, mostBoards);
    }

    /**
     * The question how few pieces are left over: pieces and boards that can be bought are left out, and a piece left over costs
     * more than all boards together, a longer one a little more than a shorter.
     */
    WholeProblem scarce() {
        return new WholeProblem(this, UNCUT);
    }

    /** How many pieces a plan of {@link #scarce} leaves over at least when it costs at least this much. */
    long uncutAtLeast(long costAtLeast) {
        long dearest = 1;
        for (long each : uncutCost) dearest = Math.max(dearest, each);
        return Math.max(0, -Math.floorDiv(-(costAtLeast - mostBoards), dearest));
    }

    private WholeProblem(WholeProblem other, long uncut) {
        int n = other.items();
        weight = other.weight;
        itemFaces = other.itemFaces;
        itemDemands = other.itemDemands;
        capacity = other.capacity;
        stockFaces = other.stockFaces;
        price = new long[other.stocks()];
        stockBoards = other.stockBoards;
        priceUnit = other.priceUnit;
        boardWeight = 0;
        mostBoards = other.mostBoards;
        micronsAUnit = other.micronsAUnit;
        demand = other.demand.clone();
        for (int i = 0; i < n; i++) if (other.buyable(i)) demand[i] = 0;
        supply = other.supply.clone();
        cost = new long[other.stocks()];
        for (int k = 0; k < supply.length; k++) {
            if (supply[k] == UNLIMITED) supply[k] = 0;
            cost[k] = 1;
        }
        uncutCost = new long[n];
        long each = Math.max(uncut, 4 * mostBoards);
        for (int i = 0; i < n; i++) uncutCost[i] = each + each * weight[i] / (2 * (mostBoards + 1) * Math.max(weight[i], capacity[0]));
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
        for (int j = 0; j < stocks(); j++) if (supply[j] == UNLIMITED && holds(j, item)) return true;
        return false;
    }

    BigDecimal money(long units) {
        return priceUnit.multiply(BigDecimal.valueOf(units));
    }

    /** The least money that a plan can cost when {@code money x boardWeight + boards} is at least {@code costAtLeast}. */
    long moneyAtLeast(long costAtLeast) {
        if (boardWeight == 0) return 0;
        if (boardWeight == 1) return Math.max(0, costAtLeast);
        return Math.max(0, -Math.floorDiv(-(costAtLeast - mostBoards), boardWeight));
    }

    /** The fewest boards that a plan of this money can take when {@code money x boardWeight + boards} is at least {@code costAtLeast}. */
    long boardsAtLeast(long costAtLeast, long money) {
        if (boardWeight == 0) return costAtLeast;
        return boardWeight == 1 ? money : costAtLeast - money * boardWeight;
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

    private static long gcd(long a, long b) {
        while (b != 0) {
            long t = a % b;
            a = b;
            b = t;
        }
        return Math.abs(a);
    }
}
