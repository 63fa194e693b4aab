package lapyard.sheets;

import java.util.Arrays;
import java.util.Comparator;
import java.util.function.IntUnaryOperator;
import java.util.stream.IntStream;

/**
 * Rules a stretch of roll out by what its parts can be worth. Each type of piece has a price, at first its area. A table over all
 * smaller rectangles says what straight cuts get out of each at most, of some types as many pieces as are wanted, of the others as many as
 * anyone likes. Where the whole stretch is worth less than the wanted pieces, they do not lie within it, whatever the prices are. What is
 * used too often gets cheaper, what is used too seldom dearer; and where that is not enough one type more is counted, first those whose
 * sides fewest others have, as the others take each other's places in a lane.
 *
 * <p>Parts are pushed together, so that the shorter part of a cut is as long as a sum of sides and the other as long as the largest sum
 * that there is room for ({@link SideSums}): few widths remain.
 *
 * @see "Gilmore and Gomory, Multistage cutting stock problems of two and more dimensions, Operations Research 13 (1965), for the table;
 *     Christofides and Whitlock, An algorithm for two-dimensional cutting problems, Operations Research 25 (1977), for sums of sides;
 *     Beasley, An exact two-dimensional non-guillotine cutting tree search procedure, Operations Research 33 (1985), and Polyak,
 *     Minimization of unsmooth functionals, USSR Computational Mathematics and Mathematical Physics 9 (1969), for the prices"
 */
final class PricedParts {
    /** A number takes four bytes. */
    private static final long MOST_NUMBERS = 6_000_000;
    /** So many tables before one type more is counted. */
    private static final int ROUNDS = 10;
    /** Prices aim so far below what would do, as a share of the waste. */
    private static final double AIM = 0.02;
    /** More than anything is worth: the stretch is worth a quarter of it by its area, and no price goes beyond three times the area. */
    private static final int LARGEST = 1 << 28;
    private static final double DEAREST = 3;
    /** Measured: a row is joined as quickly as so many single numbers, and so many more for each of its own. */
    private static final int A_ROW = 40;
    private static final int NUMBERS_AN_OPERATION = 10;

    /**
     * The sides that parts can have, rising from 0. What is cut off is never longer than the rest, so the first sides are all that are cut off.
     *
     * @param within the number of the longest side that is no longer, by length
     */
    private record Sides(int[] all, int[] within) {
        static Sides of(IntUnaryOperator filled, int whole) {
            int[] sums = IntStream.rangeClosed(1, whole / 2).filter(x -> filled.applyAsInt(x) == x).toArray();
            boolean[] kept = new boolean[whole + 1];
            kept[0] = true;
            kept[filled.applyAsInt(whole)] = true;
            for (int side = whole; side > 0; side--) {
                for (int i = 0; kept[side] && i < sums.length && 2 * sums[i] <= side; i++) {
                    kept[sums[i]] = true;
                    kept[filled.applyAsInt(side - sums[i])] = true;
                }
            }
            int[] all = IntStream.rangeClosed(0, whole).filter(x -> kept[x]).toArray();
            int[] within = new int[whole + 1];
            for (int x = 1; x <= whole; x++) within[x] = within[x - 1] + (kept[x] ? 1 : 0);
            return new Sides(all, within);
        }

        int many() {
            return all.length;
        }

        /** The first side that is no shorter; {@link #many} where there is none. */
        int holding(long side) {
            if (side >= within.length) return many();
            int number = within[(int) side];
            return all[number] == side ? number : number + 1;
        }

        /** How many sides may be cut off a side, those from 1 on. */
        int cuts(int side) {
            return within[all[side] / 2];
        }

        int rest(int side, int cut) {
            return within[all[side] - all[cut]];
        }

        long allCuts() {
            return IntStream.range(0, many()).mapToLong(this::cuts).sum();
        }
    }

    private final RollJob job;
    private final Sides across;
    private final Sides along;
    /** A state says how many pieces of the counted types lie in a part, in mixed radix; 0 for a type that is not counted. */
    private final int[] stride;
    private final int states;
    /** Of each state those that a part of it can have. */
    private final int[][] parts;
    private final int[] price;
    /** By state, height and width; below 0 where it does not hold what is counted. */
    private final int[][][] worth;

