package lapyard.sizes;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import lapyard.job.Job;
import lapyard.job.JobSheet;
import lapyard.job.SearchMemory;
import lapyard.job.SizeCosts;
import lapyard.plan.CannotAnswer;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.Place;
import lapyard.plan.WayKind;
import lapyard.working.Progress;
import lapyard.working.SecondThread;
import lapyard.working.Whole;

/**
 * Looks for the changes that save most, few before many. A smaller bed takes no more of most that is bought, so for each
 * set of sides sizes near the least are tried first, and what saves as much is then given back until a millimetre more
 * would cost. Sets come from two ends: single sides with one more each time, and all sides with one less each time. What
 * is likely to save most is worked out whole.
 */
final class SizeSearch {
    /** Sets of one number of changes from which larger sets are made. */
    private static final int BEAM = 6;

    /** Sets of one number of changes whose sizes are looked at closely. */
    private static final int LOOKED_AT = 3;

    /** Numbers of changes that are looked at first. */
    private static final int FEW = 4;

    /** Most sides of a set that are moved one by one over all their sizes. */
    private static final int DESCENDED = 3;

    /** Halvings of what beds that fail a check may give. */
    private static final int HALVINGS = 4;

    /** Gardens near the cheapest that may fail or be no cheaper before the rest of the look goes elsewhere. */
    private static final int IMPROVED = 4;

    /** Gardens deepened side by side that may fail before the rest of the look goes elsewhere. */
    private static final int DEEPENED = 3;

    private final Garden garden;
    private final List<Side> sides;
    private final List<SizeLook> looks;
    private final Progress progress;
    private final JobSheet now;
    private final SearchMemory memory;
    private final SizeTrials trials;
    private SizeLook look;
    private List<Double> deepest;
    private List<Double> cheapest;
    private BigDecimal best;
    /** 0 until something is proved. */
    private volatile BigDecimal bound = BigDecimal.ZERO;

    SizeSearch(Garden garden, List<Side> sides, List<SizeLook> looks, Progress progress, SearchMemory memory) {
        if (sides.isEmpty()) {
            throw new CannotAnswer(Finding.of(FindingKind.SIZES_FIXED, Place.field("beds")).way(WayKind.SAY_GIVE));
        }
        this.garden = garden;
        this.sides = sides;
        this.looks = looks;
        this.look = looks.get(0);
        this.progress = progress;
        this.now = Job.prepare(garden, what -> Progress.UNHEARD, memory);
        this.memory = memory;
        this.trials = new SizeTrials(garden, sides, memory, now, new SizeCosts(garden, memory));
        this.best = now.slip().total();
        this.cheapest = trials.stay();
    }

    /** What is proved beside the looks and what could grow, which do not depend on what they find. */
    private record Beside(BigDecimal bound, List<BigDecimal> byChanges, GrowthSearch growth, boolean stopped) {}

    SizesThatGive run() {
        try (SecondThread<Beside> second = new SecondThread<>(this::beside)) {
            boolean ended = false;
            double looked = 0;
            double needed = 0;
            for (SizeLook next : looks) {
                if (trials.stopped()) break;
                BigDecimal before = best;
                look = next;
                trials.begin(next);
                ended = looked();
                looked += next.estimates();
                if (needed == 0 || best.compareTo(before) < 0) needed = looked;
            }
            Beside beside = second.result();
            progress.reached(best, bound);
            List<SizeAnswer> front = SizeAnswer.front(trials.answers());
            return new SizesThatGive(now, sides, front, beside.byChanges(), beside.bound(), best.compareTo(beside.bound()) == 0,
                    beside.growth().found(), beside.growth().open(), ended && beside.growth().open().isEmpty(), needed == 0 ? 1 : looked / needed, trials.stopped() || beside.stopped());
        }
    }

    private Beside beside() {
        SizeCosts costs = new SizeCosts(garden, memory);
        SizeBounds bounds = new SizeBounds(garden, sides, costs, now.slip().total());
        bound = bounds.all();
        SizeLook last = looks.get(looks.size() - 1);
        SizeTrials own = new SizeTrials(garden, sides, memory, now, costs);
        own.begin(last.forGrowth());
        GrowthSearch growth = GrowthSearch.of(sides, own, now.slip().total());
        return new Beside(bound, bounds.byChanges(Math.min(last.changes(), sides.size())), growth, own.stopped());
    }

    /** @return whether it came to its end before its counts did */
    private boolean looked() {
        Map<Integer, List<List<Double>>> found = new TreeMap<>();
        deepest = sides.stream().map(Side::leastMm).toList();
        deepen();
        singles(found);
        fromAll(found);
        fromFew(found);
        improve();
        while (!trials.full() && found.values().stream().anyMatch(same -> !same.isEmpty())) {
            for (int changes : spread(new ArrayList<>(found.keySet()))) nextBest(found.get(changes));
        }
        everySingle();
        return !trials.over() && !trials.full();
    }

