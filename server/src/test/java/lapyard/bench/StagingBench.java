package lapyard.bench;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.Duration;
import lapyard.stages.Effort;
import lapyard.stages.ResearchSample;
import lapyard.stages.ScheduleJudge;
import lapyard.stages.StagingJobs;
import lapyard.stages.StagingResult;
import lapyard.stages.StagingSolver;

/**
 * Schedules of the research sample and of generated jobs; every schedule is judged. Arguments: seconds a problem (1).
 * The sample is read from {@code lapyard.reference}/scheduling.
 */
public final class StagingBench {
    private static final PrintStream OUT = System.out;

    private StagingBench() {}

    public static void main(String[] arguments) throws IOException {
        double seconds = arguments.length > 0 ? Double.parseDouble(arguments[0]) : 1;
        Effort effort = new Effort(Long.MAX_VALUE, Duration.ofMillis((long) (1000 * seconds)));
        String reference = System.getProperty("lapyard.reference", "");
        if (reference.isBlank()) {
            OUT.println("RESEARCH SAMPLE LEFT OUT: set -Dlapyard.reference to the folder that holds scheduling/sample.json");
        } else {
            double off = 0;
            int count = 0;
            OUT.printf("%n| instance | optimum | ours | bound | proved | s |%n| --- | --- | --- | --- | --- | --- |%n");
            for (ResearchSample.Known known : ResearchSample.read(Path.of(reference, "scheduling"))) {
                StagingResult result = ScheduleJudge.check(known.problem(), StagingSolver.solve(known.problem(), effort));
                OUT.printf("| %s | %d | %d | %d | %s | %.3f |%n", result.name(), known.optimum(), result.makespan(),
                        result.lowerBound(), result.proven() ? "yes" : "no", result.seconds());
                off += 100.0 * result.makespan() / known.optimum() - 100;
                count++;
            }
            OUT.printf("mean deviation from the optimum %.3f %%%n", off / count);
        }
        for (int tasks : new int[] {30, 60}) {
            double above = 0;
            int proved = 0;
            int jobs = 6;
            for (int seed = 1; seed <= jobs; seed++) {
                var problem = StagingJobs.scarce(tasks, seed);
                StagingResult result = ScheduleJudge.check(problem, StagingSolver.solve(problem, effort));
                OUT.printf("%s %d bound %d %.2f s%n", result.name(), result.makespan(), result.lowerBound(), result.seconds());
                above += 100.0 * result.makespan() / result.lowerBound() - 100;
                proved += result.proven() ? 1 : 0;
            }
            OUT.printf("scarce, %d tasks: %.2f %% above our bound, %d of %d proved%n", tasks, above / jobs, proved, jobs);
        }
    }
}