    private PricedParts(RollJob job, Sides across, Sides along, int[] stride, int states) {
        this.job = job;
        this.across = across;
        this.along = along;
        this.stride = stride;
        this.states = states;
        this.parts = IntStream.range(0, states)
                .mapToObj(n -> IntStream.rangeClosed(0, n).filter(part -> holds(n, part)).toArray())
                .toArray(int[][]::new);
        this.price = new int[stride.length];
        this.worth = new int[states][along.many()][across.many()];
    }

    private boolean holds(int state, int part) {
        for (int t = 0; t < stride.length; t++) {
            int radix = job.types[t].count() + 1;
            if (stride[t] > 0 && part / stride[t] % radix > state / stride[t] % radix) return false;
        }
        return true;
    }

    /** @return true where straight cuts cannot lay all pieces within this width and height, in units; false says nothing */
    static boolean ruleOut(RollJob job, long width, long height, RollBudget work) {
        long longest = Math.max(width, height);
        long setUp = SideSums.operations(job, longest) + longest * longest / 4;
        if (longest > RollJob.NO_LIMIT / longest || setUp > work.left()) return false;
        SideSums sums = new SideSums(job, longest, work);
        if (!sums.known()) return false;
        Sides across = Sides.of(w -> (int) sums.across(w, height), (int) width);
        Sides along = Sides.of(h -> (int) sums.along(h, width), (int) height);
        work.spend(longest * longest / 4);
        double scale = LARGEST / 4.0 / (width * height);
        double[] prices = Arrays.stream(job.types).mapToDouble(type -> type.area() * scale).toArray();
        double[] excess = new double[prices.length];
        int[] stride = new int[prices.length];
        long pair = along.allCuts() * (across.many() + A_ROW) / NUMBERS_AN_OPERATION + along.many() * across.allCuts();
        long states = 1;
        long pairs = 1;
        while (states * across.many() * along.many() <= MOST_NUMBERS) {
            long operations = pairs * pair + states * states;
            if (operations > work.left()) return false;
            PricedParts table = new PricedParts(job, across, along, stride, (int) states);
            if (table.ruleOut(scale, prices, excess, operations, work)) return true;
            int next = next(job, stride, excess);
            if (next < 0) return false;
            int count = job.types[next].count();
            stride[next] = (int) states;
            states *= count + 1;
            pairs = pairs * (count + 1) * (count + 2) / 2;
        }
        return false;
    }

    /** The type to be counted next: of those whose sides fewest pieces share the one most used beyond what is wanted; -1 where all are counted. */
    private static int next(RollJob job, int[] stride, double[] excess) {
        return IntStream.range(0, stride.length).filter(t -> stride[t] == 0).boxed()
                .min(Comparator.comparing((Integer t) -> alike(job, t)).thenComparing(t -> -excess[t]))
                .orElse(-1);
    }

    /** How many pieces have a side of this type, the one that most have. */
    private static int alike(RollJob job, int type) {
        int wide = 0;
        int high = 0;
        for (RollJob.Type other : job.types) {
            if (other.width() == job.types[type].width() || other.height() == job.types[type].width()) wide += other.count();
            if (other.width() == job.types[type].height() || other.height() == job.types[type].height()) high += other.count();
        }
        return Math.max(wide, high);
    }

