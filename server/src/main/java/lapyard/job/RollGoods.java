package lapyard.job;

import java.math.BigDecimal;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import lapyard.catalogue.PackCode;
import lapyard.catalogue.Roll;
import lapyard.geometry.Lengths;
import lapyard.ground.PathWork;
import lapyard.job.JobSheet.MaterialRolls;
import lapyard.order.Ordering;
import lapyard.order.Slip;
import lapyard.order.SlipLine;
import lapyard.order.SlipLine.PackCount;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.WayKind;
import lapyard.sheets.RollProblem;
import lapyard.sheets.RollResult;
import lapyard.sheets.RollResult.Placed;
import lapyard.sheets.RollResult.RollLayout;
import lapyard.sheets.RollResult.Unplaced;
import lapyard.sheets.RollSolver;
import lapyard.working.Working;
import lapyard.working.Working.Input;
import org.joda.money.CurrencyUnit;

/** Liner of all beds and membrane of all paths, laid together on rolls, material by material. */
final class RollGoods extends SoldGoods<RollGoods.Laid> {
    /** A rectangle wanted by one bed or path. */
    private record Wanted(String owner, String id, double widthMm, double heightMm) {
        String size() {
            return Lengths.text(widthMm) + " x " + Lengths.text(heightMm);
        }
    }

    /** @param singles by bed or path, by the ways to build it; none where it was not asked */
    record Laid(String material, List<Roll> rolls, RollResult pooled, boolean priced,
            double needM2, List<SlipLine.Use> uses, List<Finding> findings, Map<String, List<RollResult>> singles) implements Sold {
        @Override
        public String item() {
            return material;
        }

        @Override
        public List<String> sellers() {
            return List.of(rolls.get(0).supplier());
        }

        @Override
        public int unplaced() {
            return pooled.unplaced().size();
        }

        @Override
        public SlipLine line(CurrencyUnit currency, boolean imperial) {
            List<PackCount> packs = new ArrayList<>();
            double boughtM2 = 0;
            for (Roll roll : rolls()) {
                double metres = pooled().rolls().stream()
                        .filter(layout -> layout.roll().equals(roll.id()))
                        .mapToDouble(RollLayout::boughtMm)
                        .sum() / 1000;
                if (metres > 0) {
                    boughtM2 += metres * roll.widthMm() / 1000;
                    Optional<BigDecimal> price = priced() ? roll.pricePerMetre() : Optional.empty();
                    packs.add(new PackCount(
                            PackCode.roll(metres, roll.widthMm()), 1,
                            price.map(each -> Ordering.rounded(each.multiply(BigDecimal.valueOf(metres)), currency)),
                            roll.supplier()));
                }
            }
            return new SlipLine(
                    material(),
                    MaterialRolls.title(material()),
                    needM2(),
                    "m2",
                    packs,
                    Math.max(0, boughtM2 - needM2()),
                    priced() ? Optional.of(Ordering.rounded(pooled().cost(), currency)) : Optional.empty(),
                    Optional.empty(),
                    Working.of(
                            pooled().proven() ? "least cost of roll length, proved" : "best layout found",
                            Working.GEOMETRY,
                            Input.of("bought", metres(pooled()), "m"),
                            Input.of("bound", pooled().lowerBound().doubleValue(), priced() ? currency.getCode() : "m")),
                    uses());
        }
    }

    /** For beds that can be built in several ways, the pieces of each of them. */
    private final Map<String, List<List<Wanted>>> own = new HashMap<>();

    /** Owners whose liner could be cut in further ways. */
    private final Set<String> open = new HashSet<>();

    static RollGoods of(Garden garden, OwnWays beds, List<PathWork> paths, SearchOptions looking) {
        RollGoods goods = new RollGoods();
        Map<String, List<Wanted>> byMaterial = new LinkedHashMap<>();
        for (int i = 0; i < beds.ways().size(); i++) {
            List<List<Wanted>> ways = beds.ways().get(i).stream().map(RollGoods::liner).toList();
            BedWay chosen = beds.ways().get(i).get(0);
            if (!ways.get(0).isEmpty()) {
                goods.own.put(owner(chosen), ways);
                if (!beds.all().get(i)) goods.open.add(owner(chosen));
                byMaterial.computeIfAbsent(chosen.bed().inside().liner().material(), m -> new ArrayList<>()).addAll(ways.get(0));
            }
        }
        for (PathWork path : paths) {
            int number = 1;
            for (PathWork.Strip strip : path.strips()) {
                byMaterial.computeIfAbsent(path.path().membrane(), m -> new ArrayList<>())
                        .add(new Wanted("path " + path.path().id(), path.path().id() + "-S" + number++, strip.widthMm(), strip.lengthMm()));
            }
        }
        byMaterial.forEach((material, wanted) -> goods.lay(garden, material, wanted, looking));
        return goods;
    }

    private static String owner(BedWay way) {
        return "bed " + way.bed().id();
    }

    private static List<Wanted> liner(BedWay way) {
        return way.liner().stream().map(piece -> new Wanted(owner(way), piece.id(), piece.widthMm(), piece.heightMm())).toList();
    }

