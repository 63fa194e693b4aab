package lapyard.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lapyard.catalogue.Section;
import lapyard.catalogue.StockLength;
import lapyard.construction.BedWork;
import lapyard.construction.Nest;
import lapyard.construction.Piece;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingProblem.Demand;
import lapyard.cutting.CuttingProblem.Stock;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.CuttingResult.BoardLine;
import lapyard.cutting.CuttingResult.Unplaced;
import lapyard.geometry.Lengths;
import lapyard.job.JobSheet.SawWork;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.job.JobSheet.Way;
import lapyard.order.Slip;
import lapyard.order.SlipLine;
import lapyard.order.SlipLine.PackCount;
import lapyard.order.Wanted;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.Joint;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.RackBoard;
import lapyard.plan.Rate;
import lapyard.plan.Saw;
import lapyard.plan.Tally;
import lapyard.plan.WayKind;
import lapyard.working.Working;
import lapyard.working.Working.Input;
import org.joda.money.CurrencyUnit;

/** Plans the cutting of all beds' wall timber together, one section at a time. */
final class PooledTimber {
    /** Ways to nest share as long a search as the plan without nests gets. */
    private static final int NESTINGS = 8;

    /** {@code section} with the stock of one supplier; {@code singles} is what each bed buys there by itself, in the order of the beds. */
    private record Cut(Section section, CuttingResult pooled, boolean priced, Optional<BigDecimal> alone, int boardsAlone, double needM,
            SawWork saw, List<SlipLine.Use> uses, List<Finding> findings, List<Alone> singles) {}

    /** One a section: the same pieces cut from the stock of each supplier who sells it. */
    private final List<List<Cut>> ways;

    /** As {@link #ways}, with suppliers who cannot serve every piece. */
    private final List<List<Cut>> all;

    private PooledTimber(List<List<Cut>> ways, List<List<Cut>> all) {
        this.ways = ways;
        this.all = all;
    }

    /** Longest piece that stock or rack can give. */
    static double longestPieceMm(Garden garden, Section section) {
        double longest = section.stock().stream().mapToDouble(StockLength::lengthMm).max().orElse(0);
        for (Stock run : RackRuns.of(garden, section, true)) {
            longest = Math.max(longest, run.lengthMm());
        }
        return Math.max(0, longest - 2 * garden.goods().saw().endTrimMm());
    }

    /** What a whole board of each length gives, stock and rack. */
    static List<Double> wholeBoardsMm(Garden garden, Section section) {
        return Stream.concat(
                        section.stock().stream().map(StockLength::lengthMm),
                        RackRuns.of(garden, section, true).stream().map(Stock::lengthMm))
                .map(length -> length - 2 * garden.goods().saw().endTrimMm())
                .distinct()
                .sorted()
                .toList();
    }

    /** Cutting these timbers together, to compare them with others. */
    static CuttingProblem trial(Garden garden, Section section, Map<Bed, List<Piece>> pieces) {
        boolean food = pieces.keySet().stream().anyMatch(bed -> bed.planting().food());
        List<Stock> rack = RackRuns.of(garden, section, !food);
        List<Blank> blanks = new ArrayList<>();
        pieces.forEach((bed, own) -> own.forEach(piece -> blanks.add(Blank.of(piece, bed.stage()))));
        return SawDemands.of(saw(garden, section, rack), blanks, graded(rack)).problem();
    }

    static boolean graded(List<Stock> rack) {
        return rack.stream().anyMatch(board -> board.goodFaces() == 0);
    }

    static PooledTimber of(Garden garden, List<BedWork> works, SearchOptions looking) {
        Map<Section, List<BedWork>> bySection = new LinkedHashMap<>();
        works.forEach(work -> bySection.computeIfAbsent(work.bed().section(), s -> new ArrayList<>()).add(work));
        List<List<Cut>> ways = new ArrayList<>();
        List<List<Cut>> all = new ArrayList<>();
        bySection.forEach((section, beds) -> {
            all.add(cuts(garden, section, beds, looking));
            ways.add(serving(all.get(all.size() - 1)));
        });
        return new PooledTimber(ways, all);
    }

