package lapyard.cutting;

import static lapyard.cutting.Jobs.job;
import static lapyard.cutting.Jobs.onHand;
import static lapyard.cutting.Jobs.piece;
import static lapyard.cutting.Jobs.pieces;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is left over when boards on hand run out: how few it could be, and which boards would hold it. */
class ShortageTest {
    private static final int CASES = 150;
    private static final long SEED = 7_300_000;

    /** Four pieces over half a board and three boards: each board holds one of them, so one is left over. */
    @Test
    void countingProvesThatAPieceIsLeftOver() {
        var result = Jobs.solved(job("x", 4, 0, List.of(onHand("R", 1900, "3", 3)), pieces(957, 4)), CuttingSolver.QUICK);
        assertEquals(1, result.left());
        assertTrue(result.unplacedProven());
        assertEquals(1, result.shortage().atLeast());
        assertEquals(
                List.of(new Shortage.Way(new BigDecimal("3"), List.of(new Shortage.More("R", 1, 957, 1)))),
                result.shortage().ways());
    }

    /** The boards hold one and two of five 700s (2 x 700 + 4 = 1404); two more short boards cost 8, a long one 9. */
    @Test
    void theCheapestBoardsThatHoldTheRestComeFirst() {
        var stock = List.of(onHand("short", 800, "4", 1), onHand("long", 1410, "9", 1));
        var result = Jobs.solved(job("x", 4, 0, stock, pieces(700, 5)), CuttingSolver.QUICK);
        assertEquals(2, result.left());
        assertTrue(result.unplacedProven());
        var ways = result.shortage().ways();
        assertEquals(new Shortage.Way(new BigDecimal("8"), List.of(new Shortage.More("short", 2, 700, 1))), ways.get(0));
        assertEquals(new Shortage.Way(new BigDecimal("9"), List.of(new Shortage.More("long", 1, 1404, 1))), ways.get(1));
    }

    /** Boards without a worth are counted: no more of them than the rest needs. */
    @Test
    void boardsWithoutAWorthAreAskedForNoMoreThanNeeded() {
        var stock = List.of(onHand("A", 2600, "0", 3), onHand("B", 1400, "0", 1));
        var result = Jobs.solved(job("x", 4, 0, stock, pieces(2300, 4, 1200, 2)), CuttingSolver.QUICK);
        assertEquals(2, result.left());
        assertTrue(result.unplacedProven());
        var boards = result.shortage().ways().get(0).boards();
        assertEquals(2, boards.stream().mapToInt(Shortage.More::count).sum(), boards.toString());
        assertEquals(List.of("A", "B"), boards.stream().map(Shortage.More::stock).sorted().toList());
    }

    private static List<Shortage.Way> ways(List<CuttingProblem.Stock> stock, double... pieces) {
        return Jobs.solved(job("x", 4, 10, stock, pieces(pieces)), CuttingSolver.QUICK).shortage().ways();
    }

    private static CuttingProblem.Stock kind(String id, double length, String price, String salvage, int faces, boolean sawnEnd) {
        return new CuttingProblem.Stock(id, length, new BigDecimal(price), OptionalInt.of(0), faces, new BigDecimal(salvage), sawnEnd);
    }

    /** Of two boards as long the one that is cheaper, has as many good faces and an end sawn if the other has; else both are told. */
    @Test
    void ofBoardsThatDoTheSameTheCheapestIsTold() {
        var plain = kind("plain", 1000, "3", "0", 1, false);
        for (var other : List.of(kind("dearer", 1000, "4", "0", 1, false), kind("worse", 1000, "3", "0", 0, false), kind("as good", 1000, "3", "0", 1, false))) {
            var told = ways(List.of(plain, other), 900, 1);
            assertEquals(List.of(List.of(new Shortage.More("plain", 1, 920, 1))), told.stream().map(Shortage.Way::boards).toList(), other.id());
        }
        var first = List.of("plain", "other");
        assertEquals(first, told(ways(List.of(plain, kind("other", 1000, "4", "0", 2, false)), 900, 1)), "more faces");
        assertEquals(first, told(ways(List.of(plain, kind("other", 1000, "4", "0", 1, true)), 900, 1)), "a sawn end");
        assertEquals(List.of("other"), told(ways(List.of(kind("plain", 1000, "4", "0", 1, false), kind("other", 1000, "3", "0", 1, true)), 900, 1)), "a sawn end and cheaper");
        assertEquals(List.of("other"), told(ways(List.of(kind("plain", 1000, "4", "0", 1, true), kind("other", 1000, "3", "0", 1, true)), 900, 1)), "both sawn");
        assertEquals(first, told(ways(List.of(plain, kind("other", 1100, "4", "0", 1, false)), 900, 1)), "longer");
    }

