package lapyard.ground;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import lapyard.plan.Finding;
import lapyard.plan.Ground;
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

    /** Kinds of ground under a bed with the area of each, mm2. */
    Map<String, Double> areas(Lot lot) {
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

    List<Finding> under(Lot lot) {
        Map<String, Double> areas = areas(lot);
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
                    Say.m2(areas.get("deck"))
                                    + " on a raised deck: not designed here, as wet soil weighs about "
                                    + "1600 kg a cubic metre",
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
            Geometry all = Shapes.union(kinds.values());
            double rest = Shapes.less(site.yard().get(), all).getArea();
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
