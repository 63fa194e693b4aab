package lapyard.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.geometry.Jts;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.CannotAnswer;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.Ground.KeepClear;
import lapyard.plan.Ground;
import lapyard.plan.KeepClearKind;
import lapyard.plan.Place;
import lapyard.plan.WayKind;
import org.locationtech.jts.geom.Geometry;

/**
 * The ground of a yard on which beds may stand and people may walk, before any bed is laid out.
 *
 * @param yard     as drawn
 * @param beds     within which beds may stand, the margin along the edge left free
 * @param kept     rings that beds keep off, clearances included
 * @param lines    that no bed may lie across, edges between surfaces among them
 * @param standing what can neither be walked over nor stood upon
 * @param entrance where people come in, on the edge of the yard or beside a door; {@code leafMm} of its gate, 0 for a door
 * @param tap      where the hose begins
 */
public record FreeGround(
        Outline yard,
        List<Outline> beds,
        List<Outline> kept,
        List<List<Point>> lines,
        List<Outline> standing,
        Optional<Point> entrance,
        double leafMm,
        Optional<Point> tap) {
    /** What lies this near to a line or point is on it. */
    private static final double POINT_MM = 1;

    public FreeGround {
        beds = List.copyOf(beds);
        kept = List.copyOf(kept);
        lines = List.copyOf(lines);
        standing = List.copyOf(standing);
    }

    /**
     * @param marginMm along the edge of the yard, 0 to let beds stand at it
     * @throws IllegalArgumentException where no yard is drawn
     */
    public static FreeGround of(Garden garden, double marginMm) {
        Site site = new Site(garden.withBeds(List.of()));
        Geometry yard = site.yard().orElseThrow(() -> new CannotAnswer(
                Finding.of(FindingKind.YARD_NONE, Place.of(Place.What.YARD)).way(WayKind.DRAW_YARD)));
        List<Outline> kept = new ArrayList<>();
        List<List<Point>> lines = new ArrayList<>();
        List<Outline> standing = new ArrayList<>();
        Optional<Point> gate = Optional.empty();
        Optional<Point> door = Optional.empty();
        Optional<Point> tap = Optional.empty();
        double leaf = 0;
        for (Zone zone : site.zones()) {
            KeepClear one = zone.kept();
            Geometry clear = zone.keptClear();
            if (clear.getDimension() < 2 && one.shape().size() > 1) {
                lines.add(one.shape());
            } else {
                kept.addAll(Shapes.outlines(clear.getDimension() < 2 ? Shapes.offset(Shapes.round(clear, POINT_MM), 0) : clear));
            }
            if (zone.solid()) standing.addAll(Shapes.outlines(zone.shape()));
            if (one.leafMm() > 0 && gate.isEmpty()) {
                gate = Optional.of(opening(one, garden.ground().outline().get(0)));
                leaf = one.leafMm();
            }
            if (one.kind() == KeepClearKind.DOOR && door.isEmpty()) door = Optional.of(one.shape().get(0));
            if (one.kind() == KeepClearKind.TAP && tap.isEmpty()) tap = Optional.of(one.shape().get(0));
        }
        // the two sides of an edge between kinds of ground settle differently
        for (Ground.Surface surface : garden.ground().surfaces()) {
            List<Point> ring = new ArrayList<>(surface.outline().corners());
            ring.add(ring.get(0));
            lines.add(ring);
        }
        List<Outline> within = Shapes.outlines(Shapes.offset(yard, -marginMm));
        return new FreeGround(garden.ground().outline().get(0), within, kept, lines, standing, gate.isPresent() ? gate : door, leaf, tap);
    }

    /** The middle of a gate; without its closed direction the leaf lies along the edge it hangs in, the way that stays in the yard's edge. */
    private static Point opening(KeepClear gate, Outline yard) {
        Point hinge = gate.shape().get(0);
        if (gate.shape().size() > 1) {
            return hinge.middle(gate.shape().get(1));
        }
        for (int i = 0; i < yard.sides(); i++) {
            Point a = yard.corner(i);
            Point b = yard.corner(i + 1);
            if (hinge.distanceMm(hinge.nearestOn(a, b)) > POINT_MM) continue;
            for (int sense : new int[] {1, -1}) {
                Point far = hinge.moved(yard.direction(i), sense * gate.leafMm(), 0);
                if (far.distanceMm(far.nearestOn(a, b)) <= POINT_MM) return hinge.middle(far);
            }
        }
        return hinge;
    }

    /**
     * Area that beds with a border round them can cover together, for a bound on their number.
     *
     * @param outMm by which a border reaches over the edge of the ground, {@code inMm} over the edge of what is kept clear
     */
    public double coverableMm2(double outMm, double inMm) {
        Geometry around = Shapes.offset(Shapes.union(beds.stream().map(Shapes::area).toList()), outMm);
        List<Geometry> less = new ArrayList<>();
        for (Outline one : kept) {
            Geometry core = Shapes.offset(Shapes.area(one), -inMm);
            if (!core.isEmpty()) less.add(core);
        }
        return less.isEmpty() ? around.getArea() : Jts.less(around, Shapes.union(less)).getArea();
    }
}
