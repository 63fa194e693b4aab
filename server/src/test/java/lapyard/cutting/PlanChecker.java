package lapyard.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.Map;

/**
 * Checks a plan against its problem in decimal arithmetic, sharing no code with the search: fit, demand, supply,
 * stage order, grade, cost, bound.
 */
public final class PlanChecker {
    private PlanChecker() {}

    /** Fails with the first thing that is wrong; pieces named as unplaced may be missing from the plan. */
    public static CuttingResult check(CuttingProblem problem, CuttingResult result) {
        Map<String, CuttingProblem.Stock> stock = new HashMap<>();
        problem.stock().forEach(s -> stock.put(s.id(), s));
        Map<String, CuttingProblem.Demand> demand = new HashMap<>();
        problem.pieces().forEach(d -> demand.put(d.id(), d));
        Map<String, Long> cut = new HashMap<>();
        Map<String, Long> opened = new HashMap<>();
        BigDecimal cost = BigDecimal.ZERO;
        BigDecimal salvage = BigDecimal.ZERO;
        long boards = 0;
        String name = problem.name();
        for (var line : result.plan()) {
            assertTrue(line.count() > 0, name + ": a line counts at least one board");
            assertEquals(line.pieces().size(), line.lengthsMm().size(), name + ": lengths go with pieces");
            assertTrue(!line.pieces().isEmpty(), name + ": a board is opened for something");
            var board = stock.get(line.stock());
            assertTrue(board != null, name + ": unknown board " + line.stock());
            opened.merge(board.id(), (long) line.count(), Long::sum);
            cost = cost.add(board.price().multiply(BigDecimal.valueOf(line.count())));
            salvage = salvage.add(board.salvage().multiply(BigDecimal.valueOf(line.count())));
            boards += line.count();
            BigDecimal room = mm(board.lengthMm()).subtract(mm(problem.endTrimMm()).multiply(BigDecimal.valueOf(board.sawnEnd() ? 1 : 2)));
            int stage = Integer.MIN_VALUE;
            for (int i = 0; i < line.pieces().size(); i++) {
                var piece = demand.get(line.pieces().get(i));
                assertTrue(piece != null, name + ": unknown piece " + line.pieces().get(i));
                assertEquals(piece.lengthMm(), line.lengthsMm().get(i), name + ": length of " + piece.id());
                assertTrue(piece.stage() >= stage, name + ": " + piece.id() + " is cut after a later stage");
                assertTrue(piece.goodFaces() <= board.goodFaces(), name + ": " + piece.id() + " needs a good face");
                if (i > 0 && piece.stage() > stage) room = room.subtract(mm(problem.retrimMm()));
                stage = piece.stage();
                cut.merge(piece.id(), (long) line.count(), Long::sum);
                room = room.subtract(mm(piece.lengthMm()));
                if (i > 0) room = room.subtract(mm(problem.kerfMm()));
            }
            assertTrue(room.signum() >= 0, name + ": " + line.pieces() + " overrun " + board.id() + " by " + room);
            assertEquals(0, room.compareTo(mm(line.leftMm())), name + ": left is " + room + " not " + line.leftMm());
        }
        Map<String, Long> missing = new HashMap<>();
        for (var un : result.unplaced()) {
            assertEquals(demand.get(un.id()).lengthMm(), un.lengthMm(), name + ": unplaced length of " + un.id());
            assertTrue(!un.why().isBlank(), name + ": " + un.id() + " says why");
            missing.merge(un.id(), (long) un.count(), Long::sum);
        }
        for (var piece : problem.pieces()) {
            long there = cut.getOrDefault(piece.id(), 0L) + missing.getOrDefault(piece.id(), 0L);
            assertEquals(piece.count(), there, name + ": " + piece.id() + " cut or named as often as asked");
        }
        opened.forEach((id, n) -> {
            var available = stock.get(id).available();
            assertTrue(available.isEmpty() || n <= available.getAsInt(), name + ": " + n + " of " + id);
        });
        assertEquals(0, salvage.compareTo(result.salvage()), name + ": salvage is " + salvage);
        assertEquals(0, cost.compareTo(result.paid()), name + ": paid is " + cost + " not " + result.paid());
        cost = cost.add(salvage);
        assertEquals(0, cost.compareTo(result.cost()), name + ": cost is " + cost + " not " + result.cost());
        assertEquals(boards, result.boards(), name + ": boards");
        assertTrue(result.lowerBound().compareTo(cost) <= 0, name + ": bound above cost");
        assertEquals(result.lowerBound().compareTo(cost) == 0, result.proven(), name + ": proven means bound = cost");
        return result;
    }

    private static BigDecimal mm(double value) {
        return BigDecimal.valueOf(value);
    }
}
