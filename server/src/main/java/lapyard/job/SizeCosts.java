package lapyard.job;

import java.awt.geom.Rectangle2D;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import lapyard.catalogue.Goods;
import lapyard.catalogue.Roll;
import lapyard.catalogue.Section;
import lapyard.catalogue.Supplier;
import lapyard.construction.BedWork;
import lapyard.construction.Construction;
import lapyard.construction.SeamSplit;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingProblem.Demand;
import lapyard.cutting.CuttingProblem.Stock;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.CuttingSolver;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.ground.BySurface;
import lapyard.ground.Fall;
import lapyard.order.Ordering;
import lapyard.plan.Base;
import lapyard.plan.Bed;
import lapyard.plan.CannotAnswer;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.GardenPath;
import lapyard.plan.Place;
import lapyard.plan.WayKind;
import lapyard.working.Effort;
import lapyard.working.QuantityKey;
import lapyard.working.QuantityKind;
import org.joda.money.CurrencyUnit;

/**
 * What a garden costs as the sizes of its beds change. Each bed's needs are worked out once a size and pooled: that gives
 * in milliseconds what the order would come to about, and what it comes to at least. {@link Costing} has the job sheet's own total.
 *
 * <p>One garden, one thread.
 */
public final class SizeCosts {
    /** Search effort that is enough to compare; the chosen sizes are worked out in full. */
    private static final Effort LIKELY = Effort.ofSteps(500, 200);

    private static final Effort CLOSELY = Effort.ofSteps(2_500, 400);

    /** Stands for what cannot be made: more than any order. */
    public static final BigDecimal UNMADE = new BigDecimal("1e12");

    private static final double NO_JOINTS_MM = 1e9;

    /** A bound is asked for a few times only. */
    private static final Effort PROOF = Effort.ofSteps(20_000, 2_000);

    private static final Set<String> UNDER_BEDS = Set.of(Goods.CONCRETE.item(), Goods.SUB_BASE.item());

    private final Garden garden;
    private final CurrencyUnit currency;
    private final Optional<Fall> fall;
    private final Costing.Amounts amounts;
    private final Costing now;
    private final SearchOptions looking;
    private final Garden drawn;
    /** Of each bed at each outline, and with all long walls joined for boards to buy. */
    private final Map<List<Object>, BedNeeds> needs = new HashMap<>();
    /** Keyed by the range itself, as callers pass the same one again. */
    private final Map<Range, BedNeeds> leasts = new IdentityHashMap<>();
    private final Map<List<Object>, BedNeeds> sure = new HashMap<>();
    private final Map<Range, Boolean> offPaths = new IdentityHashMap<>();
    private final Map<Cut, Price> cut = new HashMap<>();
    private final Map<Section, LongBoards> longests = new HashMap<>();
    private final RollGoods.Leasts rolled;
    private final BigDecimal charges;
    private final BigDecimal leastCharges;
    /** What estimates of each closeness are short of the order of the garden as it stands. */
    private final Map<Effort, BigDecimal> off = new HashMap<>();

    private record Cut(CuttingProblem problem, Effort look) {}

    /**
     * @param lower  proved: the order costs no less
     * @param likely what it comes to about
     */
    public record Price(BigDecimal lower, BigDecimal likely) {
        static final Price NOTHING = new Price(BigDecimal.ZERO, BigDecimal.ZERO);

        /** From whoever sells it for less. */
        Price or(Price other) {
            return new Price(lower.min(other.lower), likely.min(other.likely));
        }

        Price and(Price other) {
            return new Price(lower.add(other.lower), likely.add(other.likely));
        }
    }

