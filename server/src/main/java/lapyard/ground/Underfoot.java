package lapyard.ground;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import lapyard.plan.Garden;
import lapyard.plan.SurfaceKind;

/** What each bed stands on. */
public final class Underfoot {
    private Underfoot() {}

    /** Kinds of ground by the bed's id; no kinds where nobody drew any. */
    public static Map<String, Set<SurfaceKind>> of(Garden garden) {
        Site site = new Site(garden);
        SurfaceChecks checks = new SurfaceChecks(site, garden.ground().surfaces());
        Map<String, Set<SurfaceKind>> kinds = new LinkedHashMap<>();
        site.lots().forEach(lot -> kinds.put(lot.bed().id(), Set.copyOf(checks.areasUnder(lot).keySet())));
        return kinds;
    }
}
