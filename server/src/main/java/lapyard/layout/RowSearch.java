package lapyard.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import lapyard.geometry.Lengths;
import lapyard.plan.Wish;

/**
 * Beds in rows along x. A row is of one depth; where it begins along y is one of the places that rows stacked on each other
 * from something in the ground can begin at. From the front to the back the best beginnings are kept, so many at each place.
 *
 * @param ground   for beds
 * @param standing for people
 * @param middle   x that beds are pushed towards; NaN pushes them to the left
 * @param known    stretches that were worked out
 */
record RowSearch(
        Room ground, Room standing, List<Wish> wishes, List<BoxedBed> kinds, Rules rules, double middle, Map<List<Double>, List<double[]>> known) {
    private static final int MOST_PLACES = 500;
    private static final int KEPT = 12;

    /**
     * @param gapMm   between beds of a row
     * @param aisleMm between rows
     * @param standMm depth of the place to stand before a wall
     * @param reachMm from one side
     */
    record Rules(double gapMm, double aisleMm, double standMm, double reachMm) {}

    private record Start(double y, List<BoxSpot> row, Start before, int[] counts, int shortOf, int beds, double areaMm2) {}

    List<BoxSpot> run() {
        List<Double> places = places();
        TreeMap<Double, List<Start>> open = new TreeMap<>();
        int[] none = new int[wishes.size()];
        Start best = new Start(Double.NEGATIVE_INFINITY, List.of(), null, none, shortOf(none), 0, 0);
        if (places.isEmpty()) return List.of();
        open.put(places.get(0), new ArrayList<>(List.of(best)));
        Comparator<Start> better = Comparator.comparingInt(Start::shortOf)
                .thenComparing(Comparator.comparingInt(Start::beds).reversed())
                .thenComparing(Comparator.comparingDouble(Start::areaMm2).reversed());
        for (int i = 0; i < places.size(); i++) {
            double y = places.get(i);
            List<Start> here = open.remove(y);
            if (here == null) continue;
            here.sort(better);
            List<Start> kept = distinct(here);
            for (Start start : kept) {
                if (better.compare(start, best) < 0) best = start;
                if (i + 1 < places.size()) open.computeIfAbsent(places.get(i + 1), p -> new ArrayList<>()).add(start);
                for (BoxedBed kind : kinds) {
                    List<BoxSpot> row = row(kind, y, start.counts());
                    if (row.isEmpty()) continue;
                    Start next = with(start, y, row);
                    if (better.compare(next, best) < 0) best = next;
                    double after = y + kind.d() + rules.aisleMm();
                    int at = firstFrom(places, after);
                    if (at < places.size()) open.computeIfAbsent(places.get(at), p -> new ArrayList<>()).add(next);
                }
            }
        }
        List<BoxSpot> spots = new ArrayList<>();
        for (Start start = best; start != null; start = start.before()) spots.addAll(0, start.row());
        return spots;
    }

    private static List<Start> distinct(List<Start> sorted) {
        List<Start> kept = new ArrayList<>();
        for (Start start : sorted) {
            if (kept.size() < KEPT && kept.stream().noneMatch(other -> java.util.Arrays.equals(other.counts(), start.counts()))) kept.add(start);
        }
        return kept;
    }

    private Start with(Start start, double y, List<BoxSpot> row) {
        int[] counts = start.counts().clone();
        double area = start.areaMm2();
        for (BoxSpot spot : row) {
            counts[spot.kind().wish()]++;
            area += spot.kind().w() * spot.kind().d();
        }
        return new Start(y, row, start, counts, shortOf(counts), start.beds() + row.size(), area);
    }

    private int shortOf(int[] counts) {
        return IntStream.range(0, counts.length).map(i -> Math.max(0, wishes.get(i).least() - counts[i])).sum();
    }

    private static int firstFrom(List<Double> places, double y) {
        int at = java.util.Collections.binarySearch(places, y - 0.005);
        return at < 0 ? -at - 1 : at;
    }

    /** Where rows can begin: on something in the ground, or behind rows that begin there; so with room to stand before. */
    private List<Double> places() {
        List<Double> levels = ground.levels();
        double back = levels.get(levels.size() - 1);
        double least = kinds.stream().mapToDouble(BoxedBed::d).min().orElse(Double.POSITIVE_INFINITY);
        TreeSet<Double> places = new TreeSet<>();
        List<Double> fresh = new ArrayList<>();
        for (double level : levels) {
            fresh.add(level);
            fresh.add(level + rules.standMm());
            fresh.add(level + rules.aisleMm());
        }
        List<Double> deeper = kinds.stream().map(kind -> kind.d() + rules.aisleMm()).distinct().toList();
        while (!fresh.isEmpty() && places.size() < MOST_PLACES) {
            List<Double> more = new ArrayList<>();
            for (double y : fresh) {
                double rounded = Math.round(y * 100) / 100.0;
                if (rounded + least <= back + 0.01 && places.size() < MOST_PLACES && places.add(rounded)) {
                    deeper.forEach(by -> more.add(rounded + by));
                }
            }
            fresh = more;
        }
        return new ArrayList<>(places);
    }

    /** As many of the kind as its stretches hold and are still wanted, then others no deeper in what is left of the row. */
    private List<BoxSpot> row(BoxedBed first, double y, int[] counts) {
        int[] left = new int[counts.length];
        for (int i = 0; i < left.length; i++) left[i] = wishes.get(i).most() - counts[i];
        List<BoxedBed> order = new ArrayList<>(List.of(first));
        kinds.stream().filter(kind -> kind != first && kind.d() <= first.d())
                .sorted(Comparator.comparingDouble(BoxedBed::d).reversed().thenComparing(Comparator.comparingDouble(BoxedBed::w).reversed()))
                .forEach(order::add);
        List<BoxSpot> row = new ArrayList<>();
        for (BoxedBed kind : order) {
            for (double[] stretch : left[kind.wish()] > 0 ? less(stretches(kind, y), row) : List.<double[]>of()) {
                boolean fromRight = !Double.isNaN(middle) && stretch[1] <= middle;
                double from = stretch[0];
                double to = stretch[1];
                while (left[kind.wish()] > 0 && to - from >= kind.w() - 0.01) {
                    row.add(new BoxSpot(kind, fromRight ? to - kind.w() : from, y));
                    left[kind.wish()]--;
                    if (fromRight) {
                        to -= kind.w() + rules.gapMm();
                    } else {
                        from += kind.w() + rules.gapMm();
                    }
                }
            }
            if (row.isEmpty()) return row;
        }
        return row;
    }

    /** The stretches without those of the row's beds and a gap on both sides of them. */
    private List<double[]> less(List<double[]> stretches, List<BoxSpot> row) {
        List<double[]> beds = row.stream().map(spot -> new double[] {spot.x() - rules.gapMm(), spot.right() + rules.gapMm()}).toList();
        return stretches.stream()
                .flatMap(one -> Lengths.free(one[0], one[1], beds.stream().filter(bed -> bed[1] > one[0] && bed[0] < one[1]).toList()).stream())
                .toList();
    }

    /** Where a bed of this kind stands free and its worst place is within reach: over its long sides or its ends. */
    List<double[]> stretches(BoxedBed kind, double y) {
        return known.computeIfAbsent(List.of(kind.w(), kind.d(), kind.thicknessMm(), kind.leastReachMm(), kind.allRound() ? 1.0 : 0.0, y), key -> {
            double reach = Math.max(rules.reachMm(), kind.leastReachMm()) + 1;
            List<double[]> free = ground.stretches(y, y + kind.d());
            if (free.isEmpty()) return free;
            List<double[]> before = standing.stretches(y - rules.standMm(), y);
            List<double[]> behind = standing.stretches(y + kind.d(), y + kind.d() + rules.standMm());
            List<double[]> ends = new ArrayList<>();
            standing.stretches(y, y + kind.d()).forEach(span -> ends.add(new double[] {span[0] + rules.standMm(), span[1] - rules.standMm()}));
            List<double[]> sides = Room.both(Room.both(free, before), behind);
            if (kind.allRound()) return Room.both(sides, ends);
            List<List<double[]>> ways = new ArrayList<>();
            if (kind.d() - kind.thicknessMm() <= reach) {
                ways.add(Room.both(free, before));
                ways.add(Room.both(free, behind));
            }
            if (kind.d() / 2 <= reach) ways.add(sides);
            if (kind.w() / 2 <= reach) ways.add(Room.both(free, ends));
            return ways.stream().max(Comparator.comparingInt(way -> holds(way, kind))).orElse(List.of());
        });
    }

    private int holds(List<double[]> stretches, BoxedBed kind) {
        return stretches.stream().mapToInt(one -> (int) Math.floor((one[1] - one[0] + rules.gapMm() + 0.01) / (kind.w() + rules.gapMm()))).sum();
    }
}
