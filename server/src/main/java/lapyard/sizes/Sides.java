package lapyard.sizes;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapyard.geometry.Stretch;
import lapyard.plan.Bed;
import lapyard.plan.Garden;
import lapyard.plan.Give;
import lapyard.plan.Giving;
import lapyard.sizes.Side.Part;
import lapyard.working.Whole;

/** Finds what may change and what must change together, so that all stays alike that shall. */
record Sides(Garden garden, Giving giving, List<Part> parts, Map<Part, Part> leader) {
    /** In the order of the document, width before depth; sides that cannot give are left out. */
    static List<Side> of(Garden garden, Giving giving) {
        Sides sides = new Sides(garden, giving, new ArrayList<>(), new HashMap<>());
        for (int bed = 0; bed < garden.beds().size(); bed++) {
            List<Stretch> stretches = Stretch.of(garden.beds().get(bed).outline());
            for (int i = 0; i < stretches.size(); i++) sides.parts.add(new Part(bed, i, stretches.get(i)));
        }
        sides.joinAlike();
        WallsInLine rows = new WallsInLine(garden, sides.parts);
        List<Part> held = new ArrayList<>();
        if (giving.inLine()) sides.keepAlike(rows.inLine(), held);
        if (giving.equalGaps()) sides.keepAlike(rows.equalGaps(), held);
        Map<Part, List<Part>> groups = new LinkedHashMap<>();
        sides.parts.forEach(part -> groups.computeIfAbsent(sides.leaderOf(part), p -> new ArrayList<>()).add(part));
        List<Side> all = new ArrayList<>();
        for (List<Part> group : groups.values()) {
            double least = Double.NEGATIVE_INFINITY;
            double most = Double.POSITIVE_INFINITY;
            double step = 0;
            for (Part part : group) {
                Give give = giving.byBed().getOrDefault(garden.beds().get(part.bed()).id(), Give.NOTHING);
                least = Math.max(least, part.acrossX() ? give.widthLeastMm() : give.depthLeastMm());
                most = Math.min(most, part.acrossX() ? give.widthMostMm() : give.depthMostMm());
                step = Math.max(step, give.stepMm());
            }
            least = Whole.up(least / step) * step;
            most = Whole.down(most / step) * step;
            if ((least < 0 || most > 0) && group.stream().noneMatch(part -> held.stream().anyMatch(one -> sides.leaderOf(one).equals(sides.leaderOf(part))))) {
                all.add(new Side(group, least, most, step));
            }
        }
        return all;
    }

    private Part leaderOf(Part part) {
        Part at = part;
        while (leader.containsKey(at)) at = leader.get(at);
        return at;
    }

    private void join(Part one, Part other) {
        Part a = leaderOf(one);
        Part b = leaderOf(other);
        if (a.equals(b)) return;
        if (parts.indexOf(a) < parts.indexOf(b)) {
            leader.put(b, a);
        } else {
            leader.put(a, b);
        }
    }

    /** Beds that take their outline from one type, and beds that are named alike. */
    private void joinAlike() {
        Map<List<Object>, Integer> firstOfType = new HashMap<>();
        for (int i = 0; i < garden.beds().size(); i++) {
            Bed bed = garden.beds().get(i);
            if (bed.type().isEmpty()) continue;
            Integer first = firstOfType.putIfAbsent(List.of(bed.type(), bed.outline()), i);
            if (first != null) joinAll(first, i);
        }
        for (List<String> ids : giving.alike()) {
            List<Integer> beds = ids.stream().map(this::index).filter(i -> i >= 0).toList();
            for (int i = 1; i < beds.size(); i++) joinAll(beds.get(0), beds.get(i));
        }
    }

    private int index(String id) {
        for (int i = 0; i < garden.beds().size(); i++) {
            if (garden.beds().get(i).id().equals(id)) return i;
        }
        return -1;
    }

    private void joinAll(int one, int other) {
        List<Part> same = parts.stream().filter(part -> part.bed() == one).toList();
        parts.stream().filter(part -> part.bed() == other && part.number() < same.size()).toList()
                .forEach(part -> join(same.get(part.number()), part));
    }

    /** Joins what each alone moves one of two things that stay alike; what moves them otherwise is held. */
    private void keepAlike(List<List<Map<Part, Double>>> pairs, List<Part> held) {
        for (List<Map<Part, Double>> pair : pairs) {
            Map<Part, Double> one = led(pair.get(0));
            Map<Part, Double> other = led(pair.get(1));
            if (one.equals(other)) continue;
            if (one.size() == 1 && other.size() == 1 && one.values().iterator().next().equals(other.values().iterator().next())) {
                join(one.keySet().iterator().next(), other.keySet().iterator().next());
            } else {
                held.addAll(one.keySet());
                held.addAll(other.keySet());
            }
        }
    }

    /** By who leads each part, those of one leader together. */
    private Map<Part, Double> led(Map<Part, Double> rates) {
        Map<Part, Double> led = new HashMap<>();
        rates.forEach((part, rate) -> led.merge(leaderOf(part), rate, Double::sum));
        return led;
    }
}
