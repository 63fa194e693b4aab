package lapyard.construction;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import lapyard.geometry.Chords;
import lapyard.geometry.Lengths;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.geometry.Rectangle;
import lapyard.plan.Base;

/**
 * One rectangle of a slatted floor.
 *
 * @param alongY    whether bearers run up the bed (y) and slats across it (x)
 * @param bearersAtMm middles of the bearers across their run, the outer two along the walls; between upright walls one
 *     lies under each joint of the slats
 * @param bearersMm length of each bearer, short of the wall by the drain gap; in a bay with slanted sides also one along
 *     each of them
 * @param slats     rows square to the bearers
 */
public record FloorBay(
        Rectangle floor, boolean alongY, List<Double> bearersAtMm, List<Double> bearersMm, SlatRows slats) {
    /** A bearer is looked at half its width inside the edge of its bay. */
    private static final double HALF_BEARER_MM = 25;

    /** Shorter bearers carry nothing that the next one does not. */
    private static final double LEAST_BEARER_MM = 150;

    public FloorBay {
        bearersAtMm = List.copyOf(bearersAtMm);
        bearersMm = List.copyOf(bearersMm);
    }

    public int bearers() {
        return bearersMm.size();
    }

    /** The longest. */
    public double bearerMm() {
        return bearersMm.stream().mapToDouble(mm -> mm).max().orElse(0);
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
     *
     * @param inner inner faces of the walls; the floor may reach over slanted ones
     */
    static FloorBay of(Rectangle floor, Outline inner, Optional<Point> toward, Base base, double kerfMm) {
        FloorBay up = laid(floor, inner, true, base);
        FloorBay across = laid(floor, inner, false, base);
        if (toward.isPresent()) {
            return Math.abs(toward.get().x()) > Math.abs(toward.get().y()) + 1e-12 ? across : up;
        }
        int upBoards = up.slatBoards(base, kerfMm);
        int acrossBoards = across.slatBoards(base, kerfMm);
        if (upBoards != acrossBoards) {
            return upBoards < acrossBoards ? up : across;
        }
        return across.lengthMm() < up.lengthMm() - 1e-6 ? across : up;
    }

    /** Of all its bearers together. */
    public double lengthMm() {
        return bearersMm.stream().mapToDouble(mm -> mm).sum();
    }

    static FloorBay laid(Rectangle floor, Outline inner, boolean alongY, Base base) {
        double along = alongY ? floor.depthMm() : floor.widthMm();
        double across = alongY ? floor.widthMm() : floor.depthMm();
        SlatRows plain = SlatRows.of(along, across, base);
        List<Double> places = places(plain, across, base.bearerEveryMm());
        if (inner.upright()) {
            double length = Lengths.toTenth(along - base.drainGapMm());
            return new FloorBay(floor, alongY, places, Collections.nCopies(places.size(), length), plain);
        }
        int count = (int) Math.ceil(across / base.bearerEveryMm() - 1e-9) + 1;
        double least = alongY ? floor.y() : floor.x();
        double first = alongY ? floor.x() : floor.y();
        List<Double> even = new ArrayList<>();
        List<Double> bearers = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            even.add(Lengths.toTenth(across * i / (count - 1)));
            double at = first + Math.min(Math.max(across * i / (count - 1), HALF_BEARER_MM), across - HALF_BEARER_MM);
            Chords.band(inner, alongY, at - HALF_BEARER_MM, at + HALF_BEARER_MM, least, least + along)
                    .forEach(span -> bearer(span.lengthMm(), base, bearers));
        }
        for (int side = 0; side < inner.sides(); side++) {
            Point way = inner.direction(side);
            if (way.x() != 0 && way.y() != 0 && middleOnOrIn(floor, inner, side)) {
                bearer(inner.sideMm(side), base, bearers);
            }
        }
        List<List<Double>> rows = new ArrayList<>();
        for (int row = 0; row < plain.rows(); row++) {
            double from = least + row * (base.slatWidthMm() + plain.gapMm());
            double to = Math.min(from + base.slatWidthMm(), least + along);
            List<Double> pieces = new ArrayList<>();
            Chords.band(inner, !alongY, from, to, first, first + across)
                    .forEach(span -> pieces.addAll(SlatRows.row(span.lengthMm() - base.slatClearanceMm(), base)));
            rows.add(pieces);
        }
        return new FloorBay(floor, alongY, even, bearers, plain.with(rows));
    }

    private static void bearer(double clearMm, Base base, List<Double> bearers) {
        double length = Lengths.toTenth(clearMm - base.drainGapMm());
        if (length >= LEAST_BEARER_MM) {
            bearers.add(length);
        }
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

    private static boolean middleOnOrIn(Rectangle floor, Outline inner, int side) {
        double x = (inner.corner(side).x() + inner.corner(side + 1).x()) / 2;
        double y = (inner.corner(side).y() + inner.corner(side + 1).y()) / 2;
        return x >= floor.x() && x < floor.right() && y >= floor.y() && y < floor.top();
    }

    int slatBoards(Base base, double kerfMm) {
        return SlatRows.boards(List.of(slats), base, kerfMm);
    }
}