    private static List<String> told(List<Shortage.Way> ways) {
        return ways.stream().map(way -> way.boards().get(0).stock()).toList();
    }

    /** A sawn end is not trimmed again: 990 of 1000 hold a piece, of 980 with both ends to trim they do not. */
    @Test
    void aSawnEndMayHoldWhatTwoRoughOnesDoNot() {
        assertEquals(List.of("sawn"), told(ways(List.of(kind("rough", 1000, "1", "0", 1, false), kind("sawn", 1000, "2", "0", 1, true)), 990, 1)));
    }

    /** As dear, the fewest boards come first, then the shortest; what has a price is reckoned at it, else at what it is worth kept. */
    @Test
    void ofWaysAsDearTheOneWithTheFewestAndShortestBoardsComesFirst() {
        assertEquals(List.of("long", "short"), told(ways(List.of(kind("short", 1000, "4", "0", 1, false), kind("long", 2100, "8", "0", 1, false)), 900, 2)));
        assertEquals(List.of("short", "long"), told(ways(List.of(kind("long", 1200, "4", "0", 1, false), kind("short", 1000, "4", "0", 1, false)), 900, 1)));
        assertEquals(new BigDecimal("3"), ways(List.of(kind("priced", 1000, "3", "2", 1, false)), 900, 1).get(0).cost());
        assertEquals(0, new BigDecimal("2").compareTo(ways(List.of(kind("kept", 1000, "0", "2", 1, false)), 900, 1).get(0).cost()));
        assertEquals(List.of("priced", "kept"), told(ways(List.of(kind("kept", 1000, "0", "4", 1, false), kind("priced", 1100, "3", "2", 1, false)), 900, 1)));
    }

    /** Of many kinds the cheapest are told, five ways in all. */
    @Test
    void ofManyKindsTheCheapestFiveAreTold() {
        List<CuttingProblem.Stock> stock = new ArrayList<>();
        for (int price = 9; price > 0; price--) stock.add(kind("S" + price, 900 + 30 * price, String.valueOf(price), "0", 1, false));
        assertEquals(List.of("S1", "S2", "S3", "S4", "S5"), told(ways(stock, 900, 1)));
    }

    /** Counted out one by one: boards that hold so many of a length and those above, and the shortest pieces laid end to end on all boards. */
    @Test
    void whatMustBeLeftOverIsCountedOut() {
        int some = 0;
        for (long seed = 9_000_000; seed < 9_000_400; seed++) {
            CuttingProblem problem = scarce(seed);
            Intake intake = new Intake(problem);
            if (intake.nothingToCut()) continue;
            WholeProblem scarce = intake.whole().scarce();
            long most = 0;
            for (int faces = 0; faces <= 2; faces++) {
                int good = faces;
                int[] pieces = each(scarce.items(), scarce.demand, i -> scarce.itemFaces[i] >= good, scarce.weight);
                int[] boards = each(scarce.stocks(), scarce.supply, k -> scarce.stockFaces[k] >= good, scarce.capacity);
                for (int least : pieces) {
                    long held = IntStream.of(boards).map(board -> board / least).sum();
                    most = Math.max(most, IntStream.of(pieces).filter(piece -> piece >= least).count() - held);
                }
                int left = IntStream.of(boards).sum();
                int over = 0;
                for (int piece : pieces) {
                    if (piece <= left) left -= piece;
                    else over++;
                }
                most = Math.max(most, over);
            }
            assertEquals(most, Lacking.byCounting(scarce), problem.name());
            if (most > 0) some++;
        }
        assertTrue(some > 100, "some are left over in " + some);
    }

