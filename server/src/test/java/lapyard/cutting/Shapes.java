package lapyard.cutting;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import java.util.TreeMap;

/** Seeded cutting problems in the shapes of the published research sets, and in the shape of a garden's shopping. */
public final class Shapes {
    private Shapes() {}

    /** @param optimum boards of a plan known to be best, or -1 where none is known beforehand */
    public record Case(CuttingProblem problem, int optimum) {}

    /** Falkenauer, J. Heuristics 2 (1996) 5-30: n pieces uniform in 20..100, board 150. */
    public static Case uniform(int n, long seed) {
        Random random = new Random(seed);
        int[] lengths = random.ints(n, 20, 101).toArray();
        return new Case(single("uniform-" + n + "-" + seed, 150, lengths), -1);
    }

    /** Falkenauer (1996): boards of 1000 cut exactly into three, one piece of 380..490 each; so n/3 is the optimum. */
    public static Case triplets(int n, long seed) {
        Random random = new Random(seed);
        int[] lengths = new int[n];
        for (int i = 0; i < n; i += 3) {
            int first = 380 + random.nextInt(111);
            int least = 250;
            int second = least + random.nextInt((1000 - first) / 2 - least + 1);
            lengths[i] = first;
            lengths[i + 1] = second;
            lengths[i + 2] = 1000 - first - second;
        }
        return new Case(single("triplets-" + n + "-" + seed, 1000, lengths), n / 3);
    }

    /** Schwerin and Waescher, ITOR 4 (1997) 377-389: n pieces of 150..200, board 1000. */
    public static Case narrow(int n, long seed) {
        Random random = new Random(seed);
        int[] lengths = random.ints(n, 150, 201).toArray();
        return new Case(single("narrow-" + n + "-" + seed, 1000, lengths), -1);
    }

    /** Scholl, Klein, Juergens, C&OR 24 (1997) 627-645, second set: about boards/pieces = average, spread delta. */
    public static Case spread(int n, int piecesABoard, double delta, long seed) {
        Random random = new Random(seed);
        double mean = 1000.0 / piecesABoard;
        int low = (int) Math.ceil(mean * (1 - delta));
        int high = (int) Math.floor(mean * (1 + delta));
        int[] lengths = random.ints(n, low, high + 1).toArray();
        return new Case(single("spread-" + n + "-" + piecesABoard + "-" + delta + "-" + seed, 1000, lengths), -1);
    }

    /** Scholl, Klein, Juergens (1997), third set: 200 pieces of 20000..35000, board 100000. */
    public static Case fine(long seed) {
        Random random = new Random(seed);
        int[] lengths = random.ints(200, 20000, 35001).toArray();
        return new Case(single("fine-" + seed, 100000, lengths), -1);
    }

    /** Schoenfield's 28 hard ones have this look: n pieces of 1..80 % of a board of 1000, mostly two or three a board. */
    public static Case hard(int n, long seed) {
        Random random = new Random(seed);
        int[] lengths = random.ints(n, 10, 801).map(l -> l > 400 && random.nextInt(3) == 0 ? l / 2 : l).toArray();
        return new Case(single("hard-" + n + "-" + seed, 1000, lengths), -1);
    }

    /**
     * Fifteen pieces of three boards' length that need four, though fractions of boards do with three: a piece is an edge of the Petersen
     * graph and as long as two numbers at its ends together, so its perfect matchings fill boards, and no other three sets do; found by
     * a search of our own. After Caprara, Dell'Amico, Diaz-Diaz, Iori and Rizzi, Mathematical Programming 150 (2015) 5-17.
     */
    static final int[][] THREE_BOARDS_IN_FOUR = {
        {42, 44, 45, 54, 61, 61, 62, 71, 71, 71, 71, 79, 82, 99, 101}, {23, 28, 43, 49, 56, 56, 58, 59, 59, 59, 60, 60, 60, 82, 94},
        {24, 25, 53, 55, 60, 62, 62, 62, 62, 64, 68, 70, 80, 88, 89}, {30, 37, 37, 38, 48, 48, 48, 50, 50, 53, 54, 57, 57, 58, 58},
        {16, 29, 31, 42, 42, 43, 44, 47, 47, 51, 51, 51, 58, 61, 71}, {8, 12, 14, 14, 18, 34, 34, 41, 41, 41, 58, 59, 59, 69, 71},
        {24, 26, 26, 27, 27, 30, 30, 30, 34, 34, 37, 39, 39, 39, 53}, {16, 27, 33, 34, 38, 39, 39, 45, 46, 46, 46, 47, 49, 49, 49},
        {19, 21, 21, 22, 25, 34, 34, 34, 34, 34, 44, 45, 45, 48, 50}, {19, 19, 21, 21, 21, 24, 24, 24, 24, 25, 25, 25, 25, 32, 34},
        {14, 14, 18, 18, 18, 20, 20, 21, 21, 21, 21, 21, 26, 30, 32}, {10, 15, 19, 19, 23, 23, 28, 29, 29, 29, 29, 31, 31, 31, 32}
    };

