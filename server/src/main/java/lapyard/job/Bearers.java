package lapyard.job;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import lapyard.catalogue.Pack;
import lapyard.catalogue.PackCode;
import lapyard.catalogue.PackGoods;
import lapyard.catalogue.Section;
import lapyard.catalogue.SectionGoods;
import lapyard.catalogue.StockLength;
import lapyard.catalogue.TradeName;
import lapyard.construction.BedWork;
import lapyard.construction.Strip;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingProblem.Demand;
import lapyard.cutting.CuttingProblem.Stock;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.SawBoard;
import lapyard.geometry.Length;
import lapyard.geometry.Lengths;
import lapyard.job.JobSheet.Ripping;
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
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.Rate;
import lapyard.plan.WayKind;
import lapyard.working.Working;
import lapyard.working.Working.Input;
import org.joda.money.CurrencyUnit;

/** Bearer strips of all beds: boards are ripped into strips, strips are cut to length together. */
final class Bearers extends SoldGoods<Bearers.Cut> {
    /** Bearers that are bought together: of one board, ripped to one thickness. */
    private record Rip(String section, double liftMm) {}

    record Cut(Section section, int stripsPerBoard, CuttingResult pooled, Map<StockLength, Integer> boards,
            boolean priced, BigDecimal cost, double needM, SawWork saw, List<SlipLine.Use> uses, List<Finding> findings,
            List<Single> singles) implements SoldBoards {
        @Override
        public Optional<Integer> boardsAlone() {
            return singles.stream().map(Single::boards).reduce(Integer::sum);
        }

        @Override
        public String item() {
            return SectionGoods.BEARERS.item(section.id());
        }

        @Override
        public SlipLine line(CurrencyUnit currency, boolean imperial) {
            List<PackCount> packs = new ArrayList<>();
            double boughtM = 0;
            for (Map.Entry<StockLength, Integer> entry : boards().entrySet()) {
                StockLength stock = entry.getKey();
                packs.add(new PackCount(PackCode.board(stock.lengthMm()), entry.getValue(), stock.price(), stock.supplier()));
                boughtM += entry.getValue() * stock.lengthMm() * stripsPerBoard() / 1000;
            }
            return new SlipLine(
                    item(),
                    "Bearer boards " + TradeName.section(section().id(), imperial) + ", ripped",
                    needM(),
                    "m",
                    packs,
                    Math.max(0, boughtM - needM()),
                    priced() ? Optional.of(Ordering.rounded(cost(), currency)) : Optional.empty(),
                    Optional.empty(),
                    Working.of(
                            "strips cut to length together, then strips / strips a board, rounded up to whole boards",
                            Working.COMMON_PRACTICE,
                            Input.of("strips", pooled().boards(), ""),
                            Input.of("strips a board", stripsPerBoard(), "")),
                    uses());
        }
    }

    /** What a bed buys by itself. */
    record Single(String owner, int boards, BigDecimal cost, CuttingResult strips) {}

    private static final double USUAL_STOCK_MM = 2400;

    /** The longest board of a bed's bearer timber; where the catalogue has none, what bearers are usually cut from. */
    static double longestStockMm(Garden garden, Bed bed) {
        return garden.goods().catalogue().section(bed.inside().base().bearers().bearerSection()).stream()
                .flatMap(section -> section.stock().stream())
                .mapToDouble(StockLength::lengthMm)
                .max()
                .orElse(USUAL_STOCK_MM);
    }

    static Bearers of(Garden garden, List<BedWork> works, SearchOptions looking) {
        Map<Rip, List<BedWork>> byRip = new LinkedHashMap<>();
        for (BedWork work : works) {
            if (!work.bottom().strips().isEmpty()) {
                Rip rip = new Rip(work.bed().inside().base().bearers().bearerSection(), work.bed().inside().base().bearers().bearerLiftMm());
                byRip.computeIfAbsent(rip, r -> new ArrayList<>()).add(work);
            }
        }
        Bearers bearers = new Bearers();
        byRip.forEach((rip, beds) -> bearers.cut(garden, rip, beds, looking));
        return bearers;
    }

