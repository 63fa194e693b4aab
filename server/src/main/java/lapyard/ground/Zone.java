package lapyard.ground;

import java.util.Arrays;
import java.util.Optional;
import lapyard.geometry.Jts;
import lapyard.geometry.Outline;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Ground.KeepClear;
import lapyard.plan.Place;
import org.locationtech.jts.geom.Geometry;

/**
 * Ground that beds keep off.
 *
 * @param index     place in the document
 * @param shape     the thing itself: a point, a line, an area, or what a gate sweeps
 * @param keptClear the shape with its clearance round it
 */
record Zone(int index, KeepClear kept, Geometry shape, Geometry keptClear) {
    static Zone of(int index, KeepClear kept, Optional<Geometry> yard) {
        Geometry shape = kept.leafMm() > 0 ? GateSwing.of(kept, yard).swept() : shape(kept);
        return new Zone(index, kept, shape, kept.clearanceMm() > 0 ? Shapes.round(shape, kept.clearanceMm()) : shape);
    }

    /** Whether it stands on the ground as an area: covers and drains lie flush and are walked over. */
    boolean solid() {
        return kept.leafMm() == 0
                && shape.getArea() > 0
                && !kept.kind().flush;
    }

    boolean blocks(Lot lot) {
        return kept.clearanceMm() > Shapes.TOUCH_MM
                ? lot.area().isWithinDistance(shape, kept.clearanceMm() - Shapes.TOUCH_MM)
                : lot.core().intersects(shape);
    }

    /** How much room is missing, mm: into the swing of a gate, under the clearance, or over the thing itself. */
    double shortByMm(Lot lot) {
        if (gate()) {
            Geometry in = Jts.common(lot.area(), keptClear);
            double hinge = in.isEmpty()
                    ? 0
                    : in.distance(Shapes.FACTORY.createPoint(Shapes.coordinate(kept.shape().get(0))));
            return kept.leafMm() + kept.clearanceMm() - hinge;
        }
        double apart = lot.area().distance(shape);
        return apart > 0 ? kept.clearanceMm() - apart : kept.clearanceMm() + overlapMm(lot);
    }

    /** What is wrong with a bed that this place blocks, still without ways out. */
    Finding fact(Lot lot, double shortByMm) {
        double apart = lot.area().distance(shape);
        Finding finding = Finding.of(gate() ? FindingKind.BED_IN_SWING : FindingKind.BED_TOO_NEAR, Place.bed(lot.bed().id()))
                .with("what", Fact.name(name())).by(Fact.mm(shortByMm));
        return gate() ? finding : finding.with(apart > 0 ? "apart" : "over", Fact.mm(apart > 0 ? apart : shortByMm))
                .with("clearance", Fact.mm(kept.clearanceMm()));
    }

    /** Its kind as a person says it. */
    String name() {
        return kept.kind().words();
    }

    private boolean gate() {
        return kept.leafMm() > 0;
    }

    /** How deep the shape reaches into the bed: the furthest of its corners from the bed's edge. */
    private double overlapMm(Lot lot) {
        Geometry edge = lot.area().getBoundary();
        return Arrays.stream(Jts.common(lot.area(), shape).getCoordinates())
                .mapToDouble(corner -> edge.distance(Shapes.FACTORY.createPoint(corner))).max().orElse(0);
    }

    private static Geometry shape(KeepClear kept) {
        return kept.shape().size() > 2 ? Shapes.area(new Outline(kept.shape())) : Jts.line(kept.shape());
    }
}
