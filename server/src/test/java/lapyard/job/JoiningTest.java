package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapyard.construction.BedWork;
import lapyard.construction.Construction;
import lapyard.construction.LongWall;
import lapyard.construction.Piece;
import lapyard.construction.Seam;
import lapyard.construction.SeamSplit;
import lapyard.cutting.CuttingSolver;
import lapyard.plan.Bed;
import lapyard.plan.Garden;
import lapyard.working.Effort;
import org.junit.jupiter.api.Test;

/** Long walls are joined where the boards of the whole garden come cheapest. */
class JoiningTest {
    /** Walls of 7000 and of 5400 beside short ones; boards of 4800 only. */
    private static final String LONG = """
            {"beds":[{"id":"K","width":7000,"depth":1000},{"id":"N","width":1800,"depth":900,"at":[0,3000]},
                     {"id":"P","width":5400,"depth":1200,"at":[0,6000],"courses":2}],
             "catalogue":{"sections":[{"id":"100x200","thickness":100,"height":200,"density":600,"stock":[{"length":4800,"price":36.00}]}]}}""";

    /** Every pair of ways is cut; none is cheaper than the pair that was chosen, and the usual pair costs a board more. */
    @Test
    void noWayToJoinTheWallsCostsLess() {
        Garden garden = Gardens.garden(LONG);
        BigDecimal chosen = Job.prepare(garden).cutting().get(0).result().cost();
        Bed k = garden.beds().get(0);
        Bed p = garden.beds().get(2);
        List<SeamSplit> waysK = ways(garden, k);
        List<SeamSplit> waysP = ways(garden, p);
        assertTrue(waysK.size() >= 5 && waysP.size() >= 5, waysK.size() + " and " + waysP.size() + " ways");
        BigDecimal least = null;
        for (SeamSplit one : waysK) {
            for (SeamSplit other : waysP) {
                BigDecimal cost = cost(garden, Map.of("K", one, "P", other), new Effort(4_000, java.time.Duration.ofSeconds(2), 800));
                least = least == null ? cost : least.min(cost);
            }
        }
        assertEquals(0, chosen.compareTo(least), chosen + " was chosen, " + least + " is to be had");
        BigDecimal usual = cost(garden, Map.of("K", waysK.get(0), "P", waysP.get(0)), CuttingSolver.QUICK);
        assertTrue(chosen.compareTo(usual) < 0, chosen + " is not less than the usual " + usual);
    }

    private static List<SeamSplit> ways(Garden garden, Bed bed) {
        List<LongWall> walls = LongWall.of(bed, garden.goods().saw(), 4780, List.of(4780.0));
        assertEquals(List.of(0, 2), walls.stream().map(LongWall::side).toList());
        assertEquals(walls.get(0).ways(), walls.get(1).ways());
        // at 12 kg a metre two people lift 50 kg: 4166 mm
        return walls.get(0).ways().stream()
                .filter(way -> Construction.pieces(bed, garden.goods().saw(), 4780, Map.of(0, way)).stream()
                        .noneMatch(piece -> piece.wall().equals("A") && piece.lengthMm() > 4166))
                .toList();
    }

    private static BigDecimal cost(Garden garden, Map<String, SeamSplit> joined, Effort effort) {
        Map<Bed, List<Piece>> pieces = new LinkedHashMap<>();
        for (Bed bed : garden.beds()) {
            Map<Integer, SeamSplit> own = new HashMap<>();
            if (joined.containsKey(bed.id())) {
                own.put(0, joined.get(bed.id()));
                own.put(2, joined.get(bed.id()));
            }
            pieces.put(bed, Construction.pieces(bed, garden.goods().saw(), 4780, own));
        }
        return CuttingSolver.solve(PooledTimber.trial(garden, garden.beds().get(0).section(), pieces), effort).cost();
    }

    /** Parts of 600 and more, 400 from corners, 600 from the seams of the course above and below: measured on the pieces. */
    @Test
    void whatIsChosenKeepsEveryRule() {
        for (JobSheet.BedSheet sheet : Job.prepare(Gardens.garden(LONG)).beds()) {
            BedWork work = sheet.work();
            for (Piece piece : work.pieces()) {
                assertTrue(piece.part().isEmpty() || piece.lengthMm() >= 600, piece.toString());
                assertTrue(piece.lengthMm() <= 4780, piece.toString());
            }
            for (Seam one : work.frame().seams()) {
                double wall = work.bed().outline().sideMm(work.bed().wallLetters().indexOf(one.wall()));
                assertTrue(one.atMm() >= 400 && one.atMm() <= wall - 400, one.toString());
                for (Seam other : work.frame().seams()) {
                    if (one.wall().equals(other.wall()) && Math.abs(one.course() - other.course()) == 1) {
                        assertTrue(Math.abs(one.atMm() - other.atMm()) >= 600, one + " and " + other);
                    }
                }
            }
        }
    }

    @Test
    void theSameGardenIsJoinedTheSameWay() {
        assertEquals(Joining.of(Gardens.garden(LONG), SearchOptions.pooledOnly(Gardens.garden(LONG).goods().search(), new SearchMemory(1 << 20))), Joining.of(Gardens.garden(LONG), SearchOptions.pooledOnly(Gardens.garden(LONG).goods().search(), new SearchMemory(1 << 20))));
    }
}