    /** @throws CannotAnswer if something of the garden cannot be made, or a board of it is cut already */
    public SizeCosts(Garden given, SearchMemory memory) {
        looking = SearchOptions.pooledOnly(given.goods().search(), memory);
        now = Costing.of(given, looking);
        drawn = given;
        garden = now.built().garden();
        rolled = new RollGoods.Leasts(garden, looking);
        if (now.leftOut()) {
            throw new CannotAnswer(Finding.of(FindingKind.SIZES_NOT_MADE, Place.field("garden")).way(WayKind.SOLVE_SNAGS));
        }
        if (!garden.people().tally().boards().isEmpty()) {
            throw new CannotAnswer(Finding.of(FindingKind.SIZES_BOUGHT, Place.of(Place.What.TALLY))
                    .with("boards", Fact.count(garden.people().tally().boards().size(), "boards")).way(WayKind.TAKE_OFF_TALLY));
        }
        currency = CurrencyUnit.of(garden.terms().currency());
        fall = now.built().ground().fall();
        amounts = new Costing.Amounts(garden, now.built().ground(), Slats.of(garden, bed -> Costing.downhill(fall, bed)));
        charges = now.slip().total().subtract(now.slip().goods());
        leastCharges = leastCharges();
    }

    /**
     * {@link #UNMADE} or more where some piece finds no board.
     *
     * @param outlines of each bed, in the order of the document
     * @param closely  whether it may take some ten times as long, layouts of rolls looked for too
     */
    public BigDecimal likely(List<Outline> outlines, boolean closely) {
        Effort look = closely ? CLOSELY : LIKELY;
        BigDecimal missing = off.computeIfAbsent(look, one -> now.slip().total().subtract(sum(garden.beds().stream().map(Bed::outline).toList(), one)));
        return sum(outlines, look).add(missing);
    }

    private BigDecimal sum(List<Outline> outlines, Effort look) {
        List<BedNeeds> all = new ArrayList<>();
        Map<Section, Integer> left = new HashMap<>();
        for (int i = 0; i < outlines.size(); i++) {
            BedNeeds own = needs(i, outlines.get(i));
            LongBoards longest = longest(own.bed().section());
            int taken = longest.taken(own.runs());
            boolean enough = taken <= left.computeIfAbsent(own.bed().section(), section -> longest.onHand());
            if (enough) left.merge(own.bed().section(), -taken, Integer::sum);
            all.add(enough ? own : needs(i, outlines.get(i), true));
        }
        return price(all, true, look).likely();
    }

    /** Whether the bed's walls can be cut from what is sold and what is on hand, long ones joined. */
    public boolean makeable(int bed, Outline outline) {
        BedNeeds own = needs(bed, outline);
        LongBoards longest = longest(own.bed().section());
        return own.boardsMm().values().stream().allMatch(lengths -> lengths[0] <= longest.mm() + 1e-6)
                && longest.taken(own.runs()) <= longest.onHand();
    }

    /** Whether a wall of the bed is joined. */
    public boolean joined(int bed, Outline outline) {
        return needs(bed, outline).joined();
    }

    /** Whether more walls than there are long boards on hand need one at both of these outlines and, as walls grow from one to the other, at all between. */
    public boolean neverMakeable(int bed, Outline least, Outline most) {
        LongBoards longest = longest(needs(bed, least).bed().section());
        List<BedNeeds.Run> from = needs(bed, least).runs();
        List<BedNeeds.Run> to = needs(bed, most).runs();
        int needed = 0;
        for (int i = 0; i < from.size(); i++) {
            if (from.get(i).longerThan(longest.boughtMm()) && from.get(i).parts() == 1 && to.get(i).parts() == 1) needed++;
        }
        return needed > longest.onHand();
    }

    private LongBoards longest(Section section) {
        return longests.computeIfAbsent(section, same -> LongBoards.of(garden, same));
    }

    /**
     * Proved: with every bed in its range, so that everything can be made, the order costs no less.
     *
     * @param ranges of each bed, in the order of the document; the same range again is answered from memory
     */
    public BigDecimal lower(List<Range> ranges) {
        List<BedNeeds> all = new ArrayList<>();
        boolean pathsStay = true;
        for (int i = 0; i < ranges.size(); i++) {
            Range range = ranges.get(i);
            if (range.least().equals(range.most())) {
                all.add(surely(i, range.least(), true));
                pathsStay &= range.least().equals(garden.beds().get(i).outline());
                continue;
            }
            int index = i;
            all.add(leasts.computeIfAbsent(range, r -> least(index, range)));
            pathsStay &= offPaths.computeIfAbsent(range, r -> offPaths(garden.beds().get(index), range.most()));
        }
        return price(all, pathsStay, PROOF).lower();
    }

