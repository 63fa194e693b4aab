package lapyard.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import lapyard.catalogue.Section;
import lapyard.construction.Construction;
import lapyard.construction.LongWall;
import lapyard.construction.Piece;
import lapyard.construction.SeamSplit;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingResult;
import lapyard.order.Ordering;
import lapyard.plan.Bed;
import lapyard.plan.Garden;
import org.joda.money.CurrencyUnit;

/**
 * Where long walls are joined, chosen with the boards and with what holds the joints: of the ways that keep every rule, those
 * with which all beds' timber of a section, their ties, plates, screws and seal cost least together, with no more joints that
 * nothing stands behind than the usual ways have; the usual way where that is no dearer. Walls alike are joined alike. Each kind of wall in turn is tried every way until a round changes nothing; the
 * number of tries is bounded.
 */
final class Joining {
    /** Cuttings tried for one section; one whose bound rules it out takes well under a millisecond. */
    private static final int MOST_TRIES = 48;

    /** Walls that can be joined the same ways. */
    private record Kind(List<SeamSplit> ways, int courses) {}

    private record At(Bed bed, int side) {}

    private final Garden garden;
    private final List<Bed> beds;
    private final double longestMm;
    private final CuttingProblem saw;
    private final boolean graded;
    private final Map<Kind, List<At>> walls = new LinkedHashMap<>();
    private final Map<Kind, Integer> chosen = new HashMap<>();
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

    private Joining(Garden garden, Section section, List<Bed> beds) {
        this.garden = garden;
        this.beds = beds;
        this.longestMm = PooledTimber.longestPieceMm(garden, section);
        List<CuttingProblem.Stock> rack = RackRuns.of(garden, section, beds.stream().noneMatch(bed -> bed.planting().food()));
        this.saw = PooledTimber.saw(garden, section, rack);
        this.graded = PooledTimber.graded(rack);
        List<Double> boards = PooledTimber.wholeBoardsMm(garden, section);
        for (Bed bed : beds) {
            for (LongWall wall : LongWall.of(bed, garden.goods().saw(), longestMm, boards)) {
                Kind kind = new Kind(liftable(bed, wall), bed.courses());
                walls.computeIfAbsent(kind, k -> new ArrayList<>()).add(new At(bed, wall.side()));
                chosen.put(kind, 0);
            }
        }
    }

    /** Without ways that make a part which two people may not lift, unless the usual way does so too. */
    private List<SeamSplit> liftable(Bed bed, LongWall wall) {
        if (wall.ways().size() == 1) return wall.ways();
        Section section = bed.section();
        double limitMm = 2 * garden.people().liftLimitKg() / section.massKg(1);
        double usual = longestPartMm(bed, wall, wall.ways().get(0));
        return wall.ways().stream()
                .filter(way -> longestPartMm(bed, wall, way) <= Math.max(usual, limitMm) + 1e-6)
                .toList();
    }

    private double longestPartMm(Bed bed, LongWall wall, SeamSplit way) {
        String letter = Bed.wallLetter(wall.side());
        return joined(bed, Map.of(wall.side(), way)).pieces().stream()
                .filter(piece -> piece.wall().equals(letter))
                .mapToDouble(Piece::lengthMm)
                .max()
                .orElseThrow();
    }

    /** For each bed's id the walls that are joined in another way than the usual one. */
    static Map<String, Map<Integer, SeamSplit>> of(Garden garden, SearchOptions looking) {
        Map<Section, List<Bed>> bySection = new LinkedHashMap<>();
        garden.beds().forEach(bed -> bySection.computeIfAbsent(bed.section(), s -> new ArrayList<>()).add(bed));
        Map<String, Map<Integer, SeamSplit>> joined = new HashMap<>();
        bySection.forEach((section, beds) -> {
            Joining joining = new Joining(garden, section, beds);
            if (joining.walls.keySet().stream().anyMatch(kind -> kind.ways().size() > 1)) {
                joining.settle(looking);
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

    /** @param most that are listed */
    static Ways alone(Garden garden, Bed bed, int most, SearchOptions looking) {
        Joining joining = new Joining(garden.withBeds(List.of(bed)), bed.section(), List.of(bed));
        long count = 1;
        for (Kind kind : joining.walls.keySet()) count = Math.min(Integer.MAX_VALUE, count * kind.ways().size());
        if (count > most) {
            joining.settle(looking);
            return new Ways(Stream.of(Map.<Integer, SeamSplit>of(), joining.choice().getOrDefault(bed.id(), Map.of())).distinct().toList(), false);
        }
        List<Map<Integer, SeamSplit>> joined = new ArrayList<>();
        for (int way = 0; way < count; way++) {
            int rest = way;
            for (Kind kind : joining.walls.keySet()) {
                joining.chosen.put(kind, rest % kind.ways().size());
                rest /= kind.ways().size();
            }
            joined.add(joining.choice().getOrDefault(bed.id(), Map.of()));
        }
        return new Ways(joined, true);
    }

    private void settle(SearchOptions looking) {
        Trial usual = trial();
        CuttingResult cut = looking.boardsShortly(usual.boards());
        int unplaced = cut.unplaced().size();
        BigDecimal best = cut.cost().add(usual.held());
        Set<List<Integer>> tried = new HashSet<>(Set.of(choices()));
        boolean changed = true;
        while (changed && tried.size() < MOST_TRIES) {
            changed = false;
            for (Kind kind : walls.keySet()) {
                int kept = chosen.get(kind);
                for (int way = 0; way < kind.ways().size() && tried.size() < MOST_TRIES; way++) {
                    chosen.put(kind, way);
                    // What was tried before was no better than what is best by now.
                    if (!tried.add(choices())) continue;
                    Trial trial = trial();
                    // A tie that cannot stand costs nothing and holds nothing.
                    if (trial.hinges() > usual.hinges()) continue;
                    Optional<CuttingResult> better = looking.boardsCheaper(trial.boards(), best.subtract(trial.held()), unplaced);
                    if (better.isPresent()) {
                        best = better.get().cost().add(trial.held());
                        unplaced = better.get().unplaced().size();
                        kept = way;
                        changed = true;
                    }
                }
                chosen.put(kind, kept);
            }
            changed &= walls.size() > 1;
        }
    }

    private List<Integer> choices() {
        return walls.keySet().stream().map(chosen::get).toList();
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
            held = held.add(prices.computeIfAbsent(List.of(need.getKey(), need.getValue()), same -> price(need.getKey(), need.getValue())));
        }
        return new Trial(SawDemands.of(saw, blanks, graded).problem(), held, hinges);
    }

    private BigDecimal price(String item, double need) {
        return garden.goods().catalogue().packs(item)
                .flatMap(goods -> Ordering.leastCost(goods, need, CurrencyUnit.of(garden.terms().currency())))
                .orElse(BigDecimal.ZERO);
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
        return Construction.joined(bed, garden.goods().saw(), longestMm, joined);
    }

    private Map<String, Map<Integer, SeamSplit>> choice() {
        Map<String, Map<Integer, SeamSplit>> joined = new HashMap<>();
        walls.forEach((kind, places) -> {
            if (chosen.get(kind) > 0) {
                places.forEach(at -> joined.computeIfAbsent(at.bed().id(), id -> new HashMap<>())
                        .put(at.side(), kind.ways().get(chosen.get(kind))));
            }
        });
        return joined;
    }
}
