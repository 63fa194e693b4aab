package lapyard.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import lapyard.catalogue.Section;
import lapyard.construction.Piece;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingProblem.Stock;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.CuttingResult.BoardLine;
import lapyard.cutting.CuttingResult.Unplaced;
import lapyard.order.Ordering;
import lapyard.plan.Garden;
import lapyard.plan.Saw;
import org.joda.money.CurrencyUnit;

/**
 * What the beds of one section would each take by itself: walls joined as suits that bed, and its share of the boards on hand.
 * Plans are proved by their own bounds; a share of the boards on hand by being the best of all, and by what they would be worth
 * kept; deliveries only where there is nothing to share.
 *
 * @param own     the ways of the beds
 * @param singles by bed, by its ways, by supplier; no bed where it was not asked
 */
record TimberApart(Garden garden, List<Section> sold, OwnWays own, List<Stock> rack, List<List<List<Alone>>> singles) {

    static TimberApart of(Garden garden, List<Section> sold, OwnWays own, SearchOptions looking) {
        List<BedWay> beds = own.chosen();
        List<Stock> rack = PooledTimber.rack(garden, sold, beds);
        TimberApart nothing = new TimberApart(garden, sold, own, rack, List.of());
        // nests of one bed alone are offered to all together
        boolean each = looking.alone() || !looking.isFirst() && beds.stream().anyMatch(way -> PooledTimber.angled(way.bed()));
        return each ? new TimberApart(garden, sold, own, rack, nothing.shared(looking)) : nothing;
    }

    private List<List<List<Alone>>> shared(SearchOptions looking) {
        int[] boards = rack.stream().mapToInt(board -> board.available().getAsInt()).toArray();
        return RackSharing.of(own.ways().size(), boards, (bed, offered) ->
                Share.of(own.ways().get(bed).stream().map(way -> fromEach(way, offered, looking)).toList())).stream().map(Share::ways).toList();
    }

    /** What a bed buys in each of its ways, from each supplier; it uses the boards on hand as the cheapest does. */
    private record Share(List<List<Alone>> ways, BigDecimal cost, int[] used) implements RackSharing.Buy {
        static Share of(List<List<Alone>> ways) {
            Alone cheapest = ways.stream().flatMap(List::stream).min(Comparator.comparing(Alone::cost)).orElseThrow();
            return new Share(ways, cheapest.cost(), cheapest.used());
        }
    }

    /** The timber of each supplier. */
    private List<Alone> fromEach(BedWay way, int[] offered, SearchOptions looking) {
        int of = own.ways().size();
        Function<CuttingProblem, CuttingResult> share = PooledTimber.angled(way.bed())
                ? problem -> looking.boardsAlone(problem, of)
                : problem -> looking.moneyAlone(problem, of);
        return sold.stream()
                .map(section -> Alone.of(section, rack, WholeBundles.cheapest(section, lengths -> Nesting.cheapest(PooledTimber.saw(garden, lengths, offered(offered)),
                        PooledTimber.blanks(garden.goods().saw(), List.of(way), PooledTimber.sawn(garden, section)), List.of(), PooledTimber.sawn(garden, section),
                        PooledTimber.graded(rack), (problem, least) -> share.apply(problem), share))))
                .toList();
    }

    private List<Stock> offered(int[] counts) {
        List<Stock> offered = new ArrayList<>();
        for (int i = 0; i < counts.length; i++) if (counts[i] > 0) offered.add(rack.get(i).with(counts[i]));
        return offered;
    }

    /** What the beds as the garden builds them are cut out of, each from this supplier alone. */
    List<Blank> blanks(int seller) {
        return singles.stream()
                .flatMap(ways -> ways.get(0).get(seller).plan().asked().blanks().values().stream().flatMap(List::stream))
                .toList();
    }

    /** Boards of all beds as the garden builds them, for where nothing is priced; empty where it was not asked. */
    Optional<Integer> boards() {
        return singles.isEmpty() ? Optional.empty()
                : Optional.of(singles.stream().mapToInt(ways -> ways.get(0).get(0).plan().result().boards()).sum());
    }

