package lapyard.sizes;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import lapyard.geometry.Outline;
import lapyard.job.Job;
import lapyard.job.JobSheet;
import lapyard.job.SearchMemory;
import lapyard.job.SizeCosts.Range;
import lapyard.job.SizeCosts;
import lapyard.plan.Bed;
import lapyard.plan.Garden;
import lapyard.sizes.SizesThatGive.Growth;
import lapyard.working.Progress;

/**
 * Looks for the changes that save most, few before many. A smaller bed takes no more of anything that is bought, so for each
 * set of sides the least sizes are tried first, and what saves as much is then given back until a millimetre more would
 * cost. Sets are tried in the order of what they are likely to save; what is chosen is worked out whole.
 */
final class SizeSearch {
    /** Sets of one number of changes from which larger sets are made. */
    private static final int BEAM = 6;

    /** Sets of one number of changes that are looked at for the smallest change that saves. */
    private static final int LOOKED_AT = 3;

    /** Sizes of one bed that are looked at one by one for a bound. */
    private static final int MOST_EACH = 100;

    /** Most sides of a set that are moved one by one. */
    private static final int DESCENDED = 3;

    /** Pairs of sides for each of which a bound is proved. */
    private static final int MOST_BOUNDED = 60;

    private final Garden garden;
    private final List<Side> sides;
    private final SizeLook look;
    private final Progress progress;
    private final long startedNs = System.nanoTime();
    private final SearchMemory memory;
    private final SizeCosts costs;
    private final JobSheet now;
    private final SizeChecks checks;
    private final Map<List<Double>, BigDecimal> likely = new HashMap<>();
    private final Map<List<Double>, Optional<SizeAnswer>> whole = new LinkedHashMap<>();
    private final Map<List<Object>, Range> ranges = new HashMap<>();
    private int estimates;
    private int wholes;
    private BigDecimal best;
    private BigDecimal bound;

    SizeSearch(Garden garden, List<Side> sides, SizeLook look, Progress progress, SearchMemory memory) {
        this.memory = memory;
        if (sides.isEmpty()) {
            throw new IllegalArgumentException("no side of any bed may give; say by how much in give, of the garden, a type or a bed");
        }
        this.garden = garden;
        this.sides = sides;
        this.look = look;
        this.progress = progress;
        this.costs = new SizeCosts(garden, memory);
        this.now = Job.prepare(garden, what -> Progress.UNHEARD, memory);
        this.checks = new SizeChecks(now);
        this.best = now.slip().total();
    }

    /** What saves is looked for first and its bounds afterwards, so that a look that is ended early has found something. */
    SizesThatGive run() {
        bound = lower(new HashSet<>(indices())).min(best);
        progress.reached(best, bound);
        int most = Math.min(look.changes(), sides.size());
        List<Set<Integer>> singles = larger(List.of(Set.of()));
        List<Set<Integer>> from = List.of(Set.of());
        for (int changes = 1; changes <= most && !over(); changes++) {
            List<Set<Integer>> sets = changes == 1 ? singles : larger(from);
            sets.sort(Comparator.comparing((Set<Integer> set) -> likely(least(set))).thenComparing(Set::toString));
            from = sets.subList(0, Math.min(BEAM, sets.size()));
            for (Set<Integer> set : sets.subList(0, Math.min(LOOKED_AT, sets.size()))) settle(set);
        }
        settle(new HashSet<>(indices()));
        singles.subList(Math.min(LOOKED_AT, singles.size()), singles.size()).forEach(this::settle);
        List<BigDecimal> bounds = new ArrayList<>();
        for (int changes = 1; changes <= most; changes++) bounds.add(bound);
        bounds.set(0, boundOf(indices().stream().map(Set::of).toList()));
        List<Set<Integer>> pairs = new ArrayList<>();
        indices().forEach(i -> indices().stream().filter(j -> j > i).forEach(j -> pairs.add(Set.of(i, j))));
        if (most > 1 && pairs.size() <= MOST_BOUNDED) bounds.set(1, boundOf(pairs).min(bounds.get(0)));
        boolean ended = !over();
        List<SizeAnswer> front = front();
        List<Growth> growth = growth();
        BigDecimal cheapest = front.stream().map(SizeAnswer::total).min(BigDecimal::compareTo).orElse(now.slip().total());
        return new SizesThatGive(now, sides, front, bounds, bound, cheapest.compareTo(bound) == 0, growth, ended && !over());
    }

