package lapyard.bench;

import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import lapyard.stages.ScheduleJudge;
import lapyard.stages.StagingJobs;
import lapyard.stages.StagingProblem;
import lapyard.stages.StagingResult;
import lapyard.stages.StagingSolver;
import lapyard.working.Effort;

/**
 * How many of 48 standard nets of each size are proved best. Arguments: steps (40000), seed (1), sizes (30,45,60), {@code each} for a line
 * a net. Rows say how scarce the resources are; every schedule is judged.
 */
public final class StagingProofs {
    private static final PrintStream OUT = System.out;

    private StagingProofs() {}

    public static void main(String[] arguments) {
        Effort effort = Effort.ofSteps(arguments.length > 0 ? Long.parseLong(arguments[0]) : 40_000);
        long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 1;
        boolean each = arguments.length > 3;
        OUT.printf("| tasks, strength | proved | bound below the end | ends in all | processor s |%n| --- | --- | --- | --- | --- |%n");
        for (String size : (arguments.length > 2 ? arguments[2] : "30,45,60").split(",")) {
            int tasks = Integer.parseInt(size);
            for (double strength : new double[] {0.2, 0.5, 0.7, 1}) row(tasks, strength, seed, effort, each);
        }
    }

    private static void row(int tasks, double strength, long seed, Effort effort, boolean each) {
        int nets = 0;
        int proved = 0;
        long ends = 0;
        double below = 0;
        long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        for (double complexity : new double[] {1.5, 1.8, 2.1}) {
            for (double factor : new double[] {0.25, 0.5, 0.75, 1}) {
                StagingProblem net = StagingJobs.standard(tasks, complexity, factor, strength, seed * 1_000 + nets++);
                StagingResult result = ScheduleJudge.check(net, StagingSolver.solve(net, effort));
                if (result.proven()) proved++;
                ends += result.makespan();
                below += 100.0 * (result.makespan() - result.lowerBound()) / result.makespan();
                if (each) OUT.printf("%d, %.2f, %.2f, %.2f: %d to %d%n", tasks, complexity, factor, strength, result.lowerBound(), result.makespan());
            }
        }
        OUT.printf("| %d, %.1f | %d of %d | %.2f %% | %d | %.1f |%n", tasks, strength, proved, nets, below / nets, ends,
                (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - before) / 1e9);
    }
}
