package lapyard.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.Place;
import lapyard.plan.SurfaceKind;
import lapyard.plan.WayKind;

/**
 * The floor of each bed that nobody gave one: open on grass, soil and gravel, slatted on slab and concrete. On ground that
 * nobody drew it is slatted too, and one finding asks.
 *
 * @param garden   the same with these floors settled
 * @param findings the one that asks, or none
 */
public record BySurface(Garden garden, List<Finding> findings) {
    public BySurface {
        findings = List.copyOf(findings);
    }

    public static BySurface of(Garden garden) {
        if (garden.beds().stream().noneMatch(bed -> bed.inside().base().bySurface())) return new BySurface(garden, List.of());
        Optional<SurfaceChecks> surfaces = garden.ground().surfaces().isEmpty()
                ? Optional.empty()
                : Optional.of(new SurfaceChecks(new Site(garden), garden.ground().surfaces()));
        List<Bed> beds = new ArrayList<>();
        List<String> asked = new ArrayList<>();
        for (Bed bed : garden.beds()) {
            if (!bed.inside().base().bySurface()) {
                beds.add(bed);
                continue;
            }
            Optional<SurfaceKind> surface = surfaces.flatMap(checks -> most(checks.areasUnder(Lot.of(beds.size(), bed))));
            if (surface.isEmpty()) asked.add(bed.id());
            beds.add(bed.withInside(bed.inside().withBase(bed.inside().base().slatted(surface.filter(each -> each.dug).isEmpty()))));
        }
        return new BySurface(garden.withBeds(beds), asked.isEmpty() ? List.of() : List.of(Finding.of(FindingKind.GROUND_NOT_DRAWN, Place.beds(asked)).way(WayKind.DRAW_SURFACE).way(WayKind.NAME_BASE)));
    }

    /** The kind that covers most of a bed's ground; empty if none is drawn. */
    static Optional<SurfaceKind> most(Map<SurfaceKind, Double> areas) {
        return areas.entrySet().stream().max(Map.Entry.comparingByValue()).map(Map.Entry::getKey);
    }
}