    /**
     * Outlines that a bed may have.
     *
     * @param least the one with all stretches at their least, {@code most} with all at their most
     * @param growing whether every wall becomes longer from the least to the most
     * @param each  every one of them, where they are few enough to look at each; else empty
     * @param corners of those that can be made none has walls shorter than each of these; empty where each is looked at
     */
    public record Range(Outline least, Outline most, boolean growing, List<Outline> each, List<Outline> corners) {
        public Range {
            each = List.copyOf(each);
            corners = List.copyOf(corners);
        }
    }

    private Price price(List<BedNeeds> all, boolean pathsStay, Effort look) {
        Price sum = new Price(leastCharges, charges);
        Map<Section, List<BedNeeds>> bySection = all.stream()
                .collect(Collectors.groupingBy(one -> one.bed().section(), LinkedHashMap::new, Collectors.toList()));
        for (Map.Entry<Section, List<BedNeeds>> one : bySection.entrySet()) sum = sum.and(timber(one.getKey(), one.getValue(), look));
        return sum.and(bearers(all, look)).and(rolls(all, pathsStay, look)).and(packs(all, pathsStay));
    }

    private BedNeeds least(int index, Range range) {
        if (!sameFloor(index, range.least()) || !sameFloor(index, range.most())) return BedNeeds.nothing(garden.beds().get(index));
        if (!range.each().isEmpty()) {
            return range.each().stream().filter(outline -> makeable(index, outline)).map(outline -> surely(index, outline, range.each().size() <= Joining.MOST_ALONE)).reduce(BedNeeds::or)
                    .orElseGet(() -> BedNeeds.nothing(garden.beds().get(index)));
        }
        if (!range.growing()) return BedNeeds.nothing(garden.beds().get(index));
        BedNeeds least = range.corners().stream().map(corner -> surely(index, corner, range.corners().size() <= Joining.MOST_ALONE).orLarger()).reduce(BedNeeds::or).orElseThrow();
        BedNeeds most = surely(index, range.most(), true);
        return most.joined() ? least.or(most) : least;
    }

    /** Whether the ground under the bed asks for the same floor at this size. */
    private boolean sameFloor(int index, Outline outline) {
        Bed bed = drawn.beds().get(index).withOutline(outline);
        return BySurface.of(drawn.withBeds(List.of(bed))).garden().beds().get(0).inside().equals(garden.beds().get(index).inside());
    }

    /** Whether the bed lies off all paths even at its largest, so that no path changes. */
    private boolean offPaths(Bed bed, Outline largest) {
        Rectangle2D box = new Rectangle2D.Double(bed.placement().at().x(), bed.placement().at().y(), 0, 0);
        largest.placed(bed.placement()).corners().forEach(corner -> box.add(corner.x(), corner.y()));
        for (GardenPath path : garden.paths()) {
            // a square bend is mitred to the root of two of half the width
            double by = path.widthMm() / 2 * (path.line().size() > 2 ? Math.sqrt(2) : 1);
            Rectangle2D near = new Rectangle2D.Double(box.getX() - by, box.getY() - by, box.getWidth() + 2 * by, box.getHeight() + 2 * by);
            for (int i = 0; i + 1 < path.line().size(); i++) {
                Point from = path.line().get(i);
                Point to = path.line().get(i + 1);
                if (near.intersectsLine(from.x(), from.y(), to.x(), to.y())) return false;
            }
        }
        return true;
    }

    private BedNeeds needs(int index, Outline outline) {
        return needs(index, outline, false);
    }