    /** Boards of one section come from one supplier, so that they match. */
    private static List<Cut> cuts(Garden garden, Section section, List<BedWork> beds, SearchOptions looking) {
        List<Section> sold = section.suppliers().size() <= 1
                ? List.of(section)
                : section.suppliers().stream().map(section::from).toList();
        List<List<Alone>> singles = singles(garden, sold, beds, looking);
        List<Cut> cuts = new ArrayList<>();
        for (int i = 0; i < sold.size(); i++) {
            int seller = i;
            cuts.add(cut(garden, sold.get(i), beds, looking, singles.stream().map(bed -> bed.get(seller)).toList()));
        }
        return cuts;
    }

    /** Who cannot serve every piece is passed over. */
    private static List<Cut> serving(List<Cut> all) {
        int fewest = all.stream().mapToInt(cut -> cut.pooled().unplaced().size()).min().orElse(0);
        return all.stream().filter(cut -> cut.pooled().unplaced().size() == fewest).toList();
    }

    /** The same with each section's boards from whom the slip names. */
    PooledTimber chosen(Slip slip) {
        return new PooledTimber(ways.stream().map(cuts -> List.of(chosen(cuts, slip))).toList(), all);
    }

    private static Cut chosen(List<Cut> cuts, Slip slip) {
        return cuts.stream()
                .filter(cut -> slip.lines().stream().anyMatch(line -> line.item().equals("timber " + cut.section().id())
                        && line.packs().stream().anyMatch(pack -> cut.section().suppliers().contains(pack.supplier()))))
                .findFirst()
                .orElse(cuts.get(0));
    }

    private List<Cut> cuts() {
        return ways.stream().map(cuts -> cuts.get(0)).toList();
    }

    /** What each bed buys by itself from each supplier, with its share of the boards on hand; no bed where it is not asked. */
    private static List<List<Alone>> singles(Garden garden, List<Section> sold, List<BedWork> beds, SearchOptions looking) {
        // nests of one bed alone are offered to all together
        boolean each = looking.alone() || beds.stream().anyMatch(work -> angled(work.bed()));
        if (!each) {
            return List.of();
        }
        Function<CuttingProblem, CuttingResult> share = problem -> looking.boardsAlone(problem, beds.size());
        List<Stock> rack = rack(garden, sold.get(0), beds);
        int[] boards = rack.stream().mapToInt(board -> board.available().getAsInt()).toArray();
        BiFunction<Integer, int[], List<Alone>> fromEach = (bed, offered) -> sold.stream()
                .map(section -> alone(section, rack, Nesting.cheapest(saw(garden, section, offered(rack, offered)),
                        blanks(garden.goods().saw(), List.of(beds.get(bed)), sawn(garden, section)), List.of(), sawn(garden, section), graded(rack),
                        (problem, least) -> share.apply(problem), share)))
                .toList();
        List<RackSharing.Buy> shared = RackSharing.of(beds.size(), boards,
                (bed, offered) -> fromEach.apply(bed, offered).stream().min(Comparator.comparing(Alone::cost)).orElseThrow());
        List<List<Alone>> singles = new ArrayList<>();
        for (int bed = 0; bed < shared.size(); bed++) {
            Alone own = (Alone) shared.get(bed);
            singles.add(sold.size() == 1 ? List.of(own) : fromEach.apply(bed, own.used()));
        }
        return singles;
    }

    private static List<Stock> rack(Garden garden, Section section, List<BedWork> beds) {
        return RackRuns.of(garden, section, beds.stream().noneMatch(work -> work.bed().planting().food()));
    }