    /** Shortest first, each as often as there are of it. */
    private static int[] each(int kinds, int[] count, IntPredicate counts, int[] length) {
        return IntStream.range(0, kinds).filter(counts).flatMap(i -> IntStream.generate(() -> length[i]).limit(count[i])).sorted().toArray();
    }

    /** Sixteen pieces are sawn from boards to buy; two of four long ones fit boards on hand, which cost nothing but can't replace those bought. */
    @ParameterizedTest
    @ValueSource(strings = {"0", "5"})
    void boardsOnHandAreAskedForTheRestAloneAndBoughtOnesAreBought(String worth) {
        var stock = List.of(Jobs.board(3000, "36"), onHand("K", 3300, worth, 2));
        var result = Jobs.solved(job("x", 3, 0, stock, pieces(3280, 4, 1450, 16)), CuttingSolver.QUICK);
        assertEquals(2, result.left());
        assertEquals(List.of(new Shortage.Way(new BigDecimal(worth).multiply(BigDecimal.valueOf(2)), List.of(new Shortage.More("K", 2, 3280, 1)))),
                result.shortage().ways());
    }

    /**
     * Boards with two good faces cut up without any waste, and one long piece with no board left for it. No board to add serves the
     * others, so the shorter search that names boards would have to cut all of them up again without waste, and does not.
     */
    @ParameterizedTest
    @ValueSource(longs = {9_600, 9_601, 9_605})
    void tightlyCutJobsNameBoardsForTheRestToo(long seed) {
        Random random = new Random(seed);
        List<CuttingProblem.Stock> stock = new ArrayList<>();
        List<CuttingProblem.Demand> pieces = new ArrayList<>();
        stock.add(new CuttingProblem.Stock("long", 3000, BigDecimal.ONE, OptionalInt.of(0), 1));
        pieces.add(new CuttingProblem.Demand("long piece", 2900, 1, 1, 0));
        for (int b = 0; b < 20; b++) {
            int length = 1200 + 100 * random.nextInt(16);
            for (int left = length + 4; left > 0; ) {
                int most = Math.min(700, left - 4);
                int piece = most <= 400 || left - 4 <= 600 ? left - 4 : 200 + random.nextInt(most - 400);
                pieces.add(new CuttingProblem.Demand("p" + pieces.size(), piece, 1, 1, 2));
                left -= piece + 4;
            }
            stock.add(new CuttingProblem.Stock("b" + b, length, BigDecimal.valueOf(length, 2), OptionalInt.of(1), 2));
        }
        var result = Jobs.solved(job("tight " + seed, 4, 0, stock, pieces), CuttingSolver.QUICK);
        assertEquals(1, result.left());
        var ways = result.shortage().ways();
        assertEquals(List.of(new Shortage.More("long", 1, 2900, 1)), ways.get(0).boards());
    }

    @Test
    void aPieceThatNoBoardCouldHoldNamesTheLengthThatWould() {
        var result = CuttingSolver.solve(
                job("x", 4, 10, List.of(Jobs.board(2400, "9")), List.of(piece("A", 2500, 2), piece("B", 900, 1))), CuttingSolver.QUICK);
        assertTrue(result.unplacedProven());
        assertEquals(List.of(new Shortage.Way(BigDecimal.ZERO, List.of(new Shortage.More("", 2, 2520, 0)))), result.shortage().ways());
    }

    @Test
    void noWayOfSharingOutLeavesFewerOverAndNoCheaperBoardsHoldTheRest() {
        int lacking = 0;
        int priced = 0;
        for (long seed = SEED; seed < SEED + CASES; seed++) {
            CuttingProblem problem = scarce(seed);
            CuttingResult result = Jobs.solved(problem, CuttingSolver.QUICK);
            assertEquals(fewest(problem), result.left(), problem.name() + ": " + result);
            assertTrue(result.unplacedProven(), problem.name() + ": " + result);
            if (result.left() == 0) {
                assertEquals(Shortage.NONE, result.shortage());
                continue;
            }
            lacking++;
            var ways = result.shortage().ways();
            for (var way : ways) {
                assertEquals(0, fewest(with(problem, way.boards())), problem.name() + ": " + way);
            }
            if (result.unplaced().stream().allMatch(CuttingResult.Unplaced::scarce)) {
                priced++;
                assertEquals(0, cheapest(problem, result.left()).compareTo(ways.get(0).cost()), problem.name() + ": " + ways);
            }
        }
        assertTrue(lacking > CASES / 3 && priced > CASES / 4, lacking + " lacking, " + priced + " priced");
    }

