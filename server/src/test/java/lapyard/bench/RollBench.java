package lapyard.bench;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintStream;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import lapyard.sheets.LayoutJudge;
import lapyard.sheets.PlainPackers;
import lapyard.sheets.RollProblem;
import lapyard.sheets.RollResult;
import lapyard.sheets.RollSolver;
import lapyard.sheets.TradeJobs;
import lapyard.sheets.WallJobs;
import lapyard.working.Effort;

/**
 * Roll layouts beside first-fit decreasing height and bottom-left fill in the same run; every layout is judged.
 * Argument: seconds a problem (2), told in steps, so that a busy machine gives the same layouts. The research sample is read from {@code lapyard.reference}/sheets/sample.jsonl.
 */
public final class RollBench {
    private static final PrintStream OUT = System.out;
    private static final long WALL_SEED = 7;
    private static final long STEPS_A_SECOND = 150_000;

    private RollBench() {}

    public static void main(String[] arguments) throws IOException {
        double seconds = arguments.length > 0 ? Double.parseDouble(arguments[0]) : 2;
        String reference = System.getProperty("lapyard.reference", "");
        if (reference.isBlank())
            OUT.println(
                    "RESEARCH SAMPLE LEFT OUT: set -Dlapyard.reference to the folder that holds sheets/sample.jsonl");
        else sample(Path.of(reference, "sheets", "sample.jsonl"), seconds);
        trade(seconds * 1.5);
        trade(0);
        walls();
    }

    /** QUICK on strips as walls give them. */
    private static void walls() {
        OUT.printf("%nQUICK, strips of few widths, 12 jobs a row%n| beds | proved | above the bound |%n| --- | --- | --- |%n");
        for (int beds : new int[] {3, 4, 5, 6, 8, 12}) {
            int proved = 0;
            double gap = 0;
            for (int i = 0; i < 12; i++) {
                RollResult cut = solve(WallJobs.job(beds, 1000 * WALL_SEED + 100 * beds + i), 0);
                proved += cut.proven() ? 1 : 0;
                gap += 100 * (cut.cost().doubleValue() / cut.lowerBound().doubleValue() - 1) / 12;
            }
            OUT.printf("| %d | %d | %.2f %% |%n", beds, proved, gap);
        }
    }

    private static RollResult solve(RollProblem problem, double seconds) {
        Effort effort =
                seconds == 0 ? RollSolver.QUICK : Effort.ofSteps((long) (seconds * STEPS_A_SECOND));
        return LayoutJudge.check(problem, RollSolver.solve(problem, effort));
    }

    private static void sample(Path file, double seconds) throws IOException {
        OUT.printf(
                "%n| instance | pieces | known | FFDH | BLF | straight | s | free | s |%n| --- | --- | --- | --- | ---"
                        + " | --- | --- | --- | --- |%n");
        double[] gaps = new double[4];
        int known = 0;
        for (String line : Files.readAllLines(file)) {
            JsonNode node = new ObjectMapper().readTree(line);
            List<RollProblem.Piece> pieces = new ArrayList<>();
            for (JsonNode piece : node.get("pieces"))
                pieces.add(new RollProblem.Piece(
                        "p" + pieces.size(),
                        piece.get(0).asInt(),
                        piece.get(1).asInt(),
                        piece.get(2).asInt()));
            RollProblem.Stock roll = new RollProblem.Stock(
                    "r", node.get("width").asInt(), new BigDecimal(1000), 1, OptionalDouble.empty());
            String name = node.get("name").asText();
            RollProblem straight = new RollProblem(name, List.of(roll), pieces, true, true);
            RollProblem free = new RollProblem(name, List.of(roll), pieces, true, false);
            double[] heights = plain(straight, roll);
            RollResult cut = solve(straight, seconds);
            RollResult laid = solve(free, seconds);
            double[] all = {
                heights[0], heights[1], cut.cost().doubleValue(), laid.cost().doubleValue()
            };
            double height = node.get("known_height").asDouble(0);
            if (height > 0) {
                known++;
                for (int i = 0; i < 4; i++) gaps[i] += 100 * (all[i] / height - 1);
            }
            OUT.printf(
                    "| %s | %d | %s | %.0f | %.0f | %.0f%s | %.2f | %.0f%s | %.2f |%n",
                    name,
                    node.get("n").asInt(),
                    height > 0 ? String.format("%.0f", height) : "not known",
                    all[0],
                    all[1],
                    all[2],
                    cut.proven() ? " proved" : "",
                    cut.seconds(),
                    all[3],
                    laid.proven() ? " proved" : "",
                    laid.seconds());
        }
        OUT.printf(
                "| mean gap to the known height | | | %.1f %% | %.1f %% | %.2f %% | | %.2f %% | |%n",
                gaps[0] / known, gaps[1] / known, gaps[2] / known, gaps[3] / known);
    }

    /** The better of lying low and standing high, for each of the two plain ways. */
    private static double[] plain(RollProblem problem, RollProblem.Stock roll) {
        double[] heights = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
        for (boolean high : new boolean[] {false, true}) {
            List<long[]> sizes = PlainPackers.lying(problem, roll, high);
            if (sizes == null) continue;
            heights[0] = Math.min(heights[0], PlainPackers.shelves(sizes, (long) roll.widthMm()));
            heights[1] = Math.min(heights[1], PlainPackers.bottomLeft(sizes, (long) roll.widthMm()));
        }
        return heights;
    }

    private static void trade(double seconds) {
        OUT.printf("%n%s: cost above our bound, mean of 4 jobs%n", seconds == 0 ? "QUICK" : seconds + " s a problem");
        OUT.printf(
                "| pieces | FFDH | BLF | straight | proved | s | free | proved | s |%n| --- | --- | --- | --- | --- |"
                        + " --- | --- | --- | --- |%n");
        for (int pieces : new int[] {5, 9, 20, 60, 150}) {
            double[] gap = new double[4];
            double[] time = new double[2];
            int[] proved = new int[2];
            int jobs = 4;
            for (int seed = 1; seed <= jobs; seed++) {
                RollProblem straight = TradeJobs.job(pieces, seed, true);
                double[] plain = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
                for (RollProblem.Stock roll : straight.rolls()) {
                    double[] heights = plain(straight, roll);
                    for (int i = 0; i < 2; i++)
                        plain[i] = Math.min(
                                plain[i],
                                Math.ceil(heights[i] / 1000) * roll.price().doubleValue());
                }
                RollResult cut = solve(straight, seconds);
                RollResult free = solve(TradeJobs.job(pieces, seed, false), seconds);
                double bound = free.lowerBound().doubleValue();
                double[] costs = {
                    plain[0], plain[1], cut.cost().doubleValue(), free.cost().doubleValue()
                };
                for (int i = 0; i < 4; i++)
                    gap[i] += 100 * (costs[i] / (i == 2 ? cut.lowerBound().doubleValue() : bound) - 1) / jobs;
                time[0] += cut.seconds() / jobs;
                time[1] += free.seconds() / jobs;
                proved[0] += cut.proven() ? 1 : 0;
                proved[1] += free.proven() ? 1 : 0;
            }
            OUT.printf(
                    "| %d | %.1f %% | %.1f %% | %.2f %% | %d of %d | %.2f | %.2f %% | %d of %d | %.2f |%n",
                    pieces, gap[0], gap[1], gap[2], proved[0], jobs, time[0], gap[3], proved[1], jobs, time[1]);
        }
    }
}
