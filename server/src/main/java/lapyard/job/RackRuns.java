package lapyard.job;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import lapyard.catalogue.PackCode;
import lapyard.catalogue.Section;
import lapyard.catalogue.StockLength;
import lapyard.cutting.CuttingProblem.Stock;
import lapyard.job.Chalking.Quality;
import lapyard.geometry.Lengths;
import lapyard.plan.Garden;
import lapyard.plan.RackBoard;
import lapyard.plan.Tally;

/** The boards on hand as stock: cut at bad spans, short runs dropped, each run with its salvage value; what they measure and weigh. */
final class RackRuns {
    /** Salvage values are whole multiples of an amount up to this, so that sums of money stay easy to compare. */
    private static final int MOST_PENCE = 50;

    /** Boards of one course may differ by so much in thickness and height. Common practice, no source. */
    static final double TOLERANCE_MM = 2;

    private RackRuns() {}

    /** What all beds of a section are cut from together: what is barred from food beds is left out where one of them is for food. */
    static List<Stock> of(Garden garden, Section section) {
        return withNotSold(of(garden, section, garden.beds().stream().noneMatch(bed -> bed.planting().food() && bed.section().id().equals(section.id()))),
                garden, List.of(section));
    }

    /** As above without the boards of a length that nobody sells any more and of which something was lost: no more can be had for it. */
    static List<Stock> ofWhole(Garden garden, Section section) {
        Set<String> hurt = garden.people().tally().boards(section.id()).stream()
                .filter(board -> !board.spoiled().isEmpty() || board.lostMm() > 0 || board.leftMm().isPresent()).map(Tally.Board::stock).collect(Collectors.toSet());
        garden.goods().rack().forEach(board -> hurt.remove(board.id()));
        return of(garden, section).stream().filter(stock -> !hurt.contains(stock.id())).toList();
    }

    /** And after them the boards of the tally of lengths that none of these sellers of one section has. */
    static List<Stock> withNotSold(List<Stock> runs, Garden garden, List<Section> sellers) {
        List<Stock> there = new ArrayList<>(runs);
        there.addAll(notSold(garden, sellers.get(0), sellers.stream().flatMap(one -> PooledTimber.bought(one).stream()).map(Stock::id).toList()));
        return there;
    }

    /** @param unknownToo whether boards that are barred from food beds count */
    static List<Stock> of(Garden garden, Section section, boolean unknownToo) {
        List<Stock> runs = new ArrayList<>();
        for (RackBoard board : garden.goods().rack()) {
            if (!board.section().equals(section.id()) || !fits(board, section)) continue;
            if (board.barredEverywhere().isPresent()) continue;
            if (!unknownToo && board.barredFromFood().isPresent()) continue;
            List<RackBoard.Span> usable = board.usableRuns(garden.goods().saw().keepOffcutMm());
            double allMm = usable.stream().mapToDouble(run -> run.toMm() - run.fromMm()).sum();
            for (RackBoard.Span run : usable) {
                double lengthMm = run.toMm() - run.fromMm();
                runs.add(new Stock(
                        runId(board, run),
                        lengthMm,
                        BigDecimal.ZERO,
                        OptionalInt.of(board.count()),
                        board.goodFaces(),
                        worth(garden, section, board.salvage().map(all -> share(all, lengthMm / allMm)), lengthMm),
                        false));
            }
        }
        return runs;
    }

    /** Boards of the tally of a length that is not sold: they are there, and nothing is to pay for them. @param sold stock lengths that can be had */
    static List<Stock> notSold(Garden garden, Section section, Collection<String> sold) {
        Set<String> known = new HashSet<>(sold);
        garden.goods().rack().forEach(board -> known.add(board.id()));
        Map<String, Integer> counts = new TreeMap<>(garden.people().tally().countsThere(section.id()));
        return counts.entrySet().stream().filter(one -> PackCode.isStock(one.getKey()) && !known.contains(one.getKey())).map(one -> new Stock(one.getKey(), Double.parseDouble(one.getKey()), BigDecimal.ZERO,
                OptionalInt.of(one.getValue()), section.goodFaces(), BigDecimal.ZERO, false)).toList();
    }

    /** The stated salvage value, else the garden's salvage share of the cheapest price for that length; 0 if nothing is priced. */
    private static BigDecimal worth(Garden garden, Section section, Optional<BigDecimal> told, double lengthMm) {
        List<StockLength> priced = section.stock().stream().filter(stock -> stock.price().isPresent()).toList();
        if (priced.isEmpty()) return BigDecimal.ZERO;
        if (told.isPresent()) return told.get();
        double cheapestAMm = priced.stream()
                .mapToDouble(stock -> stock.price().get().doubleValue() / stock.lengthMm())
                .min()
                .getAsDouble();
        BigDecimal step = step(priced);
        BigDecimal worth = BigDecimal.valueOf(cheapestAMm * lengthMm * garden.goods().saw().salvagePercent() / 100);
        return worth.divide(step, 0, RoundingMode.DOWN).multiply(step);
    }

    private static BigDecimal share(BigDecimal all, double part) {
        return all.multiply(BigDecimal.valueOf(part)).setScale(2, RoundingMode.DOWN);
    }

    /** The largest amount up to {@link #MOST_PENCE} that goes into all prices without a rest. */
    private static BigDecimal step(List<StockLength> priced) {
        BigInteger common = BigInteger.ZERO;
        for (StockLength stock : priced) {
            common = common.gcd(stock.price().get().movePointRight(2).setScale(0, RoundingMode.DOWN).toBigInteger());
        }
        int pence = MOST_PENCE;
        while (common.mod(BigInteger.valueOf(pence)).signum() != 0) pence--;
        return BigDecimal.valueOf(pence, 2);
    }

    /** Whether a board may lie in a course with its section's other boards. */
    static boolean fits(RackBoard board, Section section) {
        return off(board.measured().thicknessMm(), section.thicknessMm()) <= TOLERANCE_MM + 1e-9
                && off(board.measured().heightMm(), section.heightMm()) <= TOLERANCE_MM + 1e-9;
    }

    static double off(double measuredMm, double sectionMm) {
        return measuredMm == 0 ? 0 : Math.abs(measuredMm - sectionMm);
    }

    /** The mass of a stock length or of a run of a board on hand; a board that was not weighed takes the density of its section. */
    static Quality quality(Garden garden, Section section, String stock) {
        for (RackBoard board : garden.goods().rack()) {
            if (!board.section().equals(section.id())) continue;
            for (RackBoard.Span run : board.usableRuns(garden.goods().saw().keepOffcutMm())) {
                if (runId(board, run).equals(stock)) {
                    double volumeM3 = board.lengthMm() * section.thicknessMm() * section.heightMm() / 1e9;
                    double density = board.measured().weightKg() > 0 ? board.measured().weightKg() / volumeM3 : section.densityKgM3();
                    return new Quality(density, board.goodFaces());
                }
            }
        }
        return new Quality(section.densityKgM3(), section.goodFaces());
    }

    /** What a run of a board on hand is called in a plan. */
    static String runId(RackBoard board, RackBoard.Span run) {
        boolean whole = run.fromMm() == 0 && run.toMm() == board.lengthMm();
        return whole ? board.id() : board.id() + " " + Lengths.text(run.fromMm()) + "-" + Lengths.text(run.toMm());
    }
}
