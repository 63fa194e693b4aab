package lapyard.bench;

import java.math.BigDecimal;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import lapyard.sheets.RollProblem;
import lapyard.sheets.RollResult;
import lapyard.sheets.RollSolver;
import lapyard.sheets.TradeJobs;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** What a job sheet waits for its roll layouts: the quick effort, warm. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 3, time = 1)
@Fork(1)
public class RollSpeed {
    /** {@code worked} is three liner pieces on one roll; a number is so many pieces on six widths. */
    @Param({"worked", "8", "14", "60", "200"})
    public String job;

    private RollProblem problem;

    @Setup
    public void set() {
        problem = job.equals("worked")
                ? new RollProblem(
                        job,
                        List.of(new RollProblem.Stock("W4", 4000, new BigDecimal("9.00"), 500, OptionalDouble.empty())),
                        List.of(
                                new RollProblem.Piece("M-R1", 3960, 2460, 1),
                                new RollProblem.Piece("M-R2", 2760, 1780, 1),
                                new RollProblem.Piece("N-R1", 2760, 1860, 1)),
                        true,
                        true)
                : TradeJobs.job(Integer.parseInt(job), 1, true);
    }

    @Benchmark
    public RollResult quick() {
        return RollSolver.solve(problem, RollSolver.QUICK);
    }
}
