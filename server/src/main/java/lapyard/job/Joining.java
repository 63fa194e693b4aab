package lapyard.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lapyard.catalogue.Section;
import lapyard.construction.Construction;
import lapyard.construction.LongWall;
import lapyard.construction.SeamSplit;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.LengthPrices;
import lapyard.plan.Bed;
import lapyard.plan.Garden;
import lapyard.plan.Saw;
import lapyard.plan.SearchLength;

/**
 * Where long walls are joined, chosen with the boards and with what holds the joints: of the ways that keep every rule, those
 * with which all beds' timber of a section, their ties, plates, screws and seal cost least together, with no more joints that
 * nothing stands behind than the usual ways have, unless fewer pieces are left uncut so; the usual way where that is no dearer, and of
 * others that cost the same the one whose longest part is shorter, thus lighter to lift. Walls alike are joined alike. Each kind of
 * wall in turn is tried every way until a round changes nothing, in a long search two kinds together after that; the number of
 * tries is bounded, and the order in which the garden names its beds changes nothing.
 */
final class Joining {
    /** Timbers in all cuttings tried for one section; one cutting whose bound rules it out takes well under a millisecond. */
    private static final int MOST_TIMBERS = 40_000;

    /** Costs that differ by less are the same. */
    private static final BigDecimal LEAST_MONEY = new BigDecimal("0.001");

    private static final int LEAST_TRIES = 48;
    private static final int MOST_TRIES = 200;

    /** Ways to build one bed, or sizes of it, that are looked at one by one: each is a search of its own. */
    static final int MOST_ALONE = 32;

    /** Walls that can be joined the same ways; hashed once, as there are many ways. */
    private record Kind(List<SeamSplit> ways, int courses, int hash) {
        Kind(List<SeamSplit> ways, int courses) {
            this(ways, courses, 31 * ways.hashCode() + courses);
        }

        @Override
        public int hashCode() {
            return hash;
        }
    }

    /** Those of the most timbers first. */
    private static final Comparator<Map.Entry<Kind, List<At>>> IN_TURN = Comparator
            .<Map.Entry<Kind, List<At>>>comparingInt(kind -> -kind.getValue().size() * kind.getKey().courses())
            .thenComparing(kind -> kind.getKey().toString());

    private record At(Bed bed, LongWall wall) {}

    /** All that the timbers of a bed depend on. */
    private record TimbersAsked(Bed bed, Saw saw, double longestMm, Map<Integer, SeamSplit> joined) {
        Construction.Joined built() {
            return Construction.joined(bed, saw, longestMm, joined);
        }
    }

    private final Garden garden;
    private final Section section;
    private final List<Bed> beds;
    private final SearchMemory memory;
    private final double longestMm;
    private final List<CuttingProblem.Stock> rack;
    private final CuttingProblem saw;
    private final boolean graded;
    private final Map<Kind, List<At>> walls = new LinkedHashMap<>();
    private final Map<Kind, Integer> chosen = new LinkedHashMap<>();
    /** Keeps the last result of each bed only: a try changes the walls of one kind, and all tries would not fit in memory. */
    private final Map<String, Built> built = new HashMap<>();
    private final Map<List<Object>, BigDecimal> prices = new HashMap<>();

    /** @param needs what it takes in packs */
    private record Built(Map<Integer, SeamSplit> joined, Construction.Joined work, List<Blank> blanks, Map<String, Double> needs) {
        static Built of(Bed bed, Map<Integer, SeamSplit> joined, Construction.Joined work) {
            return new Built(joined, work, work.pieces().stream().map(piece -> Blank.of(piece, bed.stage())).toList(),
                    PackNeeds.amounts(bed, work.quantities()));
        }
    }

    /** The beds joined as is chosen now: what is cut for them, what all that holds them costs at least, joints with nothing behind. */
    private record Trial(CuttingProblem boards, BigDecimal held, int hinges) {}