    /**
     * What a set of rectangles takes from the seller who does it for least; compared as one would choose.
     *
     * @param bound proved: from no seller they cost less
     */
    record Least(int unplaced, BigDecimal cost, double metres, BigDecimal bound) implements Comparable<Least> {
        static final Comparator<Least> ORDER = Comparator.comparingInt(Least::unplaced)
                .thenComparing(Least::cost)
                .thenComparingDouble(Least::metres);

        @Override
        public int compareTo(Least other) {
            return ORDER.compare(this, other);
        }
    }

    /** What sets of rectangles take, each looked for once. */
    record Leasts(Garden garden, SearchOptions looking, Map<String, Least> known) {
        Leasts(Garden garden, SearchOptions looking) {
            this(garden, looking, new ConcurrentHashMap<>());
        }

        /** @param sizesMm width and height of each; of one material of which the catalogue has rolls */
        Least of(String material, List<double[]> sizesMm) {
            String key = material + sizesMm.stream().map(size -> size[0] + "x" + size[1]).sorted().collect(Collectors.joining(" "));
            Least before = known.get(key);
            if (before != null) return before;
            Least least = least(material, sizesMm);
            known.put(key, least);
            return least;
        }

        private Least least(String material, List<double[]> sizesMm) {
            List<RollResult> laid = problems(garden, material, sizesMm).stream().map(looking::rollsShortly).toList();
            BigDecimal bound = laid.stream().map(RollResult::lowerBound).min(Comparator.naturalOrder()).orElseThrow();
            return laid.stream()
                    .map(result -> new Least(
                            result.unplaced().stream().mapToInt(Unplaced::count).sum(), result.cost(), metres(result), bound))
                    .min(Comparator.naturalOrder())
                    .orElseThrow();
        }
    }

    /** Proved, of whoever sells it for least, without a search; as {@link Leasts} otherwise. */
    static BigDecimal atLeast(Garden garden, String material, List<double[]> sizesMm) {
        return problems(garden, material, sizesMm).stream().map(RollSolver::atLeast).min(Comparator.naturalOrder()).orElseThrow();
    }

    /** One a seller. */
    private static List<RollProblem> problems(Garden garden, String material, List<double[]> sizesMm) {
        List<Wanted> wanted = sizesMm.stream().map(size -> new Wanted("", "", size[0], size[1])).toList();
        return bySeller(garden.goods().catalogue().rolls(material)).stream()
                .map(rolls -> problem(material, usable(rolls), wanted))
                .toList();
    }

    private static List<List<Roll>> bySeller(List<Roll> all) {
        return all.stream().map(Roll::supplier).distinct()
                .map(seller -> all.stream().filter(roll -> roll.supplier().equals(seller)).toList())
                .toList();
    }

    /** Where some rolls have a price those without are not laid on. */
    static List<Roll> usable(List<Roll> rolls) {
        boolean priced = rolls.stream().anyMatch(roll -> roll.pricePerMetre().isPresent());
        return rolls.stream().filter(roll -> !priced || roll.pricePerMetre().isPresent()).toList();
    }

    private void lay(Garden garden, String material, List<Wanted> wanted, SearchOptions looking) {
        double needM2 = wanted.stream().mapToDouble(piece -> piece.widthMm() * piece.heightMm()).sum() / 1e6;
        List<Roll> all = garden.goods().catalogue().rolls(material);
        if (all.isEmpty()) {
            unknown(Ordering.unpriced(material, material, needM2, "m2"),
                    Finding.of(FindingKind.ROLL_UNKNOWN, Place.field(material)).with("material", Fact.name(material)).way(WayKind.ADD_ROLL));
            return;
        }
        kinds.add(bySeller(all).stream().map(rolls -> lay(material, rolls, wanted, needM2, looking)).toList());
    }

    /** All of a material from one supplier's rolls. */
    private Laid lay(String material, List<Roll> all, List<Wanted> wanted, double needM2, SearchOptions looking) {
        List<Finding> findings = new ArrayList<>();
        boolean priced = all.stream().anyMatch(roll -> roll.pricePerMetre().isPresent());
        List<Roll> rolls = usable(all);
        RollResult pooled = named(looking.rolls(MaterialRolls.title(material), problem(material, rolls, wanted)), wanted);
        for (Unplaced one : pooled.unplaced()) {
            double widest = rolls.stream().mapToDouble(Roll::widthMm).max().orElse(0);
            findings.add(Finding.of(FindingKind.ROLL_NARROW, Place.field(material).then(What.PIECE, one.id()))
                    .with("material", Fact.name(material)).with("size", Fact.size(one.widthMm(), one.heightMm()))
                    .by(Fact.mm(Math.min(one.widthMm(), one.heightMm()) - widest))
                    .way(WayKind.WIDER_ROLL, Fact.mm(Math.min(one.widthMm(), one.heightMm()))).way(WayKind.NARROWER_OR_NO_LINER));
        }
        Map<String, List<Wanted>> byOwner = new LinkedHashMap<>();
        wanted.forEach(piece -> byOwner.computeIfAbsent(piece.owner(), owner -> new ArrayList<>()).add(piece));
        Map<String, List<RollResult>> singles = new LinkedHashMap<>();
        if (looking.alone()) {
            byOwner.forEach((owner, chosen) -> singles.put(owner, own.getOrDefault(owner, List.of(chosen)).stream()
                    .map(pieces -> looking.rollsAlone(problem(material, rolls, pieces), byOwner.size()))
                    .toList()));
        }
        List<SlipLine.Use> uses = new ArrayList<>();
        byOwner.forEach((owner, own) -> uses.add(new SlipLine.Use(
                owner, own.stream().mapToDouble(piece -> piece.widthMm() * piece.heightMm()).sum() / 1e6)));
        return new Laid(material, rolls, pooled, priced, needM2, uses, findings, singles);
    }

