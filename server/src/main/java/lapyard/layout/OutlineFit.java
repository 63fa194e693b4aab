package lapyard.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import lapyard.plan.Wish;

/**
 * Adds beds one by one wherever one more stands free, by its own outline and not its box: an L takes up another's corner.
 * Each goes to the place that lies furthest to the front, then to the left. What is still asked for at least comes first, the
 * largest first.
 *
 * @param gapMm between outlines, round corners too
 */
record OutlineFit(
        Room ground, Room standing, RowSearch rows, List<Wish> wishes, List<BoxedBed> kinds, double gapMm, double standMm, Map<List<Object>, List<double[]>> known) {
    OutlineFit(Room ground, Room standing, RowSearch rows, List<Wish> wishes, List<BoxedBed> kinds, double gapMm, double standMm) {
        this(ground, standing, rows, wishes, kinds.stream().sorted(Comparator.comparingDouble((BoxedBed kind) -> -kind.bed().outline().areaMm2())).toList(),
                gapMm, standMm, new HashMap<>());
    }

    /** @param barred places that no bed of the wish is put to again */
    List<BoxSpot> filled(List<BoxSpot> spots, List<BoxSpot> barred) {
        List<BoxSpot> all = new ArrayList<>(spots);
        int[] counts = new int[wishes.size()];
        all.forEach(spot -> counts[spot.kind().wish()]++);
        for (boolean least : new boolean[] {true, false}) {
            for (int wish : kinds.stream().map(BoxedBed::wish).distinct().toList()) {
                int most = least ? wishes.get(wish).least() : wishes.get(wish).most();
                while (counts[wish] < most) {
                    BoxSpot found = first(wish, all, barred);
                    if (found == null) break;
                    all.add(found);
                    counts[wish]++;
                }
            }
        }
        return all;
    }

    private BoxSpot first(int wish, List<BoxSpot> spots, List<BoxSpot> barred) {
        BoxSpot best = null;
        for (BoxedBed kind : kinds) {
            if (kind.wish() != wish) continue;
            for (double y : levels(kind, spots)) {
                if (best != null && y + kind.d() >= best.back()) break;
                BoxSpot found = leftmost(kind, y, spots, barred);
                if (found != null) {
                    best = found;
                    break;
                }
            }
        }
        return best;
    }

    /** Where its front can lie: on something in the ground or behind what stands, any part of it, and in line with it. */
    private TreeSet<Double> levels(BoxedBed kind, List<BoxSpot> spots) {
        TreeSet<Double> ys = new TreeSet<>();
        for (BoxedBed.Part part : kind.parts()) {
            for (double level : ground.levels()) {
                ys.addAll(List.of(level - part.y(), level + standMm - part.y(), level + gapMm - part.y()));
            }
            for (BoxSpot spot : spots) {
                for (double[] box : spot.parts(0)) ys.addAll(List.of(box[1] - part.y(), box[3] + gapMm - part.y()));
            }
        }
        return ys;
    }

    private BoxSpot leftmost(BoxedBed kind, double y, List<BoxSpot> spots, List<BoxSpot> barred) {
        List<double[]> free = alone(kind, y);
        for (BoxSpot spot : spots) {
            if (free.isEmpty()) return null;
            if (spot.y() >= y + kind.d() + gapMm || spot.back() <= y - gapMm) continue;
            for (double[] box : spot.parts(gapMm)) {
                for (BoxedBed.Part part : kind.parts()) {
                    boolean clear = y + part.y() >= box[3] - 0.01 || y + part.y() + part.d() <= box[1] + 0.01;
                    if (!clear) free = without(free, box[0] - part.x() - part.w(), box[2] - part.x());
                }
            }
        }
        for (double[] span : free) {
            for (double x : span) {
                boolean again = barred.stream().anyMatch(other -> other.kind().wish() == kind.wish() && Math.abs(other.x() - x) < 1 && Math.abs(other.y() - y) < 1);
                if (!again) return new BoxSpot(kind, x, y);
            }
        }
        return null;
    }

    /** Stretches of x for the left of its box at which it stands free and can be reached. */
    private List<double[]> alone(BoxedBed kind, double y) {
        return known.computeIfAbsent(List.of(kind.wish(), kind.quarters(), y), key -> {
            if (kind.rectangle()) return lefts(rows.stretches(kind, y), 0, kind.w());
            List<double[]> free = List.of(new double[] {Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY});
            for (BoxedBed.Part part : kind.parts()) {
                double front = y + part.y();
                double back = front + part.d();
                free = shared(free, lefts(ground.stretches(front, back), part.x(), part.w()));
                if (free.isEmpty()) return free;
                free = shared(free, lefts(standing.stretches(front - standMm, back + standMm), part.x() - standMm, part.w() + 2 * standMm));
            }
            return free;
        });
    }

    private static List<double[]> lefts(List<double[]> stretches, double from, double w) {
        return stretches.stream().filter(span -> span[1] - span[0] >= w - 0.01)
                .map(span -> new double[] {span[0] - from, Math.max(span[0], span[1] - w) - from}).toList();
    }

    /** What both hold; single places too. */
    private static List<double[]> shared(List<double[]> one, List<double[]> other) {
        List<double[]> both = new ArrayList<>();
        for (double[] a : one) {
            for (double[] b : other) {
                double from = Math.max(a[0], b[0]);
                double to = Math.min(a[1], b[1]);
                if (from <= to + 0.01) both.add(new double[] {from, Math.max(from, to)});
            }
        }
        return both;
    }

    /** The stretches less what lies between the two. */
    private static List<double[]> without(List<double[]> spans, double from, double to) {
        List<double[]> rest = new ArrayList<>();
        for (double[] span : spans) {
            if (span[0] <= from + 0.01) rest.add(new double[] {span[0], Math.min(span[1], Math.max(span[0], from))});
            if (span[1] >= to - 0.01) rest.add(new double[] {Math.max(span[0], Math.min(span[1], to)), span[1]});
        }
        return rest;
    }
}
