package lapyard.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import java.util.function.UnaryOperator;
import lapyard.working.Effort;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** How the answer must move when the question does; each statement holds for proved answers, which these all are. */
class MetamorphicTest {
    static List<CuttingProblem> jobs() {
        List<CuttingProblem> jobs = new ArrayList<>();
        for (long seed = 21; seed <= 30; seed++) {
            jobs.add(Shapes.trade(4 + (int) (seed % 5), 18, 1 + (int) (seed % 3), (int) (seed % 2), seed).problem());
        }
        return jobs;
    }

    private static BigDecimal cost(CuttingProblem problem) {
        CuttingResult result = Jobs.solved(problem, CuttingSolver.FULL);
        assertTrue(result.proven() && result.unplaced().isEmpty(), problem.name() + ": " + result);
        return result.cost().stripTrailingZeros();
    }

    private static CuttingProblem with(
            CuttingProblem p, double kerf, List<CuttingProblem.Stock> stock, List<CuttingProblem.Demand> pieces) {
        return new CuttingProblem(p.name(), kerf, p.endTrimMm(), p.keepOffcutMm(), 0, stock, pieces);
    }

    private static List<CuttingProblem.Demand> each(
            CuttingProblem p, UnaryOperator<CuttingProblem.Demand> change) {
        return p.pieces().stream().map(change).toList();
    }

    @ParameterizedTest
    @MethodSource("jobs")
    void allLengthsInAnotherUnitCostTheSame(CuttingProblem p) {
        double f = 0.25;
        var stock = p.stock().stream()
                .map(s -> new CuttingProblem.Stock(s.id(), s.lengthMm() * f, s.price(), s.available(), s.goodFaces()))
                .toList();
        var pieces = each(p, d -> new CuttingProblem.Demand(d.id(), d.lengthMm() * f, d.count(), d.stage(), 0));
        var scaled = new CuttingProblem(p.name(), p.kerfMm() * f, p.endTrimMm() * f, p.keepOffcutMm() * f, 0, stock, pieces);
        assertEquals(cost(p), cost(scaled));
    }

    @ParameterizedTest
    @MethodSource("jobs")
    void aLineSplitInTwoAndShuffledCostsTheSame(CuttingProblem p) {
        List<CuttingProblem.Demand> split = new ArrayList<>();
        for (var d : p.pieces()) {
            int part = d.count() / 2;
            if (part > 0) split.add(new CuttingProblem.Demand(d.id() + "a", d.lengthMm(), part, d.stage(), 0));
            split.add(new CuttingProblem.Demand(d.id() + "b", d.lengthMm(), d.count() - part, d.stage(), 0));
        }
        Collections.shuffle(split, new Random(5));
        assertEquals(cost(p), cost(with(p, p.kerfMm(), p.stock(), split)));
    }

    @ParameterizedTest
    @MethodSource("jobs")
    void oneMoreStockLengthNeverCostsMore(CuttingProblem p) {
        List<CuttingProblem.Stock> more = new ArrayList<>(p.stock());
        more.add(new CuttingProblem.Stock("more", 3150, new BigDecimal("14.10"), OptionalInt.empty(), 1));
        assertTrue(cost(with(p, p.kerfMm(), more, p.pieces())).compareTo(cost(p)) <= 0);
    }

    @ParameterizedTest
    @MethodSource("jobs")
    void onePieceLessNeverCostsMore(CuttingProblem p) {
        List<CuttingProblem.Demand> fewer = new ArrayList<>(p.pieces());
        fewer.remove(0);
        assertTrue(cost(with(p, p.kerfMm(), p.stock(), fewer)).compareTo(cost(p)) <= 0);
    }

    @ParameterizedTest
    @MethodSource("jobs")
    void aWiderKerfNeverCostsLess(CuttingProblem p) {
        assertTrue(cost(with(p, p.kerfMm() + 2.5, p.stock(), p.pieces())).compareTo(cost(p)) >= 0);
    }

    @ParameterizedTest
    @MethodSource("jobs")
    void theSameJobAndStepsGiveTheSamePlan(CuttingProblem p) {
        Effort effort = new Effort(20_000, Duration.ofMinutes(5));
        CuttingResult first = CuttingSolver.solve(p, effort);
        CuttingResult second = CuttingSolver.solve(p, effort);
        assertEquals(first.plan(), second.plan());
        assertEquals(first.lowerBound(), second.lowerBound());
    }
}
