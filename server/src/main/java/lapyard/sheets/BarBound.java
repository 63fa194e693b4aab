package lapyard.sheets;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lapyard.working.CoverProgramme;

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
    /** What a bar of the first pieces is worth at most, by how many of them. */
    private final List<BarWorth> worths = new ArrayList<>(List.of(new BarWorth()));
    private final List<Piece> pieces = new ArrayList<>();
    private int layers;
    /** In coins; a row is all pieces of a type over their whole height. Null where there is none. */
    private final CoverProgramme programme;

    /** @param gain of each way; 0 where it may not lie so */
    private record Piece(int type, int[] steps, double[] gain) {}

    private BarBound(RollJob job, RollBudget work) {
        this.job = job;
        this.work = work;
        this.rolls = job.rolls.stream().filter(roll -> roll.runs() > 0).toList();
        this.rows = job.types.length;
        this.programme = start();
    }

    /**
     * @param known  proved coins
     * @param wanted no more need be proved
     * @return proved coins; {@code known} where bars prove no more
     */
    static long coins(RollJob job, long known, long wanted, RollBudget work) {
        if (job.types.length > MOST_TYPES || known >= wanted) return known;
        BarBound bars = new BarBound(job, work);
        return bars.programme == null ? known : bars.coins(known, wanted);
    }

    private long coins(long known, long wanted) {
        long proved = known;
        for (int round = 0; round < MOST_ROUNDS && !work.over(); round++) {
            // what bars can prove at most, were all of them known, is what those known so far give
            double now = programme.solve();
            work.spend(3L * rows * rows / CELLS_AN_OPERATION + 1);
            if (RollBound.payable(now, rolls) <= proved) return proved;
            RollJob.Roll cheapest = null;
            double most = 1;
            double[] entering = new double[rows];
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
            for (int t = 0; t < rows; t++) sum += programme.price(t);
            proved = Math.max(proved, RollBound.payable(sum / most, rolls));
            if (cheapest == null || proved >= wanted || !programme.enter(job.coinsPerUnit(cheapest), entering)) return proved;
        }
        return proved;
    }

    /** Starts with one bar of each type alone; null where a piece has no place, costs nothing or is too thin for the grid. */
    private CoverProgramme start() {
        double[] covers = new double[rows];
        double[] costs = new double[rows];
        for (int t = 0; t < rows; t++) {
            for (RollJob.Roll roll : rolls) {
                double coins = job.coinsPerUnit(roll);
                if (coins <= 0) return null;
                for (int way = 0; way < 2; way++) {
                    if (!may(t, way, roll)) continue;
                    if (parts(t, way, roll, grid(roll)) == 0) return null;
                    double n = Math.min(job.types[t].count(), roll.width() / across(t, way));
                    double cover = n / ((double) job.types[t].count() * along(t, way));
                    if (covers[t] > 0 && coins / cover >= costs[t] / covers[t]) continue;
                    covers[t] = cover;
                    costs[t] = coins;
                }
            }
            if (covers[t] == 0) return null;
        }
        return new CoverProgramme(covers, costs);
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

    /** @param bar takes the bar of most worth, each type's pieces over what all of them together are high */
    private double richest(RollJob.Roll roll, double[] bar) {
        int grid = grid(roll);
        layers = 0;
        long cells = 0;
        for (int t = 0; t < rows; t++) cells += laid(t, roll, grid);
        int at = grid;
        Arrays.fill(bar, 0);
        for (int layer = layers - 1; layer >= 0; layer--) {
            Piece piece = pieces.get(layer);
            int way = worths.get(layer).way(piece.steps(), piece.gain(), at);
            if (way < 0) continue;
            bar[piece.type()] += 1 / ((double) along(piece.type(), way) * job.types[piece.type()].count());
            at -= piece.steps()[way];
        }
        work.spend(cells / CELLS_AN_OPERATION);
        return worths.get(layers).at(grid);
    }

    /** A layer for each piece of a type that may stand beside the others; the cells that were looked at. */
    private long laid(int type, RollJob.Roll roll, int grid) {
        double price = programme.price(type);
        if (price == 0) return 0;
        int narrowest = Integer.MAX_VALUE;
        int[] steps = new int[2];
        double[] gain = new double[2];
        for (int way = 0; way < 2; way++) {
            if (!may(type, way, roll)) continue;
            steps[way] = parts(type, way, roll, grid);
            gain[way] = price / ((double) along(type, way) * job.types[type].count());
            narrowest = Math.min(narrowest, steps[way]);
        }
        if (narrowest == Integer.MAX_VALUE) return 0;
        int copies = Math.min(job.types[type].count(), grid / narrowest);
        for (int copy = 0; copy < copies; copy++) {
            if (worths.size() == layers + 1) {
                worths.add(new BarWorth());
                pieces.add(null);
            }
            worths.get(layers + 1).bettered(worths.get(layers), steps, gain, grid);
            pieces.set(layers++, new Piece(type, steps, gain));
        }
        return copies * (2L * grid + CELLS_A_LAYER);
    }
}