    private void cut(Garden garden, Rip rip, List<BedWork> beds, SearchOptions looking) {
        double needM = beds.stream().flatMap(work -> work.bottom().strips().stream()).mapToDouble(Strip::lengthMm).sum() / 1000;
        Optional<Section> section = garden.goods().catalogue().section(rip.section());
        double kerf = garden.goods().saw().kerfMm();
        int perBoard = section.map(s -> perBoard(s, rip.liftMm(), kerf)).orElse(0);
        if (perBoard == 0) {
            String item = SectionGoods.BEARERS.item(rip.section());
            unknown(Ordering.unpriced(item, "Bearer strips " + Length.withUnit(rip.liftMm(), garden.imperial()) + " thick", needM, "m"), section.isEmpty()
                    ? Finding.of(FindingKind.BEARERS_UNKNOWN, Place.of(What.BEARERS, rip.section())).with("section", new Fact.Section(rip.section()))
                            .way(WayKind.ADD_SECTION).way(WayKind.OTHER_BEARERS)
                    : Finding.of(FindingKind.BEARERS_THICK, Place.of(What.BEARERS, rip.section()))
                            .with("strips", Fact.mm(rip.liftMm())).with("board", Fact.mm(section.get().thicknessMm()))
                            .by(Fact.mm(rip.liftMm() - section.get().thicknessMm()))
                            .way(WayKind.STRIPS_AT_MOST, Fact.mm(section.get().thicknessMm())).way(WayKind.THICKER_BEARERS));
            return;
        }
        kinds.add(section.get().bySeller().stream().map(own -> cut(garden, own, perBoard, rip.liftMm(), beds, needM, looking)).toList());
    }

    /** Strips of this thickness that are ripped from one board. */
    static int perBoard(Section section, double liftMm, double kerfMm) {
        return (int) ((section.thicknessMm() + kerfMm) / (liftMm + kerfMm) + 1e-9);
    }

    private static Cut cut(Garden garden, Section section, int perBoard, double liftMm, List<BedWork> beds, double needM, SearchOptions looking) {
        List<Finding> findings = new ArrayList<>();
        boolean priced = section.priced();
        CuttingProblem problem = problem(garden, section, perBoard, strips(beds));
        CuttingResult pooled = looking.boards(SectionCutting.search(section.id(), true), problem);
        for (CuttingResult.Unplaced one : pooled.unplaced()) {
            findings.add(Finding.of(FindingKind.BEARERS_NO_BOARD, Place.of(What.BEARERS, section.id()).then(What.FIELD, Lengths.text(one.lengthMm())))
                    .with("section", new Fact.Section(section.id())).by(Fact.mm(one.lengthMm())).way(WayKind.LONGER_STOCK));
        }
        Map<StockLength, Integer> boards = boards(section, perBoard, pooled);
        List<Single> singles = new ArrayList<>();
        for (BedWork bed : looking.alone() ? beds : List.<BedWork>of()) {
            CuttingResult single = looking.boardsAlone(problem(garden, section, perBoard, strips(List.of(bed))), beds.size());
            Map<StockLength, Integer> ownBoards = boards(section, perBoard, single);
            singles.add(new Single("bed " + bed.bed().id(), count(ownBoards), cost(ownBoards), single));
        }
        List<Way> ways = List.of(new Way(JobSheet.Pooling.POOLED, count(boards), priced ? Optional.of(cost(boards)) : Optional.empty()));
        Map<String, Integer> stages = new HashMap<>();
        beds.forEach(work -> work.bottom().strips().forEach(strip -> stages.put(strip.id(), work.bed().stage())));
        SawWork saw = SawWork.of(problem, Map.of(), SawBoard.of(problem, named(pooled, beds).plan(), stages::get), JobSheet.rates(garden, Rate.STRIP), ways, List.of(),
                Optional.of(ripping(garden, section, perBoard, liftMm, pooled)));
        List<SlipLine.Use> uses = beds.stream()
                .map(work -> new SlipLine.Use("bed " + work.bed().id(), work.bottom().strips().stream().mapToDouble(Strip::lengthMm).sum() / 1000))
                .toList();
        return new Cut(section, perBoard, pooled, boards, priced, cost(boards), needM, saw, uses, findings, singles);
    }

    private static Ripping ripping(Garden garden, Section section, int perBoard, double liftMm, CuttingResult pooled) {
        double kerf = garden.goods().saw().kerfMm();
        int boards = section.stock().stream().mapToInt(length -> (strips(length, pooled) + perBoard - 1) / perBoard).sum();
        boolean lastIsLeft = perBoard * (liftMm + kerf) > section.thicknessMm() + 1e-9;
        return new Ripping(boards, liftMm, perBoard, lastIsLeft ? perBoard - 1 : perBoard);
    }

    private static int strips(StockLength length, CuttingResult result) {
        return result.plan().stream()
                .filter(line -> line.stock().equals(Lengths.text(length.lengthMm())))
                .mapToInt(CuttingResult.BoardLine::count)
                .sum();
    }