    /**
     * Such fifteen pieces with 62 boards more, each cut into three, of which two together are as long as no pieces before them are: so some
     * best plan has the three on one board, and 66 boards are needed. Where no such three are left, all lengths are doubled, up to a board
     * of 2500. Three that add few sums of lengths are preferred. With {@code split} one of the fifteen is cut in two so that 65 boards do.
     *
     * @see "Delorme, Iori and Martello, EJOR 255 (2016) 1-20, section 7.1: augmented non-IRUP and augmented IRUP instances, in outline"
     */
    public static Case augmented(boolean split, long seed) {
        for (int attempt = 0; ; attempt++) {
            Random random = new Random(seed * 1000 + attempt);
            List<Integer> lengths = new ArrayList<>();
            for (int each : THREE_BOARDS_IN_FOUR[random.nextInt(THREE_BOARDS_IN_FOUR.length)]) lengths.add(each);
            int board = lengths.stream().mapToInt(each -> each).sum() / 3;
            while (lengths.size() < 201 && board <= 2500) {
                int[] three = threeOf(board, lengths, random);
                for (int each : three) lengths.add(each);
                if (three.length > 0) continue;
                board *= 2;
                lengths.replaceAll(each -> 2 * each);
            }
            if (board > 2500 || split && !split(lengths, board, random)) continue;
            int[] all = lengths.stream().mapToInt(each -> each).toArray();
            return new Case(single("augmented-" + (split ? "split-" : "") + seed, board, all), split ? 65 : 66);
        }
    }

    private static int[] threeOf(int board, List<Integer> lengths, Random random) {
        BigInteger all = BigInteger.ONE.shiftLeft(board + 1).subtract(BigInteger.ONE);
        BigInteger sums = BigInteger.ONE;
        for (int each : lengths) sums = sums.or(sums.shiftLeft(each)).and(all);
        int[] best = {};
        int fewest = Integer.MAX_VALUE;
        for (int look = 0, seen = 0; look < 20_000 && seen < 30; look++) {
            int one = 1 + random.nextInt(board - 2);
            int two = 1 + random.nextInt(board - 1 - one);
            if (board - one - two < 1 || sums.testBit(one + two)) continue;
            seen++;
            int[] three = {board - one - two, one, two};
            BigInteger with = sums;
            for (int each : three) with = with.or(with.shiftLeft(each)).and(all);
            if (with.bitCount() >= fewest) continue;
            fewest = with.bitCount();
            best = three;
        }
        return best;
    }

    private static boolean split(List<Integer> lengths, int board, Random random) {
        for (int look = 0; look < 200; look++) {
            int piece = random.nextInt(15);
            int part = 1 + random.nextInt(lengths.get(piece) - 1);
            int[] few = Arrays.copyOf(lengths.stream().limit(15).mapToInt(each -> each).toArray(), 16);
            few[piece] -= part;
            few[15] = part;
            if (!fillThree(few, board)) continue;
            lengths.set(piece, few[piece]);
            lengths.add(part);
            return true;
        }
        return false;
    }

    /** Whether the pieces fill three boards to the end; every set of them is looked at. */
    static boolean fillThree(int[] lengths, int board) {
        int all = (1 << lengths.length) - 1;
        int[] sum = new int[all + 1];
        BitSet full = new BitSet();
        for (int set = 1; set <= all; set++) {
            sum[set] = sum[set & set - 1] + lengths[Integer.numberOfTrailingZeros(set)];
            if (sum[set] == board) full.set(set);
        }
        int[] sets = full.stream().toArray();
        for (int one : sets) for (int two : sets) if ((one & two) == 0 && full.get(all ^ one ^ two)) return true;
        return false;
    }

    /** Boards cut without waste into random pieces with kerf, so that the boards taken are the least there can be. */
    public static Case planted(int boards, int board, int kerf, int trim, long seed) {
        Random random = new Random(seed);
        List<Integer> lengths = new ArrayList<>();
        for (int b = 0; b < boards; b++) {
            int room = board - 2 * trim;
            while (room > 600 + kerf && random.nextInt(5) > 0) {
                int length = 200 + random.nextInt(room - kerf - 400 + 1);
                lengths.add(length);
                room -= length + kerf;
            }
            lengths.add(room);
        }
        var pieces = demands(lengths.stream().mapToInt(Integer::intValue).toArray());
        var stock = List.of(Jobs.board(board, "7.35"));
        return new Case(new CuttingProblem("planted-" + seed, kerf, trim, 300, 0, stock, pieces), boards);
    }

