package lapyard.construction;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.stream.DoubleStream;
import lapyard.geometry.Lengths;
import lapyard.plan.Bed;
import lapyard.plan.Saw;

/**
 * A wall longer than boards that can be bought, with the ways in which it can be joined.
 *
 * @param side number of the wall, 0 for A
 * @param ways the usual one first
 */
public record LongWall(int side, List<SeamSplit> ways) {
    public LongWall {
        ways = List.copyOf(ways);
    }

    /**
     * The walls of a bed that can be joined in several ways, or must be joined and can be. A wall that only boards on hand are long
     * enough for, or whose parts are, can be joined for boards to buy too, as those on hand run out.
     *
     * @param longestMm longest piece that some board gives
     * @param boughtMm  longest piece that a board gives of which more can be bought
     * @param boardsMm  pieces that take a whole board of each length there is
     */
    public static List<LongWall> of(Bed bed, Saw saw, double longestMm, double boughtMm, Collection<Double> boardsMm) {
        List<LongWall> walls = new ArrayList<>();
        for (int side = 0; bed.walls().seams() && side < bed.outline().sides(); side++) {
            double needed = WallRun.longestMm(bed, side);
            if (needed <= Math.min(longestMm, boughtMm) + 1e-6) continue;
            boolean joined = needed > longestMm + 1e-6;
            List<SeamSplit> ways = new ArrayList<>(joined ? SeamSplit.all(bed, side, longestMm, saw, boardsMm) : List.of(SeamSplit.NONE));
            if (boughtMm < longestMm) {
                SeamSplit.of(bed, side, boughtMm, saw)
                        .filter(way -> way.staggerMm() >= saw.seamStaggerMm() - 1e-6 && !ways.contains(way))
                        .ifPresent(ways::add);
            }
            if (ways.size() > (joined ? 0 : 1)) walls.add(new LongWall(side, ways));
        }
        return walls;
    }

    /** Longest part of any course of the wall, joined this way, mm to a tenth. */
    public double longestPartMm(Bed bed, SeamSplit way) {
        DoubleStream odd = WallRun.of(bed, side, true).partsMm(way.oddMm());
        DoubleStream even = bed.courses() > 1 ? WallRun.of(bed, side, false).partsMm(way.evenMm()) : DoubleStream.empty();
        return Lengths.toTenth(DoubleStream.concat(odd, even).max().orElseThrow());
    }
}