    /**
     * What each bed would buy by itself. Plans are proved by their own bounds; a share of the boards on hand by being the best of
     * all, and by what they would be worth kept; deliveries only where there is nothing to share.
     */
    void apart(Garden garden, List<BedWork> works, BuyersApart buyers, CurrencyUnit currency) {
        for (List<Cut> cuts : all) {
            if (cuts.stream().noneMatch(Cut::priced)) {
                continue;
            }
            List<BedWork> beds = works.stream().filter(work -> work.bed().section().id().equals(cuts.get(0).section().id())).toList();
            List<Stock> rack = rack(garden, cuts.get(0).section(), beds);
            BigDecimal paid = BigDecimal.ZERO;
            for (int i = 0; i < cuts.get(0).singles().size(); i++) {
                int bed = i;
                String owner = "bed " + beds.get(i).bed().id();
                int fewest = cuts.stream().mapToInt(cut -> cut.singles().get(bed).plan().result().unplaced().size()).min().orElseThrow();
                List<BuyersApart.Offer> offers = cuts.stream()
                        .filter(cut -> cut.priced() && cut.singles().get(bed).plan().result().unplaced().size() == fewest)
                        .map(cut -> cut.singles().get(bed).offer(cut.section(), currency))
                        .toList();
                if (offers.isEmpty()) {
                    continue;
                }
                buyers.offers(owner, "timber " + cuts.get(0).section().id(), offers);
                paid = paid.add(offers.stream().map(BuyersApart.Offer::cost).max(BigDecimal::compareTo).orElseThrow());
                if (!rack.isEmpty() && beds.size() > 1) buyers.shares(owner);
            }
            if (!rack.isEmpty() && beds.size() > 1) {
                buyers.unproved("bed " + beds.get(0).bed().id(), unproved(cuts, rack, beds.size(), paid));
            }
        }
    }

    /** What another share of the boards on hand could save at most. */
    private static BigDecimal unproved(List<Cut> cuts, List<Stock> rack, int beds, BigDecimal paid) {
        BigDecimal worth = rack.stream()
                .map(board -> board.salvage().multiply(BigDecimal.valueOf(board.available().getAsInt())))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
        if (RackSharing.looksAtAll(beds, rack.stream().mapToInt(board -> board.available().getAsInt()).toArray())) {
            return worth;
        }
        // all beds' own plans together are a plan of the garden
        return cuts.size() > 1 ? paid : paid.subtract(cuts.get(0).pooled().lowerBound().subtract(worth).max(BigDecimal.ZERO));
    }

