package lapyard.construction;

import java.util.List;
import java.util.Optional;
import lapyard.geometry.Lengths;
import lapyard.geometry.Point;
import lapyard.geometry.Rectangle;
import lapyard.plan.Base;

/**
 * One rectangle of a slatted floor.
 *
 * @param alongY    whether bearers run up the bed (y) and slats across it (x)
 * @param bearers   how many
 * @param bearerMm  length of one, short of the wall by the drain gap
 * @param slats     rows square to the bearers
 */
record FloorBay(Rectangle floor, boolean alongY, int bearers, double bearerMm, SlatRows slats) {
    /**
     * Bearers run down the fall, so that none dams the water. Where no fall is known they run whichever way takes
     * the fewest slat boards, then the fewest metres of bearer, then up the bed.
     */
    static FloorBay of(Rectangle floor, Optional<Point> toward, Base base, double kerfMm) {
        FloorBay up = laid(floor, true, base);
        FloorBay across = laid(floor, false, base);
        if (toward.isPresent()) {
            return Math.abs(toward.get().x()) > Math.abs(toward.get().y()) + 1e-12 ? across : up;
        }
        int upBoards = up.slatBoards(base, kerfMm);
        int acrossBoards = across.slatBoards(base, kerfMm);
        if (upBoards != acrossBoards) {
            return upBoards < acrossBoards ? up : across;
        }
        return across.bearers * across.bearerMm < up.bearers * up.bearerMm - 1e-6 ? across : up;
    }

    static FloorBay laid(Rectangle floor, boolean alongY, Base base) {
        double along = alongY ? floor.depthMm() : floor.widthMm();
        double across = alongY ? floor.widthMm() : floor.depthMm();
        int bearers = (int) Math.ceil(across / base.bearerEveryMm() - 1e-9) + 1;
        return new FloorBay(
                floor, alongY, bearers, Lengths.toTenth(along - base.drainGapMm()), SlatRows.of(along, across, base));
    }

    int slatBoards(Base base, double kerfMm) {
        return SlatRows.boards(List.of(slats), base, kerfMm);
    }
}
