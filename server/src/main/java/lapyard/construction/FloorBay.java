package lapyard.construction;

import java.util.ArrayList;
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
 * @param bearersAtMm middles of the bearers across their run, the outer two along the walls; one under each joint of the
 *     slats
 * @param bearerMm  length of one, short of the wall by the drain gap
 * @param slats     rows square to the bearers
 */
public record FloorBay(Rectangle floor, boolean alongY, List<Double> bearersAtMm, double bearerMm, SlatRows slats) {
    public FloorBay {
        bearersAtMm = List.copyOf(bearersAtMm);
    }

    public int bearers() {
        return bearersAtMm.size();
    }

    /** Greatest distance between two bearers. */
    public double spacingMm() {
        double most = 0;
        for (int i = 1; i < bearersAtMm.size(); i++) {
            most = Math.max(most, bearersAtMm.get(i) - bearersAtMm.get(i - 1));
        }
        return most;
    }

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
        return across.bearers() * across.bearerMm < up.bearers() * up.bearerMm - 1e-6 ? across : up;
    }

    static FloorBay laid(Rectangle floor, boolean alongY, Base base) {
        double along = alongY ? floor.depthMm() : floor.widthMm();
        double across = alongY ? floor.widthMm() : floor.depthMm();
        SlatRows slats = SlatRows.of(along, across, base);
        return new FloorBay(
                floor,
                alongY,
                places(slats, across, base.bearerEveryMm()),
                Lengths.toTenth(along - base.drainGapMm()),
                slats);
    }

    /** Even places from wall to joint, joint to joint and joint to wall, so that every joint lies on a bearer. */
    private static List<Double> places(SlatRows slats, double acrossMm, double everyMm) {
        List<Double> places = new ArrayList<>(List.of(0.0));
        double from = 0;
        for (int piece = 1; piece <= slats.piecesMm().size(); piece++) {
            double to = piece == slats.piecesMm().size() ? acrossMm : from + slats.piecesMm().get(piece - 1);
            int spaces = Math.max(1, (int) Math.ceil((to - from) / everyMm - 1e-9));
            for (int i = 1; i <= spaces; i++) {
                places.add(Lengths.toTenth(from + (to - from) * i / spaces));
            }
            from = to;
        }
        return places;
    }

    int slatBoards(Base base, double kerfMm) {
        return SlatRows.boards(List.of(slats), base, kerfMm);
    }
}
