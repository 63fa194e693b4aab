package lapyard.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lapyard.catalogue.PackCode;
import lapyard.catalogue.Section;
import lapyard.catalogue.SectionGoods;
import lapyard.catalogue.StockLength;
import lapyard.catalogue.Supplier;
import lapyard.catalogue.TradeName;
import lapyard.construction.BedWork;
import lapyard.construction.Nest;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingProblem.Demand;
import lapyard.cutting.CuttingProblem.Stock;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.SawBoard;
import lapyard.geometry.Lengths;
import lapyard.job.JobSheet.SawWork;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.job.JobSheet.Way;
import lapyard.order.Ordering;
import lapyard.order.SlipLine;
import lapyard.order.SlipLine.PackCount;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.Joint;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.Rate;
import lapyard.plan.Saw;
import lapyard.plan.Tally;
import lapyard.plan.WayKind;
import lapyard.working.Whole;
import lapyard.working.Working;
import lapyard.working.Working.Input;
import org.joda.money.CurrencyUnit;

/** Plans the cutting of all beds' wall timber together, one section at a time. */
final class PooledTimber extends SoldGoods<PooledTimber.Cut> {
    /** Ways to nest share as long a search as the plan without nests gets. */
    private static final int NESTINGS = 8;

    /** {@code section} with the stock of one supplier. @param goneM of the boards that are bought, spoiled or lost: it is not over */
    record Cut(Section section, CuttingResult pooled, boolean priced, double needM, double goneM, SawWork saw, List<SlipLine.Use> uses,
            List<Finding> findings, Optional<Integer> boardsAlone) implements SoldBoards {
        @Override
        public String item() {
            return PooledTimber.item(section);
        }

        @Override
        public SlipLine line(CurrencyUnit currency, boolean imperial) {
            CuttingResult pooled = pooled();
            Map<String, Integer> boards = new TreeMap<>();
            pooled.plan().forEach(board -> boards.merge(board.stock(), board.count(), Integer::sum));
            List<PackCount> packs = new ArrayList<>();
            double boughtM = 0;
            BigDecimal more = WholeBundles.over(section(), pooled);
            for (StockLength stock : section().stock()) {
                if (priced() && stock.price().isEmpty()) continue;
                int count = stock.bought(boards.getOrDefault(stockId(stock), 0));
                if (count > 0) {
                    Optional<BigDecimal> price = priced() ? stock.price() : Optional.empty();
                    packs.add(new PackCount(PackCode.board(stock.lengthMm()), count, price, stock.supplier()));
                    boughtM += count * stock.lengthMm() / 1000;
                }
            }
            double onHandM = Math.max(0, usedFromRackM(this));
            return new SlipLine(
                    item(),
                    "Timber " + TradeName.section(section().id(), imperial),
                    needM(),
                    "m",
                    packs,
                    Math.max(0, boughtM + onHandM - needM() - goneM()),
                    priced() ? Optional.of(Ordering.rounded(pooled.paid().add(more), currency)) : Optional.empty(),
                    Optional.empty(),
                    Working.of(
                            (pooled.proven()
                                    ? "least cost of boards over all beds, proved: no plan can cost less than the bound"
                                    : "best plan found over all beds; no plan can cost less than the bound")
                                    + (more.signum() == 0 ? "" : "; then up to whole bundles and the least count sold, "
                                            + Ordering.rounded(more, currency).toPlainString() + " more"),
                            Working.GEOMETRY,
                            Input.of("boards", pooled.boards(), ""),
                            Input.of("bound", pooled.lowerBound().doubleValue(), priced() ? currency.getCode() : "boards"),
                            Input.of("from boards on hand", onHandM, "m"),
                            Input.of("worth of boards on hand used", pooled.salvage().doubleValue(), priced() ? currency.getCode() : "boards"),
                            Input.of("least boards by length alone", Whole.up(needM() * 1000 / longest(section())), "")),
                    uses());
        }
    }

    /** What each section's beds take by themselves, more than all the rest; none once the boards are chosen. */
    private final List<TimberApart> apart = new ArrayList<>();

    /** Longest piece that stock or rack can give. */
    static double longestPieceMm(Garden garden, Section section) {
        double longest = boughtPieceMm(garden, section);
        for (Stock run : RackRuns.ofWhole(garden, section)) longest = Math.max(longest, garden.goods().saw().usableMm(run.lengthMm()));
        return Math.max(0, longest);
    }