    /** The same plan with the bearers' and beams' own names, in the order of the beds. */
    private static CuttingResult named(CuttingResult result, List<BedWork> beds) {
        Map<String, Deque<String>> waiting = new HashMap<>();
        beds.forEach(work -> work.bottom().strips().forEach(strip ->
                waiting.computeIfAbsent(Lengths.text(strip.lengthMm()), length -> new ArrayDeque<>()).add(strip.id())));
        List<CuttingResult.BoardLine> strips = new ArrayList<>();
        for (CuttingResult.BoardLine line : result.plan()) {
            for (int i = 0; i < line.count(); i++) {
                List<String> ids = line.pieces().stream().map(id -> waiting.get(id).pop()).toList();
                strips.add(new CuttingResult.BoardLine(line.stock(), 1, ids, line.lengthsMm(), line.leftMm()));
            }
        }
        return result.renamed(strips, result.unplaced());
    }

    private static Map<Double, Integer> strips(List<BedWork> beds) {
        Map<Double, Integer> lengths = new LinkedHashMap<>();
        beds.forEach(work -> work.bottom().strips().forEach(strip -> lengths.merge(strip.lengthMm(), 1, Integer::sum)));
        return lengths;
    }

    static CuttingProblem problem(Garden garden, Section section, int perBoard, Map<Double, Integer> lengths) {
        boolean priced = section.priced();
        List<Stock> stock = section.stock().stream()
                .filter(length -> !priced || length.price().isPresent())
                .map(length -> new Stock(
                        Lengths.text(length.lengthMm()),
                        length.lengthMm(),
                        // a strip's share of its board; boards are counted whole afterwards
                        length.price().orElse(BigDecimal.ONE).divide(BigDecimal.valueOf(perBoard), MathContext.DECIMAL32),
                        OptionalInt.empty(),
                        1))
                .toList();
        List<Demand> demands = new ArrayList<>();
        lengths.forEach((length, count) -> demands.add(new Demand(Lengths.text(length), length, count, 1, 0)));
        return new CuttingProblem(section.id(), garden.goods().saw().kerfMm(), garden.goods().saw().endTrimMm(), garden.goods().saw().keepOffcutMm(), 0, stock, demands);
    }

    static Map<StockLength, Integer> boards(Section section, int perBoard, CuttingResult result) {
        Map<StockLength, Integer> boards = new LinkedHashMap<>();
        for (StockLength length : section.stock()) {
            int strips = strips(length, result);
            if (strips > 0) boards.put(length, length.bought((strips + perBoard - 1) / perBoard));
        }
        return boards;
    }

    private static int count(Map<StockLength, Integer> boards) {
        return boards.values().stream().mapToInt(Integer::intValue).sum();
    }

    static BigDecimal cost(Map<StockLength, Integer> boards) {
        return boards.entrySet().stream()
                .map(entry -> entry.getKey().price().orElse(BigDecimal.ZERO).multiply(BigDecimal.valueOf(entry.getValue())))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    void apart(BuyersApart buyers, CurrencyUnit currency) {
        for (List<Cut> cuts : kinds) {
            for (int i = 0; i < cuts.get(0).singles().size(); i++) {
                int bed = i;
                List<BuyersApart.Offer> offers = serving(cuts, cut ->
                        cut.singles().get(bed).strips().unplaced().size()).stream()
                        .filter(Cut::priced)
                        .map(cut -> offer(cut, cut.singles().get(bed), currency))
                        .toList();
                if (!offers.isEmpty()) buyers.offers(cuts.get(0).singles().get(i).owner(), cuts.get(0).item(), offers);
            }
        }
    }

    /** Whole boards cost at least the smallest sum of their prices that is not under the bound of the strips. */
    private static BuyersApart.Offer offer(Cut cut, Single single, CurrencyUnit currency) {
        List<Pack> prices = cut.section().stock().stream()
                .flatMap(stock -> stock.price().stream())
                .filter(price -> price.signum() > 0)
                .map(price -> new Pack("board", price.doubleValue(), Optional.of(price), "", 1, 1, OptionalDouble.empty()))
                .toList();
        BigDecimal cost = Ordering.rounded(single.cost(), currency);
        BigDecimal bound = single.strips().lowerBound();
        BigDecimal least = Ordering.leastCost(new PackGoods("boards", "boards", "", 0, 1, prices, OptionalDouble.empty()), bound.doubleValue(), currency).orElse(bound);
        return new BuyersApart.Offer(cut.section().stock().get(0).supplier(), cost, least.min(cost), single.boards());
    }
}