    private static Cut cut(Garden garden, Section section, List<BedWork> beds, SearchOptions looking, List<Alone> singles) {
        List<Finding> findings = new ArrayList<>();
        List<Stock> rack = rack(garden, section, beds);
        findings.addAll(Provenance.barred(garden, section, beds));
        boolean priced = section.stock().stream().anyMatch(stock -> stock.price().isPresent());

        Set<String> sawn = sawn(garden, section);
        List<Blank> asked = blanks(garden.goods().saw(), beds, sawn);
        List<Blank> eachByItself = new ArrayList<>();
        BigDecimal alone = BigDecimal.ZERO;
        int boardsAlone = 0;
        for (Alone single : singles) {
            single.plan().asked().blanks().values().forEach(eachByItself::addAll);
            alone = alone.add(single.paid());
            boardsAlone += single.plan().result().boards();
        }

        Function<CuttingProblem, CuttingResult> glance = problem -> looking.boardsAlone(problem, NESTINGS);
        boolean keepsNests = eachByItself.containsAll(asked.stream().filter(blank -> blank.nest().isPresent()).toList());
        Nesting.Plan plan = Nesting.cheapest(saw(garden, section, rack), asked, keepsNests ? eachByItself : List.of(), sawn, graded(rack),
                (problem, least) -> looking.boards("Timber " + section.id(), problem, least), glance);
        looking.chosen("Timber " + section.id(), plan.result());
        CuttingResult pooled = chalked(garden, section, beds, plan);
        List<Blank> blanks = plan.asked().blanks().values().stream().flatMap(List::stream).toList();
        findings.addAll(Measured.findings(garden, section));
        findings.addAll(GoodFaces.findings(section, rack, pooled, beds));
        findings.addAll(Nests.findings(section, garden.goods().saw().kerfMm(), blanks));
        BoardsOnHand.runOut(section, pooled).ifPresent(findings::add);
        for (Unplaced unplaced : pooled.unplaced()) {
            if (unplaced.scarce()) continue;
            findings.add(Finding.of(FindingKind.PIECE_NO_BOARD, Place.of(What.TIMBER, section.id()).then(What.FIELD, unplaced.id()))
                    .with("piece", Fact.name(unplaced.id())).by(Fact.mm(unplaced.lengthMm()))
                    .way(WayKind.LONGER_STOCK).way(WayKind.JOIN_OR_SHORTEN));
        }

        Map<String, Double> takesMm = new HashMap<>();
        Map<String, Integer> weekends = new HashMap<>();
        for (Blank blank : blanks) {
            weekends.put(blank.mark(), blank.stage());
            blank.pieces().forEach(piece -> takesMm.put(piece.mark(), blank.takesMm(piece, garden.goods().saw().kerfMm())));
        }
        double needM = beds.stream().mapToDouble(work -> takesM(work, takesMm)).sum();
        Optional<BigDecimal> costAlone = priced ? Optional.of(alone) : Optional.empty();
        Map<String, List<String>> marks = new HashMap<>();
        plan.asked().blanks().forEach((id, own) -> marks.put(id, own.stream().map(Blank::mark).toList()));
        Way bedByBed = new Way("bed by bed", boardsAlone, costAlone);
        SawWork saw = SawWork.of(plan.asked().problem(), marks, pooled, weekends::get, JobSheet.rates(garden, Rate.CUT),
                List.of(way(section, pooled, priced), bedByBed), blanks.stream().flatMap(blank -> blank.nest().stream()).toList(), Optional.empty());
        List<Tally.Board> told = garden.people().tally().boards().stream().filter(board -> board.section().equals(section.id())).toList();
        Optional<Resawn> resawn = Resawn.of(saw, pooled, told, weekends::get);
        if (resawn.isPresent()) {
            pooled = resawn.get().result();
            saw = saw.with(resawn.get().boards(), List.of(way(section, pooled, priced), bedByBed));
        }
        List<SlipLine.Use> uses = beds.stream()
                .map(work -> new SlipLine.Use("bed " + work.bed().id(), takesM(work, takesMm)))
                .toList();
        return new Cut(section, pooled, priced, costAlone, boardsAlone, needM, saw, uses, findings, singles);
    }

    /** One bed bought for by itself. */
    private record Alone(BigDecimal paid, int[] used, Nesting.Plan plan) implements RackSharing.Buy {
        /** A piece that finds no board counts more than any board. */
        @Override
        public BigDecimal cost() {
            return paid.add(BigDecimal.valueOf(1_000_000L * plan.result().unplaced().stream().mapToInt(Unplaced::count).sum()));
        }

        /** With the boards on hand that it uses; what those would be worth kept is not paid. */
        BuyersApart.Offer offer(Section section, CurrencyUnit currency) {
            CuttingResult result = plan.result();
            BigDecimal least = result.lowerBound().subtract(result.salvage()).max(BigDecimal.ZERO);
            return new BuyersApart.Offer(section.suppliers().isEmpty() ? "" : section.suppliers().get(0), LineMoney.rounded(paid, currency), least.min(LineMoney.rounded(paid, currency)));
        }
    }

    private static Alone alone(Section section, List<Stock> rack, Nesting.Plan plan) {
        int[] used = new int[rack.size()];
        for (BoardLine line : plan.result().plan()) {
            for (int i = 0; i < used.length; i++) {
                if (rack.get(i).id().equals(line.stock())) used[i] += line.count();
            }
        }
        return new Alone(plan.result().paid().add(overBundles(section, plan.result())), used, plan);
    }

    private static List<Stock> offered(List<Stock> rack, int[] counts) {
        List<Stock> offered = new ArrayList<>();
        for (int i = 0; i < counts.length; i++) {
            if (counts[i] > 0) offered.add(rack.get(i).with(counts[i]));
        }
        return offered;
    }

