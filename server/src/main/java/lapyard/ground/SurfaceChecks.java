package lapyard.ground;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import lapyard.geometry.Jts;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Ground;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.SurfaceKind;
import lapyard.plan.WayKind;
import lapyard.plan.WayOut;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Working;
import org.locationtech.jts.geom.Geometry;

/** What the ground is made of, under the beds and over the whole yard. */
final class SurfaceChecks {
    /** Less than a hand's breadth square is how the drawing was traced, not how the ground is. */
    private static final double LEAST_MM2 = 10_000;

    private final Site site;
    private final Map<SurfaceKind, Geometry> kinds = new LinkedHashMap<>();

    SurfaceChecks(Site site, List<Ground.Surface> surfaces) {
        this.site = site;
        Map<SurfaceKind, List<Geometry>> drawn = new LinkedHashMap<>();
        for (Ground.Surface surface : surfaces) {
            drawn.computeIfAbsent(surface.kind(), kind -> new ArrayList<>()).add(Shapes.area(surface.outline()));
        }
        drawn.forEach((kind, areas) -> kinds.put(kind, Shapes.union(areas)));
    }

    /** Areas under a bed, mm2, by kind in the order of the document; what is less than a hand's breadth is left out. */
    Map<SurfaceKind, Double> areasUnder(Lot lot) {
        Map<SurfaceKind, Double> areas = new LinkedHashMap<>();
        kinds.forEach((kind, ground) -> {
            double area = ground.getEnvelopeInternal().intersects(lot.area().getEnvelopeInternal())
                    ? Jts.common(lot.area(), ground).getArea()
                    : 0;
            if (area > LEAST_MM2) areas.put(kind, area);
        });
        return areas;
    }

    /** Area of each kind as drawn and of the yard's ground without a surface. */
    List<Quantity> areas() {
        List<Quantity> quantities = new ArrayList<>();
        kinds.forEach((kind, ground) -> quantities.add(Quantity.of(QuantityKind.SURFACE.of(kind.code()),
                site.yard().map(yard -> Jts.common(ground, yard)).orElse(ground).getArea() / 1e6, "m2",
                "area within the outlines of this kind together, in the yard", Working.GEOMETRY)));
        if (site.yard().isPresent()) {
            double yard = site.yard().get().getArea() / 1e6;
            double rest = restMm2() / 1e6;
            quantities.add(Quantity.of(QuantityKind.SURFACE.of("rest"), rest, "m2",
                    "yard less all surfaces in it", Working.GEOMETRY,
                    Working.Input.of("yard", yard, "m2"), Working.Input.of("surfaces in the yard", yard - rest, "m2")));
        }
        return quantities;
    }

    private double restMm2() {
        return Jts.less(site.yard().orElseThrow(), Shapes.union(kinds.values())).getArea();
    }

    List<Finding> under(Lot lot, Map<SurfaceKind, Double> areas) {
        List<Finding> found = new ArrayList<>();
        if (areas.size() > 1) {
            Set<SurfaceKind> lesser = new LinkedHashSet<>(areas.keySet());
            lesser.remove(BySurface.most(areas).orElseThrow());
            double rest = lesser.stream().mapToDouble(areas::get).sum();
            Geometry others = Shapes.union(lesser.stream().map(kinds::get).toList());
            List<WayOut> ways = new ArrayList<>(site.waysOut(lot, others, moved -> !moved.core().intersects(others)));
            ways.add(WayOut.of(WayKind.ONE_GROUND));
            found.add(Finding.of(FindingKind.BED_ON_TWO_SURFACES, Place.bed(lot.bed().id()))
                    .with("surfaces", Fact.names(areas.keySet().stream().map(SurfaceKind::code).toList())).with("least", Fact.m2(rest / 1e6)).by(Fact.m2(rest / 1e6)).ways(ways));
        }
        return found;
    }

    List<Finding> ofTheYard() {
        List<Finding> found = new ArrayList<>();
        List<SurfaceKind> names = List.copyOf(kinds.keySet());
        for (int i = 0; i < names.size(); i++) {
            for (int j = i + 1; j < names.size(); j++) {
                double both = Jts.common(kinds.get(names.get(i)), kinds.get(names.get(j))).getArea();
                if (both > LEAST_MM2) {
                    found.add(Finding.of(FindingKind.SURFACES_OVERLAP, Place.field("surfaces " + names.get(i).code() + " and " + names.get(j).code()))
                            .with("one", Fact.name(names.get(i).code())).with("other", Fact.name(names.get(j).code())).by(Fact.m2(both / 1e6))
                            .way(WayKind.COMMON_EDGE));
                }
            }
        }
        if (site.yard().isPresent() && !kinds.isEmpty()) {
            double rest = restMm2();
            if (rest > LEAST_MM2) {
                found.add(Finding.of(FindingKind.SURFACE_MISSING, Place.of(What.YARD)).by(Fact.m2(rest / 1e6)).way(WayKind.DRAW_SURFACE));
            }
        }
        return found;
    }
}