    private List<Integer> indices() {
        List<Integer> all = new ArrayList<>();
        for (int i = 0; i < sides.size(); i++) all.add(i);
        return all;
    }

    /** Also where the thread is told to stop: what was found by then stands. */
    private boolean over() {
        return estimates >= look.estimates() || wholes >= look.wholes() || System.nanoTime() - startedNs >= look.limit().toNanos()
                || Thread.currentThread().isInterrupted();
    }

    /** Sets with one side more that can become smaller. */
    private List<Set<Integer>> larger(List<Set<Integer>> from) {
        Set<Set<Integer>> sets = new java.util.LinkedHashSet<>();
        for (Set<Integer> set : from) {
            for (int i = 0; i < sides.size(); i++) {
                if (sides.get(i).leastMm() < 0 && !set.contains(i)) {
                    Set<Integer> more = new java.util.TreeSet<>(set);
                    more.add(i);
                    sets.add(more);
                }
            }
        }
        return new ArrayList<>(sets);
    }

    private List<Double> least(Set<Integer> set) {
        List<Double> sizes = stay();
        set.forEach(i -> sizes.set(i, sides.get(i).leastMm()));
        return sizes;
    }

    private List<Double> stay() {
        List<Double> sizes = new ArrayList<>();
        sides.forEach(side -> sizes.add(0.0));
        return sizes;
    }

    /** The least of a set, then every smaller change of it that saves as much or less for fewer millimetres. */
    private void settle(Set<Integer> set) {
        List<Double> least = set.size() <= DESCENDED ? descended(set) : least(set);
        if (over() || likely(least).compareTo(now.slip().total()) >= 0) return;
        whole(givenBack(least, likely(least)));
        if (set.size() <= 2) {
            steps(set).forEach(this::whole);
        }
    }

    /**
     * From the least sizes on, each side in turn at the best of all its sizes until none is better: a floor of less may
     * take one bearer more.
     */
    private List<Double> descended(Set<Integer> set) {
        List<Double> sizes = least(set);
        boolean better = true;
        while (better && !over()) {
            better = false;
            for (int i : set) {
                for (double value : sides.get(i).values()) {
                    List<Double> other = new ArrayList<>(sizes);
                    other.set(i, value);
                    if (value < 0 && likely(other).compareTo(likely(sizes)) < 0) {
                        sizes = other;
                        better = true;
                    }
                }
            }
        }
        return sizes;
    }

    /** Each change in turn as small as the cost allows, the largest first. */
    private List<Double> givenBack(List<Double> sizes, BigDecimal cost) {
        List<Double> given = new ArrayList<>(sizes);
        List<Integer> order = indices();
        order.sort(Comparator.comparingDouble((Integer i) -> given.get(i)).thenComparingInt(i -> i));
        for (int i : order) {
            if (given.get(i) >= 0) continue;
            List<Double> values = sides.get(i).values();
            int enough = values.indexOf(given.get(i));
            int tooLittle = values.indexOf(0.0) + 1;
            // the least change that costs no more, by halving: cost falls as sizes do
            while (tooLittle - enough > 1 && !over()) {
                int middle = (enough + tooLittle) / 2;
                given.set(i, values.get(middle));
                if (likely(given).compareTo(cost) <= 0) {
                    enough = middle;
                } else {
                    tooLittle = middle;
                }
            }
            given.set(i, values.get(enough));
        }
        return given;
    }