    private BedNeeds needs(int index, Outline outline, boolean spared) {
        return needs.computeIfAbsent(List.of(index, outline, spared), asked -> {
            Bed drawn = garden.beds().get(index);
            Bed bed = amounts.slats().laid(outline.equals(drawn.outline()) ? drawn : drawn.withOutline(outline));
            Optional<Point> downhill = Costing.downhill(fall, bed);
            LongBoards longest = longest(bed.section());
            BedWork work = Costing.work(garden, bed, spared ? longest.forSale(bed) : longest.joined(bed), downhill, looking.memory());
            return BedNeeds.of(work, amounts.of(index, work, amounts.fill(work)), downhill, longest.boughtMm());
        });
    }

    /** What the bed needs however its walls are joined: the least over all ways where they are asked for and few, else what walls of whole boards would take. */
    private BedNeeds surely(int index, Outline outline, boolean eachWay) {
        BedNeeds own = needs(index, outline);
        return own.joined() ? sure.computeIfAbsent(List.of(index, outline, eachWay), same -> surely(own, eachWay)) : own;
    }

    private BedNeeds surely(BedNeeds own, boolean eachWay) {
        Bed bed = own.bed();
        LongBoards longest = longest(bed.section());
        double longestMm = longest.mm();
        Map<Integer, SeamSplit> joined = longest.joined(bed);
        Map<String, Double> usual = held(bed, longestMm, joined);
        Joining.Ways ways = eachWay ? Joining.alone(garden, bed, looking) : new Joining.Ways(List.of(), false);
        List<Map<String, Double>> others = ways.all() ? ways.joined().stream().map(way -> held(bed, longestMm, way)).toList()
                : List.of(held(bed, NO_JOINTS_MM, Map.of()));
        Map<String, Double> less = new HashMap<>();
        usual.forEach((item, amount) -> less.put(item, amount - others.stream().mapToDouble(other -> other.getOrDefault(item, 0.0)).min().orElse(amount)));
        if (!ways.all() && joined.isEmpty()) {
            // every way has as many joints or more
            less.remove(PackNeeds.items(bed).get(QuantityKind.JOINT_PLATES.alone()));
            less.remove(PackNeeds.items(bed).get(QuantityKind.JOINT_SCREWS.alone()));
        }
        return own.surely(less);
    }

    private Map<String, Double> held(Bed bed, double longestMm, Map<Integer, SeamSplit> joined) {
        return PackNeeds.amounts(bed, Construction.joined(bed, garden.goods().saw(), longestMm, joined).quantities());
    }

    private Price timber(Section section, List<BedNeeds> beds, Effort look) {
        List<Stock> rack = RackRuns.of(garden, section);
        return section.bySeller().stream().map(way -> timber(way, rack, beds, look)).reduce(Price::or).orElseThrow();
    }

    private Price timber(Section section, List<Stock> rack, List<BedNeeds> beds, Effort look) {
        boolean graded = PooledTimber.graded(rack);
        Map<Demand, Integer> counts = new LinkedHashMap<>();
        for (BedNeeds one : beds) {
            one.boardsMm().forEach((faces, lengths) -> {
                for (double length : lengths) {
                    counts.merge(new Demand("", length, 1, one.bed().stage(), graded ? faces : 0), 1, Integer::sum);
                }
            });
        }
        List<Demand> demands = new ArrayList<>();
        counts.forEach((one, count) -> demands.add(new Demand(
                one.lengthMm() + "/" + one.stage() + "/" + one.goodFaces(), one.lengthMm(), count, one.stage(), one.goodFaces())));
        CuttingProblem saw = PooledTimber.saw(garden, section, rack);
        if (!section.priced()) return Price.NOTHING;
        Price price = cut(saw.with(saw.stock(), demands), look);
        boolean otherPieces = beds.stream().anyMatch(one -> one.joined() || PooledTimber.angled(one.bed()));
        if (otherPieces) return new Price(material(saw, beds), price.likely());
        if (rack.isEmpty()) return price;
        // what a board on hand is worth kept is not paid
        List<Stock> worthless = saw.stock().stream()
                .map(stock -> new Stock(stock.id(), stock.lengthMm(), stock.price(), stock.available(), stock.goodFaces()))
                .toList();
        return new Price(cut(saw.with(worthless, demands), look).lower(), price.likely());
    }