    private static double metres(RollResult result) {
        return result.rolls().stream().mapToDouble(RollLayout::boughtMm).sum() / 1000;
    }

    /** Equal sizes are one piece with a count: the search and its memory do not care whose they are. */
    private static RollProblem problem(String material, List<Roll> rolls, List<Wanted> wanted) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        Map<String, Wanted> sizes = new LinkedHashMap<>();
        for (Wanted piece : wanted) {
            counts.merge(piece.size(), 1, Integer::sum);
            sizes.putIfAbsent(piece.size(), piece);
        }
        List<RollProblem.Piece> pieces = new ArrayList<>();
        sizes.forEach((size, piece) -> pieces.add(new RollProblem.Piece(size, piece.widthMm(), piece.heightMm(), counts.get(size))));
        List<RollProblem.Stock> stock = rolls.stream()
                .map(roll -> new RollProblem.Stock(
                        roll.id(), roll.widthMm(), roll.pricePerMetre().orElse(BigDecimal.ONE), roll.stepMm(), roll.maxLengthMm()))
                .toList();
        // one roll that may not be turned on decides for all that lie together
        return new RollProblem(material, stock, pieces, rolls.stream().allMatch(Roll::mayTurn), true);
    }

    private static RollResult named(RollResult result, List<Wanted> wanted) {
        Map<String, Deque<String>> waiting = new HashMap<>();
        wanted.forEach(piece -> waiting.computeIfAbsent(piece.size(), size -> new ArrayDeque<>()).add(piece.id()));
        List<RollLayout> rolls = new ArrayList<>();
        for (RollLayout roll : result.rolls()) {
            List<Placed> placed = roll.placed().stream()
                    .map(one -> new Placed(waiting.get(one.id()).pop(), one.x(), one.y(), one.widthMm(), one.heightMm(), one.turned()))
                    .toList();
            rolls.add(new RollLayout(roll.roll(), roll.usedMm(), roll.boughtMm(), placed));
        }
        List<Unplaced> unplaced = new ArrayList<>();
        for (Unplaced one : result.unplaced()) {
            for (int i = 0; i < one.count(); i++) {
                unplaced.add(new Unplaced(waiting.get(one.id()).pop(), one.widthMm(), one.heightMm(), 1, one.why()));
            }
        }
        return new RollResult(result.name(), result.cost(), result.lowerBound(), result.proven(), result.seconds(), rolls, unplaced);
    }

    List<MaterialRolls> materials(Slip slip) {
        return taken().stream().map(one -> {
            Optional<BigDecimal> cost = slip.apart().map(apart -> apart.goods().get(one.material()));
            // where nothing is priced a metre costs 1
            OptionalDouble metres = cost.isPresent()
                    ? OptionalDouble.of(slip.apart().orElseThrow().amounts().get(one.material()))
                    : one.singles().values().stream().mapToDouble(ways -> metres(ways.get(0))).reduce(Double::sum);
            return new MaterialRolls(one.material(), one.pooled(), metres, cost);
        }).toList();
    }

    void apart(BuyersApart buyers, CurrencyUnit currency) {
        for (List<Laid> sellers : kinds) {
            sellers.get(0).singles().forEach((owner, ways) -> {
                for (int way = 0; way < ways.size(); way++) apart(sellers, owner, way, buyers, currency);
            });
        }
    }

    private void apart(List<Laid> sellers, String owner, int way, BuyersApart buyers, CurrencyUnit currency) {
        List<Laid> serving = serving(sellers, one -> one.singles().get(owner).get(way).unplaced().size());
        buyers.missing(owner, way, serving.get(0).singles().get(owner).get(way).unplaced().size());
        List<BuyersApart.Offer> offers = serving.stream()
                .filter(Laid::priced)
                .map(one -> {
                    RollResult single = one.singles().get(owner).get(way);
                    BigDecimal cost = Ordering.rounded(single.cost(), currency);
                    BigDecimal least = open.contains(owner) ? BigDecimal.ZERO : single.lowerBound().min(cost);
                    return new BuyersApart.Offer(one.rolls().get(0).supplier(), cost, least, metres(single));
                })
                .toList();
        if (!offers.isEmpty()) buyers.offers(owner, way, sellers.get(0).material(), offers);
    }
}