    /** Longest piece that a board gives of which more can be bought. */
    static double boughtPieceMm(Garden garden, Section section) {
        return garden.goods().saw().usableMm(section.stock().stream().mapToDouble(StockLength::lengthMm).max().orElse(0));
    }

    /** What a whole board of each length gives, stock and rack. */
    static List<Double> wholeBoardsMm(Garden garden, Section section) {
        return Stream.concat(
                        section.stock().stream().map(StockLength::lengthMm),
                        RackRuns.ofWhole(garden, section).stream().map(Stock::lengthMm))
                .map(garden.goods().saw()::usableMm)
                .distinct()
                .sorted()
                .toList();
    }

    static boolean graded(List<Stock> rack) {
        return rack.stream().anyMatch(board -> board.goodFaces() == 0);
    }

    /** @param own of the works, for what each bed takes alone */
    static PooledTimber of(Garden garden, List<BedWork> works, OwnWays own, SearchOptions looking) {
        Map<Section, List<Integer>> bySection = new LinkedHashMap<>();
        for (int i = 0; i < works.size(); i++) bySection.computeIfAbsent(works.get(i).bed().section(), s -> new ArrayList<>()).add(i);
        PooledTimber timber = new PooledTimber();
        bySection.forEach((section, beds) -> {
            // boards of one section come from one supplier, so that they match
            List<Section> sellers = section.bySeller();
            List<Section> sold = stillSold(section, sellers, garden.people().tally().countsThere(section.id()));
            List<BedWork> cutTogether = beds.stream().map(works::get).toList();
            // what was bought together says nothing of where a bed by itself would have been bought for
            TimberApart singles = TimberApart.of(garden, sellers, own.of(beds), looking);
            List<Cut> cuts = new ArrayList<>();
            for (Section seller : sold) {
                cuts.add(cut(garden, seller, cutTogether, looking, singles.blanks(sellers.indexOf(seller)), singles.boards()));
            }
            timber.apart.add(singles);
            timber.kinds.add(cuts);
            timber.note(tooShort(garden, cuts));
        });
        return timber;
    }

    /** Notes of who sells a section in boards too short for some pieces where another has them all. */
    private static List<Finding> tooShort(Garden garden, List<Cut> cuts) {
        List<Finding> notes = new ArrayList<>();
        if (cuts.stream().noneMatch(cut -> cut.unplaced() == 0)) return notes;
        for (Cut cut : cuts) {
            List<CuttingResult.Unplaced> left = cut.pooled().unplaced().stream().filter(piece -> !piece.scarce()).toList();
            if (left.isEmpty() || !cut.priced()) continue;
            String id = cut.sellers().get(0);
            String seller = garden.goods().catalogue().suppliers().stream().filter(one -> one.id().equals(id)).findFirst().map(Supplier::name).orElse(id);
            notes.add(Finding.of(FindingKind.SELLER_SHORT, Place.of(What.TIMBER, cut.section().id()).then(What.FIELD, seller))
                    .with("section", new Fact.Section(cut.section().id())).with("seller", Fact.name(seller))
                    .with("longest", Fact.mm(left.stream().mapToDouble(CuttingResult.Unplaced::lengthMm).max().orElseThrow()))
                    .by(Fact.count(left.stream().mapToInt(CuttingResult.Unplaced::count).sum(), "pieces")).way(WayKind.SHORTER_LIST));
        }
        return notes;
    }

    /** The section as each supplier sells it; once boards were bought, as those do who sell the lengths of the most boards that the tally names. */
    private static List<Section> stillSold(Section section, List<Section> sellers, Map<String, Integer> there) {
        Set<String> lengths = section.stock().stream().map(PooledTimber::stockId).collect(Collectors.toSet());
        return serving(sellers, one -> {
            Set<String> sold = one.stock().stream().map(PooledTimber::stockId).collect(Collectors.toSet());
            return there.entrySet().stream().filter(stock -> lengths.contains(stock.getKey()) && !sold.contains(stock.getKey())).mapToInt(Map.Entry::getValue).sum();
        });
    }

    /** What each bed would buy by itself. */
    void apart(BuyersApart buyers, CurrencyUnit currency) {
        for (int i = 0; i < kinds.size(); i++) {
            Optional<BigDecimal> pooled = apart.get(i).sold().size() == 1 ? Optional.of(kinds.get(i).get(0).pooled().lowerBound()) : Optional.empty();
            apart.get(i).apart(buyers, currency, pooled);
        }
    }

    static String item(Section section) {
        return SectionGoods.TIMBER.item(section.id());
    }