    private Joining(Garden garden, Section section, List<Bed> beds, SearchMemory memory) {
        this.garden = garden;
        this.section = section;
        this.beds = beds;
        this.memory = memory;
        this.longestMm = PooledTimber.longestPieceMm(garden, section);
        this.rack = RackRuns.of(garden, section);
        this.saw = PooledTimber.saw(garden, section, rack);
        this.graded = PooledTimber.graded(rack);
        double boughtMm = PooledTimber.boughtPieceMm(garden, section);
        List<Double> boards = PooledTimber.wholeBoardsMm(garden, section);
        for (Bed bed : beds) {
            for (LongWall wall : LongWall.of(bed, garden.goods().saw(), longestMm, boughtMm, boards)) {
                Kind kind = new Kind(liftable(bed, wall), bed.courses());
                walls.computeIfAbsent(kind, k -> new ArrayList<>()).add(new At(bed, wall));
            }
        }
        walls.entrySet().stream().sorted(IN_TURN).forEach(kind -> chosen.put(kind.getKey(), 0));
    }

    /** Without ways that make a part which two people may not lift, unless the usual way does so too. */
    private List<SeamSplit> liftable(Bed bed, LongWall wall) {
        double limitMm = 2 * garden.people().liftLimitKg() / bed.section().massKg(1);
        // no part is longer than what a board gives
        if (wall.ways().size() == 1 || limitMm >= longestMm) return wall.ways();
        double usual = wall.longestPartMm(bed, wall.ways().get(0));
        return wall.ways().stream().filter(way -> wall.longestPartMm(bed, way) <= Math.max(usual, limitMm) + 1e-6).toList();
    }

    /** For each bed's id the walls that are joined in another way than the usual one. */
    static Map<String, Map<Integer, SeamSplit>> of(Garden garden, SearchOptions looking) {
        Map<Section, List<Bed>> bySection = new LinkedHashMap<>();
        garden.beds().forEach(bed -> bySection.computeIfAbsent(bed.section(), s -> new ArrayList<>()).add(bed));
        Map<String, Map<Integer, SeamSplit>> joined = new HashMap<>();
        bySection.forEach((section, beds) -> {
            Joining joining = new Joining(garden, section, beds, looking.memory());
            if (joining.chosen.keySet().stream().anyMatch(kind -> kind.ways().size() > 1)) {
                if (looking.isFirst()) joining.recall(section);
                else joining.settle(looking);
                if (looking.alone()) joining.chosen.forEach((kind, way) -> joining.memory.choose(new Alike(section, kind), way));
                joined.putAll(joining.choice());
            }
        });
        return joined;
    }

    /**
     * How one bed's walls can be joined where it is built alone.
     *
     * @param joined the usual way first, as an empty map
     * @param all    whether there is no other way; else these are the usual way and what a search found
     */
    record Ways(List<Map<Integer, SeamSplit>> joined, boolean all) {}

    static Ways alone(Garden garden, Bed bed, SearchOptions looking) {
        Joining joining = new Joining(garden.withBeds(List.of(bed)), bed.section(), List.of(bed), looking.memory());
        long count = 1;
        for (Kind kind : joining.chosen.keySet()) count = Math.min(Integer.MAX_VALUE, count * kind.ways().size());
        if (count > MOST_ALONE) {
            joining.settle(looking);
            return new Ways(Stream.of(Map.<Integer, SeamSplit>of(), joining.choice().getOrDefault(bed.id(), Map.of())).distinct().toList(), false);
        }
        List<Map<Integer, SeamSplit>> joined = new ArrayList<>();
        for (int way = 0; way < count; way++) {
            joining.choose(joining.chosen.keySet(), way);
            joined.add(joining.choice().getOrDefault(bed.id(), Map.of()));
        }
        return new Ways(joined, true);
    }

    /** Walls of a section that can be joined alike, whatever else the garden holds. */
    private record Alike(Section section, Kind kind) {}

    /** What was chosen last for walls alike, the usual way for others and where more joints would have nothing behind them. */
    private void recall(Section section) {
        int usual = hinges();
        chosen.replaceAll((kind, way) -> memory.<Alike, Integer>chosen(new Alike(section, kind)).orElse(0));
        if (hinges() > usual) chosen.replaceAll((kind, way) -> 0);
    }