    /**
     * @param scale      what a unit of area is worth at first
     * @param exact      prices, which change
     * @param excess     takes how much area of each type was used beyond what is wanted
     * @param operations about what a table takes
     */
    private boolean ruleOut(double scale, double[] exact, double[] excess, long operations, RollBudget work) {
        Arrays.fill(excess, 0);
        int high = along.many() - 1;
        int wide = across.many() - 1;
        for (int round = 0; round < ROUNDS && operations <= work.left(); round++) {
            long wanted = 0;
            for (int t = 0; t < price.length; t++) {
                price[t] = (int) Math.round(exact[t]);
                wanted += (long) price[t] * job.types[t].count();
            }
            for (int h = 0; h <= high; h++) {
                row(h);
                work.spend(operations / along.many());
                if (work.over()) return false;
            }
            int most = worth[states - 1][high][wide];
            if (most < wanted) return true;
            int[] tooMany = Arrays.stream(job.types).mapToInt(type -> -type.count()).toArray();
            count(states - 1, high, wide, tooMany);
            double far = 0;
            for (int t = 0; t < price.length; t++) {
                far += (double) tooMany[t] * tooMany[t];
                excess[t] += Math.max(0, tooMany[t]) * (double) job.types[t].area();
            }
            if (far == 0) return false;
            double by = (most - wanted + AIM * (LARGEST / 4.0 - scale * job.area())) / far;
            for (int t = 0; t < price.length; t++)
                exact[t] = Math.max(0, Math.min(DEAREST * scale * job.types[t].area(), exact[t] - by * tooMany[t]));
        }
        return false;
    }

    private void row(int h) {
        for (int n = 0; n < states; n++) {
            if (h == 0) Arrays.fill(worth[n][0], n == 0 ? 0 : -LARGEST);
            else System.arraycopy(worth[n][h - 1], 0, worth[n][h], 0, across.many());
        }
        for (int t = 0; t < price.length; t++) {
            put(t, h, job.types[t].width(), job.types[t].height());
            if (job.turn) put(t, h, job.types[t].height(), job.types[t].width());
        }
        for (int n = 0; n < states; n++)
            for (int part : parts[n])
                for (int cut = 1; cut <= along.cuts(h); cut++) better(worth[n][h], worth[part][cut], worth[n - part][along.rest(h, cut)]);
        for (int n = 0; n < states; n++) beside(n, h);
    }

    private void put(int type, int h, long wide, long high) {
        int w = across.holding(wide);
        if (w == across.many() || along.holding(high) != h) return;
        int[] row = worth[stride[type]][h];
        row[w] = Math.max(row[w], price[type]);
    }

    private static void better(int[] row, int[] one, int[] two) {
        for (int w = 0; w < row.length; w++) row[w] = Math.max(row[w], one[w] + two[w]);
    }

    private void beside(int n, int h) {
        int[] row = worth[n][h];
        for (int w = 1; w < row.length; w++) {
            int most = Math.max(row[w], row[w - 1]);
            int cuts = across.cuts(w);
            for (int part : parts[n]) {
                int[] one = worth[part][h];
                int[] two = worth[n - part][h];
                for (int cut = 1; cut <= cuts; cut++) most = Math.max(most, one[cut] + two[across.rest(w, cut)]);
            }
            row[w] = most;
        }
    }

    /** Adds the pieces of parts that are worth most. */
    private void count(int n, int h, int w, int[] pieces) {
        int most = worth[n][h][w];
        while (h > 0 && worth[n][h - 1][w] == most) h--;
        while (w > 0 && worth[n][h][w - 1] == most) w--;
        if (n == 0 && most == 0 || single(n, h, w, pieces)) return;
        for (int part : parts[n]) {
            for (int cut = 1; cut <= along.cuts(h); cut++) {
                int rest = along.rest(h, cut);
                if (worth[part][cut][w] + worth[n - part][rest][w] != most) continue;
                count(part, cut, w, pieces);
                count(n - part, rest, w, pieces);
                return;
            }
            for (int cut = 1; cut <= across.cuts(w); cut++) {
                int rest = across.rest(w, cut);
                if (worth[part][h][cut] + worth[n - part][h][rest] != most) continue;
                count(part, h, cut, pieces);
                count(n - part, h, rest, pieces);
                return;
            }
        }
    }

    private boolean single(int n, int h, int w, int[] pieces) {
        for (int t = 0; t < price.length; t++) {
            RollJob.Type type = job.types[t];
            boolean lies = across.holding(type.width()) == w && along.holding(type.height()) == h
                    || job.turn && across.holding(type.height()) == w && along.holding(type.width()) == h;
            if (!lies || n != stride[t] || price[t] != worth[n][h][w]) continue;
            pieces[t]++;
            return true;
        }
        return false;
    }
}