    /** What these beds are cut from beside what these sellers of one section have. */
    static List<Stock> rack(Garden garden, List<Section> sellers, List<BedWay> beds) {
        return RackRuns.withNotSold(RackRuns.of(garden, sellers.get(0), beds.stream().noneMatch(way -> way.bed().planting().food())), garden, sellers);
    }

    /** @param alone what beds by themselves are cut out of, nests among it, {@code boardsAlone} how many */
    private static Cut cut(Garden garden, Section section, List<BedWork> beds, SearchOptions looking, List<Blank> alone, Optional<Integer> boardsAlone) {
        List<BedWay> built = beds.stream().map(BedWay::of).toList();
        List<Stock> rack = rack(garden, List.of(section), built);
        Nesting.Plan plan = plan(garden, section, built, rack, looking, alone);
        CuttingResult pooled = chalked(garden, section, beds, plan);
        List<Blank> blanks = plan.asked().blanks().values().stream().flatMap(List::stream).toList();
        boolean priced = section.priced();
        SawWork saw = saw(garden, section, plan, pooled, blanks, priced);
        Optional<Resawn> resawn = Resawn.of(saw, pooled, garden.people().tally(), section.id(), stages(blanks)::get);
        Map<String, Double> takesMm = new HashMap<>();
        blanks.forEach(blank -> blank.pieces().forEach(
                piece -> takesMm.put(piece.mark(), blank.takesMm(piece, garden.goods().saw().kerfMm()))));
        List<SlipLine.Use> uses = beds.stream()
                .map(work -> new SlipLine.Use("bed " + work.bed().id(), work.pieces().stream().mapToDouble(piece -> takesMm.get(piece.mark())).sum() / 1000))
                .toList();
        return new Cut(section, resawn.map(Resawn::result).orElse(pooled), priced, uses.stream().mapToDouble(SlipLine.Use::amount).sum(),
                resawn.map(Resawn::goneMm).orElse(0.0) / 1000, resawn.map(one -> saw.with(one.boards(), List.of(way(section, one.result(), priced)))).orElse(saw), uses,
                TimberFindings.of(garden, section, beds, rack, pooled, blanks), boardsAlone);
    }

    /** The best plan that is found, pieces nested where that is cheaper. */
    private static Nesting.Plan plan(
            Garden garden, Section section, List<BedWay> beds, List<Stock> rack, SearchOptions looking, List<Blank> alone) {
        Set<String> sawn = sawn(garden, section);
        List<Blank> asked = blanks(garden.goods().saw(), beds, sawn);
        String search = SectionCutting.search(section.id(), false);
        boolean keepsNests = alone.containsAll(asked.stream().filter(blank -> blank.nest().isPresent()).toList());
        Function<Section, Nesting.Plan> best = sold -> Nesting.cheapest(saw(garden, sold, rack), asked, keepsNests ? alone : List.of(), sawn, graded(rack),
                (problem, least) -> sold == section ? looking.boards(search, problem, least) : looking.boardsAlone(problem, 1),
                problem -> looking.boardsAlone(problem, NESTINGS));
        // boards that are bought stay in the plan
        Nesting.Plan plan = garden.people().tally().countsThere(section.id()).isEmpty() ? WholeBundles.cheapest(section, best) : best.apply(section);
        looking.chosen(search, plan.result());
        return plan;
    }

    private static SawWork saw(
            Garden garden, Section section, Nesting.Plan plan, CuttingResult pooled, List<Blank> blanks, boolean priced) {
        Map<String, List<String>> marks = new HashMap<>();
        plan.asked().blanks().forEach((id, own) -> marks.put(id, own.stream().map(Blank::mark).toList()));
        CuttingProblem problem = plan.asked().problem();
        return SawWork.of(problem, marks, SawBoard.of(problem, pooled.plan(), stages(blanks)::get), JobSheet.rates(garden, Rate.CUT),
                List.of(way(section, pooled, priced)), blanks.stream().flatMap(blank -> blank.nest().stream()).toList(), Optional.empty());
    }

    private static Map<String, Integer> stages(List<Blank> blanks) {
        Map<String, Integer> stages = new HashMap<>();
        blanks.forEach(blank -> stages.put(blank.mark(), blank.stage()));
        return stages;
    }

    /** With the slip's own cost: what is paid, whole bundles among it, and nothing for what a board on hand is worth. */
    private static Way way(Section section, CuttingResult pooled, boolean priced) {
        return new Way(JobSheet.Pooling.POOLED, pooled.boards(), priced ? Optional.of(pooled.paid().add(WholeBundles.over(section, pooled))) : Optional.empty());
    }

