package lapyard.construction;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import lapyard.geometry.Chords;
import lapyard.geometry.Lengths;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.geometry.Rectangle;
import lapyard.plan.Base;
import lapyard.working.Whole;

/**
 * One rectangle of a slatted floor.
 *
 * @param alongY    whether bearers run up the bed (y) and slats across it (x)
 * @param bearersAtMm middles of the bearers across their run, the outer two along the walls; between upright walls one
 *     lies under each joint of the slats
 * @param bearersLaid the bearers, short of the wall by the drain gap; in a bay with slanted sides also one along each of
 *     them
 * @param slats     rows square to the bearers
 * @param slatsLaid every piece of every row
 */
public record FloorBay(
        Rectangle floor, boolean alongY, List<Double> bearersAtMm, List<Laid> bearersLaid, SlatRows slats, List<Laid> slatsLaid) {
    /** A bearer is looked at half its width inside the edge of its bay. */
    private static final double HALF_BEARER_MM = 25;

    /** Shorter bearers carry nothing that the next one does not. */
    private static final double LEAST_BEARER_MM = 150;

    /** Of bearers as they are drawn and laid. */
    private static final double BEARER_MM = 2 * HALF_BEARER_MM;

    public FloorBay {
        bearersAtMm = List.copyOf(bearersAtMm);
        bearersLaid = List.copyOf(bearersLaid);
        slatsLaid = List.copyOf(slatsLaid);
    }

    /**
     * A bearer or slat where it lies, before its ends are sawn off along slanted walls.
     *
     * @param corners  its corners in order, mm, own frame of the bed
     * @param lengthMm as it is cut
     */
    public record Laid(List<Point> corners, double lengthMm) {
        public Laid {
            corners = List.copyOf(corners);
        }
    }

    /** Length of each bearer, in the order in which they lie. */
    public List<Double> bearersMm() {
        return bearersLaid.stream().map(Laid::lengthMm).toList();
    }

    public int bearers() {
        return bearersLaid.size();
    }

    /** The longest. */
    public double bearerMm() {
        return bearersLaid.stream().mapToDouble(Laid::lengthMm).max().orElse(0);
    }

    /** Greatest distance between two bearers. */
    public double spacingMm() {
        double most = 0;
        for (int i = 1; i < bearersAtMm.size(); i++) most = Math.max(most, bearersAtMm.get(i) - bearersAtMm.get(i - 1));
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
        if (toward.isPresent()) return Math.abs(toward.get().x()) > Math.abs(toward.get().y()) + 1e-12 ? across : up;
        int upBoards = up.slatBoards(base, kerfMm);
        int acrossBoards = across.slatBoards(base, kerfMm);
        if (upBoards != acrossBoards) return upBoards < acrossBoards ? up : across;
        return across.lengthMm() < up.lengthMm() - 1e-6 ? across : up;
    }

    /** Length of all its bearers together, mm. */
    public double lengthMm() {
        return bearersLaid.stream().mapToDouble(Laid::lengthMm).sum();
    }

    static FloorBay laid(Rectangle floor, Outline inner, boolean alongY, Base base) {
        double along = alongY ? floor.depthMm() : floor.widthMm();
        double across = alongY ? floor.widthMm() : floor.depthMm();
        SlatRows plain = SlatRows.of(along, across, base);
        List<Double> places = places(plain, across, base.bearers().bearerEveryMm());
        double least = alongY ? floor.y() : floor.x();
        double first = alongY ? floor.x() : floor.y();
        List<Laid> bearers = new ArrayList<>();
        if (inner.upright()) {
            double length = Lengths.toTenth(along - base.bearers().drainGapMm());
            for (double place : places) {
                double from = first + Math.max(0, Math.min(place - HALF_BEARER_MM, across - BEARER_MM));
                bearers.add(bar(alongY, from, Math.min(from + BEARER_MM, first + across), least, length));
            }
            return bay(floor, alongY, places, bearers, plain, row -> List.of(new Chords.Span(first, first + across)), base);
        }
        int count = (int) Whole.up(across / base.bearers().bearerEveryMm()) + 1;
        List<Double> even = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            even.add(Lengths.toTenth(across * i / (count - 1)));
            double at = first + Math.min(Math.max(across * i / (count - 1), HALF_BEARER_MM), across - HALF_BEARER_MM);
            Chords.band(inner, alongY, at - HALF_BEARER_MM, at + HALF_BEARER_MM, least, least + along).forEach(span ->
                    bearer(span.lengthMm(), base).ifPresent(length ->
                            bearers.add(bar(alongY, at - HALF_BEARER_MM, at + HALF_BEARER_MM, span.fromMm(), length))));
        }
        for (int side = 0; side < inner.sides(); side++) {
            Point way = inner.direction(side);
            if (way.x() != 0 && way.y() != 0 && middleOnOrIn(floor, inner, side)) {
                Point corner = inner.corner(side);
                bearer(inner.sideMm(side), base).ifPresent(length -> bearers.add(alongside(corner, way, length)));
            }
        }
        return bay(floor, alongY, even, bearers, plain, row -> Chords.band(inner, !alongY, row.fromMm(), row.toMm(), first, first + across), base);
    }

    /** The bay with each row of slats in the spans that it covers. */
    private static FloorBay bay(
            Rectangle floor, boolean alongY, List<Double> places, List<Laid> bearers, SlatRows plain,
            Function<Chords.Span, List<Chords.Span>> spans, Base base) {
        double least = alongY ? floor.y() : floor.x();
        double most = alongY ? floor.top() : floor.right();
        List<Laid> slats = new ArrayList<>();
        List<List<Double>> rows = new ArrayList<>();
        for (int row = 0; row < plain.rows(); row++) {
            double from = least + row * (base.slats().slatWidthMm() + plain.gapMm());
            double to = Math.min(from + base.slats().slatWidthMm(), most);
            List<Double> pieces = new ArrayList<>();
            for (Chords.Span span : spans.apply(new Chords.Span(from, to))) {
                double length = span.lengthMm() - base.slats().slatClearanceMm();
                if (length < SlatRows.LEAST_MM) continue;
                double at = span.fromMm() + base.slats().slatClearanceMm() / 2;
                for (double piece : SlatRows.row(length, base)) {
                    pieces.add(piece);
                    slats.add(bar(!alongY, from, to, at, piece));
                    at += piece;
                }
            }
            rows.add(pieces);
        }
        return new FloorBay(floor, alongY, places, bearers, plain.with(rows), slats);
    }

    /** A bar along the axes: up the bed from {@code from} to {@code to} across it, or across the bed. */
    private static Laid bar(boolean upright, double from, double to, double start, double lengthMm) {
        double end = start + lengthMm;
        return new Laid(upright
                ? List.of(new Point(from, start), new Point(to, start), new Point(to, end), new Point(from, end))
                : List.of(new Point(start, from), new Point(end, from), new Point(end, to), new Point(start, to)), lengthMm);
    }

    /** A bearer along the inner face of a wall that begins at a corner and runs this way; the bed lies left of it. */
    private static Laid alongside(Point corner, Point way, double lengthMm) {
        return new Laid(List.of(corner, corner.moved(way, lengthMm, 0), corner.moved(way, lengthMm, BEARER_MM), corner.moved(way, 0, BEARER_MM)), lengthMm);
    }

    private static Optional<Double> bearer(double clearMm, Base base) {
        double length = Lengths.toTenth(clearMm - base.bearers().drainGapMm());
        return length >= LEAST_BEARER_MM ? Optional.of(length) : Optional.empty();
    }

    /** Even places from wall to joint, joint to joint and joint to wall, so that every joint lies on a bearer. */
    private static List<Double> places(SlatRows slats, double acrossMm, double everyMm) {
        List<Double> places = new ArrayList<>(List.of(0.0));
        double from = 0;
        for (int piece = 1; piece <= slats.piecesMm().size(); piece++) {
            double to = piece == slats.piecesMm().size() ? acrossMm : from + slats.piecesMm().get(piece - 1);
            int spaces = Math.max(1, (int) Whole.up((to - from) / everyMm));
            for (int i = 1; i <= spaces; i++) places.add(Lengths.toTenth(from + (to - from) * i / spaces));
            from = to;
        }
        return places;
    }

    private static boolean middleOnOrIn(Rectangle floor, Outline inner, int side) {
        Point middle = inner.corner(side).middle(inner.corner(side + 1));
        return middle.x() >= floor.x() && middle.x() < floor.right() && middle.y() >= floor.y() && middle.y() < floor.top();
    }

    int slatBoards(Base base, double kerfMm) {
        return SlatRows.boards(List.of(slats), base, kerfMm);
    }
}
