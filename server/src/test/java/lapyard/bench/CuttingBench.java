package lapyard.bench;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintStream;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.LongFunction;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.CuttingSolver;
import lapyard.cutting.PlanChecker;
import lapyard.cutting.Reference;
import lapyard.cutting.Shapes;
import lapyard.working.Effort;

/**
 * Our cutting beside first-fit decreasing, best-fit decreasing and OR-Tools CP-SAT on the same cases with the same
 * limit, as a Markdown table. Arguments: seconds a case, then the classes to run separated by commas (all if absent),
 * then {@code alone} to leave the others out. Published instances are added where {@code -Dlapyard.reference=DIR} holds
 * them.
 */
public final class CuttingBench {
    /** Cases a class that CP-SAT is given; at full time each, more would take most of the run. */
    private static final int REFERENCE_CASES = 2;

    private static final PrintStream OUT = System.out;

    private CuttingBench() {}

    /** What one method made of one class. */
    private static final class Row {
        int cases;
        int without;
        int reached;
        int proved;
        double seconds;
        double gap;

        void add(double cost, double best, double bound, boolean proven, double took) {
            cases++;
            if (cost <= best * (1 + 1e-9)) reached++;
            if (proven) proved++;
            seconds += took;
            gap += 100 * (cost / bound - 1);
        }

        /** The time went by without any plan. */
        void none() {
            without++;
        }

        @Override
        public String toString() {
            String none = without == 0 ? "" : "no plan for " + without;
            if (cases == 0) return without == 0 ? "not run" : none;
            return String.format(
                    "%d/%d (%d) %.3f s %.3f %%%s",
                    reached, cases, proved, seconds / cases, gap / cases, without == 0 ? "" : ", " + none);
        }
    }

    public static void main(String[] args) throws IOException {
        double seconds = args.length > 0 ? Double.parseDouble(args[0]) : 10;
        Set<String> wanted = args.length > 1 && !args[1].equals("all") ? Set.of(args[1].split(",")) : null;
        boolean alone = args.length > 2 && args[2].equals("alone");
        OUT.println("known or proved optimum reached / run (proved), mean seconds, mean gap to our bound; limit " + seconds
                + " s a case");
        OUT.println("| class | first-fit decreasing | best-fit decreasing | CP-SAT, 1 thread | Lapyard |");
        OUT.println("|---|---|---|---|---|");
        for (Map.Entry<String, List<Shapes.Case>> entry : classes().entrySet()) {
            if (wanted == null || wanted.contains(entry.getKey())) run(entry.getKey(), entry.getValue(), seconds, alone);
        }
    }

    private static void run(String name, List<Shapes.Case> cases, double seconds, boolean alone) {
        Row first = new Row();
        Row fit = new Row();
        Row reference = new Row();
        Row ours = new Row();
        Effort effort = new Effort((long) (seconds * 5_000_000), Duration.ofMillis((long) (1000 * seconds)));
        for (int i = 0; i < cases.size(); i++) {
            CuttingProblem problem = cases.get(i).problem();
            CuttingResult result = PlanChecker.check(problem, CuttingSolver.solve(problem, effort));
            double cost = result.cost().doubleValue();
            double bound = result.lowerBound().doubleValue();
            double best = cases.get(i).optimum() >= 0 ? cases.get(i).optimum() * cost / result.boards() : bound;
            ours.add(cost, best, bound, result.proven(), result.seconds());
            if (alone) continue;
            long from = System.nanoTime();
            double byFirst = FitDecreasing.cost(problem, false);
            first.add(byFirst, best, bound, byFirst <= bound, (System.nanoTime() - from) / 1e9);
            from = System.nanoTime();
            double byBest = FitDecreasing.cost(problem, true);
            fit.add(byBest, best, bound, byBest <= bound, (System.nanoTime() - from) / 1e9);
            if (i >= REFERENCE_CASES) continue;
            from = System.nanoTime();
            // Room to spare, so that a first plan is not hard to find.
            Reference.Answer answer = Reference.solve(problem, result.boards() * 6 / 5 + 2, seconds);
            double took = (System.nanoTime() - from) / 1e9;
            if (answer.found()) reference.add(answer.cents() / 100.0, best, bound, answer.optimal(), took);
            else reference.none();
        }
        OUT.println("| " + name + " | " + first + " | " + fit + " | " + reference + " | " + ours + " |");
    }

