package lapyard.job;

import java.math.BigDecimal;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.stream.Stream;
import lapyard.catalogue.Section;
import lapyard.catalogue.StockLength;
import lapyard.construction.BedWork;
import lapyard.construction.Piece;
import lapyard.cutting.CuttingProblem.Demand;
import lapyard.cutting.CuttingProblem.Stock;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingResult.BoardLine;
import lapyard.cutting.CuttingResult.Unplaced;
import lapyard.cutting.CuttingResult;
import lapyard.geometry.Lengths;
import lapyard.job.JobSheet.SawWork;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.job.JobSheet.Way;
import lapyard.order.SlipLine.PackCount;
import lapyard.order.SlipLine;
import lapyard.plan.Bed;
import lapyard.order.Slip;
import lapyard.order.Wanted;
import lapyard.plan.Finding.Amount;
import lapyard.plan.Finding;
import lapyard.plan.Garden;
import lapyard.plan.RackBoard;
import lapyard.plan.Saw;
import lapyard.working.Working.Input;
import lapyard.working.Working;
import org.joda.money.CurrencyUnit;

/** The walls' timber of all beds, cut together, section by section. */
final class Timber {
    /** One length wanted of one stage and grade; which piece it becomes is settled after cutting. */
    private record Want(double lengthMm, int stage, boolean goodFace) {
        String id() {
            return lengthMm + "/" + stage + "/" + goodFace;
        }
    }

    /** {@code section} with the stock of one supplier. */
    private record Cut(Section section, CuttingResult pooled, boolean priced, Optional<BigDecimal> alone, int boardsAlone, double needM,
            SawWork saw, List<SlipLine.Use> uses, List<Finding> findings) {}

    /** One a section: the same pieces cut from the stock of each supplier who sells it. */
    private final List<List<Cut>> ways;

    private Timber(List<List<Cut>> ways) {
        this.ways = ways;
    }

    /** Longest piece that stock or rack can give. */
    static double longestPieceMm(Garden garden, Section section) {
        double longest = section.stock().stream().mapToDouble(StockLength::lengthMm).max().orElse(0);
        for (Stock run : RackRuns.of(garden, section, true)) {
            longest = Math.max(longest, run.lengthMm());
        }
        return Math.max(0, longest - 2 * garden.saw().endTrimMm());
    }

    /** What a whole board of each length gives, stock and rack. */
    static List<Double> wholeBoardsMm(Garden garden, Section section) {
        return Stream.concat(
                        section.stock().stream().map(StockLength::lengthMm),
                        RackRuns.of(garden, section, true).stream().map(Stock::lengthMm))
                .map(length -> length - 2 * garden.saw().endTrimMm())
                .distinct()
                .sorted()
                .toList();
    }

    /** Cutting these timbers together, to compare them with others. */
    static CuttingProblem trial(Garden garden, Section section, Map<Bed, List<Piece>> pieces) {
        boolean food = pieces.keySet().stream().anyMatch(Bed::food);
        List<Stock> rack = RackRuns.of(garden, section, !food);
        boolean graded = rack.stream().anyMatch(board -> !board.goodFace());
        Map<Want, List<Piece>> wanted = new LinkedHashMap<>();
        pieces.forEach((bed, own) -> own.forEach(piece -> wanted
                .computeIfAbsent(new Want(piece.lengthMm(), bed.weekend(), graded && piece.seen()), w -> new ArrayList<>())
                .add(piece)));
        return problem(garden.saw(), section.id(), bought(section), rack, wanted);
    }

    static Timber of(Garden garden, List<BedWork> works, Looking looking) {
        Map<Section, List<BedWork>> bySection = new LinkedHashMap<>();
        works.forEach(work -> bySection.computeIfAbsent(work.bed().section(), s -> new ArrayList<>()).add(work));
        List<List<Cut>> ways = new ArrayList<>();
        bySection.forEach((section, beds) -> ways.add(ways(garden, section, beds, looking)));
        return new Timber(ways);
    }

    /** Boards of one section come from one supplier, so that they match; who cannot serve every piece is passed over. */
    private static List<Cut> ways(Garden garden, Section section, List<BedWork> beds, Looking looking) {
        List<String> sellers = section.suppliers();
        if (sellers.size() <= 1) {
            return List.of(cut(garden, section, beds, looking));
        }
        List<Cut> all = sellers.stream().map(seller -> cut(garden, section.from(seller), beds, looking)).toList();
        int fewest = all.stream().mapToInt(cut -> cut.pooled().unplaced().size()).min().orElse(0);
        return all.stream().filter(cut -> cut.pooled().unplaced().size() == fewest).toList();
    }

