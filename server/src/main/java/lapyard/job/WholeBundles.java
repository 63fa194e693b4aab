package lapyard.job;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToIntFunction;
import lapyard.catalogue.Section;
import lapyard.catalogue.StockLength;
import lapyard.cutting.CuttingResult;

/**
 * Boards that come in whole bundles, or from a least count on. The cutting counts single boards; a length of which some would lie unused is left
 * out where all then costs less.
 */
final class WholeBundles {
    private WholeBundles() {}

    /**
     * @param plan the best plan with the lengths of a section; asked for the section itself first
     * @return bounded by that of all lengths
     */
    static Nesting.Plan cheapest(Section section, Function<Section, Nesting.Plan> plan) {
        Nesting.Plan best = plan.apply(section);
        BigDecimal bound = best.result().lowerBound();
        Section sold = section;
        for (boolean changed = section.priced(); changed; ) {
            changed = false;
            for (String length : lengths(sold)) {
                Section without = sold.sold(sold.stock().stream().filter(offer -> !PooledTimber.stockId(offer).equals(length)).toList());
                // of lengths without a price alone each board counts 1, which is no money
                if (over(section, length, best.result()).signum() == 0 || !without.priced()) continue;
                Nesting.Plan other = plan.apply(without);
                if (other.result().left() > best.result().left() || cost(section, other).compareTo(cost(section, best)) >= 0) continue;
                best = other;
                sold = without;
                changed = true;
                break;
            }
        }
        return new Nesting.Plan(best.asked(), best.result().bounded(bound));
    }

    /** Of the boards that are cut and of those that lie unused. */
    static BigDecimal cost(Section section, Nesting.Plan plan) {
        return plan.result().cost().add(over(section, plan.result()));
    }

    /** What whole bundles and least counts cost over the boards that are cut, each length from whom it then costs least. */
    static BigDecimal over(Section section, CuttingResult result) {
        return lengths(section).stream().map(length -> over(section, length, result)).reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    private static BigDecimal over(Section section, String length, CuttingResult result) {
        int cut = result.plan().stream().filter(line -> line.stock().equals(length)).mapToInt(CuttingResult.BoardLine::count).sum();
        List<StockLength> offers = section.stock().stream().filter(offer -> offer.price().isPresent() && PooledTimber.stockId(offer).equals(length)).toList();
        return least(offers, offer -> offer.bought(cut)).subtract(least(offers, offer -> cut));
    }

    private static BigDecimal least(List<StockLength> offers, ToIntFunction<StockLength> boards) {
        return offers.stream().map(offer -> offer.price().orElseThrow().multiply(BigDecimal.valueOf(boards.applyAsInt(offer)))).min(Comparator.naturalOrder()).orElse(BigDecimal.ZERO);
    }

    private static List<String> lengths(Section section) {
        return section.stock().stream().map(PooledTimber::stockId).distinct().toList();
    }
}