    /** With the slip's own cost: what is paid, whole bundles among it, and nothing for what a board on hand is worth. */
    private static Way way(Section section, CuttingResult pooled, boolean priced) {
        return new Way("pooled", pooled.boards(), priced ? Optional.of(pooled.paid().add(overBundles(section, pooled))) : Optional.empty());
    }

    static boolean angled(Bed bed) {
        return !bed.outline().upright() || bed.walls().joints().containsValue(Joint.MITRE);
    }

    private static double takesM(BedWork work, Map<String, Double> takesMm) {
        return work.pieces().stream().mapToDouble(piece -> takesMm.get(piece.mark())).sum() / 1000;
    }

    /** Stock lengths that can be bought; where nothing is priced, a board counts 1. */
    private static List<Stock> bought(Section section) {
        boolean priced = section.stock().stream().anyMatch(stock -> stock.price().isPresent());
        return section.stock().stream()
                .filter(stock -> !priced || stock.price().isPresent())
                .map(stock -> new Stock(
                        stockId(stock), stock.lengthMm(), stock.price().orElse(BigDecimal.ONE), OptionalInt.empty(), section.goodFaces()))
                .toList();
    }

    /** What whole bundles and least counts cost over the boards that are cut. */
    private static BigDecimal overBundles(Section section, CuttingResult result) {
        BigDecimal over = BigDecimal.ZERO;
        for (StockLength stock : section.stock()) {
            int cut = result.plan().stream()
                    .filter(line -> line.stock().equals(stockId(stock)))
                    .mapToInt(BoardLine::count)
                    .sum();
            over = over.add(stock.price().orElse(BigDecimal.ZERO).multiply(BigDecimal.valueOf(stock.bought(cut) - cut)));
        }
        return over;
    }

    private static String stockId(StockLength stock) {
        return Lengths.text(stock.lengthMm());
    }

    /** What a run of a board on hand is called in a plan. */
    static String runId(RackBoard board, RackBoard.Span run) {
        boolean whole = run.fromMm() == 0 && run.toMm() == board.lengthMm();
        return whole ? board.id() : board.id() + " " + Lengths.text(run.fromMm()) + "-" + Lengths.text(run.toMm());
    }