    /** Each side alone, at its least and wherever the cost takes a step on the way there. */
    private void singles(Map<Integer, List<List<Double>>> found) {
        List<Set<Integer>> sets = shrinking().stream().map(Set::of).sorted(Comparator.comparing((Set<Integer> set) -> trials.likely(deep(set)))).toList();
        for (Set<Integer> set : sets) keep(found, deep(set));
        for (Set<Integer> set : sets.subList(0, Math.min(BEAM, sets.size()))) {
            if (trials.explored()) return;
            keep(found, descended(set));
            steps(set).forEach(step -> keep(found, step));
        }
        nextBest(found.getOrDefault(1, new ArrayList<>()));
    }

    /** What is left of a long look goes to each size of each side, the likeliest first: an estimate may be wrong. */
    private void everySingle() {
        List<List<Double>> all = new ArrayList<>();
        for (int i : shrinking()) sides.get(i).values().stream().filter(value -> value < 0).forEach(value -> all.add(SizeTrials.with(trials.stay(), i, value)));
        if (trials.full()) return;
        all.sort(Comparator.comparing(trials::likely));
        for (List<Double> sizes : all) {
            if (trials.full() || trials.likely(sizes).compareTo(SizeCosts.UNMADE) >= 0) return;
            heard(sizes);
        }
    }

    /** The first few in their order, then the middles of what lies between, so that a short look sees a little of everything. */
    private static List<Integer> spread(List<Integer> sorted) {
        Set<Integer> order = new LinkedHashSet<>(sorted.subList(0, Math.min(FEW, sorted.size())));
        for (int parts = 1; order.size() < sorted.size(); parts *= 2) {
            for (int part = parts; part > 0; part--) order.add(sorted.get((sorted.size() - 1) * part / parts));
        }
        return new ArrayList<>(order);
    }

    /** All sides at their least; beds that fail a check then give half as much, and so on. What passes is deepened again side by side. */
    private void deepen() {
        for (int halving = 0; halving < HALVINGS && !trials.full(); halving++) {
            if (trials.barredBeds(deepest).isEmpty() && heard(deepest).isPresent()) {
                if (halving > 0) deepenEach();
                return;
            }
            Set<Integer> failed = trials.barredBeds(deepest);
            if (failed.isEmpty()) return;
            deepest = halved(deepest, failed);
        }
    }

    /** From the cheapest that was found, one side at another size, or one at its least and another of its bed at any, as long as that passes for less. */
    private void improve() {
        int misses = 0;
        Set<List<Double>> missed = new HashSet<>();
        while (misses < IMPROVED && !trials.full()) {
            List<Double> from = cheapest;
            BigDecimal likely = trials.likely(from);
            List<List<Double>> better = new ArrayList<>();
            for (List<Double> sizes : near(from)) {
                if (trials.improved()) break;
                if (!missed.contains(sizes) && trials.likely(sizes).compareTo(likely) < 0) better.add(sizes);
            }
            if (better.isEmpty()) return;
            List<Double> likeliest = better.stream().min(Comparator.comparing(trials::likely)).orElseThrow();
            Optional<SizeAnswer> answer = heard(likeliest);
            if (answer.isEmpty() || cheapest.equals(from)) {
                misses++;
                missed.add(likeliest);
            }
        }
    }

    /** Trades between two sides of a bed of which one is not at its least, then each side at each of its sizes that are smaller than it stands. */
    private List<List<Double>> near(List<Double> from) {
        List<List<Double>> all = new ArrayList<>();
        for (int deeper : shrinking()) {
            if (from.get(deeper) <= sides.get(deeper).leastMm()) continue;
            List<Double> deep = SizeTrials.with(from, deeper, sides.get(deeper).leastMm());
            for (int other : shrinking()) {
                if (other == deeper || sides.get(other).parts().stream().noneMatch(part -> sides.get(deeper).touches(part.bed()))) continue;
                sides.get(other).values().stream().filter(value -> value <= 0).forEach(value -> all.add(SizeTrials.with(deep, other, value + 0.0)));
            }
        }
        for (int i : shrinking()) {
            sides.get(i).values().stream().filter(value -> value <= 0 && !value.equals(from.get(i))).forEach(value -> all.add(SizeTrials.with(from, i, value + 0.0)));
        }
        return all;
    }

