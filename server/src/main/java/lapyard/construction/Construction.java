package lapyard.construction;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.geometry.Inset;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.Saw;
import lapyard.plan.WayKind;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Working;
import lapyard.working.Working.Input;

/** Builds a bed on paper. */
public final class Construction {
    private Construction() {}

    /**
     * The timbers of a bed, with the quantities of all that depends on where its walls are joined.
     *
     * @param hinges joints with nothing behind them, which carry no bending
     */
    public record Joined(List<Piece> pieces, List<Quantity> quantities, int hinges) {}

    /** As {@link #of} counts them, but for the seal of notches. */
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

    private static List<Piece> pieces(Courses.Laid laid) {
        return laid.courses().stream().flatMap(course -> course.pieces().stream()).toList();
    }

    private static void held(Bed bed, Courses.Laid laid, CrossTies across, List<Quantity> quantities) {
        CornerJoints.ties(bed, laid.courses(), across, quantities);
        Fixings.seams(laid.seams().size(), quantities);
    }

    /**
     * @param bed       with an outline that {@code OutlineCheck} has passed
     * @param longestMm longest piece that some board can give for this section (stock or rack), for seams
     * @param downhill  the fall of the ground as a slope (x, y) in the bed's own frame, pointing downhill; empty
     *     where no levels were taken
     * @param joined one of the {@link LongWall#ways} by side, where that was settled with the boards
     * @param bearerStockMm longest stock of the bearer timber, end trims included
     * @param liftLimitKg   what one person may lift
     */
    public static BedWork of(
            Bed bed,
            Saw saw,
            double longestMm,
            Map<Integer, SeamSplit> joined,
            Optional<Point> downhill,
            double bearerStockMm,
            double liftLimitKg) {
        List<Quantity> quantities = new ArrayList<>();
        Outline inner = Inset.of(bed.outline(), bed.section().thicknessMm());
        Courses.Laid laid = Courses.of(bed, saw, longestMm, joined);
        List<Finding> findings = new ArrayList<>(laid.findings());
        List<Piece> pieces = pieces(laid);
        LowSide low = LowSide.of(bed, downhill);
        Notching.Cut notched = Notching.of(bed, low, laid.seams());
        findings.addAll(notched.findings());
        TimberQuantities.quantities(bed, pieces, notched.notches().size(), quantities);
        Coating.seal(bed, pieces.size(), notched.notches().size(), quantities);
        TimberQuantities.lifts(bed, pieces, liftLimitKg, quantities);
        boolean screwed = Fixings.screws(bed, quantities, findings);
        CrossTies across = crossTies(bed, inner, laid.seams(), findings);
        held(bed, laid, across, quantities);
        Floor floor = Floor.of(bed, inner, low, saw, bearerStockMm);
        floor.quantities(bed, inner, saw, bearerStockMm, quantities);
        floor.findings(bed, low.toward(), findings);
        List<LinerPiece> liner = bed.inside().liner().wanted() ? LinerCut.pieces(bed, inner, floor.rectangles(), low, findings) : List.of();
        LinerCut.quantities(bed, inner, liner, quantities);
        if (!liner.isEmpty()) Fixings.staples(bed, inner, quantities);
        Coating.quantities(bed, inner, quantities);
        quantities.add(innerArea(bed, inner));
        BedWork.Frame frame = new BedWork.Frame(
                inner, laid.courses(), laid.seams(), notched.notches(), screwed ? CornerJoints.screws(bed, laid.courses()) : List.of(), across.ties());
        BedWork.Bottom bottom = new BedWork.Bottom(floor.rectangles(), floor.strips(), floor.slats(), floor.bays());
        return new BedWork(bed, frame, bottom, liner, quantities, findings, !screwed);
    }

    private static Quantity innerArea(Bed bed, Outline inner) {
        return Quantity.of(QuantityKind.INNER_AREA, inner.areaMm2() / 1e6, "m2",
                bed.outline().upright() ? "outer area - t (P - 4t)" : "outer area - t (P + P') / 2", Working.GEOMETRY,
                Input.of("outer area", bed.outline().areaMm2() / 1e6, "m2"),
                Input.of("outer perimeter P", bed.outline().perimeterMm(), "mm"), Input.of("inner perimeter P'", inner.perimeterMm(), "mm"),
                Input.of("thickness t", bed.section().thicknessMm(), "mm"));
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

    private static CrossTies crossTies(Bed bed, Outline inner, List<Seam> seams, List<Finding> findings) {
        CrossTies across = CrossTies.of(bed, inner, seams);
        across.untied().forEach(wall -> findings.add(Finding.of(FindingKind.TIE_NO_WALL, Place.wall(bed.id(), wall))
                .way(WayKind.POST_INSIDE).way(WayKind.WALL_ACROSS)));
        across.crossed().forEach(wall -> findings.add(Finding.of(FindingKind.TIE_CROSSED, Place.wall(bed.id(), wall)).way(WayKind.POST_INSIDE)));
        return across;
    }
}