    private Price cut(CuttingProblem problem, Effort look) {
        return cut.computeIfAbsent(new Cut(problem, look), c -> {
            CuttingResult result = CuttingSolver.cheapest(problem, look);
            return new Price(rounded(result.lowerBound()), result.unplaced().isEmpty() ? rounded(result.paid()) : UNMADE);
        });
    }

    /** Where other pieces could be cut than these, only their timber counts: all of the rack, then the cheapest by length. */
    private BigDecimal material(CuttingProblem saw, List<BedNeeds> beds) {
        double wantedMm = beds.stream().mapToDouble(BedNeeds::meanMm).sum();
        double cheapest = Double.POSITIVE_INFINITY;
        for (Stock stock : saw.stock()) {
            double usableMm = garden.goods().saw().usableMm(stock.lengthMm());
            if (stock.available().isPresent()) {
                wantedMm -= Math.max(0, usableMm) * stock.available().getAsInt();
            } else if (usableMm > 0) {
                cheapest = Math.min(cheapest, stock.price().doubleValue() / usableMm);
            }
        }
        return wantedMm <= 0 || Double.isInfinite(cheapest) ? BigDecimal.ZERO : cents(wantedMm * cheapest);
    }

    private Price bearers(List<BedNeeds> beds, Effort look) {
        Map<List<Object>, Map<Double, Integer>> byRip = new LinkedHashMap<>();
        for (BedNeeds one : beds) {
            Base base = one.bed().inside().base();
            Map<Double, Integer> lengths =
                    byRip.computeIfAbsent(List.of(base.bearers().bearerSection(), base.bearers().bearerLiftMm()), rip -> new LinkedHashMap<>());
            for (double length : one.stripsMm()) lengths.merge(length, 1, Integer::sum);
        }
        Price sum = Price.NOTHING;
        for (Map.Entry<List<Object>, Map<Double, Integer>> rip : byRip.entrySet()) {
            Optional<Section> section = garden.goods().catalogue().section((String) rip.getKey().get(0));
            if (section.isEmpty() || rip.getValue().isEmpty() || !section.get().priced()) continue;
            int perBoard = Bearers.perBoard(section.get(), (double) rip.getKey().get(1), garden.goods().saw().kerfMm());
            if (perBoard == 0) continue;
            sum = sum.and(section.get().bySeller().stream().map(own ->
                    bearers(own, perBoard, rip.getValue(), look)).reduce(Price::or).orElseThrow());
        }
        return sum;
    }

    private Price bearers(Section section, int perBoard, Map<Double, Integer> lengths, Effort look) {
        return cut.computeIfAbsent(new Cut(Bearers.problem(garden, section, perBoard, lengths), look), c -> {
            CuttingResult result = CuttingSolver.cheapest(c.problem(), look);
            // shares of a board's price are rounded to seven digits
            BigDecimal lower = cents(result.lowerBound().doubleValue() * (1 - 1e-6));
            return new Price(lower, rounded(Bearers.cost(Bearers.boards(section, perBoard, result))));
        });
    }

