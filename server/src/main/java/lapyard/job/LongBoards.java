package lapyard.job;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import lapyard.catalogue.Section;
import lapyard.construction.Construction;
import lapyard.construction.LongWall;
import lapyard.construction.SeamSplit;
import lapyard.plan.Bed;
import lapyard.plan.Garden;
import lapyard.plan.Saw;

/**
 * The longest boards of a section. Those on hand that are longer than all on sale are there for a few walls only.
 *
 * @param mm       longest piece that any board gives
 * @param boughtMm longest piece that a board gives of which more can be bought
 * @param onHand   boards that give a longer one
 */
record LongBoards(Saw saw, double mm, double boughtMm, int onHand) {
    static LongBoards of(Garden garden, Section section) {
        Saw saw = garden.goods().saw();
        double boughtMm = PooledTimber.boughtPieceMm(garden, section);
        int onHand = RackRuns.ofWhole(garden, section).stream().filter(run -> saw.usableMm(run.lengthMm()) > boughtMm).mapToInt(run -> run.available().orElseThrow()).sum();
        return new LongBoards(saw, PooledTimber.longestPieceMm(garden, section), boughtMm, onHand);
    }

    /** How many walls, each course counted, take a board on hand longer than those on sale. */
    int taken(Collection<BedNeeds.Run> runs) {
        return (int) runs.stream().filter(run -> run.longerThan(boughtMm)).count();
    }

    /** No wall in another way than the usual one while the long boards on hand are enough for that; else all joined for boards to buy. */
    Map<Integer, SeamSplit> joined(Bed bed) {
        if (mm <= boughtMm || taken(BedNeeds.runs(Construction.pieces(bed, saw, mm, Map.of()))) <= onHand) return Map.of();
        return forSale(bed);
    }

    Map<Integer, SeamSplit> forSale(Bed bed) {
        return LongWall.of(bed, saw, boughtMm, boughtMm, List.of()).stream().collect(Collectors.toMap(LongWall::side, wall -> wall.ways().get(0)));
    }
}
