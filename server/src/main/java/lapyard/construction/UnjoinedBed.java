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

/**
 * A bed before its walls are joined. Its corner screws, base, liner and coat do not depend on the joints: they are worked out when a
 * work is asked for, and once for all ways to join.
 */
public final class UnjoinedBed {
    private final Bed bed;
    private final Asked asked;
    private Rest rest;

    /**
     * All that its work depends on but for the joints.
     *
     * @param bed       with an outline that {@code OutlineCheck} has passed
     * @param longestMm longest piece that some board can give for this section (stock or rack)
     * @param downhill  the fall of the ground as a slope (x, y) in the bed's own frame, pointing downhill; empty
     *     where no levels were taken
     * @param bearerStockMm longest stock of the bearer timber, end trims included
     * @param liftLimitKg   what one person may lift
     */
    public record Asked(Bed bed, Saw saw, double longestMm, Optional<Point> downhill, double bearerStockMm, double liftLimitKg) {}

    /** @param screws quantities that stand before those of what holds the joints, all others after them */
    private record Rest(Outline inner, LowSide low, List<Quantity> screws, boolean screwed, List<Finding> screwFindings, BedWork.Bottom bottom, List<LinerPiece> liner,
            List<Quantity> quantities, List<Finding> findings) {}

    public UnjoinedBed(Asked asked) {
        this.asked = asked;
        bed = asked.bed();
    }

    public Asked asked() {
        return asked;
    }

    /** @param joined one of the {@link LongWall#ways} by side, where that was settled with the boards */
    public BedWork joined(Map<Integer, SeamSplit> joined) {
        if (rest == null) rest = rest();
        List<Quantity> quantities = new ArrayList<>();
        Courses.Laid laid = Courses.of(bed, asked.saw(), asked.longestMm(), joined);
        List<Finding> findings = new ArrayList<>(laid.findings());
        List<Piece> pieces = Construction.pieces(laid);
        Notching.Cut notched = Notching.of(bed, rest.low(), laid.seams());
        findings.addAll(notched.findings());
        TimberQuantities.quantities(bed, pieces, notched.notches().size(), quantities);
        Coating.seal(bed, pieces.size(), notched.notches().size(), quantities);
        TimberQuantities.lifts(bed, pieces, asked.liftLimitKg(), quantities);
        quantities.addAll(rest.screws());
        findings.addAll(rest.screwFindings());
        CrossTies across = crossTies(rest.inner(), laid.seams(), findings);
        Construction.held(bed, laid, across, quantities);
        quantities.addAll(rest.quantities());
        findings.addAll(rest.findings());
        BedWork.Frame frame = new BedWork.Frame(rest.inner(), laid.courses(), laid.seams(), notched.notches(),
                rest.screwed() ? CornerJoints.screws(bed, laid.courses()) : List.of(), across.ties());
        return new BedWork(bed, frame, rest.bottom(), rest.liner(), quantities, findings, !rest.screwed());
    }

    private Rest rest() {
        LowSide low = LowSide.of(bed, asked.downhill());
        Outline inner = Inset.of(bed.outline(), bed.section().thicknessMm());
        List<Quantity> screws = new ArrayList<>();
        List<Finding> screwFindings = new ArrayList<>();
        boolean screwed = Fixings.screws(bed, screws, screwFindings);
        List<Quantity> quantities = new ArrayList<>();
        List<Finding> findings = new ArrayList<>();
        Floor floor = Floor.of(bed, inner, low, asked.saw(), asked.bearerStockMm());
        floor.quantities(bed, inner, asked.saw(), asked.bearerStockMm(), quantities);
        floor.findings(bed, low.toward(), findings);
        List<LinerPiece> liner = bed.inside().liner().wanted() ? LinerCut.pieces(bed, inner, floor.rectangles(), low, findings) : List.of();
        LinerCut.quantities(bed, inner, liner, quantities);
        if (!liner.isEmpty()) Fixings.staples(bed, inner, quantities);
        Coating.quantities(bed, inner, quantities);
        quantities.add(innerArea(inner));
        BedWork.Bottom bottom = new BedWork.Bottom(floor.rectangles(), floor.strips(), floor.slats(), floor.bays());
        return new Rest(inner, low, screws, screwed, screwFindings, bottom, liner, quantities, findings);
    }

    private Quantity innerArea(Outline inner) {
        return Quantity.of(QuantityKind.INNER_AREA, inner.areaMm2() / 1e6, "m2",
                "outer area - t (P + P') / 2", Working.GEOMETRY,
                Input.of("outer area", bed.outline().areaMm2() / 1e6, "m2"),
                Input.of("outer perimeter P", bed.outline().perimeterMm(), "mm"), Input.of("inner perimeter P'", inner.perimeterMm(), "mm"),
                Input.of("thickness t", bed.section().thicknessMm(), "mm"));
    }

    private CrossTies crossTies(Outline inner, List<Seam> seams, List<Finding> findings) {
        CrossTies across = CrossTies.of(bed, inner, seams);
        across.untied().forEach(wall -> findings.add(Finding.of(FindingKind.TIE_NO_WALL, Place.wall(bed.id(), wall))
                .way(WayKind.POST_INSIDE).way(WayKind.WALL_ACROSS)));
        across.crossed().forEach(wall -> findings.add(Finding.of(FindingKind.TIE_CROSSED, Place.wall(bed.id(), wall)).way(WayKind.POST_INSIDE)));
        return across;
    }
}