    /**
     * Sides that were halved at their least again, bed by bed and the likeliest first: all of them by their estimates, half of them where
     * that fails a check, and so on.
     */
    private void deepenEach() {
        int most = Integer.MAX_VALUE;
        int misses = 0;
        Set<List<Double>> missed = new HashSet<>();
        while (misses < DEEPENED && !trials.full() && !trials.over()) {
            List<Double> sizes = deepest;
            int taken = 0;
            for (Optional<List<Double>> next = deeper(sizes, missed); next.isPresent() && taken < most; next = deeper(sizes, missed)) {
                sizes = next.get();
                taken++;
            }
            if (taken == 0) return;
            if (heard(sizes).isPresent()) {
                deepest = sizes;
                most = Integer.MAX_VALUE;
            } else {
                missed.add(sizes);
                misses++;
                most = Math.max(1, taken / 2);
            }
        }
    }

    private Optional<List<Double>> deeper(List<Double> from, Set<List<Double>> missed) {
        return deeper(from).stream()
                .filter(sizes -> !missed.contains(sizes) && trials.likely(sizes).compareTo(trials.likely(from)) < 0)
                .min(Comparator.comparing(trials::likely));
    }

    /** With the sides of a bed, or one of them, at their least or as deep as the bed can be made. */
    private List<List<Double>> deeper(List<Double> from) {
        List<List<Double>> all = new ArrayList<>();
        for (int bed = 0; bed < garden.beds().size(); bed++) {
            List<Double> whole = from;
            for (int i = 0; i < sides.size(); i++) {
                if (!sides.get(i).touches(bed) || from.get(i) <= sides.get(i).leastMm()) continue;
                whole = SizeTrials.with(whole, i, sides.get(i).leastMm());
                all.add(SizeTrials.with(from, i, sides.get(i).leastMm()));
            }
            if (whole != from) {
                all.add(whole);
                for (int i = 0; i < sides.size(); i++) {
                    if (whole.get(i) < from.get(i)) all.add(SizeTrials.with(whole, i, Math.min(from.get(i), whole.get(i) + sides.get(i).stepMm())));
                }
            }
        }
        return all;
    }

    /** From what all sides may give together, given back as far as it may be, with one side less each time. */
    private void fromAll(Map<Integer, List<List<Double>>> found) {
        List<Double> sizes = givenBack(deepest, trials.likely(deepest));
        Set<Integer> set = changing(sizes);
        while (set.size() > 1 && !trials.explored()) {
            List<Double> whole = sizes;
            keep(found, whole);
            // the side whose change is missed least
            int least = set.stream().min(Comparator.comparing((Integer i) -> trials.likely(SizeTrials.with(whole, i, 0.0))).thenComparing(i -> i)).orElseThrow();
            sizes = SizeTrials.with(whole, least, 0.0);
            set = changing(sizes);
        }
    }

    private List<Double> halved(List<Double> sizes, Set<Integer> beds) {
        List<Double> halved = new ArrayList<>(sizes);
        for (int i = 0; i < sides.size(); i++) {
            Side side = sides.get(i);
            if (beds.stream().anyMatch(side::touches)) halved.set(i, Whole.up(sizes.get(i) / side.stepMm() / 2) * side.stepMm() + 0.0);
        }
        return halved;
    }

    /** From sets of few changes the best are extended by each side. */
    private void fromFew(Map<Integer, List<List<Double>>> found) {
        List<Set<Integer>> from = List.of(Set.of());
        for (int changes = 1; changes <= Math.min(look.changes(), sides.size()) && !trials.explored(); changes++) {
            List<Set<Integer>> sets = larger(from);
            sets.sort(Comparator.comparing((Set<Integer> set) -> trials.likely(deep(set))).thenComparing(Set::toString));
            from = sets.subList(0, Math.min(BEAM, sets.size()));
            if (changes == 1) continue;
            for (Set<Integer> set : sets.subList(0, Math.min(LOOKED_AT, sets.size()))) {
                if (trials.explored()) return;
                keep(found, set.size() <= DESCENDED ? descended(set) : deep(set));
                if (changes == 2) steps(set).forEach(step -> keep(found, step));
            }
        }
    }

    private void keep(Map<Integer, List<List<Double>>> found, List<Double> sizes) {
        if (trials.likely(sizes).compareTo(now.slip().total()) >= 0) return;
        List<List<Double>> same = found.computeIfAbsent(changing(sizes).size(), n -> new ArrayList<>());
        if (!same.contains(sizes)) same.add(sizes);
    }

    /** Works out whole what is likely to save most and was not yet, given back as far as it may be, until one passes. */
    private void nextBest(List<List<Double>> same) {
        same.sort(Comparator.comparing(trials::likely));
        while (!same.isEmpty() && !trials.full()) {
            List<Double> sizes = same.remove(0);
            if (trials.likely(sizes).compareTo(now.slip().total()) < 0 && heard(givenBack(sizes, trials.likely(sizes))).isPresent()) return;
        }
    }