    /** Sizes at which the cost of a set takes a step, found by halving between sizes that cost different. */
    private List<List<Double>> steps(Set<Integer> set) {
        Map<BigDecimal, List<Double>> cheapestFirst = new TreeMap<>();
        int widest = set.stream().mapToInt(i -> (int) Math.round(-sides.get(i).leastMm() / sides.get(i).stepMm())).max().orElse(0);
        halve(set, 0, widest, widest, cheapestFirst);
        List<List<Double>> steps = new ArrayList<>();
        for (Map.Entry<BigDecimal, List<Double>> one : cheapestFirst.entrySet()) {
            if (one.getKey().compareTo(now.slip().total()) < 0) steps.add(givenBack(one.getValue(), one.getKey()));
        }
        return steps.subList(0, Math.min(4, steps.size()));
    }

    private void halve(Set<Integer> set, int from, int to, int widest, Map<BigDecimal, List<Double>> found) {
        BigDecimal less = likely(part(set, from, widest));
        BigDecimal more = likely(part(set, to, widest));
        if (to - from <= 1 || less.compareTo(more) == 0 || over()) {
            found.putIfAbsent(more, part(set, to, widest));
            return;
        }
        int middle = (from + to) / 2;
        halve(set, from, middle, widest, found);
        halve(set, middle, to, widest, found);
    }

    /** All sides of the set changed by the same part of what they may give. */
    private List<Double> part(Set<Integer> set, int of, int widest) {
        List<Double> sizes = stay();
        for (int i : set) {
            Side side = sides.get(i);
            sizes.set(i, -Math.ceil(-side.leastMm() / side.stepMm() * of / widest - 1e-9) * side.stepMm() + 0.0);
        }
        return sizes;
    }

    private BigDecimal likely(List<Double> sizes) {
        BigDecimal known = likely.get(sizes);
        if (known != null) return known;
        estimates++;
        BigDecimal cost = costs.likely(outlines(sizes));
        likely.put(sizes, cost);
        return cost;
    }

    private List<Outline> outlines(List<Double> sizes) {
        List<Outline> outlines = new ArrayList<>();
        for (int bed = 0; bed < garden.beds().size(); bed++) {
            Outline outline = garden.beds().get(bed).outline();
            for (int i = 0; i < sides.size(); i++) outline = sides.get(i).applied(bed, outline, sizes.get(i));
            outlines.add(outline);
        }
        return outlines;
    }

    private List<Resize> changes(List<Double> sizes) {
        List<Resize> changes = new ArrayList<>();
        for (int i = 0; i < sides.size(); i++) {
            if (sizes.get(i) != 0) changes.add(new Resize(sides.get(i), sizes.get(i)));
        }
        return changes;
    }

    static Garden changed(Garden garden, List<Resize> changes) {
        List<Bed> beds = new ArrayList<>();
        for (int i = 0; i < garden.beds().size(); i++) {
            Bed bed = garden.beds().get(i);
            Outline outline = bed.outline();
            for (Resize change : changes) outline = change.side().applied(i, outline, change.byMm());
            beds.add(outline.equals(bed.outline()) ? bed : bed.withOutline(outline));
        }
        return garden.withBeds(beds);
    }

    /** Worked out whole; empty where it passes less than the garden as it stands. */
    private Optional<SizeAnswer> whole(List<Double> sizes) {
        if (whole.containsKey(sizes)) return whole.get(sizes);
        if (wholes >= look.wholes() || over()) return Optional.empty();
        wholes++;
        List<Resize> changes = changes(sizes);
        Garden other = changed(garden, changes);
        Optional<SizeAnswer> answer = Optional.empty();
        if (SizeChecks.drawable(other)) {
            JobSheet sheet = Job.prepare(other, what -> Progress.UNHEARD, memory);
            if (checks.passes(sheet)) {
                BigDecimal total = sheet.slip().total();
                answer = Optional.of(new SizeAnswer(changes, Resize.sumMm(changes), total, now.slip().total().subtract(total),
                        boards(now) - boards(sheet), sheet));
                best = best.min(total);
                progress.reached(best, bound);
            }
        }
        whole.put(sizes, answer);
        return answer;
    }

    private static int boards(JobSheet sheet) {
        return sheet.cutting().stream().mapToInt(cutting -> cutting.result().boards()).sum();
    }

