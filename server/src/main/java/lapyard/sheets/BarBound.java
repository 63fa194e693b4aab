package lapyard.sheets;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What a roll job costs at least by its bars. A bar is what a line across the roll meets: pieces side by side, of each
 * type no more than there are, that fit the width. Every layout is a pile of bars as long as the run, in which a piece
 * is met over its whole height, so the cheapest pile that meets every piece for as long as it is high costs no more.
 * That is a linear programme with a row for each type and a column for each bar; bars are found by a knapsack as they
 * are needed. A piece that may be turned may be met partly one way and partly the other, which only lowers the bound.
 *
 * <p>Sums are floating point and are taken down by a part in a thousand million, far more than they can err.
 *
 * @see "Scheithauer, LP-based bounds for the container and multi-container loading problem, International Transactions
 *     in Operational Research 6 (1999), for the bar relaxation; Farley, A note on bounding a class of linear programming
 *     problems, Operations Research 38 (1990), for the bound before the programme is solved"
 */
final class BarBound {
    private static final double TINY = 1e-9;
    /** With more types the area bound is nearly as good. */
    private static final int MOST_TYPES = 60;
    /** Widths are rounded down to so many parts of the roll, which only lowers the bound. */
    private static final int FINEST = 4_000;
    private static final int MOST_ROUNDS = 400;
    private static final int CELLS_AN_OPERATION = 4;
    private static final int CELLS_A_LAYER = 400;

    private final RollJob job;
    private final RollBudget work;
    private final List<RollJob.Roll> rolls;
    private final int rows;
    private final double[][] inverse;
    private final double[] level;
    private final double[] cost;
    private final double[] prices;
    private final double[] entering;
    private double best;

    private BarBound(RollJob job, RollBudget work) {
        this.job = job;
        this.work = work;
        this.rolls = job.rolls.stream().filter(roll -> roll.runs() > 0).toList();
        this.rows = job.types.length;
        this.inverse = new double[rows][rows];
        this.level = new double[rows];
        this.cost = new double[rows];
        this.prices = new double[rows];
        this.entering = new double[rows];
    }

    /**
     * @param known  proved coins
     * @param wanted no more need be proved
     * @return proved coins; {@code known} where bars prove no more
     */
    static long coins(RollJob job, long known, long wanted, RollBudget work) {
        if (job.types.length > MOST_TYPES || known >= wanted) return known;
        BarBound bars = new BarBound(job, work);
        return bars.start() ? bars.coins(known, wanted) : known;
    }

    private long coins(long known, long wanted) {
        long proved = known;
        for (int round = 0; round < MOST_ROUNDS && !work.over(); round++) {
            double now = price();
            // what bars can prove at most, were all of them known, is what those known so far give
            if (RollBound.payable(now, rolls) <= proved) return proved;
            double enteringCost = 0;
            int surplus = -1;
            for (int i = 0; i < rows; i++) if (prices[i] < -TINY && (surplus < 0 || prices[i] < prices[surplus])) surplus = i;
            if (surplus >= 0) {
                Arrays.fill(entering, 0);
                entering[surplus] = -1;
            } else {
                RollJob.Roll cheapest = null;
                double most = 1;
                double[] bar = new double[rows];
                for (RollJob.Roll roll : rolls) {
                    double worth = richest(roll, bar) / job.coinsPerUnit(roll);
                    if (worth <= most) continue;
                    most = worth;
                    if (worth <= 1 + TINY) continue;
                    cheapest = roll;
                    System.arraycopy(bar, 0, entering, 0, rows);
                }
                double sum = 0;
                for (double price : prices) if (price > TINY) sum += price;
                best = Math.max(best, sum / most);
                proved = Math.max(proved, RollBound.payable(best, rolls));
                if (cheapest == null || proved >= wanted) return proved;
                enteringCost = job.coinsPerUnit(cheapest);
            }
            if (!pivot(enteringCost)) return proved;
        }
        return proved;
    }

    /** Starts with one bar of each type alone; false where a piece has no place, costs nothing or is too thin for the grid. */
    private boolean start() {
        for (int t = 0; t < rows; t++) {
            double least = Double.POSITIVE_INFINITY;
            for (RollJob.Roll roll : rolls) {
                if (job.coinsPerUnit(roll) <= 0) return false;
                for (int way = 0; way < 2; way++) {
                    if (!may(t, way, roll)) continue;
                    if (parts(t, way, roll, grid(roll)) == 0) return false;
                    long n = Math.min(job.types[t].count(), roll.width() / across(t, way));
                    double level = (double) job.types[t].count() * along(t, way) / n;
                    if (level * job.coinsPerUnit(roll) >= least) continue;
                    least = level * job.coinsPerUnit(roll);
                    this.level[t] = level;
                    cost[t] = job.coinsPerUnit(roll);
                }
            }
            if (least == Double.POSITIVE_INFINITY) return false;
            inverse[t][t] = level[t];
        }
        return true;
    }

