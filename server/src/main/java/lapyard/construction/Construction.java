package lapyard.construction;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.geometry.Inset;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Saw;
import lapyard.working.Quantity;

/** Parts of a bed on paper; {@link UnjoinedBed} has the whole. */
public final class Construction {
    private Construction() {}

    /**
     * The timbers of a bed, with the quantities of all that depends on where its walls are joined.
     *
     * @param hinges joints with nothing behind them, which carry no bending
     */
    public record Joined(List<Piece> pieces, List<Quantity> quantities, int hinges) {}

    /** As {@link UnjoinedBed} counts them, but for the seal of notches. */
    public static Joined joined(Bed bed, Saw saw, double longestMm, Map<Integer, SeamSplit> joined) {
        Courses.Laid laid = Courses.of(bed, saw, longestMm, joined);
        List<Piece> pieces = pieces(laid);
        List<Quantity> quantities = new ArrayList<>();
        Coating.seal(bed, pieces.size(), 0, quantities);
        CrossTies across = CrossTies.of(bed, Inset.of(bed.outline(), bed.section().thicknessMm()), laid.seams());
        held(bed, laid, across, quantities);
        return new Joined(pieces, quantities, across.hinges().size());
    }

    /** The timbers alone. */
    public static List<Piece> pieces(Bed bed, Saw saw, double longestMm, Map<Integer, SeamSplit> joined) {
        return pieces(Courses.of(bed, saw, longestMm, joined));
    }

    static List<Piece> pieces(Courses.Laid laid) {
        return laid.courses().stream().flatMap(course -> course.pieces().stream()).toList();
    }

    static void held(Bed bed, Courses.Laid laid, CrossTies across, List<Quantity> quantities) {
        CornerJoints.ties(bed, laid.courses(), across, quantities);
        Fixings.seams(laid.seams().size(), quantities);
    }

    /** The longest corner screw that is sold and keeps its cover in this bed's timber, mm; the shortest where none does. */
    public static double usualScrewMm(Bed bed) {
        return Fixings.usualScrewMm(bed);
    }

    /** Slat boards that the floor of a bed takes; 0 for an open base. */
    public static int slatBoards(Bed bed, Saw saw, Optional<Point> downhill, double bearerStockMm) {
        Outline inner = Inset.of(bed.outline(), bed.section().thicknessMm());
        return Floor.of(bed, inner, LowSide.of(bed, downhill), saw, bearerStockMm).slatBoards(bed, saw);
    }
}