    /**
     * A garden's shopping: modules, modules less two thicknesses, odd lengths; few lengths carry most pieces; several
     * stock lengths priced about by the metre; odd boards on hand at a third of their new price.
     */
    public static Case trade(int types, int pieces, int stockLengths, int onHand, long seed) {
        Random random = new Random(seed);
        int[] merchant = {2100, 2400, 2700, 3000, 3300, 3600, 3900, 4200, 4500, 4800, 5100, 5400, 6000};
        int kerf = 2 + random.nextInt(5);
        int trim = random.nextInt(21);
        double metre = 1.80 + random.nextDouble() * 7.70;
        List<CuttingProblem.Stock> stock = new ArrayList<>();
        shuffle(merchant, random);
        int[] lengths = Arrays.copyOf(merchant, Math.min(stockLengths, merchant.length));
        Arrays.sort(lengths);
        if (lengths[lengths.length - 1] < 3000) lengths[lengths.length - 1] = 4800;
        for (int length : lengths) {
            double rate = metre * (0.95 + 0.10 * random.nextDouble()) * (length >= 4800 ? 1.05 : 1);
            stock.add(new CuttingProblem.Stock(
                    "L" + length, length, cents(rate * length / 1000), OptionalInt.empty(), 1));
        }
        int longest = lengths[lengths.length - 1];
        for (int i = 0; i < onHand; i++) {
            int length = 300 + random.nextInt((int) (0.9 * longest) - 300);
            stock.add(new CuttingProblem.Stock(
                    "R" + i, length, cents(0.35 * metre * length / 1000), OptionalInt.of(1), 1));
        }
        int thickness = 18 + random.nextInt(28);
        TreeMap<Integer, Integer> counts = new TreeMap<>();
        while (counts.size() < types) {
            double kind = random.nextDouble();
            int module = 300 * (1 + random.nextInt(8));
            int length = kind < 0.35 ? module : kind < 0.60 ? module - 2 * thickness : 180 + random.nextInt(2421);
            if (length <= longest - 2 * trim) counts.putIfAbsent(length, 1);
            if (kind < 0.60 && counts.size() >= 16 + types / 2) counts.putIfAbsent(180 + random.nextInt(1900), 1);
        }
        Integer[] keys = counts.keySet().toArray(new Integer[0]);
        double[] weight = new double[keys.length];
        double sum = 0;
        for (int i = 0; i < keys.length; i++) sum += weight[i] = Math.pow(1 - random.nextDouble(), -1 / 1.2);
        int left = pieces - keys.length;
        for (int i = 0; i < keys.length; i++) counts.merge(keys[i], (int) (left * weight[i] / sum), Integer::sum);
        List<CuttingProblem.Demand> demands = new ArrayList<>();
        int stages = 1 + random.nextInt(4);
        counts.forEach((length, count) -> demands.add(new CuttingProblem.Demand(
                "P" + length, length, count, 1 + random.nextInt(stages), 0)));
        String name = "trade-" + types + "x" + pieces + "x" + stockLengths + "+" + onHand + "-" + seed;
        return new Case(new CuttingProblem(name, kerf, trim, 300, 0, stock, demands), -1);
    }

    /** One board length, no kerf, no trim, one money unit a board. */
    public static CuttingProblem single(String name, int board, int[] lengths) {
        return new CuttingProblem(name, 0, 0, 0, 0, List.of(new CuttingProblem.Stock("board", board, BigDecimal.ONE, OptionalInt.empty(), 1)), demands(lengths));
    }

    private static List<CuttingProblem.Demand> demands(int[] lengths) {
        TreeMap<Integer, Integer> counts = new TreeMap<>();
        for (int length : lengths) counts.merge(length, 1, Integer::sum);
        List<CuttingProblem.Demand> demands = new ArrayList<>();
        counts.forEach((length, count) -> demands.add(Jobs.piece("P" + length, length, count)));
        return demands;
    }

    private static BigDecimal cents(double money) {
        return BigDecimal.valueOf(Math.max(1, Math.round(money * 100)), 2);
    }

    private static void shuffle(int[] values, Random random) {
        for (int i = values.length - 1; i > 0; i--) {
            int j = random.nextInt(i + 1);
            int keep = values[i];
            values[i] = values[j];
            values[j] = keep;
        }
    }
}
