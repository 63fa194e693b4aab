package lapyard.construction;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import lapyard.geometry.FewestRectangles;
import lapyard.geometry.Lengths;
import lapyard.geometry.Point;
import lapyard.geometry.Rectangle;
import lapyard.geometry.UprightCover;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Whole;

/** Other ways to cut the liner of a bed: along other splits of its floor, and pieces divided by laps. */
public final class LinerWays {
    /** What another cut of the liner changes. */
    private static final Set<QuantityKind> LINER = EnumSet.of(QuantityKind.LINER, QuantityKind.LINER_AREA, QuantityKind.LINER_SLITS);

    private static final int MOST_SPLITS = 16;
    private static final int MOST_PARTS = 8;

    private LinerWays() {}

    /**
     * The liner along the fewest-rectangle splits of the floor that are not the base's, least liner first; at most 16.
     * Their pieces are called L1, L2 ..., for R1, R2 ... are rectangles of the base.
     *
     * @param downhill in the bed's own frame, as for {@link UnjoinedBed.Asked}
     */
    public static List<List<LinerPiece>> otherSplits(BedWork work, Optional<Point> downhill) {
        if (work.liner().isEmpty() || work.bottom().floor().size() == 1 || !work.liner().get(0).wall().isEmpty()) return List.of();
        Bed bed = work.bed();
        LowSide low = LowSide.of(bed, downhill);
        return FewestRectangles.splits(UprightCover.of(work.frame().inner())).stream()
                .map(FewestRectangles.Split::rectangles)
                .filter(floor -> !floor.equals(work.bottom().floor()))
                .sorted(Comparator.comparingDouble(floor -> Lengths.toTenth(LinerCut.areaMm2(bed, floor))))
                .limit(MOST_SPLITS)
                .map(floor -> LinerCut.pieces(bed, floor, "L", low))
                .toList();
    }

    /**
     * The same liner with one piece divided by straight laps into the fewest parts that the limits leave, across and up,
     * at each limit from either end and in equal parts. The part downhill is laid first; the next lies over it by the
     * lap, so that water runs off the upper one onto the lower one.
     *
     * @param index    of the piece
     * @param limitsMm what a part may measure along the division: roll widths and longest runs
     * @return empty where the lap leaves no such parts
     */
    public static List<List<LinerPiece>> divided(
            BedWork work, List<LinerPiece> pieces, int index, List<Double> limitsMm, Optional<Point> downhill) {
        LowSide low = LowSide.of(work.bed(), downhill);
        List<List<LinerPiece>> ways = new ArrayList<>();
        // a seam across the fall sheds water, so of equals the one that runs so stands first
        boolean alongX = low.toward()
                .map(toward -> Math.abs(toward.x()) >= Math.abs(toward.y()) * (1 - 1e-6))
                .orElse(true);
        for (boolean across : new boolean[] {alongX, !alongX}) {
            for (List<LinerPiece> parts : parts(work.bed(), pieces, index, across, limitsMm, low)) {
                List<LinerPiece> all = new ArrayList<>(pieces);
                all.remove(index);
                all.addAll(index, parts);
                ways.add(LinerCut.inOrder(all, low));
            }
        }
        return ways;
    }

    private static List<List<LinerPiece>> parts(
            Bed bed, List<LinerPiece> pieces, int index, boolean across, List<Double> limitsMm, LowSide low) {
        LinerPiece whole = pieces.get(index);
        if (!whole.wall().isEmpty()) return across ? onWall(bed, whole, limitsMm) : List.of();
        LinerCut.Past past = LinerCut.past(bed, pieces.stream().map(LinerPiece::floor).toList(), whole.floor());
        double lap = bed.inside().liner().edges().lapMm();
        double size = across ? whole.widthMm() : whole.heightMm();
        double before = across ? past.left() : past.bottom();
        double after = across ? past.right() : past.top();
        int parts = parts(size, limitsMm, lap);
        if (parts < 2 || parts > MOST_PARTS) return List.of();
        double total = size + (parts - 1) * lap;
        List<double[]> sizes = new ArrayList<>();
        for (double limit : limitsMm) {
            sizes.add(fromOneEnd(parts, limit, total, after + 2 * lap, true));
            sizes.add(fromOneEnd(parts, limit, total, before + 2 * lap, false));
        }
        double[] equal = new double[parts];
        Arrays.fill(equal, total / parts);
        sizes.add(equal);
        boolean lastFirst = low.toward().isPresent()
                && Lengths.steady(across ? low.toward().get().x() : low.toward().get().y()) > 0;
        List<List<LinerPiece>> ways = new ArrayList<>();
        for (double[] one : sizes) {
            List<LinerPiece> cut = cut(whole, one, across, before, after, lap, lastFirst);
            if (!cut.isEmpty() && !ways.contains(cut)) ways.add(cut);
        }
        return ways;
    }