    /** @param pooled proved: all beds together cost no less; empty where several suppliers sell the section */
    void apart(BuyersApart buyers, CurrencyUnit currency, Optional<BigDecimal> pooled) {
        if (sold.stream().noneMatch(Section::priced)) return;
        boolean shares = !rack.isEmpty() && singles.size() > 1;
        BigDecimal paid = BigDecimal.ZERO;
        for (int bed = 0; bed < singles.size(); bed++) {
            String owner = "bed " + own.chosen().get(bed).bed().id();
            BigDecimal most = BigDecimal.ZERO;
            for (int way = 0; way < singles.get(bed).size(); way++) {
                List<Alone> alone = singles.get(bed).get(way);
                int fewest = alone.stream().mapToInt(Alone::unplaced).min().orElseThrow();
                buyers.missing(owner, way, fewest);
                List<BuyersApart.Offer> offers = new ArrayList<>();
                for (int seller = 0; seller < sold.size(); seller++) {
                    if (sold.get(seller).priced() && alone.get(seller).unplaced() == fewest) {
                        offers.add(offer(bed, sold.get(seller), alone.get(seller), currency));
                    }
                }
                if (offers.isEmpty()) continue;
                buyers.offers(owner, way, PooledTimber.item(sold.get(0)), offers);
                most = offers.stream().map(BuyersApart.Offer::cost).reduce(most, BigDecimal::max);
                if (shares) buyers.shares(owner, way);
            }
            paid = paid.add(most);
        }
        if (shares) {
            BigDecimal unproved = unproved(paid, pooled);
            for (int way = 0; way < singles.get(0).size(); way++) buyers.unproved("bed " + own.chosen().get(0).bed().id(), way, unproved);
        }
    }

    private BuyersApart.Offer offer(int bed, Section section, Alone alone, CurrencyUnit currency) {
        BigDecimal cost = Ordering.rounded(alone.paid(), currency);
        BigDecimal least = own.all().get(bed) ? alone.least() : alone.least().min(byLength(own.ways().get(bed).subList(0, 1), section));
        return new BuyersApart.Offer(section.suppliers().isEmpty() ? "" : section.suppliers().get(0), cost, least.min(cost),
                alone.plan().result().boards());
    }

    /** However their walls are joined and the boards on hand shared, the timber of these beds costs no less. */
    private BigDecimal byLength(List<BedWay> beds, Section section) {
        Saw saw = garden.goods().saw();
        OptionalDouble perMm = section.stock().stream()
                .filter(stock -> stock.price().isPresent() && saw.usableMm(stock.lengthMm()) > 0)
                .mapToDouble(stock -> stock.price().get().doubleValue() / saw.usableMm(stock.lengthMm()))
                .min();
        double neededMm = beds.stream().flatMap(way -> way.pieces().stream()).mapToDouble(Piece::lengthMm).sum()
                - rack.stream().mapToDouble(board -> board.lengthMm() * board.available().getAsInt()).sum();
        // a nest takes less than its pieces
        boolean nests = beds.stream().anyMatch(way -> PooledTimber.angled(way.bed()));
        return perMm.isEmpty() || nests ? BigDecimal.ZERO : BigDecimal.valueOf(Math.max(0, neededMm * perMm.getAsDouble() * (1 - 1e-9)));
    }

    /** What another share of the boards on hand could save at most. */
    private BigDecimal unproved(BigDecimal paid, Optional<BigDecimal> pooled) {
        BigDecimal worth = rack.stream()
                .map(board -> board.salvage().multiply(BigDecimal.valueOf(board.available().getAsInt())))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
        if (RackSharing.looksAtAll(singles.size(), rack.stream().mapToInt(board -> board.available().getAsInt()).toArray())) return worth;
        BigDecimal least = sold.stream().map(section -> byLength(own.chosen(), section)).min(BigDecimal::compareTo).orElseThrow();
        // all beds' own plans together are a plan of the garden where each is built as the garden builds it
        boolean asTheGarden = own.ways().stream().allMatch(ways -> ways.size() == 1) && own.all().stream().allMatch(all -> all);
        if (asTheGarden && pooled.isPresent()) least = least.max(pooled.get().subtract(worth));
        return paid.subtract(least);
    }

    /** One bed bought for by itself. */
    record Alone(BigDecimal paid, int[] used, Nesting.Plan plan) {
        static Alone of(Section section, List<Stock> rack, Nesting.Plan plan) {
            int[] used = new int[rack.size()];
            for (BoardLine line : plan.result().plan()) {
                for (int i = 0; i < used.length; i++) if (rack.get(i).id().equals(line.stock())) used[i] += line.count();
            }
            return new Alone(plan.result().paid().add(WholeBundles.over(section, plan.result())), used, plan);
        }

        /** A piece that finds no board counts more than any board. */
        private BigDecimal cost() {
            return paid.add(BigDecimal.valueOf(1_000_000L * plan.result().unplaced().stream().mapToInt(Unplaced::count).sum()));
        }

        private int unplaced() {
            return plan.result().unplaced().size();
        }

        /** With the boards on hand that it uses; what those would be worth kept is not paid. */
        private BigDecimal least() {
            return plan.result().lowerBound().subtract(plan.result().salvage()).max(BigDecimal.ZERO);
        }
    }
}
