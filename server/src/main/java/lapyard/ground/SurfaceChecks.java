package lapyard.ground;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import lapyard.plan.Finding;
import lapyard.plan.Ground;
import lapyard.plan.StandingRules;
import lapyard.working.Quantity;
import lapyard.working.Working;
import org.locationtech.jts.geom.Geometry;

/** What the ground is made of, under the beds and over the whole yard. */
final class SurfaceChecks {
    /** Less than a hand's breadth square is how the drawing was traced, not how the ground is. */
    private static final double LEAST_MM2 = 10_000;

    private final Site site;
    private final Map<String, Geometry> kinds = new LinkedHashMap<>();

    SurfaceChecks(Site site, List<Ground.Surface> surfaces) {
        this.site = site;
        Map<String, List<Geometry>> drawn = new LinkedHashMap<>();
        for (Ground.Surface surface : surfaces) {
            drawn.computeIfAbsent(surface.kind(), kind -> new ArrayList<>()).add(Shapes.area(surface.outline()));
        }
        drawn.forEach((kind, areas) -> kinds.put(kind, Shapes.union(areas)));
    }

    /** Areas under a bed, mm2, by kind in the order of the document; what is less than a hand's breadth is left out. */
    Map<String, Double> areasUnder(Lot lot) {
        Map<String, Double> areas = new LinkedHashMap<>();
        kinds.forEach((kind, ground) -> {
            double area = ground.getEnvelopeInternal().intersects(lot.area().getEnvelopeInternal())
                    ? Shapes.common(lot.area(), ground).getArea()
                    : 0;
            if (area > LEAST_MM2) {
                areas.put(kind, area);
            }
        });
        return areas;
    }

    /** Area of each kind as drawn and of the yard's ground without a surface. */
    List<Quantity> areas() {
        List<Quantity> quantities = new ArrayList<>();
        kinds.forEach((kind, ground) -> quantities.add(new Quantity(
                "surface." + kind,
                site.yard().map(yard -> Shapes.common(ground, yard)).orElse(ground).getArea() / 1e6,
                "m2",
                Working.of("area within the outlines of this kind together, in the yard", Working.GEOMETRY))));
        if (site.yard().isPresent()) {
            double yard = site.yard().get().getArea() / 1e6;
            double rest = restMm2() / 1e6;
            quantities.add(new Quantity(
                    "surface.rest",
                    rest,
                    "m2",
                    Working.of(
                            "yard less all surfaces in it",
                            Working.GEOMETRY,
                            Working.Input.of("yard", yard, "m2"),
                            Working.Input.of("surfaces in the yard", yard - rest, "m2"))));
        }
        return quantities;
    }

    private double restMm2() {
        return Shapes.less(site.yard().orElseThrow(), Shapes.union(kinds.values()))
                .getArea();
    }

    List<Finding> under(Lot lot, Map<String, Double> areas, StandingRules loads) {
        List<Finding> found = new ArrayList<>();
        if (areas.size() > 1) {
            String largest = areas.entrySet().stream()
                    .max(Map.Entry.comparingByValue())
                    .orElseThrow()
                    .getKey();
            double rest = areas.entrySet().stream()
                    .filter(entry -> !entry.getKey().equals(largest))
                    .mapToDouble(Map.Entry::getValue)
                    .sum();
            Geometry others = Shapes.union(areas.keySet().stream()
                    .filter(kind -> !kind.equals(largest))
                    .map(kinds::get)
                    .toList());
            List<String> ways = new ArrayList<>(
                    site.waysOut(lot, others, moved -> !moved.core().intersects(others)));
            ways.add("Give it one kind of ground");
            String shares = areas.entrySet().stream()
                    .map(entry -> Say.m2(entry.getValue()) + " on " + entry.getKey())
                    .collect(Collectors.joining(", "));
            found.add(Finding.snag(
                    lot.where(),
                    shares + ": the two settle differently",
                    Say.amountM2(rest),
                    ways.toArray(String[]::new)));
        }
        if (areas.containsKey("deck")) {
            List<String> ways = List.of("Move it off the deck", "Ask a licensed engineer what the deck carries");
            found.add(Finding.snag(
                    lot.where(),
                    Say.m2(areas.get("deck")) + " on a raised deck: not designed here, as its wet soil weighs "
                                    + Math.round(BedGround.soilDepthMm(lot.bed()) / 1000 * loads.soilKgM3())
                                    + " kg on each square metre",
                    Say.amountM2(areas.get("deck")),
                    ways.toArray(String[]::new)));
        }
        return found;
    }

    List<Finding> ofTheYard() {
        List<Finding> found = new ArrayList<>();
        List<String> names = List.copyOf(kinds.keySet());
        for (int i = 0; i < names.size(); i++) {
            for (int j = i + 1; j < names.size(); j++) {
                double both = Shapes.common(kinds.get(names.get(i)), kinds.get(names.get(j)))
                        .getArea();
                if (both > LEAST_MM2) {
                    String way = "Draw one of them back to their common edge";
                    found.add(Finding.snag(
                            "surfaces " + names.get(i) + " and " + names.get(j),
                            Say.m2(both) + " drawn as both",
                            Say.amountM2(both),
                            way));
                }
            }
        }
        if (site.yard().isPresent() && !kinds.isEmpty()) {
            double rest = restMm2();
            if (rest > LEAST_MM2) {
                String way = "Draw what it is";
                found.add(Finding.note(
                        "yard",
                        Say.m2(rest) + " of the yard has no surface",
                        Say.amountM2(rest),
                        way));
            }
        }
        return found;
    }
}