    /** The fewest that the widest limit leaves; too many where the lap leaves none. */
    private static int parts(double sizeMm, List<Double> limitsMm, double lapMm) {
        double widest = limitsMm.stream().mapToDouble(mm -> mm).max().orElse(0);
        return widest <= lapMm ? MOST_PARTS + 1 : (int) Whole.up((sizeMm - lapMm) / (widest - lapMm));
    }

    /** A strip on a wall that is longer than every roll, in the fewest equal parts. */
    private static List<List<LinerPiece>> onWall(Bed bed, LinerPiece whole, List<Double> limitsMm) {
        double lap = bed.inside().liner().edges().lapMm();
        int count = parts(whole.widthMm(), limitsMm, lap);
        if (count < 2 || count > MOST_PARTS) return List.of();
        double each = Lengths.toTenth((whole.widthMm() + (count - 1) * lap) / count);
        List<LinerPiece> parts = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            parts.add(new LinerPiece(
                    whole.id() + Bed.smallLetter(i), whole.wall(),
                    new Rectangle(0, 0, each - lap, whole.floor().depthMm()), each, whole.heightMm(), whole.layingOrder()));
        }
        return List.of(parts);
    }

    /** All but one as large as the limit; the rest at one end no smaller than the least. */
    private static double[] fromOneEnd(int parts, double limit, double total, double least, boolean restLast) {
        double[] sizes = new double[parts];
        Arrays.fill(sizes, limit);
        double rest = total - (parts - 1) * limit;
        double missing = Math.max(0, least - rest);
        sizes[restLast ? parts - 1 : 0] = rest + missing;
        sizes[restLast ? parts - 2 : 1] -= missing;
        return sizes;
    }

    /** @return empty where a part would be too small to carry the lap on its floor */
    private static List<LinerPiece> cut(
            LinerPiece whole, double[] sizes, boolean across, double before, double after, double lap, boolean lastFirst) {
        Rectangle floor = whole.floor();
        List<LinerPiece> cut = new ArrayList<>();
        double at = across ? floor.x() : floor.y();
        double end = across ? floor.right() : floor.top();
        for (int i = 0; i < sizes.length; i++) {
            boolean last = i == sizes.length - 1;
            double low = i == 0 ? before : lastFirst ? 0 : lap;
            double high = last ? after : lastFirst ? lap : 0;
            double to = last ? end : Lengths.steady(at + sizes[i] - low - high);
            double length = to - at;
            if (length < Math.max(lap, 1) - 1e-6 || to > end + 1e-6) return List.of();
            double size = Lengths.toTenth(length + low + high);
            cut.add(new LinerPiece(whole.id() + Bed.smallLetter(i), "", across
                            ? new Rectangle(at, floor.y(), length, floor.depthMm())
                            : new Rectangle(floor.x(), at, floor.widthMm(), length), across ? size : whole.widthMm(), across ? whole.heightMm() : size, whole.layingOrder()));
            at = to;
        }
        return cut;
    }

    /** The bed with its liner cut another way: quantities follow. */
    public static BedWork lined(BedWork work, List<LinerPiece> pieces) {
        List<Quantity> liner = new ArrayList<>();
        LinerCut.quantities(work.bed(), work.frame().inner(), pieces, liner);
        List<Quantity> quantities = new ArrayList<>();
        boolean in = false;
        for (Quantity quantity : work.quantities()) {
            if (!LINER.contains(quantity.key().kind())) {
                quantities.add(quantity);
            } else if (!in) {
                quantities.addAll(liner);
                in = true;
            }
        }
        List<Finding> findings = new ArrayList<>(work.findings());
        if (work.liner().size() == 1 && pieces.size() > 1) LinerCut.shortLap(work.bed(), findings);
        return work.withLiner(pieces, quantities, findings);
    }
}