    private boolean may(int type, int way, RollJob.Roll roll) {
        return (way == 0 || job.turn && job.types[type].width() != job.types[type].height())
                && across(type, way) <= roll.width() && along(type, way) <= roll.longest();
    }

    private long across(int type, int way) {
        return way == 0 ? job.types[type].width() : job.types[type].height();
    }

    private long along(int type, int way) {
        return way == 0 ? job.types[type].height() : job.types[type].width();
    }

    private static int grid(RollJob.Roll roll) {
        return (int) Math.min(roll.width(), FINEST);
    }

    private int parts(int type, int way, RollJob.Roll roll, int grid) {
        return (int) (across(type, way) * grid / roll.width());
    }

    /** Works the prices out, in coins for all pieces of a type. @return what the bars in use cost */
    private double price() {
        Arrays.fill(prices, 0);
        double now = 0;
        for (int r = 0; r < rows; r++) {
            now += cost[r] * level[r];
            for (int i = 0; i < rows; i++) prices[i] += cost[r] * inverse[r][i];
        }
        work.spend((long) rows * rows / CELLS_AN_OPERATION + 1);
        return now;
    }

    /** @param bar takes the bar of most worth, each type's pieces over what all of them together are high */
    private double richest(RollJob.Roll roll, double[] bar) {
        int grid = grid(roll);
        double[] worth = new double[grid + 1];
        List<Integer> type = new ArrayList<>();
        List<byte[]> chosen = new ArrayList<>();
        long cells = 0;
        for (int t = 0; t < rows; t++) {
            if (prices[t] <= TINY) continue;
            int narrowest = Integer.MAX_VALUE;
            int[] steps = new int[2];
            double[] gain = new double[2];
            for (int way = 0; way < 2; way++) {
                if (!may(t, way, roll)) continue;
                steps[way] = parts(t, way, roll, grid);
                gain[way] = prices[t] / ((double) along(t, way) * job.types[t].count());
                narrowest = Math.min(narrowest, steps[way]);
            }
            if (narrowest == Integer.MAX_VALUE) continue;
            int copies = Math.min(job.types[t].count(), grid / narrowest);
            for (int copy = 0; copy < copies; copy++) {
                byte[] choice = new byte[grid + 1];
                for (int at = grid; at >= narrowest; at--) {
                    for (int way = 0; way < 2; way++) {
                        if (gain[way] == 0 || steps[way] > at) continue;
                        // what lies further down has not been touched in this layer
                        double with = worth[at - steps[way]] + gain[way];
                        if (with <= worth[at]) continue;
                        worth[at] = with;
                        choice[at] = (byte) (way + 1);
                    }
                }
                cells += 2L * grid + CELLS_A_LAYER;
                type.add(t);
                chosen.add(choice);
            }
        }
        Arrays.fill(bar, 0);
        int at = grid;
        for (int layer = chosen.size() - 1; layer >= 0; layer--) {
            int way = chosen.get(layer)[at] - 1;
            if (way < 0) continue;
            int t = type.get(layer);
            bar[t] += 1 / ((double) along(t, way) * job.types[t].count());
            at -= parts(t, way, roll, grid);
        }
        work.spend(cells / CELLS_AN_OPERATION);
        return worth[grid];
    }

    /** Brings the entering column into the basis; false where rounding has spoilt the programme. */
    private boolean pivot(double enteringCost) {
        double[] direction = new double[rows];
        for (int r = 0; r < rows; r++)
            for (int i = 0; i < rows; i++) direction[r] += inverse[r][i] * entering[i];
        int leaving = -1;
        for (int r = 0; r < rows; r++) {
            if (direction[r] <= TINY) continue;
            if (leaving < 0 || level[r] * direction[leaving] < level[leaving] * direction[r]) leaving = r;
        }
        if (leaving < 0) return false;
        double by = direction[leaving];
        for (int i = 0; i < rows; i++) inverse[leaving][i] /= by;
        level[leaving] /= by;
        for (int r = 0; r < rows; r++) {
            if (r == leaving || direction[r] == 0) continue;
            for (int i = 0; i < rows; i++) inverse[r][i] -= direction[r] * inverse[leaving][i];
            level[r] = Math.max(0, level[r] - direction[r] * level[leaving]);
        }
        cost[leaving] = enteringCost;
        work.spend(2L * rows * rows / CELLS_AN_OPERATION + 1);
        return true;
    }
}