    /** Every piece by itself, but for the nests that the tally has cut. */
    private static List<Blank> blanks(Saw saw, List<BedWork> beds, Set<String> sawn) {
        Map<String, Blank> singles = new LinkedHashMap<>();
        for (BedWork work : beds) {
            work.pieces().forEach(piece -> singles.put(piece.mark(), Blank.of(piece, work.bed().stage())));
        }
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
    private static Set<String> sawn(Garden garden, Section section) {
        return garden.people().tally().boards().stream()
                .filter(board -> board.section().equals(section.id()))
                .flatMap(board -> Stream.concat(board.cut().stream(), board.spoiled().stream()))
                .collect(Collectors.toCollection(LinkedHashSet::new));
    }

    /** A nest that was cut under this mark stays one, as long as all its pieces are wanted on one weekend. */
    private static Optional<Blank> sawnNest(String mark, Map<String, Blank> singles, Saw saw) {
        List<Blank> own = Nest.marks(mark).stream().map(singles::get).toList();
        if (own.contains(null) || own.stream().map(Blank::stage).distinct().count() > 1) {
            return Optional.empty();
        }
        return Nest.of(own.stream().map(blank -> blank.pieces().get(0)).toList(), saw.kerfMm())
                .map(nest -> Blank.sawn(nest, own.get(0).stage()));
    }

    /** The saw with all boards that there are, on hand first. */
    static CuttingProblem saw(Garden garden, Section section, List<Stock> rack) {
        List<Stock> stock = new ArrayList<>(rack);
        stock.addAll(bought(section));
        Saw saw = garden.goods().saw();
        return new CuttingProblem(
                section.id(), saw.kerfMm(), saw.endTrimMm(), saw.keepOffcutMm(), saw.retrimMm(), stock, List.of());
    }

    private static CuttingResult chalked(Garden garden, Section section, List<BedWork> beds, Nesting.Plan plan) {
        Map<String, Integer> rims = new HashMap<>();
        beds.forEach(work -> work.pieces().forEach(piece -> rims.put(piece.mark(), work.bed().courses())));
        Map<String, Chalking.Timbers> timbers = new LinkedHashMap<>();
        for (Demand demand : plan.asked().problem().pieces()) {
            timbers.put(demand.id(), new Chalking.Timbers(
                    demand.lengthMm(), demand.stage(), demand.goodFaces(), plan.asked().blanks().get(demand.id())));
        }
        return Chalking.of(plan.result(), timbers, piece -> rims.get(piece.mark()), stock -> Measured.quality(garden, section, stock));
    }

    List<SectionCutting> cuttings() {
        return cuts().stream().map(cut -> new SectionCutting(cut.section().id(), cut.pooled(), cut.boardsAlone(), cut.saw())).toList();
    }

    List<Wanted> lines(CurrencyUnit currency) {
        return ways.stream()
                .map(cuts -> new Wanted(cuts.stream().map(cut -> line(cut, currency)).toList()))
                .toList();
    }

    private static SlipLine line(Cut cut, CurrencyUnit currency) {
        CuttingResult pooled = cut.pooled();
        Map<String, Integer> boards = new TreeMap<>();
        pooled.plan().forEach(board -> boards.merge(board.stock(), board.count(), Integer::sum));
        List<PackCount> packs = new ArrayList<>();
        double boughtM = 0;
        BigDecimal more = overBundles(cut.section(), pooled);
        for (StockLength stock : cut.section().stock()) {
            int count = stock.bought(boards.getOrDefault(stockId(stock), 0));
            if (count > 0) {
                Optional<BigDecimal> price = cut.priced() ? stock.price() : Optional.empty();
                packs.add(new PackCount("board of " + stockId(stock), count, price, stock.supplier()));
                boughtM += count * stock.lengthMm() / 1000;
            }
        }
        double onHandM = Math.max(0, usedFromRackM(cut));
        return new SlipLine(
                "timber " + cut.section().id(),
                "Timber " + cut.section().id(),
                cut.needM(),
                "m",
                packs,
                Math.max(0, boughtM + onHandM - cut.needM()),
                cut.priced() ? Optional.of(LineMoney.rounded(pooled.paid().add(more), currency)) : Optional.empty(),
                cut.alone().map(cost -> LineMoney.rounded(cost, currency)),
                Working.of(
                        (pooled.proven()
                                ? "least cost of boards over all beds, proved: no plan can cost less than the bound"
                                : "best plan found over all beds; no plan can cost less than the bound")
                                + (more.signum() == 0 ? "" : "; then up to whole bundles and the least count sold, "
                                        + LineMoney.rounded(more, currency).toPlainString() + " more"),
                        Working.GEOMETRY,
                        Input.of("boards", pooled.boards(), ""),
                        Input.of("boards bed by bed", cut.boardsAlone(), ""),
                        Input.of("bound", pooled.lowerBound().doubleValue(), cut.priced() ? currency.getCode() : "boards"),
                        Input.of("from boards on hand", onHandM, "m"),
                        Input.of("worth of boards on hand used", pooled.salvage().doubleValue(), cut.priced() ? currency.getCode() : "boards"),
                        Input.of("least boards by length alone", Math.ceil(cut.needM() * 1000 / longest(cut.section())), "")),
                cut.uses());
    }

    private static double longest(Section section) {
        return section.stock().stream().mapToDouble(StockLength::lengthMm).max().orElse(Double.NaN);
    }

    private static double usedFromRackM(Cut cut) {
        return cut.pooled().plan().stream()
                .filter(board -> cut.section().stock().stream().noneMatch(stock -> stockId(stock).equals(board.stock())))
                .flatMap(board -> board.lengthsMm().stream())
                .mapToDouble(Double::doubleValue)
                .sum() / 1000;
    }

    List<Finding> findings() {
        return cuts().stream().flatMap(cut -> cut.findings().stream()).toList();
    }

    boolean leftOut() {
        return cuts().stream().anyMatch(cut -> !cut.pooled().unplaced().isEmpty());
    }

}
