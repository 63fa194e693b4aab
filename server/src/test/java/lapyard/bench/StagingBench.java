package lapyard.bench;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.TreeMap;
import lapyard.stages.Reference;
import lapyard.stages.ResearchSample;
import lapyard.stages.ScheduleJudge;
import lapyard.stages.StagingJobs;
import lapyard.stages.StagingProblem;
import lapyard.stages.StagingResult;
import lapyard.stages.StagingSolver;
import lapyard.working.Effort;

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
        OUT.printf("%n| beds, tasks, people | bound | end | latest end first | s |%n| --- | --- | --- | --- | --- |%n");
        for (int[] size : new int[][] {{3, 1}, {8, 2}, {8, 4}, {20, 2}, {20, 4}, {50, 3}, {50, 6}}) {
            var problem = StagingJobs.beds(size[0], size[1], 1);
            StagingResult first = StagingSolver.solve(problem, new Effort(1, Duration.ofMinutes(1)));
            for (Effort own : new Effort[] {StagingSolver.QUICK, new Effort(Long.MAX_VALUE, Duration.ofSeconds(3))}) {
                StagingResult result = ScheduleJudge.check(problem, StagingSolver.solve(problem, own));
                OUT.printf("| %d, %d, %d | %s | %s | %s | %.3f |%n", size[0], 8 * size[0], size[1], spans(problem, result, true),
                        spans(problem, result, false), spans(problem, first, false), result.seconds());
            }
        }
        if (arguments.length > 1) return;
        for (int tasks : new int[] {30, 60}) {
            double above = 0;
            int proved = 0;
            double ours = 0;
            double theirs = 0;
            int jobs = 6;
            for (int seed = 1; seed <= jobs; seed++) {
                var problem = StagingJobs.scarce(tasks, seed);
                StagingResult result = ScheduleJudge.check(problem, StagingSolver.solve(problem, effort));
                Reference.Answer other = Reference.byIntervals(problem, 10 * tasks, 10 * seconds);
                OUT.printf("%s %d, bound %d, %.2f s; CP-SAT %d, bound %d%n", result.name(), result.makespan(),
                        result.lowerBound(), result.seconds(), other.makespan(), other.bound());
                int bound = Math.max(result.lowerBound(), other.bound());
                ours += 100.0 * result.makespan() / bound - 100;
                theirs += 100.0 * other.makespan() / bound - 100;
                above += 100.0 * result.makespan() / result.lowerBound() - 100;
                proved += result.proven() ? 1 : 0;
            }
            OUT.printf("scarce, %d tasks: %.2f %% above our bound, %d of %d proved; above the best bound %.2f %%, CP-SAT in ten"
                    + " times as long %.2f %%%n", tasks, above / jobs, proved, jobs, ours / jobs, theirs / jobs);
        }
    }

    /** Worked hours to the end and summed hours that beds stand open, in that calendar of 16 hours a week. */
    private static String spans(StagingProblem problem, StagingResult result, boolean bound) {
        if (bound) return String.valueOf(worked(result.lowerBound()));
        Map<String, int[]> open = new TreeMap<>();
        problem.tasks().forEach(task -> open.merge(task.group(),
                new int[] {worked(result.starts().get(task.id())), worked(result.ends().get(task.id()))},
                (a, b) -> new int[] {Math.min(a[0], b[0]), Math.max(a[1], b[1])}));
        return worked(result.makespan()) + ", open " + open.values().stream().mapToInt(span -> span[1] - span[0]).sum();
    }

    private static int worked(int clock) {
        int hours = clock / 168 * 16;
        int rest = clock % 168;
        return hours + Math.max(0, Math.min(8, rest - 9)) + Math.max(0, Math.min(8, rest - 33));
    }
}