    private int hinges() {
        Map<String, Map<Integer, SeamSplit>> now = choice();
        return beds.stream().mapToInt(bed -> built(bed, now.getOrDefault(bed.id(), Map.of())).work().hinges()).sum();
    }

    private void settle(SearchOptions looking) {
        Tries tries = new Tries(looking);
        List<Kind> kinds = List.copyOf(chosen.keySet());
        while (tries.anyBetter(kinds.stream().map(List::of)) && kinds.size() > 1
                || looking.search() == SearchLength.LONG && tries.anyBetter(pairs(kinds))) {}
    }

    private static Stream<List<Kind>> pairs(List<Kind> kinds) {
        return IntStream.range(0, kinds.size()).boxed()
                .flatMap(one -> kinds.stream().skip(one + 1L).map(other -> List.of(kinds.get(one), other)));
    }

    /** What was tried, and the cheapest of it, which is what is chosen between tries. */
    private final class Tries {
        private final SearchOptions looking;
        private int mostHinges;
        private final int most;
        private BigDecimal best;
        private int unplaced;
        /** Of the fractional plans of what was best so far. */
        private final List<LengthPrices> prices = new ArrayList<>();
        private final Set<List<Integer>> tried = new HashSet<>(Set.of(List.copyOf(chosen.values())));

        Tries(SearchOptions looking) {
            this.looking = looking;
            Trial usual = trial();
            mostHinges = usual.hinges();
            int timbers = usual.boards().pieces().stream().mapToInt(CuttingProblem.Demand::count).sum();
            most = Math.max(LEAST_TRIES, Math.min(MOST_TRIES, MOST_TIMBERS / Math.max(1, timbers)));
            Nesting.Plan plan = bundled(usual.boards(), looking.boardsShortly(usual.boards()));
            unplaced = left(plan);
            best = cost(usual, plan);
            looking.lengthPrices(usual.boards()).ifPresent(prices::add);
        }

        /** @param together kinds that change at once, each of these in turn */
        boolean anyBetter(Stream<List<Kind>> together) {
            return together.map(this::better).reduce(false, Boolean::logicalOr);
        }

        /** Whether other ways for these kinds are better; those are chosen then. Those that may come cheapest are looked at first. */
        private boolean better(List<Kind> kinds) {
            Map<Kind, Integer> kept = new LinkedHashMap<>(chosen);
            int ways = kinds.stream().mapToInt(kind -> kind.ways().size()).reduce(1, Math::multiplyExact);
            List<Try> open = new ArrayList<>();
            for (int way = 0; way < ways && tried.size() < most; way++) {
                choose(kinds, way);
                // What was tried before was no better than what is best by now.
                if (!tried.add(List.copyOf(chosen.values()))) continue;
                Trial trial = trial();
                open.add(new Try(way, trial, atLeast(trial)));
            }
            open.sort(Comparator.comparing(Try::atLeast));
            boolean changed = false;
            for (Try one : open) {
                chosen.putAll(kept);
                double longest = longestPartMm(kinds);
                boolean usual = kinds.stream().allMatch(kind -> chosen.get(kind) == 0);
                choose(kinds, one.way());
                if (!isBest(one.trial(), !usual && longestPartMm(kinds) < longest - 1e-6)) continue;
                kept.putAll(chosen);
                changed = true;
            }
            chosen.putAll(kept);
            return changed;
        }

        /** @param lighter whether it is better at the same cost too */
        private boolean isBest(Trial trial, boolean lighter) {
            boolean looser = trial.hinges() > mostHinges;
            BigDecimal below = lighter ? best.add(LEAST_MONEY) : best;
            if (unplaced == 0 && (looser || atLeast(trial).compareTo(below) >= 0)) return false;
            Optional<Nesting.Plan> better = looking.boardsCheaper(trial.boards(), below.subtract(trial.held()), unplaced)
                    .map(cut -> bundled(trial.boards(), cut))
                    .filter(plan -> left(plan) < unplaced || left(plan) == unplaced && !looser && cost(trial, plan).compareTo(below) < 0);
            better.ifPresent(plan -> {
                mostHinges = Math.max(mostHinges, trial.hinges());
                best = cost(trial, plan);
                unplaced = left(plan);
                looking.lengthPrices(trial.boards()).ifPresent(prices::add);
            });
            return better.isPresent();
        }

