package lapyard.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.index.strtree.STRtree;

/** Checks a result by itself, from the problem alone: sizes, counts, rolls, overlap by JTS, straight cuts, money. */
public final class LayoutJudge {
    private static final GeometryFactory SHAPES = new GeometryFactory();

    private LayoutJudge() {}

    /** @return the result, if nothing is wrong with it */
    public static RollResult check(RollProblem problem, RollResult result) {
        Map<String, RollProblem.Piece> pieces = new HashMap<>();
        Map<String, Integer> wanted = new HashMap<>();
        for (RollProblem.Piece piece : problem.pieces()) {
            pieces.put(piece.id(), piece);
            wanted.merge(piece.id(), piece.count(), Integer::sum);
        }
        BigDecimal cost = BigDecimal.ZERO;
        Map<String, Integer> runs = new HashMap<>();
        for (RollResult.RollLayout layout : result.rolls()) {
            RollProblem.Stock roll = problem.rolls().stream()
                    .filter(r -> r.id().equals(layout.roll()))
                    .findFirst()
                    .orElseThrow();
            runs.merge(roll.id(), 1, Integer::sum);
            cost = cost.add(checkRun(problem, roll, layout, pieces));
            for (RollResult.Placed placed : layout.placed()) wanted.merge(placed.id(), -1, Integer::sum);
        }
        for (RollResult.Unplaced unplaced : result.unplaced()) {
            wanted.merge(unplaced.id(), -unplaced.count(), Integer::sum);
            assertTrue(unplaced.why().length() > 10, "a reason");
        }
        wanted.forEach(
                (id, left) -> assertEquals(0, left, () -> problem.name() + ": piece " + id + " not as often as asked"));
        for (RollProblem.Stock roll : problem.rolls())
            if (roll.available().isPresent())
                assertTrue(runs.getOrDefault(roll.id(), 0) <= roll.available().getAsInt(), "no more runs than on hand");
        assertEquals(0, cost.compareTo(result.cost()), () -> problem.name() + ": cost " + result.cost());
        assertTrue(result.lowerBound().compareTo(result.cost()) <= 0, "bound above cost");
        assertEquals(
                result.lowerBound().compareTo(result.cost()) == 0,
                result.proven(),
                "proven only where the bound is met");
        return result;
    }

    private static BigDecimal checkRun(
            RollProblem problem,
            RollProblem.Stock roll,
            RollResult.RollLayout layout,
            Map<String, RollProblem.Piece> pieces) {
        List<long[]> boxes = new ArrayList<>();
        long reach = 0;
        for (RollResult.Placed placed : layout.placed()) {
            RollProblem.Piece piece = pieces.get(placed.id());
            assertEquals(
                    placed.turned() ? piece.heightMm() : piece.widthMm(), placed.widthMm(), placed.id() + " width");
            assertEquals(
                    placed.turned() ? piece.widthMm() : piece.heightMm(), placed.heightMm(), placed.id() + " height");
            assertTrue(problem.turn() || !placed.turned(), placed.id() + " turned where that is not allowed");
            long[] box = {
                micro(placed.x()),
                micro(placed.y()),
                micro(placed.x() + placed.widthMm()),
                micro(placed.y() + placed.heightMm())
            };
            assertTrue(
                    box[0] >= 0 && box[1] >= 0 && box[2] <= micro(roll.widthMm()),
                    placed.id() + " over the edge of the roll");
            reach = Math.max(reach, box[3]);
            boxes.add(box);
        }
        assertEquals(micro(layout.usedMm()), reach, "used is as far as the pieces reach");
        long step = micro(roll.stepMm());
        long steps = (reach + step - 1) / step;
        assertEquals(steps * step, micro(layout.boughtMm()), "bought is used, up to the next step");
        if (roll.maxLengthMm().isPresent())
            assertTrue(layout.boughtMm() <= roll.maxLengthMm().getAsDouble(), "run longer than " + roll.maxLengthMm());
        checkOverlap(problem, boxes);
        if (problem.straightCuts())
            assertTrue(straightCutsDo(boxes), () -> problem.name() + ": straight cuts do not part it");
        return roll.price().multiply(BigDecimal.valueOf(steps * step)).divide(BigDecimal.valueOf(1_000_000));
    }

    /** JTS is the outside judge: no two pieces share area. */
    private static void checkOverlap(RollProblem problem, List<long[]> boxes) {
        STRtree index = new STRtree();
        for (int i = 0; i < boxes.size(); i++) index.insert(envelope(boxes.get(i)), i);
        for (int i = 0; i < boxes.size(); i++) {
            Envelope mine = envelope(boxes.get(i));
            for (Object found : index.query(mine)) {
                int j = (Integer) found;
                if (j <= i) continue;
                Geometry shared = SHAPES.toGeometry(mine).intersection(SHAPES.toGeometry(envelope(boxes.get(j))));
                assertEquals(0, shared.getArea(), () -> problem.name() + ": pieces overlap at " + shared);
            }
        }
    }

    private static Envelope envelope(long[] box) {
        return new Envelope(box[0], box[2], box[1], box[3]);
    }

    /** Parts the boxes along every line that crosses none of them, again and again, until each lies alone. */
    public static boolean straightCutsDo(List<long[]> boxes) {
        if (boxes.size() <= 1) return true;
        for (int axis = 0; axis < 2; axis++) {
            List<List<long[]>> parts = partedAcross(boxes, axis);
            if (parts.size() > 1) return parts.stream().allMatch(LayoutJudge::straightCutsDo);
        }
        return false;
    }

    private static List<List<long[]>> partedAcross(List<long[]> boxes, int axis) {
        List<long[]> sorted = new ArrayList<>(boxes);
        sorted.sort((a, b) -> Long.compare(a[axis], b[axis]));
        List<List<long[]>> parts = new ArrayList<>();
        long reach = Long.MIN_VALUE;
        for (long[] box : sorted) {
            if (box[axis] >= reach) parts.add(new ArrayList<>());
            parts.get(parts.size() - 1).add(box);
            reach = Math.max(reach, box[axis + 2]);
        }
        return parts;
    }

    private static long micro(double mm) {
        return Math.round(mm * 1000);
    }
}