    private Price rolls(List<BedNeeds> beds, boolean pathsStay, Effort look) {
        Map<String, List<BedNeeds>> byMaterial = new LinkedHashMap<>();
        beds.stream().filter(one -> one.linerMm2() > 0)
                .forEach(one -> byMaterial.computeIfAbsent(one.bed().inside().liner().material(), m -> new ArrayList<>()).add(one));
        now.built().pathWorks().stream().filter(path -> !path.strips().isEmpty())
                .forEach(path -> byMaterial.computeIfAbsent(path.path().membrane(), m -> new ArrayList<>()));
        Price sum = Price.NOTHING;
        for (Map.Entry<String, List<BedNeeds>> one : byMaterial.entrySet()) {
            List<Roll> rolls = RollGoods.usable(garden.goods().catalogue().rolls(one.getKey()));
            if (rolls.isEmpty() || rolls.stream().allMatch(roll -> roll.pricePerMetre().isEmpty())) continue;
            List<double[]> sizes = new ArrayList<>();
            now.built().pathWorks().stream().filter(path -> path.path().membrane().equals(one.getKey())).flatMap(path -> path.strips().stream())
                    .forEach(strip -> sizes.add(new double[] {strip.widthMm(), strip.lengthMm()}));
            // beds that reach into a path change its strips
            boolean sure = pathsStay || sizes.isEmpty();
            double areaMm2 = one.getValue().stream().mapToDouble(BedNeeds::linerMm2).sum();
            boolean pieces = sure;
            for (BedNeeds bed : one.getValue()) {
                bed.linerMm().ifPresent(sizes::addAll);
                pieces &= bed.linerMm().isPresent() && bed.linerMm().get().size() <= 1;
            }
            if (look == LIKELY) {
                sum = sum.and(new Price(BigDecimal.ZERO, rounded(RollGoods.atLeast(garden, one.getKey(), sizes))));
                continue;
            }
            RollGoods.Least least = rolled.of(one.getKey(), sizes);
            double perMm2 = rolls.stream().mapToDouble(roll -> roll.pricePerMetre().orElseThrow().doubleValue() / 1000 / roll.widthMm()).min().orElseThrow();
            BigDecimal lower = pieces && least.unplaced() == 0 ? least.bound() : cents(areaMm2 * perMm2);
            sum = sum.and(new Price(rounded(lower), rounded(least.cost())));
        }
        return sum;
    }

    private Price packs(List<BedNeeds> beds, boolean pathsStay) {
        Map<String, Double> ofBeds = new LinkedHashMap<>();
        Map<String, Double> surely = new HashMap<>();
        for (BedNeeds one : beds) {
            one.amounts().forEach((item, amount) -> ofBeds.merge(item, amount, Double::sum));
            one.sure().forEach((item, amount) -> surely.merge(item, amount, Double::sum));
        }
        Map<String, Double> ofPaths = new LinkedHashMap<>();
        for (JobSheet.PathSheet path : now.built().paths()) {
            Map<QuantityKey, String> items = PackNeeds.items(path.path());
            path.quantities().stream().filter(quantity -> items.containsKey(quantity.key()))
                    .forEach(quantity -> ofPaths.merge(items.get(quantity.key()), quantity.value(), Double::sum));
        }
        Set<String> all = new LinkedHashSet<>(ofBeds.keySet());
        all.addAll(ofPaths.keySet());
        Price sum = Price.NOTHING;
        for (String item : all) {
            double beside = ofPaths.getOrDefault(item, 0.0);
            // what the ground under a bed takes is worked out for the sizes as they are only
            double sure = (UNDER_BEDS.contains(item) ? 0 : surely.getOrDefault(item, 0.0)) + (pathsStay ? beside : 0);
            sum = sum.and(new Price(PackNeeds.leastCost(garden, item, sure), PackNeeds.leastCost(garden, item, ofBeds.getOrDefault(item, 0.0) + beside)));
        }
        return sum;
    }

    /** Who alone sells something of the order, and never brings free, is paid for bringing it. */
    private BigDecimal leastCharges() {
        BigDecimal sum = BigDecimal.ZERO;
        for (Supplier supplier : garden.goods().catalogue().suppliers()) {
            boolean needed = now.slip().lines().stream().anyMatch(line -> garden.goods().catalogue().packs(line.item())
                    .filter(goods -> goods.suppliers().equals(List.of(supplier.id()))).isPresent());
            if (needed && supplier.freeOver().isEmpty()) sum = sum.add(Ordering.rounded(supplier.charge(), currency));
        }
        return sum;
    }

    private BigDecimal rounded(BigDecimal amount) {
        return Ordering.rounded(amount, currency);
    }

    /** A lower bound, rounded as a line of the order is. */
    private BigDecimal cents(double amount) {
        return rounded(BigDecimal.valueOf(amount).round(MathContext.DECIMAL64));
    }
}
