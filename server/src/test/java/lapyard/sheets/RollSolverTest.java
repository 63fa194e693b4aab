package lapyard.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import lapyard.plan.Told;
import lapyard.working.Effort;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RollSolverTest {
    private static final RollProblem.Stock W4 = roll("W4", 4000, "9.00", 500);
    private static final RollProblem.Piece M1 = new RollProblem.Piece("M-R1", 3960, 2460, 1);
    private static final RollProblem.Piece M2 = new RollProblem.Piece("M-R2", 2760, 1780, 1);
    private static final RollProblem.Piece N1 = new RollProblem.Piece("N-R1", 2760, 1860, 1);

    static RollProblem.Stock roll(String id, double width, String price, double step) {
        return new RollProblem.Stock(id, width, new BigDecimal(price), step, OptionalDouble.empty());
    }

    private static RollProblem job(List<RollProblem.Stock> rolls, RollProblem.Piece... pieces) {
        return new RollProblem("job", rolls, List.of(pieces), true, true);
    }

    private static RollResult solved(RollProblem problem) {
        return LayoutJudge.check(problem, RollSolver.solve(problem, RollSolver.QUICK));
    }

    /** Worked by hand: 2460 and 1780 one after the other; 1860; 2460, then the two 2760s turned side by side. */
    @ParameterizedTest(name = "{0}: used {1}, bought {2}, {3}")
    @CsvSource({"M, 4240, 4500, 40.50", "N, 1860, 2000, 18.00", "MN, 5220, 5500, 49.50"})
    void linersOfTwoBedsTakeTheWorkedLengths(String beds, double used, double bought, BigDecimal cost) {
        List<RollProblem.Piece> pieces = new ArrayList<>();
        if (beds.contains("M")) pieces.addAll(List.of(M1, M2));
        if (beds.contains("N")) pieces.add(N1);
        RollProblem problem = new RollProblem(beds, List.of(W4), pieces, true, true);
        for (Effort effort : List.of(RollSolver.QUICK, RollSolver.FULL)) {
            RollResult result = LayoutJudge.check(problem, RollSolver.solve(problem, effort));
            assertEquals(1, result.rolls().size());
            assertEquals(used, result.rolls().get(0).usedMm());
            assertEquals(bought, result.rolls().get(0).boughtMm());
            assertEquals(cost, result.cost());
            assertTrue(result.proven());
        }
    }

    @Test
    void withoutTurningTheTwoNarrowPiecesLieOneAfterTheOther() {
        RollProblem problem = new RollProblem("grain", List.of(W4), List.of(M1, M2, N1), false, true);
        RollResult result = solved(problem);
        // 2460 + 1780 + 1860 = 6100
        assertEquals(6100, result.rolls().get(0).usedMm());
        assertEquals(new BigDecimal("58.50"), result.cost());
        assertTrue(result.proven());
    }

    @Test
    void aPieceWiderThanEveryRollIsNamedWithItsAmountAndTheRestIsLaid() {
        RollResult result = solved(job(List.of(W4), new RollProblem.Piece("Z", 4460, 4200, 2), N1));
        assertEquals(new BigDecimal("18.00"), result.cost());
        assertEquals(1, result.unplaced().size());
        assertEquals(2, result.unplaced().get(0).count());
        assertEquals(
                "4460 x 4200 is wider than every roll both ways: the widest is 4000, short by 200; add a roll at least"
                        + " 4200 wide, or split the piece with a lap",
                result.unplaced().get(0).why());
    }

    @Test
    void withoutAnyRollEveryPieceIsNamed() {
        RollResult result = solved(job(List.of(), M1, N1));
        assertEquals(2, result.unplaced().size());
        assertEquals(
                "no roll is listed: add one at least 2460 wide",
                result.unplaced().get(0).why());
        assertEquals(0, result.cost().signum());
    }

    @Test
    void noPiecesCostNothing() {
        RollResult result = solved(job(List.of(W4)));
        assertEquals(0, result.cost().signum());
        assertTrue(result.proven());
    }

    @Test
    void narrowAndWideRollsAreMixedWhereThatIsCheaper() {
        RollProblem.Stock narrow = roll("N", 1000, "2.00", 1000);
        RollProblem.Stock wide = roll("W", 3000, "9.00", 100);
        RollProblem problem = job(
                List.of(wide, narrow),
                new RollProblem.Piece("a", 2900, 1100, 1),
                new RollProblem.Piece("b", 1000, 900, 3));
        RollResult result = solved(problem);
        // wide 1.1 m for a is 9.90; three b take 2.7 m, sold as 3 m, of narrow: 6.00, or 0.9 m of wide: 8.10
        assertEquals(new BigDecimal("15.90"), result.cost());
        assertTrue(result.proven());
        assertEquals(2, result.rolls().size());
    }

    @Test
    void noRunIsLongerThanIsSoldInOnePiece() {
        RollProblem.Stock whole =
                new RollProblem.Stock("25 m", 1000, new BigDecimal("2.00"), 25_000, OptionalDouble.of(25_000));
        RollProblem problem = job(List.of(whole), new RollProblem.Piece("strip", 1000, 9_000, 5));
        RollResult result = solved(problem);
        // two strips a roll, so three whole rolls
        assertEquals(3, result.rolls().size());
        assertEquals(new BigDecimal("150.00"), result.cost());
        assertTrue(result.proven());
    }

    @Test
    void whenTheRollsOnHandAreUsedUpTheRestIsNamed() {
        RollProblem.Stock onHand = new RollProblem.Stock(
                "left from spring", 1000, BigDecimal.ZERO, 1, OptionalDouble.of(4_000), OptionalInt.of(1));
        RollResult result = solved(job(List.of(onHand), new RollProblem.Piece("strip", 1000, 1_500, 3)));
        assertEquals(2, result.rolls().get(0).placed().size());
        assertEquals(1, result.unplaced().get(0).count());
        assertTrue(result.unplaced().get(0).why().contains("used up, 1 left over (left from spring: 1)"));
        assertTrue(!result.proven() || result.cost().signum() == 0);
    }

    @Test
    void aRemnantOnHandIsUsedBeforeAnythingIsBought() {
        RollProblem.Stock onHand = new RollProblem.Stock(
                "left from spring", 1000, BigDecimal.ZERO, 1, OptionalDouble.of(4_000), OptionalInt.of(1));
        RollResult result = solved(
                job(List.of(roll("new", 1000, "3.00", 500), onHand), new RollProblem.Piece("strip", 1000, 1_500, 3)));
        assertEquals(new BigDecimal("4.50"), result.cost());
        assertEquals(List.of(), result.unplaced());
    }

    /** Sixty equal beds ask for sixty equal liners; the table counts equal pieces instead of telling them apart. */
    @Test
    void sixtyEqualLinersAreLaidAtTheLeastLengthProved() {
        RollProblem problem = job(List.of(roll("W4", 4000, "9.00", 1000)), new RollProblem.Piece("R", 3360, 2160, 60));
        RollResult result = solved(problem);
        // 3360 across leaves nothing beside it and 2160 across neither, so 60 x 2160 = 129.6 m
        assertEquals(129_600, result.rolls().get(0).usedMm());
        assertEquals(new BigDecimal("1170.00"), result.cost());
        assertTrue(result.proven());
    }

    @Test
    void theSameProblemGivesTheSameLayout() {
        for (boolean straight : new boolean[] {true, false}) {
            RollProblem problem = TradeJobs.job(40, 5, straight);
            Effort effort = new Effort(5_000, Duration.ofHours(1));
            RollResult once = RollSolver.solve(problem, effort);
            RollResult again = RollSolver.solve(problem, effort);
            assertEquals(once.rolls(), again.rolls());
            assertEquals(once.cost(), again.cost());
            assertEquals(once.lowerBound(), again.lowerBound());
        }
    }

    @Test
    void micrometresAreKeptExactly() {
        RollProblem problem = job(
                List.of(roll("r", 2000.001, "1", 0.001)),
                new RollProblem.Piece("a", 1000.0005 * 2, 10.001, 1),
                new RollProblem.Piece("b", 2000.001, 0.002, 3));
        RollResult result = solved(problem);
        assertEquals(10.007, result.rolls().get(0).usedMm());
        assertTrue(result.proven());
    }

    @ParameterizedTest(name = "{0} {1}: {2}")
    @CsvSource(delimiter = '|', textBlock = """
        piece width  | 0         | piece a: "width" is 0 mm; at least 0.001 mm is needed. Give a value from 0.001 mm to 1000000 mm.
        piece width  | -5        | piece a: "width" is -5 mm; at least 0.001 mm is needed. Give a value from 0.001 mm to 1000000 mm.
        piece width  | NaN       | piece a: "width" is NaN mm; at least 0.001 mm is needed. Give a value from 0.001 mm to 1000000 mm.
        piece width  | Infinity  | piece a: "width" is Infinity mm; at most 1000000 mm is possible. Give a value from 0.001 mm to 1000000 mm.
        piece width  | 1e9       | piece a: "width" is 1000000000 mm; at most 1000000 mm is possible. Give a value from 0.001 mm to 1000000 mm.
        piece width  | 10.00049  | piece a: "width" is 10.00049 mm, which is finer than 0.001 mm. Round it to 0.001 mm.
        piece count  | 0         | piece a: "count" is 0; at least 1 is needed. Give a value from 1 to 2147483647.
        piece count  | 30000     | problem: "pieces" has 30000 pieces; at most 20000 pieces are possible. Split the job in two.
        roll width   | 0         | roll r: "width" is 0 mm; at least 0.001 mm is needed. Give a value from 0.001 mm to 1000000 mm.
        roll step    | 0         | roll r: "step" is 0 mm; at least 0.001 mm is needed. Give a value from 0.001 mm to 1000000 mm.
        roll price   | -1        | roll r: "price" is -1; at least 0 is needed. Give a value from 0 to 999999999.
        roll longest | 5         | roll r: A run of the roll may be 5 mm long, and its sold step is 10 mm. Give a longer run, or a shorter step.
        """)
    void refusesWhatCanNeverMakeSenseByNameAndAmount(String what, String value, String says) {
        double number = Double.parseDouble(value);
        RollProblem.Stock roll = new RollProblem.Stock(
                "r",
                what.equals("roll width") ? number : 100,
                what.equals("roll price") ? new BigDecimal(value) : BigDecimal.ONE,
                what.equals("roll step") ? number : 10,
                what.equals("roll longest") ? OptionalDouble.of(number) : OptionalDouble.empty());
        RollProblem.Piece piece = new RollProblem.Piece(
                "a", what.equals("piece width") ? number : 10, 10, what.equals("piece count") ? (int) number : 1);
        RollProblem problem = job(List.of(roll), piece);
        String message = Told.refusal(assertThrows(IllegalArgumentException.class, () -> RollSolver.solve(problem, RollSolver.QUICK)));
        assertEquals(says, message);
    }

    @Test
    void refusesOneRollIdTwice() {
        assertThrows(IllegalArgumentException.class, () -> RollSolver.solve(job(List.of(W4, W4), M1), RollSolver.QUICK));
    }
}