    /** The same with each section's boards from whom the slip names. */
    Timber chosen(Slip slip) {
        return new Timber(ways.stream().map(cuts -> List.of(chosen(cuts, slip))).toList());
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

    private static Cut cut(Garden garden, Section section, List<BedWork> beds, Looking looking) {
        List<Finding> findings = new ArrayList<>();
        boolean food = beds.stream().anyMatch(work -> work.bed().food());
        List<Stock> rack = RackRuns.of(garden, section, !food);
        findings.addAll(Provenance.barred(garden, section, beds));
        boolean graded = rack.stream().anyMatch(board -> !board.goodFace());
        List<Stock> bought = bought(section);
        boolean priced = section.stock().stream().anyMatch(stock -> stock.price().isPresent());

        Map<Want, List<Piece>> wanted = wanted(beds, graded);
        CuttingProblem problem = problem(garden.saw(), section.id(), bought, rack, wanted);
        CuttingResult pooled = chalked(garden, section, beds, looking.boards("Timber " + section.id(), problem), wanted);
        findings.addAll(Measured.findings(garden, section));
        findings.addAll(GoodFaces.findings(section, rack, pooled, beds));
        for (Unplaced unplaced : pooled.unplaced()) {
            findings.add(Finding.snag(
                    "timber " + section.id() + ", " + unplaced.id(),
                    unplaced.why(),
                    new Amount(unplaced.lengthMm(), "mm"),
                    "put a longer stock length in the catalogue",
                    "let the wall be joined (seams), or make it shorter"));
        }

        BigDecimal alone = BigDecimal.ZERO;
        int boardsAlone = 0;
        Map<String, Integer> left = new HashMap<>();
        rack.forEach(board -> left.put(board.id(), board.available().getAsInt()));
        for (BedWork bed : beds) {
            List<Stock> rackLeft = rack.stream()
                    .filter(board -> left.get(board.id()) > 0)
                    .map(board -> board.with(left.get(board.id())))
                    .toList();
            CuttingProblem own = problem(garden.saw(), section.id(), bought, rackLeft, wanted(List.of(bed), graded));
            CuttingResult single = looking.boardsAlone(own, beds.size());
            alone = alone.add(single.paid()).add(overBundles(section, single));
            for (BoardLine line : single.plan()) {
                boardsAlone += line.count();
                left.computeIfPresent(line.stock(), (id, count) -> count - line.count());
            }
        }
        double needM = beds.stream().flatMap(work -> work.pieces().stream()).mapToDouble(Piece::lengthMm).sum() / 1000;
        Optional<BigDecimal> costAlone = priced ? Optional.of(alone) : Optional.empty();
        Map<String, Integer> weekends = new HashMap<>();
        Map<String, List<String>> marks = new HashMap<>();
        wanted.forEach((want, pieces) -> {
            pieces.forEach(piece -> weekends.put(piece.mark(), want.stage()));
            marks.put(want.id(), pieces.stream().map(Piece::mark).toList());
        });
        List<Way> ways = List.of(
                new Way("pooled", pooled.boards(), priced ? Optional.of(pooled.paid()) : Optional.empty()),
                new Way("bed by bed", boardsAlone, costAlone));
        SawWork saw = SawWork.of(problem, marks, pooled, weekends::get, ways);
        List<SlipLine.Use> uses = beds.stream()
                .map(work -> new SlipLine.Use("bed " + work.bed().id(), work.pieces().stream().mapToDouble(Piece::lengthMm).sum() / 1000))
                .toList();
        return new Cut(section, pooled, priced, costAlone, boardsAlone, needM, saw, uses, findings);
    }

    /** Stock lengths that can be bought; where nothing is priced, a board counts 1. */
    private static List<Stock> bought(Section section) {
        boolean priced = section.stock().stream().anyMatch(stock -> stock.price().isPresent());
        return section.stock().stream()
                .filter(stock -> !priced || stock.price().isPresent())
                .map(stock -> new Stock(
                        stockId(stock), stock.lengthMm(), stock.price().orElse(BigDecimal.ONE), OptionalInt.empty(), true))
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

    private static Map<Want, List<Piece>> wanted(List<BedWork> beds, boolean graded) {
        Map<Want, List<Piece>> wanted = new LinkedHashMap<>();
        for (BedWork work : beds) {
            for (Piece piece : work.pieces()) {
                Want want = new Want(piece.lengthMm(), work.bed().weekend(), graded && piece.seen());
                wanted.computeIfAbsent(want, w -> new ArrayList<>()).add(piece);
            }
        }
        return wanted;
    }

    private static CuttingProblem problem(
            Saw saw, String name, List<Stock> bought, List<Stock> rack, Map<Want, List<Piece>> wanted) {
        List<Stock> stock = new ArrayList<>(rack);
        stock.addAll(bought);
        List<Demand> demands = new ArrayList<>();
        wanted.forEach((want, pieces) ->
                demands.add(new Demand(want.id(), want.lengthMm(), pieces.size(), want.stage(), want.goodFace())));
        return new CuttingProblem(name, saw.kerfMm(), saw.endTrimMm(), saw.keepOffcutMm(), saw.retrimMm(), stock, demands);
    }

    private static CuttingResult chalked(
            Garden garden, Section section, List<BedWork> beds, CuttingResult result, Map<Want, List<Piece>> wanted) {
        Map<String, Integer> rims = new HashMap<>();
        beds.forEach(work -> work.pieces().forEach(piece -> rims.put(piece.mark(), work.bed().courses())));
        Map<String, Chalking.Timbers> timbers = new LinkedHashMap<>();
        wanted.forEach((want, pieces) -> timbers.put(want.id(), new Chalking.Timbers(
                want.lengthMm(),
                want.stage(),
                want.goodFace(),
                pieces.stream().map(piece -> new Chalking.Placed(piece, rims.get(piece.mark()))).toList())));
        return Chalking.of(result, timbers, stock -> Measured.quality(garden, section, stock));
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
                cut.priced() ? Optional.of(Lines.rounded(pooled.paid().add(more), currency)) : Optional.empty(),
                cut.alone().map(cost -> Lines.rounded(cost, currency)),
                Working.of(
                        (pooled.proven()
                                ? "least cost of boards over all beds, proved: no plan can cost less than the bound"
                                : "best plan found over all beds; no plan can cost less than the bound")
                                + (more.signum() == 0 ? "" : "; then up to whole bundles and the least count sold, "
                                        + Lines.rounded(more, currency).toPlainString() + " more"),
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