    /** Up to seven pieces and a few boards on hand, too few more often than not. */
    private static CuttingProblem scarce(long seed) {
        Random random = new Random(seed);
        List<CuttingProblem.Stock> stock = new ArrayList<>();
        int kinds = 1 + random.nextInt(3);
        for (int k = 0; k < kinds; k++) {
            stock.add(new CuttingProblem.Stock(
                    "S" + k, 700 + random.nextInt(20) * 50, BigDecimal.valueOf(100 + random.nextInt(300), 2),
                    OptionalInt.of(random.nextInt(3)), random.nextInt(3)));
        }
        List<CuttingProblem.Demand> pieces = new ArrayList<>();
        int left = 2 + random.nextInt(6);
        while (left > 0) {
            int count = 1 + random.nextInt(Math.min(left, 3));
            pieces.add(new CuttingProblem.Demand(
                    "P" + pieces.size(), 150 + random.nextInt(20) * (random.nextBoolean() ? 50 : 37.5), count, 1, Math.max(0, random.nextInt(5) - 2)));
            left -= count;
        }
        return new CuttingProblem("scarce " + seed, random.nextInt(5), random.nextInt(3) * 5, 300, 0, stock, pieces);
    }

    /** Takes one piece after the other away until the rest can be cut. */
    private static int fewest(CuttingProblem problem) {
        int all = problem.pieces().stream().mapToInt(CuttingProblem.Demand::count).sum();
        for (int out = 0; out <= all; out++) if (without(problem, 0, out)) return out;
        throw new AssertionError("nothing can always be cut");
    }

    private static boolean without(CuttingProblem problem, int from, int out) {
        if (out == 0) return BruteForce.of(problem) != null;
        for (int i = from; i < problem.pieces().size(); i++) {
            var piece = problem.pieces().get(i);
            if (piece.count() == 0) continue;
            List<CuttingProblem.Demand> fewer = new ArrayList<>(problem.pieces());
            fewer.set(i, new CuttingProblem.Demand(piece.id(), piece.lengthMm(), piece.count() - 1, piece.stage(), piece.goodFaces()));
            if (without(problem.with(problem.stock(), fewer), i, out - 1)) return true;
        }
        return false;
    }

    private static CuttingProblem with(CuttingProblem problem, List<Shortage.More> more) {
        List<CuttingProblem.Stock> stock = new ArrayList<>(problem.stock());
        for (var board : more) {
            stock.add(new CuttingProblem.Stock(
                    "more " + stock.size(), board.leastMm(), BigDecimal.ONE, OptionalInt.of(board.count()), board.goodFaces()));
        }
        return problem.with(stock, problem.pieces());
    }

    /** Every set of as many boards as there are pieces left over, or fewer. */
    private static BigDecimal cheapest(CuttingProblem problem, int most) {
        int[] there = new int[problem.stock().size()];
        return cheapest(problem, there, 0, most);
    }

    private static BigDecimal cheapest(CuttingProblem problem, int[] more, int from, int most) {
        List<CuttingProblem.Stock> stock = new ArrayList<>();
        BigDecimal cost = BigDecimal.ZERO;
        for (int k = 0; k < more.length; k++) {
            var board = problem.stock().get(k);
            stock.add(board.with(board.available().getAsInt() + more[k]));
            cost = cost.add(board.price().multiply(BigDecimal.valueOf(more[k])));
        }
        if (BruteForce.of(problem.with(stock, problem.pieces())) != null) return cost;
        BigDecimal least = BigDecimal.valueOf(1_000_000);
        for (int k = from; k < more.length && most > 0; k++) {
            more[k]++;
            least = least.min(cheapest(problem, more, k, most - 1));
            more[k]--;
        }
        return least;
    }
}
