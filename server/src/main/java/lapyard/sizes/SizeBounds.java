package lapyard.sizes;

import java.math.BigDecimal;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import lapyard.geometry.Outline;
import lapyard.job.SizeCosts.Range;
import lapyard.job.SizeCosts;
import lapyard.plan.Garden;

/** What the order costs at least with few sides or all of them at any of their sizes. */
final class SizeBounds {
    /** Sizes of one bed that are looked at one by one for a bound, whatever the others have. */
    private static final int MOST_EACH = 100;

    /** Sizes of all beds together that are looked at one by one, those of the beds with fewest first. */
    private static final int MOST_TOGETHER = 3_500;

    /** Parts of what one bed may give that are looked at for what can be made. */
    private static final int MOST_BOXES = 1_000;

    /** Pairs of sides for each of which a bound is proved. */
    private static final int MOST_PAIRS = 60;

    private final Garden garden;
    private final List<Side> sides;
    private final SizeCosts costs;
    private final BigDecimal now;
    private final Map<List<Object>, Range> ranges = new HashMap<>();
    private final Set<Integer> oneByOne = new HashSet<>();
    private final BigDecimal all;

    SizeBounds(Garden garden, List<Side> sides, SizeCosts costs, BigDecimal now) {
        this.garden = garden;
        this.sides = sides;
        this.costs = costs;
        this.now = now;
        Set<Integer> every = new TreeSet<>();
        for (int i = 0; i < sides.size(); i++) every.add(i);
        List<Integer> fewest = IntStream.range(0, garden.beds().size()).boxed().sorted(Comparator.comparingLong((Integer bed) -> sizes(moving(bed, every)))).toList();
        long together = 0;
        for (int bed : fewest) {
            together += sizes(moving(bed, every));
            if (together <= MOST_TOGETHER) oneByOne.add(bed);
        }
        this.all = lower(every).min(now);
    }

    /** Proved for every combination. */
    BigDecimal all() {
        return all;
    }

    /** At index n - 1 proved for at most n changes, for up to {@code most}. */
    List<BigDecimal> byChanges(int most) {
        List<BigDecimal> bounds = new ArrayList<>(Collections.nCopies(most, all));
        List<Set<Integer>> singles = new ArrayList<>();
        List<Set<Integer>> pairs = new ArrayList<>();
        for (int i = 0; i < sides.size(); i++) {
            singles.add(Set.of(i));
            for (int j = i + 1; j < sides.size(); j++) pairs.add(Set.of(i, j));
        }
        bounds.set(0, least(singles));
        if (most > 1 && pairs.size() <= MOST_PAIRS) bounds.set(1, least(pairs).min(bounds.get(0)));
        return bounds;
    }

    private BigDecimal least(List<Set<Integer>> sets) {
        BigDecimal least = now;
        for (Set<Integer> set : sets) {
            if (Thread.currentThread().isInterrupted()) return all;
            least = least.min(lower(set));
        }
        return least.max(all);
    }

    /** Proved for all sizes at which only these sides differ from what they are. */
    private BigDecimal lower(Set<Integer> set) {
        List<Range> beds = new ArrayList<>();
        for (int bed = 0; bed < garden.beds().size(); bed++) {
            int own = bed;
            List<Integer> moving = moving(bed, set);
            beds.add(ranges.computeIfAbsent(List.of(bed, moving), key -> range(own, moving)));
        }
        return costs.lower(beds);
    }

    private List<Integer> moving(int bed, Set<Integer> set) {
        return set.stream().filter(i -> sides.get(i).touches(bed)).sorted().toList();
    }

    /** How many sizes the bed has with these sides at any of theirs; no more than would be looked at. */
    private long sizes(List<Integer> moving) {
        long many = 1;
        for (int i : moving) many = Math.min(MOST_TOGETHER + 1, many * sides.get(i).values().size());
        return many;
    }

    private Range range(int bed, List<Integer> moving) {
        Outline least = garden.beds().get(bed).outline();
        Outline most = least;
        for (int i : moving) {
            least = sides.get(i).applied(bed, least, sides.get(i).leastMm());
            most = sides.get(i).applied(bed, most, sides.get(i).mostMm());
        }
        boolean growing = moving.stream().allMatch(i -> sides.get(i).growing());
        boolean joined = growing && costs.joined(bed, most);
        boolean looked = !joined && oneByOne.contains(bed) || sizes(moving) <= MOST_EACH;
        List<Outline> each = looked ? List.of(garden.beds().get(bed).outline()) : List.of();
        for (int i : looked ? moving : List.<Integer>of()) {
            List<Outline> more = new ArrayList<>();
            for (Outline outline : each) {
                for (double value : sides.get(i).values()) more.add(sides.get(i).applied(bed, outline, value));
            }
            each = more;
        }
        return new Range(least, most, growing, each, looked || !growing ? List.of() : corners(bed, moving));
    }

    /** From the first to the last of the values of each side. */
    private record Box(int[] from, int[] to) {
        Box with(int side, int first, int last) {
            Box other = new Box(from.clone(), to.clone());
            other.from[side] = first;
            other.to[side] = last;
            return other;
        }
    }

    /** Least outlines of boxes of sizes that together have all that can be made, by halving what can be made in part. */
    private List<Outline> corners(int bed, List<Integer> moving) {
        List<Outline> corners = new ArrayList<>();
        ArrayDeque<Box> open = new ArrayDeque<>();
        open.add(new Box(new int[moving.size()], moving.stream().mapToInt(i -> sides.get(i).values().size() - 1).toArray()));
        for (int boxes = 0; !open.isEmpty(); boxes++) {
            Box box = open.poll();
            Outline least = outline(bed, moving, box.from());
            if (boxes >= MOST_BOXES || costs.makeable(bed, least)) {
                corners.add(least);
                continue;
            }
            Outline most = outline(bed, moving, box.to());
            if (least.equals(most) || costs.neverMakeable(bed, least, most)) continue;
            int widest = IntStream.range(0, moving.size()).boxed().max(Comparator.comparingInt((Integer side) -> box.to()[side] - box.from()[side])
                    .thenComparing(Comparator.reverseOrder())).orElseThrow();
            int middle = (box.from()[widest] + box.to()[widest]) / 2;
            open.add(box.with(widest, box.from()[widest], middle));
            open.add(box.with(widest, middle + 1, box.to()[widest]));
        }
        return corners;
    }

    private Outline outline(int bed, List<Integer> moving, int[] values) {
        Outline outline = garden.beds().get(bed).outline();
        for (int side = 0; side < values.length; side++) outline = sides.get(moving.get(side)).applied(bed, outline, sides.get(moving.get(side)).values().get(values[side]));
        return outline;
    }
}