    private static Map<String, List<Shapes.Case>> classes() throws IOException {
        Map<String, List<Shapes.Case>> classes = new LinkedHashMap<>();
        classes.put("published", published());
        classes.put("uniform-250", cases(1, 6, seed -> Shapes.uniform(250, seed)));
        classes.put("uniform-500", cases(7, 12, seed -> Shapes.uniform(500, seed)));
        classes.put("triplets-120-249", cases(1, 4, seed -> Shapes.triplets(seed < 3 ? 120 : 249, seed)));
        classes.put("triplets-501", cases(301, 308, seed -> Shapes.triplets(501, seed)));
        classes.put("narrow-100-120", cases(1, 8, seed -> Shapes.narrow(seed < 5 ? 100 : 120, seed)));
        classes.put(
                "spread-50-500",
                cases(1, 12, seed -> Shapes.spread(
                        new int[] {50, 100, 200, 500}[(int) (seed % 4)],
                        new int[] {3, 5, 7, 9}[(int) (seed / 3 % 4)],
                        new double[] {0.2, 0.5, 0.9}[(int) (seed % 3)],
                        seed)));
        classes.put("fine-200", cases(1, 4, Shapes::fine));
        classes.put("hard-160-200", cases(1, 6, seed -> Shapes.hard(160 + 20 * (int) (seed % 3), seed)));
        classes.put("augmented-201", cases(301, 308, seed -> Shapes.augmented(false, seed)));
        classes.put("augmented-202-split", cases(301, 308, seed -> Shapes.augmented(true, seed)));
        classes.put("planted-kerf", cases(1, 6, seed -> Shapes.planted(6 * (int) seed, 4800, 4, 10, seed)));
        classes.put(
                "trade-20-60",
                cases(1, 10, seed -> Shapes.trade(
                        5 + (int) seed, 16 + 4 * (int) seed, 1 + (int) (seed % 4), (int) (seed % 3), seed)));
        classes.put(
                "trade-61-300",
                cases(1, 8, seed -> Shapes.trade(
                        10 + 2 * (int) seed, 60 + 30 * (int) seed, 2 + (int) (seed % 4), 2 * (int) (seed % 5), seed)));
        classes.put(
                "trade-301-1000",
                cases(1, 6, seed -> Shapes.trade(
                        25 + 3 * (int) seed, 200 + 130 * (int) seed, 3 + (int) (seed % 4), 4 * (int) (seed % 4), seed)));
        classes.put("trade-60x3000x8+30", cases(1, 6, seed -> Shapes.trade(60, 3000, 8, 30, seed)));
        return classes;
    }

    private static List<Shapes.Case> cases(int from, int to, LongFunction<Shapes.Case> shape) {
        List<Shapes.Case> cases = new ArrayList<>();
        for (long seed = from; seed <= to; seed++) cases.add(shape.apply(seed));
        return cases;
    }

    private static List<Shapes.Case> published() throws IOException {
        String folder = System.getProperty("lapyard.reference", "");
        Path file = Path.of(folder, "cutting", "instances.jsonl");
        List<Shapes.Case> cases = new ArrayList<>();
        if (folder.isBlank() || !Files.isReadable(file)) {
            System.err.println("published instances not run: name their folder by -Dlapyard.reference=DIR");
            return cases;
        }
        for (String line : Files.readAllLines(file)) {
            JsonNode node = new ObjectMapper().readTree(line);
            List<Integer> lengths = new ArrayList<>();
            for (JsonNode item : node.get("items")) {
                for (int i = 0; i < item.get(1).asInt(); i++) lengths.add(item.get(0).asInt());
            }
            int[] all = lengths.stream().mapToInt(Integer::intValue).toArray();
            CuttingProblem problem = Shapes.single(node.get("name").asText(), node.get("capacity").asInt(), all);
            cases.add(new Shapes.Case(problem, node.get("best_known").get("ub").asInt()));
        }
        return cases;
    }

    /** The two plain rules, for each opening board kind, each full board swapped for the cheapest that holds its pieces. */
    private static final class FitDecreasing {
        static double cost(CuttingProblem problem, boolean tightest) {
            double best = Double.POSITIVE_INFINITY;
            for (var opening : problem.stock()) {
                if (opening.available().isEmpty()) best = Math.min(best, cost(problem, opening, tightest));
            }
            return best;
        }

        private static double cost(CuttingProblem problem, CuttingProblem.Stock opening, boolean tightest) {
            TreeMap<Double, Integer> wanted = new TreeMap<>();
            problem.pieces().forEach(d -> wanted.merge(d.lengthMm(), d.count(), Integer::sum));
            List<double[]> boards = new ArrayList<>();
            double usable = opening.lengthMm() - 2 * problem.endTrimMm() + problem.kerfMm();
            for (var entry : wanted.descendingMap().entrySet()) {
                double weight = entry.getKey() + problem.kerfMm();
                for (int i = 0; i < entry.getValue(); i++) {
                    double[] chosen = null;
                    for (double[] board : boards) {
                        double room = usable - board[0];
                        if (weight > room + 1e-6) continue;
                        if (chosen == null || tightest && board[0] > chosen[0]) chosen = board;
                        if (!tightest) break;
                    }
                    if (chosen == null) {
                        if (weight > usable + 1e-6) return Double.POSITIVE_INFINITY;
                        chosen = new double[1];
                        boards.add(chosen);
                    }
                    chosen[0] += weight;
                }
            }
            Map<String, Integer> left = new LinkedHashMap<>();
            problem.stock().forEach(s -> left.put(s.id(), s.available().orElse(Integer.MAX_VALUE)));
            BigDecimal sum = BigDecimal.ZERO;
            for (double[] board : boards) {
                CuttingProblem.Stock cheapest = opening;
                for (var stock : problem.stock()) {
                    double room = stock.lengthMm() - 2 * problem.endTrimMm() + problem.kerfMm();
                    boolean holds = room + 1e-6 >= board[0] && left.get(stock.id()) > 0;
                    if (holds && stock.price().compareTo(cheapest.price()) < 0) cheapest = stock;
                }
                OptionalInt limited = cheapest.available();
                if (limited.isPresent()) left.merge(cheapest.id(), -1, Integer::sum);
                sum = sum.add(cheapest.price());
            }
            return sum.doubleValue();
        }
    }
}
