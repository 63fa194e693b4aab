package lapyard.bench;

import java.io.PrintStream;
import java.time.Duration;
import lapyard.sheets.CutUp;
import lapyard.working.Effort;
import lapyard.sheets.LayoutJudge;
import lapyard.sheets.RollProblem;
import lapyard.sheets.RollResult;
import lapyard.sheets.RollSolver;

/**
 * Strips whose least length is known, cut up at random from a seed. Arguments: seconds a problem (2), seed (1),
 * strips of each size (3).
 */
public final class RollStrips {
    private static final PrintStream OUT = System.out;
    private static final int[] PIECES = {50, 100, 150, 300, 1000, 3000};

    private RollStrips() {}

    public static void main(String[] arguments) {
        double seconds = arguments.length > 0 ? Double.parseDouble(arguments[0]) : 2;
        long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 1;
        int strips = arguments.length > 2 ? Integer.parseInt(arguments[2]) : 3;
        OUT.printf("| pieces | straight | worst | free | worst |%n| --- | --- | --- | --- | --- |%n");
        double[] mean = new double[2];
        for (int pieces : PIECES) {
            double[] gap = new double[2];
            double[] worst = new double[2];
            for (int i = 0; i < strips; i++) {
                for (int free = 0; free < 2; free++) {
                    long mine = seed * 1000 + pieces + i;
                    long width = 1000 + 200 * (mine % 17);
                    long height = 1500 + 250 * (mine % 23);
                    CutUp.Manner manner = free == 0 || i % 2 == 0 ? CutUp.Manner.STRAIGHT : CutUp.Manner.PINWHEEL;
                    long grid = i % 3 == 0 ? 1 : i % 3 == 1 ? 10 : 5;
                    RollProblem strip = CutUp.strip(pieces, width, height, grid, 0.2, manner, free == 0, mine);
                    Effort effort = new Effort(Long.MAX_VALUE, Duration.ofMillis((long) (1000 * seconds)));
                    RollResult result = LayoutJudge.check(strip, RollSolver.solve(strip, effort));
                    double over = 100 * (result.rolls().get(0).usedMm() / height - 1);
                    gap[free] += over / strips;
                    worst[free] = Math.max(worst[free], over);
                }
            }
            for (int free = 0; free < 2; free++) mean[free] += gap[free] / PIECES.length;
            OUT.printf("| %d | %.2f %% | %.2f %% | %.2f %% | %.2f %% |%n", pieces, gap[0], worst[0], gap[1], worst[1]);
        }
        OUT.printf("| mean | %.2f %% | | %.2f %% | |%n", mean[0], mean[1]);
    }
}
