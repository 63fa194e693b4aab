package lapyard.sizes;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.geometry.Spans;
import lapyard.plan.Bed;
import lapyard.plan.Garden;
import lapyard.plan.Give;
import lapyard.plan.Giving;
import lapyard.sizes.Side.Part;

/** Finds what may change and what must change together. Only beds with square corners along their axes give. */
final class Sides {
    /** Walls nearer to one line than this lie in it. */
    private static final double IN_LINE_MM = 1;

    private final Garden garden;
    private final Giving giving;
    private final List<Part> parts = new ArrayList<>();
    private final Map<Part, Part> leader = new HashMap<>();

    private Sides(Garden garden, Giving giving) {
        this.garden = garden;
        this.giving = giving;
    }

    /** In the order of the document, width before depth; sides that cannot give are left out. */
    static List<Side> of(Garden garden, Giving giving) {
        Sides sides = new Sides(garden, giving);
        for (int bed = 0; bed < garden.beds().size(); bed++) {
            Outline outline = garden.beds().get(bed).outline();
            if (!outline.upright()) continue;
            for (boolean acrossX : new boolean[] {true, false}) {
                for (int span = 0; span < Spans.of(outline, acrossX).size(); span++) {
                    sides.parts.add(new Part(bed, acrossX, span));
                }
            }
        }
        sides.joinAlike();
        List<Part> held = giving.inLine() ? sides.joinInLine() : List.of();
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
            least = Math.ceil(least / step - 1e-9) * step;
            most = Math.floor(most / step + 1e-9) * step;
            if ((least < 0 || most > 0) && group.stream().noneMatch(held::contains)) {
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
        parts.stream().filter(part -> part.bed() == other).toList().forEach(part -> {
            Part same = new Part(one, part.acrossX(), part.span());
            if (parts.contains(same)) join(same, part);
        });
    }

    /** An outermost wall in the yard: across which axis it lies, where, which way it looks, and the spans that move it. */
    private record Wall(int bed, boolean acrossX, double atMm, List<Part> movedBy, int facing) {}

    /**
     * Joins spans of which each alone moves a wall that is in line with the other's; what moves a wall out of line and
     * cannot be joined is held.
     */
    private List<Part> joinInLine() {
        List<Wall> walls = new ArrayList<>();
        for (int i = 0; i < garden.beds().size(); i++) {
            Bed bed = garden.beds().get(i);
            boolean quarter = Math.abs(bed.placement().turnDeg() % 90) < 1e-9;
            if (bed.outline().upright() && quarter) {
                walls.addAll(walls(i, bed, true));
                walls.addAll(walls(i, bed, false));
            }
        }
        List<Part> held = new ArrayList<>();
        for (int i = 0; i < walls.size(); i++) {
            for (int j = i + 1; j < walls.size(); j++) {
                Wall one = walls.get(i);
                Wall other = walls.get(j);
                if (one.bed() == other.bed() || one.acrossX() != other.acrossX() || one.facing() != other.facing()
                        || Math.abs(one.atMm() - other.atMm()) > IN_LINE_MM) {
                    continue;
                }
                if (one.movedBy().size() == 1 && other.movedBy().size() == 1) {
                    join(one.movedBy().get(0), other.movedBy().get(0));
                } else {
                    held.addAll(one.movedBy());
                    held.addAll(other.movedBy());
                }
            }
        }
        return held;
    }

    private static List<Wall> walls(int index, Bed bed, boolean acrossX) {
        double near = bed.outline().corners().stream().mapToDouble(c -> acrossX ? c.x() : c.y()).min().orElseThrow();
        double far = bed.outline().corners().stream().mapToDouble(c -> acrossX ? c.x() : c.y()).max().orElseThrow();
        Point from = bed.placement().toYard(acrossX ? new Point(near, 0) : new Point(0, near));
        Point to = bed.placement().toYard(acrossX ? new Point(far, 0) : new Point(0, far));
        boolean alongYardX = Math.abs(to.x() - from.x()) > Math.abs(to.y() - from.y());
        int facing = (alongYardX ? to.x() - from.x() : to.y() - from.y()) > 0 ? 1 : -1;
        List<Part> all = new ArrayList<>();
        for (int i = 0; i < Spans.of(bed.outline(), acrossX).size(); i++) all.add(new Part(index, acrossX, i));
        return List.of(
                new Wall(index, alongYardX, alongYardX ? from.x() : from.y(), List.of(), -facing),
                new Wall(index, alongYardX, alongYardX ? to.x() : to.y(), all, facing));
    }
}