    private Optional<SizeAnswer> heard(List<Double> sizes) {
        Optional<SizeAnswer> answer = trials.whole(sizes);
        answer.ifPresent(one -> {
            if (one.total().compareTo(best) < 0) {
                best = one.total();
                cheapest = List.copyOf(sizes);
            }
            if (bound.signum() > 0) progress.reached(best, bound);
        });
        return answer;
    }

    private List<Integer> shrinking() {
        return IntStream.range(0, sides.size()).filter(i -> sides.get(i).leastMm() < 0).boxed().toList();
    }

    private static Set<Integer> changing(List<Double> sizes) {
        return IntStream.range(0, sizes.size()).filter(i -> sizes.get(i) != 0).boxed().collect(Collectors.toCollection(TreeSet::new));
    }

    /** Sets with one side more that can become smaller. */
    private List<Set<Integer>> larger(List<Set<Integer>> from) {
        Set<Set<Integer>> sets = new LinkedHashSet<>();
        for (Set<Integer> set : from) {
            for (int i : shrinking()) {
                if (set.contains(i)) continue;
                Set<Integer> more = new TreeSet<>(set);
                more.add(i);
                sets.add(more);
            }
        }
        return new ArrayList<>(sets);
    }

    /** The sides of the set at their least, or where that fails a check at what is known to pass. */
    private List<Double> deep(Set<Integer> set) {
        List<Double> sizes = trials.stay();
        set.forEach(i -> sizes.set(i, sides.get(i).leastMm()));
        for (int bed : trials.barredBeds(sizes)) {
            for (int i : set) {
                if (sides.get(i).touches(bed)) sizes.set(i, deepest.get(i));
            }
        }
        return sizes;
    }

    /**
     * From the least sizes on, each side in turn at the best of all its sizes until none is better: a floor of less may
     * take one bearer more.
     */
    private List<Double> descended(Set<Integer> set) {
        List<Double> sizes = deep(set);
        boolean better = true;
        while (better && !trials.explored()) {
            better = false;
            for (int i : set) {
                for (double value : sides.get(i).values()) {
                    List<Double> other = SizeTrials.with(sizes, i, value);
                    if (value < 0 && trials.likely(other).compareTo(trials.likely(sizes)) < 0) {
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
        List<Integer> order = new ArrayList<>(changing(sizes));
        order.sort(Comparator.comparingDouble((Integer i) -> given.get(i)).thenComparingInt(i -> i));
        for (int i : order) {
            if (given.get(i) >= 0) continue;
            List<Double> values = sides.get(i).values();
            int enough = values.indexOf(given.get(i));
            int tooLittle = values.indexOf(0.0) + 1;
            // the least change that costs no more, by halving: cost falls as sizes do
            while (tooLittle - enough > 1 && !trials.over()) {
                int middle = (enough + tooLittle) / 2;
                given.set(i, values.get(middle));
                if (trials.likely(given).compareTo(cost) <= 0) {
                    enough = middle;
                } else {
                    tooLittle = middle;
                }
            }
            given.set(i, values.get(enough));
        }
        return given;
    }

    /** Sizes at which the cost of a set takes a step, found by halving between sizes that cost different; most saving first. */
    private List<List<Double>> steps(Set<Integer> set) {
        Map<BigDecimal, List<Double>> cheapestFirst = new TreeMap<>();
        int widest = set.stream().mapToInt(i -> (int) Math.round(-sides.get(i).leastMm() / sides.get(i).stepMm())).max().orElse(0);
        halve(set, 0, widest, widest, cheapestFirst);
        return cheapestFirst.entrySet().stream().filter(one -> one.getKey().compareTo(now.slip().total()) < 0).limit(4).map(Map.Entry::getValue).toList();
    }

    private void halve(Set<Integer> set, int from, int to, int widest, Map<BigDecimal, List<Double>> found) {
        BigDecimal less = trials.likely(part(set, from, widest));
        BigDecimal more = trials.likely(part(set, to, widest));
        if (to - from <= 1 || less.compareTo(more) == 0 || trials.explored()) {
            found.putIfAbsent(more, part(set, to, widest));
            return;
        }
        int middle = (from + to) / 2;
        halve(set, from, middle, widest, found);
        halve(set, middle, to, widest, found);
    }

    /** All sides of the set changed by the same part of what they may give. */
    private List<Double> part(Set<Integer> set, int of, int widest) {
        List<Double> sizes = trials.stay();
        for (int i : set) {
            Side side = sides.get(i);
            sizes.set(i, -Whole.up(-side.leastMm() / side.stepMm() * of / widest) * side.stepMm() + 0.0);
        }
        return sizes;
    }
}