        /** The cheapest found of these timbers where some boards come in whole bundles, {@code cut} of all lengths. */
        private Nesting.Plan bundled(CuttingProblem boards, CuttingResult cut) {
            return WholeBundles.cheapest(section, lengths -> new Nesting.Plan(new SawDemands(boards, Map.of()), lengths == section ? cut
                    : looking.boardsShortly(boards.with(PooledTimber.saw(garden, lengths, rack).stock(), boards.pieces()))));
        }

        private BigDecimal cost(Trial trial, Nesting.Plan plan) {
            return WholeBundles.cost(section, plan).add(trial.held());
        }

        private static int left(Nesting.Plan plan) {
            return plan.result().unplaced().size();
        }

        /** What it costs at least if all timbers are cut, as far as the prices of what was best so far tell. */
        private BigDecimal atLeast(Trial trial) {
            return prices.stream().map(one -> one.atLeast(trial.boards().pieces())).reduce(BigDecimal.ZERO, BigDecimal::max).add(trial.held());
        }
    }

    /** Longest part of the walls of these kinds as they are joined now. */
    private double longestPartMm(Collection<Kind> kinds) {
        return kinds.stream()
                .flatMapToDouble(kind -> walls.get(kind).stream().mapToDouble(at -> at.wall().longestPartMm(at.bed(), kind.ways().get(chosen.get(kind)))))
                .max()
                .orElseThrow();
    }

    /** @param way number of one of all combinations of some kinds' ways */
    private record Try(int way, Trial trial, BigDecimal atLeast) {}

    /** @param way number of one of all combinations of these kinds' ways */
    private void choose(Collection<Kind> kinds, int way) {
        int rest = way;
        for (Kind kind : kinds) {
            chosen.put(kind, rest % kind.ways().size());
            rest /= kind.ways().size();
        }
    }

    private Trial trial() {
        Map<String, Map<Integer, SeamSplit>> now = choice();
        List<Blank> blanks = new ArrayList<>();
        Map<String, Double> needs = new TreeMap<>();
        int hinges = 0;
        for (Bed bed : beds) {
            Built built = built(bed, now.getOrDefault(bed.id(), Map.of()));
            blanks.addAll(built.blanks());
            hinges += built.work().hinges();
            built.needs().forEach((item, amount) -> needs.merge(item, amount, Double::sum));
        }
        BigDecimal held = BigDecimal.ZERO;
        for (Map.Entry<String, Double> need : needs.entrySet()) {
            held = held.add(prices.computeIfAbsent(List.of(need.getKey(), need.getValue()), same -> PackNeeds.leastCost(garden, need.getKey(), need.getValue())));
        }
        return new Trial(SawDemands.of(saw, blanks, graded).problem(), held, hinges);
    }

    private Built built(Bed bed, Map<Integer, SeamSplit> joined) {
        Built last = built.get(bed.id());
        if (last == null || !last.joined().equals(joined)) {
            last = Built.of(bed, joined, joined(bed, joined));
            built.put(bed.id(), last);
        }
        return last;
    }

    private Construction.Joined joined(Bed bed, Map<Integer, SeamSplit> joined) {
        return memory.part(new TimbersAsked(bed, garden.goods().saw(), longestMm, joined), TimbersAsked::built, work -> work.quantities().size() + work.pieces().size());
    }

    private Map<String, Map<Integer, SeamSplit>> choice() {
        Map<String, Map<Integer, SeamSplit>> joined = new HashMap<>();
        walls.forEach((kind, places) -> {
            if (chosen.get(kind) > 0) {
                places.forEach(at -> joined.computeIfAbsent(at.bed().id(), id -> new HashMap<>())
                        .put(at.wall().side(), kind.ways().get(chosen.get(kind))));
            }
        });
        return joined;
    }
}
