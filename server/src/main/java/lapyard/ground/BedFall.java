package lapyard.ground;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import lapyard.geometry.Outline;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place.What;
import lapyard.plan.Place;
import lapyard.plan.WayKind;
import lapyard.working.Quantity;
import lapyard.working.QuantityKey;
import lapyard.working.QuantityKind;
import lapyard.working.Working;

/**
 * How one bed meets sloping ground: the rim level, the bottom course cut to the ground.
 *
 * @param scribes    what comes off the underside of each wall's bottom course at its two ends
 * @param quantities {@code level.1} ... one a corner, ground below the level string, {@code scribe.A.start}, {@code scribe.A.end} ... and
 *                   {@code scribe.most}, mm
 */
public record BedFall(String bed, List<Scribe> scribes, List<Quantity> quantities, List<Finding> findings) {
    public BedFall {
        scribes = List.copyOf(scribes);
        quantities = List.copyOf(quantities);
        findings = List.copyOf(findings);
    }

    /** Height of the ground over the bed's lowest corner, mm, at the start and the end of a wall. */
    public record Scribe(String wall, double startMm, double endMm) {
        /** At a place along the wall, a share of its length from its start. */
        public double atMm(double share) {
            return startMm + (endMm - startMm) * share;
        }
    }

    public static BedFall of(Bed bed, Fall fall) {
        Outline outline = bed.inYard();
        List<Double> drops = outline.corners().stream().map(fall::dropMm).toList();
        double lowest = Collections.max(drops);
        List<Scribe> scribes = new ArrayList<>();
        List<Quantity> quantities = new ArrayList<>();
        for (int i = 0; i < outline.sides(); i++) quantities.add(level(i, outline, fall, drops.get(i)));
        for (int i = 0; i < outline.sides(); i++) {
            double start = drops.get(i);
            double end = drops.get((i + 1) % drops.size());
            String wall = Bed.wallLetter(i);
            scribes.add(new Scribe(wall, lowest - start, lowest - end));
            quantities.add(scribe(QuantityKind.SCRIBE_START.of(wall), lowest, start));
            quantities.add(scribe(QuantityKind.SCRIBE_END.of(wall), lowest, end));
        }
        double highest = Collections.min(drops);
        quantities.add(scribe(QuantityKind.SCRIBE_MOST.alone(), lowest, highest));
        return new BedFall(bed.id(), scribes, quantities, findings(bed, scribes, lowest - highest));
    }

    private static Quantity level(int corner, Outline outline, Fall fall, double drop) {
        return Quantity.of(QuantityKind.LEVEL.of(corner + 1), drop, "mm",
                "level = a x + b y + c, the plane of least squares through all level readings",
                Working.GEOMETRY,
                Working.Input.of("x", outline.corner(corner).x(), "mm"),
                Working.Input.of("y", outline.corner(corner).y(), "mm"),
                Working.Input.of("a", fall.a(), ""),
                Working.Input.of("b", fall.b(), ""),
                Working.Input.of("c", fall.c(), "mm"));
    }

    private static Quantity scribe(QuantityKey key, double lowest, double drop) {
        return Quantity.of(key, lowest - drop, "mm",
                "level reading at the bed's lowest corner - level reading here",
                Working.COMMON_PRACTICE,
                Working.Input.of("level reading at the lowest corner", lowest, "mm"),
                Working.Input.of("level reading here", drop, "mm"));
    }

    /** A quarter of the timber's height may come off the bottom course; more leaves too little of it. */
    private static List<Finding> findings(Bed bed, List<Scribe> scribes, double most) {
        double height = bed.section().heightMm();
        double limit = height / 4;
        if (most <= limit + Shapes.TOUCH_MM) return List.of();
        List<String> walls = scribes.stream()
                        .filter(scribe -> Math.max(scribe.startMm(), scribe.endMm()) > limit + Shapes.TOUCH_MM)
                        .map(Scribe::wall)
                        .toList();
        return List.of(Finding.of(FindingKind.SCRIBE_DEEP, Place.bed(bed.id()).then(What.FIELD, "walls " + String.join(", ", walls)))
                .with("walls", Fact.names(walls))
                .with("height", Fact.mm(height)).with("limit", Fact.mm(limit)).by(Fact.mm(most))
                .way(WayKind.LEVEL_STRIP).way(WayKind.STEP_BASE));
    }
}
