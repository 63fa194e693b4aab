package lapyard.bench;

import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import lapyard.sheets.CutUp;
import lapyard.sheets.LayoutJudge;
import lapyard.sheets.PlainOffcuts;
import lapyard.sheets.PlainSkyline;
import lapyard.sheets.RollProblem;
import lapyard.sheets.RollResult;
import lapyard.sheets.RollSolver;
import lapyard.working.Effort;

/**
 * Strips whose least length is known, cut up at random from a seed, with the processor time each takes. Arguments: steps
 * or seconds of a clock for each problem ({@code 300000} or {@code 2s}), seed (1), strips of each size (3), {@code straight},
 * {@code free}, {@code both} or {@code plain} (both beside {@link PlainOffcuts} and {@link PlainSkyline} given as much
 * processor time), sizes (50,100,150,300,1000,3000), grid in mm (0: 1, 10 and 5 by turns).
 */
public final class RollStrips {
    private static final PrintStream OUT = System.out;
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    private RollStrips() {}

    public static void main(String[] arguments) {
        Effort effort = effort(arguments.length > 0 ? arguments[0] : "300000");
        long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 1;
        int strips = arguments.length > 2 ? Integer.parseInt(arguments[2]) : 3;
        String kinds = arguments.length > 3 ? arguments[3] : "both";
        String sizes = arguments.length > 4 ? arguments[4] : "50,100,150,300,1000,3000";
        long grid = arguments.length > 5 ? Long.parseLong(arguments[5]) : 0;
        boolean plain = kinds.equals("plain");
        for (boolean straight : new boolean[] {true, false})
            if (plain || kinds.equals("both") || straight != kinds.equals("free")) table(effort, seed, strips, straight, plain, sizes.split(","), grid);
    }

    private static Effort effort(String told) {
        return told.endsWith("s")
                ? new Effort(Long.MAX_VALUE, Duration.ofMillis((long) (1000 * Double.parseDouble(told.substring(0, told.length() - 1)))))
                : Effort.ofSteps(Long.parseLong(told));
    }

    private static void table(Effort effort, long seed, int strips, boolean straight, boolean plain, String[] sizes, long grid) {
        OUT.printf("%n| pieces | %s | worst | processor s | most |%s%n| --- | --- | --- | --- | --- |%s%n", straight ? "straight" : "free",
                plain ? " plain | best for it |" : "", plain ? " --- | --- |" : "");
        List<double[]> all = new ArrayList<>();
        for (String size : sizes) {
            List<double[]> row = new ArrayList<>();
            for (int i = 0; i < strips; i++) row.add(measure(strip(Integer.parseInt(size), i, seed, straight, grid), effort, plain));
            row(size, row);
            all.addAll(row);
        }
        row("mean", all);
    }

    /** What is best for the plain way is how much it is longer than the search at least. */
    private static void row(String name, List<double[]> row) {
        double[] mean = new double[row.get(0).length];
        double[] most = new double[mean.length];
        double least = Double.POSITIVE_INFINITY;
        for (double[] one : row) {
            for (int k = 0; k < mean.length; k++) {
                mean[k] += one[k] / row.size();
                most[k] = Math.max(most[k], one[k]);
            }
            if (mean.length > 2) least = Math.min(least, one[2] - one[0]);
        }
        OUT.printf("| %s | %.2f %% | %.2f %% | %.2f | %.2f |", name, mean[0], most[0], mean[1], most[1]);
        OUT.printf(mean.length > 2 ? " %.2f %% | %+.2f |%n" : "%n", mean.length > 2 ? new Object[] {mean[2], least} : new Object[0]);
    }

    private static RollProblem strip(int pieces, int i, long seed, boolean straight, long given) {
        long mine = seed * 1000 + pieces + i;
        long width = 1000 + 200 * (mine % 17);
        long height = 1500 + 250 * (mine % 23);
        CutUp.Manner manner = straight || i % 2 == 0 ? CutUp.Manner.STRAIGHT : CutUp.Manner.PINWHEEL;
        long grid = given > 0 ? given : i % 3 == 0 ? 1 : i % 3 == 1 ? 10 : 5;
        return CutUp.strip(pieces, width, height, grid, 0.2, manner, straight, mine);
    }

    /** Percent above the least length, processor seconds and, where asked, percent of the plain way. */
    private static double[] measure(RollProblem strip, Effort effort, boolean plain) {
        long before = THREADS.getCurrentThreadCpuTime();
        RollResult result = RollSolver.solve(strip, effort);
        long taken = THREADS.getCurrentThreadCpuTime() - before;
        LayoutJudge.check(strip, result);
        double area = 0;
        for (RollProblem.Piece piece : strip.pieces()) area += piece.widthMm() * piece.heightMm();
        double least = area / strip.rolls().get(0).widthMm();
        double over = 100 * (result.rolls().get(0).usedMm() / least - 1);
        if (!plain) return new double[] {over, taken / 1e9};
        long until = THREADS.getCurrentThreadCpuTime() + taken;
        BooleanSupplier enough = () -> THREADS.getCurrentThreadCpuTime() >= until;
        boolean straight = strip.straightCuts();
        List<long[]> laid = straight ? PlainOffcuts.lay(strip, 1, enough) : PlainSkyline.lay(strip, 1, enough);
        if (laid.size() != strip.pieces().size() || !(straight ? LayoutJudge.straightCutsDo(laid) : apart(laid))) throw new IllegalStateException(strip.name());
        double far = PlainOffcuts.far(laid);
        return new double[] {over, taken / 1e9, 100 * (far / least - 1)};
    }

    private static boolean apart(List<long[]> laid) {
        for (long[] a : laid) for (long[] b : laid) if (a != b && a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3]) return false;
        return true;
    }
}