    static boolean angled(Bed bed) {
        return !bed.outline().upright() || bed.walls().joints().containsValue(Joint.MITRE);
    }

    /** Stock lengths that can be bought, each from whom it is cheapest; where nothing is priced, a board counts 1. */
    static List<Stock> bought(Section section) {
        boolean priced = section.priced();
        Map<String, Stock> byLength = new LinkedHashMap<>();
        for (StockLength stock : section.stock()) {
            if (!priced || stock.price().isPresent()) {
                byLength.merge(stockId(stock), new Stock(stockId(stock), stock.lengthMm(), stock.price().orElse(BigDecimal.ONE), OptionalInt.empty(),
                        section.goodFaces()), (one, other) -> one.price().compareTo(other.price()) <= 0 ? one : other);
            }
        }
        return List.copyOf(byLength.values());
    }

    static String stockId(StockLength stock) {
        return Lengths.text(stock.lengthMm());
    }

    /** Every piece by itself, but for the nests that the tally has cut. */
    static List<Blank> blanks(Saw saw, List<BedWay> beds, Set<String> sawn) {
        Map<String, Blank> singles = new LinkedHashMap<>();
        for (BedWay way : beds) way.pieces().forEach(piece -> singles.put(piece.mark(), Blank.of(piece, way.bed().stage())));
        List<Blank> blanks = new ArrayList<>();
        for (String mark : sawn) {
            sawnNest(mark, singles, saw).ifPresent(nest -> {
                nest.pieces().forEach(piece -> singles.remove(piece.mark()));
                blanks.add(nest);
            });
        }
        blanks.addAll(singles.values());
        return blanks;
    }

    /** The marks under which the tally has something of this section cut. */
    static Set<String> sawn(Garden garden, Section section) {
        return garden.people().tally().boards(section.id()).stream()
                .flatMap(board -> Stream.concat(board.cut().stream(), board.spoiled().stream()))
                .collect(Collectors.toCollection(LinkedHashSet::new));
    }

    /** A nest that was cut under this mark stays one, as long as all its pieces are wanted on one weekend. */
    private static Optional<Blank> sawnNest(String mark, Map<String, Blank> singles, Saw saw) {
        List<Blank> own = Nest.marks(mark).stream().map(singles::get).toList();
        if (own.contains(null) || own.stream().map(Blank::stage).distinct().count() > 1) return Optional.empty();
        return Nest.of(own.stream().map(blank -> blank.pieces().get(0)).toList(), saw.kerfMm())
                .map(nest -> Blank.sawn(nest, own.get(0).stage()));
    }

    /** The saw with all boards that there are, on hand first. */
    static CuttingProblem saw(Garden garden, Section section, List<Stock> rack) {
        List<Stock> stock = new ArrayList<>(rack);
        stock.addAll(bought(section));
        Saw saw = garden.goods().saw();
        return new CuttingProblem(section.id(), saw.kerfMm(), saw.endTrimMm(), saw.keepOffcutMm(), saw.retrimMm(), stock, List.of());
    }

    private static CuttingResult chalked(Garden garden, Section section, List<BedWork> beds, Nesting.Plan plan) {
        Map<String, Integer> rims = new HashMap<>();
        beds.forEach(work -> work.pieces().forEach(piece -> rims.put(piece.mark(), work.bed().courses())));
        Map<String, Chalking.Timbers> timbers = new LinkedHashMap<>();
        for (Demand demand : plan.asked().problem().pieces()) {
            timbers.put(demand.id(), new Chalking.Timbers(
                    demand.lengthMm(), demand.stage(), demand.goodFaces(), plan.asked().blanks().get(demand.id())));
        }
        return Chalking.of(plan.result(), timbers, piece -> rims.get(piece.mark()), stock -> RackRuns.quality(garden, section, stock));
    }

    private static double longest(Section section) {
        return section.stock().stream().mapToDouble(StockLength::lengthMm).max().orElse(Double.NaN);
    }

    private static double usedFromRackM(Cut cut) {
        return cut.pooled().plan().stream()
                .filter(board -> bought(cut.section()).stream().noneMatch(stock -> stock.id().equals(board.stock())))
                .flatMap(board -> board.lengthsMm().stream())
                .mapToDouble(Double::doubleValue)
                .sum() / 1000;
    }
}
