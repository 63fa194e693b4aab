package lapyard.cutting;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
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