    /** Answers that save and that no other beats or equals in changes, millimetres and money at once. */
    private List<SizeAnswer> front() {
        List<SizeAnswer> all = whole.values().stream().flatMap(Optional::stream)
                .filter(one -> one.saved().signum() > 0)
                .sorted(Comparator.comparingInt((SizeAnswer one) -> one.changes().size())
                        .thenComparing(SizeAnswer::saved)
                        .thenComparingDouble(SizeAnswer::mm))
                .toList();
        List<SizeAnswer> front = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            boolean beaten = false;
            for (int j = 0; j < all.size() && !beaten; j++) {
                // of two alike the first stays
                beaten = i != j && beats(all.get(j), all.get(i)) && (j < i || !beats(all.get(i), all.get(j)));
            }
            if (!beaten) front.add(all.get(i));
        }
        return front;
    }

    private static boolean beats(SizeAnswer one, SizeAnswer other) {
        return one.changes().size() <= other.changes().size() && one.mm() <= other.mm() && one.total().compareTo(other.total()) <= 0;
    }

    private List<Growth> growth() {
        List<Growth> growth = new ArrayList<>();
        for (int i = 0; i < sides.size(); i++) {
            grown(i).ifPresent(growth::add);
        }
        return growth;
    }

    /** The largest growth that costs no more and passes, by halving; what the estimate lets through is worked out whole. */
    private Optional<Growth> grown(int index) {
        List<Double> values = sides.get(index).values().stream().filter(value -> value > 0).toList();
        int fits = -1;
        int costs = values.size();
        Optional<SizeAnswer> answer = Optional.empty();
        while (costs - fits > 1 && !Thread.currentThread().isInterrupted()) {
            // most growths cost at once or not at all
            int middle = fits < 0 && costs == values.size() ? values.size() - 1 : (fits + costs) / 2;
            List<Double> sizes = stay();
            sizes.set(index, values.get(middle));
            Optional<SizeAnswer> here = likely(sizes).compareTo(now.slip().total()) > 0 ? Optional.empty() : wholeGrown(sizes);
            if (here.isPresent()) {
                fits = middle;
                answer = here;
            } else {
                costs = middle;
            }
        }
        boolean most = fits == values.size() - 1;
        return answer.map(one -> new Growth(one.changes().get(0), most, one.total()));
    }

    private Optional<SizeAnswer> wholeGrown(List<Double> sizes) {
        Optional<SizeAnswer> known = whole.get(sizes);
        if (known == null) {
            known = whole(sizes);
        }
        return known.filter(one -> one.saved().signum() >= 0);
    }

    private BigDecimal boundOf(List<Set<Integer>> sets) {
        BigDecimal least = now.slip().total();
        for (Set<Integer> set : sets) {
            if (over()) return bound;
            estimates++;
            least = least.min(lower(set));
        }
        return least.max(bound);
    }

    /** Proved for all sizes at which only these sides differ from what they are. */
    private BigDecimal lower(Set<Integer> set) {
        List<Range> beds = new ArrayList<>();
        for (int bed = 0; bed < garden.beds().size(); bed++) {
            int own = bed;
            List<Integer> moving = set.stream().filter(i -> sides.get(i).touches(own)).sorted().toList();
            beds.add(ranges.computeIfAbsent(List.of(bed, moving), key -> range(own, moving)));
        }
        return costs.lower(beds);
    }

    private Range range(int bed, List<Integer> moving) {
        Outline least = garden.beds().get(bed).outline();
        Outline most = least;
        long many = 1;
        for (int i : moving) {
            least = sides.get(i).applied(bed, least, sides.get(i).leastMm());
            most = sides.get(i).applied(bed, most, sides.get(i).mostMm());
            many *= Math.min(sides.get(i).values().size(), MOST_EACH + 1);
        }
        List<Outline> each = many > MOST_EACH ? List.of() : List.of(garden.beds().get(bed).outline());
        for (int i : many > MOST_EACH ? List.<Integer>of() : moving) {
            List<Outline> more = new ArrayList<>();
            for (Outline outline : each) {
                for (double value : sides.get(i).values()) more.add(sides.get(i).applied(bed, outline, value));
            }
            each = more;
        }
        return new Range(least, most, each);
    }
}
