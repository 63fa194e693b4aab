package lapyard.bench;

import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.CuttingSolver;
import lapyard.cutting.Jobs;
import lapyard.cutting.Shapes;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Variable;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Answers that follow each edit of a garden, and one linear programme of the size that pricing solves over and over. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 4, time = 1)
@Fork(1)
public class CuttingSpeed {
    private final List<CuttingProblem.Demand> twoBeds =
            Jobs.pieces(2900, 3, 1400, 3, 1200, 3, 900, 3, 1700, 9, 2300, 3, 800, 6);
    private final CuttingProblem oneLength =
            Jobs.job("one length", 4, 10, List.of(Jobs.board(4800, "36.00")), twoBeds);
    private final CuttingProblem fourLengths = Jobs.job(
            "four lengths",
            4,
            10,
            List.of(
                    Jobs.board(2400, "17.40"),
                    Jobs.board(3000, "21.90"),
                    Jobs.board(3600, "26.40"),
                    Jobs.board(4800, "36.00")),
            twoBeds);
    private final CuttingProblem field = Shapes.trade(60, 3000, 8, 30, 1).problem();

    @Benchmark
    public CuttingResult twoBedsFromOneLength() {
        return CuttingSolver.solve(oneLength, CuttingSolver.QUICK);
    }

    @Benchmark
    public CuttingResult twoBedsFromFourLengths() {
        return CuttingSolver.solve(fourLengths, CuttingSolver.QUICK);
    }

    @Benchmark
    public CuttingResult sixtyLengthsThreeThousandPieces() {
        return CuttingSolver.solve(field, CuttingSolver.QUICK);
    }

    /** 60 covering rows, 300 patterns: what every pricing round would cost by a general library. */
    @Benchmark
    public double oneLinearProgrammeByOjAlgo() {
        Random random = new Random(3);
        ExpressionsBasedModel model = new ExpressionsBasedModel();
        Expression[] rows = new Expression[60];
        for (int r = 0; r < rows.length; r++) rows[r] = model.newExpression("r" + r).lower(1 + random.nextInt(80));
        for (int c = 0; c < 300; c++) {
            Variable x = model.newVariable("x" + c).lower(0).weight(0.9 + 0.2 * random.nextDouble());
            rows[c % 60].set(x, 1 + random.nextInt(3));
            rows[random.nextInt(60)].set(x, 1 + random.nextInt(2));
        }
        return model.minimise().getValue();
    }
}
