package lapyard.construction;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import lapyard.plan.Bed;
import lapyard.plan.Saw;

/**
 * A wall longer than its boards, with the ways in which it can be joined.
 *
 * @param side number of the wall, 0 for A
 * @param ways the usual one first
 */
public record LongWall(int side, List<SeamSplit> ways) {
    public LongWall {
        ways = List.copyOf(ways);
    }

    /**
     * The walls of a bed that must be joined and can be.
     *
     * @param longestMm longest piece that some board gives
     * @param boardsMm  pieces that take a whole board of each length there is
     */
    public static List<LongWall> of(Bed bed, Saw saw, double longestMm, Collection<Double> boardsMm) {
        List<LongWall> walls = new ArrayList<>();
        for (int side = 0; bed.walls().seams() && side < bed.outline().sides(); side++) {
            WallRun odd = WallRun.of(bed, side, true);
            WallRun even = WallRun.of(bed, side, false);
            boolean evenLaid = bed.courses() > 1;
            double needed = evenLaid ? Math.max(odd.lengthMm(), even.lengthMm()) : odd.lengthMm();
            if (needed > longestMm + 1e-6) {
                List<SeamSplit> ways = SeamSplit.all(odd, even, evenLaid, bed.outline().sideMm(side), longestMm, saw, boardsMm);
                if (!ways.isEmpty()) walls.add(new LongWall(side, ways));
            }
        }
        return walls;
    }
}
